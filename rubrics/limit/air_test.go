package limit

import (
	"strings"
	"testing"
)

// AC01: a published pump-up, 80 gal, 175 psi, 189 s, factor 0.536 (warm air)
// -> 39.71 cfm; by the gas law 40.4, 1.8 % more. AC02-04 by the gas law.
func TestPumpUp(t *testing.T) {
	check(t, "pump-up", 0.001, []row{
		{"AC01 AC02", "volume=80 gal; from=0 psi; to=175 psi; time=189 s", 40.42, "cfm", Computed,
			map[string]float64{"by the warm-air factor 0.536 psi gal/s": 39.71}},
		{"AC03", "volume=60 gal; from=100 psi; to=125 psi; time=38 s", 21.54, "cfm", Computed, nil},
		{"AC04", "volume=0.30 m3; from=0 bar; to=7 bar; time=240 s; ambient=1.013 bar", 0.5183, "m3/min", Computed, nil},
		{"litres", "volume=300 L; from=0 bar; to=7 bar; time=240 s; ambient=1.013 bar", 518.3, "L/min", Computed, nil},
		{"plate met", "volume=60 gal; from=100 psi; to=125 psi; time=38 s; rated=23 cfm", 21.54, "cfm", Computed, nil},
		{"plate, worn", "volume=60 gal; from=100 psi; to=125 psi; time=38 s; rated=25 cfm", 21.54, "cfm", Watch, nil},
		{"plate, rebuild", "volume=60 gal; from=100 psi; to=125 psi; time=38 s; rated=29 cfm", 21.54, "cfm", Beyond, nil},
	})
	for rated, limit := range map[string]float64{"25 cfm": 22.5, "29 cfm": 21.75} {
		res, err := Compute("pump-up", map[string]string{"volume": "60 gal", "from": "100 psi", "to": "125 psi", "time": "38 s", "rated": rated})
		if err != nil {
			t.Fatal(err)
		}
		near(t, rated, *res.Limit, limit, 1e-9)
	}
	refuses(t, "pump-up", []refusal{
		{"volume=60 gal; from=125 psi; to=100 psi; time=38 s", "to", "is not above"},
		{"volume=60 gal; from=100 psi; to=100 psi; time=38 s", "to", "is not above"},
		{"volume=60 gal; from=100 psi; to=125 psi; time=0 s", "time", "more than zero"},
		{"volume=60 gal; from=100 psi; to=125 psi; time=38 s; ambient=1 bar; rated=-5 cfm", "rated", "cannot be -5 cfm"},
		{"volume=60 gal; from=100 psi; to=125 psi; time=38 s; ambient=0 psi", "ambient", "more than zero"},
		{"volume=60 gal; from=100 psi; to=125 psi; time=38 s; rated=10 cfm", "rated", "which no pump does"},
		{"volume=60 in; from=100 psi; to=125 psi; time=38 s", "volume", "length"},
	})
}

// AC05: a compressor dealer's factors, 1.12 at a drop of 20 psi.
func TestAirLeak(t *testing.T) {
	check(t, "air-leak", 0.001, []row{
		{"AC05", "volume=80 gal; from=110 psi; to=90 psi; time=300 s", 3.2593, "cfm", Computed, map[string]float64{"before the correction": 2.9101}},
		{"no correction", "volume=80 gal; from=100 psi; to=90 psi; time=300 s", 1.45506, "cfm", Computed, nil},
		{"at 50 psi", "volume=80 gal; from=110 psi; to=60 psi; time=300 s", 7.2753 * 1.25, "cfm", Computed, nil},
		{"between", "volume=80 gal; from=110 psi; to=75 psi; time=300 s", 5.09271 * 1.185, "cfm", Computed, nil},
	})
	refuses(t, "air-leak", []refusal{
		{"volume=80 gal; from=90 psi; to=110 psi; time=300 s", "from", "is not above"},
		{"volume=80 gal; from=110 psi; to=20 psi; time=300 s", "to", "beyond the factors"},
	})
}

// Section 4, practice from memory. The third correction: no rule of law asks for
// a leak-down of the tank, so none may be named.
func TestTankLeak(t *testing.T) {
	check(t, "tank-leak", 1e-9, []row{
		{"good", "drop=2 psi; time=10 min", 2, "psi", Computed, nil},
		{"watch", "drop=3 psi; time=10 min", 3, "psi", Watch, nil},
		{"ten", "drop=10 psi; time=10 min", 10, "psi", Watch, nil},
		{"valve or welds", "drop=6 psi; time=5 min", 12, "psi", Beyond, nil},
		{"bar", "drop=0.1 bar; time=10 min", 0.1, "bar", Computed, nil},
	})
	for _, d := range All() {
		if d.Name == "tank-leak" && (d.Status != Practice || strings.Contains(d.Source, "CFR") || strings.Contains(d.Source+d.Caution, "OSHA")) {
			t.Errorf("correction 3: %s %s", d.Status, d.Source)
		}
	}
	if s := notes(t, "tank-leak", "drop=1 psi; time=1 min"); !strings.Contains(s, "Reckoned up from 1 min") || !strings.Contains(s, "cooling") {
		t.Errorf("one minute for ten: %q", s)
	}
	refuses(t, "tank-leak", []refusal{{"drop=2 psi; time=30 s", "time", "between"}})
}

// AC06: published, load 8 min, unload 48; it multiplies 900 cfm by 0.142.
func TestLeakShare(t *testing.T) {
	check(t, "leak-share", 0.007, []row{
		{"AC06", "on=8 min; off=48 min; flow=900 cfm", 14.2857, "%", Watch, map[string]float64{"leak": 127.8}},
		{"at 10 %", "on=1 min; off=9 min", 10, "%", Computed, nil},
		{"never rests", "on=10 min; off=0 min", 100, "%", Watch, nil},
	})
	refuses(t, "leak-share", []refusal{{"on=0 min; off=48 min", "on", "more than zero"}})
}

func TestGaugeError(t *testing.T) {
	check(t, "gauge-error", 1e-9, []row{
		{"at 5 %", "reading=105 psi; reference=100 psi", 5, "%", Computed, nil},
		{"over", "reading=94 psi; reference=100 psi", 6, "%", Beyond, nil},
		{"dead", "reading=0 psi; reference=100 psi", 100, "%", Beyond, nil},
		{"maker", "reading=94 psi; reference=100 psi; maker=10 %", 6, "%", Within, nil},
	})
	if s := notes(t, "gauge-error", "reading=94 psi; reference=100 psi"); !strings.Contains(s, "holds more than it shows") {
		t.Errorf("reads low: %q", s)
	}
	if s := notes(t, "gauge-error", "reading=106 psi; reference=100 psi"); s != "" {
		t.Errorf("reads high: %q", s)
	}
	refuses(t, "gauge-error", []refusal{{"reading=100 bar; reference=100 psi", "reading", "check both"}})
}

// AC07: published, ID 96 in, corroded radius 48.125, t + 0.125 -> a 1/2 in plate.
// AC08, AC09 by ASME VIII-1 UG-27(c)(1).
func TestReceiverWall(t *testing.T) {
	check(t, "receiver-wall", 0.0005, []row{
		{"AC07", "pressure=100 psi; radius=48.125 in; stress=17500 psi; joint=0.85; allowance=0.125 in", 0.4498, "in", Computed, map[string]float64{"without allowance": 0.3248}},
		{"AC07 plate", "pressure=100 psi; radius=48.125 in; stress=17500 psi; joint=0.85; allowance=0.125 in; measured=1/2 in", 0.5, "in", Within, nil},
		{"AC08", "pressure=200 psi; radius=12 in; stress=20000 psi; joint=0.70", 0.1729, "in", Computed, nil},
		{"AC09", "pressure=200 psi; radius=12 in; stress=20000 psi; joint=0.70; measured=0.150 in", 0.150, "in", Beyond, map[string]float64{"pressure the measured wall allows": 173.7}},
		{"AC09 thick", "pressure=200 psi; radius=12 in; stress=20000 psi; joint=0.70; measured=0.173 in", 0.173, "in", Within, nil},
		{"under 3/32", "pressure=50 psi; radius=8 in; stress=20000 psi; joint=1.0; measured=0.08 in", 0.08, "in", Watch, nil},
		{"all allowance", "pressure=50 psi; radius=8 in; stress=20000 psi; joint=1.0; measured=0.1 in; allowance=0.2 in", 0.1, "in", Beyond, map[string]float64{"pressure the measured wall allows": 0}},
	})
	for _, g := range []given{"pressure=200 psi; radius=12 in; stress=20000 psi; joint=0.70", "pressure=200 psi; radius=12 in; stress=20000 psi; joint=0.70; measured=0.173 in"} {
		if s := notes(t, "receiver-wall", g); !strings.Contains(s, "cylinder alone") || !strings.Contains(s, "0.60") || !strings.Contains(s, "Paint") {
			t.Errorf("%s: %q", g, s)
		}
	}
	refuses(t, "receiver-wall", []refusal{
		{"pressure=5000 psi; radius=12 in; stress=10000 psi; joint=0.70", "pressure", "0.385 S E"},
		{"pressure=200 psi; radius=12 in; joint=0.70", "stress", "missing"},
		{"pressure=200 psi; radius=12 in; stress=20000 psi; joint=0.9", "joint", "1.0, 0.85, 0.70"},
		{"pressure=200 psi; radius=12 in; stress=20 psi; joint=1.0", "stress", "between"},
		// Tensile strength in place of the allowable stress would pass half a wall.
		{"pressure=200 psi; radius=12 in; stress=60000 psi; joint=1.0; measured=0.1 in", "stress", "tensile strength"},
		{"pressure=200 psi; radius=12 in; stress=20000 psi; joint=1.0; measured=4.4 in", "measured", "between"},
	})
}
