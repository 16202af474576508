package limit

import (
	"math"

	"asfound/rubrics/say"
)

const grinderCaution = "Wheel stopped, plug pulled. A ring test is for somebody trained, with the wheel off the machine. " +
	"A chipped, cracked or unmarked wheel is thrown away."

var grinderGap = rule{
	Definition: Definition{
		Name: "grinder-gap", Title: "Bench grinder: gap at the wheel",
		Quantities: []Input{
			{Name: "where", Title: "where it is measured", Dimension: "word", Words: []string{"work-rest", "tongue-guard"}},
			{Name: "gap", Title: "gap to the wheel", Dimension: "length", Unit: "in", Metric: "mm"},
		},
		Formula: "beyond over 1/8 in at the work rest, over 1/4 in at the tongue guard",
		Source:  "29 CFR 1910.215(a)(4) and (b)(9)",
		Status:  Published, Caution: grinderCaution, Maker: "length",
	},
	bounds:    map[string]bound{"gap": {0, 12}},
	makerUnit: "in",
	judge: func(m *measured) (Result, *Error) {
		limit, gapAt := 0.125, say.Key("The gap at the work rest is %s")
		if m.words["where"] == "tongue-guard" {
			limit, gapAt = 0.25, say.Key("The gap at the tongue guard is %s")
		}
		res := Result{Finding: Within}
		limit = m.stricter(&res, "in", limit)
		m.hold(&res, m.n("gap"), limit, "gap")
		gap := m.Pattern(gapAt, m.in(m.n("gap"), "gap"))
		res.Text = m.F("%s, not over %s.", gap, m.in(limit, "gap"))
		if more(m.n("gap"), limit) {
			res.Finding, res.Text = Beyond, m.F("%s, over %s: set it nearer, or the wheel is worn out.", gap, m.in(limit, "gap"))
		}
		return res, nil
	},
}

// stricter gives a rule's greatest value, or the maker's where that is less; a
// maker does not loosen a rule.
func (m *measured) stricter(res *Result, in string, rule float64) float64 {
	maker, ok := m.maker(in)
	switch {
	case !ok:
		return rule
	case more(maker, rule):
		res.Notes = append(res.Notes, m.T("The maker allows more than the rule: the rule stands."))
		return rule
	}
	m.own(res, maker)
	return maker
}

var wheelSpeed = rule{
	Definition: Definition{
		Name: "wheel-speed", Title: "Grinding wheel: speed",
		Quantities: []Input{
			{Name: "diameter", Title: "wheel diameter", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "rpm", Title: "spindle speed in rpm", Dimension: "number"},
			{Name: "marked", Title: "highest rpm marked on the wheel", Dimension: "number", Optional: true},
		},
		Formula: "surface speed = pi x diameter x rpm; beyond when rpm is over the marking; watch when the motor's speed without load is",
		Source:  "29 CFR 1910.215(d)(1), read in Washington WAC 296-806-40512",
		Status:  Published, Caution: grinderCaution,
	},
	bounds: map[string]bound{"diameter": {0.25, 72}, "rpm": {1, 100000}, "marked": {1, 200000}},
	judge: func(m *measured) (Result, *Error) {
		rpm := m.n("rpm")
		speed, u := math.Pi*m.n("diameter")*rpm/12, "ft/min"
		if e := m.entered["diameter"]; e == "mm" || e == "cm" || e == "m" {
			speed, u = speed*0.00508, "m/s"
		}
		runs := m.F("The rim runs at %s %s", m.show(speed, 1), u)
		if !m.has("marked") {
			return Result{Value: speed, Unit: u, Finding: Computed, Text: runs + ".",
				Notes: []string{m.T("The marking of the wheel was not read: without it the wheel is not assessed.")}}, nil
		}
		marked := m.n("marked")
		res := Result{Value: rpm, Unit: "rpm", Limit: ptr(marked), Finding: Within, More: []Figure{{Title: m.T("surface speed"), Value: speed, Unit: u}}}
		res.Text = m.F("%s; the spindle's %s rpm are not over the wheel's %s.", runs, m.show(rpm, 0), m.show(marked, 0))
		idle := idling(rpm)
		switch {
		case rpm > marked:
			res.Finding = Beyond
			res.Text = m.F("%s; the spindle's %s rpm are over the wheel's %s: it can burst.", runs, m.show(rpm, 0), m.show(marked, 0))
		case idle > marked:
			res.Finding = Watch
			res.Text = m.F("%s; %s rpm are not over the wheel's %s, but a motor with that on its plate turns up to %s without load: take a wheel marked for that.", runs, m.show(rpm, 0), m.show(marked, 0), m.show(idle, 0))
		}
		return res, nil
	},
}

// idling is the speed that a motor on 60 or 50 Hz comes near without load, where
// rpm looks like the loaded speed that its plate prints; else rpm.
func idling(rpm float64) float64 {
	for _, sync := range []float64{3600, 3000, 1800, 1500, 1200, 1000} {
		if rpm < sync && rpm >= 0.93*sync {
			return sync
		}
	}
	return rpm
}

var wheelExposure = rule{
	Definition: Definition{
		Name: "wheel-exposure", Title: "Bench or floor grinder: open part of the wheel",
		Quantities: []Input{
			{Name: "open", Title: "angle of the wheel left open", Dimension: "angle", Unit: "deg", Metric: "deg"},
			{Name: "start", Title: "angle above the spindle where it begins", Dimension: "angle", Unit: "deg", Metric: "deg"},
		},
		Formula: "beyond when more than 90 deg are open, or they begin over 65 deg above the spindle",
		Source:  "29 CFR 1910.215(b)(3), read in a safety guide that quotes it",
		Status:  Published, Caution: grinderCaution,
	},
	bounds: map[string]bound{"open": {1, 360}, "start": {0, 180}},
	judge: func(m *measured) (Result, *Error) {
		res := Result{Finding: Within}
		open, start := m.n("open"), m.n("start")
		m.hold(&res, open, 90, "open")
		is := m.F("%s of the wheel are open, from %s above the spindle", m.in(open, "open"), m.in(start, "start"))
		res.Text = m.F("%s: not more than %s and %s.", is, m.in(90, "open"), m.in(65, "start"))
		switch {
		case more(open, 90):
			res.Finding, res.Text = Beyond, m.F("%s: more than the %s allowed.", is, m.in(90, "open"))
			res.Notes = []string{m.T("Up to 125 deg are allowed where the work must touch the wheel below the spindle.")}
		case more(start, 65):
			res.Finding, res.Text = Beyond, m.F("%s: it begins higher than the %s allowed.", is, m.in(65, "start"))
			m.hold(&res, start, 65, "start")
		}
		return res, nil
	},
}
