package limit

import (
	"strings"

	"asfound/rubrics/say"
)

const paperCaution = "Paper does not lift: what it says is still to be looked at. Before use a qualified lift inspector inspects; local code and permits apply."

var inspectionInterval = rule{
	Definition: Definition{
		Name: "inspection-interval", Title: "Time since the last inspection",
		Quantities: []Input{
			{Name: "equipment", Title: "kind of equipment", Dimension: "word", Words: []string{"vehicle-lift", "jack"}},
			{Name: "months", Title: "months since the last report", Dimension: "number"},
		},
		Formula: "beyond over 12 months for a vehicle lift, over 6 for a jack in regular use",
		Source:  "ANSI/ALI ALOIM (2020), at least once a year, read in trade articles; jacks: 29 CFR 1910.244(a)(2)(vi)(a)",
		Status:  Reprint, Caution: paperCaution, Maker: "number",
	},
	bounds: map[string]bound{"months": {0, 1200}},
	judge: func(m *measured) (Result, *Error) {
		limit, res := 12.0, Result{Finding: Within}
		if m.words["equipment"] == "jack" {
			limit = 6
			res.Status, res.Source = Published, m.T("29 CFR 1910.244(a)(2)(vi)(a), jacks in regular use")
			res.Notes = []string{m.T("A jack is looked at as well before and after outside work, and after any shock.")}
		}
		limit = m.stricter(&res, "", limit)
		months := m.n("months")
		res.Value, res.Unit, res.Limit = months, m.T("months"), ptr(limit)
		res.Text = m.F("The last report is %s months old, not over %s.", m.show(months, 0), m.show(limit, 0))
		if months > limit {
			res.Finding = Beyond
			res.Text = m.F("The last report is %s months old, over %s: an inspection is overdue.", m.show(months, 0), m.show(limit, 0))
		}
		return res, nil
	},
}

// plateParts are what a lift's tag must show: the quantity and its words.
var plateParts = [][2]string{
	{"maker", say.Key("maker")}, {"model", say.Key("model")}, {"serial", say.Key("serial number")}, {"capacity", say.Key("rated capacity")},
}

var ratingPlate = rule{
	Definition: Definition{
		Name: "rating-plate", Title: "Lift: what its plate shows",
		Quantities: []Input{
			{Name: "maker", Title: "maker on the plate", Dimension: "word", Words: []string{"yes", "no"}},
			{Name: "model", Title: "model on the plate", Dimension: "word", Words: []string{"yes", "no"}},
			{Name: "serial", Title: "serial number on the plate", Dimension: "word", Words: []string{"yes", "no"}},
			{Name: "capacity", Title: "rated capacity on the plate", Dimension: "word", Words: []string{"yes", "no"}},
		},
		Formula: "beyond when maker, model, serial number or rated capacity is missing",
		Source:  "Michigan R 408.17251(3), lifts bought after 28 Dec 1974, read in a trade article that quotes it",
		Status:  Published, Caution: "Without a rated capacity the lift is not used. " + paperCaution,
	},
	judge: func(m *measured) (Result, *Error) {
		var missing []string
		for _, part := range plateParts {
			if m.words[part[0]] == "no" {
				missing = append(missing, m.Label(part[1]))
			}
		}
		res := Result{Value: float64(len(missing)), Unit: m.T("missing"), Limit: ptr(0), Finding: Within, Text: m.T("The plate shows maker, model, serial number and rated capacity.")}
		if len(missing) > 0 {
			res.Finding, res.Text = Beyond, m.F("The plate does not show: %s.", strings.Join(missing, ", "))
		}
		return res, nil
	},
}

var liftStandard = rule{
	Definition: Definition{
		Name: "lift-standard", Title: "Lift: design standard by its year",
		Quantities: []Input{
			{Name: "made", Title: "year it was made", Dimension: "number"},
		},
		Formula: "to 17 Aug 1994 ANSI B153.1-1974 or -1981; to 28 July 2005 ANSI/ALI B153.1-1990 or ALCTV-1998; then ALCTV-1998",
		Source:  "California Title 8 s.3542",
		Status:  Published, Caution: "California's rule; newer editions of ALCTV (2017) apply to newer lifts elsewhere. Look for the certification label. " + paperCaution,
	},
	bounds: map[string]bound{"made": {1920, 2100}},
	judge: func(m *measured) (Result, *Error) {
		year := m.n("made")
		text := "ANSI/ALI ALCTV-1998" // names of standards are the same in every language
		switch {
		case year <= 1976:
			text = m.T("ANSI B153.1-1974, or an approval of its time if installed before November 1976")
		case year < 1994:
			text = m.T("ANSI B153.1-1974 or -1981")
		case year == 1994:
			text = m.T("ANSI B153.1-1974 or -1981 to 17 August 1994, ANSI/ALI B153.1-1990 after")
		case year < 2005:
			text = m.T("ANSI/ALI B153.1-1990 or ALCTV-1998")
		case year == 2005:
			text = m.T("ANSI/ALI B153.1-1990 or ALCTV-1998 to 28 July 2005, ALCTV-1998 after")
		}
		return Result{Value: year, Finding: Computed, Text: m.F("A lift made in %s comes under %s.", m.show(year, 0), text),
			More: []Figure{{Title: m.T("design standard"), Text: text}}}, nil
	},
}

var reservoirLevel = rule{
	Definition: Definition{
		Name: "reservoir-level", Title: "In-ground lift: oil left with the plungers up",
		Quantities: []Input{
			{Name: "depth", Title: "depth of oil, plungers fully up", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "share", Title: "share of the oil volume", Dimension: "share", Unit: "%", Metric: "%"},
		},
		Formula: "beyond under 3 in or under 10 % of the oil",
		Source:  "California Title 8 s.3545(b)",
		Status:  Published, Caution: liftCaution, Maker: "length",
	},
	bounds:    map[string]bound{"depth": {0, 240}, "share": {0, 100}},
	makerUnit: "in",
	judge: func(m *measured) (Result, *Error) {
		depth, limit := m.n("depth"), 3.0
		res := Result{Finding: Within}
		maker, ok := m.maker("in")
		if ok {
			m.own(&res, maker)
			limit = maker
		}
		m.hold(&res, depth, limit, "depth")
		is := m.F("%s of oil, %s of its volume, is left", m.in(depth, "depth"), m.in(m.n("share"), "share"))
		res.Text = is + "."
		switch {
		case more(limit, depth):
			res.Finding, res.Text = Beyond, m.F("%s: under %s.", is, m.in(limit, "depth"))
		case !ok && more(10, m.n("share")):
			m.hold(&res, m.n("share"), 10, "share")
			res.Finding, res.Text = Beyond, m.F("%s: under 10 %%.", is)
		}
		return res, nil
	},
}
