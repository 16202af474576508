package limit

import (
	"math"
	"strconv"
	"strings"

	"asfound/rubrics/say"
	"asfound/rubrics/unit"
)

// to turns a figure in the quantity's base unit into the unit it was entered in.
func (m *measured) to(n float64, name string) (float64, string) {
	u := m.entered[name]
	out, err := unit.Convert(n, m.base[name], u)
	if err != nil { // both units come from the same dimension
		return n, m.base[name]
	}
	return out, u
}

// in writes a figure in the unit that the named quantity was entered in.
func (m *measured) in(n float64, name string) string {
	v, u := m.to(n, name)
	if u == "" {
		return m.show(v, 4)
	}
	return m.show(v, places(u)) + " " + u
}

// places are the decimals worth showing in a unit.
func places(u string) int {
	switch u {
	case "in", "m":
		return 4
	case "mm", "ft", "lbf", "lb", "kg", "psi", "kPa", "s", "V", "hp":
		return 2
	}
	return 3
}

// tiny is what may be shown as 0: less than any quantity here can be, and more
// than the rounding of one.
const tiny = 1e-9

// show writes x with at most so many decimals; large figures get none.
func show(x float64, decimals int) string {
	if math.Abs(x) >= 10000 {
		decimals = 0
	}
	s := strconv.FormatFloat(x, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if (s == "0" || s == "-0") && math.Abs(x) > tiny { // 0.75 mm in km is not 0 km
		return strconv.FormatFloat(x, 'g', 3, 64)
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// show writes a number with the decimal mark of the language.
func (m *measured) show(x float64, decimals int) string { return marked(m.Voice, show(x, decimals)) }

func marked(v *say.Voice, number string) string {
	return strings.Replace(number, ".", v.Locale().Decimal, 1)
}

func quote(s string) string {
	if r := []rune(s); len(r) > 40 {
		s = string(r[:40]) + "..."
	}
	return strconv.Quote(s)
}

// figure is a further value in the unit the named quantity was entered in.
func (m *measured) figure(title string, n float64, name string) Figure {
	v, u := m.to(n, name)
	return Figure{Title: title, Value: v, Unit: u}
}

// hold puts a value and its limit into the result, in the unit that the named
// quantity was entered in.
func (m *measured) hold(res *Result, value, limit float64, name string) {
	res.Value, res.Unit = m.to(value, name)
	at, _ := m.to(limit, name)
	res.Limit = ptr(at)
}

func ptr(x float64) *float64 { return &x }
