package limit

import (
	"fmt"
	"testing"
)

// Exactly at a limit the rounding of floats must not decide. The entries are
// written from whole numbers, so that each is the exact decimal.

// WR11: exactly 5 % under nominal passes, one part in 20,000 more does not.
func TestRopeEdge(t *testing.T) {
	for k := 20; k <= 1000; k++ { // nominal 2k/1000 in, measured 19k/10000
		g := map[string]string{"nominal": fmt.Sprintf("%de-3 in", 2*k), "measured": fmt.Sprintf("%de-4 in", 19*k)}
		if res, err := Compute("rope-diameter", g); err != nil || res.Finding != Within {
			t.Errorf("%v: %v %s", g, err, res.Finding)
		}
		g["measured"] = fmt.Sprintf("%de-7 in", 19000*k-k/10-1)
		if res, err := Compute("rope-diameter", g); err != nil || res.Finding != Beyond {
			t.Errorf("%v: %v %s", g, err, res.Finding)
		}
	}
}

// CH03: exactly 3 % is out, and exactly 2 % is the watch line.
func TestChainEdge(t *testing.T) {
	for _, pitch := range []int{375, 500, 625, 750, 1000, 1250, 1500} { // thousandths
		for n := 4; n <= 60; n++ {
			g := map[string]string{"pitch": fmt.Sprintf("%de-3 in", pitch), "pitches": fmt.Sprint(n)}
			for percent, want := range map[int]Finding{102: Watch, 103: Beyond} {
				g["measured"] = fmt.Sprintf("%de-5 in", pitch*n*percent)
				if res, err := Compute("leaf-chain", g); err != nil || res.Finding != want {
					t.Errorf("%v: %v %s, want %s", g, err, res.Finding, want)
				}
				g["measured"] = fmt.Sprintf("%de-7 in", pitch*n*percent*100-1)
				if res, err := Compute("leaf-chain", g); err != nil || res.Finding == want {
					t.Errorf("%v: a hair less is still %s (%v)", g, res.Finding, err)
				}
			}
		}
	}
}

// 110 % of a receiver's working pressure, and 20 ft/min over whole seconds.
func TestOtherEdges(t *testing.T) {
	for k := 1; k <= 400; k++ {
		g := map[string]string{"mawp": fmt.Sprintf("%d psi", k), "reached": fmt.Sprintf("%de-1 psi", k*11)}
		if res, err := Compute("receiver-pressure", g); err != nil || res.Finding != Watch {
			t.Errorf("%v: %v %s", g, err, res.Finding)
		}
		if k > 150 {
			continue
		}
		g = map[string]string{"travel": fmt.Sprintf("%d in", k*4), "time": fmt.Sprintf("%d s", k)}
		if res, err := Compute("descent-speed", g); err != nil || res.Finding != Within {
			t.Errorf("%v: %v %s", g, err, res.Finding)
		}
	}
}

// WR16: exactly 6 % under the baseline passes, a hair more does not; WR13: 5 % of
// the wires and 15 % of a strand likewise.
func TestMineRopeEdge(t *testing.T) {
	for k := 6; k <= 500; k++ { // baseline 5k/1000 in, measured 47k/10000
		g := map[string]string{"baseline": fmt.Sprintf("%de-3 in", 5*k), "measured": fmt.Sprintf("%de-4 in", 47*k)}
		if res, err := Compute("rope-baseline", g); err != nil || res.Finding != Within {
			t.Errorf("%v: %v %s", g, err, res.Finding)
		}
		g["measured"] = fmt.Sprintf("%de-8 in", 470000*k-k-1)
		if res, err := Compute("rope-baseline", g); err != nil || res.Finding != Beyond {
			t.Errorf("%v: %v %s", g, err, res.Finding)
		}
	}
	for k := 1; k <= 25; k++ {
		g := map[string]string{"wires": fmt.Sprint(20 * k), "broken": fmt.Sprint(k), "strand-wires": fmt.Sprint(20 * k), "strand": "0"}
		for more, want := range map[int]Finding{0: Within, 1: Beyond} {
			g["broken"] = fmt.Sprint(k + more)
			if res, err := Compute("rope-share", g); err != nil || res.Finding != want {
				t.Errorf("%v: %v %s, want %s", g, err, res.Finding, want)
			}
		}
		if k > 16 { // 15 % of 20k in a rope of a thousand wires
			continue
		}
		g = map[string]string{"wires": "1000", "broken": "50", "strand-wires": fmt.Sprint(20 * k), "strand": fmt.Sprint(3 * k)}
		if res, err := Compute("rope-share", g); err != nil || res.Finding != Within {
			t.Errorf("%v: %v %s", g, err, res.Finding)
		}
	}
}

// Exactly 1.5 % and 2.5 % of a hoist chain are out; exactly a fifth of a rope's
// breaking load, and 63 in/s, are not passed.
func TestHoistAndLoadEdge(t *testing.T) {
	for k := 1; k <= 300; k++ {
		for kind, percent := range map[string]int{"powered": 1015, "hand": 1025} {
			g := map[string]string{"kind": kind, "length": fmt.Sprintf("%de-1 in", 5*k), "measured": fmt.Sprintf("%de-4 in", 5*k*percent)}
			if res, err := Compute("hoist-chain", g); err != nil || res.Finding != Beyond {
				t.Errorf("%v: %v %s", g, err, res.Finding)
			}
			g["measured"] = fmt.Sprintf("%de-7 in", 5000*k*percent-k)
			if res, err := Compute("hoist-chain", g); err != nil || res.Finding != Computed {
				t.Errorf("%v: %v %s", g, err, res.Finding)
			}
		}
		for load, want := range map[string]Finding{fmt.Sprintf("%d lbf", 7*k): Within, fmt.Sprintf("%d.001 lbf", 7*k): Beyond} {
			g := map[string]string{"breaking": fmt.Sprintf("%d lbf", 35*k), "load": load}
			if res, err := Compute("rope-load", g); err != nil || res.Finding != want {
				t.Errorf("%v: %v %s", g, err, res.Finding)
			}
		}
		for distance, want := range map[int]Finding{63 * k * 254: Within, 63*k*254 - 1: Beyond} {
			g := map[string]string{"device": "two-hand-control", "stop": fmt.Sprintf("%de-2 s", k), "distance": fmt.Sprintf("%de-3 mm", distance)}
			if res, err := Compute("press-distance", g); err != nil || res.Finding != want {
				t.Errorf("%v: %v %s, want %s", g, err, res.Finding, want)
			}
		}
	}
}
