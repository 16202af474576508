package record

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// cases reads one file of vectors that the TypeScript twin runs too.
func cases[T any](t *testing.T, name string) []T {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "merges", name))
	if err != nil {
		t.Fatal(err)
	}
	var list []T
	if err := json.Unmarshal(text, &list); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	if len(list) == 0 {
		t.Fatalf("%s holds no case", name)
	}
	return list
}

// canonical puts the values of hand-written rows into canonical form.
func canonical(t *testing.T, rows []Row) []Row {
	t.Helper()
	for i := range rows {
		for j, e := range rows[i].Entries {
			e, err := e.Validate()
			if err != nil {
				t.Fatal(err)
			}
			rows[i].Entries[j] = e
		}
	}
	return rows
}

func mergeTables(a, b []Row) []Row {
	table := map[Key]Row{}
	for _, r := range slices.Concat(a, b) {
		table[r.Key()] = Merge(table[r.Key()], r)
	}
	var rows []Row
	for _, r := range table {
		rows = append(rows, r)
	}
	slices.SortFunc(rows, func(a, b Row) int { return strings.Compare(a.Doc+"\n"+a.Path, b.Doc+"\n"+b.Path) })
	return rows
}

func text(rows []Row) string {
	var b strings.Builder
	for _, r := range rows {
		b.WriteString(r.String() + "\n")
	}
	return b.String()
}

func TestMergeVectors(t *testing.T) {
	for _, c := range cases[struct {
		About      string
		A, B, Want []Row
		Winners    []Stamp
	}](t, "merge.json") {
		t.Run(c.About, func(t *testing.T) {
			a, b, want := canonical(t, c.A), canonical(t, c.B), text(canonical(t, c.Want))
			if got := text(mergeTables(a, b)); got != want {
				t.Errorf("a with b\n got %s\nwant %s", got, want)
			}
			if got := text(mergeTables(b, a)); got != want {
				t.Errorf("b with a\n got %s\nwant %s", got, want)
			}
			merged := mergeTables(a, b)
			for i, r := range merged {
				e, ok := r.Winner()
				if !ok || i >= len(c.Winners) || e.Stamp != c.Winners[i] {
					t.Errorf("winner of row %d is %q, want %v", i, e.Stamp, c.Winners)
				}
				if len(r.Losers()) != len(r.Entries)-1 {
					t.Errorf("row %d: %d losers of %d entries", i, len(r.Losers()), len(r.Entries))
				}
			}
		})
	}
}

func TestClockVectors(t *testing.T) {
	for _, c := range cases[struct {
		About, Device string
		Steps         []struct {
			Op           string
			Last, Remote Stamp
			Now          int64
			Want         Stamp
		}
	}](t, "clock.json") {
		t.Run(c.About, func(t *testing.T) {
			for i, s := range c.Steps {
				clock := Clock{Device: c.Device, Last: s.Last}
				var err error
				switch s.Op {
				case "tick":
					_, err = clock.Tick(s.Now)
				case "observe":
					err = clock.Observe(s.Remote, s.Now)
				default:
					t.Fatalf("step %d: unknown op %q", i, s.Op)
				}
				if s.Want == "" {
					if err == nil || clock.Last != s.Last {
						t.Errorf("step %d: want a refusal and the clock as it was, got %q, %v", i, clock.Last, err)
					}
				} else if err != nil || clock.Last != s.Want {
					t.Errorf("step %d: got %q, %v, want %q", i, clock.Last, err, s.Want)
				}
			}
		})
	}
}

func TestBoundVectors(t *testing.T) {
	for _, c := range cases[struct {
		About string
		Now   int64
		Stamp Stamp
		Ahead bool
	}](t, "bound.json") {
		if got := c.Stamp.Ahead(c.Now); got != c.Ahead {
			t.Errorf("%s: ahead is %v", c.About, got)
		}
	}
}

func TestValueVectors(t *testing.T) {
	for _, c := range cases[struct{ About, In, Want string }](t, "value.json") {
		got, err := Canonical([]byte(c.In))
		if (err != nil) != (c.Want == "") || string(got) != c.Want {
			t.Errorf("%s: got %s, %v, want %s", c.About, got, err, c.Want)
		}
	}
}

func TestGrammarVectors(t *testing.T) {
	for _, c := range cases[struct {
		Doc, Path string
		Good      bool
	}](t, "grammar.json") {
		if err := CheckKey(Key{c.Doc, c.Path}); (err == nil) != c.Good {
			t.Errorf("%q %q: %v, want good %v", c.Doc, c.Path, err, c.Good)
		}
	}
}
