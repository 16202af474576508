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
	bounds: map[string]bound{"mawp": {1, 10000}, "reached": {0, 20000}},
	judge: func(m *measured) (Result, *Error) {
		share := m.n("reached") / m.n("mawp") * 100
		if share > 1000 {
			return Result{}, refuse("reached", m.in(m.n("reached"), "reached")+" is more than ten times the working pressure", "check both units")
		}
		res := Result{Finding: Within}
		limit := 1.1 * m.n("mawp")
		res.Value, res.Unit = m.to(m.n("reached"), "reached")
		at, _ := m.to(limit, "reached")
		res.Limit = ptr(at)
		res.Text = "It reached " + m.in(m.n("reached"), "reached") + ", " + show(share, 1) + " % of the working pressure on its plate."
		switch {
		case more(m.n("reached"), limit):
			res.Finding = Beyond
			res.Text = "It reached " + m.in(m.n("reached"), "reached") + ", " + show(share, 1) + " % of the working pressure: the safety valve must keep it to 110 %."
		case more(m.n("reached"), m.n("mawp")):
			res.Finding = Watch
			res.Text = "It reached " + m.in(m.n("reached"), "reached") + ", " + show(share, 1) + " % of the working pressure: only a safety valve that is blowing may let it there."
		}
		return res, nil
	},
}
