package limit

import "testing"

// SH04, SH07: the margins of 4 in and 3 in are from memory; what is larger than
// the opening does not fit by geometry.
func TestOpenings(t *testing.T) {
	need := func(x float64) map[string]float64 { return map[string]float64{"needed": x} }
	check(t, "ceiling", 1e-9, []row{
		{"SH04", "height=148 in; vehicle=72 in; rise=72 in", 148, "in", Computed, need(148)},
		{"SH04 feet", "height=12 ft; vehicle=72 in; rise=72 in", 12, "ft", Watch, need(148. / 12)},
		{"maker", "height=150 in; vehicle=72 in; rise=72 in; maker=12 ft", 150, "in", Within, need(148)},
		{"maker asks for more", "height=150 in; vehicle=72 in; rise=72 in; maker=151 in", 150, "in", Beyond, nil},
		{"maker asks for less, tight", "height=146 in; vehicle=72 in; rise=72 in; maker=140 in", 146, "in", Watch, nil},
		{"maker asks for less, too low", "height=143 in; vehicle=72 in; rise=72 in; maker=140 in", 143, "in", Beyond, nil},
		{"SH04 low", "height=143 in; vehicle=72 in; rise=72 in", 143, "in", Beyond, need(148)},
	})
	check(t, "door-width", 1e-9, []row{
		{"SH07", "machine=38 in; door=36 in", 36, "in", Beyond, need(42)},
		{"SH07 tight", "machine=38 in; door=41 in", 41, "in", Watch, nil},
		{"SH07 wide", "machine=38 in; door=42 in", 42, "in", Computed, nil},
	})
	check(t, "door-height", 1e-9, []row{
		{"3 in", "machine=80 in; door=83 in", 83, "in", Computed, need(83)},
		{"tight", "machine=80 in; door=80 in", 80, "in", Watch, nil},
		{"too high", "machine=2100 mm; door=2000 mm", 2000, "mm", Beyond, need(2176.2)},
	})
	refuses(t, "ceiling", []refusal{{"height=12 in; vehicle=72 in; rise=72 in", "height", "between"}, {"height=144 in; vehicle=72 in", "rise", "missing"}})
	refuses(t, "door-width", []refusal{{"machine=38; door=36 in", "machine", "unit is missing"}})
}

// SH05, SH06: arithmetic; what a floor carries is from memory.
func TestFloorLoad(t *testing.T) {
	check(t, "floor-load", 0.001, []row{
		{"SH05 SH06", "weight=3800 lb; pads=6; pad-area=16 in2; footprint=21 ft2; floor=wood", 180.95, "lb/ft2", Beyond, map[string]float64{"pressure under a pad": 39.6}},
		{"SH05 slab", "weight=3800 lb; pads=6; pad-area=16 in2; footprint=21 ft2; floor=concrete", 180.95, "lb/ft2", Computed, nil},
		{"pad heavy", "weight=10000 lb; pads=4; pad-area=16 in2; footprint=30 ft2; floor=concrete", 2500, "lb", Watch, nil},
		{"pad too heavy", "weight=14000 lb; pads=4; pad-area=16 in2; footprint=30 ft2; floor=concrete", 3500, "lb", Beyond, nil},
		{"spread heavy", "weight=8000 lb; pads=40; pad-area=4 in2; footprint=4 ft2; floor=concrete", 2000, "lb/ft2", Watch, nil},
		{"metric", "weight=1723.65 kg; pads=6; pad-area=103 cm2; footprint=1.951 m2; floor=wood", 883.5, "kg/m2", Beyond, nil},
	})
	refuses(t, "floor-load", []refusal{
		{"weight=3800 lb; pads=6; pad-area=16 ft2; footprint=21 ft2; floor=wood", "pad-area", "cover more"},
		{"weight=3800 lb; pads=0; pad-area=16 in2; footprint=21 ft2; floor=wood", "pads", "more than zero"},
	})
}

// SH02: a lift dealer's formula, 6,000 lb, 52 of 130 in. SH03 by the same.
func TestAxleLoad(t *testing.T) {
	check(t, "axle-load", 1e-9, []row{
		{"SH02", "weight=6000 lb; offset=52 in; wheelbase=130 in", 1800, "lb", Computed, map[string]float64{"rear axle": 2400, "front axle": 3600}},
		{"SH03", "weight=5200 lb; front-share=58 %; rated=9000 lb", 1508, "lb", Computed, map[string]float64{"front arm": 1508, "rear arm": 1092}},
		// SH01's published example: 9,000 lb with 6,000 on the rear, a lift of 10,000.
		{"SH01", "weight=9000 lb; offset=2 ft; wheelbase=3 ft; rated=10000 lb", 3000, "lb", Beyond, nil},
		{"heavier than the lift", "weight=11000 lb; front-share=50 %; rated=10000 lb", 11000, "lb", Beyond, nil},
		{"maker", "weight=9000 lb; front-share=40 %; rated=10000 lb; maker=3000 lb", 2700, "lb", Within, nil},
		{"maker and too heavy", "weight=11000 lb; front-share=50 %; rated=10000 lb; maker=3000 lb", 11000, "lb", Beyond, nil},
		{"two arms", "weight=2000 lb; front-share=50 %; arms=2", 1000, "lb", Computed, nil},
	})
	refuses(t, "axle-load", []refusal{
		{"weight=6000 lb", "front-share", "not known"},
		{"weight=6000 lb; offset=52 in", "wheelbase", "missing"},
		{"weight=6000 lb; wheelbase=130 in", "offset", "centre of gravity"},
		{"weight=6000 lb; offset=130 in; wheelbase=130 in", "offset", "behind the rear axle"},
		{"weight=6000 lb; offset=52 in; wheelbase=130 in; front-share=60 %", "front-share", "both"},
		{"weight=6000 lb; front-share=60 %; arms=3", "arms", "even"},
		{"weight=6000 lb; front-share=99 %", "front-share", "between"},
	})
}
