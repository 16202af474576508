package table

import (
	"strconv"
	"strings"

	"asfound/rubrics/say"
)

// Date reads a cell as a date and gives it as YYYY-MM-DD. Only dates with strokes
// or dashes and both parts up to 12 depend on dayFirst. A month alone gives its
// first day, a year alone the 1st of July. Errors are *Error without line.
func Date(cell string, dayFirst bool) (string, error) {
	d := datePattern(cell)
	if d.kind == notDate {
		return "", noDate(cell)
	}
	day, month := d.first, d.second
	if d.kind == ordered && (d.second > 12 || !dayFirst && d.first <= 12) {
		day, month = month, day
	}
	if !ofThisAge(d.year) {
		return "", refuse(0, say.Later("%s is not of this age", quote(cell)), "a year from 1900 to 2200")
	}
	if month < 1 || month > 12 || day < 1 || day > daysIn(d.year, month) {
		return "", refuse(0, say.Later("there is no day %s", quote(cell)), "write it like 2025-12-31")
	}
	return strconv.Itoa(d.year) + "-" + two(month) + "-" + two(day), nil
}

// ofThisAge bounds the years as an appraisal's are: another one is a slip.
func ofThisAge(year int) bool { return year >= 1900 && year <= 2200 }

func noDate(cell string) *Error {
	s := strings.TrimSpace(cell)
	switch {
	case s == "":
		return refuse(0, "it is empty", "write a date like 2025-12-31")
	case s[0] == '=' || s[0] == '@':
		return refuse(0, say.Later("%s is a formula, not a date", quote(cell)), "paste values")
	case len(s) == 5 && allDigits(s):
		return refuse(0, say.Later("%s is a spreadsheet's number of a day", quote(cell)), "give the column a date format and save it again")
	}
	return refuse(0, say.Later("%s is no date", quote(cell)), "write it like 2025-12-31")
}

// Order is what a column of dates shows of its order.
type Order struct {
	Day, Month int   // how many dates can only have the day first, or the month
	Open       []int // which cells can be read in both ways
}

// OrderOf looks through the cells of a column of dates.
func OrderOf(cells []string) Order {
	var o Order
	for i, c := range cells {
		d := datePattern(c)
		switch {
		case d.kind != ordered || !ofThisAge(d.year) || min(d.first, d.second) < 1 || max(d.first, d.second) > 31:
		case d.first > 12 && d.second <= 12:
			o.Day++
		case d.second > 12 && d.first <= 12:
			o.Month++
		case d.first != d.second && d.first <= 12:
			o.Open = append(o.Open, i)
		}
	}
	return o
}

type dateKind int

const (
	notDate dateKind = iota
	settled          // first is the day, second the month
	ordered          // by the order of the column
)

type dateParts struct {
	kind                dateKind
	first, second, year int
}

// datePattern takes a date apart by its form, without looking into a calendar.
func datePattern(cell string) dateParts {
	s := strings.TrimSpace(cell)
	if len(s) < 4 || len(s) > maxNumberText {
		return dateParts{}
	}
	if i := strings.IndexByte(s, ':'); i > 0 { // a time of day after it
		if i = strings.LastIndexAny(s[:i], "T ,"); i < 0 {
			return dateParts{}
		}
		s = strings.TrimRight(s[:i], " ,")
	}
	mark := byte(0)
	for i := range len(s) {
		switch c := s[i]; {
		case c >= '0' && c <= '9':
		case (c == '-' || c == '/' || c == '.') && (mark == 0 || mark == c):
			mark = c
		default:
			return writtenDate(s)
		}
	}
	if mark == 0 {
		return bareDate(s)
	}
	p := strings.Split(s, string(rune(mark)))
	n, ok := numbers(p)
	switch {
	case !ok:
	case len(p) == 3 && len(p[0]) == 4 && len(p[1]) <= 2 && len(p[2]) <= 2:
		return dateParts{settled, n[2], n[1], n[0]}
	case len(p) == 3 && len(p[0]) <= 2 && len(p[1]) <= 2 && (len(p[2]) == 4 || len(p[2]) == 2):
		kind := ordered
		if mark == '.' {
			kind = settled
		}
		return dateParts{kind, n[0], n[1], century(p[2], n[2])}
	case len(p) == 2 && len(p[0]) == 4 && len(p[1]) <= 2 && mark != '.': // 2025.5 is a number
		return dateParts{settled, 1, n[1], n[0]}
	case len(p) == 2 && len(p[1]) == 4 && len(p[0]) <= 2 && mark != '.':
		return dateParts{settled, 1, n[0], n[1]}
	}
	return dateParts{}
}

// bareDate reads 2025 and 20251231.
func bareDate(s string) dateParts {
	switch n, ok := numbers([]string{s}); {
	case !ok:
	case len(s) == 4 && ofThisAge(n[0]):
		return dateParts{settled, 1, 7, n[0]}
	case len(s) == 8:
		return dateParts{settled, n[0] % 100, n[0] / 100 % 100, n[0] / 10000}
	}
	return dateParts{}
}

// writtenDate reads a date with the name of its month.
func writtenDate(s string) dateParts {
	var rest []string
	month := 0
	for _, w := range strings.Fields(Fold(s)) {
		if m := months[w]; m > 0 {
			if month > 0 {
				return dateParts{}
			}
			month = m
			continue
		}
		if w == "de" || w == "del" || w == "of" {
			continue
		}
		if len(w) > 2 && !allDigits(w) { // 3rd, 1er
			w = strings.TrimRight(w, "abcdefghijklmnopqrstuvwxyz")
		}
		rest = append(rest, w)
	}
	n, ok := numbers(rest)
	switch {
	case month == 0 || !ok:
	case len(rest) == 1 && len(rest[0]) == 4:
		return dateParts{settled, 1, month, n[0]}
	case len(rest) == 2 && len(rest[0]) <= 2 && (len(rest[1]) == 4 || len(rest[1]) == 2):
		return dateParts{settled, n[0], month, century(rest[1], n[1])}
	case len(rest) == 2 && len(rest[0]) == 4 && len(rest[1]) <= 2:
		return dateParts{settled, n[1], month, n[0]}
	}
	return dateParts{}
}

func numbers(texts []string) ([]int, bool) {
	out := make([]int, len(texts))
	for i, s := range texts {
		n, err := strconv.Atoi(s)
		if err != nil || !allDigits(s) || len(s) > 8 {
			return nil, false
		}
		out[i] = n
	}
	return out, true
}

// century completes a year of two digits (POSIX strptime, %y).
func century(text string, n int) int {
	switch {
	case len(text) != 2:
		return n
	case n >= 69:
		return 1900 + n
	}
	return 2000 + n
}

func daysIn(year, month int) int {
	switch {
	case month == 2 && year%4 == 0 && (year%100 != 0 || year%400 == 0):
		return 29
	case month == 2:
		return 28
	case month == 4 || month == 6 || month == 9 || month == 11:
		return 30
	}
	return 31
}

func two(n int) string {
	s := strconv.Itoa(n)
	if len(s) < 2 {
		s = "0" + s
	}
	return s
}
