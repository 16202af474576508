package appraisal

import (
	"math"
	"strconv"

	"asfound/rubrics/say"
	"asfound/rubrics/unit"
)

// sized is one size of the listing: told, or the usual one of its kind.
type sized struct {
	told *Quantity
	span Span   // in unit
	unit string // lb, in or hp
	// field is what would settle it; text is how the size is called in a sentence.
	field, text string
	// of is the size this one is reckoned from.
	of *sized
}

// machine is the equipment with its sizes and what its plate says of the supply.
type machine struct {
	weight, length, width, height, power sized

	volts  float64 // 0 not told
	phases int     // 1, 3; 0 not told
	amps   float64 // by the plate, 0 not told
}

func newMachine(r *Rubric, f *File) machine {
	l, b := &f.Listing, r.Body
	take := func(told *Quantity, usual Span, in, field, text string) sized {
		s := sized{told: told, span: usual, unit: in, field: field, text: text}
		if told != nil {
			x := sizeIn(told, in)
			s.span = Span{x, x, x}
		}
		return s
	}
	m := machine{
		weight: take(l.Weight, b.Weight, "lb", "listing.weight", say.Key("weight")),
		length: take(l.Length, b.Length, "in", "listing.length", say.Key("length")),
		width:  take(l.Width, b.Width, "in", "listing.width", say.Key("width")),
		height: take(l.Height, b.Height, "in", "listing.height", say.Key("height")),
		power:  take(l.Power, b.Power, "hp", "listing.power", say.Key("motor power")),
		volts:  sizeIn(l.Voltage, "V"), phases: l.Phases, amps: sizeIn(l.Current, "A"),
	}
	if m.phases == 0 {
		m.phases = toldPhases(r, f)
	}
	return m
}

// toldPhases reads the phases from a fact whose options are called one-phase and
// three-phase, where the listing does not tell them.
func toldPhases(r *Rubric, f *File) int {
	facts := told(r, f.Facts)
	for _, id := range sortedKeys(facts) {
		switch facts[id] {
		case "one-phase", "single-phase":
			return 1
		case "three-phase":
			return 3
		}
	}
	return 0
}

// sizeIn is a quantity in a unit of its family, 0 where it is not told. The file's
// check has refused what does not convert.
func sizeIn(q *Quantity, in string) float64 {
	if q == nil {
		return 0
	}
	x, err := unit.Convert(q.N, q.Unit, in)
	if err != nil {
		return 0
	}
	return x
}

// known tells whether the kind has this size at all, or the listing tells it.
func (s *sized) known() bool { return s.told != nil || s.span.High > 0 }

// metricOf are the units a metric shop reads in place of the inch ones.
var metricOf = map[string]string{"lb": "kg", "in": "mm", "ft": "m", "psi": "bar", "cfm": "L/min"}

// read gives a figure in the units of the shop. Motor tables go by hp, so power
// stays.
func (h *holding) read(x float64, u string) (float64, string) {
	to, ok := metricOf[u]
	if !ok || h.file.Shop.Units != "metric" {
		return x, u
	}
	if u == "psi" && x >= 1000 { // concrete
		to = "MPa"
	}
	y, err := unit.Convert(x, u, to)
	if err != nil {
		return x, u
	}
	return y, to
}

// in is such a figure, rounded as a person would write it.
func (h *holding) in(x float64, u string) Quantity {
	x, u = h.read(x, u)
	quarters := float64(x * 4)
	switch {
	case u == "hp", u == "in" && quarters == math.Floor(quarters):
		return Quantity{x, u}
	}
	switch u {
	case "in", "ft", "m", "bar", "MPa", "A", "%":
		return Quantity{tenths(x), u}
	}
	return Quantity{math.Floor(x + 0.5), u}
}

// say writes such a figure for a sentence.
func (h *holding) say(x float64, u string) string { return h.written(h.in(x, u)) }

// In writes the quantity with thousands apart.
func (q Quantity) In(v *say.Voice) string {
	s := strconv.FormatFloat(q.N, 'f', -1, 64)
	if math.Abs(q.N) >= 1e15 {
		s = strconv.FormatFloat(q.N, 'g', 6, 64)
	}
	s = v.Digits(s)
	if q.Unit == "" {
		return s
	}
	return s + " " + q.Unit
}

// usual writes the span of a size that is not told.
func (h *holding) usual(s *sized) string {
	low, high := h.in(s.span.Low, s.unit), h.in(s.span.High, s.unit)
	if low == high {
		return h.written(low)
	}
	low.Unit = ""
	return h.F("%s to %s", h.written(low), h.written(high))
}
