package limit

import "math"

var tieDowns = rule{
	Definition: Definition{
		Name: "tie-downs", Title: "Tie-downs for the ride home",
		Quantities: []Input{
			{Name: "weight", Title: "weight of the load", Dimension: "mass", Unit: "lb", Metric: "kg"},
			{Name: "length", Title: "length of the load", Dimension: "length", Unit: "ft", Metric: "m"},
			{Name: "blocked", Title: "blocked in front against sliding", Dimension: "word", Words: []string{"yes", "no"}},
			{Name: "wll", Title: "working load limit of each tie-down", Dimension: "mass", Unit: "lb", Metric: "kg", Optional: true},
			{Name: "count", Title: "tie-downs used", Dimension: "number", Optional: true},
			{Name: "tie", Title: "direct to the load, or over it", Dimension: "word", Words: []string{"direct", "over"}, Optional: true, Default: "direct"},
		},
		Formula: "count, not blocked: 1 up to 5 ft and 1,100 lb, 2 up to 10 ft, then 1 more per 10 ft or part; blocked: 1 per 10 ft or part. " +
			"Sum of working load limits (half of each direct one, all of each over the top) at least half the weight",
		Source: "49 CFR 393.106(d) and 393.110 (2002), read as restated by the FMCSA; forces 393.102",
		Status: Published,
		Caution: "Binds commercial vehicles of 10,001 lb and more; good practice below. A working load limit is that of the weakest part or anchor point, " +
			"an unmarked chain counts as grade 30. Presses, mills and lathes are top-heavy: tie low on the castings, keep people out of the fall line, hire a rigger when in doubt.",
	},
	bounds: map[string]bound{"weight": {1, 200000}, "length": {0.1, 80}, "wll": {10, 100000}, "count": {1, 100}},
	judge: func(m *measured) (Result, *Error) {
		weight := m.n("weight")
		need := tieCount(weight, m.n("length"), m.words["blocked"] == "yes")
		part := 0.5
		if m.words["tie"] == "over" {
			part = 1
		}
		res := Result{Value: need, Unit: m.T("tie-downs"), Finding: Computed, More: []Figure{
			m.figure(m.T("working load limits must count for"), weight/2, "weight"),
			m.figure(m.T("forward force to hold, 0.8 g"), 0.8*weight, "weight"),
			m.figure(m.T("rearward and sideways, 0.5 g"), 0.5*weight, "weight"),
			m.figure(m.T("downward, 20 %"), 0.2*weight, "weight"),
		}}
		if m.words["tie"] == "over" {
			res.Notes = append(res.Notes, m.T("Straps over the top alone are poor practice for a top-heavy machine."))
		}
		if least(weight, 10000) {
			res.Notes = append(res.Notes, m.T("A wheeled or tracked machine of 10,000 lb or more needs at least 4 (49 CFR 393.130)."))
		}
		res.Text = m.F("This load needs at least %s.", m.ties(need))
		count := need
		if m.has("count") {
			count = m.n("count")
			res.Value, res.Limit = count, ptr(need)
			res.Text = m.F("With %s there are at least the %s needed, but their working load limit is not given.", m.ties(count), m.show(need, 0))
			if count < need {
				res.Finding = Beyond
				res.Text = m.F("With %s there are too few: this load needs %s.", m.ties(count), m.show(need, 0))
			}
		}
		if !m.has("wll") {
			return res, nil
		}
		sum := count * m.n("wll") * part
		sums, _ := m.to(sum, "weight")
		res.More = append(res.More, Figure{Title: m.T("working load limits count for"), Value: sums, Unit: m.entered["weight"]})
		if more(weight/2, sum) {
			res.Finding = Beyond
			if count >= need {
				res.Value, res.Unit = sums, m.entered["weight"]
				at, _ := m.to(weight/2, "weight")
				res.Limit = ptr(at)
				res.Text = m.F("%s, less than half the weight, %s.", m.counts(count, m.in(sum, "weight")), m.in(weight/2, "weight"))
			}
		} else if m.has("count") && res.Finding != Beyond {
			res.Finding = Within
			res.Text = m.F("%s, at least half the weight, and %s are needed.", m.counts(count, m.in(sum, "weight")), m.show(need, 0))
		}
		return res, nil
	},
}

func (m *measured) ties(n float64) string {
	if n == 1 {
		return m.T("1 tie-down")
	}
	return m.F("%s tie-downs", m.show(n, 0))
}

// counts is what the tie-downs count for.
func (m *measured) counts(n float64, sum string) string {
	if n == 1 {
		return m.F("1 tie-down counts for %s", sum)
	}
	return m.F("%s tie-downs count for %s", m.show(n, 0), sum)
}

// tieCount is 49 CFR 393.110: weight in lb, length in ft.
func tieCount(weight, length float64, blocked bool) float64 {
	parts := func(ft float64) float64 { return math.Ceil(ft/10 - slack) }
	switch {
	case blocked:
		return math.Max(1, parts(length))
	case !more(length, 5) && !more(weight, 1100):
		return 1
	case !more(length, 10):
		return 2
	}
	return 2 + parts(length-10)
}

var tongueWeight = rule{
	Definition: Definition{
		Name: "tongue-weight", Title: "Tongue weight of the loaded trailer",
		Quantities: []Input{
			{Name: "trailer", Title: "weight of the loaded trailer", Dimension: "mass", Unit: "lb", Metric: "kg"},
			{Name: "tongue", Title: "tongue weight", Dimension: "mass", Unit: "lb", Metric: "kg"},
		},
		Formula: "tongue / trailer x 100; beyond under 10 % or over 15 %",
		Source:  "a trailer maker's handbook, 10 to 15 % (another maker prints 9 to 11 %); no standard",
		Status:  Practice,
		Caution: "The hitch's and the tow vehicle's own limits come first; too little tongue weight makes a trailer sway.",
	},
	bounds: map[string]bound{"trailer": {50, 1e5}, "tongue": {0, 5e4}},
	judge: func(m *measured) (Result, *Error) {
		share := m.n("tongue") / m.n("trailer") * 100
		if share >= 100 {
			return Result{}, refuse("tongue", m.T("the tongue cannot carry more than the whole trailer"), m.T("give the weight at the coupler; check the units"))
		}
		res := Result{Value: share, Unit: "%", Limit: ptr(15), Finding: Within,
			Text: m.F("The tongue carries %s %% of the loaded trailer, between 10 and 15 %%.", m.show(share, 1))}
		switch {
		case more(10, share):
			res.Finding, res.Limit, res.Text = Beyond, ptr(10), m.F("The tongue carries %s %% of the loaded trailer, under 10 %%: move the load forward.", m.show(share, 1))
		case more(share, 15):
			res.Finding, res.Text = Beyond, m.F("The tongue carries %s %% of the loaded trailer, over 15 %%: move the load back.", m.show(share, 1))
		}
		res.More = []Figure{m.figure(m.T("10 % of the trailer"), m.n("trailer")/10, "trailer"), m.figure(m.T("15 % of the trailer"), 0.15*m.n("trailer"), "trailer")}
		return res, nil
	},
}
