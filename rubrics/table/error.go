package table

import (
	"strconv"

	"asfound/rubrics/say"
)

// Error is a table or a cell that cannot be read: on which line (0 for a cell
// alone, or the file as a whole), what is wrong, what would be right, in English; In
// says it in another language.
type Error struct {
	Line  int
	What  string
	Right string

	what, right say.Text
}

func (e *Error) Error() string {
	s := e.What
	if e.Line > 0 {
		s = "line " + strconv.Itoa(e.Line) + ": " + s
	}
	if e.Right != "" {
		s += ": " + e.Right
	}
	return s
}

// In says the error in a language.
func (e *Error) In(v *say.Voice) string {
	s := e.what.In(v)
	if e.Line > 0 {
		s = v.F("line %d", e.Line) + ": " + s
	}
	if right := e.right.In(v); right != "" {
		s += ": " + right
	}
	return s
}

// Said gives what is wrong and what would be right, to be said.
func (e *Error) Said() (what, right say.Text) { return e.what, e.right }

// refuse makes an error of two texts, each a string or a say.Text.
func refuse(line int, what, right any) *Error {
	e := &Error{Line: line, what: say.Of(what), right: say.Of(right)}
	e.What, e.Right = e.what.String(), e.right.String()
	return e
}

// quote shows a cell in a message, shortened.
func quote(s string) string {
	if r := []rune(s); len(r) > 40 {
		s = string(r[:40]) + "..."
	}
	return strconv.Quote(s)
}
