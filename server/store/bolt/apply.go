package bolt

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"errors"
	"fmt"

	"go.etcd.io/bbolt"

	"asfound/server/record"
	"asfound/server/store"
)

// errNothing rolls back a transaction that changed nothing: a push sent twice costs no write.
var errNothing = errors.New("nothing changed")

// Apply: see store.Store. One transaction, one wait for the disk, however many rows.
func (s *Store) Apply(p store.Push) (store.Applied, error) {
	out := store.Applied{Known: make(map[record.Key]uint64, len(p.Rows))}
	err := s.db.Update(func(tx *bbolt.Tx) error {
		w := writer{
			rows: tx.Bucket(rowsBucket), changes: tx.Bucket(changesBucket), devices: tx.Bucket(devicesBucket),
			seq: lastSeq(tx), highest: map[string]record.Stamp{}, out: &out,
		}
		before := w.seq
		highest := record.Stamp(w.devices.Get([]byte(p.Device)))
		if highest > p.Mark && !pushed(p.Rows, highest) {
			return store.Reused(p.Device, highest, "was stored here but never sent by the device that asks")
		}
		for _, row := range p.Rows {
			if err := w.put(p.Device, row); err != nil {
				return err
			}
		}
		raised, err := w.raise()
		if err != nil {
			return err
		}
		if w.seq == before && !raised {
			return errNothing
		}
		return tx.Bucket(metaBucket).Put(seqKey, number(w.seq))
	})
	if err != nil && !errors.Is(err, errNothing) {
		return store.Applied{}, failure(err)
	}
	return out, nil
}

func pushed(rows []record.Row, s record.Stamp) bool {
	for _, r := range rows {
		for _, e := range r.Entries {
			if e.Stamp == s {
				return true
			}
		}
	}
	return false
}

type writer struct {
	rows, changes, devices *bbolt.Bucket
	seq                    uint64
	highest                map[string]record.Stamp
	out                    *store.Applied
	text                   []byte
}

// put merges one row and numbers it when that changed it.
func (w *writer) put(device string, row record.Row) error {
	key := rowKey(row.Key())
	stored := w.rows.Get(key)
	merged := row
	if stored != nil {
		old, err := decode(stored)
		if err != nil {
			return err
		}
		if err := reused(device, old, row); err != nil {
			return err
		}
		merged = record.Merge(old, row)
	}
	if len(merged.Entries) > record.MaxDevices || len(merged.Seen) > record.MaxDevices {
		w.out.Refused = append(w.out.Refused, record.Refusal{
			Doc: row.Doc, Path: row.Path,
			Reason: fmt.Sprintf("more than %d devices have written here: choose one of the values first", record.MaxDevices),
		})
		return nil
	}
	w.note(row)
	w.text = row.Append(w.text[:0])
	sent := len(w.text)
	w.text = merged.Append(w.text)
	text := w.text[sent:]
	at := uint64(0)
	if stored != nil && bytes.Equal(stored[8:], text) {
		at = binary.BigEndian.Uint64(stored)
	} else {
		if stored != nil {
			if err := w.changes.Delete(stored[:8]); err != nil {
				return err
			}
		}
		w.seq++
		at = w.seq
		value := append(binary.BigEndian.AppendUint64(make([]byte, 0, 8+len(text)), at), text...)
		if err := w.rows.Put(key, value); err != nil {
			return err
		}
		if err := w.changes.Put(number(at), key); err != nil {
			return err
		}
	}
	if bytes.Equal(w.text[:sent], text) {
		w.out.Known[row.Key()] = at
	}
	return nil
}

// note keeps the highest stamp per device of all that a push tells about. Base, settles and seen count too: they were
// stamps of their device.
func (w *writer) note(row record.Row) {
	for _, e := range row.Entries {
		w.highest[e.Stamp.Device()] = max(w.highest[e.Stamp.Device()], e.Stamp)
	}
	for _, s := range row.Seen {
		w.highest[s.Device()] = max(w.highest[s.Device()], s)
	}
}

func (w *writer) raise() (raised bool, err error) {
	for device, s := range w.highest {
		if s > record.Stamp(w.devices.Get([]byte(device))) {
			raised = true
			if err := w.devices.Put([]byte(device), []byte(s)); err != nil {
				return false, err
			}
		}
	}
	return raised, nil
}

// reused looks for an own stamp of the sender that is stored with another value.
func reused(device string, old, row record.Row) error {
	for _, e := range row.Entries {
		if e.Stamp.Device() != device {
			continue
		}
		for _, o := range old.Entries {
			if o.Stamp == e.Stamp && !bytes.Equal(o.Value, e.Value) {
				return store.Reused(device, e.Stamp, "is stored here with another value")
			}
		}
	}
	return nil
}

// Changes: see store.Store.
func (s *Store) Changes(q store.Query) (page store.Page, err error) {
	err = failure(s.db.View(func(tx *bbolt.Tx) error {
		page = store.Page{Rows: [][]byte{}, High: lastSeq(tx)}
		rows, cursor := tx.Bucket(rowsBucket), tx.Bucket(changesBucket).Cursor()
		size, at := 0, q.After
		for seq, key := cursor.Seek(number(q.After + 1)); seq != nil; seq, key = cursor.Next() {
			value := rows.Get(key)
			if len(value) < 8 {
				return fmt.Errorf("%w: change %x names no row: %s", store.ErrDamaged, seq, rescue)
			}
			n := binary.BigEndian.Uint64(seq)
			if known, ok := q.Skip[parseKey(key)]; !ok || known != n {
				if len(page.Rows) > 0 && (len(page.Rows) >= q.MaxRows || size+len(value) > q.MaxBytes) {
					page.Seq = at
					return nil
				}
				page.Rows = append(page.Rows, bytes.Clone(value[8:]))
				size += len(value)
			}
			at = n
		}
		page.Seq = page.High
		return nil
	}))
	return page, err
}

// Row: see store.Store.
func (s *Store) Row(k record.Key) (row record.Row, err error) {
	err = failure(s.db.View(func(tx *bbolt.Tx) error {
		stored := tx.Bucket(rowsBucket).Get(rowKey(k))
		if stored == nil {
			row = record.Merge(record.Row{}, record.Row{Doc: k.Doc, Path: k.Path})
			return nil
		}
		row, err = decode(stored)
		return err
	}))
	return row, err
}

func rowKey(k record.Key) []byte {
	b := make([]byte, 0, len(k.Doc)+1+len(k.Path))
	b = append(b, k.Doc...)
	b = append(b, 0)
	return append(b, k.Path...)
}

func parseKey(b []byte) record.Key {
	doc, path, _ := bytes.Cut(b, []byte{0})
	return record.Key{Doc: string(doc), Path: string(path)}
}

// decode reads a stored row: a number and JSON that Append wrote.
func decode(value []byte) (row record.Row, err error) {
	if len(value) < 8 {
		return row, fmt.Errorf("%w: a row is too short: %s", store.ErrDamaged, rescue)
	}
	if err := json.Unmarshal(value[8:], &row); err != nil {
		return row, fmt.Errorf("%w: a row is not readable (%w): %s", store.ErrDamaged, err, rescue)
	}
	return row, nil
}
