// Package storetest is the contract of store.Store as tests: every implementation runs it.
package storetest

import (
	"errors"
	"fmt"
	"strings"
	"sync"
	"testing"

	"asfound/server/record"
	"asfound/server/store"
)

// Devices and a document for tests; invented.
const (
	DeviceA = "a1a1a1a1a1a1a1a1"
	DeviceB = "b2b2b2b2b2b2b2b2"
	Doc     = "listing:01hzzzzzzzzzzzzzzzzzzzzzz1"
)

// Stamp is a stamp ms after a fixed time.
func Stamp(ms int64, device string) record.Stamp {
	s, err := record.NewStamp(1_714_000_000_000+ms, 0, device)
	if err != nil {
		panic(err)
	}
	return s
}

// Row is a row with one entry that replaced base ("" for none).
func Row(path, value string, stamp, base record.Stamp) record.Row {
	return record.Merge(record.Row{}, record.Row{
		Doc: Doc, Path: path, Entries: []record.Entry{{Value: []byte(value), Stamp: stamp, Base: base}},
	})
}

// Run runs the contract. open opens the store kept in dir, which Run closes.
func Run(t *testing.T, open func(t *testing.T, dir string) store.Store) {
	for name, test := range map[string]func(*testing.T, func() store.Store){
		"a change is listed once, with its latest state": latestOnly,
		"pages": pages,
		"rows just pushed are skipped while unchanged":    skips,
		"a push sent twice changes nothing":               twice,
		"edits made apart are both kept":                  apart,
		"the same stamp with another value":               sameStamp,
		"a higher stamp that the device never sent":       unknownMark,
		"a foreign stamp with another value is merged":    foreignStamp,
		"rows, numbers and devices survive a restart":     restart,
		"cursors of earlier runs":                         cursors,
		"nothing of a refused push is kept":               atomic,
		"pushes at once":                                  atOnce,
		"a closed store says so":                          closed,
		"one row twice in one push":                       doubled,
		"a row is read as it is now":                      oneRow,
		"drawers keep things beside the rows":             drawers,
		"a row of more devices than a row may have stays": crowded,
	} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			var last store.Store
			t.Cleanup(func() {
				if last != nil {
					_ = last.Close() // a test may have closed it
				}
			})
			test(t, func() store.Store {
				if last != nil {
					if err := last.Close(); err != nil {
						t.Fatal(err)
					}
				}
				last = open(t, dir)
				return last
			})
		})
	}
}

func apply(t *testing.T, s store.Store, device string, mark record.Stamp, rows ...record.Row) store.Applied {
	t.Helper()
	applied, err := s.Apply(store.Push{Device: device, Mark: mark, Rows: rows})
	if err != nil {
		t.Fatal(err)
	}
	return applied
}

func changes(t *testing.T, s store.Store, after uint64) store.Page {
	t.Helper()
	page, err := s.Changes(store.Query{After: after, MaxRows: 1000, MaxBytes: 1 << 20})
	if err != nil {
		t.Fatal(err)
	}
	return page
}

func wantRows(t *testing.T, page store.Page, rows ...record.Row) {
	t.Helper()
	var got, want strings.Builder
	for _, r := range page.Rows {
		fmt.Fprintf(&got, "%s\n", r)
	}
	for _, r := range rows {
		fmt.Fprintln(&want, r)
	}
	if got.String() != want.String() {
		t.Errorf("got\n%swant\n%s", &got, &want)
	}
}

func latestOnly(t *testing.T, open func() store.Store) {
	s := open()
	one, two := Row("title", `"lift"`, Stamp(1, DeviceA), ""), Row("maker", `"nobody"`, Stamp(2, DeviceA), "")
	three := Row("title", `"press"`, Stamp(3, DeviceA), Stamp(1, DeviceA))
	apply(t, s, DeviceA, "", one, two)
	first := changes(t, s, 0)
	wantRows(t, first, one, two)
	apply(t, s, DeviceA, Stamp(2, DeviceA), three)
	wantRows(t, changes(t, s, 0), two, record.Merge(one, three))
	next := changes(t, s, first.Seq)
	wantRows(t, next, record.Merge(one, three))
	if next.High != next.Seq {
		t.Error("more is promised than there is")
	}
	wantRows(t, changes(t, s, next.Seq))
}

func pages(t *testing.T, open func() store.Store) {
	s := open()
	var rows []record.Row
	for i := range 25 {
		rows = append(rows, Row(fmt.Sprintf("fact/f%02d", i), fmt.Sprint(i), Stamp(int64(i), DeviceA), ""))
	}
	apply(t, s, DeviceA, "", rows...)
	for _, q := range []store.Query{{MaxRows: 10, MaxBytes: 1 << 20}, {MaxRows: 1000, MaxBytes: 2000}, {MaxRows: 1000, MaxBytes: 1}} {
		var all store.Page
		for rounds := 0; ; rounds++ {
			page, err := s.Changes(q)
			if err != nil {
				t.Fatal(err)
			}
			if len(page.Rows) == 0 || len(page.Rows) > q.MaxRows || rounds > 30 {
				t.Fatalf("%+v: a page of %d rows", q, len(page.Rows))
			}
			all.Rows = append(all.Rows, page.Rows...)
			q.After = page.Seq
			if page.Seq == page.High {
				break
			}
		}
		wantRows(t, all, rows...)
	}
}

func skips(t *testing.T, open func() store.Store) {
	s := open()
	mine := Row("title", `"lift"`, Stamp(1, DeviceA), "")
	theirs := Row("title", `"press"`, Stamp(2, DeviceB), "")
	applied := apply(t, s, DeviceA, "", mine)
	query := store.Query{MaxRows: 10, MaxBytes: 1000, Skip: applied.Known}
	page, err := s.Changes(query)
	if err != nil || len(page.Rows) != 0 || page.Seq != page.High || page.Seq == 0 {
		t.Errorf("%+v, %v: want no row and the cursor at the end", page, err)
	}
	apply(t, s, DeviceB, "", theirs)
	if page, err = s.Changes(query); err != nil {
		t.Fatal(err)
	}
	wantRows(t, page, record.Merge(mine, theirs))
	// What was merged with something else is not known to the sender.
	if known := apply(t, s, DeviceB, Stamp(2, DeviceB), Row("title", `"anvil"`, Stamp(4, DeviceB), "")).Known; len(known) != 0 {
		t.Errorf("known %v, want none", known)
	}
}

func twice(t *testing.T, open func() store.Store) {
	s := open()
	row := Row("title", `"lift"`, Stamp(1, DeviceA), "")
	apply(t, s, DeviceA, "", row)
	seq := changes(t, s, 0).High
	applied := apply(t, s, DeviceA, "", row)
	if got := changes(t, s, 0); got.High != seq || len(got.Rows) != 1 {
		t.Errorf("number %d after %d, %d rows", got.High, seq, len(got.Rows))
	}
	if len(applied.Known) != 1 {
		t.Error("the row that is stored as sent is not known")
	}
}

func apart(t *testing.T, open func() store.Store) {
	s := open()
	a, b := Row("title", `"lift"`, Stamp(2, DeviceA), ""), Row("title", `"press"`, Stamp(1, DeviceB), "")
	apply(t, s, DeviceA, "", a)
	apply(t, s, DeviceB, "", b)
	wantRows(t, changes(t, s, 0), record.Merge(a, b))
}

func sameStamp(t *testing.T, open func() store.Store) {
	s := open()
	apply(t, s, DeviceA, "", Row("title", `"lift"`, Stamp(1, DeviceA), ""))
	_, err := s.Apply(store.Push{Device: DeviceA, Mark: Stamp(1, DeviceA), Rows: []record.Row{Row("title", `"press"`, Stamp(1, DeviceA), "")}})
	if !errors.Is(err, store.ErrDeviceReused) {
		t.Errorf("%v, want ErrDeviceReused", err)
	}
}

func unknownMark(t *testing.T, open func() store.Store) {
	s := open()
	row := Row("title", `"lift"`, Stamp(5, DeviceA), "")
	apply(t, s, DeviceA, "", row)
	other := Row("maker", `"nobody"`, Stamp(6, DeviceA), "")
	for name, mark := range map[string]record.Stamp{"none": "", "lower": Stamp(4, DeviceA)} {
		if _, err := s.Apply(store.Push{Device: DeviceA, Mark: mark, Rows: []record.Row{other}}); !errors.Is(err, store.ErrDeviceReused) {
			t.Errorf("mark %s: %v, want ErrDeviceReused", name, err)
		}
	}
	apply(t, s, DeviceA, "", row, other)                               // the answer was lost, all is sent again
	apply(t, s, DeviceA, Stamp(6, DeviceA), other)                     // the mark is known
	apply(t, s, DeviceA, Stamp(99, DeviceA), other)                    // the device knows more than this store: it was set back
	apply(t, s, DeviceB, "", Row("title", `1`, Stamp(7, DeviceB), "")) // another device is not concerned
}

func foreignStamp(t *testing.T, open func() store.Store) {
	s := open()
	a, b := Row("title", `"lift"`, Stamp(1, DeviceA), ""), Row("title", `"press"`, Stamp(1, DeviceA), "")
	apply(t, s, DeviceA, "", a)
	apply(t, s, DeviceB, "", b)
	wantRows(t, changes(t, s, 0), record.Merge(a, b))
}

func restart(t *testing.T, open func() store.Store) {
	s := open()
	row := Row("title", `"lift <2 t> & more"`, Stamp(1, DeviceA), "")
	apply(t, s, DeviceA, "", row)
	before, epoch := changes(t, s, 0), s.Epoch()
	s = open()
	after := changes(t, s, 0)
	wantRows(t, after, row)
	if after.High != before.High || s.Epoch() == epoch || len(s.Epoch()) != 16 {
		t.Errorf("number %d, want %d; epoch %q after %q", after.High, before.High, s.Epoch(), epoch)
	}
	if _, err := s.Apply(store.Push{Device: DeviceA, Rows: []record.Row{Row("maker", `1`, Stamp(2, DeviceA), "")}}); !errors.Is(err, store.ErrDeviceReused) {
		t.Errorf("the device's highest stamp was forgotten: %v", err)
	}
}

func cursors(t *testing.T, open func() store.Store) {
	s := open()
	valid := func(want bool, epoch string, seq, high uint64) {
		t.Helper()
		if got, err := s.ValidCursor(store.Cursor{Epoch: epoch, Seq: seq, High: high}); err != nil || got != want {
			t.Errorf("cursor %q %d of %d: valid %v, %v, want %v", epoch, seq, high, got, err, want)
		}
	}
	first := s.Epoch()
	apply(t, s, DeviceA, "", Row("a", "1", Stamp(1, DeviceA), ""), Row("b", "1", Stamp(2, DeviceA), ""))
	valid(true, "", 0, 0)
	valid(false, "", 1, 1)
	valid(true, first, 2, 2)
	valid(true, first, 1, 2)
	valid(false, first, 3, 3)
	valid(false, first, 1, 3)
	valid(false, first, 2, 1)
	valid(false, "0123456789abcdef", 1, 1)
	s = open()
	second := s.Epoch()
	apply(t, s, DeviceA, Stamp(2, DeviceA), Row("c", "1", Stamp(3, DeviceA), ""))
	valid(true, first, 2, 2)
	valid(false, first, 3, 3) // the first run never gave a 3
	valid(true, second, 3, 3)
	valid(false, second, 4, 4)
	s = open()
	valid(true, first, 2, 2)
	valid(true, second, 3, 3)
	valid(false, second, 4, 4)
	valid(true, s.Epoch(), 3, 3)
}

func atomic(t *testing.T, open func() store.Store) {
	s := open()
	apply(t, s, DeviceA, "", Row("title", `1`, Stamp(1, DeviceA), ""))
	before := changes(t, s, 0)
	_, err := s.Apply(store.Push{Device: DeviceA, Mark: Stamp(1, DeviceA), Rows: []record.Row{
		Row("maker", `1`, Stamp(2, DeviceA), ""), Row("title", `2`, Stamp(1, DeviceA), ""),
	}})
	if !errors.Is(err, store.ErrDeviceReused) {
		t.Fatal(err)
	}
	if after := changes(t, s, 0); after.High != before.High || len(after.Rows) != 1 {
		t.Errorf("%d rows, number %d: the refused push left something", len(after.Rows), after.High)
	}
}

func atOnce(t *testing.T, open func() store.Store) {
	s := open()
	const devices, each = 8, 20
	var wait sync.WaitGroup
	for d := range devices {
		wait.Go(func() {
			device := fmt.Sprintf("%016x", d+1)
			var mark record.Stamp
			for i := range each {
				stamp := Stamp(int64(i), device)
				row := Row(fmt.Sprintf("fact/f%d", i), fmt.Sprint(d), stamp, "")
				if _, err := s.Apply(store.Push{Device: device, Mark: mark, Rows: []record.Row{row}}); err != nil {
					t.Error(err)
				}
				mark = stamp
				if _, err := s.Changes(store.Query{MaxRows: 5, MaxBytes: 1000}); err != nil {
					t.Error(err)
				}
			}
		})
	}
	wait.Wait()
	page := changes(t, s, 0)
	if len(page.Rows) != each || page.High != devices*each {
		t.Errorf("%d rows, number %d, want %d and %d", len(page.Rows), page.High, each, devices*each)
	}
	for _, text := range page.Rows {
		if row, refused, ok := record.Read(text); !ok || len(refused) > 0 || len(row.Entries) != devices {
			t.Errorf("%s: want %d entries", text, devices)
		}
	}
}

func closed(t *testing.T, open func() store.Store) {
	s := open()
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	_, err := s.Apply(store.Push{Device: DeviceA, Rows: []record.Row{Row("title", `1`, Stamp(1, DeviceA), "")}})
	if !errors.Is(err, store.ErrClosed) {
		t.Errorf("Apply: %v, want ErrClosed", err)
	}
	if _, err := s.Changes(store.Query{}); !errors.Is(err, store.ErrClosed) {
		t.Errorf("Changes: %v, want ErrClosed", err)
	}
	if _, err := s.ValidCursor(store.Cursor{Epoch: "x"}); !errors.Is(err, store.ErrClosed) {
		t.Errorf("ValidCursor: %v, want ErrClosed", err)
	}
}

func doubled(t *testing.T, open func() store.Store) {
	s := open()
	a, b := Row("title", `"lift"`, Stamp(1, DeviceA), ""), Row("title", `"press"`, Stamp(2, DeviceA), "")
	apply(t, s, DeviceA, "", a, b)
	page := changes(t, s, 0)
	wantRows(t, page, b)
}

func crowded(t *testing.T, open func() store.Store) {
	s := open()
	full := record.Row{Doc: Doc, Path: "title"}
	for i := range record.MaxDevices {
		full.Entries = append(full.Entries, record.Entry{Value: []byte("1"), Stamp: Stamp(1, fmt.Sprintf("%016x", i+1))})
	}
	full = record.Merge(record.Row{}, full)
	apply(t, s, DeviceA, "", full)
	applied := apply(t, s, DeviceA, "", Row("title", "2", Stamp(2, DeviceA), ""), Row("maker", "2", Stamp(3, DeviceA), ""))
	if len(applied.Refused) != 1 || applied.Refused[0].Path != "title" || applied.Refused[0].Reason == "" {
		t.Errorf("refused %v, want the title", applied.Refused)
	}
	wantRows(t, changes(t, s, 0), full, Row("maker", "2", Stamp(3, DeviceA), ""))
}

func oneRow(t *testing.T, open func() store.Store) {
	s := open()
	key := record.Key{Doc: Doc, Path: "title"}
	none, err := s.Row(key)
	if err != nil || len(none.Entries) != 0 || none.Key() != key {
		t.Errorf("no row: %v, %v", none, err)
	}
	first, second := Row("title", `"a"`, Stamp(1, DeviceA), ""), Row("title", `"b"`, Stamp(2, DeviceB), Stamp(1, DeviceA))
	apply(t, s, DeviceA, "", first)
	apply(t, s, DeviceB, "", second, Row("titles", `"c"`, Stamp(3, DeviceB), ""))
	got, err := s.Row(key)
	if want := record.Merge(first, second); err != nil || got.String() != want.String() {
		t.Errorf("got %v, %v, want %v", got, err, want)
	}
}

func drawers(t *testing.T, open func() store.Store) {
	s := open()
	holds := func(name string, want map[string]string) {
		t.Helper()
		got, err := s.Drawer(name).All()
		if err != nil {
			t.Fatal(err)
		}
		text := map[string]string{}
		for k, v := range got {
			text[k] = string(v)
		}
		if fmt.Sprint(text) != fmt.Sprint(want) {
			t.Errorf("drawer %s: %v, want %v", name, text, want)
		}
	}
	holds("a", nil)
	for _, put := range [][3]string{{"a", "x", "1"}, {"a", "y", "2"}, {"b", "x", "3"}, {"a", "x", "4"}} {
		if err := s.Drawer(put[0]).Put(put[1], []byte(put[2])); err != nil {
			t.Fatal(err)
		}
	}
	for _, key := range []string{"y", "never"} {
		if err := s.Drawer("a").Remove(key); err != nil {
			t.Fatal(err)
		}
	}
	if err := s.Drawer("never").Remove("x"); err != nil {
		t.Fatal(err)
	}
	if page := changes(t, s, 0); len(page.Rows) != 0 || page.High != 0 {
		t.Errorf("a drawer shows among the rows: %+v", page)
	}
	s = open()
	holds("a", map[string]string{"x": "4"})
	holds("b", map[string]string{"x": "3"})
	holds("never", nil)
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	if err := s.Drawer("a").Put("x", nil); !errors.Is(err, store.ErrClosed) {
		t.Errorf("closed: %v", err)
	}
}
