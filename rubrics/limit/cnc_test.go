package limit

import (
	"strings"
	"testing"
)

const fiveTargets = "up-1=2 um; up-2=3 um; up-3=5 um; up-4=4 um; up-5=6 um; down-1=-1 um; down-2=0 um; down-3=1 um; down-4=1 um; down-5=2 um; scatter=0.5 um"

// MT16-18: the worked example of section 1.6, formulas of ISO 230-2 from memory.
func TestPositioning(t *testing.T) {
	check(t, "positioning", 1e-9, []row{
		{"MT17 MT16 MT18", fiveTargets, 9, "um", Computed, map[string]float64{"reversal B": 4, "repeatability both ways R": 6}},
		{"over", given(strings.Replace(fiveTargets, "up-5=6 um", "up-5=20 um", 1)), 23, "um", Watch, nil},
		{"twice over", given(strings.Replace(fiveTargets, "up-5=6 um", "up-5=40 um", 1)), 43, "um", Beyond, nil},
		{"maker", fiveTargets + "; maker=8 um", 9, "um", Beyond, nil},
		{"maker passes", fiveTargets + "; maker=9 um", 9, "um", Within, nil},
	})
	refuses(t, "positioning", []refusal{
		{given(strings.Replace(fiveTargets, "scatter=0.5 um", "scatter=-1 um", 1)), "scatter", "cannot be -1 um"},
		{given(strings.Replace(fiveTargets, "up-1=2 um", "up-1=2 in", 1)), "up-1", "between"},
		{given(strings.Replace(fiveTargets, "down-1=-1 um", "down-1=-6 mm", 1)), "down-1", "between -5.08 mm"},
		{"up-1=2 um", "up-2", "missing"},
	})
}

// The first correction: ISO 10791-1 is for horizontal spindles, and ISO 230-2
// sets no limits, so neither may be given as the source of a figure.
func TestNoLimitOfMethods(t *testing.T) {
	for _, d := range All() {
		if strings.Contains(d.Source+d.Formula+d.Caution+d.Title, "10791") {
			t.Errorf("%s names ISO 10791", d.Name)
		}
		if strings.Contains(d.Source, "ISO 230-2") && (d.Status != Memory || !strings.Contains(d.Source, "sets no limits")) {
			t.Errorf("%s takes a limit from ISO 230-2", d.Name)
		}
	}
}

// Section 1.6: circularity, bands from memory.
func TestCircularity(t *testing.T) {
	check(t, "circularity", 1e-6, []row{
		{"1.6 worked", "largest=100.006 mm; smallest=99.991 mm", 0.015, "mm", Watch, nil},
		{"good", "largest=100.005 mm; smallest=99.995 mm", 0.010, "mm", Computed, nil},
		{"needs work", "largest=100.015 mm; smallest=99.991 mm", 0.024, "mm", Beyond, nil},
		{"poor", "largest=100.055 mm; smallest=99.991 mm", 0.064, "mm", Beyond, nil},
		{"maker", "largest=100.006 mm; smallest=99.991 mm; maker=20 um", 0.015, "mm", Within, nil},
	})
	res, err := Compute("circularity", given("largest=100.055 mm; smallest=99.991 mm").values())
	if err != nil || !strings.Contains(strings.Join(res.Notes, " "), "Over 0.05 mm is poor") {
		t.Errorf("%v %q", err, res.Text)
	}
	refuses(t, "circularity", []refusal{
		{"largest=99 mm; smallest=100 mm", "smallest", "other way round"},
		{"largest=100 mm; smallest=90 mm", "largest", "one ballbar run"},
	})
}

// Section 1.6: drawbar pull, from memory.
func TestDrawbarPull(t *testing.T) {
	check(t, "drawbar-pull", 1e-6, []row{
		{"40", "taper=40; pull=1600 lbf", 1600, "lbf", Computed, nil},
		{"40 weak", "taper=40; pull=1300 lbf", 1300, "lbf", Watch, nil},
		{"40 spent", "taper=40; pull=1190 lbf", 1190, "lbf", Beyond, nil},
		{"30", "taper=30; pull=1300 lbf", 1300, "lbf", Computed, nil},
		{"book", "taper=40; pull=1600 lbf; book=2100 lbf", 1600, "lbf", Beyond, map[string]float64{"share of it": 76.190476}},
		{"book at 80 %", "taper=40; pull=1600 lbf; book=2000 lbf", 1600, "lbf", Watch, nil},
	})
	refuses(t, "drawbar-pull", []refusal{{"taper=50; pull=1600 lbf", "taper", "30, 40"}, {"taper=40; pull=1600 psi", "pull", "pressure"}})
}
