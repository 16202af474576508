package limit

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
		Status:  Memory, Caution: fitCaution + " The lift's own overhead height counts too.",
	},
	bounds: map[string]bound{"height": {40, 1200}, "vehicle": {20, 240}, "rise": {1, 240}},
	judge: func(m *measured) (Result, *Error) {
		return m.clears("height", m.n("vehicle")+m.n("rise"), 4, "The ceiling"), nil
	},
}

// clears holds an opening against what must pass and a margin, in inches.
func (m *measured) clears(name string, body, margin float64, what string) Result {
	room, need := m.n(name), body+margin
	res := m.held(room, need, name)
	res.More = []Figure{m.figure("needed", need, name)}
	is := what + " has " + m.in(room, name) + ", and "
	res.Text = is + m.in(need, name) + " is needed."
	switch {
	case more(body, room):
		res.Limit = m.held(room, body, name).Limit
		res.Finding, res.Status = Beyond, Physics
		res.Text = is + m.in(body, name) + " must pass: it does not fit."
	case more(need, room):
		res.Finding, res.Text = Watch, is+m.in(need, name)+" is needed: tight."
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
	judge:  func(m *measured) (Result, *Error) { return m.clears("door", m.n("machine"), 4, "The door"), nil },
}

var doorHeight = rule{
	Definition: Definition{
		Name: "door-height", Title: "Door: height", Quantities: doorInputs("height"),
		Formula: "needed = machine on skates + 3 in; beyond under the machine",
		Source:  "geometry; the 3 in from memory",
		Status:  Memory, Caution: fitCaution,
	},
	bounds: doorBounds,
	judge:  func(m *measured) (Result, *Error) { return m.clears("door", m.n("machine"), 3, "The door"), nil },
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
			return Result{}, refuse("pad-area", "the pads cover more than the machine does", "give the area of one pad, and check both units")
		}
		name, per := "lb/ft2", 1.0
		if u := m.entered["weight"]; u == "kg" || u == "t" || u == "g" {
			name, per = "kg/m2", 4.882427636
		}
		figures := floors[m.words["floor"]]
		res := Result{Value: spread * per, Unit: name, Limit: ptr(figures.spread[0] * per), Finding: Within}
		res.More = []Figure{
			{Title: "pressure under a pad", Value: pad / m.n("pad-area"), Unit: "psi"},
			m.figure("load of one pad", pad, "weight"),
		}
		is := "Spread over its footprint it weighs " + show(spread*per, 1) + " " + name
		res.Text = is + ", not over " + show(figures.spread[0]*per, 0) + "."
		for i, finding := range []Finding{Watch, Beyond} {
			if limit := figures.spread[i]; more(spread, limit) {
				res.Finding, res.Limit = finding, ptr(limit*per)
				res.Text = is + ", over the " + show(limit*per, 0) + " usual for " + m.words["floor"] + "."
			}
			if limit := figures.pad[i]; limit > 0 && more(pad, limit) {
				at := m.held(pad, limit, "weight")
				res.Value, res.Unit, res.Limit, res.Finding = at.Value, at.Unit, at.Limit, finding
				res.Text = "One pad carries " + m.in(pad, "weight") + ", over the " + m.in(limit, "weight") + " usual for a 4 in slab."
			}
		}
		return res, nil
	},
}

var axleLoad = rule{
	Definition: Definition{
		Name: "axle-load", Title: "Load of a vehicle on axles and arms",
		Quantities: []Input{
			{Name: "weight", Title: "weight of the vehicle", Dimension: "mass", Unit: "lb", Metric: "kg"},
			{Name: "front-share", Title: "share on the front axle", Dimension: "share", Unit: "%", Metric: "%", Optional: true, Either: "place"},
			{Name: "offset", Title: "centre of gravity behind the front axle", Dimension: "length", Unit: "in", Metric: "mm", Optional: true, Either: "place"},
			{Name: "wheelbase", Title: "wheelbase", Dimension: "length", Unit: "in", Metric: "mm", Optional: true, Either: "place"},
			{Name: "rated", Title: "rated capacity of the lift", Dimension: "mass", Unit: "lb", Metric: "kg", Optional: true},
			{Name: "arms", Title: "arms of the lift", Dimension: "number", Optional: true, Default: "4"},
		},
		Formula: "rear = weight x offset / wheelbase; arm = axle / (arms / 2), against rated / arms",
		Source:  "statics; lift dealers' published advice: each arm carries its part of the rating",
		Status:  Practice, Caution: "The lift's own plate and manual overrule. " + liftCaution, Maker: "mass",
	},
	bounds:    map[string]bound{"weight": {100, 2e5}, "front-share": {5, 95}, "offset": {1, 600}, "wheelbase": {20, 600}, "rated": {100, 2e5}, "arms": {2, 8}},
	makerUnit: "lb",
	judge:     judgeAxle,
}

// frontShare gives the share of the weight on the front axle.
func frontShare(m *measured) (float64, *Error) {
	where := m.has("offset") || m.has("wheelbase")
	switch {
	case m.has("front-share") && where:
		return 0, refuse("front-share", "the share and the centre of gravity were both given", "give one of them")
	case m.has("front-share"):
		return m.n("front-share") / 100, nil
	case !where:
		return 0, refuse("front-share", "it is not known where the weight stands", "give the share on the front axle, or offset and wheelbase")
	case !m.has("offset"):
		return 0, refuse("offset", "the wheelbase alone tells nothing", "give how far the centre of gravity is behind the front axle")
	case !m.has("wheelbase"):
		return 0, refuse("wheelbase", "the wheelbase is missing", "measure from axle to axle")
	case m.n("offset") >= m.n("wheelbase"):
		return 0, refuse("offset", "the centre of gravity cannot lie behind the rear axle", "check both lengths")
	}
	return 1 - m.n("offset")/m.n("wheelbase"), nil
}

func judgeAxle(m *measured) (Result, *Error) {
	share, err := frontShare(m)
	if err != nil {
		return Result{}, err
	}
	arms := m.n("arms")
	if int(arms)%2 == 1 {
		return Result{}, refuse("arms", show(arms, 0)+" arms do not share two axles", "give an even number, 4 for a two-post lift")
	}
	w := m.n("weight")
	front, rear := w*share, w*(1-share)
	each := max(front, rear) / (arms / 2)
	res := Result{Finding: Computed, Status: Physics, Text: "The heavier axle puts " + m.in(each, "weight") + " on each of its arms."}
	res.Value, res.Unit = m.to(each, "weight")
	more1 := []Figure{
		m.figure("front axle", front, "weight"), m.figure("rear axle", rear, "weight"),
		m.figure("front arm", front/(arms/2), "weight"), m.figure("rear arm", rear/(arms/2), "weight"),
	}
	limit, whose := m.n("rated")/arms, "its part of the rating, "
	maker, ok := m.maker("lb")
	if ok {
		limit, whose = maker, "the maker's "
	}
	if ok || m.has("rated") {
		res = m.held(each, limit, "weight")
		if ok {
			own(&res, *res.Limit)
		}
		is := "The heavier axle puts " + m.in(each, "weight") + " on each of its arms"
		res.Text = is + ", not more than " + whose + m.in(limit, "weight") + "."
		if more(each, limit) {
			res.Finding, res.Text = Beyond, is+", more than "+whose+m.in(limit, "weight")+"."
		}
	}
	if m.has("rated") && more(w, m.n("rated")) {
		res = m.held(w, m.n("rated"), "weight")
		res.Finding, res.Status, res.Source = Beyond, Published, "the lift's plate; Michigan R 408.17251: never above rated capacity"
		res.Text = "The vehicle weighs " + m.in(w, "weight") + ", more than the lift's rating of " + m.in(m.n("rated"), "rated") + "."
	}
	res.More = more1
	return res, nil
}
