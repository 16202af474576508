package limit

import "testing"

// 30 CFR 56.19024(a)(1) and (2): more than 5 % of the wires in one lay, more than
// 15 % of one strand. A 6x19 rope has 114 wires, a 7x19 rope 133. Tolerance 0.1 %.
func TestRopeShare(t *testing.T) {
	check(t, "rope-share", 0.001, []row{
		{"WR13", "wires=114; broken=6", 5.26316, "%", Beyond, nil},
		{"WR13 strands counted", "wires=114; broken=6; strand-wires=19; strand=1", 5.26316, "%", Beyond, nil},
		{"WR14", "wires=114; broken=5; strand-wires=19; strand=1", 4.38596, "%", Within, nil},
		{"WR14 strands not counted", "wires=114; broken=5", 4.38596, "%", Watch, nil},
		{"WR15", "wires=114; broken=3; strand-wires=19; strand=3", 15.78947, "%", Beyond, nil},
		{"WR15 below", "wires=114; broken=2; strand-wires=19; strand=2", 1.75439, "%", Within, nil},
		{"7x19, 7 broken", "wires=133; broken=7; strand-wires=19; strand=1", 5.26316, "%", Beyond, nil},
		{"7x19, 6 broken", "wires=133; broken=6; strand-wires=19; strand=1", 4.51128, "%", Within, nil},
		{"exactly 5 %", "wires=100; broken=5; strand-wires=20; strand=1", 5, "%", Within, nil},
		{"exactly 15 %", "wires=120; broken=3; strand-wires=20; strand=3", 2.5, "%", Within, nil},
		{"none", "wires=114; broken=0", 0, "%", Within, nil},
		{"one cannot be 15 % of a strand of seven", "wires=42; broken=1", 2.38095, "%", Within, nil},
		{"maker", "wires=114; broken=2; maker=2", 2, "wires", Beyond, nil},
		{"maker met", "wires=114; broken=6; maker=8", 6, "wires", Within, nil},
	})
	holds(t, "rope-share", []held{
		{"lay", "wires=114; broken=6", 5, "%", Published},
		{"strand", "wires=114; broken=3; strand-wires=19; strand=3", 15, "%", Published},
		{"maker", "wires=114; broken=2; maker=2", 2, "wires", Own},
	})
	refuses(t, "rope-share", []refusal{
		{"wires=0; broken=0", "wires", "cannot be 0"},
		{"wires=114", "broken", "missing"},
		{"wires=114; broken=115", "broken", "more wires are broken than the rope has"},
		{"wires=114; broken=2.5", "broken", "not a whole number"},
		{"wires=114; broken=-1", "broken", "cannot be -1"},
		{"wires=114; broken=3; strand=3", "strand-wires", "missing"},
		{"wires=114; broken=3; strand-wires=19; strand=4", "strand", "than in the whole lay"},
		{"wires=114; broken=30; strand-wires=19; strand=20", "strand", "than the strand has"},
		{"wires=19; broken=3; strand-wires=114", "strand-wires", "more wires than the whole rope"},
		{"wires=114 mm; broken=3", "wires", "unit of length"},
	})
}

// ISO 4309:2010, discard by visible broken wires, classes M1 to M4, as a rope
// maker reprints it: reached or exceeded is out. Exact.
func TestRopeISO(t *testing.T) {
	for _, c := range []struct {
		outer, lay, drum string
		short, long      float64
	}{
		{"51-75", "regular", "single", 3, 6}, {"51-75", "lang", "single", 2, 3},
		{"51-75", "regular", "multi", 6, 12}, {"51-75", "lang", "multi", 6, 12},
		{"101-120", "regular", "single", 5, 10}, {"101-120", "lang", "single", 2, 5},
		{"101-120", "regular", "multi", 10, 19}, {"101-120", "lang", "multi", 10, 19},
	} {
		kind := "outer=" + c.outer + "; lay=" + c.lay + "; drum=" + c.drum
		at := func(short, long float64) given {
			return given(kind + "; short=" + show(short, 0) + "; long=" + show(long, 0))
		}
		check(t, "rope-iso", 0, []row{
			{kind + " below both", at(c.short-1, c.long-1), c.short - 1, "wires", Within, nil},
			{kind + " short", at(c.short, c.short), c.short, "wires", Beyond, nil},
			{kind + " long", at(0, c.long), c.long, "wires", Beyond, nil},
		})
		holds(t, "rope-iso", []held{{kind, at(0, c.long), c.long, "wires", Reprint}})
	}
	check(t, "rope-iso", 0, []row{
		{"WR17", "outer=101-120; short=4; long=10", 10, "wires", Beyond, nil},
		{"WR17 below", "outer=101-120; short=4; long=9", 4, "wires", Within, nil},
		{"maker", "outer=101-120; short=2; long=2; maker=2", 2, "wires", Beyond, nil},
	})
	refuses(t, "rope-iso", []refusal{
		{"outer=101-120; short=4; long=3", "long", "the longer length holds the shorter"},
		{"outer=76-100; short=4; long=3", "outer", "one of 51-75, 101-120"},
		{"outer=51-75; short=4", "long", "missing"},
		{"outer=51-75; short=4; long=4; lay=left", "lay", "one of regular, lang"},
	})
}

// 30 CFR 56.19024(g): more than 6 % of the baseline diameter. Tolerance 0.1 %.
func TestRopeBaseline(t *testing.T) {
	check(t, "rope-baseline", 0.001, []row{
		{"WR16", "baseline=0.500 in; measured=0.469 in", 6.2, "%", Beyond, map[string]float64{"diameter at 6 % loss": 0.47}},
		{"WR16 edge", "baseline=0.500 in; measured=0.470 in", 6, "%", Within, nil},
		{"WR16 metric edge", "baseline=12.7 mm; measured=11.938 mm", 6, "%", Within, nil},
		{"WR16 a hair less", "baseline=0.500 in; measured=0.46999 in", 6.002, "%", Beyond, nil},
		{"thicker than when new", "baseline=0.500 in; measured=0.520 in", -4, "%", Watch, nil},
		{"maker stricter", "baseline=0.500 in; measured=0.480 in; maker=0.485 in", 4, "%", Beyond, nil},
	})
	holds(t, "rope-baseline", []held{{"WR16", "baseline=0.5 in; measured=0.469 in", 6, "%", Published}})
	refuses(t, "rope-baseline", []refusal{
		{"baseline=1/2 in; measured=3/4 in", "measured", "does not fit a rope"}, // thicker by half
		{"baseline=1/2 in; measured=1/4 in", "measured", "does not fit a rope"},
		{"baseline=1/2; measured=0.49 in", "baseline", "the unit is missing"},
		{"baseline=1/2 in; measured=0.49 kg", "measured", "unit of mass"},
		{"baseline=-1/2 in; measured=0.49 in", "baseline", "cannot be -0.5 in"},
	})
}

// Washington WAC 296-24-29401: at most a fifth of the breaking load. The breaking
// load of 14,400 lb is a 3/8 in cable's, from memory. Exact.
func TestRopeLoad(t *testing.T) {
	check(t, "rope-load", 1e-9, []row{
		{"WR19", "breaking=14,400 lb", 2880, "lbf", Computed, nil},
		{"WR19 carried", "breaking=14,400 lb; load=2,880 lb", 2880, "lbf", Within, nil},
		{"WR19 over", "breaking=14,400 lb; load=2,880.1 lb", 2880.1, "lbf", Beyond, nil},
		{"metric edge", "breaking=64 kN; load=12.8 kN", 12.8, "kN", Within, nil},
		{"no load", "breaking=64 kN; load=0 kN", 0, "kN", Within, nil},
		{"maker", "breaking=14,400 lb; load=2,000 lb; maker=1,900 lb", 2000, "lbf", Beyond, nil},
		{"maker alone", "breaking=14,400 lb; maker=1,900 lb", 1900, "lbf", Computed, nil},
	})
	holds(t, "rope-load", []held{{"WR19", "breaking=14,400 lb; load=1 lb", 2880, "lbf", Published}})
	refuses(t, "rope-load", []refusal{
		{"breaking=14,400 lb; maker=15,000 lb", "maker", "more than the breaking force"},
		{"breaking=14,400", "breaking", "unit is missing"},
		{"breaking=14,400 psi", "breaking", "unit of pressure"},
		{"load=3 kN", "breaking", "missing"},
	})
}
