package limit

import "testing"

// 29 CFR 1926.1413(a)(2)(ii)(B) (2010), read in California Title 8 s.5036: out
// when more than 5 % under nominal; exactly 5 % passes. Tolerance 0.1 %.
func TestRopeDiameter(t *testing.T) {
	check(t, "rope-diameter", 0.001, []row{
		{"WR09", "nominal=3/8 in; measured=0.352 in", 6.1333, "%", Beyond, map[string]float64{"diameter at 5 % loss": 0.35625}},
		{"WR10", "nominal=0.375 in; measured=0.357 in", 4.80, "%", Within, nil},
		{"WR11 edge", "nominal=0.375 in; measured=0.35625 in", 5, "%", Within, nil},
		{"WR11 metric edge", "nominal=9.525 mm; measured=9.04875 mm", 5, "%", Within, nil},
		{"WR11 mixed edge", "nominal=3/8 in; measured=9.04875 mm", 5, "%", Within, nil},
		{"over 5 %", "nominal=0.375 in; measured=0.35624 in", 5.00267, "%", Beyond, nil},
		{"oversize", "nominal=0.375 in; measured=0.390 in", -4, "%", Within, nil},
		{"another rope's nominal", "nominal=10 mm; measured=12 mm", -20, "%", Watch, nil}, // a worn 1/2 in rope
		{"maker stricter", "nominal=0.375 in; measured=0.360 in; maker=0.365 in", 4, "%", Beyond, nil},
		{"maker met", "nominal=0.375 in; measured=0.365 in; maker=0.365 in", 2.6667, "%", Within, nil},
	})
	refuses(t, "rope-diameter", []refusal{
		{"nominal=3/8 in", "measured", "missing"},
		{"nominal=3/8; measured=0.352 in", "nominal", "the unit is missing"},
		{"nominal=3/8 in; measured=0.6 in", "measured", "does not fit a rope"},
		{"nominal=3/8 in; measured=0.1 in", "measured", "does not fit a rope"},
		{"nominal=3/8 in; measured=-0.3 in", "measured", "cannot be -0.3 in"},
		{"nominal=0 in; measured=0.3 in", "nominal", "more than zero"},
		{"nominal=3/8 in; measured=3 psi", "measured", "unit of pressure"},
		{"nominal=3/8 in; measured=0.352 in; lay=3", "lay", "takes no such quantity"},
		{"nominal=3/8 in; measured=0.352 in; maker=2 in", "maker", "larger than the rope"},
	})
}

// The same rule's counts, (a)(2)(ii)(A) and (iii): exact.
func TestRopeWires(t *testing.T) {
	check(t, "rope-wires", 0, []row{
		{"WR01", "where=running; lay=6; strand=2", 6, "wires", Beyond, nil},
		{"WR02", "where=running; lay=5; strand=2", 5, "wires", Within, nil},
		{"WR03", "where=running; lay=3; strand=3", 3, "wires", Beyond, nil},
		{"WR04", "where=rotation-resistant; lay=2", 2, "wires", Beyond, nil},
		{"WR05", "where=rotation-resistant; lay=1; long=4", 4, "wires", Beyond, nil},
		{"WR05 below", "where=rotation-resistant; lay=1; long=3", 1, "wires", Within, nil},
		{"WR06", "where=standing; lay=2", 2, "wires", Within, nil},
		{"WR07", "where=standing; lay=3", 3, "wires", Beyond, nil},
		{"WR08", "where=end; lay=2", 2, "wires", Beyond, nil},
		{"WR08 below", "where=end; lay=1", 1, "wires", Within, nil},
		{"WR12", "where=running; lay=1; broken-strand=1", 1, "strands", Beyond, nil},
		// ASME B30.2 overhead cranes would let 8 and 3 pass (12 and 4): that set is
		// not used for lifts, the construction rule takes the rope out.
		{"WR18", "where=running; lay=8; strand=3", 3, "wires", Beyond, nil},
		{"strand not counted", "where=running; lay=3", 3, "wires", Watch, nil},
		{"strand cannot matter", "where=running; lay=2", 2, "wires", Within, nil},
		{"30 diameters not counted", "where=rotation-resistant; lay=1", 1, "wires", Watch, nil},
		{"none", "where=running; lay=0; strand=0", 0, "wires", Within, nil},
		{"maker", "where=running; lay=4; maker=4", 4, "wires", Beyond, nil},
		{"maker never clears a broken strand", "where=running; lay=1; broken-strand=1; maker=10", 1, "strands", Beyond, nil},
	})
	refuses(t, "rope-wires", []refusal{
		{"where=running; lay=2; strand=3", "strand", "more wires"},
		{"where=running; lay=2.5", "lay", "not a whole number"},
		{"where=running; lay=-1", "lay", "cannot be -1"},
		{"where=running", "lay", "missing"},
		{"where=hanging; lay=1", "where", "one of running, standing, end, rotation-resistant"},
		{"lay=1", "where", "missing"},
		{"where=rotation-resistant; lay=2; long=1", "long", "the longer length holds the shorter"},
		{"where=running; lay=2; long=3", "long", "rotation-resistant rope alone"},
		{"where=running; lay=0; broken-strand=1", "lay", "but no wire"},
		{"where=running; lay=3 in", "lay", "unit of length"},
	})
}
