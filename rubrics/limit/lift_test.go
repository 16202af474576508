package limit

import (
	"strings"
	"testing"
)

// California Title 8 s.3549: 20 ft/min. Tolerance 0.1 %.
func TestDescentSpeed(t *testing.T) {
	check(t, "descent-speed", 0.001, []row{
		{"LF01", "travel=72 in; time=15 s", 24, "ft/min", Beyond, map[string]float64{"shortest time allowed": 18}},
		{"LF02", "travel=72 in; time=20 s", 18, "ft/min", Within, nil},
		{"edge", "travel=6 ft; time=18 s", 20, "ft/min", Within, nil},
		{"LF03 metric edge", "travel=1828.8 mm; time=18 s", 0.1016, "m/s", Within, nil},
		{"maker", "travel=72 in; time=20 s; maker=15 ft/min", 18, "ft/min", Beyond, nil},
	})
	refuses(t, "descent-speed", []refusal{
		{"travel=72 in; time=0 s", "time", "cannot be 0 s"},
		{"travel=72; time=10 s", "travel", "the unit is missing"},
		{"travel=72 in; time=10 furlongs", "time", "not known"},
	})
}

// Lift dealers' published example: a 9,000 lb vehicle with 6,000 lb on the rear
// axle on a 10,000 lb lift. Tolerance 0.1 %.
func TestArmLoad(t *testing.T) {
	check(t, "arm-load", 0.001, []row{
		{"SH01", "weight=9,000 lb; rear=66.6667 %; rated=10,000 lb", 3000, "lb", Beyond, nil},
		{"SH02 front axle", "weight=6,000 lb; rear=40 %; rated=10,000 lb", 1800, "lb", Computed, nil},
		{"SH03", "weight=5,200 lb; rear=58 %; rated=9,000 lb", 1508, "lb", Computed, nil},
		{"edge", "weight=9,000 lb; rear=50 %; rated=9,000 lb", 2250, "lb", Computed, nil},
		{"even split only warns", "weight=5,200 lb; rated=9,000 lb", 1300, "lb", Watch, nil},
		{"over the plate", "weight=9,001 lb; rear=50 %; rated=9,000 lb", 9001, "lb", Beyond, nil},
		{"maker", "weight=5,200 lb; rear=58 %; rated=9,000 lb; maker=1,500 lb", 1508, "lb", Beyond, nil},
		{"maker met", "weight=5,200 lb; rear=58 %; rated=9,000 lb; maker=1,600 lb", 1508, "lb", Within, nil},
	})
	refuses(t, "arm-load", []refusal{
		{"weight=5,200 lb; rear=0.58 %; rated=9,000 lb", "rear", "between 10 % and 90 %"},
		{"weight=5,200 lb; rear=58; rated=9,000 lb", "rear", "unit is missing"},
	})
}

// Common practice: a lift maker's manual, 3/4 x 5 1/2 in wedge anchors. Exact.
func TestAnchorEmbedment(t *testing.T) {
	check(t, "anchor-embedment", 1e-9, []row{
		{"LF05", "length=5-1/2 in; protrusion=2-1/4 in", 3.25, "in", Computed, nil},
		{"LF06", "length=5.5 in; protrusion=2.50 in", 3, "in", Beyond, nil},
		{"from the plate", "length=5.5 in; protrusion=2 in; plate=1/2 in", 3, "in", Beyond, nil},
		{"edge, metric", "length=139.7 mm; protrusion=57.15 mm", 82.55, "mm", Computed, nil},
		{"maker met", "length=5.5 in; protrusion=1.5 in; maker=4 in", 4, "in", Within, nil},
		{"maker missed", "length=5.5 in; protrusion=2 in; maker=4 in", 3.5, "in", Beyond, nil},
	})
	refuses(t, "anchor-embedment", []refusal{
		{"length=5.5 in; protrusion=6 in", "protrusion", "nothing of the anchor"},
		{"length=5.5 in; protrusion=-1 in", "protrusion", "cannot be -1 in"},
	})
}

// Common practice: 4 to 4 1/4 in and 3,000 psi. Exact.
func TestSlab(t *testing.T) {
	check(t, "slab", 1e-9, []row{
		{"LF09", "thickness=3.5 in", 3.5, "in", Beyond, nil},
		{"four", "thickness=4 in; strength=3,000 psi", 4, "in", Watch, nil},
		{"six", "thickness=6 in; strength=3,500 psi", 6, "in", Computed, nil},
		{"weak", "thickness=6 in; strength=2,500 psi", 2500, "psi", Beyond, nil},
		{"weak, maker's thickness", "thickness=6 in; strength=2,500 psi; maker=6 in", 2500, "psi", Beyond, nil},
		{"maker, strength unknown", "thickness=6 in; maker=6 in", 6, "in", Watch, nil},
	})
	res, err := Compute("slab", given("thickness=3.5 in").values())
	if err != nil || !strings.Contains(strings.Join(res.Notes, " "), "strength of the concrete is not assessed") {
		t.Errorf("LF09: %v %v", err, res.Notes)
	}
}
