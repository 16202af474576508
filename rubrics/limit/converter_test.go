package limit

import (
	"strings"
	"testing"
)

// EL18, EL20: a drive dealer's published guide (26 A motor, 52 A drive).
func TestDriveSize(t *testing.T) {
	check(t, "drive-size", 0.002, []row{
		{"EL18", "current=26 A", 52, "A", Computed, nil},
		{"EL19 EL20", "current=15.2 A", 30.4, "A", Computed, map[string]float64{"input current": 26.3}},
		{"section 2.5, wire", "current=15.2 A", 30.4, "A", Computed, map[string]float64{"wire must carry": 32.9}},
		{"drive at hand", "current=15.2 A; rated=30.4 A", 30.4, "A", Computed, nil},
		{"too small", "current=15.2 A; rated=30 A", 30, "A", Beyond, nil},
		{"maker", "current=9.6 A; maker=10 A", 9.6, "A", Within, nil},
		{"maker, too small", "current=9.6 A; maker=9 A", 9.6, "A", Beyond, nil},
	})
	refuses(t, "drive-size", []refusal{{"current=5 hp", "current", "power"}, {"current=0 A", "current", "more than zero"}})
}

// EL21, from memory: NFPA 70 455.6(A); wire by Table 310.16 at 60 degC.
func TestRotary(t *testing.T) {
	check(t, "rotary-supply", 1e-9, []row{
		{"EL21", "current=15.2 A; kind=fixed", 38, "A", Computed, nil},
		{"variable", "current=40 A; kind=variable", 50, "A", Computed, nil},
	})
	res, _ := Compute("rotary-supply", given("current=15.2 A; kind=fixed").values())
	if wire, _ := further(res, "copper wire, terminals 60 degC or unmarked"); wire.Text != "8 AWG" || !strings.Contains(res.Text, "8 AWG") {
		t.Errorf("EL21: %q", wire.Text)
	}
	refuses(t, "rotary-supply", []refusal{{"current=15.2 A; kind=both", "kind", "fixed, variable"}})
	check(t, "rotary-size", 1e-9, []row{
		{"easy", "machine=5 hp; converter=5 hp; start=easy", 5, "hp", Computed, nil},
		{"normal", "machine=5 hp; converter=7 hp; start=normal", 7, "hp", Beyond, map[string]float64{"rating needed": 7.5}},
		{"hard", "machine=5 hp; converter=10 hp; start=hard", 10, "hp", Computed, nil},
		{"maker", "machine=5 hp; converter=7 hp; start=normal; maker=5 hp", 5, "hp", Within, nil},
		{"maker, less", "machine=5 hp; converter=10 hp; start=easy; maker=3 hp", 5, "hp", Beyond, nil},
	})
}

// Common practice: 10 % idle, 5 % loaded; the departure from the mean.
func TestLegBalance(t *testing.T) {
	check(t, "leg-balance", 1e-6, []row{
		{"idle", "leg-1=240 V; leg-2=240 V; leg-3=264 V; load=idle", 6.4516129, "%", Computed, map[string]float64{"mean": 248}},
		{"loaded", "leg-1=240 V; leg-2=240 V; leg-3=264 V; load=loaded", 6.4516129, "%", Beyond, nil},
		{"even", "leg-1=240 V; leg-2=240 V; leg-3=240 V; load=loaded", 0, "%", Computed, nil},
		{"lost leg", "leg-1=240 V; leg-2=0 V; leg-3=240 V; load=idle", 100, "%", Beyond, nil},
		{"maker", "leg-1=240 V; leg-2=240 V; leg-3=246 V; load=loaded; maker=2 %", 1.6528926, "%", Within, nil},
	})
	res, _ := Compute("leg-balance", given("leg-1=240 V; leg-2=240 V; leg-3=246 V; load=loaded").values())
	if !strings.Contains(strings.Join(res.Notes, " "), "motor makers ask for 1 %") {
		t.Error(res.Notes)
	}
	refuses(t, "leg-balance", []refusal{{"leg-1=0 V; leg-2=0 V; leg-3=0 V; load=idle", "leg-1", "while it runs"}, {"leg-1=24 V; leg-2=24 V; leg-3=24 V; load=loaded", "leg-1", "no supply"}})
}
