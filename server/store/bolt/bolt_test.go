package bolt

import (
	"encoding/binary"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"go.etcd.io/bbolt"

	"asfound/server/record"
	"asfound/server/store"
	"asfound/server/store/storetest"
)

func TestContract(t *testing.T) {
	storetest.Run(t, func(t *testing.T, dir string) store.Store { return mustOpen(t, dir) })
}

func mustOpen(t testing.TB, dir string) *Store {
	t.Helper()
	s, err := Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// fill makes a database of some pages and closes it.
func fill(t *testing.T, dir string) string {
	t.Helper()
	s := mustOpen(t, dir)
	var rows []record.Row
	for i := range 500 {
		value := `"` + strings.Repeat("x", 100) + `"`
		rows = append(rows, storetest.Row(fmt.Sprintf("fact/f%d", i), value, storetest.Stamp(int64(i), storetest.DeviceA), ""))
	}
	if _, err := s.Apply(store.Push{Device: storetest.DeviceA, Rows: rows}); err != nil {
		t.Fatal(err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	return filepath.Join(dir, FileName)
}

func TestOpenRefuses(t *testing.T) {
	edit := func(change func(b []byte) []byte) func(t *testing.T, dir string) string {
		return func(t *testing.T, dir string) string {
			path := fill(t, dir)
			b, err := os.ReadFile(path)
			if err == nil {
				err = os.WriteFile(path, change(b), 0o600)
			}
			if err != nil {
				t.Fatal(err)
			}
			return dir
		}
	}
	database := func(change func(tx *bbolt.Tx) error) func(t *testing.T, dir string) string {
		return func(t *testing.T, dir string) string {
			db, err := bbolt.Open(fill(t, dir), 0o600, nil)
			if err == nil {
				err = errors.Join(db.Update(change), db.Close())
			}
			if err != nil {
				t.Fatal(err)
			}
			return dir
		}
	}
	page := os.Getpagesize()
	cases := map[string]struct {
		make func(t *testing.T, dir string) string
		want error
		says string
	}{
		"a missing folder": {func(t *testing.T, dir string) string { return filepath.Join(dir, "no") }, store.ErrFolder, "does not exist"},
		"a file as folder": {func(t *testing.T, dir string) string { return fill(t, dir) }, store.ErrFolder, "a folder is expected"},
		"an empty file":    {edit(func([]byte) []byte { return nil }), store.ErrDamaged, "last backup"},
		"a text file":      {edit(func(b []byte) []byte { return []byte(strings.Repeat("shopping list\n", 2000)) }), store.ErrNotDatabase, "another program"},
		"cut to half":      {edit(func(b []byte) []byte { return b[:len(b)/2] }), store.ErrDamaged, "last backup"},
		"cut to one page":  {edit(func(b []byte) []byte { return b[:page] }), store.ErrDamaged, "last backup"},
		"cut to 100 bytes": {edit(func(b []byte) []byte { return b[:100] }), store.ErrNotDatabase, "backup"},
		"both heads wiped": {edit(func(b []byte) []byte { clear(b[:2*page]); return b }), store.ErrNotDatabase, "backup"},
		"another program's database": {func(t *testing.T, dir string) string {
			db, err := bbolt.Open(filepath.Join(dir, FileName), 0o600, nil)
			if err == nil {
				err = errors.Join(db.Update(func(tx *bbolt.Tx) error { _, err := tx.CreateBucket([]byte("mail")); return err }), db.Close())
			}
			if err != nil {
				t.Fatal(err)
			}
			return dir
		}, store.ErrNotDatabase, "another program"},
		"a newer version": {database(func(tx *bbolt.Tx) error {
			return tx.Bucket(metaBucket).Put(versionKey, number(Version+1))
		}), store.ErrNewer, "version 2"},
		"a change of no row": {database(func(tx *bbolt.Tx) error {
			return tx.Bucket(changesBucket).Put(number(9999), []byte("shop\x00tax"))
		}), store.ErrDamaged, "last backup"},
		"a row of no change": {database(func(tx *bbolt.Tx) error {
			return tx.Bucket(rowsBucket).Put([]byte("shop\x00tax"), append(number(9999), "{}"...))
		}), store.ErrDamaged, "last backup"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			dir := c.make(t, t.TempDir())
			path := filepath.Join(dir, FileName)
			before, _ := os.ReadFile(path) // missing in some cases
			start := time.Now()
			s, err := Open(dir)
			if err == nil {
				_ = s.Close()
			}
			if !errors.Is(err, c.want) || !strings.Contains(fmt.Sprint(err), c.says) {
				t.Errorf("got %v, want %v saying %q", err, c.want, c.says)
			}
			if time.Since(start) > 30*time.Second || strings.Contains(fmt.Sprint(err), "\n") {
				t.Errorf("it took %v: %v", time.Since(start), err)
			}
			if after, _ := os.ReadFile(path); string(after) != string(before) {
				t.Error("the file was changed")
			}
		})
	}
}

// Every page wiped in turn is either noticed at the start or harmless (a free page, one of the two heads).
func TestWipedPages(t *testing.T) {
	dir := t.TempDir()
	path := fill(t, dir)
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	noticed := 0
	for at := 0; at < len(whole); at += os.Getpagesize() {
		b := append([]byte(nil), whole...)
		clear(b[at : at+os.Getpagesize()])
		if err := os.WriteFile(path, b, 0o600); err != nil {
			t.Fatal(err)
		}
		s, err := Open(dir)
		if err != nil {
			if !errors.Is(err, store.ErrDamaged) {
				t.Errorf("page %d: %v", at/os.Getpagesize(), err)
			}
			noticed++
			continue
		}
		got, err := s.Changes(store.Query{MaxRows: 1000, MaxBytes: 1 << 20})
		if err != nil || len(got.Rows) != 500 {
			t.Errorf("page %d: %d rows, %v", at/os.Getpagesize(), len(got.Rows), err)
		}
		if err := s.Close(); err != nil {
			t.Error(err)
		}
	}
	if noticed == 0 {
		t.Error("no wiped page was noticed")
	}
}

func TestSecondOpen(t *testing.T) {
	dir := t.TempDir()
	s := mustOpen(t, dir)
	defer s.Close()
	start := time.Now()
	_, err := Open(dir)
	if !errors.Is(err, store.ErrInUse) || !strings.Contains(err.Error(), "another asfound is already serving this data folder") {
		t.Errorf("got %v", err)
	}
	if took := time.Since(start); took > 30*time.Second {
		t.Errorf("it took %v", took)
	}
}

// A backup put back makes the cursors given out since then invalid, and only those.
func TestRestoredBackup(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, FileName)
	row := func(n int64) record.Row {
		return storetest.Row(fmt.Sprintf("fact/f%d", n), "1", storetest.Stamp(n, storetest.DeviceA), "")
	}
	push := func(s *Store, n int64) store.Cursor {
		t.Helper()
		if _, err := s.Apply(store.Push{Device: storetest.DeviceA, Mark: storetest.Stamp(n-1, storetest.DeviceA), Rows: []record.Row{row(n)}}); err != nil {
			t.Fatal(err)
		}
		page, err := s.Changes(store.Query{MaxRows: 100, MaxBytes: 1 << 20})
		if err != nil {
			t.Fatal(err)
		}
		return store.Cursor{Epoch: s.Epoch(), Seq: page.Seq, High: page.High}
	}
	s := mustOpen(t, dir)
	early := push(s, 1)
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	backup, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	s = mustOpen(t, dir)
	late := push(s, 2)
	firstPageOnly := store.Cursor{Epoch: late.Epoch, Seq: early.Seq, High: late.High}
	if err := errors.Join(s.Close(), os.WriteFile(path, backup, 0o600)); err != nil {
		t.Fatal(err)
	}
	s = mustOpen(t, dir)
	defer s.Close()
	push(s, 3) // the same number as the late cursor's, of another run
	for name, c := range map[string]struct {
		cursor store.Cursor
		want   bool
	}{"before the backup": {early, true}, "after the backup": {late, false}, "read in part after it": {firstPageOnly, false}} {
		if got, err := s.ValidCursor(c.cursor); err != nil || got != c.want {
			t.Errorf("%s: valid %v, %v", name, got, err)
		}
	}
}

func TestSchemaVersionIsWritten(t *testing.T) {
	db, err := bbolt.Open(fill(t, t.TempDir()), 0o600, &bbolt.Options{ReadOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	if err := db.View(func(tx *bbolt.Tx) error {
		if got := binary.BigEndian.Uint64(tx.Bucket(metaBucket).Get(versionKey)); got != Version {
			return fmt.Errorf("version %d", got)
		}
		return nil
	}); err != nil {
		t.Error(err)
	}
}
