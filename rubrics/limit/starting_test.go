package limit

import (
	"strings"
	"testing"
)

// EL14: published, tools of a generator dealer: 59.45 kVA and about 75 A for
// 10 hp, 460 V, letter G in the middle. EL15, EL16 by NFPA 70 Table 430.7(B).
func TestMotorStart(t *testing.T) {
	check(t, "motor-start", 0.001, []row{
		{"EL14", "power=10 hp; voltage=460 V; phases=3; code=G", 78.95, "A", Computed, map[string]float64{"starting current, middle": 74.6}},
		{"EL15 EL16", "power=5 hp; voltage=230 V; phases=3; code=J", 100.3, "A", Computed, map[string]float64{
			"starting current, least": 89.1, "starting power, least": 35.5, "starting power, most": 39.95}},
		{"single-phase", "power=1 hp; voltage=115 V; phases=1; code=L", 86.87, "A", Computed, nil},
		{"letter V", "power=1 hp; voltage=230 V; phases=1; code=V", 97.39, "A", Computed, nil},
		// The sixth correction: a page prints 362 to 406 A here; the formula gives 351 to 395.
		{"correction 6", "power=50 hp; voltage=460 V; phases=3; code=G", 394.75, "A", Computed, map[string]float64{"starting current, least": 351.4}},
	})
	res, _ := Compute("motor-start", given("power=1 hp; voltage=230 V; phases=1; code=V").values())
	if !strings.Contains(res.Text, "or more") {
		t.Error(res.Text)
	}
	if res := must(t, "motor-start", "power=5 hp; voltage=230 V; phases=1; code=A"); !strings.Contains(res.Text, "up to 68.3 A") {
		t.Error(res.Text)
	}
	refuses(t, "motor-start", []refusal{
		{"power=5 hp; voltage=230 V; phases=3; code=Q", "code", "A, B, C"},
		{"power=5 hp; voltage=230 V; phases=2; code=J", "phases", "1, 3"},
		{"power=-5 hp; voltage=230 V; phases=3; code=J", "power", "cannot be -5 hp"},
	})
}

// The letters: the rows of Table 430.7(B) follow each other without a gap of
// more than 0.01, and a missing I, O, Q.
func TestCodeLetters(t *testing.T) {
	for i := 1; i < len(codeLetters); i++ {
		gap := codeLetters[i].low - codeLetters[i-1].high
		if gap < 0.009 || gap > 0.011 {
			t.Errorf("%s begins %.3f after %s", codeLetters[i].letter, gap, codeLetters[i-1].letter)
		}
	}
	if names := strings.Join(codeInput().Words, ""); names != "ABCDEFGHJKLMNPRSTUV" {
		t.Error(names)
	}
}

// EL17: a generator supplier's article, 0.7 x 0.7 of the starting kVA.
func TestGenerator(t *testing.T) {
	check(t, "generator", 0.002, []row{
		{"EL17", "power=5 hp; voltage=230 V; phases=3; code=J; kva=20 kVA", 20, "kVA", Watch, map[string]float64{"surge needed": 19.6, "starting power, most": 39.95}},
		{"EL17 small", "power=5 hp; voltage=230 V; phases=3; code=J; kva=19.5 kVA", 19.5, "kVA", Beyond, nil},
		{"EL17 large", "power=5 hp; voltage=230 V; phases=3; code=J; kva=40 kW", 40, "kVA", Computed, nil},
	})
	refuses(t, "generator", []refusal{
		{"power=5 hp; voltage=230 V; phases=3; code=V; kva=20 kVA", "code", "no upper end"},
		{"power=5 hp; voltage=230 V; phases=3; code=J", "kva", "missing"},
	})
}

func TestClampAndWelder(t *testing.T) {
	check(t, "clamp-current", 1e-9, []row{
		{"at the plate", "measured=15.2 A; plate=15.2 A", 15.2, "A", Within, nil},
		{"over", "measured=15.3 A; plate=15.2 A", 15.3, "A", Beyond, nil},
	})
	for _, name := range []string{"clamp-current", "leg-balance"} {
		for _, d := range All() {
			if d.Name == name && !strings.Contains(d.Caution, "live parts") {
				t.Errorf("%s sends to live parts without a word: %q", name, d.Caution)
			}
		}
	}
	refuses(t, "clamp-current", []refusal{{"measured=0 A; plate=15 A", "measured", "more than zero"}, {"measured=0.4 A; plate=15 A", "measured", "not round a whole cord"}, {"measured=200 A; plate=15 A", "measured", "not starting"}, {"measured=15 A; plate=0 A", "plate", "more than zero"}})
	check(t, "welder-output", 1e-9, []row{
		{"at 10 %", "dial=100 A; measured=90 A", 10, "%", Computed, nil},
		{"over", "dial=100 A; measured=112 A", 12, "%", Beyond, nil},
		{"maker", "dial=100 A; measured=112 A; maker=15 %", 12, "%", Within, nil},
	})
	refuses(t, "welder-output", []refusal{{"dial=10 A; measured=200 A", "measured", "check both"}})
}

// EL22 from memory: 1.732 V I x 1.25, then the next usual size.
func TestTransformer(t *testing.T) {
	check(t, "transformer", 0.001, []row{
		{"EL22", "voltage=460 V; current=7.6 A", 7.57, "kVA", Computed, map[string]float64{"next usual size": 9}},
		{"EL22 has", "voltage=460 V; current=7.6 A; kva=9 kVA", 9, "kVA", Computed, map[string]float64{"needed": 7.57}},
		{"EL22 small", "voltage=460 V; current=7.6 A; kva=6 kVA", 6, "kVA", Beyond, nil},
	})
	refuses(t, "transformer", []refusal{{"voltage=460 A; current=7.6 A", "voltage", "current"}})
}

// The fifth correction: copies of the 575 V column differ, so it is not held.
// The fourth: resistances are those of stranded wire, not of solid.
func TestSupplyCorrections(t *testing.T) {
	refuses(t, "motor-current", []refusal{{"power=2 hp; voltage=575 V; phases=3", "voltage", "beyond the table"}})
	for name, ohms := range map[string]float64{"14": 3.14, "12": 1.98, "10": 1.24, "8": 0.778, "6": 0.491, "4": 0.308} {
		for _, w := range wires {
			if w.name == name && w.ohms != ohms {
				t.Errorf("%s AWG: %v ohm per 1,000 ft, stranded has %v", name, w.ohms, ohms)
			}
		}
	}
}
