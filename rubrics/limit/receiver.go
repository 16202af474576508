package limit

var receiverPressure = rule{
	Definition: Definition{
		Name: "receiver-pressure", Title: "Air receiver: highest pressure reached",
		Quantities: []Input{
			{Name: "mawp", Title: "maximum allowable working pressure by its plate", Dimension: "pressure", Unit: "psi", Metric: "bar"},
			{Name: "reached", Title: "highest gauge pressure reached", Dimension: "pressure", Unit: "psi", Metric: "bar"},
		},
		Formula: "reached / mawp x 100; beyond over 110 %, watch over 100 %",
		Source:  "29 CFR 1917.155(b) and 30 CFR 57.13011; 29 CFR 1910.169(b)(3)(i), read in the Washington mirror, WAC 296-24-94003",
		Status:  Published,
		Caution: "Never pressure-test a receiver. Rust, dents, weld repairs, no data plate or no working pressure on it: do not pressurise, ask a pressure-vessel inspector. " +
			"No valve may stand between the tank and its safety valve. Local boiler law may need registration.",
	},
	bounds: map[string]bound{"mawp": {1, 10000}, "reached": {0.1, 20000}},
	judge: func(m *measured) (Result, *Error) {
		share := m.n("reached") / m.n("mawp") * 100
		if share > 1000 {
			return Result{}, refuse("reached", m.F("%s is more than ten times the working pressure", m.in(m.n("reached"), "reached")), m.T("check both units"))
		}
		if share < 10 { // 12 for 12 bar, or not run at all, would pass
			return Result{}, refuse("reached", m.F("%s is less than a tenth of the working pressure, no cut-out", m.in(m.n("reached"), "reached")),
				m.T("check both units, and give the highest pressure it reached by itself"))
		}
		res := Result{Finding: Within}
		limit := 1.1 * m.n("mawp")
		res.Value, res.Unit = m.to(m.n("reached"), "reached")
		at, _ := m.to(limit, "reached")
		res.Limit = ptr(at)
		res.Text = m.F("It reached %s, %s %% of the working pressure on its plate.", m.in(m.n("reached"), "reached"), m.show(share, 1))
		switch {
		case more(m.n("reached"), limit):
			res.Finding = Beyond
			res.Text = m.F("It reached %s, %s %% of the working pressure: the safety valve must keep it to 110 %%.", m.in(m.n("reached"), "reached"), m.show(share, 1))
		case more(m.n("reached"), m.n("mawp")):
			res.Finding = Watch
			res.Text = m.F("It reached %s, %s %% of the working pressure: only a safety valve that is blowing may let it there.", m.in(m.n("reached"), "reached"), m.show(share, 1))
		}
		return res, nil
	},
}

const receiverCaution = "Never pressure-test a receiver, never set or plug its safety valve. Rust, dents, weld repairs or no data plate: do not pressurise, ask a pressure-vessel inspector."

var reliefSetting = rule{
	Definition: Definition{
		Name: "relief-setting", Title: "Air receiver: setting of its safety valve",
		Quantities: []Input{
			{Name: "mawp", Title: "maximum allowable working pressure by its plate", Dimension: "pressure", Unit: "psi", Metric: "bar"},
			{Name: "set", Title: "set pressure stamped on the safety valve", Dimension: "pressure", Unit: "psi", Metric: "bar"},
		},
		Formula: "beyond when set over mawp",
		Source:  "ASME VIII-1 UG-134(a), a single valve, read in the Wisconsin reprint, SPS 341 Appendix C",
		Status:  Reprint, Caution: receiverCaution,
	},
	bounds: map[string]bound{"mawp": {1, 10000}, "set": {1, 20000}},
	judge: func(m *measured) (Result, *Error) {
		mawp, set := m.n("mawp"), m.n("set")
		if set > 10*mawp {
			return Result{}, refuse("set", m.F("%s is more than ten times the working pressure", m.in(set, "set")), m.T("check both units"))
		}
		if set < mawp/10 {
			return Result{}, refuse("set", m.F("%s is less than a tenth of the working pressure", m.in(set, "set")), m.T("check both units: the valve's stamp may be in bar"))
		}
		res := Result{Finding: Within}
		m.hold(&res, set, mawp, "set")
		res.Text = m.F("The valve is set to %s, not over the %s of the plate.", m.in(set, "set"), m.in(mawp, "set"))
		if more(set, mawp) {
			res.Finding = Beyond
			res.Text = m.F("The valve opens only at %s, over the %s of the plate: it is the wrong valve.", m.in(set, "set"), m.in(mawp, "set"))
			if more(set, 1.1*mawp) {
				res.Notes = append(res.Notes, m.T("It cannot keep the tank to 110 % of its plate, as 29 CFR 1910.169(b)(3) asks."))
			}
		}
		return res, nil
	},
}

var receiverValve = rule{
	Definition: Definition{
		Name: "receiver-valve", Title: "Air receiver: nothing between tank and safety valve",
		Quantities: []Input{
			{Name: "between", Title: "fitting that can close between tank and safety valve", Dimension: "word", Words: []string{"none", "valve"}, Titles: []string{"nothing that can close", "a valve"}},
		},
		Formula: "beyond when a valve stands between them",
		Source:  "29 CFR 1917.155(b)(2); 29 CFR 1910.169(b)(3)",
		Status:  Published, Caution: receiverCaution,
	},
	judge: func(m *measured) (Result, *Error) {
		if m.words["between"] == "valve" {
			return Result{Value: 1, Unit: m.T("valves"), Limit: ptr(0), Finding: Beyond,
				Text: m.T("A valve stands between tank and safety valve: shut, it leaves the tank without one.")}, nil
		}
		return Result{Unit: m.T("valves"), Limit: ptr(0), Finding: Within, Text: m.T("No valve stands between tank and safety valve.")}, nil
	},
}
