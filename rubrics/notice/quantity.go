package notice

import "strings"

var (
	weightCue   = set("weigh", "weighs", "weighing", "weight", "wt", "heavy", "gewicht", "gvw", "poids", "peso", "wiegt")
	capacityCue = set("capacity", "cap", "rated", "rating", "lift", "lifts", "lifting", "hoist", "press", "jack", "handles", "tragkraft", "traglast", "capacite", "capacidad", "presse")
	tallCue     = set("tall", "high", "height", "h", "hoch", "hohe")
	wideCue     = set("wide", "width", "w", "breit", "breite")
	longCue     = set("long", "length", "l", "deep", "depth", "d", "lang", "lange")
	// notOwn are sizes of other things than the machine as a whole.
	notOwn = set("ceiling", "ceilings", "door", "doors", "doorway", "lifting", "lifts", "rise", "raised", "stroke", "travel", "cable", "cables", "cord", "hose", "hoses", "between", "clearance", "runway", "runways", "arm", "arms",
		"bed", "table", "jaw", "vise", "chuck", "stock", "wire", "blade", "wheel", "throat", "swing", "center", "centers", "centres", "reach", "daylight", "opening", "trailer", "shop", "building", "bay", "pipe", "extension", "extensions", "bore", "spindle", "lead")
	hoursAfter   = set("away", "notice", "drive", "driving", "from", "ago", "of", "per", "a", "day", "week", "work", "labor", "open", "north", "south", "east", "west", "shop", "business")
	hoursBefore  = set("within", "open", "business", "drive", "notice", "about", "in", "kw", "takes", "took", "office")
	awayAfter    = set("away", "from", "north", "south", "east", "west", "outside", "off", "northwest", "northeast", "southwest", "southeast", "entfernt", "to")
	odometer     = set("odometer", "mileage", "driven", "truck", "trailer", "engine", "transmission", "on")
	circuitWords = set("breaker", "circuit", "plug", "outlet", "fuse", "service", "panel")
	partWords    = set("column", "columns", "post", "posts", "each", "beam", "frame", "ram", "tank", "motor")
	overallWords = set("overall", "total")
	withinWords  = set("within", "every", "per", "after")
	ranWords     = set("meter", "runs", "run", "shows", "with", "only", "has", "betriebsstunden")
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
			r.size(f, u, at, Likely, "it has a unit of the size of this kind")
		}
		r.amount("power", f, u, at, Likely, "it has a unit of power")
	case current:
		sure, because := Likely, "it has a unit of current"
		if _, ok := r.after(at, 2, circuitWords); ok {
			sure, because = Doubtful, "it may be the circuit's"
		}
		r.amount("current", f, u, at, sure, because)
	case hours:
		r.hoursAt(f, at)
	case pressure, flow, volume:
		if r.kindMeasures(u) {
			r.size(f, u, at, Likely, "it has a unit of the size of this kind")
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
			sure, because = Doubtful, "the mark in it may start the decimals"
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
		r.amount("capacity", f, u, at, Doubtful, "it may be a short ton of 2,000 lb")
		return
	}
	r.amount("capacity", f, u, at, sure, because)
}

func (r *reading) massAt(f figure, u unitOf, at int) {
	_, behind := r.after(at, 2, weightCue)
	_, before := r.before(f.first, 4, weightCue)
	carries := r.kindMeasures(u)
	if behind || before {
		sure, because := Plain, "the words about it speak of weight"
		if r.is(at+1, "each", "ea", "apiece") {
			sure, because = Doubtful, "it is said of each of several"
		}
		r.amount("weight", f, u, at, sure, because)
		return
	}
	_, capBehind := r.after(at, 3, capacityCue)
	_, capBefore := r.before(f.first, 3, capacityCue)
	switch {
	case carries && (capBehind || capBefore):
		r.size(f, u, at, Plain, "the words about it speak of what it carries")
	case carries:
		r.size(f, u, at, Likely, "it is the size of this kind, and nothing speaks of weight")
	case r.kind == nil && (capBehind || capBefore):
		r.size(f, u, at, Likely, "the words about it speak of what it carries")
	case r.kind == nil:
		r.size(f, u, at, Doubtful, "it may be what it carries")
		r.amount("weight", f, u, at, Doubtful, "it may be its weight")
	default:
		r.amount("weight", f, u, at, Likely, "it has a unit of weight")
	}
}

// bareSize reads "10k two-post": thousands of pounds without their unit.
func (r *reading) bareSize(f figure) {
	if !f.thousands || r.kind == nil || r.kind.Size.Unit != "lb" || f.last+1 >= len(r.tokens) {
		return
	}
	_, cue := r.after(f.last, 4, capacityCue)
	if cue || r.is(f.last+2, "post") || r.is(f.last+3, "post") {
		r.size(f, unitOf{mass, "lb"}, f.last, Likely, "thousands before such a kind are usually pounds")
	}
}

func (r *reading) lengthAt(f figure, u unitOf, at int) (last int) {
	u.name, f = r.feetInches(u.name, f, &at)
	field, cue := "", 0
	for _, c := range []struct {
		field string
		words map[string]bool
	}{{"height", tallCue}, {"width", wideCue}, {"length", longCue}} {
		k, ok := r.after(r.past(at, "overall", "total"), 1, c.words)
		if !ok {
			k = r.leadTo(f.first)
			ok = k >= 0 && r.tokens[k].kind == word && c.words[r.tokens[k].fold]
		}
		if ok && field == "" {
			field, cue = c.field, k
		}
	}
	if r.kindMeasures(unitOf{length, u.name}) && r.sizeWord(f, at) {
		r.size(f, unitOf{length, u.name}, at, Plain, "the words about it speak of the size of this kind")
		return f.last
	}
	if field == "" {
		return f.last
	}
	sure, because := Likely, "the words about it speak of its "+field
	_, overall := r.before(f.first, 3, overallWords)
	_, before := r.before(f.first, 3, notOwn)
	_, behind := r.after(max(at, cue), 2, notOwn)
	if !overall && (before || behind || r.is(cue-1, "lift")) {
		return f.last
	}
	if _, part := r.before(f.first, 3, partWords); part {
		sure, because = Doubtful, "it may be said of a part"
	}
	if r.is(cue, "h", "w", "l", "d") && !r.tokens[cue].glued && !r.is(cue+1, ":", "=") {
		sure = Doubtful
	}
	r.amount(field, f, unitOf{length, u.name}, at, sure, because)
	return f.last
}

// past is token i, or the one behind it where that is one of the words.
func (r *reading) past(i int, words ...string) int {
	if r.is(i+1, words...) {
		return i + 1
	}
	return i
}

// leadTo is the token before a figure that names it: "height: about 145 in".
func (r *reading) leadTo(i int) int {
	k := i - 1
	for n := 0; n < 3 && r.is(k, ":", "=", "is", "about", "approx", "of", "."); n++ {
		k--
	}
	if k >= 0 && r.tokens[k].line != r.tokens[i].line {
		return -1
	}
	return k
}

// feetInches joins 11 ft 6 in and 11'6".
func (r *reading) feetInches(name string, f figure, at *int) (string, figure) {
	if name != "ft" || !r.number(*at+1) {
		return name, f
	}
	g, ok := r.figureAt(*at + 1)
	if !ok || g.n >= 12 {
		return name, f
	}
	u, last, ok := r.unitBehind(g.last)
	if ok && u.name != "in" || !ok && !r.glued(*at+1) {
		return name, f
	}
	*at = g.last
	if ok {
		*at = last
	}
	f.n, f.other, f.last = float64(f.n*12)+g.n, 0, g.last
	return "in", f
}

// sizeWord tells whether a word of the kind's size stands about a figure.
func (r *reading) sizeWord(f figure, at int) bool {
	words := map[string]bool{}
	for _, w := range strings.Fields(r.kind.Size.Title) {
		if w := plainWord(w); len(w) > 3 {
			words[w] = true
		}
	}
	for _, w := range strings.Fields(r.kind.Title) {
		w := plainWord(w)
		words[w] = words[w] || len(w) > 3
	}
	_, behind := r.after(at, 2, words)
	_, before := r.before(f.first, 2, words)
	return behind || before
}

func (r *reading) wayAt(f figure, u unitOf, at int) {
	if _, ok := r.before(f.first, 4, odometer); ok || f.thousands || r.is(at+1, "on") || r.is(at+1, "per", "/") || f.n > 20_000 {
		return
	}
	if _, ok := r.before(f.first, 2, withinWords); ok {
		return
	}
	sure, because := Doubtful, "it has a unit of distance"
	if _, ok := r.after(at, 2, awayAfter); ok {
		sure, because = Likely, "the words behind it speak of a distance"
	}
	r.amount("distance", f, u, at, sure, because)
}

func (r *reading) hoursAt(f figure, at int) {
	_, behind := r.after(at, 1, hoursAfter)
	_, before := r.before(f.first, 1, hoursBefore)
	meter, metered := r.before(f.first, 3, ranWords)
	if behind || before && !metered || r.is(at+1, "/", "'") && r.glued(at+1) {
		return
	}
	if f.n > 1e6 || f.n <= 48 && !(metered && r.is(meter, "meter", "shows")) || r.is(f.first-1, "/", "-") && f.n <= 48 {
		return // an errand, a notice
	}
	sure := Plain
	if f.n < 100 {
		sure = Doubtful
	}
	for k, n := range r.readings(&f, hours) {
		because := "it has a unit of hours"
		if k > 0 {
			if n <= 48 {
				break
			}
			sure, because = Doubtful, "the mark in it may start the decimals"
		}
		r.propose(f.first, at, Proposal{Field: "hours", Number: &n, Sure: sure, Because: because})
	}
}

// meters reads "hour meter: 1532" and "hours 1532", where the unit stands before.
func (r *reading) meters() {
	for i := range r.tokens {
		if !r.is(i, "hours", "hrs", "meter", "betriebsstunden") || r.is(i, "meter") && !r.is(i-1, "hour", "hours") {
			continue
		}
		k := i + 1
		for n := 0; n < 3 && r.is(k, ":", "meter", "is", "at", "reads", "shows", "reading", "on", "="); n++ {
			k++
		}
		f, ok := r.figureAt(k)
		if !ok || r.tokens[k].priced || r.tokens[k].line != r.tokens[i].line || f.n < 10 || f.n > 1e6 || k == i+1 && !r.is(i, "meter", "betriebsstunden") {
			continue
		}
		if u, _, unit := r.unitBehind(f.last); unit && u.dimension != hours {
			continue
		}
		n := f.n
		r.propose(i, f.last, Proposal{Field: "hours", Number: &n, Sure: Likely, Because: "an hour meter is spoken of"})
	}
}

// sizes reads 96 x 60 x 72 in as length, width and height, and 14x40 as the
// swing and bed of a kind that is told by a length.
func (r *reading) sizes(i int) (last int, ok bool) {
	var f [3]figure
	var name [3]string
	var label [3]string
	k, n := i, 0
	for ; n < 3; n++ {
		g, ok := r.figureAt(k)
		if !ok || g.thousands {
			break
		}
		f[n], last = g, g.last
		if u, at, ok := r.unitBehind(last); ok && u.dimension == length {
			name[n], last = u.name, at
			name[n], f[n] = r.feetInches(u.name, g, &last)
		}
		if r.is(last+1, "l", "w", "h", "d", "long", "wide", "high", "tall", "deep") {
			last++
			label[n] = r.tokens[last].fold
		}
		if !r.is(last+1, "x", "×", "by", "*") || n == 2 {
			n++
			break
		}
		k = last + 2
	}
	for j := 0; j < n && n > 1; j++ { // the last unit holds for all
		if name[j] == "" {
			name[j] = name[n-1]
		}
	}
	switch {
	case n == 3 && name[0] != "":
		r.three(f, name, label)
		return last, true
	case n >= 2 && r.kind != nil && measure(r.kind.Size.Unit) == length:
		unit := name[0]
		if unit == "" {
			unit = r.kind.Size.Unit
			if f[0].n >= 100 && unit == "in" {
				unit = "mm"
			}
		}
		r.size(f[0], unitOf{length, unit}, f[0].last, Likely, "of two sizes of such a kind this one is named first")
		return last, true
	}
	return 0, false
}

// three proposes length, width and height, by their letters where they stand.
func (r *reading) three(f [3]figure, name, label [3]string) {
	fields := [3]string{"length", "width", "height"}
	sure, because := Doubtful, "of three sizes, length, width and height are the usual order"
	if label[0]+label[1]+label[2] != "" {
		sure, because = Likely, "a letter behind it says so"
		for j, l := range label {
			fields[j] = map[string]string{"h": "height", "high": "height", "tall": "height", "w": "width", "wide": "width", "l": "length", "long": "length", "d": "length", "deep": "length"}[l]
		}
	}
	for j := range f {
		if fields[j] != "" {
			r.amount(fields[j], f[j], unitOf{length, name[j]}, f[j].last, sure, because)
		}
	}
}
