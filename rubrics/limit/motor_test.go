package limit

import (
	"testing"
)

// NFPA 70 Tables 430.248 and 430.250 in reprints: exact.
func TestMotorCurrent(t *testing.T) {
	check(t, "motor-current", 1e-9, []row{
		{"EL01", "power=5 hp; voltage=230 V; phases=3", 15.2, "A", Computed, nil},
		{"EL02", "power=10 hp; voltage=208 V; phases=3", 30.8, "A", Computed, nil},
		{"EL03", "power=5 hp; voltage=230 V; phases=1", 28, "A", Computed, nil},
		{"EL04", "power=1 hp; voltage=115 V; phases=1", 16, "A", Computed, map[string]float64{"conductor must carry (125 %, 430.22)": 20}},
		{"system voltage", "power=5 hp; voltage=240 V; phases=1", 28, "A", Computed, nil},
		{"480 V", "power=5 hp; voltage=480 V; phases=3", 7.6, "A", Computed, nil},
		{"kW", "power=5.5 kW; voltage=230 V; phases=3", 22, "A", Computed, nil},
		{"fraction", "power=7-1/2 hp; voltage=230 V; phases=3", 22, "A", Computed, nil},
	})
	refuses(t, "motor-current", []refusal{
		{"power=15 hp; voltage=230 V; phases=1", "power", "beyond the table"},
		{"power=40 hp; voltage=230 V; phases=3", "power", "beyond the table"},
		{"power=4 hp; voltage=230 V; phases=3", "power", "between the rows"},
		{"power=5 hp; voltage=400 V; phases=3", "voltage", "beyond the table"},
		{"power=5 hp; voltage=460 V; phases=1", "voltage", "beyond the table"},
		{"power=5 hp; voltage=230 V; phases=2", "phases", "one of 1, 3"},
		{"power=0 hp; voltage=230 V; phases=1", "power", "cannot be 0 hp"},
	})
}

// Wire and breaker against published worked examples (EL05 to EL07) and the
// tables they use. Currents exact.
func TestMotorSupply(t *testing.T) {
	for _, c := range []struct {
		id             string
		given          given
		amps           float64
		wire60, wire75 string
		breaker        float64
	}{
		{"EL05 EL06", "power=7-1/2 hp; voltage=230 V; phases=3", 27.5, "10 AWG", "10 AWG", 60},
		{"EL07 EL10 EL11", "power=5 hp; voltage=230 V; phases=1", 35, "8 AWG", "10 AWG", 70},
		{"EL08", "power=5 hp; voltage=230 V; phases=3", 19, "12 AWG", "14 AWG", 40},
		{"EL09", "power=3 hp; voltage=230 V; phases=1", 21.25, "10 AWG", "12 AWG", 45},
		{"next size up", "power=3 hp; voltage=208 V; phases=1", 23.375, "10 AWG", "12 AWG", 50}, // 46.75 A
		{"example C", "power=1 hp; voltage=115 V; phases=1", 20, "12 AWG", "14 AWG", 40},
		{"beyond the wires", "power=10 hp; voltage=115 V; phases=1", 125, "beyond the table", "beyond the table", 250},
	} {
		res, err := Compute("motor-supply", c.given.values())
		if err != nil {
			t.Errorf("%s: %v", c.id, err)
			continue
		}
		w60, _ := further(res, "copper wire, terminals 60 degC or unmarked")
		w75, _ := further(res, "copper wire, terminals marked 75 degC")
		b, _ := further(res, "largest usual breaker")
		near(t, c.id, res.Value, c.amps, 1e-9)
		if w60.Text != c.wire60 || w75.Text != c.wire75 || b.Value != c.breaker || res.Finding != Computed {
			t.Errorf("%s: %s, %s, %v A, %s; want %s, %s, %v A", c.id, w60.Text, w75.Text, b.Value, res.Finding, c.wire60, c.wire75, c.breaker)
		}
	}
	// EL12, EL13: Chapter 9 Table 8, resistance from memory; tolerance 0.1 %.
	check(t, "motor-supply", 0.001, []row{
		{"EL12", "power=5 hp; voltage=240 V; phases=1; length=80 ft; wire=10", 30, "A", Watch,
			map[string]float64{"voltage drop": 5.555, "voltage drop of 240 V": 2.3147}},
		{"EL13", "power=5 hp; voltage=230 V; phases=3; length=100 ft; wire=12 AWG", 20, "A", Within,
			map[string]float64{"voltage drop": 5.2126, "voltage drop of 230 V": 2.2663}},
		{"too thin", "power=5 hp; voltage=230 V; phases=1; wire=14", 15, "A", Beyond, nil},
		{"long run only warns", "power=5 hp; voltage=230 V; phases=3; length=300 ft; wire=12", 6.7991, "%", Watch, nil},
	})
	refuses(t, "motor-supply", []refusal{
		{"power=5 hp; voltage=230 V; phases=3; wire=7", "wire", "one of 14 AWG"},
		{"power=5 hp; voltage=230 V; phases=3; length=-3 ft", "length", "cannot be -3 ft"},
	})
}
