package record

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

var devices = []string{"a1a1a1a1a1a1a1a1", "b2b2b2b2b2b2b2b2", "c3c3c3c3c3c3c3c3"}

// anyStamp draws from few times and devices so that ties and meetings are frequent.
func anyStamp(below int) *rapid.Generator[Stamp] {
	return rapid.Custom(func(t *rapid.T) Stamp {
		n := rapid.IntRange(0, max(below-1, 0)).Draw(t, "time")
		s, err := NewStamp(int64(n/2), n%2, rapid.SampledFrom(devices).Draw(t, "device"))
		if err != nil {
			t.Fatal(err)
		}
		return s
	})
}

func anyRow() *rapid.Generator[Row] {
	entry := rapid.Custom(func(t *rapid.T) Entry {
		n := rapid.IntRange(0, 12).Draw(t, "time")
		s, _ := NewStamp(int64(n/2), n%2, rapid.SampledFrom(devices).Draw(t, "device"))
		e := Entry{Value: json.RawMessage(rapid.SampledFrom([]string{"null", "1", `"a"`, `{"n":1}`}).Draw(t, "value")), Stamp: s}
		if n > 0 && rapid.Bool().Draw(t, "with base") {
			e.Base = anyStamp(n).Draw(t, "base")
			e.Settles = rapid.SliceOfN(anyStamp(n), 0, 2).Draw(t, "settles")
		}
		e, err := e.Validate()
		if err != nil {
			t.Fatal(err)
		}
		return e
	})
	return rapid.Custom(func(t *rapid.T) Row {
		return Merge(Row{}, Row{
			Doc: "shop", Path: "tax",
			Entries: rapid.SliceOfN(entry, 0, 5).Draw(t, "entries"),
			Seen:    rapid.SliceOfN(anyStamp(12), 0, 2).Draw(t, "seen"),
		})
	})
}

func TestMergeIsASemilattice(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := anyRow().Draw(t, "a"), anyRow().Draw(t, "b"), anyRow().Draw(t, "c")
		same := func(law string, x, y Row) {
			if x.String() != y.String() {
				t.Fatalf("%s:\n%s\n%s", law, x, y)
			}
		}
		same("commutative", Merge(a, b), Merge(b, a))
		same("associative", Merge(Merge(a, b), c), Merge(a, Merge(b, c)))
		same("idempotent", Merge(a, a), a)
		same("absorbs", Merge(Merge(a, b), a), Merge(a, b))
	})
}

// A settled value never comes back, and no value is lost that nobody replaced, settled or overwrote on its device.
func TestMergeLosesNothingUnseen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anyRow().Draw(t, "a"), anyRow().Draw(t, "b")
		m := Merge(a, b)
		for _, e := range slices.Concat(a.Entries, b.Entries) {
			kept := slices.ContainsFunc(m.Entries, func(k Entry) bool { return k.Stamp == e.Stamp })
			newer := slices.ContainsFunc(m.Entries, func(k Entry) bool {
				return k.Stamp.Device() == e.Stamp.Device() && k.Stamp > e.Stamp
			})
			seen := slices.ContainsFunc(m.Seen, func(s Stamp) bool { return s.Device() == e.Stamp.Device() && s >= e.Stamp })
			if kept == (newer || seen) {
				t.Fatalf("entry %s: kept %v, newer %v, seen %v in %s", e.Stamp, kept, newer, seen, m)
			}
		}
	})
}

func TestMergeLeavesItsInputsAlone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anyRow().Draw(t, "a"), anyRow().Draw(t, "b")
		before := a.String() + b.String()
		Merge(a, b)
		if a.String()+b.String() != before {
			t.Fatal("an input was changed")
		}
	})
}

// Readings rise strictly whatever the wall clock does, stay at or above it and above all that was observed.
func TestClockRises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		clock := Clock{Device: devices[0]}
		if rapid.Bool().Draw(t, "nearly full") {
			clock.Last, _ = NewStamp(1000, MaxCounter-3, devices[0])
		}
		for i := range rapid.IntRange(1, 40).Draw(t, "steps") {
			last, now := clock.Last, rapid.Int64Range(900, 1100).Draw(t, fmt.Sprint("now", i))
			var remote Stamp
			if rapid.Bool().Draw(t, "observe") {
				counter := rapid.SampledFrom([]int{0, 1, 7, MaxCounter - 1, MaxCounter}).Draw(t, "counter")
				remote, _ = NewStamp(rapid.Int64Range(900, 1200).Draw(t, "remote"), counter, devices[1])
				if err := clock.Observe(remote, now); err != nil {
					t.Fatal(err)
				}
			} else if s, err := clock.Tick(now); err != nil || s != clock.Last {
				t.Fatal(s, err)
			}
			if clock.Last <= last || clock.Last[:16] <= remote[:min(16, len(remote))] || clock.Last.Time() < now {
				t.Fatalf("after %q, remote %q, now %d: %q", last, remote, now, clock.Last)
			}
		}
	})
}

func TestClockInAFrozenMillisecond(t *testing.T) {
	clock := Clock{Device: devices[0]}
	var last Stamp
	for i := range 70_000 {
		s, err := clock.Tick(5000)
		if err != nil || s <= last {
			t.Fatalf("tick %d: %q after %q, %v", i, s, last, err)
		}
		last = s
	}
	if last.Time() != 5001 || last.Counter() != 70_000-65_536-1 {
		t.Errorf("70,000 ticks end at %d ms, counter %d", last.Time(), last.Counter())
	}
}

// Canonical agrees with encoding/json on what is JSON (within our bounds) and on what it means.
func FuzzCanonical(f *testing.F) {
	for _, s := range []string{`{"b":[1,2.50,-0,1e-7],"a":"x\u00e9\n"}`, `[[[]]]`, `"\ud83d\udd27"`, `1e400`, `{"a":1,"a":2}`, "\"\xff\"", `nul`, `-`, `"\u`} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		out, err := Canonical([]byte(s))
		if err != nil {
			return
		}
		var in, back any
		if err := json.Unmarshal([]byte(s), &in); err != nil {
			t.Fatalf("taken, but not JSON: %q: %v", s, err)
		}
		if err := json.Unmarshal(out, &back); err != nil || fmt.Sprint(noMinusZero(in)) != fmt.Sprint(back) {
			t.Fatalf("%q became %q: %v", s, out, err)
		}
		again, err := Canonical(out)
		if err != nil || string(again) != string(out) {
			t.Fatalf("not a fixed point: %q, %q, %v", out, again, err)
		}
	})
}

// noMinusZero gives the value with -0 as 0, the one change of a number that RFC 8785 makes.
func noMinusZero(v any) any {
	switch v := v.(type) {
	case float64:
		return v + 0
	case []any:
		for i := range v {
			v[i] = noMinusZero(v[i])
		}
	case map[string]any:
		for k := range v {
			v[k] = noMinusZero(v[k])
		}
	}
	return v
}

// Whatever a stranger sends, Read takes only what it would write and take again.
func FuzzRead(f *testing.F) {
	stamp := "018f000000010000a1a1a1a1a1a1a1a1"
	f.Add(`{"doc":"shop","path":"tax","entries":[{"value":1,"stamp":"` + stamp + `","base":""}],"seen":[]}`)
	f.Add(`{"doc":"shop","path":"tax","entries":[{"value":{"b":1,"a":"<"},"stamp":"` + stamp + `","base":"` + stamp + `","settles":["x"]},5,null]}`)
	f.Add(`{"doc":"listing:..","path":"../..","entries":{},"seen":7}`)
	f.Add(`[]`)
	f.Fuzz(func(t *testing.T, s string) {
		row, refused, ok := Read([]byte(s))
		if !ok {
			if len(refused) == 0 {
				t.Fatal("nothing taken and no reason given")
			}
			return
		}
		again, refused, ok := Read([]byte(row.String()))
		if !ok || len(refused) > 0 || again.String() != row.String() {
			t.Fatalf("%s\n%s\n%v", row, again, refused)
		}
	})
}

func TestReadRefusesEntryByEntry(t *testing.T) {
	good := `{"value":"<b>","stamp":"018f000000010000a1a1a1a1a1a1a1a1","base":""}`
	bad := map[string]string{ // entry, what the reason must name
		`{"value":1,"stamp":"ffffffffffff0000a1a1a1a1a1a1a1a1","base":""}`:                                                 "9999",
		`{"value":1,"stamp":"018F000000010000a1a1a1a1a1a1a1a1","base":""}`:                                                 "0-9 and a-f",
		`{"value":1,"stamp":"018f000000010000a1a1a1a1a1a1a1a","base":""}`:                                                  "31 characters",
		`{"value":1,"stamp":"018f0000000100000000000000000000","base":""}`:                                                 "all zero",
		`{"value":1,"stamp":"018f000000010000a1a1a1a1a1a1a1a1","base":"018f000000010000a1a1a1a1a1a1a1a1"}`:                 "not older",
		`{"value":1,"stamp":"018f000000010000a1a1a1a1a1a1a1a1","base":"","settles":["x"]}`:                                 "settles",
		`{"stamp":"018f000000010000a1a1a1a1a1a1a1a1","base":""}`:                                                           "value",
		`{"value":1e309,"stamp":"018f000000010000a1a1a1a1a1a1a1a1","base":""}`:                                             "too large",
		`{"value":` + strings.Repeat("[", 200) + strings.Repeat("]", 200) + `,"stamp":"018f000000010000a1a1a1a1a1a1a1a1"}`: "16 levels",
		`{"value":"` + strings.Repeat("x", 65<<10) + `","stamp":"018f000000010000a1a1a1a1a1a1a1a1"}`:                       "65536",
		`{"value":1,"stamp":7}`: "a text is expected",
		`[]`:                    "an object is expected",
	}
	for entry, names := range bad {
		row, refused, ok := Read([]byte(`{"doc":"shop","path":"tax","entries":[` + entry + "," + good + `],"seen":[]}`))
		if !ok || len(row.Entries) != 1 || string(row.Entries[0].Value) != `"<b>"` {
			t.Errorf("%.80s: the good entry beside it was not taken: %s", entry, row)
		}
		if len(refused) != 1 || !strings.Contains(refused[0].Reason, names) || refused[0].Doc != "shop" || refused[0].Path != "tax" {
			t.Errorf("%.80s: refused %v, want one naming %q", entry, refused, names)
		}
	}
}
