package limit

import (
	"strings"
	"testing"
)

// US Army TM 10-3930-671-24, Lift Chain Inspection and Wear Criteria: replace at
// 3 %; 2 % is the trade's watch line. Tolerance 0.1 %. T6: printed lengths
// (12.375 for 12 pitches of 1 in) are rounded up; 3 % of 12 in is 12.360.
func TestLeafChain(t *testing.T) {
	check(t, "leaf-chain", 0.001, []row{
		// Published measurement: a trade article, 18 pitches of 5/8 in, 286.7 mm.
		{"CH01", "pitch=15.875 mm; pitches=18; measured=286.7 mm", 0.33246, "%", Within, nil},
		{"CH02 T6", "pitch=1 in; pitches=12; measured=12.1 in", 0.83333, "%", Within, map[string]float64{"length at the limit": 12.360}},
		{"CH03", "pitch=1.000 in; pitches=12; measured=12.360 in", 3, "%", Beyond, nil},
		{"CH03 over 24", "pitch=1 in; pitches=24; measured=24.720 in", 3, "%", Beyond, nil},
		{"CH03 metric", "pitch=25.4 mm; pitches=12; measured=313.944 mm", 3, "%", Beyond, nil},
		{"CH03 below", "pitch=1 in; pitches=12; measured=12.359 in", 2.99167, "%", Watch, nil},
		{"CH04", "pitch=1 in; pitches=12; measured=12.30 in", 2.5, "%", Watch, nil},
		{"CH04 edge", "pitch=1 in; pitches=12; measured=12.24 in", 2, "%", Watch, nil},
		// CH13: a hand-hoist maker's table, 5 links 75 mm new, out at 77.3 mm.
		{"CH13", "pitch=15 mm; pitches=5; measured=77.3 mm; maker=77.3 mm", 3.0667, "%", Beyond, nil},
		{"CH13 below", "pitch=15 mm; pitches=5; measured=77.2 mm; maker=77.3 mm", 2.9333, "%", Within, nil},
		{"maker percent", "pitch=1 in; pitches=12; measured=12.20 in; maker=1.5 %", 1.66667, "%", Beyond, nil},
	})
	refuses(t, "leaf-chain", []refusal{
		{"pitch=1 in; pitches=12; measured=11 in", "measured", "N pins enclose N-1 pitches"},
		{"pitch=1 in; pitches=12; measured=20 in", "measured", "too long to be wear"},
		{"pitch=1 in; pitches=0; measured=12 in", "pitches", "more than zero"},
		{"pitch=-1 in; pitches=12; measured=12 in", "pitch", "cannot be -1 in"},
		{"pitch=1 in; pitches=12.5; measured=12 in", "pitches", "not a whole number"},
		{"pitch=1 in; pitches=12; measured=12.1 in; maker=40 %", "maker", "no elongation"},
		{"pitch=1 in; pitches=12; measured=12.1 in; maker=3 in", "maker", "does not fit"},
		{"pitch=1 in; pitches=12; measured=12.1 in; maker=3", "maker", "unit is missing"},
	})
}

// CH05: the manual counts 13 pins for 12 pitches; one pitch too many is 8.3 %.
func TestPinsAndPitches(t *testing.T) {
	res, err := Compute("leaf-chain", given("pitch=1 in; pitches=12; measured=13.05 in").values())
	if err != nil || res.Finding != Beyond || !strings.Contains(strings.Join(res.Notes, " "), "N pins enclose N-1 pitches") {
		t.Errorf("%v %v %v", err, res.Finding, res.Notes)
	}
}

// Roller chain: chain makers' service advice. Tolerance 0.1 %.
func TestRollerChain(t *testing.T) {
	for _, c := range []struct {
		id, more string
		limit    float64
	}{
		{"CH06", "; teeth=40", 3},
		{"CH07", "; teeth=80", 2.5},
		{"no teeth", "", 3},
		{"66 teeth", "; teeth=66", 3},
		{"67 teeth", "; teeth=67", 2.98507},
		{"fixed", "; fixed-centres=yes", 1.5},
		{"fixed, large wheel", "; fixed-centres=yes; teeth=200", 1},
	} {
		res, err := Compute("roller-chain", given("pitch=1 in; pitches=24; measured=24.1 in"+c.more).values())
		if err != nil {
			t.Fatal(c.id, err)
		}
		near(t, c.id, *res.Limit, c.limit, 0.001)
	}
	check(t, "roller-chain", 0.001, []row{
		{"CH08", "pitch=1 in; pitches=24; measured=24.40 in; fixed-centres=yes", 1.66667, "%", Beyond, nil},
		{"CH08 not fixed", "pitch=1 in; pitches=24; measured=24.40 in", 1.66667, "%", Computed, nil},
		{"CH09", "pitch=1 in; pitches=24; measured=24.75 in", 3.125, "%", Beyond, map[string]float64{"length at the limit": 24.720}},
		{"CH07 passed", "pitch=1 in; pitches=24; measured=24.60 in; teeth=80", 2.5, "%", Beyond, nil},
	})
}
