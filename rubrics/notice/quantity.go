package notice

import "asfound/rubrics/say"

var (
	weightCue    = set("weigh", "weighs", "weighing", "weight", "wt", "heavy", "gewicht", "gvw", "poids", "peso", "wiegt")
	capacityCue  = set("capacity", "cap", "rated", "rating", "lift", "lifts", "lifting", "hoist", "press", "jack", "handles", "tragkraft", "traglast", "capacite", "capacidad", "presse")
	circuitWords = set("breaker", "circuit", "plug", "outlet", "fuse", "service", "panel")
)

// quantities proposes every figure with a unit for the field it most likely fills.
func (r *reading) quantities() {
	for i := 0; i < len(r.tokens); i++ {
		if r.tokens[i].kind != number || r.tokens[i].taken || r.tokens[i].priced {
			continue
		}
		if last, ok := r.sizes(i); ok {
			i = last
			continue
		}
		f, ok := r.figureAt(i)
		if !ok {
			continue
		}
		u, at, ok := r.unitBehind(f.last)
		if s, joined := r.spaced(i); joined && !(ok && u.dimension == voltage) {
			if su, sat, fits := r.unitBehind(s.last); fits && (su.dimension == mass || su.dimension == hours || su.dimension == pressure) {
				f, u, at, ok = s, su, sat, true
			}
		}
		if !ok {
			r.bareSize(f)
			i = f.last
			continue
		}
		i = r.fill(f, u, at)
	}
}

// fill proposes a figure with its unit and gives the last token it took.
func (r *reading) fill(f figure, u unitOf, at int) int {
	switch u.dimension {
	case mass:
		r.massAt(f, u, at)
	case length:
		return r.lengthAt(f, u, at)
	case way:
		r.wayAt(f, u, at)
	case power:
		if r.kindMeasures(u) {
			r.size(f, u, at, Likely, say.Key("it has a unit of the size of this kind"))
		}
		r.amount("power", f, u, at, Likely, say.Key("it has a unit of power"))
	case current:
		if r.kindMeasures(u) { // of a welder the current is its size, not its supply
			r.size(f, u, at, Likely, say.Key("it has a unit of the size of this kind"))
			break
		}
		sure, because := Likely, say.Key("it has a unit of current")
		if _, ok := r.after(at, 2, circuitWords); ok {
			sure, because = Doubtful, say.Key("it may be the circuit's")
		}
		r.amount("current", f, u, at, sure, because)
	case hours:
		r.hoursAt(f, at)
	case pressure, flow, volume:
		if r.kindMeasures(u) {
			r.size(f, u, at, Likely, say.Key("it has a unit of the size of this kind"))
		}
	}
	return f.last
}

// kindMeasures tells whether the kind's size can be written in a unit.
func (r *reading) kindMeasures(u unitOf) bool {
	if r.kind == nil {
		return false
	}
	s := r.kind.Size
	if s.Unit == u.name {
		return true
	}
	for _, o := range s.Other {
		if o == u.name {
			return true
		}
	}
	return alike(s.Unit, u.name)
}

// alike tells whether two units measure the same; a force is told in units of mass.
func alike(a, b string) bool {
	da, db := measure(a), measure(b)
	return da != 0 && da == db
}

func measure(name string) dimension {
	switch name {
	case "lbf", "kgf", "tf", "kN":
		return mass
	}
	return dimensionOf[name]
}

// readings gives the ways to read a figure, the usual one first. The mark before
// three digits is the one that may group or part; nobody parts with a comma where
// inches are used, and a length there is parted by its point.
func (r *reading) readings(f *figure, d dimension) []float64 {
	switch {
	case f.other == 0, r.ask.Units == "inch" && f.comma:
		return []float64{f.n}
	case r.ask.Units == "inch" && d == length:
		return []float64{f.other}
	}
	return []float64{f.n, f.other}
}

// least is the smallest figure that a machine can have of anything.
const least = 1e-3

// amount proposes a quantity; the other reading of an open mark only as doubtful.
func (r *reading) amount(field string, f figure, u unitOf, at int, sure, because string) {
	for k, n := range r.readings(&f, u.dimension) {
		if k > 0 {
			sure, because = Doubtful, say.Key("the mark in it may start the decimals")
		}
		if n >= least {
			r.propose(f.first, at, Proposal{Field: field, Quantity: &Measured{n, u.name}, Sure: sure, Because: because})
		}
	}
}

// size proposes the capacity in the unit it has, which package unit knows by the
// same name; a ton in a metric shop may be a tonne.
func (r *reading) size(f figure, u unitOf, at int, sure, because string) {
	if u.name == "short ton" && r.ask.Units == "metric" {
		r.amount("capacity", f, unitOf{mass, "t"}, at, sure, because)
		r.amount("capacity", f, u, at, Doubtful, say.Key("it may be a short ton of 2,000 lb"))
		return
	}
	r.amount("capacity", f, u, at, sure, because)
}

func (r *reading) massAt(f figure, u unitOf, at int) {
	_, behind := r.after(at, 2, weightCue)
	_, before := r.before(f.first, 4, weightCue)
	carries := r.kindMeasures(u)
	if behind || before {
		sure, because := Plain, say.Key("the words about it speak of weight")
		if r.is(at+1, "each", "ea", "apiece") {
			sure, because = Doubtful, say.Key("it is said of each of several")
		}
		r.amount("weight", f, u, at, sure, because)
		return
	}
	_, capBehind := r.after(at, 3, capacityCue)
	_, capBefore := r.before(f.first, 3, capacityCue)
	switch {
	case carries && (capBehind || capBefore):
		r.size(f, u, at, Plain, say.Key("the words about it speak of what it carries"))
	case carries:
		r.size(f, u, at, Likely, say.Key("it is the size of this kind, and nothing speaks of weight"))
	case r.kind == nil && (capBehind || capBefore):
		r.size(f, u, at, Likely, say.Key("the words about it speak of what it carries"))
	case r.kind == nil:
		r.size(f, u, at, Doubtful, say.Key("it may be what it carries"))
		r.amount("weight", f, u, at, Doubtful, say.Key("it may be its weight"))
	default:
		r.amount("weight", f, u, at, Likely, say.Key("it has a unit of weight"))
	}
}

// bareSize reads "10k two-post": thousands of pounds without their unit.
func (r *reading) bareSize(f figure) {
	if !f.thousands || r.kind == nil || r.kind.Size.Unit != "lb" || f.last+1 >= len(r.tokens) {
		return
	}
	_, cue := r.after(f.last, 4, capacityCue)
	if cue || r.is(f.last+2, "post") || r.is(f.last+3, "post") {
		r.size(f, unitOf{mass, "lb"}, f.last, Likely, say.Key("thousands before such a kind are usually pounds"))
	}
}
