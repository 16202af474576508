package limit

import (
	"math"
	"strings"
	"testing"
)

func byName(t *testing.T, name string) *standardThread {
	t.Helper()
	for i := range threads {
		if strings.HasPrefix(threads[i].name, name+" ") || threads[i].name == name {
			return &threads[i]
		}
	}
	t.Fatalf("no thread %s", name)
	return nil
}

// Sizes of ASME B1.1 and ISO 261 as in the FreeCAD hole table (3 decimals).
func TestThread(t *testing.T) {
	for _, c := range []struct {
		id    string
		given given
		name  string
		value float64
	}{
		{"TH03", "diameter=5/16 in; tpi=18 tpi", "5/16-18 UNC", 0.3125},
		{"TH04", "diameter=12 mm; pitch=1.75 mm", "M12x1.75", 12},
		{"worn bolt", "diameter=0.495 in; tpi=13 tpi", "1/2-13 UNC", 0.5},
		{"near pair, by diameter", "diameter=19.9 mm; pitch=2.5 mm", "M20x2.5", 20},
		{"near pair, inch", "diameter=0.748 in; tpi=10 tpi", "3/4-10 UNC", 0.75},
		{"fine", "diameter=0.248 in; tpi=28 tpi", "1/4-28 UNF", 0.25},
		// Basic bore of a 1/2-13 nut: 0.500 - 1.0825/13 = 0.4167 in.
		{"nut", "diameter=0.4167 in; tpi=13 tpi; fit=internal", "1/2-13 UNC", 0.5},
		{"M8 nut", "diameter=6.65 mm; pitch=1.25 mm; fit=internal", "M8x1.25", 8},
	} {
		res, err := Compute("thread", c.given.values())
		if err != nil {
			t.Errorf("%s: %v", c.id, err)
			continue
		}
		if !strings.Contains(res.Text, "is "+c.name+":") || res.Finding != Computed {
			t.Errorf("%s: %s", c.id, res.Text)
		}
		near(t, c.id, res.Value, c.value, 1e-9)
	}
	check(t, "thread", 0.0005, []row{
		{"TH01 TH02", "diameter=1/2 in; tpi=13 tpi", 0.5, "in", Computed, map[string]float64{"drill for 75 % thread": 0.4250, "tap drill": 27.0 / 64}},
		{"TH03 pitch", "diameter=5/16 in; tpi=18 tpi", 0.3125, "in", Computed, map[string]float64{"pitch": 1.411}},
		{"TH04 drill", "diameter=12 mm; pitch=1.75 mm", 12, "mm", Computed, map[string]float64{"tap drill": 10.2, "threads per inch": 14.514}},
	})
	res, _ := Compute("thread", given("diameter=1/2 in; tpi=13 tpi").values())
	if drill, _ := further(res, "tap drill"); !strings.Contains(drill.Text, "27/64, 78.") { // published: 78 %
		t.Errorf("TH02: %q", drill.Text)
	}
	res, err := Compute("thread", given("diameter=0.9 in; tpi=60 tpi").values())
	if err != nil || !strings.HasPrefix(res.Text, "No thread of the table") {
		t.Errorf("no such thread: %v %q", err, res.Text)
	}
	refuses(t, "thread", []refusal{
		{"diameter=1/2 in", "pitch", "neither"},
		{"diameter=1/2 in; pitch=2 mm; tpi=13 tpi", "pitch", "both"},
		{"diameter=1/2 in; pitch=-2 mm", "pitch", "cannot be -2 mm"},
		{"diameter=1/2 in; pitch=0 mm", "pitch", "cannot be 0 mm"},
		{"diameter=1/2 in; pitch=13 mm", "pitch", "too coarse"},
		{"diameter=1/2 in; tpi=13 mm", "tpi", "unit of length"},
	})
}

// The pairs, computed by hand from the sizes; tolerances half the last digit
// printed: 0.0006 mm, 0.06 %, 0.06 turns.
func TestMistakenPairs(t *testing.T) {
	for _, c := range []struct {
		id, inch, metric  string
		apart, gap, turns float64
		loose             bool
	}{
		{"TH05", "5/16-18", "M8x1.25", 0.0625, 11.4, 2.2, false},
		{"TH06", "3/4-10", "M20x2.5", 0.95, 1.6, 15.9, true},
		{"TH07", "7/16-14", "M12x1.75", 0.888, 3.5, 7.1, true},
		{"5/16-24", "5/16-24", "M8x1.0", 0.0625, 5.5, 4.5, true},
		{"#10-32", "#10-32", "M5x0.8", 0.174, 0.8, 31.7, true},
		{"#10-24", "#10-24", "M5x0.8", 0.174, 24.4, 1.0, false},
		{"1/2-20", "1/2-20", "M12x1.25", 0.700, 1.6, 15.9, true},
		{"3/8-16", "3/8-16", "M10x1.5", 0.475, 5.5, 4.5, true},
		{"5/8-11", "5/8-11", "M16x2.0", 0.125, 13.4, 1.9, false},
	} {
		a, b := byName(t, c.inch), byName(t, c.metric)
		p, ok := compare(a, b)
		if !ok || math.Abs(p.apart-c.apart) > 0.0006 || math.Abs(p.gap-c.gap) > 0.06 || math.Abs(p.turns-c.turns) > 0.06 || p.loose() != c.loose {
			t.Errorf("%s: %v %.4f mm, %.2f %%, %.2f turns, loose %v", c.id, ok, p.apart, p.gap, p.turns, p.loose())
		}
		if back, _ := compare(b, a); back != p {
			t.Errorf("%s: the pair differs the other way round", c.id)
		}
	}
	if _, ok := compare(byName(t, "1-8"), byName(t, "M24x3.0")); ok {
		t.Error("1.4 mm apart is not a pair of the rule")
	}
	res, err := Compute("thread", given("diameter=3/4 in; tpi=10 tpi").values())
	f, ok := further(res, "mistaken for M20x2.5")
	if err != nil || !ok || !strings.Contains(f.Text, "a 3/4-10 UNC bolt runs into a M20x2.5 hole, loose, and holds little") {
		t.Errorf("TH06: %v %q", err, f.Text)
	}
}

// Drills leave a thread of 60 to 85 % by (D - d) / (1.299 P); a wrong digit in
// the table falls outside.
func TestTapDrills(t *testing.T) {
	for _, s := range threads {
		pitch := s.pitch
		if s.inch {
			pitch = 1 / s.pitch
		}
		if share := (s.diameter - s.drill) / (1.299 * pitch) * 100; share < 60 || share > 85 {
			t.Errorf("%s: drill %v leaves %.1f %%", s.name, s.drill, share)
		}
	}
}
