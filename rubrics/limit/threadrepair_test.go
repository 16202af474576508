package limit

import (
	"strings"
	"testing"
)

func threadFigures(t *testing.T, g given, title string) (out []Figure) {
	t.Helper()
	res, err := Compute("thread", g.values())
	if err != nil {
		t.Fatalf("%s: %v", g, err)
	}
	for _, f := range res.More {
		if strings.HasPrefix(f.Title, title) {
			out = append(out, f)
		}
	}
	return out
}

// The nearest three, ranked; a reading of no row is still told what lies near.
func TestNearestThreads(t *testing.T) {
	for _, c := range []struct {
		given given
		want  []string
	}{
		{"diameter=7.9 mm; pitch=1.25 mm", []string{"M8x1.25", "5/16-18 UNC"}},
		{"diameter=0.311 in; tpi=18 tpi", []string{"5/16-18 UNC", "M8x1.25"}},
		{"diameter=19.4 mm; pitch=2.52 mm", []string{"3/4-10 UNC", "M20x2.5"}},
		{"diameter=0.9 in; tpi=60 tpi", nil},
	} {
		near := threadFigures(t, c.given, "nearest: ")
		if len(near) != 3 {
			t.Fatalf("%s: %v", c.given, near)
		}
		for i, want := range c.want {
			if near[i].Title != "nearest: "+want || !strings.Contains(near[i].Text, "% off") {
				t.Errorf("%s: %d is %s (%s), want %s", c.given, i, near[i].Title, near[i].Text, want)
			}
		}
	}
	if res, _ := Compute("thread", given("diameter=19.4 mm; pitch=2.52 mm").values()); !strings.Contains(strings.Join(res.Notes, " "), "also fits") {
		t.Errorf("a reading between two threads names one: %q", res.Notes)
	}
}

// The pair rule, which bolt in which hole: TH05-07 by hand from the sizes. What
// the reference says of each pair: 5/16-18 in M8 binds, 3/4-10 runs into M20,
// 7/16-14 into M12, #10-32 into M5; M12 fine runs into 1/2-20.
func TestForced(t *testing.T) {
	for _, c := range []struct {
		id, bolt, hole string
		runs           bool
		says           string
	}{
		{"TH05", "5/16-18", "M8x1.25", false, "starts, a quarter pitch out after 2.2 turns, then binds"},
		{"TH05 other way", "M8x1.25", "5/16-18", false, "forced, too large by 0.062 mm"},
		{"TH06", "3/4-10", "M20x2.5", true, "runs in loose by 0.95 mm, a quarter pitch out after 15.9 turns, holds little"},
		{"TH06 other way", "M20x2.5", "3/4-10", false, "forced, too large by 0.95 mm"},
		{"TH07", "7/16-14", "M12x1.75", true, "runs in loose by 0.888 mm"},
		{"#10-32", "#10-32", "M5x0.8", true, "31.7 turns"},
		{"#10-24", "#10-24", "M5x0.8", false, "binds"},
		{"1/2-20", "M12x1.25", "1/2-20", true, "loose by 0.7 mm"},
		{"1/2-13", "M12x1.75", "1/2-13", false, "starts"},
		{"fine in coarse", "M10x1.25", "M10x1.5", false, "starts"},
		{"same pitch", "M10x1.5", "M11x1.5", true, "of the same pitch"},
	} {
		x, ok := mix(byName(t, c.bolt), byName(t, c.hole))
		if !ok || x.runs() != c.runs || !strings.Contains((&measured{}).goes(x), c.says) {
			t.Errorf("%s: %v %v %q, want %q", c.id, ok, x.runs(), (&measured{}).goes(x), c.says)
		}
	}
	for _, c := range [][2]string{{"1/2-13", "1/2-13"}, {"1-8", "M24x3.0"}, {"3/8-16", "3/8-24"}} {
		if _, ok := mix(byName(t, c[0]), byName(t, c[1])); ok {
			t.Errorf("%s in %s is no mix by the rule", c[0], c[1])
		}
	}
	for g, want := range map[given]string{
		"diameter=6.65 mm; pitch=1.25 mm; fit=internal": "probably forced in: 5/16-18 UNC",
		"diameter=17.4 mm; pitch=2.5 mm; fit=internal":  "probably forced in: 3/4-10 UNC",
		"diameter=3/4 in; tpi=10 tpi":                   "probably forced into: M20x2.5",
		"diameter=7/16 in; tpi=14 tpi":                  "probably forced into: M12x1.75",
	} {
		if all := threadFigures(t, g, "probably forced"); len(all) == 0 || len(all) > 3 || all[0].Title != want {
			t.Errorf("%s: %v, want %s first", g, all, want)
		}
	}
}

// Next sizes as the trade takes them where the drill clears the old thread; a
// step that leaves thread is skipped (1/2-13 to 9/16-12 leaves a fifth of a pitch).
func TestNextSize(t *testing.T) {
	for from, to := range map[string]string{
		"1/4-20": "5/16-18", "5/16-18": "3/8-16", "3/8-16": "7/16-14", "1/2-13": "5/8-11", "5/8-11": "3/4-10", "3/4-10": "7/8-9", "1/4-28": "5/16-24", "1/2-20": "9/16-18",
		"M6x1.0": "M8x1.25", "M8x1.25": "M10x1.5", "M10x1.5": "M12x1.75", "M12x1.75": "M14x2.0", "M8x1.0": "M10x1.25", "1-8": "", "M24x3.0": "",
	} {
		next := nextSize(byName(t, from))
		switch {
		case to == "" && next != nil:
			t.Errorf("%s to %s, beyond the table", from, next.name)
		case to != "" && next != byName(t, to):
			t.Errorf("%s to %v, want %s", from, next, to)
		}
	}
	for i := range threads {
		s := &threads[i]
		if next := nextSize(s); next != nil && (next.diameter <= s.diameter || next.inch != s.inch) {
			t.Errorf("%s to %s", s.name, next.name)
		}
	}
}

// Every thread gets its repairs, each with the part it costs.
func TestRepairs(t *testing.T) {
	for i := range threads {
		for _, hole := range []bool{true, false} {
			all := (&measured{}).repairs(&threads[i], hole)
			want := []string{"thread-chaser", "tap-next-size", "thread-insert-kit"}
			if nextSize(&threads[i]) == nil {
				want = []string{"thread-chaser", "thread-insert-kit"}
			}
			if len(all) != len(want) {
				t.Fatalf("%s: %v", threads[i].name, all)
			}
			for k, part := range want {
				if all[k].Part != part || all[k].Text == "" {
					t.Errorf("%s: %+v, want part %s", threads[i].name, all[k], part)
				}
			}
			if strings.Contains(all[0].Text, " tap ") != hole || strings.Contains(all[0].Text, " die ") == hole {
				t.Errorf("%s: %s", threads[i].name, all[0].Text)
			}
		}
	}
	// Section 3: 1/4-20 insert 17/64 drill, bore 0.2608, tapped 0.3150 in.
	all := threadFigures(t, "diameter=1/4 in; tpi=20 tpi; fit=external", "repair: insert")
	if len(all) != 1 || !strings.Contains(all[0].Text, "drill 17/64 in, bore at least 0.2608 in, tap to 0.3149 in") && !strings.Contains(all[0].Text, "tap to 0.315 in") {
		t.Errorf("TH11: %v", all)
	}
	if drill := threadFigures(t, "diameter=8 mm; pitch=1.25 mm", "tap drill"); len(drill) != 1 || !strings.Contains(drill[0].Text, "drill 6.8 mm") {
		t.Errorf("the metric tap drill is not said: %v", drill)
	}
}
