package limit

import (
	"math"
	"strings"
	"testing"
)

// ACI 318-19 s.17.6.2, reprinted in a 2022 design guide; AN01 and AN04 to AN06 an
// anchor maker's example (2025). Tolerance 0.1 %: the example rounds its edge
// factor to 0.978.
func TestAnchorGroup(t *testing.T) {
	check(t, "anchor-group", 0.001, []row{
		{"AN01", "depth=5.75 in; strength=4,000 psi; kc=21", 18313, "lbf", Computed, nil},
		{"AN02", "depth=3.25 in; strength=3,000 psi", 5455.5, "lbf", Computed, nil},
		{"AN03", "depth=3.25 in; strength=3,000 psi; cast=yes", 7701.9, "lbf", Computed, nil},
		{"AN04 AN05 AN06", "depth=5.75 in; strength=4,000 psi; kc=21; edge=8.0 in; area=1,532.16 in2", 92221, "lbf", Computed,
			map[string]float64{"one anchor far from edges": 18313, "area of one full cone": 297.56, "edge factor": 0.978}},
		{"AN07", "depth=12 in; strength=4,000 psi; cast=yes", 63648, "lbf", Computed, nil},
		{"AN08", "depth=3.25 in; strength=3,000 psi; weight=light", 4091.6, "lbf", Computed, map[string]float64{"expansion, screw or adhesive anchors": 3273.3}},
		{"AN08 cast in", "depth=3.25 in; strength=3,000 psi; weight=light; cast=yes", 5776.4, "lbf", Computed, nil},
		{"metric", "depth=82.55 mm; strength=20.68427 MPa", 5455.5, "lbf", Computed, nil},
		{"edge far away", "depth=3.25 in; strength=3,000 psi; edge=5 in", 5455.5, "lbf", Computed, map[string]float64{"edge factor": 1}},
		// One anchor 2 in from one edge: (4.875 + 2) x 9.75 in2 of 95.06, edge factor 0.82308.
		{"one anchor beside an edge", "depth=3.25 in; strength=3,000 psi; edge=2 in", 3166.2, "lbf", Computed, map[string]float64{"edge factor": 0.82308}},
		{"11 in is deep", "depth=11 in; strength=4,000 psi; cast=yes", 55053, "lbf", Computed, nil},
	})
	if f, ok := further(must(t, "anchor-group", "depth=3.25 in; strength=3,000 psi; weight=light; cast=yes"), "expansion, screw or adhesive anchors"); ok {
		t.Errorf("a cast-in anchor is none of these: %v", f)
	}
	if s := notes(t, "anchor-group", "depth=3.25 in; strength=3,000 psi; edge=2 in"); !strings.Contains(s, "one anchor beside one edge") {
		t.Errorf("%q", s)
	}
	if res := must(t, "anchor-group", "depth=5.75 in; strength=4,000 psi"); !strings.Contains(res.Caution, "passes no group") || res.Status != Reprint || res.Limit != nil {
		t.Errorf("%+v", res)
	}
	refuses(t, "anchor-group", []refusal{
		{"depth=3.25 in; strength=3,000 psi; kc=30", "kc", "between 17 and 24"},
		{"depth=82 mm; strength=21 MPa; kc=7", "kc", "between 17 and 24"}, // the factor of SI units
		{"depth=3.25 in; strength=3,000 psi; cast=yes; kc=17", "kc", "is 24, not 17"},
		{"depth=30 in; strength=3,000 psi", "depth", "between 1 in and 25 in"},
		{"depth=3.25 in; strength=1,000 psi", "strength", "between 2500 psi and 10000 psi"},
		{"depth=3.25 in; strength=3,000 psi; area=5 in2", "area", "less than a tenth"},
		{"depth=3.25 in; strength=3,000 psi; area=100", "area", "unit is missing"},
		{"depth=3.25 in; strength=3,000 lb", "strength", "unit of mass, not of pressure"},
		{"depth=3.25 in; strength=3,000 psi; weight=heavy", "weight", "one of normal, light"},
	})
}

// The cube root is our own; the library's is the reference.
func TestCubeRoot(t *testing.T) {
	for x := 1.0; x <= 1000; x += 0.37 {
		if got, want := cubeRoot(x), math.Cbrt(x); math.Abs(got-want) > 4e-16*want {
			t.Errorf("%v: %v, want %v", x, got, want)
		}
	}
}
