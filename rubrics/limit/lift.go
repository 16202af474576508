package limit

import "math"

const liftCaution = "Reading and looking only; the seller operates, and no vehicle is loaded for the sake of this check. " +
	"US federal rules have no vehicle-lift standard: the ANSI/ALI standards apply, enforced through the general duty clause " +
	"(OSHA letter, 19 Nov 2014). Before use: installed to the manual, then inspected by a qualified lift inspector; local code and permits apply."

var descentSpeed = rule{
	Definition: Definition{
		Name: "descent-speed", Title: "Descent speed of a lift",
		Quantities: []Input{
			{Name: "travel", Title: "height travelled", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "time", Title: "time it took", Dimension: "time", Unit: "s", Metric: "s"},
		},
		Formula: "travel / time; beyond over 20 ft/min",
		Source:  "California Title 8 s.3549 (statement of reasons, Art. 19, 2005)",
		Status:  Published, Caution: liftCaution, Maker: "speed",
	},
	bounds:    map[string]bound{"travel": {1, 600}, "time": {0.2, 3600}},
	makerUnit: "ft/min",
	judge: func(m *measured) (Result, *Error) {
		speed := m.n("travel") / 12 / m.n("time") * 60
		limit, whose := 20.0, "the "
		res := Result{Finding: Within, Notes: []string{
			"This is an average: the fastest moment may be faster.",
			"California treats scissor and parallelogram lifts apart.",
		}}
		if maker, ok := m.maker("ft/min"); ok {
			own(&res, maker)
			limit, whose = maker, "the maker's "
			res.Notes = []string{"This is an average: the fastest moment may be faster."}
		}
		res.Value, res.Unit, res.Limit = speed, "ft/min", ptr(limit)
		said := show(speed, 1) + " ft/min"
		if m.entered["travel"] == "mm" || m.entered["travel"] == "cm" || m.entered["travel"] == "m" {
			res.Value, res.Unit, res.Limit = speed*0.00508, "m/s", ptr(limit*0.00508)
			said = show(res.Value, 3) + " m/s (" + said + ")"
		}
		res.Text = "It comes down at " + said + " on average, not faster than " + whose + show(limit, 1) + " ft/min allowed."
		if more(speed, limit) {
			res.Finding = Beyond
			res.Text = "It comes down at " + said + " on average, faster than " + whose + show(limit, 1) + " ft/min allowed."
		}
		res.More = []Figure{{Title: "shortest time allowed", Value: m.n("travel") / 12 / limit * 60, Unit: "s"}}
		return res, nil
	},
}

var armLoad = rule{
	Definition: Definition{
		Name: "arm-load", Title: "Load on one arm of a two-post lift",
		Quantities: []Input{
			{Name: "weight", Title: "vehicle weight", Dimension: "mass", Unit: "lb", Metric: "kg"},
			{Name: "rear", Title: "share of the weight on the rear axle", Dimension: "share", Unit: "%", Metric: "%", Optional: true},
			{Name: "rated", Title: "rated capacity of the lift", Dimension: "mass", Unit: "lb", Metric: "kg"},
		},
		Formula: "heavier axle / 2 against rated / 4; the whole vehicle against rated",
		Source:  "lift dealers' published advice: each arm carries a quarter of the rating",
		Status:  Practice, Caution: "The lift's own plate and manual overrule. Pads at the vehicle maker's points; lift the whole vehicle, never one end. " + liftCaution,
		Maker: "mass",
	},
	bounds:    map[string]bound{"weight": {100, 2e5}, "rear": {10, 90}, "rated": {100, 2e5}},
	makerUnit: "lb",
	judge: func(m *measured) (Result, *Error) {
		share := 50.0
		if m.has("rear") {
			share = math.Max(m.n("rear"), 100-m.n("rear"))
		}
		arm, limit := m.n("weight")*share/200, m.n("rated")/4
		res := Result{Finding: Within}
		if maker, ok := m.maker("lb"); ok {
			own(&res, maker)
			limit = maker
		}
		res.Value, res.Unit = m.to(arm, "weight")
		at, _ := m.to(limit, "weight")
		res.Limit = ptr(at)
		carried := "The heavier axle puts " + m.in(arm, "weight") + " on each of its arms"
		res.Text = carried + ", not more than " + m.in(limit, "weight") + " an arm."
		switch {
		case more(m.n("weight"), m.n("rated")):
			res.Finding = Beyond
			res.Status, res.Source = Published, "the lift's plate; Michigan R 408.17251: never above rated capacity"
			res.Value, res.Unit = m.to(m.n("weight"), "weight")
			at, _ := m.to(m.n("rated"), "weight")
			res.Limit = ptr(at)
			res.Text = "The vehicle weighs " + m.in(m.n("weight"), "weight") + ", more than the lift's rating of " + m.in(m.n("rated"), "rated") + "."
		case more(arm, limit):
			res.Finding = Beyond
			res.Text = carried + ", more than " + m.in(limit, "weight") + " an arm."
		case !m.has("rear"):
			res.Finding = Watch
			res.Text = "With the weight spread evenly each arm carries " + m.in(arm, "weight") + " of " + m.in(limit, "weight") + ", but no vehicle is that even: weigh the axles."
		}
		return res, nil
	},
}

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
			return Result{}, refuse("protrusion", "nothing of the anchor is left in the concrete", "protrusion and plate together are less than the length of "+m.in(m.n("length"), "length"))
		}
		limit, whose := 3.25, "usual least"
		res := Result{Finding: Within}
		if maker, ok := m.maker("in"); ok {
			own(&res, maker)
			limit, whose = maker, "maker's least"
		}
		res.Value, res.Unit = m.to(depth, "length")
		at, _ := m.to(limit, "length")
		res.Limit = ptr(at)
		res.Text = m.in(depth, "length") + " of the anchor is in the concrete, not under the " + whose + " of " + m.in(limit, "length") + "."
		if more(limit, depth) {
			res.Finding = Beyond
			res.Text = m.in(depth, "length") + " of the anchor is in the concrete, under the " + whose + " of " + m.in(limit, "length") + "."
		}
		if !m.has("plate") {
			res.Notes = append(res.Notes, "Measured from the top of the concrete: if it was from the plate, subtract plate and shims.")
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
		limit, watch, whose := 4.0, 4.25, "usual least"
		res := Result{Finding: Within}
		if maker, ok := m.maker("in"); ok {
			own(&res, maker)
			limit, watch, whose = maker, maker, "maker's least"
		}
		res.Value, res.Unit = m.to(thick, "thickness")
		at, _ := m.to(limit, "thickness")
		res.Limit = ptr(at)
		is := "The slab is " + m.in(thick, "thickness") + " thick"
		res.Text = is + ", not under the " + whose + " of " + m.in(limit, "thickness") + "."
		switch {
		case more(limit, thick):
			res.Finding, res.Text = Beyond, is+", under the "+whose+" of "+m.in(limit, "thickness")+"."
		case m.has("strength") && more(3000, m.n("strength")):
			// The strength is held against practice even where the thickness is the maker's.
			res.Finding, res.Status, res.Source, res.Formula = Beyond, "", "", ""
			res.Value, res.Unit = m.to(m.n("strength"), "strength")
			at, _ := m.to(3000, "strength")
			res.Limit = ptr(at)
			res.Text = "The concrete has " + m.in(m.n("strength"), "strength") + ", under the usual least of " + m.in(3000, "strength") + "."
		case more(watch, thick):
			res.Finding, res.Text = Watch, is+": some makers ask for "+m.in(watch, "thickness")+"."
		}
		if !m.has("strength") {
			res.Notes = append(res.Notes, "The strength of the concrete is not assessed: ask for the mix, or have it tested.")
			if res.Finding == Within && res.Status == Own {
				res.Finding = Watch // thickness alone clears nothing
				res.Text = is + ", not under the maker's least, but its strength is unknown."
			}
		}
		return res, nil
	},
}

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
			Text: "One such anchor, far from edges, breaks out of the concrete at about " + show(n, 0) + " lbf, before any reduction.",
			More: []Figure{{Title: "area of the full cone", Value: 9 * h * h, Unit: "in2"}},
		}, nil
	},
}

// breakout is N_b of ACI 318-19 Eq. 17.6.2.2.1 in lb: k, lightweight factor,
// f'c in psi, depth in inches.
func breakout(k, light, strength, depth float64) float64 {
	return k * light * math.Sqrt(strength) * depth * math.Sqrt(depth)
}
