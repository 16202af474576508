package document

import (
	"strconv"
	"strings"
	"unicode"
)

// plain makes a text that people entered harmless on paper: one line, no control
// characters, and none of the marks that turn the direction of what follows. Words
// of any script stay as they are.
func plain(s string) string {
	return strings.Join(strings.Fields(strings.Map(printable, s)), " ")
}

// lines does so and keeps the lines of the text, empty ones left out.
func lines(s string) []string {
	var out []string
	for _, l := range strings.Split(strings.ReplaceAll(s, "\r", "\n"), "\n") {
		if l = plain(l); l != "" {
			out = append(out, l)
		}
	}
	return out
}

func printable(c rune) rune {
	switch {
	case c >= '\u202a' && c <= '\u202e', c >= '\u2066' && c <= '\u2069', c == '\u200e', c == '\u200f', c == '\u061c', c == '\ufeff':
		return -1
	case c == '\t', c == '\u2028', c == '\u2029', unicode.IsControl(c):
		return ' '
	}
	return c
}

// quoted shows an entry in a message, cut where it is long.
func quoted(s string) string {
	if r := []rune(s); len(r) > 40 {
		s = string(r[:40]) + "..."
	}
	return strconv.Quote(s)
}
