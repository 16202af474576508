package unit

import (
	"strconv"

	"asfound/rubrics/say"
)

// Error is an entry that cannot be read: what happened, and what would be right, in
// English; In says it in another language.
type Error struct {
	What  string
	Right string

	what, right say.Text
}

func (e *Error) Error() string { return e.What + ": " + e.Right }

// In says the error in a language.
func (e *Error) In(v *say.Voice) string { return e.what.In(v) + ": " + e.right.In(v) }

// Said gives the two parts of the error, to be said.
func (e *Error) Said() (what, right say.Text) { return e.what, e.right }

// refuse makes an error of two texts, each a string or a say.Text.
func refuse(what, right any) *Error {
	e := &Error{what: say.Of(what), right: say.Of(right)}
	e.What, e.Right = e.what.String(), e.right.String()
	return e
}

// quote shows an entry in a message, shortened.
func quote(s string) string {
	if r := []rune(s); len(r) > 40 {
		s = string(r[:40]) + "..."
	}
	return strconv.Quote(s)
}

// plain writes n without an exponent, shortest form.
func plain(n float64) string { return strconv.FormatFloat(n, 'f', -1, 64) }
