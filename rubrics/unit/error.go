package unit

import "strconv"

// Error is an entry that cannot be read: what happened, and what would be right.
type Error struct {
	What  string
	Right string
}

func (e *Error) Error() string { return e.What + ": " + e.Right }

func refuse(what, right string) *Error { return &Error{What: what, Right: right} }

// quote shows an entry in a message, shortened.
func quote(s string) string {
	if r := []rune(s); len(r) > 40 {
		s = string(r[:40]) + "..."
	}
	return strconv.Quote(s)
}

// plain writes n without an exponent, shortest form.
func plain(n float64) string { return strconv.FormatFloat(n, 'f', -1, 64) }
