package limit

// guardTable is Table O-10 of 29 CFR 1910.217 in inches: up to that distance from
// the danger line an opening may be so wide. It begins half an inch from the
// line, nearer no guard may stand; on the shared edge of two rows the smaller
// opening counts.
var guardTable = []struct{ upTo, widest float64 }{
	{1.5, 0.25}, {2.5, 0.375}, {3.5, 0.5}, {5.5, 0.625}, {6.5, 0.75},
	{7.5, 0.875}, {12.5, 1.25}, {15.5, 1.5}, {17.5, 1.875}, {31.5, 2.125},
}

var guardOpening = rule{
	Definition: Definition{
		Name: "guard-opening", Title: "Guard: width of an opening by its distance",
		Quantities: []Input{
			{Name: "distance", Title: "distance of the opening from the point of operation", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "opening", Title: "greatest width of the opening", Dimension: "length", Unit: "in", Metric: "mm"},
		},
		Formula: "beyond when wider than: to 1 1/2 in 1/4; 2 1/2 3/8; 3 1/2 1/2; 5 1/2 5/8; 6 1/2 3/4; 7 1/2 7/8; 12 1/2 1 1/4; 15 1/2 1 1/2; 17 1/2 1 7/8; 31 1/2 2 1/8; or nearer than 1/2 in",
		Source:  "29 CFR 1910.217 Table O-10, read in the Michigan mirror, R 408.12461 Table 1",
		Status:  Published,
		Caution: "Measured with the power off and locked out. A guard that is loose, bent or tied open guards nothing, whatever its openings.",
	},
	bounds: map[string]bound{"distance": {0, 1200}, "opening": {0, 240}},
	judge: func(m *measured) (Result, *Error) {
		distance, opening := m.n("distance"), m.n("opening")
		if more(0.5, distance) {
			res := Result{Finding: Beyond}
			m.hold(&res, distance, 0.5, "distance")
			res.Text = m.F("The guard is %s from the danger line: none may stand nearer than %s.", m.in(distance, "distance"), m.in(0.5, "distance"))
			return res, nil
		}
		for _, row := range guardTable {
			if more(distance, row.upTo) {
				continue
			}
			res := Result{Finding: Within}
			m.hold(&res, opening, row.widest, "opening")
			at, seen, widest := m.in(distance, "distance"), m.in(opening, "opening"), m.in(row.widest, "opening")
			res.Text = m.F("At %s an opening of %s is not wider than the %s allowed.", at, seen, widest)
			if more(opening, row.widest) {
				res.Finding, res.Text = Beyond, m.F("At %s an opening of %s is wider than the %s allowed.", at, seen, widest)
			}
			return res, nil
		}
		return Result{}, refuse("distance", m.F("the table ends at %s", m.in(31.5, "distance")), m.F("it says nothing of %s; ask the maker or a specialist", m.in(distance, "distance")))
	},
}

var fanGuard = rule{
	Definition: Definition{
		Name: "fan-guard", Title: "Fan: openings of the guard",
		Quantities: []Input{
			{Name: "height", Title: "height of the blades above the floor", Dimension: "length", Unit: "ft", Metric: "m"},
			{Name: "opening", Title: "widest opening of the guard", Dimension: "length", Unit: "in", Metric: "mm"},
		},
		Formula: "blades under 7 ft: beyond over 1/2 in",
		Source:  "29 CFR 1910.212(a)(5)",
		Status:  Published, Caution: "Measured with the fan stopped and unplugged. No guard at all: enter the size of the blades.",
	},
	bounds: map[string]bound{"height": {0, 100}, "opening": {0, 240}},
	judge: func(m *measured) (Result, *Error) {
		res := Result{Finding: Within}
		if least(m.n("height"), 7) {
			m.hold(&res, m.n("height"), 7, "height")
			res.Text = m.F("The blades are %s up: the rule asks for the guard under %s.", m.in(m.n("height"), "height"), m.in(7, "height"))
			return res, nil
		}
		m.hold(&res, m.n("opening"), 0.5, "opening")
		res.Text = m.F("The opening of %s is not over %s.", m.in(m.n("opening"), "opening"), m.in(0.5, "opening"))
		if more(m.n("opening"), 0.5) {
			res.Finding = Beyond
			res.Text = m.F("The opening of %s is over %s: a finger reaches the blades.", m.in(m.n("opening"), "opening"), m.in(0.5, "opening"))
		}
		return res, nil
	},
}

var beltGuard = rule{
	Definition: Definition{
		Name: "belt-guard", Title: "Belts, pulleys and shafts: guarded where a person reaches",
		Quantities: []Input{
			{Name: "height", Title: "height above the floor", Dimension: "length", Unit: "ft", Metric: "m"},
			{Name: "guarded", Title: "guard round it", Dimension: "word", Words: []string{"yes", "no"}},
		},
		Formula: "beyond when open at 7 ft or lower",
		Source:  "29 CFR 1910.219, read in the Michigan mirror, R 408.10727",
		Status:  Published, Caution: "Looked at with the machine stopped and locked out. A guard that can be swung open while it runs guards nothing.",
	},
	bounds: map[string]bound{"height": {0, 100}},
	judge: func(m *measured) (Result, *Error) {
		res := Result{Finding: Within}
		m.hold(&res, m.n("height"), 7, "height")
		switch at := m.in(m.n("height"), "height"); {
		case m.words["guarded"] == "yes":
			res.Text = m.F("The drive at %s is guarded.", at)
		case more(m.n("height"), 7):
			res.Text = m.F("The drive runs at %s: the rule asks for a guard up to %s.", at, m.in(7, "height"))
		default:
			res.Finding, res.Text = Beyond, m.F("The drive is open at %s: up to %s it must be guarded.", at, m.in(7, "height"))
		}
		return res, nil
	},
}
