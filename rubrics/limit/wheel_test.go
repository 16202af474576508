package limit

import (
	"strings"
	"testing"
)

// 29 CFR 1910.215(a)(4) and (b)(9): 1/8 in and 1/4 in. Exact.
func TestGrinderGap(t *testing.T) {
	check(t, "grinder-gap", 1e-9, []row{
		{"GR01", "where=work-rest; gap=0.140 in", 0.140, "in", Beyond, nil},
		{"GR02", "where=work-rest; gap=0.125 in", 0.125, "in", Within, nil},
		{"GR02 metric", "where=work-rest; gap=3.175 mm", 3.175, "mm", Within, nil},
		{"GR03", "where=tongue-guard; gap=0.260 in", 0.260, "in", Beyond, nil},
		{"GR03 edge", "where=tongue-guard; gap=1/4 in", 0.25, "in", Within, nil},
		{"maker stricter", "where=work-rest; gap=0.1 in; maker=1/16 in", 0.1, "in", Beyond, nil},
		{"maker does not loosen", "where=work-rest; gap=0.14 in; maker=1/4 in", 0.14, "in", Beyond, nil},
	})
	holds(t, "grinder-gap", []held{
		{"rest", "where=work-rest; gap=1/16 in", 0.125, "in", Published},
		{"tongue", "where=tongue-guard; gap=1/16 in", 0.25, "in", Published},
		{"maker", "where=work-rest; gap=1/16 in; maker=2 mm", 2 / 25.4, "in", Own},
	})
	if s := notes(t, "grinder-gap", "where=work-rest; gap=0.14 in; maker=1/4 in"); !strings.Contains(s, "the rule stands") {
		t.Errorf("%q", s)
	}
	refuses(t, "grinder-gap", []refusal{
		{"where=work-rest; gap=1/8", "gap", "unit is missing"},
		{"where=work-rest; gap=-1 mm", "gap", "cannot be -1 mm"},
		{"where=hood; gap=1 mm", "where", "one of work-rest, tongue-guard"},
	})
}

// GR04: the text of 29 CFR 1910 Subpart O prints 3,144 ft/min for 12 in at 1,000
// rpm, with 0.262 for pi / 12; tolerance 0.1 %. GR05: 1910.215(d)(1), read in
// Washington WAC 296-806-40512.
func TestWheelSpeed(t *testing.T) {
	check(t, "wheel-speed", 0.001, []row{
		{"GR04", "diameter=12 in; rpm=1000", 3144, "ft/min", Computed, nil},
		{"GR04 metric", "diameter=304.8 mm; rpm=1000", 15.96, "m/s", Computed, nil},
		{"GR05", "diameter=8 in; rpm=3450; marked=3000", 3450, "rpm", Beyond, map[string]float64{"surface speed": 7225.7}},
		{"GR05 edge", "diameter=8 in; rpm=3600; marked=3600", 3600, "rpm", Within, nil},
		{"GR05 edge of no usual motor", "diameter=8 in; rpm=2500; marked=2500", 2500, "rpm", Within, nil},
		// A two-pole motor with 3,450 rpm on its plate comes near 3,600 without load.
		{"plate speed, marked for it alone", "diameter=8 in; rpm=3450; marked=3450", 3450, "rpm", Watch, nil},
		{"plate speed, marked for no load", "diameter=8 in; rpm=3450; marked=3600", 3450, "rpm", Within, nil},
		{"50 Hz", "diameter=200 mm; rpm=2850; marked=2900", 2850, "rpm", Watch, nil},
		{"GR05 one more", "diameter=8 in; rpm=3451; marked=3450", 3451, "rpm", Beyond, nil},
	})
	holds(t, "wheel-speed", []held{{"GR05", "diameter=8 in; rpm=3450; marked=3000", 3000, "rpm", Published}})
	if s := notes(t, "wheel-speed", "diameter=8 in; rpm=3450"); !strings.Contains(s, "not assessed") {
		t.Errorf("an unmarked wheel: %q", s)
	}
	refuses(t, "wheel-speed", []refusal{
		{"diameter=8 in; rpm=0; marked=3450", "rpm", "cannot be 0"},
		{"diameter=8 in; rpm=3450.5", "rpm", "not a whole number"},
		{"diameter=200; rpm=3450", "diameter", "unit is missing"},
	})
}

// 29 CFR 1910.215(b)(3): 90 deg open at most, from 65 deg above the spindle. Exact.
func TestWheelExposure(t *testing.T) {
	check(t, "wheel-exposure", 1e-9, []row{
		{"GR06", "open=95 deg; start=60 deg", 95, "deg", Beyond, nil},
		{"GR06 edge", "open=90 deg; start=65 deg", 90, "deg", Within, nil},
		{"begins too high", "open=90 deg; start=66 deg", 66, "deg", Beyond, nil},
	})
	holds(t, "wheel-exposure", []held{
		{"open", "open=80 deg; start=60 deg", 90, "deg", Published},
		{"start", "open=80 deg; start=70 deg", 65, "deg", Published},
	})
	refuses(t, "wheel-exposure", []refusal{
		{"open=400 deg; start=60 deg", "open", "between 1 deg and 360 deg"},
		{"open=90; start=60 deg", "open", "unit is missing"},
	})
}
