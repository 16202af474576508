package notice

import (
	"strconv"
	"strings"
)

// figure is a number of the text and how it may be read.
type figure struct {
	first, last int     // tokens
	n           float64 // the usual reading
	other       float64 // the other one, 0 where there is none
	thousands   bool    // written with a k
	comma       bool    // the mark that leaves it open is a comma
	whole       bool
}

// most bounds what is read as a figure at all.
const mostFigure = 1e9

// read reads the digits of one token; open means that its mark may group or part.
func read(s string) (n, other float64, ok bool) {
	if len(s) > 18 {
		return 0, 0, false
	}
	s = strings.ReplaceAll(s, "'", "")
	points, commas := strings.Count(s, "."), strings.Count(s, ",")
	group, decimal := "", ""
	switch {
	case points > 0 && commas > 0:
		group, decimal = ",", "."
		if strings.LastIndexByte(s, ',') > strings.LastIndexByte(s, '.') {
			group, decimal = ".", ","
		}
	case points > 1:
		group = "."
	case commas > 1:
		group = ","
	case points == 1:
		decimal = "."
	case commas == 1:
		decimal = ","
	}
	whole, frac := s, ""
	if decimal != "" {
		whole, frac, _ = strings.Cut(s, decimal)
	}
	if group != "" {
		groups := strings.Split(whole, group)
		for i, g := range groups {
			if i > 0 && len(g) != 3 || len(g) > 3 {
				return 0, 0, false
			}
		}
		whole = strings.Join(groups, "")
	}
	if !allDigits(whole) || frac != "" && !allDigits(frac) {
		return 0, 0, false
	}
	n, err := strconv.ParseFloat(whole+"."+frac+"0", 64)
	if err != nil || n > mostFigure {
		return 0, 0, false
	}
	if group == "" && len(frac) == 3 && len(whole) <= 3 && whole[0] != '0' {
		thousands, err := strconv.ParseFloat(whole+frac, 64)
		if err == nil {
			return thousands, n, true
		}
	}
	return n, 0, true
}

// figureAt reads the figure that begins with token i: a number, a fraction, a
// mixed number, one with k for thousands, or one grouped by a blank where what
// follows shows that it is one.
func (r *reading) figureAt(i int) (figure, bool) {
	if !r.number(i) || r.tokens[i].taken {
		return figure{}, false
	}
	n, other, ok := read(r.tokens[i].text)
	if !ok {
		return figure{}, false
	}
	f := figure{first: i, last: i, n: n, other: other, comma: strings.Contains(r.tokens[i].text, ","), whole: allDigits(r.tokens[i].text)}
	if f.whole {
		if part, ok := r.fraction(i); ok {
			f.n, f.last, f.whole = part, i+2, false
			return f, true
		}
		k := i + 1
		if r.is(k, "-") && r.glued(k) && r.glued(k+1) {
			k++
		}
		if part, ok := r.fraction(k); ok && n < 1000 && part < 1 && (k > i+1 || !r.glued(k)) {
			f.n, f.last, f.whole = n+part, k+2, false
			return f, true
		}
		if part := vulgar(r, i+1); part > 0 && n < 1000 {
			f.n, f.last, f.whole = n+part, i+1, false
			return f, true
		}
	}
	if r.is(i+1, "k") && r.glued(i+1) && n < 10_000 {
		if other != 0 { // 1.234k has decimals
			n = other
		}
		f.n, f.other, f.last, f.thousands, f.whole = float64(n*1000), 0, i+1, true, true
		return f, f.n <= mostFigure
	}
	return f, true
}

// fraction reads a/b of token i to i+2, with a denominator as rules have them.
func (r *reading) fraction(i int) (float64, bool) {
	if !r.number(i) || !r.is(i+1, "/", "⁄") || !r.glued(i+1) || !r.number(i+2) || !r.glued(i+2) || r.is(i+3, "/") || r.tokens[i].taken {
		return 0, false
	}
	a, err := strconv.Atoi(r.tokens[i].text)
	if err != nil || a == 0 || a > 63 {
		return 0, false
	}
	switch r.tokens[i+2].text {
	case "2", "3", "4", "8", "16", "32", "64":
		b, _ := strconv.Atoi(r.tokens[i+2].text)
		return float64(a) / float64(b), a < b || b == 2 || b == 4
	}
	return 0, false
}

func vulgar(r *reading, i int) float64 {
	if i >= len(r.tokens) || !r.tokens[i].glued {
		return 0
	}
	switch r.tokens[i].text {
	case "½":
		return 0.5
	case "¼":
		return 0.25
	case "¾":
		return 0.75
	}
	return 0
}

// spaced reads 2 400 and 3 000 as one figure: three digits behind one to three,
// one blank between. Whether it is meant so, the caller must know.
func (r *reading) spaced(i int) (figure, bool) {
	if !r.number(i) || !r.number(i+1) || r.tokens[i].taken || r.tokens[i+1].taken {
		return figure{}, false
	}
	a, b := &r.tokens[i], &r.tokens[i+1]
	if len(a.text) > 3 || a.text[0] == '0' || !allDigits(a.text) || len(b.text) != 3 || !allDigits(b.text) || a.line != b.line || b.start-a.end > 3 ||
		r.number(i+2) && !r.tokens[i+2].glued || r.is(i-1, "/", "-") && r.glued(i) {
		return figure{}, false
	}
	n, err := strconv.Atoi(a.text + b.text)
	return figure{first: i, last: i + 1, n: float64(n), whole: true}, err == nil
}

// yearOf is the year that four digits are, 0 for none.
func yearOf(s string) int {
	if len(s) != 4 || !allDigits(s) {
		return 0
	}
	n, _ := strconv.Atoi(s)
	if n < 1900 || n > 2100 {
		return 0
	}
	return n
}
