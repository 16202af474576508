package limit

import "math"

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
		limit, place := 0.125, "work rest"
		if m.words["where"] == "tongue-guard" {
			limit, place = 0.25, "tongue guard"
		}
		res := Result{Finding: Within}
		limit = m.stricter(&res, "in", limit)
		m.hold(&res, m.n("gap"), limit, "gap")
		gap := "The gap at the " + place + " is " + m.in(m.n("gap"), "gap")
		res.Text = gap + ", not over " + m.in(limit, "gap") + "."
		if more(m.n("gap"), limit) {
			res.Finding, res.Text = Beyond, gap+", over "+m.in(limit, "gap")+": set it nearer, or the wheel is worn out."
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
		res.Notes = append(res.Notes, "The maker allows more than the rule: the rule stands.")
		return rule
	}
	own(res, maker)
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
		runs := "The rim runs at " + show(speed, 1) + " " + u
		if !m.has("marked") {
			return Result{Value: speed, Unit: u, Finding: Computed, Text: runs + ".",
				Notes: []string{"The marking of the wheel was not read: without it the wheel is not assessed."}}, nil
		}
		marked := m.n("marked")
		res := Result{Value: rpm, Unit: "rpm", Limit: ptr(marked), Finding: Within, More: []Figure{{Title: "surface speed", Value: speed, Unit: u}}}
		res.Text = runs + "; the spindle's " + show(rpm, 0) + " rpm are not over the wheel's " + show(marked, 0) + "."
		idle := idling(rpm)
		switch {
		case rpm > marked:
			res.Finding = Beyond
			res.Text = runs + "; the spindle's " + show(rpm, 0) + " rpm are over the wheel's " + show(marked, 0) + ": it can burst."
		case idle > marked:
			res.Finding = Watch
			res.Text = runs + "; " + show(rpm, 0) + " rpm are not over the wheel's " + show(marked, 0) + ", but a motor with that on its plate turns up to " +
				show(idle, 0) + " without load: take a wheel marked for that."
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
		is := m.in(open, "open") + " of the wheel are open, from " + m.in(start, "start") + " above the spindle"
		res.Text = is + ": not more than " + m.in(90, "open") + " and " + m.in(65, "start") + "."
		switch {
		case more(open, 90):
			res.Finding, res.Text = Beyond, is+": more than the "+m.in(90, "open")+" allowed."
			res.Notes = []string{"Up to 125 deg are allowed where the work must touch the wheel below the spindle."}
		case more(start, 65):
			res.Finding, res.Text = Beyond, is+": it begins higher than the "+m.in(65, "start")+" allowed."
			m.hold(&res, start, 65, "start")
		}
		return res, nil
	},
}
