package limit

import "asfound/rubrics/say"

var anchorEmbedment = rule{
	Definition: Definition{
		Name: "anchor-embedment", Title: "Anchor embedment",
		Quantities: []Input{
			{Name: "length", Title: "anchor length", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "protrusion", Title: "length standing above the concrete, or above the plate", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "plate", Title: "plate and shims, when measured from the plate", Dimension: "length", Unit: "in", Metric: "mm", Optional: true},
		},
		Formula: "embedment = length - protrusion - plate; beyond under 3 1/4 in",
		Source:  "common practice, no standard: a lift maker's manual for 3/4 x 5 1/2 in wedge anchors",
		Status:  Practice,
		Caution: "The lift maker's table decides, then an engineer. Torque, distance to edges and cracks, and the age of the concrete are to be asked as well. " + liftCaution,
		Maker:   "length",
	},
	bounds:    map[string]bound{"length": {0.5, 60}, "protrusion": {0, 60}, "plate": {0, 6}},
	makerUnit: "in",
	judge: func(m *measured) (Result, *Error) {
		depth := m.n("length") - m.n("protrusion") - m.n("plate")
		if depth <= 0 {
			return Result{}, refuse("protrusion", m.T("nothing of the anchor is left in the concrete"), m.F("protrusion and plate together are less than the length of %s", m.in(m.n("length"), "length")))
		}
		limit, of := 3.25, say.Key("the usual least of %s")
		res := Result{Finding: Within}
		if maker, ok := m.maker("in"); ok {
			m.own(&res, maker)
			limit, of = maker, say.Key("the maker's least of %s")
		}
		res.Value, res.Unit = m.to(depth, "length")
		at, _ := m.to(limit, "length")
		res.Limit = ptr(at)
		least := m.Pattern(of, m.in(limit, "length"))
		res.Text = m.F("%s of the anchor is in the concrete, not under %s.", m.in(depth, "length"), least)
		if more(limit, depth) {
			res.Finding = Beyond
			res.Text = m.F("%s of the anchor is in the concrete, under %s.", m.in(depth, "length"), least)
		}
		if !m.has("plate") {
			res.Notes = append(res.Notes, m.T("Measured from the top of the concrete: if it was from the plate, subtract plate and shims."))
		}
		return res, nil
	},
}

var slab = rule{
	Definition: Definition{
		Name: "slab", Title: "Slab beneath a light two-post lift",
		Quantities: []Input{
			{Name: "thickness", Title: "slab thickness", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "strength", Title: "concrete strength", Dimension: "pressure", Unit: "psi", Metric: "MPa", Optional: true},
		},
		Formula: "beyond under 4 in or under 3,000 psi; watch under 4 1/4 in",
		Source:  "common practice, no standard: lift makers' and dealers' installation advice, 4 to 4 1/4 in and 3,000 psi for light lifts",
		Status:  Practice,
		Caution: "The lift's own manual overrules; heavier lifts need more. Not on asphalt, pavers or post-tensioned slabs without an engineer. " + liftCaution,
		Maker:   "length",
	},
	bounds:    map[string]bound{"thickness": {0.5, 60}, "strength": {100, 20000}},
	makerUnit: "in",
	judge: func(m *measured) (Result, *Error) {
		thick := m.n("thickness")
		limit, watch, of := 4.0, 4.25, say.Key("the usual least of %s")
		res := Result{Finding: Within}
		if maker, ok := m.maker("in"); ok {
			m.own(&res, maker)
			limit, watch, of = maker, maker, say.Key("the maker's least of %s")
		}
		res.Value, res.Unit = m.to(thick, "thickness")
		at, _ := m.to(limit, "thickness")
		res.Limit = ptr(at)
		is := m.F("The slab is %s thick", m.in(thick, "thickness"))
		least := m.Pattern(of, m.in(limit, "thickness"))
		res.Text = m.F("%s, not under %s.", is, least)
		switch {
		case more(limit, thick):
			res.Finding, res.Text = Beyond, m.F("%s, under %s.", is, least)
		case m.has("strength") && more(3000, m.n("strength")):
			// The strength is held against practice even where the thickness is the maker's.
			res.Finding, res.Status, res.Source, res.Formula = Beyond, "", "", ""
			res.Value, res.Unit = m.to(m.n("strength"), "strength")
			at, _ := m.to(3000, "strength")
			res.Limit = ptr(at)
			res.Text = m.F("The concrete has %s, under the usual least of %s.", m.in(m.n("strength"), "strength"), m.in(3000, "strength"))
		case more(watch, thick):
			res.Finding, res.Text = Watch, m.F("%s: some makers ask for %s.", is, m.in(watch, "thickness"))
		}
		if !m.has("strength") {
			res.Notes = append(res.Notes, m.T("The strength of the concrete is not assessed: ask for the mix, or have it tested."))
			if res.Finding == Within && res.Status == Own {
				res.Finding = Watch // thickness alone clears nothing
				res.Text = m.F("%s, not under the maker's least, but its strength is unknown.", is)
			}
		}
		return res, nil
	},
}
