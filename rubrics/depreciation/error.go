package depreciation

import (
	"math"

	"asfound/rubrics/say"
)

// Error is a value that is refused: which quantity, what is wrong with it, what
// would be right.
type Error struct {
	Quantity string
	What     string
	Right    string

	what, right say.Text
}

func (e *Error) Error() string { return e.Quantity + ": " + e.What + ": " + e.Right }

// In says the error in a language.
func (e *Error) In(v *say.Voice) string {
	return v.Label(e.Quantity) + ": " + e.what.In(v) + ": " + e.right.In(v)
}

// refuse makes an error of a quantity. Right is a string or a say.Text.
func refuse(quantity string, right any, format string, args ...any) error {
	e := &Error{Quantity: quantity, what: say.Fill(format, args...), right: say.Of(right)}
	e.What, e.Right = e.what.String(), e.right.String()
	return e
}

// How far a quantity may reach; beyond it lies a slip, not a machine.
const (
	mostYears    = 1000
	mostAnnual   = 8784 // hours of a leap year
	mostHours    = 1e6
	mostPrice    = 1e15
	mostExponent = 2
	mostApart    = 1e6
)

// between takes low to high, both included.
func between(quantity string, v, low, high float64, unit string) error {
	right := say.Later("%.0f to %.0f%s", low, high, say.ByKey(unit))
	switch {
	case math.IsNaN(v):
		return refuse(quantity, right, "not a number")
	case v < low || v > high:
		return refuse(quantity, right, "%g is out of range", v)
	}
	return nil
}

// positive takes more than 0 up to high.
func positive(quantity string, v, high float64, unit string) error {
	right := say.Later("more than 0, at most %.0f%s", high, say.ByKey(unit))
	switch {
	case math.IsNaN(v):
		return refuse(quantity, right, "not a number")
	case v <= 0 || v > high:
		return refuse(quantity, right, "%g is out of range", v)
	}
	return nil
}

// ratio is to / from of two positive amounts of one kind.
func ratio(quantity string, to, from float64) (float64, error) {
	if !(from > 0 && to > 0) || math.IsInf(from, 0) || math.IsInf(to, 0) {
		return 0, refuse(quantity, "two numbers of more than 0, in one unit", "%g and %g cannot be compared", from, to)
	}
	r := to / from
	if r > mostApart || r < 1/mostApart {
		return 0, refuse(quantity, "both in one unit", "%g and %g lie more than a million times apart", from, to)
	}
	return r, nil
}

// first is the first error there is, in the order of the arguments.
func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
