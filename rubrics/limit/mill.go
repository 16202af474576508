package limit

import "asfound/rubrics/say"

const millingCaution = "The maker's inspection sheet comes first. Power locked out while a hand or a gauge is at the spindle."

// millChecks: knee mill with vertical spindle, ISO 1701-2 class, all from memory.
var millChecks = []allowed{
	{"taper-nose", 0.01, 0, "Taper runout at the nose", ""},
	{"taper-far", 0.02, 300, "Taper runout along the bar", ""},
	{"axial", 0.01, 0, "Spindle axial movement", ""},
	{"table-flat", 0.04, 1000, "Table flat", say.Key("The table may only be hollow.")},
	{"table-slot", 0.02, 300, "Slot parallel to travel", ""},
	{"square-side", 0.025, 300, "Spindle square to table, side to side", ""},
	{"square-front", 0.025, 300, "Spindle square to table, front to back", say.Key("Only the front edge may be high.")},
	{"axes-square", 0.02, 300, "X square to Y", ""},
}

var millGeometry = rule{
	Definition: Definition{
		Name: "mill-geometry", Title: "Knee mill: geometry",
		Quantities: checkQuantities(millChecks),
		Formula:    "measured, scaled to the length of the figure; watch over what a new one is allowed" + bandFormula,
		Source:     "from memory, class of ISO 1701-2 (knee mill, vertical spindle); the standard was not read",
		Status:     Memory, Caution: millingCaution, Maker: "length",
	},
	bounds: checkBounds, makerUnit: "in",
	judge: func(m *measured) (Result, *Error) { return m.banded(checkOf(millChecks, m.words["check"])) },
}

var drillRunning = rule{
	Definition: Definition{
		Name: "drill-running", Title: "Drill spindle: true running",
		Quantities: []Input{
			{Name: "runout", Title: "runout of a test bar", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "over", Title: "length from the nose", Dimension: "length", Unit: "in", Metric: "mm"},
		},
		Formula: "runout scaled to 100 mm; within 0.03 mm" + bandFormula,
		Source:  "Metrology and Quality Control (textbook), ch. 8.24, no year on the copy; 0.03 mm per 100 mm",
		Status:  Published, Caution: millingCaution, Maker: "length",
	},
	bounds: map[string]bound{"runout": {0, 1}, "over": {0.2, 60}}, makerUnit: "in",
	judge: func(m *measured) (Result, *Error) {
		m.numbers["measured"], m.entered["measured"], m.base["measured"] = m.n("runout"), m.entered["runout"], m.base["runout"]
		return m.banded(&allowed{"", 0.03, 100, say.Key("True running"), ""})
	},
}

var tram = rule{
	Definition: Definition{
		Name: "tram", Title: "Tram of a mill head",
		Quantities: []Input{
			{Name: "reading", Title: "total indicator reading", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "sweep", Title: "diameter swept", Dimension: "length", Unit: "in", Metric: "mm"},
		},
		Formula: "over 300 mm = reading x 300 mm / sweep; angle = atan(reading / sweep); watch over 0.025 mm over 300 mm" + bandFormula,
		Source:  "geometry; 0.025 mm over 300 mm from memory, class of ISO 1701-2",
		Status:  Memory, Caution: millingCaution, Maker: "length",
	},
	bounds: map[string]bound{"reading": {0, 1}, "sweep": {1, 100}}, makerUnit: "in",
	judge: func(m *measured) (Result, *Error) {
		slope := m.n("reading") / m.n("sweep")
		if slope > 0.1 {
			return Result{}, refuse("reading", m.F("%s over %s is no tram error", m.in(m.n("reading"), "reading"), m.in(m.n("sweep"), "sweep")), m.T("check both units, and that the head is set upright"))
		}
		for _, part := range []map[string]string{m.entered, m.base} {
			part["measured"], part["over"] = part["reading"], part["sweep"]
		}
		m.numbers["measured"], m.numbers["over"] = m.n("reading"), m.n("sweep")
		res, err := m.banded(&allowed{"", 0.025, 300, say.Key("Head out of tram"), ""})
		res.More = append(res.More,
			Figure{Title: m.T("over 300 mm"), Value: slope * 300, Unit: "mm"},
			Figure{Title: m.T("angle"), Value: arctan(slope), Unit: "deg"})
		res.Notes = append(res.Notes, m.T("A head that tilts can be set; one that will not hold is worn."))
		return res, err
	},
}

var flyCut = rule{
	Definition: Definition{
		Name: "fly-cut", Title: "Hollow left by a head out of tram",
		Quantities: []Input{
			{Name: "radius", Title: "radius of the cutter", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "reading", Title: "total indicator reading", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "sweep", Title: "diameter swept", Dimension: "length", Unit: "in", Metric: "mm"},
		},
		Formula: "hollow = radius x reading / sweep, over a full-width cut",
		Source:  "geometry",
		Status:  Physics, Caution: millingCaution,
	},
	bounds: map[string]bound{"radius": {0.1, 24}, "reading": {0, 1}, "sweep": {1, 100}},
	judge: func(m *measured) (Result, *Error) {
		hollow := m.n("radius") * m.n("reading") / m.n("sweep")
		res := Result{Finding: Computed, Text: m.F("The cut is hollow by %s at full width.", m.fine(hollow, "reading"))}
		res.Value, res.Unit = m.to(hollow, "reading")
		return res, nil
	},
}
