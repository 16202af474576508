package table

import (
	"math"
	"strconv"
	"strings"

	"asfound/rubrics/say"
)

const (
	maxNumberText = 60   // bytes of a cell that can be a number
	maxNumber     = 1e15 // greatest magnitude
)

// Number reads a cell as a plain number; a currency about it is passed over.
// Only "1,234" and "1.234" depend on decimalComma. Errors are *Error without line.
func Number(cell string, decimalComma bool) (float64, error) {
	n, _, err := Amount(cell, decimalComma)
	return n, err
}

// Amount reads as Number does, and gives the currency beside the number: an ISO
// 4217 code, "$" or "kr" for one of several, "" for none.
func Amount(cell string, decimalComma bool) (n float64, currency string, err error) {
	f, why := takeApart(cell)
	if why != fine {
		return 0, "", why.error(cell)
	}
	digits := f.whole
	switch {
	case !f.open && f.frac != "":
		digits += "." + f.frac
	case f.open && f.decimal(decimalComma) && f.frac == "000":
		return 0, "", refuse(0, say.Later("%s could be %s or %s", quote(cell), f.whole+f.frac, f.whole), say.Later("write %s or %s", f.whole+f.frac, f.whole))
	case f.open && f.decimal(decimalComma):
		digits += "." + f.frac
	case f.open:
		digits += f.frac
	}
	n, bad := strconv.ParseFloat(digits, 64)
	if bad != nil || math.Abs(n) > maxNumber {
		return 0, "", refuse(0, say.Later("%s is too large", quote(cell)), "at most 1000000000000000")
	}
	if f.negative && n != 0 {
		n = -n
	}
	return n, f.currency, nil
}

// Doubtful tells whether Number reads a cell as having three decimals that could
// as well be thousands: "1,234" with a decimal comma, "1.234" without.
func Doubtful(cell string, decimalComma bool) bool {
	f, why := takeApart(cell)
	return why == fine && f.open && f.decimal(decimalComma)
}

// form is a number taken apart: its digits, without the marks that group them.
type form struct {
	negative    bool
	whole, frac string
	mark        byte // between whole and frac; 0 for none
	group       byte // the point or comma that groups by threes for certain
	open        bool // the mark may group as well
	currency    string
}

// decimal tells whether an open mark is the decimal mark.
func (f *form) decimal(decimalComma bool) bool { return (f.mark == ',') == decimalComma }

// shows tells which decimal mark a number can only have been written with, 0
// where it does not show.
func (f *form) shows() byte {
	switch {
	case f.open:
		return 0
	case f.mark != 0:
		return f.mark
	case f.group == ',':
		return '.'
	case f.group == '.':
		return ','
	}
	return 0
}

// reason is why a cell is no number.
type reason int

const (
	fine reason = iota
	nothing
	formula
	share
	exponent
	noNumber
)

func (r reason) error(cell string) *Error {
	switch r {
	case nothing:
		return refuse(0, "it is empty", "write a number")
	case formula:
		return refuse(0, say.Later("%s is a formula, not a number", quote(cell)), "paste values")
	case share:
		return refuse(0, say.Later("%s is a percentage", quote(cell)), "write the number itself")
	case exponent:
		return refuse(0, say.Later("%s is cut short to a power of ten", quote(cell)), "give the column a plain number format and save it again")
	}
	return refuse(0, say.Later("%s is not a number", quote(cell)), "write it like 1234 or 1234.50")
}

var numberMarks = strings.NewReplacer(
	"\u00a0", " ", "\u202f", " ", "\u2009", " ", "\u2007", " ", "\t", " ",
	"−", "-", "–", "-", "—", "-", "’", "'", "‘", "'",
)

// takeApart reads the form of a number, or says why a cell is none.
func takeApart(cell string) (form, reason) {
	s := strings.TrimSpace(cell)
	for i := range len(s) {
		if s[i] >= 0x80 || s[i] == '\t' {
			s = strings.TrimSpace(numberMarks.Replace(s))
			break
		}
	}
	switch {
	case s == "":
		return form{}, nothing
	case s[0] == '=' || s[0] == '@':
		return form{}, formula
	case len(s) > maxNumberText || !strings.ContainsAny(s, "0123456789"):
		return form{}, noNumber
	}
	var f form
	body, ok := f.peel(s)
	why := noNumber
	if ok {
		why = f.digits(body)
	}
	if why == noNumber && (strings.HasSuffix(s, "%") || strings.HasSuffix(s, "‰")) {
		why = share
	}
	if why == noNumber && (s[0] == '+' || s[0] == '-') {
		why = formula
	}
	return f, why
}

// peel takes sign, brackets and currency off a number.
func (f *form) peel(s string) (body string, ok bool) {
	signed := false
	for {
		s = strings.Trim(s, " ")
		n := len(s)
		switch {
		case n == 0:
			return "", false
		case s[0] == '(' && s[n-1] == ')' && !signed:
			signed, f.negative, s = true, true, s[1:n-1]
			continue
		case (s[0] == '-' || s[0] == '+') && !signed:
			signed, f.negative, s = true, s[0] == '-', s[1:]
			continue
		case s[n-1] == '-' && n > 2 && (s[n-2] == ',' || s[n-2] == '.') && f.mark == 0:
			f.mark, s = s[n-2], s[:n-2] // 950,- has no cents
			continue
		case s[n-1] == '-' && !signed:
			signed, f.negative, s = true, true, s[:n-1]
			continue
		}
		front := strings.IndexAny(s, "0123456789 (+-,")
		if front > 0 {
			if code := currencies[strings.ToLower(strings.TrimSuffix(s[:front], "."))]; code != "" && f.in(code) {
				s = s[front:]
				continue
			}
		}
		back := strings.LastIndexAny(s, "0123456789 )-") + 1
		if back > 0 && back < n {
			if code := currencies[strings.ToLower(strings.TrimSuffix(s[back:], "."))]; code != "" && f.in(code) {
				s = s[:back]
				continue
			}
		}
		return s, true
	}
}

// digits reads the digits and the marks between them.
func (f *form) digits(s string) reason {
	if strings.ContainsFunc(s, func(c rune) bool { return !strings.ContainsRune("0123456789.,' ", c) }) {
		if isExponent(s) {
			return exponent
		}
		return noNumber
	}
	commas, points := strings.Count(s, ","), strings.Count(s, ".")
	spaces, strokes := strings.Count(s, " "), strings.Count(s, "'")
	without := f.mark // 950,- : what stands before is whole
	mark := byte(0)
	switch {
	case commas > 0 && points > 0:
		mark, f.group = '.', ','
		if strings.LastIndexByte(s, ',') > strings.LastIndexByte(s, '.') {
			mark, f.group = ',', '.'
		}
	case commas > 1:
		f.group = ','
	case points > 1:
		f.group = '.'
	case commas == 1 && without == '.':
		f.group = ','
	case points == 1 && without == ',':
		f.group = '.'
	case commas == 1:
		mark = ','
	case points == 1:
		mark = '.'
	}
	group := f.group
	for _, other := range []struct {
		n int
		c byte
	}{{spaces, ' '}, {strokes, '\''}} {
		if other.n > 0 && group != 0 {
			return noNumber // grouped in two ways
		}
		if other.n > 0 {
			group = other.c
		}
	}
	if mark != 0 && without != 0 {
		return noNumber
	}
	f.whole = s
	if mark != 0 {
		f.mark = mark
		f.whole, f.frac, _ = strings.Cut(s, string(rune(mark)))
		if !allDigits(f.frac) {
			return noNumber
		}
		if f.whole == "" {
			f.whole = "0" // .5
		}
	}
	if group != 0 {
		groups := strings.Split(f.whole, string(rune(group)))
		for i, g := range groups {
			if !allDigits(g) || len(g) > 3 || i > 0 && len(g) != 3 {
				return noNumber
			}
		}
		f.whole = strings.Join(groups, "")
	}
	if !allDigits(f.whole) {
		return noNumber
	}
	f.open = mark != 0 && group == 0 && len(f.frac) == 3 && len(f.whole) <= 3 && f.whole[0] != '0'
	return fine
}

func isExponent(s string) bool {
	before, after, found := strings.Cut(strings.ToLower(s), "e")
	after = strings.TrimLeft(after, "+-")
	return found && allDigits(after) && strings.Trim(before, "0123456789.,") == "" && before != ""
}

func allDigits(s string) bool {
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return s != ""
}
