package limit

import (
	"strings"
	"testing"
)

// TR09: 49 CFR 393.108(d) and its tables, read in a reprint.
func TestTieDownRating(t *testing.T) {
	var rows []row
	add := func(kind string, lb float64) {
		rows = append(rows, row{"TR09 " + kind, given("kind=" + kind), lb, "lb", Computed, nil})
	}
	for size, lb := range map[string][4]float64{
		"1/4": {1300, 2600, 3150, 3500}, "5/16": {1900, 3900, 4700, 4500}, "3/8": {2650, 5400, 6600, 7100}, "1/2": {4500, 9200, 11300, 12000},
	} {
		add("chain "+size+" unmarked", lb[0])
		for i, grade := range []string{"30", "43", "70", "80"} {
			add("chain "+size+" grade "+grade, lb[i])
		}
	}
	for kind, lb := range map[string]float64{
		"webbing 1 3/4 in": 1750, "webbing 2 in": 2000, "webbing 3 in": 3000, "webbing 4 in": 4000, "rope 1/4": 1400, "rope 3/8": 3000, "rope 1/2": 5300,
	} {
		add(kind, lb)
	}
	check(t, "tie-down-rating", 0, rows)
	check(t, "tie-down-rating", 0, []row{{"its mark", "kind=webbing 2 in; maker=1000 kg", 1000, "kg", Computed, nil}})
	if n := len(tieDownKinds()); n != len(rows) {
		t.Errorf("%d kinds, %d of them checked", n, len(rows))
	}
	refuses(t, "tie-down-rating", []refusal{{"kind=rope 1 in", "kind", "one of chain 1/4 grade 30"}})
}

func TestPayload(t *testing.T) {
	check(t, "truck-payload", 1e-9, []row{
		{"TR15", "rated=7000 lb; empty=5100 lb; people=350 lb; tongue=775 lb", 775, "lb", Within, nil},
		{"TR15 none left", "rated=7000 lb; empty=5100 lb; people=1125 lb; tongue=775 lb", 0, "lb", Within, nil},
		{"TR15 over", "rated=7000 lb; empty=5100 lb; people=1126 lb; tongue=775 lb", -1, "lb", Beyond, nil},
		{"kg", "rated=3000 kg; empty=2300 kg; people=0 kg; tongue=300 kg", 400, "kg", Within, nil},
	})
	check(t, "trailer-payload", 1e-9, []row{
		{"section 5", "rated=7000 lb; empty=2200 lb; load=4200 lb", 4200, "lb", Within, map[string]float64{"payload": 4800}},
		{"over", "rated=6000 lb; empty=2200 lb; load=4200 lb", 4200, "lb", Beyond, map[string]float64{"payload": 3800}},
	})
	refuses(t, "truck-payload", []refusal{{"rated=5000 lb; empty=5100 lb; people=0 lb; tongue=0 lb", "empty", "more empty"}})
	refuses(t, "trailer-payload", []refusal{{"rated=2200 lb; empty=2200 lb; load=1 lb", "empty", "more empty"}, {"rated=2200 lb; empty=200 lb; load=-1 lb", "load", "cannot be"}})
}

// TR16: a sling maker's example, 1,200 lb a leg x 120 / 96 in (a sine of 0.8).
// TR17: another's, 10,000 lb on two legs at 45 deg.
func TestSlingLeg(t *testing.T) {
	check(t, "sling-leg", 0.0005, []row{
		{"TR16", "load=2400 lb; legs=2; angle=53.1301 deg", 1500, "lb", Computed, nil},
		{"TR17", "load=10000 lb; legs=2; angle=45 deg", 7070, "lb", Computed, nil},
		{"section 5", "load=3000 lb; legs=2; angle=60 deg", 1732, "lb", Computed, nil},
		{"plumb", "load=3000 lb; legs=1; angle=90 deg", 3000, "lb", Computed, nil},
		{"at 30", "load=1000 kg; legs=2; angle=30 deg", 1000, "kg", Computed, nil},
		{"tag", "load=10000 lb; legs=2; angle=45 deg; maker=7100 lb", 7071, "lb", Within, nil},
		{"over its tag", "load=10000 lb; legs=2; angle=45 deg; maker=7000 lb", 7071, "lb", Beyond, nil},
		{"tag, under 30", "load=1000 lb; legs=2; angle=29 deg; maker=7000 lb", 29, "deg", Beyond, nil},
		{"under 30", "load=1000 lb; legs=2; angle=29 deg", 29, "deg", Beyond, map[string]float64{"load of one leg": 1031.33}},
	})
	res, _ := Compute("sling-leg", given("load=1000 lb; legs=4; angle=60 deg").values())
	if !strings.Contains(strings.Join(res.Notes, " "), "two legs") {
		t.Error(res.Notes)
	}
	if !strings.Contains(res.Text, "stiff load hangs on two: 577.35 lb") {
		t.Error(res.Text)
	}
	if res := must(t, "sling-leg", "load=4000 lb; legs=4; angle=60 deg; maker=1500 lb"); res.Finding != Watch {
		t.Errorf("within its tag on four legs, not on two: %s", res.Finding)
	}
	refuses(t, "sling-leg", []refusal{
		{"load=1000 lb; legs=1; angle=45 deg", "angle", "hangs upright"},
		{"load=1000 lb; legs=0; angle=60 deg", "legs", "more than zero"},
		{"load=1000 lb; legs=2; angle=0 deg", "angle", "more than zero"},
		{"load=1000 lb; legs=2; angle=91 deg", "angle", "between"},
	})
}

// TR18: a dolly maker's guide, 5 to 10 % to start; 2 % of slope adds 84 lb.
func TestRollerPull(t *testing.T) {
	check(t, "roller-pull", 1e-9, []row{
		{"TR18", "weight=4200 lb", 420, "lb", Computed, map[string]float64{"to start, least": 210, "to keep rolling, least": 105, "to keep rolling, most": 210}},
		{"TR18 slope", "weight=4200 lb; slope=2 %", 504, "lb", Computed, map[string]float64{"of it for the slope": 84}},
	})
	refuses(t, "roller-pull", []refusal{{"weight=4200 lb; slope=60 %", "slope", "between"}, {"weight=4200 lb; slope=-2 %", "slope", "cannot be"}})
}
