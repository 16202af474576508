package limit

import (
	"fmt"
	"testing"
)

// 29 CFR 1910.217 Table O-10 as Michigan R 408.12461 Table 1 prints it. Exact.
func TestGuardOpening(t *testing.T) {
	check(t, "guard-opening", 1e-9, []row{
		{"PR05", "distance=6 in; opening=3/4 in", 0.75, "in", Within, nil},
		{"PR06", "distance=10 in; opening=1 3/8 in", 1.375, "in", Beyond, nil},
		{"PR07", "distance=16 in; opening=1 7/8 in", 1.875, "in", Within, nil},
		{"PR07 over", "distance=16 in; opening=1.876 in", 1.876, "in", Beyond, nil},
		{"last row", "distance=31 1/2 in; opening=2 1/8 in", 2.125, "in", Within, nil},
		{"metric", "distance=150 mm; opening=20 mm", 20, "mm", Beyond, nil},
		{"closed", "distance=6 in; opening=0 in", 0, "in", Within, nil},
		// T3: a public copy has 1/4 in for "within 1/2 in"; no guard stands there.
		{"T3 nearer than 1/2 in", "distance=0.4 in; opening=1/4 in", 0.4, "in", Beyond, nil},
		{"T3 at 1/2 in", "distance=1/2 in; opening=1/4 in", 0.25, "in", Within, nil},
		{"T3 first row", "distance=1 1/2 in; opening=5/16 in", 0.3125, "in", Beyond, nil},
	})
	holds(t, "guard-opening", []held{
		{"PR05", "distance=6 in; opening=1 in", 0.75, "in", Published},
		{"PR06", "distance=10 in; opening=1 in", 1.25, "in", Published},
		{"PR07", "distance=16 in; opening=1 in", 1.875, "in", Published},
		{"T3 no guard nearer", "distance=0.4 in; opening=0.1 in", 0.5, "in", Published},
	})
	// On a shared edge, in inches as in millimetres, the smaller opening counts.
	for _, c := range []struct{ edge, smaller, larger string }{
		{"1.5", "0.25", "0.375"}, {"2.5", "0.375", "0.5"}, {"3.5", "0.5", "0.625"}, {"5.5", "0.625", "0.75"}, {"6.5", "0.75", "0.875"},
		{"7.5", "0.875", "1.25"}, {"12.5", "1.25", "1.5"}, {"15.5", "1.5", "1.875"}, {"17.5", "1.875", "2.125"},
	} {
		var edge float64
		if _, err := fmt.Sscan(c.edge, &edge); err != nil {
			t.Fatal(err)
		}
		for _, at := range []string{c.edge + " in", fmt.Sprintf("%.2f mm", edge*25.4)} {
			for opening, want := range map[string]Finding{c.smaller: Within, c.larger: Beyond} {
				res, err := Compute("guard-opening", map[string]string{"distance": at, "opening": opening + " in"})
				if err != nil || res.Finding != want {
					t.Errorf("%s in at %s: %v, %s, want %s", opening, at, err, res.Finding, want)
				}
			}
		}
		// A hair past the edge the next row begins.
		res, err := Compute("guard-opening", map[string]string{"distance": c.edge + "1 in", "opening": c.larger + " in"})
		if err != nil || res.Finding != Within {
			t.Errorf("%s in past %s in: %v, %s", c.larger, c.edge, err, res.Finding)
		}
	}
	refuses(t, "guard-opening", []refusal{
		// T3 again: that copy adds 6 in over 31 1/2; the table ends there.
		{"distance=31.6 in; opening=6 in", "distance", "the table ends at 31.5 in"},
		{"distance=1 m; opening=50 mm", "distance", "the table ends at 0.8001 m"},
		{"distance=6; opening=1 in", "distance", "unit is missing"},
		{"distance=-6 in; opening=1 in", "distance", "cannot be -6 in"},
		{"distance=6 in", "opening", "missing"},
	})
}

// 29 CFR 1910.212(a)(5): under 7 ft at most 1/2 in. Exact.
func TestFanGuard(t *testing.T) {
	check(t, "fan-guard", 1e-9, []row{
		{"GD01", "height=6 ft; opening=5/8 in", 0.625, "in", Beyond, nil},
		{"GD01 edge", "height=6 ft; opening=1/2 in", 0.5, "in", Within, nil},
		{"GD01 metric edge", "height=1.8 m; opening=12.7 mm", 12.7, "mm", Within, nil},
		{"at 7 ft", "height=7 ft; opening=3 in", 7, "ft", Within, nil},
		{"just under 7 ft", "height=6 ft 11 in; opening=3 in", 3, "in", Beyond, nil},
	})
	refuses(t, "fan-guard", []refusal{
		{"height=6; opening=1/2 in", "height", "unit is missing"},
		{"height=6 ft", "opening", "missing"},
	})
}

// 29 CFR 1910.219, read in Michigan R 408.10727: 7 ft or less guarded. Exact.
func TestBeltGuard(t *testing.T) {
	check(t, "belt-guard", 1e-9, []row{
		{"GD02", "height=5 ft; guarded=no", 5, "ft", Beyond, nil},
		{"GD02 guarded", "height=5 ft; guarded=yes", 5, "ft", Within, nil},
		{"at 7 ft", "height=7 ft; guarded=no", 7, "ft", Beyond, nil},
		{"at 7 ft, metric", "height=2.1336 m; guarded=no", 2.1336, "m", Beyond, nil},
		{"above", "height=7 ft 1 in; guarded=no", 85, "in", Within, nil},
	})
	refuses(t, "belt-guard", []refusal{
		{"height=5 ft; guarded=partly", "guarded", "one of yes, no"},
		{"height=200 ft; guarded=no", "height", "between 0 ft and 100 ft"},
	})
}
