package limit

import "math"

const grindingCaution = "Power locked out and the wheel at rest before a gauge comes near. Ring-test every wheel; the maker's figures come first."

var blockFlatness = rule{
	Definition: Definition{
		Name: "block-flatness", Title: "Surface grinder: test block, four corners",
		Quantities: []Input{
			{Name: "corner-1", Title: "first corner", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "corner-2", Title: "second corner", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "corner-3", Title: "third corner", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "corner-4", Title: "fourth corner", Dimension: "length", Unit: "in", Metric: "mm"},
		},
		Formula: "spread = thickest - thinnest corner; watch over 0.0001 in (toolroom), beyond over 0.0002 in, on a block of 6 x 12 in",
		Source:  "common practice, from memory; ISO 1986-1 was not read",
		Status:  Memory, Caution: grindingCaution, Maker: "length",
	},
	bounds:    map[string]bound{"corner-1": {0, 12}, "corner-2": {0, 12}, "corner-3": {0, 12}, "corner-4": {0, 12}},
	makerUnit: "in",
	judge: func(m *measured) (Result, *Error) {
		low, high := m.n("corner-1"), m.n("corner-1")
		for _, name := range []string{"corner-2", "corner-3", "corner-4"} {
			low, high = math.Min(low, m.n(name)), math.Max(high, m.n(name))
		}
		spread := high - low
		if spread > 0.1 {
			return Result{}, refuse("corner-1", m.F("the corners differ by %s", m.fine(spread, "corner-1")), m.T("measure one ground block with a micrometer, and check the units"))
		}
		return m.most(m.T("The corners differ by"), spread, 0.0001, 0.0002, "corner-1", ""), nil
	},
}

var chuckTop = rule{
	Definition: Definition{
		Name: "chuck-top", Title: "Magnetic chuck: top plate left",
		Quantities: []Input{
			{Name: "left", Title: "top plate left above the poles", Dimension: "length", Unit: "in", Metric: "mm"},
		},
		Formula: "beyond under 0.04 in",
		Source:  "common practice, from memory",
		Status:  Memory, Caution: grindingCaution, Maker: "length",
	},
	bounds: map[string]bound{"left": {0, 3}}, makerUnit: "in",
	judge: func(m *measured) (Result, *Error) {
		limit := 0.04
		maker, ok := m.maker("in")
		if ok {
			limit = maker
		}
		whose := m.whose(ok, m.fine(limit, "left"))
		res := m.held(m.n("left"), limit, "left")
		if ok {
			m.own(&res, *res.Limit)
		}
		res.Text = m.F("%s is left above the poles, not under %s.", m.fine(m.n("left"), "left"), whose)
		if more(limit, m.n("left")) {
			res.Finding = Beyond
			res.Text = m.F("%s is left above the poles, under %s: nearly used up.", m.fine(m.n("left"), "left"), whose)
		}
		return res, nil
	},
}
