package depreciation

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// ASABE D497.7 (2011, R2020), table 3, from memory: the formula must reproduce the
// total that the table prints for the table's own life. The last column is what
// the formula gives to one decimal.
func TestRepairTotals(t *testing.T) {
	rows := []struct {
		id, machine    string
		total, formula float64
	}{
		{"two-wheel-drive tractor", "tractor-2wd", 100, 100.8},
		{"four-wheel-drive tractor", "tractor-4wd", 80, 76.8},
		{"moldboard plow", "moldboard-plow", 100, 101.0},
		{"chisel plow", "chisel-plow", 75, 73.9},
		{"tandem disk", "tandem-disk", 60, 58.5},
		{"row-crop planter", "row-crop-planter", 75, 75.0},
		{"M10 self-propelled combine", "combine", 40, 40.2},
		{"M11 mower", "mower", 150, 149.5},
		{"rectangular baler", "rectangular-baler", 80, 80.1},
		{"large round baler", "large-round-baler", 90, 89.2},
		{"forage harvester", "forage-harvester", 50, 48.0},
		{"fertilizer spreader", "fertilizer-spreader", 80, 79.9},
		{"boom sprayer", "boom-sprayer", 70, 69.5},
		{"wagon", "wagon", 80, 79.3},
	}
	if len(rows) != len(Machines) {
		t.Errorf("%d machines, %d of them checked", len(Machines), len(rows))
	}
	for _, r := range rows {
		m, ok := FindMachine(r.machine)
		if !ok {
			t.Fatalf("%s: no machine %s", r.id, r.machine)
		}
		v, err := RepairCost(m, 100, m.Life)
		got := must(t, v, err)
		if math.Abs(got-r.formula) > 0.051 {
			t.Errorf("%s: %v %% over its life, want %v", r.id, got, r.formula)
		}
		if m.Total != r.total || math.Abs(got-m.Total) > math.Abs(r.formula-r.total)+0.051 {
			t.Errorf("%s: %v %% over its life, the table prints %v (here %v)", r.id, got, r.total, m.Total)
		}
	}
}

// M08 to M11: the same formula, list price 150,000.
func TestRepairCost(t *testing.T) {
	tractor, _ := FindMachine("tractor-2wd")
	v, err := RepairCost(tractor, 150_000, 6000)
	near(t, "M08", must(t, v, err), 37_800, 1e-9)
	v, err = RepairBetween(tractor, 150_000, 6000, 6400)
	near(t, "M09", must(t, v, err), 5208, 1e-9)
	combine, _ := FindMachine("combine")
	v, err = RepairCost(combine, 100, 3000)
	near(t, "M10", must(t, v, err), 40.18, 1e-4)
	mower, _ := FindMachine("mower")
	v, err = RepairCost(mower, 100, 2000)
	near(t, "M11", must(t, v, err), 149.45, 1e-4)
	if m, ok := FindMachine("lathe"); ok {
		t.Errorf("a machine %v for lathes: none is published", m)
	}
}

// Two stretches of hours cost what the whole costs, and later hours cost more.
func TestRepairAddsUp(t *testing.T) {
	for _, m := range Machines {
		t.Run(m.ID, rapid.MakeCheck(func(t *rapid.T) {
			from := rapid.Float64Range(0, 20_000).Draw(t, "from")
			a, b := rapid.Float64Range(1, 5000).Draw(t, "a"), rapid.Float64Range(1, 5000).Draw(t, "b")
			cost := func(from, to float64) float64 {
				v, err := RepairBetween(m, 1000, from, to)
				return must(t, v, err)
			}
			whole := cost(from, from+a+b)
			if parts := cost(from, from+a) + cost(from+a, from+a+b); math.Abs(parts-whole) > 1e-9*(1+cost(0, from+a+b)) {
				t.Fatalf("%v in two parts, %v in one", parts, whole)
			}
			if early, late := cost(from, from+a), cost(from+b, from+b+a); late <= early {
				t.Fatalf("%v hours cost %v at %v and %v at %v", a, early, from, late, from+b)
			}
		}))
	}
}
