package bolt

import (
	"bytes"

	"go.etcd.io/bbolt"

	"asfound/server/store"
)

var drawersBucket = []byte("drawers")

// drawer is a bucket within the bucket of drawers.
type drawer struct {
	db   *bbolt.DB
	name []byte
}

// Drawer: see store.Store.
func (s *Store) Drawer(name string) store.Drawer { return drawer{s.db, []byte(name)} }

// in gives the drawer's bucket, nil when nothing was ever put there.
func (d drawer) in(tx *bbolt.Tx) *bbolt.Bucket {
	if all := tx.Bucket(drawersBucket); all != nil {
		return all.Bucket(d.name)
	}
	return nil
}

func (d drawer) All() (map[string][]byte, error) {
	found := map[string][]byte{}
	err := failure(d.db.View(func(tx *bbolt.Tx) error {
		in := d.in(tx)
		if in == nil {
			return nil
		}
		return in.ForEach(func(k, v []byte) error {
			found[string(k)] = bytes.Clone(v)
			return nil
		})
	}))
	return found, err
}

func (d drawer) Put(key string, value []byte) error {
	return failure(d.db.Update(func(tx *bbolt.Tx) error {
		all, err := tx.CreateBucketIfNotExists(drawersBucket)
		if err != nil {
			return err
		}
		in, err := all.CreateBucketIfNotExists(d.name)
		if err != nil {
			return err
		}
		return in.Put([]byte(key), value)
	}))
}

func (d drawer) Remove(key string) error {
	return failure(d.db.Update(func(tx *bbolt.Tx) error {
		if in := d.in(tx); in != nil {
			return in.Delete([]byte(key))
		}
		return nil
	}))
}
