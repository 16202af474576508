package unit

import (
	"math"
	"strconv"
	"strings"

	"asfound/rubrics/say"
)

const (
	maxText   = 80   // characters of an entry
	maxDigits = 17   // significant digits: all that a float64 can hold
	maxSize   = 1e15 // greatest magnitude of an entry
)

// parseNumber reads the number of an entry, without sign and unit. thou tells
// that the unit is one that US trade counts in thousands.
func parseNumber(s string, thou bool) (float64, *Error) {
	if s == "" {
		return 0, refuse("there is no number", "write one, like 12.5 or 1 1/2")
	}
	if strings.Contains(s, "/") {
		return parseFraction(s)
	}
	if i := strings.IndexAny(s, "eE"); i >= 0 {
		return finish(s, s)
	}
	dotted, err := decimal(s, thou)
	if err != nil {
		return 0, err
	}
	return finish(s, dotted)
}

// finish turns digits with a decimal point into a number.
func finish(entry, digits string) (float64, *Error) {
	n, err := strconv.ParseFloat(digits, 64)
	if math.IsInf(n, 0) || math.Abs(n) > maxSize {
		return 0, refuse(say.Later("%s is too large", quote(entry)), "at most 1000000000000000")
	}
	if err != nil {
		return 0, refuse(say.Later("%s is not a number", quote(entry)), "write it like 12.5, 0,35 or 1 1/2")
	}
	mantissa, _, _ := strings.Cut(strings.ToLower(digits), "e")
	significant := strings.TrimLeft(strings.ReplaceAll(mantissa, ".", ""), "0")
	if len(significant) > maxDigits {
		return 0, refuse(say.Later("%s has %d digits", quote(entry), len(significant)), "at most 17 mean anything")
	}
	return n, nil
}

// parseFraction reads "3/8", "1 3/8" and "1-3/8".
func parseFraction(s string) (float64, *Error) {
	right := "write a fraction like 3/8, 1 3/8 or 1-3/8"
	whole, frac := "0", s
	if i := strings.IndexAny(s, " -"); i >= 0 {
		whole, frac = s[:i], strings.TrimSpace(s[i+1:])
	}
	above, below, _ := strings.Cut(frac, "/")
	var n [3]float64
	for i, part := range []string{whole, above, below} {
		part = strings.TrimSpace(part)
		if !allDigits(part) || len(part) > 6 {
			return 0, refuse(say.Later("%s is not a fraction", quote(s)), right)
		}
		v, err := strconv.Atoi(part)
		if err != nil {
			return 0, refuse(say.Later("%s is not a fraction", quote(s)), right)
		}
		n[i] = float64(v)
	}
	if n[2] == 0 {
		return 0, refuse(say.Later("%s divides by zero", quote(s)), right)
	}
	if frac != s && n[1] >= n[2] {
		return 0, refuse(say.Later("%s is not a mixed number", quote(s)), "after the whole number the fraction must be less than one")
	}
	// One division, so that 1 3/8 and 11/8 are the same number.
	return (float64(n[0]*n[2]) + n[1]) / n[2], nil
}

// decimal rewrites a decimal number with a point and without group marks, by
// the rules of the package documentation.
func decimal(s string, thou bool) (string, *Error) {
	spaced := strings.Contains(s, " ")
	commas, points := strings.Count(s, ","), strings.Count(s, ".")
	mark, group := "", ""
	switch {
	case commas > 0 && points > 0:
		mark, group = ".", ","
		if strings.LastIndex(s, ",") > strings.LastIndex(s, ".") {
			mark, group = ",", "."
		}
	case commas > 1:
		group = ","
	case points > 1:
		group = "."
	case points == 1:
		mark = "."
	case commas == 1 && !spaced && couldGroup(s):
		if !thou {
			bare := strings.Replace(s, ",", "", 1)
			return "", refuse(say.Later("%s can be read in two ways", quote(s)), say.Later("write %s or %s", bare, strings.Replace(s, ",", ".", 1)))
		}
		group = ","
	case commas == 1:
		mark = ","
	}
	if spaced {
		if group != "" {
			return "", refuse(say.Later("%s groups its digits in two ways", quote(s)), "write it like 3000 or 3 000")
		}
		group = " "
	}
	whole, rest, found := s, "", false
	if mark != "" {
		whole, rest, found = strings.Cut(s, mark)
	}
	wrong := refuse(say.Later("%s is not a number", quote(s)), "write it like 3000, 3 000, 12.5 or 0,35")
	if group != "" {
		groups := strings.Split(whole, group)
		for i, g := range groups {
			if !allDigits(g) || len(g) > 3 || (i > 0 && len(g) != 3) {
				return "", wrong
			}
		}
		whole = strings.Join(groups, "")
	}
	if found && whole == "" {
		whole = "0" // ".375"
	}
	if !allDigits(whole) || (found && !allDigits(rest)) {
		return "", wrong
	}
	if found {
		return whole + "." + rest, nil
	}
	return whole, nil
}

// couldGroup tells whether the one comma of s may mark thousands.
func couldGroup(s string) bool {
	before, after, _ := strings.Cut(s, ",")
	return len(after) == 3 && len(before) >= 1 && len(before) <= 3 && before[0] != '0'
}

func allDigits(s string) bool {
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return s != ""
}
