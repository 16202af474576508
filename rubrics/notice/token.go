package notice

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

type tokenKind byte

const (
	word   tokenKind = iota // letters
	number                  // digits with the marks between them
	mark                    // one character of anything else
	web                     // an address of the web
)

// token is a piece of the text.
type token struct {
	kind       tokenKind
	start, end int
	text       string // as written
	fold       string // of a word: lower case, its usual form (see plainWord)
	glued      bool   // nothing stands between it and the token before
	first      bool   // it begins a line
	line       int    // from 0, blank lines not counted
	taken      bool   // of no figure: phone number, date, code ...
	dated      bool   // it belongs to a date
	priced     bool   // it was read as a price
}

// tokens takes a text apart.
func tokens(text string) []token {
	var out []token
	line, fresh, end := -1, true, -1
	for i := 0; i < len(text); {
		c, size := utf8.DecodeRuneInString(text[i:])
		if c == '\n' || c == '\r' || c == '\u2028' {
			fresh = true
			i += size
			continue
		}
		if unicode.IsSpace(c) || unicode.IsControl(c) || invisible(c) {
			i += size
			continue
		}
		t := token{start: i, kind: mark, first: fresh, glued: i == end && !fresh}
		if fresh {
			line++
		}
		fresh = false
		t.line = line
		switch {
		case webBegins(text[i:]):
			t.kind = web
			for i < len(text) {
				c, size := utf8.DecodeRuneInString(text[i:])
				if unicode.IsSpace(c) || c == '<' || c == '>' || c == '"' {
					break
				}
				i += size
			}
			i = t.start + len(strings.TrimRight(text[t.start:i], ".,;:!?)]'"))
		case isDigit(c):
			t.kind = number
			i = numberEnd(text, i)
		case unicode.IsLetter(c):
			t.kind = word
			i = wordEnd(text, i)
		default:
			i += size
		}
		t.end = i
		t.text = text[t.start:i]
		if t.kind == word {
			t.fold = plainWord(t.text)
		}
		end = i
		out = append(out, t)
	}
	return out
}

// invisible characters join or direct what they stand in, and part nothing.
func invisible(c rune) bool {
	return c >= '\u200b' && c <= '\u200f' || c >= '\u202a' && c <= '\u202e' || c == '\ufeff' || c == '\u00ad' || c == '\ufe0f'
}

func isDigit(c rune) bool { return c >= '0' && c <= '9' }

func webBegins(s string) bool {
	for _, p := range []string{"http://", "https://", "www."} {
		if len(s) > len(p) && strings.EqualFold(s[:len(p)], p) {
			return true
		}
	}
	return false
}

// numberEnd goes over digits, and over single marks between digits.
func numberEnd(s string, i int) int {
	for i < len(s) {
		switch c := s[i]; {
		case c >= '0' && c <= '9':
			i++
		case (c == '.' || c == ',' || c == '\'') && i+1 < len(s) && s[i+1] >= '0' && s[i+1] <= '9':
			if c == '\'' && !threeDigits(s[i+1:]) { // 11'6" is feet and inches
				return i
			}
			i += 2
		default:
			return i
		}
	}
	return i
}

func threeDigits(s string) bool {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n == 3
}

func wordEnd(s string, i int) int {
	for i < len(s) {
		c, size := utf8.DecodeRuneInString(s[i:])
		if !unicode.IsLetter(c) && !(c >= 0x300 && c <= 0x36f) {
			if (c == '\'' || c == '’') && i+size < len(s) {
				if next, _ := utf8.DecodeRuneInString(s[i+size:]); unicode.IsLetter(next) { // isn't
					i += size
					continue
				}
			}
			return i
		}
		i += size
	}
	return i
}

// longest is the length in bytes of a word worth comparing.
const longest = 40

var accents = strings.NewReplacer(
	"ä", "a", "á", "a", "à", "a", "â", "a", "ã", "a", "å", "a", "ç", "c", "é", "e", "è", "e", "ê", "e", "ë", "e", "í", "i", "ì", "i",
	"î", "i", "ï", "i", "ñ", "n", "ö", "o", "ó", "o", "ò", "o", "ô", "o", "õ", "o", "ü", "u", "ú", "u", "ù", "u", "û", "u", "ß", "ss", "’", "'",
)

// plainWord is the form in which words are compared: lower case, without accents.
func plainWord(s string) string {
	if len(s) > longest {
		return ""
	}
	s = strings.ToLower(s)
	for i := range len(s) {
		if s[i] >= utf8.RuneSelf {
			return accents.Replace(s)
		}
	}
	return s
}

// is tells whether token i is one of the words.
func (r *reading) is(i int, words ...string) bool {
	if i < 0 || i >= len(r.tokens) {
		return false
	}
	t := &r.tokens[i]
	for _, w := range words {
		if t.kind == word && t.fold == w || t.kind == mark && t.text == w {
			return true
		}
	}
	return false
}

// number tells whether token i is a number.
func (r *reading) number(i int) bool {
	return i >= 0 && i < len(r.tokens) && r.tokens[i].kind == number
}

// glued tells whether token i is there and touches the one before.
func (r *reading) glued(i int) bool { return i > 0 && i < len(r.tokens) && r.tokens[i].glued }

// shortened words are written with a point that ends no sentence.
var shortened = set("approx", "mfg", "mfd", "mfr", "cap", "yr", "wt", "no", "ca", "max", "min", "vac", "lbs", "lb", "hrs", "hr", "ph", "in", "ft", "mi", "nr", "bj", "o", "b", "incl", "orig", "ser", "mod", "kg")

// stops tells whether token i ends a thought, looking back or on from a figure.
func (r *reading) stops(i int) bool {
	switch t := &r.tokens[i]; {
	case t.kind != mark:
		return false
	case t.text == ".":
		return !(t.glued && i > 0 && shortened[r.tokens[i-1].fold])
	}
	switch r.tokens[i].text {
	case ",", ";", "!", "?", "(", ")", "[", "]", "•", "·", "|", "*":
		return true
	}
	return false
}

// before finds a word of the set among the most words that stand before token i
// in the same thought.
func (r *reading) before(i, most int, words map[string]bool) (at int, ok bool) {
	line := r.tokens[i].line
	for k, reach := i-1, i-2*most-1; k >= 0 && k >= reach && most > 0; k-- {
		t := &r.tokens[k]
		if t.line != line || r.stops(k) {
			break
		}
		if t.kind == word {
			if words[t.fold] {
				return k, true
			}
			most--
		}
	}
	return 0, false
}

// after finds a word of the set among the most words that follow token i.
func (r *reading) after(i, most int, words map[string]bool) (at int, ok bool) {
	line := r.tokens[i].line
	for k, reach := i+1, i+2*most+1; k < len(r.tokens) && k <= reach && most > 0; k++ {
		t := &r.tokens[k]
		if t.line != line || r.stops(k) {
			break
		}
		if t.kind == word {
			if words[t.fold] {
				return k, true
			}
			most--
		}
	}
	return 0, false
}

func set(words ...string) map[string]bool {
	m := make(map[string]bool, len(words))
	for _, w := range words {
		m[w] = true
	}
	return m
}
