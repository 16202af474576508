package depreciation

import (
	"math"

	"asfound/rubrics/say"
)

// ClassesSource says where the classes are from and how far they are to be trusted.
const ClassesSource = "ASABE D497.7 (2011, R2020), remaining value; coefficients from memory, not held against the printed standard"

// Class is one kind of farm machinery with a remaining-value curve. C3 is 0 where
// the curve does not ask for hours.
type Class struct {
	ID         string
	Title      string
	C1, C2, C3 float64
}

// miscellaneous is also the curve of machines with no class of their own.
var miscellaneous = Class{"miscellaneous", say.Key("Manure spreader and all other miscellaneous"), 0.943, 0.111, 0}

// Classes are those of ASABE D497.7 (2011, R2020). The coefficients are from
// memory: only the 23 % of a tractor over 112 kW at 15 years of 400 hours was
// seen in print (Iowa State University A3-29). No class is published for lifts,
// presses or machine tools.
var Classes = []Class{
	{"tractor-under-60-kw", say.Key("Tractor under 60 kW (80 hp)"), 0.981, 0.093, 0.0058},
	{"tractor-60-112-kw", say.Key("Tractor of 60 to 112 kW (80 to 150 hp)"), 0.942, 0.100, 0.0008},
	{"tractor-over-112-kw", say.Key("Tractor over 112 kW (150 hp)"), 0.976, 0.119, 0.0019},
	{"combine", say.Key("Combine"), 1.132, 0.165, 0.0079},
	{"mower", say.Key("Mower"), 0.756, 0.067, 0},
	{"baler", say.Key("Baler"), 0.852, 0.101, 0},
	{"swather", say.Key("Swather and other harvest machines"), 0.791, 0.091, 0},
	{"plow", say.Key("Plow"), 0.738, 0.051, 0},
	{"disk", say.Key("Disk and other tillage"), 0.891, 0.110, 0},
	{"planter", say.Key("Planter"), 0.883, 0.0787, 0},
	{"skid-steer", say.Key("Skid-steer and other vehicles"), 0.786, 0.063, 0.0033},
	miscellaneous,
}

// FindClass is the class of that id.
func FindClass(id string) (Class, bool) {
	for _, c := range Classes {
		if c.ID == id {
			return c, true
		}
	}
	return Class{}, false
}

// RemainingValue is the share of the list price of an equivalent new machine left
// after that many years of that many hours each: (C1 - C2 sqrt(years) - C3
// sqrt(hours))^2, and 0 once the bracket is negative. At age 0 it is C1^2, not 1,
// by design: below 1 it is the loss on leaving the yard.
func RemainingValue(c Class, years, hours float64) (float64, error) {
	err := first(
		between("age", years, 0, mostYears, " years"),
		between("hours a year", hours, 0, mostAnnual, " hours"),
	)
	if err != nil {
		return 0, err
	}
	return c.left(years, hours), nil
}

func (c Class) left(years, hours float64) float64 {
	x := c.C1 - float64(c.C2*math.Sqrt(years)) - float64(c.C3*math.Sqrt(hours))
	return float64(max(x, 0) * max(x, 0))
}

// Miscellaneous is the remaining value of a machine with no curve of its own, not
// below PercentGoodFloor. It takes any number: an age below 0 counts as 0, and
// one that is no number as beyond the end of the curve.
func Miscellaneous(years float64) float64 {
	if math.IsNaN(years) {
		return PercentGoodFloor
	}
	return max(miscellaneous.left(max(years, 0), 0), PercentGoodFloor)
}
