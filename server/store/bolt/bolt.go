// Package bolt keeps a shop's rows in one bbolt file, asfound.db in the data folder.
//
// Buckets:
//
//	meta     version -> schema version (8 bytes, big-endian); seq -> last number given (8 bytes)
//	rows     doc 0x00 path -> number (8 bytes) and the row's JSON
//	changes  number (8 bytes) -> key in rows; only the latest number of each row
//	devices  device id -> the highest stamp known of it
//	runs     ordinal (8 bytes) -> first number (8 bytes) and epoch
//	drawers  name -> a bucket of the server's own things by key, made at the first
package bolt

import (
	"crypto/rand"
	"encoding/binary"
	"encoding/hex"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"go.etcd.io/bbolt"
	bolterrors "go.etcd.io/bbolt/errors"

	"asfound/server/store"
)

// FileName is the database's name in the data folder.
const FileName = "asfound.db"

// Version is the schema version this package writes. It reads no newer one.
const Version = 1

var (
	metaBucket    = []byte("meta")
	rowsBucket    = []byte("rows")
	changesBucket = []byte("changes")
	devicesBucket = []byte("devices")
	runsBucket    = []byte("runs")

	versionKey = []byte("version")
	seqKey     = []byte("seq")
)

const lockWait = time.Second

// Store is a store.Store in a bbolt file.
type Store struct {
	db    *bbolt.DB
	epoch string
}

var _ store.Store = (*Store)(nil)

// Open opens the database in the data folder, makes it when the folder holds none, and begins a new run. The folder
// must exist. Errors are ErrFolder, ErrInUse, ErrNotDatabase, ErrDamaged, ErrNewer or ErrFull of package store.
func Open(dir string) (*Store, error) { return open(dir, false) }

// OpenUnsynced is Open without waiting for the disk: for tests that do not pull the plug.
func OpenUnsynced(dir string) (*Store, error) { return open(dir, true) }

func open(dir string, unsynced bool) (*Store, error) {
	path := filepath.Join(dir, FileName)
	if err := checkFolder(dir); err != nil {
		return nil, err
	}
	if err := checkFile(path); err != nil {
		return nil, err
	}
	db, err := bbolt.Open(path, 0o600, &bbolt.Options{Timeout: lockWait, FreelistType: bbolt.FreelistMapType, NoSync: unsynced})
	if err != nil {
		return nil, openError(path, err)
	}
	s := &Store{db: db}
	if err := s.begin(); err != nil {
		return nil, errors.Join(err, db.Close())
	}
	return s, nil
}

// Epoch is the id of the present run.
func (s *Store) Epoch() string { return s.epoch }

// Close waits for running transactions and closes the file.
func (s *Store) Close() error { return s.db.Close() }

// begin makes the buckets of a new file and notes the new run.
func (s *Store) begin() error {
	var id [8]byte
	if _, err := rand.Read(id[:]); err != nil {
		return fmt.Errorf("no random numbers for the run's id: %w", err)
	}
	s.epoch = hex.EncodeToString(id[:])
	return failure(s.db.Update(func(tx *bbolt.Tx) error {
		for _, name := range [][]byte{metaBucket, rowsBucket, changesBucket, devicesBucket, runsBucket} {
			if _, err := tx.CreateBucketIfNotExists(name); err != nil {
				return err
			}
		}
		meta, runs := tx.Bucket(metaBucket), tx.Bucket(runsBucket)
		if err := meta.Put(versionKey, number(Version)); err != nil {
			return err
		}
		// What the previous run's end was is then known from this run's first number.
		ordinal, err := runs.NextSequence()
		if err != nil {
			return err
		}
		return runs.Put(number(ordinal), append(number(lastSeq(tx)+1), s.epoch...))
	}))
}

// ValidCursor: see store.Store.
func (s *Store) ValidCursor(c store.Cursor) (valid bool, err error) {
	if c == (store.Cursor{}) {
		return true, nil
	}
	err = failure(s.db.View(func(tx *bbolt.Tx) error {
		end, cursor := lastSeq(tx), tx.Bucket(runsBucket).Cursor()
		for k, v := cursor.Last(); k != nil; k, v = cursor.Prev() {
			first := binary.BigEndian.Uint64(v)
			if string(v[8:]) == c.Epoch {
				valid = c.Seq <= c.High && c.High <= end
				return nil
			}
			end = first - 1
		}
		return nil
	}))
	return valid, err
}

func lastSeq(tx *bbolt.Tx) uint64 {
	if v := tx.Bucket(metaBucket).Get(seqKey); len(v) == 8 {
		return binary.BigEndian.Uint64(v)
	}
	return 0
}

func number(n uint64) []byte { return binary.BigEndian.AppendUint64(nil, n) }

// A missing folder is not made, so that a typing error in a path does not make a new, empty shop.
func checkFolder(dir string) error {
	info, err := os.Stat(dir)
	switch {
	case errors.Is(err, os.ErrNotExist):
		return fmt.Errorf("%w: the data folder %s does not exist: make it, or name another one", store.ErrFolder, dir)
	case err != nil:
		return fmt.Errorf("%w: the data folder %s cannot be read (%w): its owner must be the user who starts asfound", store.ErrFolder, dir, err)
	case !info.IsDir():
		return fmt.Errorf("%w: %s is a file: a folder is expected", store.ErrFolder, dir)
	}
	return nil
}

func openError(path string, err error) error {
	switch {
	case errors.Is(err, bolterrors.ErrTimeout):
		return fmt.Errorf("%w: another asfound is already serving this data folder (%s): stop it first, or use another folder", store.ErrInUse, filepath.Dir(path))
	case errors.Is(err, bolterrors.ErrInvalid), errors.Is(err, bolterrors.ErrVersionMismatch), errors.Is(err, bolterrors.ErrChecksum):
		return fmt.Errorf("%w: %s cannot be read as one (%w): if it is another program's file, use another folder; else %s", store.ErrNotDatabase, path, err, rescue)
	case errors.Is(err, os.ErrPermission):
		return fmt.Errorf("%w: %s cannot be opened for writing: its owner must be the user who starts asfound", store.ErrFolder, path)
	}
	if err = failure(err); errors.Is(err, store.ErrFull) {
		return err
	}
	return damaged(path, err)
}
