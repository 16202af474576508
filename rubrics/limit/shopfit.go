package limit

import "asfound/rubrics/say"

const fitCaution = "Measure at the lowest beam, light and door track. The maker's drawing comes first; strip and lower the machine as its manual says."

var ceiling = rule{
	Definition: Definition{
		Name: "ceiling", Title: "Ceiling above a lift",
		Quantities: []Input{
			{Name: "height", Title: "height of the ceiling", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "vehicle", Title: "height of the tallest vehicle", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "rise", Title: "height it is lifted to", Dimension: "length", Unit: "in", Metric: "mm"},
		},
		Formula: "needed = vehicle + rise + 4 in; beyond under vehicle + rise",
		Source:  "geometry; the 4 in from memory",
		Status:  Memory, Caution: fitCaution + " The lift's own overhead height counts too.", Maker: "length",
	},
	bounds: map[string]bound{"height": {40, 1200}, "vehicle": {20, 240}, "rise": {1, 240}}, makerUnit: "in",
	judge: func(m *measured) (Result, *Error) {
		return m.clears("height", m.n("vehicle")+m.n("rise"), 4, say.Key("The ceiling has %s")), nil
	},
}

// clears holds an opening against what must pass and a margin, in inches; has is the
// pattern that tells the opening.
func (m *measured) clears(name string, body, margin float64, has string) Result {
	room, need := m.n(name), body+margin
	res := m.held(room, need, name)
	res.More = []Figure{m.figure(m.T("needed"), need, name)}
	is := m.Pattern(has, m.in(room, name))
	res.Text = m.F("%s, and %s is needed.", is, m.in(need, name))
	switch {
	case more(body, room):
		res.Limit = m.held(room, body, name).Limit
		res.Finding, res.Status = Beyond, Physics
		res.Text = m.F("%s, and %s must pass: it does not fit.", is, m.in(body, name))
	case more(need, room):
		res.Finding, res.Text = Watch, m.F("%s, and %s is needed: tight.", is, m.in(need, name))
	}
	maker, ok := m.maker("in")
	if !ok || res.Finding != Within && !more(maker, room) { // what is too low for the body stays so
		return res
	}
	kept := res.More
	res = m.held(room, maker, name)
	m.own(&res, *res.Limit)
	res.More, res.Text = kept, m.F("%s, and the maker asks for %s.", is, m.in(maker, name))
	if more(maker, room) {
		res.Finding, res.Text = Beyond, m.F("%s, and the maker asks for %s: too low.", is, m.in(maker, name))
	}
	return res
}

func doorInputs(side string) []Input {
	return []Input{
		{Name: "machine", Title: side + " of the machine, stripped", Dimension: "length", Unit: "in", Metric: "mm"},
		{Name: "door", Title: "clear " + side + " of the door", Dimension: "length", Unit: "in", Metric: "mm"},
	}
}

var doorBounds = map[string]bound{"machine": {2, 600}, "door": {6, 1200}}

var doorWidth = rule{
	Definition: Definition{
		Name: "door-width", Title: "Door: width", Quantities: doorInputs("width"),
		Formula: "needed = machine + 4 in; beyond under the machine",
		Source:  "geometry; the 4 in from memory",
		Status:  Memory, Caution: fitCaution,
	},
	bounds: doorBounds,
	judge: func(m *measured) (Result, *Error) {
		return m.clears("door", m.n("machine"), 4, say.Key("The door has %s")), nil
	},
}

var doorHeight = rule{
	Definition: Definition{
		Name: "door-height", Title: "Door: height", Quantities: doorInputs("height"),
		Formula: "needed = machine on skates + 3 in; beyond under the machine",
		Source:  "geometry; the 3 in from memory",
		Status:  Memory, Caution: fitCaution,
	},
	bounds: doorBounds,
	judge: func(m *measured) (Result, *Error) {
		return m.clears("door", m.n("machine"), 3, say.Key("The door has %s")), nil
	},
}

// floors are watch and beyond: spread load in lb/ft2 and, of concrete, the load
// of one pad in lb; a wooden floor has no figure for a pad.
var floors = map[string]struct{ spread, pad [2]float64 }{
	"concrete": {[2]float64{1500, 3000}, [2]float64{2000, 3000}},
	"wood":     {[2]float64{50, 50}, [2]float64{0, 0}},
}

var floorLoad = rule{
	Definition: Definition{
		Name: "floor-load", Title: "Load on the floor",
		Quantities: []Input{
			{Name: "weight", Title: "weight of the machine", Dimension: "mass", Unit: "lb", Metric: "kg"},
			{Name: "pads", Title: "feet or pads", Dimension: "number"},
			{Name: "pad-area", Title: "area of one pad", Dimension: "area", Unit: "in2", Metric: "cm2"},
			{Name: "footprint", Title: "floor the machine covers", Dimension: "area", Unit: "ft2", Metric: "m2"},
			{Name: "floor", Title: "floor", Dimension: "word", Words: []string{"concrete", "wood"}},
		},
		Formula: "spread = weight / footprint; pad = weight / pads / pad area. Wood beyond over 50 lb/ft2; " +
			"4 in slab on grade watch over 1,500 lb/ft2 or 2,000 lb a pad, beyond over 3,000 of either",
		Source: "arithmetic; the figures from memory",
		Status: Memory, Caution: "An engineer decides on an upper or wooden floor. " + fitCaution,
	},
	bounds: map[string]bound{"weight": {10, 500000}, "pads": {1, 40}, "pad-area": {0.5, 5000}, "footprint": {0.5, 2000}},
	judge: func(m *measured) (Result, *Error) {
		w := m.n("weight")
		pad, spread := w/m.n("pads"), w/m.n("footprint")
		if more(m.n("pads")*m.n("pad-area"), m.n("footprint")*144) {
			return Result{}, refuse("pad-area", m.T("the pads cover more than the machine does"), m.T("give the area of one pad, and check both units"))
		}
		name, per := "lb/ft2", 1.0
		if u := m.entered["weight"]; u == "kg" || u == "t" || u == "g" {
			name, per = "kg/m2", 4.882427636
		}
		figures := floors[m.words["floor"]]
		res := Result{Value: spread * per, Unit: name, Limit: ptr(figures.spread[0] * per), Finding: Within}
		res.More = []Figure{
			{Title: m.T("pressure under a pad"), Value: pad / m.n("pad-area"), Unit: "psi"},
			m.figure(m.T("load of one pad"), pad, "weight"),
		}
		is := m.F("Spread over its footprint it weighs %s %s", m.show(spread*per, 1), name)
		res.Text = m.F("%s, not over %s.", is, m.show(figures.spread[0]*per, 0))
		for i, finding := range []Finding{Watch, Beyond} {
			if limit := figures.spread[i]; more(spread, limit) {
				res.Finding, res.Limit = finding, ptr(limit*per)
				res.Text = m.F("%s, over the %s usual for %s.", is, m.show(limit*per, 0), m.Label(m.words["floor"]))
			}
			if limit := figures.pad[i]; limit > 0 && more(pad, limit) {
				at := m.held(pad, limit, "weight")
				res.Value, res.Unit, res.Limit, res.Finding = at.Value, at.Unit, at.Limit, finding
				res.Text = m.F("One pad carries %s, over the %s usual for a 4 in slab.", m.in(pad, "weight"), m.in(limit, "weight"))
			}
		}
		return res, nil
	},
}
