package limit

const pressCaution = "The capacity plate and the maker's pressure are the limit. A bent head or bed, a cracked weld, home-made bolster pins, " +
	"or a missing gauge or relief valve stops the work. Nobody proof-loads a press or jack for this check."

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
	push, verb := area(m.n("bore")), "pushes"
	if m.has("rod") {
		if m.n("rod") >= m.n("bore") {
			return Result{}, refuse("rod", "the rod is not thinner than the bore", "measure the rod where it leaves the gland")
		}
		push, verb = push-area(m.n("rod")), "pulls"
	}
	force := push * m.n("pressure")
	// In newtons where the entries are metric.
	perLbf, name := 1.0, "lbf"
	if u := m.entered["pressure"]; u != "psi" && u != "inHg" && u != "atm" {
		perLbf, name = 0.0044482216152605, "kN"
	}
	res := Result{Value: force * perLbf, Unit: name, Finding: Computed}
	seen := "At " + m.in(m.n("pressure"), "pressure") + " it " + verb + " " + show(force*perLbf, 2) + " " + name
	res.Text = seen + "."
	res.More = []Figure{
		{Title: "in short tons", Value: force / 2000, Unit: "short ton"},
		{Title: "working area", Value: push, Unit: "in2"},
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
	res.Text = seen + ", " + show(share, 1) + " % of what its plate rates it for."
	if more(force, rated) {
		res.Finding = Beyond
		res.Text = seen + ", " + show(share, 1) + " % of its rating: more than the plate allows."
	}
	res.More = append(res.More, m.figure("pressure at the rated force", rated/push, "pressure"))
	return res, nil
}

var pressRelief = rule{
	Definition: Definition{
		Name: "press-relief", Title: "Press: load-limiting device",
		Quantities: []Input{
			{Name: "rated", Title: "rated capacity", Dimension: "force", Unit: "short ton", Metric: "kN"},
			{Name: "opens", Title: "force at which the device opens", Dimension: "force", Unit: "short ton", Metric: "kN"},
		},
		Formula: "opens / rated x 100; beyond under 100 % or over 125 %",
		Source:  "ASME ASP-2010 3-4.1.2, read in a reprinted excerpt",
		Status:  Reprint, Caution: pressCaution + " Read it from what the seller shows; do not set or test the relief.",
	},
	bounds: map[string]bound{"rated": {0.01, 10000}, "opens": {0.01, 20000}},
	judge: func(m *measured) (Result, *Error) {
		share := m.n("opens") / m.n("rated") * 100
		if share > 1000 || share < 10 {
			return Result{}, refuse("opens", m.in(m.n("opens"), "opens")+" does not fit a press rated "+m.in(m.n("rated"), "rated"), "give both as forces and check the units")
		}
		res := Result{Value: share, Unit: "%", Limit: ptr(125), Finding: Within,
			Text: "The device opens at " + show(share, 1) + " % of rated capacity, within 100 to 125 %."}
		switch {
		case more(share, 125):
			res.Finding, res.Text = Beyond, "The device opens at "+show(share, 1)+" % of rated capacity, over 125 %: the press can be overloaded."
		case more(100, share):
			res.Finding, res.Limit, res.Text = Beyond, ptr(100), "The device opens at "+show(share, 1)+" % of rated capacity, under 100 %: the press cannot reach its rating."
		}
		return res, nil
	},
}

var pressSet = rule{
	Definition: Definition{
		Name: "press-set", Title: "Press: lasting growth of the bolster gap",
		Quantities: []Input{
			{Name: "growth", Title: "growth of the gap", Dimension: "length", Unit: "in", Metric: "mm"},
		},
		Formula: "beyond over 0.125 in (3.18 mm)",
		Source:  "ASME ASP-2010 3-4.1.1 and 3-4.1.3 (a maker's qualification test, used as a yardstick), read in a reprinted excerpt",
		Status:  Reprint, Caution: pressCaution, Maker: "length",
	},
	bounds:    map[string]bound{"growth": {0, 24}},
	makerUnit: "in",
	judge: func(m *measured) (Result, *Error) {
		limit, whose := 0.125, "the "
		res := Result{Finding: Within}
		if maker, ok := m.maker("in"); ok {
			own(&res, maker)
			limit, whose = maker, "the maker's "
		}
		res.Value, res.Unit = m.to(m.n("growth"), "growth")
		at, _ := m.to(limit, "growth")
		res.Limit = ptr(at)
		grown := "The gap has grown by " + m.in(m.n("growth"), "growth")
		res.Text = grown + ", not more than " + whose + m.in(limit, "growth") + " allowed."
		if more(m.n("growth"), limit) {
			res.Finding = Beyond
			res.Text = grown + ", more than " + whose + m.in(limit, "growth") + " allowed: the frame has taken a set."
		}
		return res, nil
	},
}
