package limit

import "asfound/rubrics/say"

var forceBounds = map[string]bound{"bore": {0.2, 60}, "rod": {0.1, 60}, "pressure": {1, 20000}, "rated": {10, 2e7}}

var cylinderForce = rule{
	Definition: Definition{
		Name: "cylinder-force", Title: "Cylinder force",
		Quantities: []Input{
			{Name: "bore", Title: "cylinder bore", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "pressure", Title: "pressure", Dimension: "pressure", Unit: "psi", Metric: "bar"},
			{Name: "rod", Title: "rod diameter, when it pulls", Dimension: "length", Unit: "in", Metric: "mm", Optional: true},
			{Name: "rated", Title: "rated force by the plate", Dimension: "force", Unit: "lbf", Metric: "kN", Optional: true},
		},
		Formula: "push = pressure x pi bore^2 / 4; pull = pressure x pi (bore^2 - rod^2) / 4",
		Source:  "definition of pressure; a rated force is the plate's",
		Status:  Physics, Caution: pressCaution,
	},
	bounds: forceBounds,
	judge:  judgeForce,
}

var pressForce = rule{
	Definition: Definition{
		Name: "press-force", Title: "Press force from gauge and bore",
		Quantities: []Input{
			{Name: "bore", Title: "ram bore", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "pressure", Title: "gauge pressure", Dimension: "pressure", Unit: "psi", Metric: "bar"},
			{Name: "rated", Title: "rated capacity by the plate", Dimension: "force", Unit: "short ton", Metric: "kN", Optional: true},
		},
		Formula: "force = pressure x pi bore^2 / 4",
		Source:  "definition of pressure; a rated capacity is the plate's",
		Status:  Physics, Caution: pressCaution,
	},
	bounds: map[string]bound{"bore": {0.2, 60}, "pressure": {1, 20000}, "rated": {0.01, 10000}},
	judge:  judgeForce,
}

// judgeForce serves both; the rated force is turned into pounds-force first.
func judgeForce(m *measured) (Result, *Error) {
	push, does := area(m.n("bore")), say.Key("At %s it pushes %s %s")
	if m.has("rod") {
		if m.n("rod") >= m.n("bore") {
			return Result{}, refuse("rod", m.T("the rod is not thinner than the bore"), m.T("measure the rod where it leaves the gland"))
		}
		push, does = push-area(m.n("rod")), say.Key("At %s it pulls %s %s")
	}
	force := push * m.n("pressure")
	// In newtons where the entries are metric.
	perLbf, name := 1.0, "lbf"
	if u := m.entered["pressure"]; u != "psi" && u != "inHg" && u != "atm" {
		perLbf, name = 0.0044482216152605, "kN"
	}
	res := Result{Value: force * perLbf, Unit: name, Finding: Computed}
	seen := m.Pattern(does, m.in(m.n("pressure"), "pressure"), m.show(force*perLbf, 2), name)
	res.Text = seen + "."
	res.More = []Figure{
		{Title: m.T("in short tons"), Value: force / 2000, Unit: "short ton"},
		{Title: m.T("working area"), Value: push, Unit: "in2"},
	}
	if !m.has("rated") {
		return res, nil
	}
	rated := m.n("rated")
	if m.base["rated"] == "short ton" {
		rated *= 2000
	}
	share := force / rated * 100
	res.Limit, res.Finding = ptr(rated*perLbf), Within
	res.Text = m.F("%s, %s %% of what its plate rates it for.", seen, m.show(share, 1))
	if more(force, rated) {
		res.Finding = Beyond
		res.Text = m.F("%s, %s %% of its rating: more than the plate allows.", seen, m.show(share, 1))
	}
	res.More = append(res.More, m.figure(m.T("pressure at the rated force"), rated/push, "pressure"))
	return res, nil
}
