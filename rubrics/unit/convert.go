package unit

import (
	"math"
	"strings"

	"asfound/rubrics/say"
)

// Dimensions lists the dimensions known, in a fixed order.
func Dimensions() []string {
	out := make([]string, len(families))
	for i, f := range families {
		out[i] = f.dimension
	}
	return out
}

// Units lists the canonical unit names of a dimension, usual ones first; nil for
// a dimension that is not known. The plain number has the one unit "".
func Units(dimension string) []string {
	f := familyOf(dimension)
	if f == nil {
		return nil
	}
	out := make([]string, len(f.units))
	for i, u := range f.units {
		out[i] = u.name
	}
	return out
}

// Convert turns n of one unit into another of the same dimension. Factors are
// those of NIST SP 811 (2008), Appendix B; the result is within 2 units in the
// last place of the exact quotient of the definitions.
func Convert(n float64, from, to string) (float64, error) {
	if math.IsNaN(n) || math.IsInf(n, 0) {
		return 0, refuse("the number to convert is not finite", "give a plain number")
	}
	known := false
	for i := range families {
		f := &families[i]
		a, b := f.find(from), f.find(to)
		known = known || a != nil
		if a == nil || b == nil {
			continue
		}
		if a == b {
			return n, nil
		}
		out := convert(n, a, b)
		if math.IsInf(out, 0) {
			return 0, refuse(say.Later("%s %s is too large for %s", plain(n), from, to), "give a smaller number")
		}
		return out, nil
	}
	if !known {
		return 0, refuse(say.Later("the unit %s is not known", quote(from)), say.Later("units are %s", allUnits()))
	}
	return 0, refuse(say.Later("%s does not convert to %s", quote(from), quote(to)), "both must measure the same thing")
}

// convert multiplies before it divides, so that 0.375 in is 9.525 mm to the last
// digit; the explicit conversions keep processors from fusing the sum.
func convert(n float64, a, b *scale) float64 {
	if a.zero != 0 || b.zero != 0 {
		base := float64(n-a.zero) * a.num / a.den
		return float64(base*b.den/b.num) + b.zero
	}
	up, down := a.num, b.num
	if a.den != b.den {
		up, down = float64(up*b.den), float64(down*a.den)
	}
	return float64(n*up) / down
}

func familyOf(dimension string) *family {
	for i := range families {
		if families[i].dimension == dimension {
			return &families[i]
		}
	}
	return nil
}

// find gives the unit that a text names in this dimension, or nil. Case matters
// only to a canonical name.
func (f *family) find(text string) *scale {
	for i := range f.units {
		if f.units[i].name == text {
			return &f.units[i]
		}
	}
	spelled := spelling(text)
	for i := range f.units {
		u := &f.units[i]
		if strings.ToLower(u.name) == spelled && u.name != "" {
			return u
		}
		for _, a := range u.alias {
			if a == spelled {
				return u
			}
		}
	}
	return nil
}

var spellings = strings.NewReplacer(
	"²", "2", "³", "3", "^", "", "·", " ", "*", " ", "-", " ", "µ", "u", "μ", "u",
	".", "", "″", `"`, "”", `"`, "“", `"`, "′", "'", "’", "'", "\u00a0", " ", "\u202f", " ",
)

// spelling brings a unit as written to the form of the alias table.
func spelling(s string) string {
	s = strings.ToLower(spellings.Replace(s))
	s = strings.Join(strings.Fields(s), " ")
	return strings.ReplaceAll(strings.ReplaceAll(s, " /", "/"), "/ ", "/")
}

// like shows how a quantity is written.
func (f *family) like() say.Text { return say.Later("write it like %s", say.ByKey(f.example)) }

// offer lists the units of a dimension for a message.
func (f *family) offer() say.Text {
	names := make([]string, 0, len(f.units))
	for _, u := range f.units {
		if u.name != "" {
			names = append(names, u.name)
		}
	}
	if len(names) == 0 {
		return say.Later("a plain number such as %s", say.ByKey(f.example))
	}
	return say.Later("units of %s are %s, as in %s", say.ByKey(f.dimension), strings.Join(names, ", "), say.ByKey(f.example))
}

func allUnits() string {
	var names []string
	for _, f := range families {
		for _, u := range f.units {
			if u.name != "" {
				names = append(names, u.name)
			}
		}
	}
	return strings.Join(names, ", ")
}
