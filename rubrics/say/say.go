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

// F says a pattern of fmt verbs with its arguments. Every argument is a string
// that is already in the language: figures are written by Number, Whole and their
// like, since languages write them differently. A translation may take the
// arguments in another order, as %[2]s.
func (v *Voice) F(pattern string, args ...any) string {
	return fmt.Sprintf(v.T(pattern), args...)
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

// Apart divides an English text from the note that tells its meaning.
const Apart = "\x04"
