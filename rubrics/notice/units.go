package notice

import "strings"

type dimension byte

const (
	mass dimension = iota + 1
	length
	way
	voltage
	phase
	power
	current
	hours
	pressure
	flow
	volume
	force
	other // of no field here, but it shows that a number is no price or year
)

// unitOf is what a unit as written measures, and its usual name.
type unitOf struct {
	dimension dimension
	name      string // as package unit has it
}

// units are the units as listings write them.
var units = spelled([]struct {
	dimension dimension
	name      string
	words     string
}{
	{mass, "lb", "lb|lbs|pound|pounds|#"},
	{mass, "kg", "kg|kgs|kilo|kilos|kilogram|kilograms|kilogramm"},
	{mass, "t", "t|to|tonne|tonnes|tonnen|mt"},
	{mass, "short ton", "ton|tons"},
	{length, "in", "in|inch|inches|\"|″|”|zoll"},
	{length, "ft", "ft|foot|feet|'|′|’"},
	{length, "mm", "mm|millimeter|millimeters"},
	{length, "cm", "cm|centimeter|centimeters"},
	{length, "m", "m|meter|meters|metre|metres"},
	{way, "mi", "mi|mile|miles"},
	{way, "km", "km|kms|kilometer|kilometers|kilometre|kilometres"},
	{voltage, "V", "v|volt|volts|vac|vdc"},
	{phase, "", "ph|phase|phases|phasen|phas|ø|φ|~"},
	{power, "hp", "hp|bhp|horsepower|horse"},
	{power, "PS", "ps"},
	{power, "kW", "kw|kilowatt|kilowatts"},
	{current, "A", "a|amp|amps|ampere|amperes"},
	{hours, "h", "h|hr|hrs|hour|hours|std|stunden|betriebsstunden"},
	{pressure, "psi", "psi|psig"},
	{pressure, "bar", "bar"},
	{flow, "cfm", "cfm|scfm"},
	{flow, "gpm", "gpm"},
	{flow, "L/min", "lpm"},
	{volume, "gal", "gal|gallon|gallons"},
	{volume, "L", "l|liter|liters|litre|litres"},
	{other, "", "%|min|mins|minute|minutes|sec|day|days|week|weeks|month|months|year|years|yrs|jahre|rpm|hz|mph|people|guys|men|man|pc|pcs|piece|pieces|cylinder|cylinders|stage|jaw|speed|speeds|axis|arms|flute|gauge|ga|awg|wire|degrees|°|thou|tpi|times|degree|owner|owners|post|posts|bolts|bolt|spindle|sets|set"},
})

func spelled(all []struct {
	dimension dimension
	name      string
	words     string
}) map[string]unitOf {
	m := map[string]unitOf{}
	for _, u := range all {
		for _, w := range strings.Split(u.words, "|") {
			m[w] = unitOf{u.dimension, u.name}
		}
	}
	return m
}

// dimensionOf tells what a unit of a usual name measures.
var dimensionOf = func() map[string]dimension {
	m := map[string]dimension{}
	for _, u := range units {
		m[u.name] = u.dimension
	}
	return m
}()

// unitText is the token as units are looked up.
func (t *token) unitText() string {
	if t.kind == word {
		return t.fold
	}
	return t.text
}

// unitBehind finds the unit of the figure that ends with token i: touching it, a
// blank or a dash apart.
func (r *reading) unitBehind(i int) (u unitOf, at int, ok bool) {
	k := i + 1
	if k < len(r.tokens) && r.is(k, "-") && r.glued(k) && k+1 < len(r.tokens) && r.glued(k+1) && r.tokens[k+1].kind == word {
		k++
	}
	if k >= len(r.tokens) || r.tokens[k].line != r.tokens[i].line || r.tokens[k].kind == number {
		return unitOf{}, 0, false
	}
	t := &r.tokens[k]
	u, ok = units[t.unitText()]
	switch {
	case !ok:
		return unitOf{}, 0, false
	case t.kind == mark && !t.glued && t.text != "ø":
		return unitOf{}, 0, false
	case !t.glued && k == i+1 && loneWords[t.fold] && !r.meantAsUnit(k):
		return unitOf{}, 0, false // "2 a day", "45 in stock", "2400 to you"
	case t.text == "\"" && i > 0 && r.quotes(k):
		return unitOf{}, 0, false
	case u.name == "short ton" && r.is(k-1, "metric"):
		u.name = "t"
	}
	return u, k, true
}

// loneWords are units that are words of their own when they stand apart.
var loneWords = set("a", "to", "in", "horse", "man", "men", "set", "sets", "wire")

// sizeWords follow an inch that stands apart.
var sizeWords = set("tall", "high", "wide", "long", "deep", "thick", "height", "width", "length", "swing", "diameter", "dia", "bore", "throat", "stroke", "overall", "x", "by", "lathe", "saw", "press", "mill", "grinder", "chuck", "column", "columns", "between")

// meantAsUnit tells whether the lone word at token k is a unit after all.
func (r *reading) meantAsUnit(k int) bool {
	t := &r.tokens[k]
	switch t.fold {
	case "a":
		return t.text == "A"
	case "in":
		if k+1 == len(r.tokens) || r.tokens[k+1].line != t.line {
			return true
		}
		next := &r.tokens[k+1]
		return next.kind == mark && next.text != "$" || sizeWords[next.fold]
	}
	return false
}

// quotes tells whether a mark at token k closes a quotation in its line.
func (r *reading) quotes(k int) bool {
	for n, i := 0, k-1; i >= 0 && n < 12 && r.tokens[i].line == r.tokens[k].line; i, n = i-1, n+1 {
		if r.tokens[i].text == "\"" {
			return r.glued(i+1) && !r.glued(i)
		}
	}
	return false
}
