package bolt

import (
	"encoding/binary"
	"errors"
	"fmt"
	"os"
	"syscall"

	"go.etcd.io/bbolt"
	bolterrors "go.etcd.io/bbolt/errors"

	"asfound/server/store"
)

const rescue = "keep a copy of the file, put the last backup in its place and start again; the devices then send again what they still hold"

// checkFile looks at an existing database before it is opened for writing: a file shorter than its own account of
// itself would end the process with a bus error at the first read beyond its end. A missing file is well.
func checkFile(path string) (err error) {
	info, err := os.Stat(path)
	if errors.Is(err, os.ErrNotExist) {
		return nil
	}
	if err != nil {
		return openError(path, err)
	}
	if info.Size() == 0 {
		return fmt.Errorf("%w: %s is empty: %s; if this folder never held anything, remove the file", store.ErrDamaged, path, rescue)
	}
	db, err := bbolt.Open(path, 0o600, &bbolt.Options{ReadOnly: true, Timeout: lockWait})
	if err != nil {
		return openError(path, err)
	}
	defer func() {
		if r := recover(); r != nil { // bbolt panics on a page that is not what it should be
			err = damaged(path, fmt.Errorf("%v", r))
		}
		err = errors.Join(err, db.Close())
	}()
	return db.View(func(tx *bbolt.Tx) error {
		if info.Size() < tx.Size() {
			return damaged(path, fmt.Errorf("%d bytes of %d are there", info.Size(), tx.Size()))
		}
		var first error
		for err := range tx.Check() { // must be drained
			if first == nil {
				first = err
			}
		}
		if first != nil {
			return damaged(path, first)
		}
		return checkSchema(tx, path)
	})
}

func damaged(path string, err error) error {
	return fmt.Errorf("%w: %s (%w): %s", store.ErrDamaged, path, err, rescue)
}

// checkSchema tells another program's bbolt file and a newer schema from ours, and looks at every row's number.
func checkSchema(tx *bbolt.Tx, path string) error {
	meta := tx.Bucket(metaBucket)
	if meta == nil || len(meta.Get(versionKey)) != 8 {
		if k, _ := tx.Cursor().First(); k == nil {
			return nil // made, and cut off before the first run was noted
		}
		return fmt.Errorf("%w: %s holds another program's data: use another folder", store.ErrNotDatabase, path)
	}
	if v := binary.BigEndian.Uint64(meta.Get(versionKey)); v > Version {
		return fmt.Errorf("%w: %s has version %d, this program reads up to %d: start the newer asfound, it was not changed", store.ErrNewer, path, v, Version)
	}
	rows, changes := tx.Bucket(rowsBucket), tx.Bucket(changesBucket)
	if rows == nil || changes == nil || tx.Bucket(devicesBucket) == nil || tx.Bucket(runsBucket) == nil {
		return damaged(path, errors.New("a part of it is missing"))
	}
	count := 0
	err := changes.ForEach(func(seq, key []byte) error {
		count++
		if row := rows.Get(key); len(row) < 8 || string(row[:8]) != string(seq) || row[8] != '{' || row[len(row)-1] != '}' {
			return damaged(path, fmt.Errorf("change %x names no row", seq))
		}
		return nil
	})
	if err == nil && count != rows.Stats().KeyN {
		err = damaged(path, errors.New("rows and changes do not match"))
	}
	return err
}

// failure puts the errors of a running database in the store's terms.
func failure(err error) error {
	switch {
	case err == nil:
		return nil
	case errors.Is(err, syscall.ENOSPC), errors.Is(err, syscall.EDQUOT):
		return fmt.Errorf("%w: nothing was stored: make room on the disk of the data folder (%w)", store.ErrFull, err)
	case errors.Is(err, bolterrors.ErrDatabaseNotOpen):
		return fmt.Errorf("%w: asfound is stopping: try again in a moment", store.ErrClosed)
	}
	return err
}
