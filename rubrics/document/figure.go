package document

import (
	"math"
	"strconv"
	"strings"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/say"
	"asfound/rubrics/unit"
)

// amount writes whole currency units.
func amount(v *say.Voice, m appraisal.Money) string {
	return v.Whole(int64(math.Floor(float64(m)/100 + 0.5)))
}

// exactly writes an amount to the cent where it is none of whole units.
func exactly(v *say.Voice, m appraisal.Money) string {
	if m%100 == 0 {
		return v.Whole(int64(m / 100))
	}
	return v.Number(float64(m)/100, 2)
}

// between writes a three-point amount.
func between(v *say.Voice, r appraisal.Range, write func(*say.Voice, appraisal.Money) string) string {
	low, likely, high := write(v, r.Low), write(v, r.Likely), write(v, r.High)
	if low == high {
		return likely
	}
	return v.F("%s to %s, most likely %s", low, high, likely)
}

// hours writes a three-point time.
func hours(v *say.Voice, h appraisal.Hours) string {
	low, likely, high := v.Short(h.Low, 1), v.Short(h.Likely, 1), v.Short(h.High, 1)
	if low == high {
		return likely
	}
	return v.F("%s to %s, most likely %s", low, high, likely)
}

// entered writes a number with the decimals it was entered with.
func entered(v *say.Voice, n float64) string {
	_, fraction, _ := strings.Cut(strconv.FormatFloat(n, 'f', -1, 64), ".")
	return v.Short(n, min(len(fraction), 6))
}

// digits writes a computed number with about four figures.
func digits(v *say.Voice, n float64) string {
	decimals, size := 3, math.Abs(n)
	for size >= 10 && decimals > 0 {
		size /= 10
		decimals--
	}
	for small := math.Abs(n); small > 0 && small < 1 && decimals < 6; small *= 10 {
		decimals++
	}
	return v.Short(n, decimals)
}

// quantity writes a quantity as entered, with the reader's units beside it where
// they are others.
func quantity(v *say.Voice, q appraisal.Quantity, units string) string {
	return beside(v, entered(v, q.N), q, units)
}

// computed does so for a figure that was worked out.
func computed(v *say.Voice, n float64, u, units string) string {
	return beside(v, digits(v, n), appraisal.Quantity{N: n, Unit: u}, units)
}

func beside(v *say.Voice, shown string, q appraisal.Quantity, units string) string {
	if q.Unit == "" {
		return shown
	}
	shown += "\u00a0" + q.Unit
	other, ok := otherUnit(q.Unit, units)
	if !ok {
		return shown
	}
	n, err := unit.Convert(q.N, q.Unit, other)
	if err != nil {
		return shown
	}
	return v.F("%s (%s)", shown, digits(v, n)+"\u00a0"+other)
}

// twins are units of the two systems that stand beside each other.
var twins = [][2]string{
	{"in", "mm"}, {"ft", "m"}, {"mi", "km"}, {"yd", "m"}, {"thou", "um"},
	{"lb", "kg"}, {"short ton", "t"}, {"long ton", "t"}, {"oz", "g"},
	{"psi", "bar"}, {"inHg", "kPa"}, {"psi", "kPa"}, {"psi", "MPa"}, {"psi", "kgf/cm2"},
	{"lbf", "N"}, {"lbf", "kN"}, {"lbf", "kgf"}, {"short ton", "tf"},
	{"lbf ft", "N m"}, {"lbf in", "N m"}, {"lbf ft", "kgf m"},
	{"gpm", "L/min"}, {"cfm", "m3/min"}, {"cfm", "m3/h"}, {"in3/min", "mL/min"},
	{"ft/min", "m/min"}, {"in/s", "mm/s"}, {"in/min", "mm/min"}, {"ft/s", "m/s"}, {"mph", "km/h"},
	{"gal", "L"}, {"qt", "L"}, {"in3", "mL"}, {"ft3", "m3"},
	{"hp", "kW"}, {"hp", "PS"}, {"F", "C"}, {"in2", "cm2"}, {"in2", "mm2"}, {"ft2", "m2"}, {"in", "cm"},
}

// otherUnit is the unit of the wanted system beside one of the other; the first
// pair that has it counts.
func otherUnit(u, units string) (string, bool) {
	from, to := 0, 1
	if units == "inch" {
		from, to = 1, 0
	}
	for _, t := range twins {
		if t[from] == u {
			return t[to], true
		}
	}
	return "", false
}
