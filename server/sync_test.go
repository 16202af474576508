package server

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"asfound/server/record"
	"asfound/server/store"
	"asfound/server/store/bolt"
	"asfound/server/store/storetest"
)

var (
	stamp = storetest.Stamp
	row   = storetest.Row
)

func TestTwoDevicesExchange(t *testing.T) {
	s := newShop(t)
	lift := row("title", `"two post lift, <blue> & \"old\""`, stamp(1, deviceA), "")
	a := s.exchange(deviceA, cursor{}, "", lift)
	if a.Status != 200 || a.Seq != 1 || a.More || a.Reread || len(a.Rows) != 0 || a.Now != noon.UnixMilli() || a.Epoch != s.store.Epoch() {
		t.Errorf("first push: %+v", a)
	}
	b := s.exchange(deviceB, cursor{}, "")
	sameRows(t, b.Rows, lift)

	// Both edit apart: the later stamp wins, the other is kept, and both devices learn it.
	byA := row("title", `"lift, red"`, stamp(5, deviceA), stamp(1, deviceA))
	byB := row("title", `"lift, green"`, stamp(6, deviceB), stamp(1, deviceA))
	both := record.Merge(byA, byB)
	a = s.exchange(deviceA, a.cursor(), stamp(1, deviceA), byA)
	b = s.exchange(deviceB, b.cursor(), "", byB)
	sameRows(t, b.Rows, both)
	a = s.exchange(deviceA, a.cursor(), stamp(5, deviceA))
	sameRows(t, a.Rows, both)
	if w, _ := both.Winner(); w.Stamp != stamp(6, deviceB) || len(both.Losers()) != 1 {
		t.Errorf("winner %v, losers %v", w, both.Losers())
	}
	if again := s.exchange(deviceA, a.cursor(), stamp(5, deviceA)); len(again.Rows) != 0 || again.Seq != a.Seq {
		t.Errorf("nothing is new, but came: %+v", again)
	}
}

func TestAnswerLostAfterCommit(t *testing.T) {
	s := newShop(t)
	lift := row("title", `"lift"`, stamp(1, deviceA), "")
	first := s.exchange(deviceA, cursor{}, "", lift)
	before, last := s.stored()
	second := s.exchange(deviceA, cursor{}, "", lift)
	after, lastAfter := s.stored()
	if fmt.Sprint(first) != fmt.Sprint(second) || fmt.Sprint(before) != fmt.Sprint(after) || last != lastAfter {
		t.Errorf("the second push differs:\n%+v\n%+v\n%v\n%v", first, second, before, after)
	}
}

func TestClockAhead(t *testing.T) {
	s := newShop(t)
	year := int64(365 * 24 * time.Hour / time.Millisecond)
	late := row("maker", `"nobody"`, stamp(year, deviceA), "")
	m := s.exchange(deviceA, cursor{}, "", row("title", `"lift"`, stamp(1, deviceA), ""), late)
	if m.Status != 409 || m.Code != "clock-ahead" || m.Now != noon.UnixMilli() {
		t.Errorf("got %+v", m)
	}
	if rows, _ := s.stored(); len(rows) != 0 {
		t.Errorf("stored all the same: %v", rows)
	}
	edge := noon.UnixMilli() - 1_714_000_000_000 + record.MaxAhead
	if m := s.exchange(deviceA, cursor{}, "", row("title", `1`, stamp(edge, deviceA), "")); m.Status != 200 {
		t.Errorf("60 s ahead: %+v", m)
	}
	if m := s.exchange(deviceB, cursor{}, "", row("title", `1`, stamp(edge+1, deviceB), "")); m.Code != "clock-ahead" {
		t.Errorf("60.001 s ahead: %+v", m)
	}
	hidden := row("title", `1`, stamp(2, deviceB), "")
	hidden.Seen = []record.Stamp{stamp(year, deviceA)}
	if m := s.exchange(deviceB, cursor{}, "", hidden); m.Code != "clock-ahead" {
		t.Errorf("a seen stamp a year ahead: %+v", m)
	}
	if m := s.exchange(deviceB, cursor{}, "", row("title", `1`, stamp(-year, deviceB), "")); m.Status != 200 {
		t.Errorf("a year behind: %+v", m)
	}
}

func TestMalformedEntriesAreRefusedAlone(t *testing.T) {
	s := newShop(t)
	m := s.post(`{"device":"` + deviceA + `","cursor":{"epoch":"","seq":0},"mark":"","rows":[
		{"doc":"shop","path":"tax","entries":[{"value":0.07,"stamp":"ffffffffffff0000` + deviceA + `","base":""}],"seen":[]},
		{"doc":"shop","path":"fees","entries":[{"value":1,"stamp":"018F149A4401AAAA` + deviceA + `","base":""}],"seen":[]},
		{"doc":"shop","path":"../etc","entries":[{"value":1,"stamp":"` + string(stamp(1, deviceA)) + `","base":""}],"seen":[]},
		{"doc":"listing:x","path":"title","entries":[],"seen":[]},
		7,
		{"doc":"shop","path":"units","entries":[{"value":` + strings.Repeat(`[`, 17) + strings.Repeat(`]`, 17) + `,"stamp":"` + string(stamp(1, deviceA)) + `"}],"seen":[]},
		{"doc":"shop","path":"kept","unknown":{"x":1},"entries":[{"value":{"b":2, "a":1.0},"stamp":"` + string(stamp(2, deviceA)) + `","base":"","more":true}],"seen":[]}
	],"want":10,"unknown":[]}`)
	if m.Status != 200 || len(m.Refused) != 6 {
		t.Fatalf("got %+v", m)
	}
	for i, want := range []struct{ path, stamp, reason string }{
		{"tax", "ffffffffffff0000" + deviceA, "9999"}, {"fees", "018F149A4401AAAA" + deviceA, "0-9 and a-f"}, {"../etc", "", "dots"},
		{"title", "", "26 characters"}, {"", "", "an object is expected"}, {"units", string(stamp(1, deviceA)), "16 levels"},
	} {
		if r := m.Refused[i]; r.Path != want.path || r.Stamp != want.stamp || !strings.Contains(r.Reason, want.reason) {
			t.Errorf("refused %+v, want %+v", r, want)
		}
	}
	want := `{"doc":"shop","path":"kept","entries":[{"value":{"a":1,"b":2},"stamp":"` + string(stamp(2, deviceA)) + `","base":""}],"seen":[]}`
	if rows, _ := s.stored(); len(rows) != 1 || rows[0] != want {
		t.Errorf("stored %v, want %s", rows, want)
	}
}

func TestDeviceReused(t *testing.T) {
	s := newShop(t)
	s.exchange(deviceA, cursor{}, "", row("title", `"lift"`, stamp(1, deviceA), ""))
	for name, m := range map[string]message{
		"same stamp, other value": s.exchange(deviceA, cursor{}, stamp(1, deviceA), row("title", `"press"`, stamp(1, deviceA), "")),
		"a stamp it never sent":   s.exchange(deviceA, cursor{}, "", row("maker", `1`, stamp(2, deviceA), "")),
	} {
		if m.Status != 409 || m.Code != "device-reused" || m.Now != noon.UnixMilli() || !strings.Contains(m.Message, "new device id") {
			t.Errorf("%s: %+v", name, m)
		}
	}
	// Under a new id nothing is lost.
	m := s.exchange(deviceB, cursor{}, "", row("title", `"press"`, stamp(1, deviceB), ""))
	sameRows(t, m.Rows, record.Merge(row("title", `"lift"`, stamp(1, deviceA), ""), row("title", `"press"`, stamp(1, deviceB), "")))
}

// The database is put back to an older copy while two devices hold more: both are told to read again, push all they
// hold, and nothing acknowledged is lost.
func TestRestoredBackupHeals(t *testing.T) {
	s := newShop(t)
	path := filepath.Join(s.dir, bolt.FileName)
	first := row("title", `"lift"`, stamp(1, deviceA), "")
	a := s.exchange(deviceA, cursor{}, "", first)
	b := s.exchange(deviceB, cursor{}, "")
	if err := s.store.Close(); err != nil {
		t.Fatal(err)
	}
	backup, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	s.open()
	second := row("maker", `"nobody"`, stamp(2, deviceA), "")
	a = s.exchange(deviceA, a.cursor(), stamp(1, deviceA), second)
	if err := s.store.Close(); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, backup, 0o600); err != nil {
		t.Fatal(err)
	}
	s.open()
	third := row("model", `"none"`, stamp(3, deviceB), "")
	b = s.exchange(deviceB, b.cursor(), "", third)
	if b.Reread {
		t.Error("a device that knows no more than the backup need not read again")
	}
	a = s.exchange(deviceA, a.cursor(), stamp(2, deviceA))
	if !a.Reread || a.Status != 200 {
		t.Fatalf("want reread: %+v", a)
	}
	sameRows(t, a.Rows, first, third)
	a = s.exchange(deviceA, a.cursor(), stamp(2, deviceA), first, second, third)
	if a.Reread {
		t.Error("told to read again twice")
	}
	b = s.exchange(deviceB, b.cursor(), stamp(3, deviceB))
	sameRows(t, b.Rows, second)
	if rows, _ := s.stored(); len(rows) != 3 {
		t.Errorf("stored %v, want all three", rows)
	}
}

// A device that has read the first page only, but whose push was acknowledged, is healed too.
func TestRestoredBackupHealsAHalfReadDevice(t *testing.T) {
	s := newShop(t)
	path := filepath.Join(s.dir, bolt.FileName)
	var rows []record.Row
	for i := range 10 {
		rows = append(rows, row(fmt.Sprintf("fact/f%d", i), "1", stamp(int64(i), deviceB), ""))
	}
	s.exchange(deviceB, cursor{}, "", rows...)
	if err := s.store.Close(); err != nil {
		t.Fatal(err)
	}
	backup, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	s.open()
	mine := row("title", `"lift"`, stamp(50, deviceA), "")
	half := s.post(pushBody(deviceA, cursor{}, "", 3, mine))
	if !half.More || half.Seq != 3 || len(half.Rows) != 3 {
		t.Fatalf("want a first page of three: %+v", half)
	}
	if next := s.post(pushBody(deviceA, half.cursor(), stamp(50, deviceA), 3)); next.Reread || next.Seq != 6 {
		t.Errorf("the next page: %+v", next)
	}
	if err := s.store.Close(); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, backup, 0o600); err != nil {
		t.Fatal(err)
	}
	s.open()
	if m := s.post(pushBody(deviceA, half.cursor(), stamp(50, deviceA), 3)); !m.Reread {
		t.Errorf("its acknowledged push is lost and it is not told: %+v", m)
	}
}

func TestCursorsNobodyGave(t *testing.T) {
	s := newShop(t)
	lift := row("title", `"lift"`, stamp(1, deviceA), "")
	at := s.exchange(deviceA, cursor{}, "", lift).cursor()
	for _, c := range []cursor{
		{at.Epoch, at.Seq + 1}, {at.Epoch, 1<<64 - 1}, {"0123456789abcdef", 1}, {"", 1}, {at.Epoch + ".zz", 1}, {at.Epoch + ".9", 1}, {"x", 0},
	} {
		m := s.exchange(deviceB, c, "")
		if m.Status != 200 || !m.Reread {
			t.Errorf("%+v: %+v, want reread", c, m)
		}
		sameRows(t, m.Rows, lift)
	}
}

func TestCursorOfAnEarlierRunIsGood(t *testing.T) {
	s := newShop(t)
	at := s.exchange(deviceA, cursor{}, "", row("title", `"lift"`, stamp(1, deviceA), "")).cursor()
	s.restart()
	if m := s.exchange(deviceA, at, stamp(1, deviceA)); m.Reread || len(m.Rows) != 0 || m.Epoch == at.Epoch {
		t.Errorf("after a restart: %+v", m)
	}
}

func TestPagesOfAReread(t *testing.T) {
	s := newShop(t)
	var rows []record.Row
	for i := range 7 {
		rows = append(rows, row(fmt.Sprintf("fact/f%d", i), `"`+strings.Repeat("x", 60_000)+`"`, stamp(int64(i), deviceA), ""))
	}
	s.exchange(deviceA, cursor{}, "", rows...)
	s.exchange(deviceA, cursor{}, stamp(6, deviceA), row("title", `1`, stamp(8, deviceA), ""))
	var got []record.Row
	at := cursor{}
	for range 20 {
		m := s.post(pushBody(deviceB, at, "", 2))
		if len(m.Rows) > 2 || m.Reread {
			t.Fatalf("page %+v", m.cursor())
		}
		got = append(got, m.Rows...)
		if at = m.cursor(); !m.More {
			break
		}
	}
	sameRows(t, got, append(rows, row("title", `1`, stamp(8, deviceA), ""))...)
}

func TestBadRequests(t *testing.T) {
	s := newShop(t)
	good := pushBody(deviceA, cursor{}, "", 0)
	for name, c := range map[string]struct {
		body   string
		status int
		says   string
	}{
		"empty":              {"", 400, "not JSON"},
		"not JSON":           {"hello", 400, "not JSON"},
		"half":               {good[:len(good)/2], 400, "not JSON"},
		"a list":             {"[]", 400, "an object is expected"},
		"HTML":               {"<html></html>", 400, "not JSON"},
		"binary":             {"\x00\xff\xfe", 400, "not JSON"},
		"no device":          {`{}`, 422, "device is missing"},
		"a short device":     {`{"device":"abc"}`, 422, "device: 16 digits"},
		"a zero device":      {`{"device":"0000000000000000"}`, 422, "device: 16 digits"},
		"a number as device": {`{"device":7}`, 400, "device: a number"},
		"a bad mark":         {`{"device":"` + deviceA + `","mark":"x"}`, 422, "mark: a stamp"},
		"a foreign mark":     {`{"device":"` + deviceA + `","mark":"` + string(stamp(1, deviceB)) + `"}`, 422, "sending device itself"},
		"a negative cursor":  {`{"device":"` + deviceA + `","cursor":{"epoch":"","seq":-1}}`, 400, "cursor.seq: a number -1"},
		"a long epoch":       {`{"device":"` + deviceA + `","cursor":{"epoch":"` + strings.Repeat("x", 65) + `"}}`, 422, "cursor.epoch"},
		"a negative want":    {`{"device":"` + deviceA + `","want":-1}`, 422, "want: too small"},
		"rows as text":       {`{"device":"` + deviceA + `","rows":"x"}`, 400, "rows: a string"},
		"200 levels":         {`{"device":"` + deviceA + `","x":` + strings.Repeat("[", 200) + strings.Repeat("]", 200) + `}`, 400, "too deep"},
		"501 rows":           {`{"device":"` + deviceA + `","rows":[` + strings.Repeat("1,", 500) + `1]}`, 413, "501 rows"},
		"2 MiB":              {`{"device":"` + deviceA + `","x":"` + strings.Repeat("x", 2<<20) + `"}`, 413, "1048576 bytes"},
	} {
		m := s.post(c.body)
		if m.Status != c.status || !strings.Contains(m.Message, c.says) {
			t.Errorf("%s: %d %q, want %d saying %q", name, m.Status, m.Message, c.status, c.says)
		}
	}
	if rows, _ := s.stored(); len(rows) != 0 {
		t.Errorf("stored %v", rows)
	}
	if m := s.read(s.ask("POST", "/api/nothing", "{}", "Content-Type: application/json")); m.Status != 404 {
		t.Errorf("unknown address: %+v", m)
	}
	if m := s.read(s.ask("GET", "/api/sync", "")); m.Status != 404 {
		t.Errorf("GET of sync: %+v", m)
	}
}

func FuzzPush(f *testing.F) {
	s := newShop(f)
	f.Add(pushBody(deviceA, cursor{}, stamp(3, deviceA), 2, row("title", `{"a":["<"]}`, stamp(2, deviceA), stamp(1, deviceB))))
	f.Add(`{"device":"a1a1a1a1a1a1a1a1","cursor":{"epoch":".","seq":1e2},"rows":[null,{},[],{"doc":"shop","path":"a","entries":[null]}]}`)
	f.Fuzz(func(t *testing.T, body string) {
		s.t = t
		m := s.post(body)
		switch m.Status {
		case 200, 400, 409, 413, 422:
		default:
			t.Errorf("%q: status %d: %s", body, m.Status, m.Message)
		}
		for _, r := range m.Rows {
			text, _ := json.Marshal(r) // it came from JSON
			if _, refused, ok := record.Read(text); !ok || len(refused) > 0 {
				t.Errorf("%q: the answer holds %s", body, text)
			}
		}
	})
}

// full is a store on a full disk.
type full struct{ store.Store }

func (full) Apply(store.Push) (store.Applied, error) {
	return store.Applied{}, fmt.Errorf("writing: %w", store.ErrFull)
}

func TestDiskFull(t *testing.T) {
	s := newShop(t)
	s.exchange(deviceA, cursor{}, "", row("title", `1`, stamp(1, deviceA), ""))
	s.server.Store = full{s.store}
	if m := s.exchange(deviceA, cursor{}, stamp(1, deviceA), row("title", `2`, stamp(2, deviceA), stamp(1, deviceA))); m.Status != 507 || m.Code != "disk-full" {
		t.Errorf("got %+v", m)
	}
	if m := s.read(s.ask("GET", "/api/health", "")); m.Status != 200 {
		t.Errorf("reading: %+v", m)
	}
}

func TestStoppedStore(t *testing.T) {
	s := newShop(t)
	if err := s.store.Close(); err != nil {
		t.Fatal(err)
	}
	w := s.ask("POST", "/api/sync", pushBody(deviceA, cursor{}, "", 0), "Content-Type: application/json")
	if m := s.read(w); m.Status != 503 || w.Header().Get("Retry-After") == "" {
		t.Errorf("got %+v, %v", m, w.Header())
	}
}
