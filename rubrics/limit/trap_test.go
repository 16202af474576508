package limit

import (
	"math"
	"strings"
	"testing"
)

// Errors found in print while the figures were gathered; each would be copied
// easily, so each has a test.
func TestTraps(t *testing.T) {
	limitOf := func(t *testing.T, name string, g given) float64 {
		t.Helper()
		res := must(t, name, g)
		if res.Limit == nil {
			t.Fatalf("%s %s: no limit", name, g)
		}
		return *res.Limit
	}
	everything := func() string {
		var b strings.Builder
		for _, d := range All() {
			b.WriteString(d.Title + " " + d.Formula + " " + d.Source + " " + d.Caution + "\n")
		}
		return b.String()
	}

	t.Run("T1 the hand moves at 63 in/s, not 63.5", func(t *testing.T) {
		near(t, "0.5 s", must(t, "press-distance", "device=two-hand-trip; stop=0.5 s").Value, 31.5, 1e-9)
		if got := must(t, "press-distance", "device=presence-sensing; stop=0.25 s").Value; math.Abs(got-15.875) < 0.1 {
			t.Errorf("%v in is 63.5 in/s", got)
		}
	})
	t.Run("T2 cell 3E is Medium, not Low", func(t *testing.T) {
		res := must(t, "risk-cell", "severity=3; probability=E")
		if f, _ := further(res, "risk"); f.Text != "Medium" || res.Value != 17 {
			t.Errorf("%s, value %v", f.Text, res.Value)
		}
	})
	t.Run("T3 the guard table begins at 1/2 in and ends at 31 1/2 in", func(t *testing.T) {
		if res := must(t, "guard-opening", "distance=0.49 in; opening=1/4 in"); res.Finding != Beyond {
			t.Errorf("a guard nearer than 1/2 in: %s", res.Finding)
		}
		near(t, "first row", limitOf(t, "guard-opening", "distance=1 in; opening=1/4 in"), 0.25, 1e-9)
		if _, err := Compute("guard-opening", given("distance=32 in; opening=6 in").values()); err == nil {
			t.Error("an opening of 6 in at 32 in was judged")
		}
	})
	t.Run("T4 1910.217 is not for hydraulic presses", func(t *testing.T) {
		if res := must(t, "press-rule", "press=hydraulic"); res.Value != 0 || !strings.Contains(res.Text, "is not under 29 CFR 1910.217") {
			t.Error(res.Text)
		}
	})
	t.Run("T5 ISO 5057 is about fork arms, not chain", func(t *testing.T) {
		if strings.Contains(everything(), "5057") {
			t.Error("a limit names ISO 5057")
		}
	})
	t.Run("T6 3 % of 12 in is 12.360 in, not 12.375 in", func(t *testing.T) {
		for given, want := range map[given]float64{"pitch=1 in; pitches=12; measured=12 in": 12.360, "pitch=1 in; pitches=24; measured=24 in": 24.720} {
			f, _ := further(must(t, "leaf-chain", given), "length at the limit")
			near(t, string(given), f.Value, want, 1e-9)
		}
		if res := must(t, "leaf-chain", "pitch=1 in; pitches=12; measured=12.365 in"); res.Finding != Beyond {
			t.Errorf("12.365 in: %s", res.Finding)
		}
	})
	t.Run("T7 pi is not 3.14, and 15 gpm are not 6", func(t *testing.T) {
		got := must(t, "cylinder-force", "bore=6 in; pressure=2,500 psi").Value
		near(t, "printed with 3.14", got, 70650, 0.001)
		near(t, "exact", got, 2500*math.Pi*9, 1e-9)
		f, _ := further(must(t, "lift-time", "bore=6 in; cylinders=1; stroke=24 in; flow=15 gpm"), "cylinder speed at full flow")
		near(t, "speed at 15 gpm", f.Value, 2.042, 0.001)
	})
	t.Run("T8 the default k is 17, not a product's 21", func(t *testing.T) {
		near(t, "one anchor", must(t, "anchor-breakout", "depth=3.25 in; strength=3,000 psi").Value, 5455.5, 0.0001)
		near(t, "group", must(t, "anchor-group", "depth=3.25 in; strength=3,000 psi").Value, 5455.5, 0.0001)
		near(t, "cast in", must(t, "anchor-group", "depth=3.25 in; strength=3,000 psi; cast=yes").Value, 7701.9, 0.0001)
	})
	t.Run("T9 no figure for the compressibility of oil", func(t *testing.T) {
		// Two printed rules disagree (0.5 % a 1,000 psi, or 0.4 %); neither is used.
		if s := strings.ToLower(everything()); strings.Contains(s, "compressib") || strings.Contains(s, "250,000") {
			t.Error("a limit reckons with the compressibility of oil: say by which rule")
		}
	})
	t.Run("T10 no federal rule is written for vehicle lifts", func(t *testing.T) {
		// OSHA letter, 19 Nov 2014.
		if strings.Contains(everything(), "OSHA requires") {
			t.Error("a limit says that OSHA requires something")
		}
		if c := must(t, "descent-speed", "travel=72 in; time=15 s").Caution; !strings.Contains(c, "general duty clause") || !strings.Contains(c, "no vehicle-lift standard") {
			t.Error(c)
		}
	})
}
