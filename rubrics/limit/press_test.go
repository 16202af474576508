package limit

import (
	"strings"
	"testing"
)

// 29 CFR 1910.217(c)(3): 63 in/s times the time. PR01 is the example printed in
// Washington WAC 296-806-45524; the rule for several engaging points is from
// memory and only warns. Tolerance 0.001 %, since T1 differs by 0.8 %.
func TestPressDistance(t *testing.T) {
	check(t, "press-distance", 0.00001, []row{
		{"PR01", "device=two-hand-trip; stop=0.5 s", 31.5, "in", Computed, nil},
		{"PR02 T1", "device=presence-sensing; stop=0.25 s", 15.75, "in", Computed, nil},
		{"PR03", "device=full-revolution; rpm=60; points=1", 94.5, "in", Computed, map[string]float64{"time counted": 1.5}},
		{"PR03 as a trip", "device=two-hand-trip; rpm=60; points=1", 94.5, "in", Computed, nil},
		{"PR04", "device=full-revolution; rpm=120; points=14", 18, "in", Computed, nil},
		{"far enough", "device=two-hand-control; stop=0.25 s; distance=15 3/4 in", 15.75, "in", Within, nil},
		{"too near", "device=two-hand-control; stop=0.25 s; distance=15.74 in", 15.74, "in", Beyond, nil},
		{"metric edge", "device=two-hand-control; stop=0.25 s; distance=400.05 mm", 400.05, "mm", Within, nil},
		{"one point, far enough", "device=full-revolution; rpm=60; points=1; distance=95 in", 95, "in", Within, nil},
		{"fourteen points, from memory, never clear", "device=full-revolution; rpm=120; points=14; distance=20 in", 20, "in", Computed, nil},
		{"fourteen points warn", "device=full-revolution; rpm=120; points=14; distance=17 in", 17, "in", Beyond, nil},
		{"maker asks for more", "device=two-hand-control; stop=0.25 s; distance=16 in; maker=20 in", 16, "in", Beyond, nil},
		{"maker does not loosen", "device=two-hand-control; stop=0.25 s; distance=12 in; maker=10 in", 12, "in", Beyond, nil},
	})
	holds(t, "press-distance", []held{
		{"stop", "device=presence-sensing; stop=0.5 s; distance=30 in", 31.5, "in", Published},
		{"points", "device=full-revolution; rpm=120; points=14; distance=30 in", 18, "in", Memory},
		{"maker", "device=presence-sensing; stop=0.25 s; distance=30 in; maker=20 in", 20, "in", Own},
	})
	if s := notes(t, "press-distance", "device=full-revolution; rpm=60"); !strings.Contains(s, "taken as one") {
		t.Errorf("uncounted points: %q", s)
	}
	refuses(t, "press-distance", []refusal{
		{"device=presence-sensing", "stop", "missing"},
		{"device=presence-sensing; stop=0.25", "stop", "unit is missing"},
		{"device=presence-sensing; stop=0.25 s; rpm=60", "rpm", "full-revolution clutch alone"},
		{"device=full-revolution; stop=0.25 s", "stop", "cannot stop in mid-stroke"},
		{"device=full-revolution", "rpm", "missing"},
		{"device=full-revolution; rpm=60; points=0", "points", "cannot be 0"},
		{"device=full-revolution; rpm=-60; points=1", "rpm", "cannot be -60"},
		{"device=gate; stop=1 s", "device", "one of presence-sensing"},
	})
}

// 29 CFR 1910.217(a)(5). T4: hydraulic presses, press brakes and pneumatic
// presses are not under that rule.
func TestPressRule(t *testing.T) {
	check(t, "press-rule", 0, []row{
		{"PR08 T4", "press=hydraulic", 0, "", Computed, nil},
		{"press brake", "press=press-brake", 0, "", Computed, nil},
		{"pneumatic", "press=pneumatic", 0, "", Computed, nil},
		{"mechanical", "press=mechanical", 1, "", Computed, nil},
	})
	for kind := range pressRules {
		res, err := Compute("press-rule", map[string]string{"press": kind})
		if not := strings.Contains(res.Text, "is not under 29 CFR 1910.217"); err != nil || not != (kind != "mechanical") {
			t.Errorf("%s: %v %q", kind, err, res.Text)
		}
		if f, _ := further(res, "rules"); kind != "mechanical" && (strings.Contains(f.Text, "1910.217") || !strings.Contains(f.Text, "1910.212") || !strings.Contains(f.Text, "maker's manual")) {
			t.Errorf("%s: %q", kind, f.Text)
		}
	}
	if f, _ := further(must(t, "press-rule", "press=hydraulic"), "rules"); !strings.Contains(f.Text, "PASE") {
		t.Errorf("hydraulic: %q", f.Text)
	}
	refuses(t, "press-rule", []refusal{{"press=screw", "press", "one of mechanical"}})
}

// ASME B30.1-1998, read in an excerpt: static test at 150 %, the maker's. Exact.
func TestJackPressure(t *testing.T) {
	check(t, "jack-pressure", 1e-9, []row{
		{"PR12", "rated=7,000 psi", 10500, "psi", Computed, nil},
		{"metric", "rated=700 bar", 1050, "bar", Computed, nil},
	})
	if res := must(t, "jack-pressure", "rated=7,000 psi"); !strings.Contains(res.Caution, "nobody else") || !strings.Contains(res.Text, "its maker tests") {
		t.Errorf("%q, %q", res.Text, res.Caution)
	}
	refuses(t, "jack-pressure", []refusal{{"rated=7,000 lb", "rated", "unit of mass, not of pressure"}, {"rated=7 MPa; maker=9 MPa", "maker", "no such quantity"}})
}

// HY10: the press exercise, 35.25 gpm at 1,750 rpm. Tolerance 0.1 %.
func TestPumpDisplacement(t *testing.T) {
	check(t, "pump-displacement", 0.001, []row{
		{"HY10", "flow=35.25 gpm; rpm=1750", 4.653, "in3", Computed, nil},
		{"metric", "flow=133.435761 L/min; rpm=1750", 76.249, "mL", Computed, nil},
	})
	refuses(t, "pump-displacement", []refusal{
		{"flow=35.25 gpm; rpm=0", "rpm", "cannot be 0"},
		{"flow=35.25 gal; rpm=1750", "flow", "unit of volume"},
	})
}
