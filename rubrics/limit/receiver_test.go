package limit

import (
	"strings"
	"testing"
)

// 29 CFR 1910.169(b)(3)(i) by its Washington mirror, 1917.155(b): 110 %. Exact.
func TestReceiverPressure(t *testing.T) {
	check(t, "receiver-pressure", 1e-9, []row{
		{"AR01", "mawp=150 psi; reached=165 psi", 165, "psi", Watch, nil},
		{"AR01 over", "mawp=150 psi; reached=165.1 psi", 165.1, "psi", Beyond, nil},
		{"AC10", "mawp=200 psi; reached=220 psi", 220, "psi", Watch, nil},
		{"at the plate", "mawp=200 psi; reached=200 psi", 200, "psi", Within, nil},
		{"metric edge", "mawp=10 bar; reached=11 bar", 11, "bar", Watch, nil},
	})
	for mawp, want := range map[string]float64{"150 psi": 165, "200 psi": 220} {
		res, err := Compute("receiver-pressure", map[string]string{"mawp": mawp, "reached": "100 psi"})
		if err != nil {
			t.Fatal(err)
		}
		near(t, "AR01 AC10 limit of "+mawp, *res.Limit, want, 1e-9)
	}
	refuses(t, "receiver-pressure", []refusal{
		{"mawp=150 psi; reached=165 bar", "reached", "ten times"},
		{"mawp=200 psi; reached=12 psi", "reached", "less than a tenth"}, // 12 bar
		{"mawp=200 psi; reached=0 psi", "reached", "more than zero"},     // not run
	})
}

// ASME VIII-1 UG-134(a) as Wisconsin SPS 341 Appendix C reprints it: the set
// pressure of a single valve does not exceed the plate's. Exact.
func TestReliefSetting(t *testing.T) {
	check(t, "relief-setting", 1e-9, []row{
		{"AR03", "mawp=150 psi; set=175 psi", 175, "psi", Beyond, nil},
		{"AR03 edge", "mawp=150 psi; set=150 psi", 150, "psi", Within, nil},
		{"AR03 a hair more", "mawp=150 psi; set=150.1 psi", 150.1, "psi", Beyond, nil},
		{"mixed units", "mawp=10 bar; set=145 psi", 145, "psi", Within, nil},
	})
	holds(t, "relief-setting", []held{{"AR03", "mawp=150 psi; set=175 psi", 150, "psi", Reprint}})
	if s := notes(t, "relief-setting", "mawp=150 psi; set=175 psi"); !strings.Contains(s, "110 %") {
		t.Errorf("AR03: %q", s)
	}
	if s := notes(t, "relief-setting", "mawp=150 psi; set=165 psi"); s != "" {
		t.Errorf("exactly 110 %%: %q", s)
	}
	refuses(t, "relief-setting", []refusal{
		{"mawp=150 psi; set=175 bar", "set", "ten times"},
		{"mawp=175 psi; set=12 psi", "set", "may be in bar"},
		{"mawp=150 psi", "set", "missing"},
		{"mawp=150; set=150 psi", "mawp", "unit is missing"},
	})
}

// 29 CFR 1917.155(b)(2).
func TestReceiverValve(t *testing.T) {
	check(t, "receiver-valve", 0, []row{
		{"AR02 AC11", "between=valve", 1, "valves", Beyond, nil},
		{"AR02 AC11 none", "between=none", 0, "valves", Within, nil},
	})
	refuses(t, "receiver-valve", []refusal{{"between=gauge", "between", "one of none, valve"}})
}
