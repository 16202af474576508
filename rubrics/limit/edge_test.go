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
