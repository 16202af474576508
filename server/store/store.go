// Package store says what the server needs of the place where rows are kept.
//
// A store holds the merged rows of one shop. Each change of a row gets the next number of the store's own sequence in
// the transaction that makes it, so a reader that knows all up to a number misses nothing. Every opening of a store
// begins a new run with a random id, the epoch; a cursor made by a run that this store does not remember, or beyond
// the end of its run, was given out by a store that has since been replaced by an older copy.
package store

import (
	"errors"
	"fmt"

	"asfound/server/record"
)

// Store keeps rows. Its methods may be called from many goroutines at once.
type Store interface {
	// Apply merges a push in one transaction: when it returns without error all of it is on the disk. Nothing is kept
	// when it fails with ErrDeviceReused or any other error.
	Apply(Push) (Applied, error)
	// Changes lists rows changed after the cursor, in order of their numbers, each once, with its latest state.
	Changes(Query) (Page, error)
	// ValidCursor tells whether the cursor was made by this store as it is now. The zero cursor, of a device that
	// never read, is valid.
	ValidCursor(Cursor) (bool, error)
	// Row is one row as it is now; without entries where there is none.
	Row(record.Key) (record.Row, error)
	// Drawer is the drawer of that name, which need not be there yet. Two names are two drawers.
	Drawer(name string) Drawer
	// Epoch is the id of the present run: 16 hex digits.
	Epoch() string
	Close() error
}

// Drawer keeps small things of the server's own by their keys, beside the rows: no device reads or writes them.
type Drawer interface {
	// All gives everything that is in it.
	All() (map[string][]byte, error)
	// Put keeps value under key, in place of what was there; it is on the disk when Put returns.
	Put(key string, value []byte) error
	// Remove forgets key; one that is not there is well.
	Remove(key string) error
}

// Push is what one device sends.
type Push struct {
	// Device is the sender: 16 hex digits.
	Device string
	// Mark is the highest own stamp that the sender sent before, answered or not; "" for none. A higher one in the store
	// that is not in Rows was made by another device with the same id.
	Mark record.Stamp
	// Rows are normal, with checked entries.
	Rows []record.Row
}

// Applied is what became of a push.
type Applied struct {
	// Refused are rows that were not taken.
	Refused []record.Refusal
	// Known are the rows of which the store now holds exactly what was pushed, with their numbers: nothing to send back.
	Known map[record.Key]uint64
}

// Cursor is a place in the sequence of changes: all up to Seq is known to its holder, and numbers up to High were given
// when it was made. High is what a cursor is valid by: a holder that has read the first of many pages may already
// rely on an answer to a push numbered beyond that page.
type Cursor struct {
	Epoch     string
	Seq, High uint64
}

// Query asks for changes after a number.
type Query struct {
	After uint64
	// MaxRows and MaxBytes bound the page; at least one row is given.
	MaxRows, MaxBytes int
	// Skip leaves out rows that still have the number given here.
	Skip map[record.Key]uint64
}

// Page is a part of the changes.
type Page struct {
	// Rows are rows as JSON, see record.Row.Append.
	Rows [][]byte
	// Seq is the number up to which the page is complete.
	Seq uint64
	// High is the last number given; changes after Seq exist when it is higher.
	High uint64
}

// Errors of a store. Each comes wrapped in a sentence that says what happened and what would be right.
var (
	// ErrDeviceReused: two devices use one id. The sender must take a new one.
	ErrDeviceReused = errors.New("this device's id is used by another one")
	// ErrClosed: the store is closed or closing.
	ErrClosed = errors.New("the store is closed")
	// ErrFull: no room left on the disk.
	ErrFull = errors.New("the disk is full")
	// ErrInUse: another process has the store open.
	ErrInUse = errors.New("in use")
	// ErrFolder: the data folder is missing or closed to us.
	ErrFolder = errors.New("no usable data folder")
	// ErrNotDatabase: the file is something else.
	ErrNotDatabase = errors.New("not a database of this program")
	// ErrDamaged: the file is a database, but not whole.
	ErrDamaged = errors.New("the database is damaged")
	// ErrNewer: the file was written by a newer version of the program.
	ErrNewer = errors.New("the database is of a newer version")
)

// Reused tells of a stamp that proves two devices under one id.
func Reused(device string, s record.Stamp, how string) error {
	return fmt.Errorf("%w: device %s, stamp %s %s: take a new device id and send again", ErrDeviceReused, device, s, how)
}
