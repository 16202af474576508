// Package say puts sentences, numbers and dates into one language. A sentence is
// written in English where it is made, as a pattern; the pattern is the key under
// which another language has its own. The package holds no texts and does no I/O.
package say

import (
	"fmt"
	"strings"
)

// Voice speaks one language in one locale. The nil Voice speaks American English,
// so that what was made without one still reads right.
type Voice struct {
	locale Locale
	words  map[string]string
}

// New makes a voice. Words are the language's own patterns by the English ones;
// none are needed for English.
func New(locale Locale, words map[string]string) *Voice {
	return &Voice{locale: locale, words: words}
}

// Locale is the locale the voice speaks in.
func (v *Voice) Locale() Locale {
	if v == nil {
		return locales[0]
	}
	return v.locale
}

// F says a pattern of fmt verbs with its arguments. Texts among them are already in
// the language; a Sayer is said here; a number under %d, %g or %.1f has the decimal
// mark of the locale, ungrouped: amounts are written by Whole, Number and their like.
// A translation may take the arguments in another order, as %[2]s.
func (v *Voice) F(pattern string, args ...any) string {
	said := make([]any, len(args))
	for i, a := range args {
		switch a := a.(type) {
		case Sayer:
			said[i] = a.In(v)
		case float64:
			said[i] = a
			if mark := v.Locale().Decimal; mark != "." {
				said[i] = marked{a, mark}
			}
		case error:
			said[i] = v.Error(a)
		default:
			said[i] = a
		}
	}
	return fmt.Sprintf(v.T(pattern), said...)
}

// T says a fixed text. What comes after apart is not said: it tells two meanings
// of one English text from each other, as in "sound" + Apart + "grade".
func (v *Voice) T(text string) string {
	if v != nil {
		if own, ok := v.words[text]; ok {
			return own
		}
	}
	said, _, _ := strings.Cut(text, Apart)
	return said
}

// Label says a text that stands in the catalogue, such as the name of a grade.
func (v *Voice) Label(text string) string { return v.T(text) }

// Pattern says a pattern that stands elsewhere as a Key, with its arguments.
func (v *Voice) Pattern(key string, args ...any) string {
	if len(args) == 0 {
		return v.T(key)
	}
	return v.F(key, args...)
}

// Apart divides an English text from the note that tells its meaning.
const Apart = "\x04"

// marked is a number that is written with another decimal mark.
type marked struct {
	x    float64
	mark string
}

// Format writes the number as the verb asks.
func (m marked) Format(f fmt.State, verb rune) {
	fmt.Fprint(f, strings.Replace(fmt.Sprintf(fmt.FormatString(f, verb), m.x), ".", m.mark, 1))
}
