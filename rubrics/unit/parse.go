package unit

import (
	"strings"
	"unicode/utf8"

	"asfound/rubrics/say"
)

// Parse reads a number with its unit, such as "1-1/2 in" or "3,000 psi". The
// unit may be left out only for the dimension "number". Errors are *Error.
func Parse(text, dimension string) (Value, error) { return ParseDefault(text, dimension, "") }

// ParseDefault reads as Parse does; an entry without a unit is taken in the
// given one ("" for none).
func ParseDefault(text, dimension, unit string) (Value, error) {
	f := familyOf(dimension)
	if f == nil {
		return Value{}, refuse(say.Later("the dimension %s is not known", quote(dimension)), say.Later("it is one of %s", strings.Join(Dimensions(), ", ")))
	}
	if unit != "" && f.find(unit) == nil {
		return Value{}, refuse(say.Later("the default unit %s is not a unit of %s", quote(unit), say.ByKey(dimension)), f.offer())
	}
	v, err := f.read(text, unit)
	if err != nil {
		return Value{}, err
	}
	if bare := strings.TrimSpace(entries.Replace(text)); dimension == "length" && metricLength[unit] &&
		strings.Contains(bare, "/") && strings.Trim(bare, "0123456789/ -") == "" {
		return Value{}, refuse(say.Later("%s is a fraction, and the unit is set to %s", quote(text), unit), say.Later("write %s in, or the millimetres as a decimal", bare))
	}
	return v, nil
}

// metricLength are the units in which nobody writes fractions: a bare 3/8 meant
// inches.
var metricLength = map[string]bool{"mm": true, "cm": true, "m": true, "um": true, "km": true}

var entries = strings.NewReplacer(
	"\u00a0", " ", "\u202f", " ", "\u2009", " ", "\t", " ", "−", "-", "–", "-", "⁄", "/",
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
	"″", `"`, "”", `"`, "“", `"`, "′", "'", "’", "'",
)

// read takes the entry apart: sign, then pairs of number and unit.
func (f *family) read(text, assumed string) (Value, *Error) {
	s := strings.TrimSpace(entries.Replace(text))
	switch {
	case !utf8.ValidString(text) || len(s) > maxText:
		return Value{}, refuse("the entry is too long or not text", f.like())
	case s == "":
		return Value{}, refuse("nothing was entered", f.like())
	}
	sign := 1.0
	if s[0] == '-' || s[0] == '+' {
		if s[0] == '-' {
			sign = -1
		}
		s = strings.TrimSpace(s[1:])
		if s == "" {
			return Value{}, refuse(say.Later("%s has no number", quote(text)), f.like())
		}
	}
	parts, err := f.split(s, assumed)
	if err != nil {
		return Value{}, err
	}
	v, err := f.join(s, parts)
	if err != nil {
		return Value{}, err
	}
	if v.N != 0 { // no minus zero
		v.N *= sign
	}
	return v, nil
}

// piece is one number with its unit.
type piece struct {
	n    float64
	unit *scale
	text string
}

func (f *family) split(s, assumed string) ([]piece, *Error) {
	var out []piece
	for rest := s; rest != ""; {
		number, unit, after := cut(rest)
		if number == "" {
			return nil, refuse(say.Later("%s has no number where one belongs", quote(s)), f.like())
		}
		u, err := f.unit(unit, assumed, len(out) == 0)
		if err != nil {
			return nil, err
		}
		n, err := parseNumber(number, u.thou)
		if err != nil {
			return nil, err
		}
		out = append(out, piece{n, u, number})
		rest = after
		if len(out) > 3 {
			break
		}
	}
	if len(out) == 0 {
		return nil, refuse(say.Later("%s has no number", quote(s)), f.like())
	}
	return out, nil
}

// cut takes the first number and the unit after it off s.
func cut(s string) (number, unit, rest string) {
	i := 0
	for i < len(s) {
		c := s[i]
		exponent := (c == 'e' || c == 'E') && i > 0 && i+1 < len(s) && strings.IndexByte("+-0123456789", s[i+1]) >= 0
		if exponent {
			i += 2
			continue
		}
		// A slash belongs to the number only between digits: "12 /in" is a unit.
		if c == '/' && (i+1 >= len(s) || strings.IndexByte(" 0123456789", s[i+1]) < 0) {
			break
		}
		if strings.IndexByte("0123456789.,/- ", c) < 0 {
			break
		}
		i++
	}
	number = strings.TrimSpace(s[:i])
	j := i
	for j < len(s) {
		c := s[j]
		digit := c >= '0' && c <= '9'
		// A digit right after a letter belongs to the unit: in2, m3/h.
		if digit && (j == i || s[j-1] == ' ' || s[j-1] == '-' || s[j-1] == '\'' || s[j-1] == '"') {
			break
		}
		j++
	}
	unit = strings.TrimRight(s[i:j], " -")
	return number, strings.TrimSpace(unit), s[j:]
}

// unit finds the unit of a piece; only the first piece may leave it out.
func (f *family) unit(text, assumed string, first bool) (*scale, *Error) {
	if text == "" {
		if u := f.find(""); u != nil {
			return u, nil
		}
		if assumed != "" && first {
			return f.find(assumed), nil
		}
		return nil, refuse("the unit is missing", f.offer())
	}
	if u := f.find(text); u != nil {
		return u, nil
	}
	for i := range families {
		if o := &families[i]; o != f && o.find(text) != nil {
			return nil, refuse(say.Later("%s is a unit of %s, not of %s", quote(text), say.ByKey(o.dimension), say.ByKey(f.dimension)), f.offer())
		}
	}
	return nil, refuse(say.Later("the unit %s is not known", quote(text)), f.offer())
}

// subunits are the pairs that may stand together, and how many of the smaller
// make the larger.
var subunits = map[[2]string]float64{
	{"ft", "in"}: 12, {"lb", "oz"}: 16, {"h", "min"}: 60, {"min", "s"}: 60,
}

// join adds pieces such as 6 ft 2 in, in the smaller unit.
func (f *family) join(s string, parts []piece) (Value, *Error) {
	total := parts[0].n
	for i := 1; i < len(parts); i++ {
		larger, smaller := parts[i-1], parts[i]
		ratio, ok := subunits[[2]string{larger.unit.name, smaller.unit.name}]
		if !ok {
			return Value{}, refuse(say.Later("%s has more than one number", quote(s)), say.Later("write one number and its unit, like %s", say.ByKey(f.example)))
		}
		if !allDigits(larger.text) || smaller.n >= ratio {
			return Value{}, refuse(say.Later("%s does not add up", quote(s)), say.Later("whole %s first, then less than %s %s", larger.unit.name, plain(ratio), smaller.unit.name))
		}
		total = float64(total*ratio) + smaller.n
	}
	return Value{N: total, Unit: parts[len(parts)-1].unit.name}, nil
}
