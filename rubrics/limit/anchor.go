package limit

import "math"

var anchorBreakout = rule{
	Definition: Definition{
		Name: "anchor-breakout", Title: "Why depth and concrete matter: breakout of one anchor",
		Quantities: []Input{
			{Name: "depth", Title: "effective embedment", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "strength", Title: "concrete strength", Dimension: "pressure", Unit: "psi", Metric: "MPa"},
			{Name: "kind", Title: "kind of anchor", Dimension: "word", Words: []string{"post-installed", "cast-in"}, Optional: true, Default: "post-installed"},
		},
		Formula: "N_b = k sqrt(f'c) h^1.5 (lb, psi, in), k 17 post-installed, 24 cast-in; normal-weight concrete",
		Source:  "ACI 318-19 Eq. 17.6.2.2.1, read in a 2022 design guide",
		Status:  Reprint,
		Caution: "It shows why depth and concrete matter and passes no anchor: steel, pull-out, edges, groups, cracks, repeated load and the strength reduction are missing. " +
			"Design by a licensed engineer or the lift maker's table; local code.",
	},
	bounds: map[string]bound{"depth": {1, 25}, "strength": {2500, 10000}},
	judge: func(m *measured) (Result, *Error) {
		k := 17.0
		if m.words["kind"] == "cast-in" {
			k = 24
		}
		h := m.n("depth")
		n := breakout(k, 1, m.n("strength"), h)
		return Result{Value: n, Unit: "lbf", Finding: Computed,
			Text: m.F("One such anchor, far from edges, breaks out of the concrete at about %s lbf, before any reduction.", m.show(n, 0)),
			More: []Figure{{Title: m.T("area of the full cone"), Value: 9 * h * h, Unit: "in2"}},
		}, nil
	},
}

// breakout is N_b of ACI 318-19 Eq. 17.6.2.2.1 in lb: k, lightweight factor,
// f'c in psi, depth in inches.
func breakout(k, light, strength, depth float64) float64 {
	return k * light * math.Sqrt(strength) * depth * math.Sqrt(depth)
}

var anchorGroup = rule{
	Definition: Definition{
		Name: "anchor-group", Title: "Why edges and spacing matter: breakout of an anchor group",
		Quantities: []Input{
			{Name: "depth", Title: "effective embedment", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "strength", Title: "concrete strength", Dimension: "pressure", Unit: "psi", Metric: "MPa"},
			{Name: "edge", Title: "distance to the nearest edge", Dimension: "length", Unit: "in", Metric: "mm", Optional: true},
			{Name: "area", Title: "projected area of the group's cone", Dimension: "area", Unit: "in2", Metric: "cm2", Optional: true},
			{Name: "kc", Title: "factor k of the anchor, 17 unless its tests say more", Dimension: "number", Optional: true},
			{Name: "cast", Title: "cast in with the concrete", Dimension: "word", Words: []string{"yes", "no"}, Optional: true, Default: "no"},
			{Name: "weight", Title: "weight of the concrete", Dimension: "word", Words: []string{"normal", "light"}, Optional: true, Default: "normal"},
		},
		Formula: "N = area / 9 h^2 x edge factor x N_b; N_b = k l sqrt(f'c) h^1.5 (lb, psi, in), k 17, cast-in 24; l 1, light 0.75; " +
			"edge factor 0.7 + 0.3 c / 1.5 h under 1.5 h; cast-in from 11 in: N_b = 16 l sqrt(f'c) h^(5/3)",
		Source: "ACI 318-19 s.17.6.2 and 17.2.4.1, read in a 2022 design guide and an anchor maker's example (2025)",
		Status: Reprint,
		Caution: "It shows why edges and spacing matter and passes no group: steel, pull-out, cracks, uneven pull, repeated load and the strength reduction are missing. " +
			"Design by a licensed engineer or the lift maker's table; local code.",
	},
	bounds: map[string]bound{"depth": {1, 25}, "strength": {2500, 10000}, "edge": {0.5, 1200}, "area": {1, 1e6}, "kc": {17, 24}},
	judge:  judgeGroup,
}

func judgeGroup(m *measured) (Result, *Error) {
	h, cast, k, light := m.n("depth"), m.words["cast"] == "yes", 17.0, 1.0
	switch {
	case m.has("kc") && cast && m.n("kc") != 24:
		return Result{}, refuse("kc", m.F("the factor of a cast-in anchor is 24, not %s", m.in(m.n("kc"), "kc")), m.T("leave it out"))
	case m.has("kc"):
		k = m.n("kc")
	case cast:
		k = 24
	}
	if m.words["weight"] == "light" {
		light = 0.75
	}
	one := breakout(k, light, m.n("strength"), h)
	res := Result{Finding: Computed}
	if cast && h >= 11 {
		one = 16 * light * math.Sqrt(m.n("strength")) * h * cubeRoot(h*h)
		res.Notes = append(res.Notes, m.T("From 11 in of depth a cast-in anchor is reckoned with h^(5/3)."))
	}
	full, edge := 9*h*h, 1.0
	reach := 1.5 * h
	area := full
	if m.has("edge") && more(reach, m.n("edge")) {
		edge = 0.7 + float64(0.3*m.n("edge")/reach)
		area = (reach + m.n("edge")) * 2 * reach // one anchor beside one edge
	}
	switch {
	case m.has("area"):
		area = m.n("area")
		if area < 0.1*full {
			return Result{}, refuse("area", m.F("%s is less than a tenth of one anchor's cone", m.in(area, "area")), m.F("it is about %s for one anchor far from edges", m.in(full, "area")))
		}
	case edge < 1:
		res.Notes = append(res.Notes, m.T("No area was given: taken as one anchor beside one edge."))
	}
	if !cast && light < 1 {
		res.Notes = append(res.Notes, m.T("This is for an undercut anchor: expansion, screw and adhesive anchors in light concrete hold 0.8 of it."))
	}
	n := area / full * edge * one
	res.Value, res.Unit = n, "lbf"
	res.Text = m.F("The concrete breaks out at about %s lbf, before any reduction; one anchor far from edges at %s lbf.", m.show(n, 0), m.show(one, 0))
	res.More = []Figure{
		{Title: m.T("one anchor far from edges"), Value: one, Unit: "lbf"},
		{Title: m.T("area of one full cone"), Value: full, Unit: "in2"},
		{Title: m.T("edge factor"), Value: edge},
	}
	if !cast && light < 1 {
		res.More = append(res.More, Figure{Title: m.T("expansion, screw or adhesive anchors"), Value: 0.8 * n, Unit: "lbf"})
	}
	return res, nil
}

// cubeRoot of x from 1 to 1000, by Newton's steps: the library's differs between
// processors.
func cubeRoot(x float64) float64 {
	r := 1 + x/100
	for range 24 {
		r -= (float64(r*r*r) - x) / (3 * float64(r*r))
	}
	return r
}
