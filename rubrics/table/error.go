package table

import "strconv"

// Error is a table or a cell that cannot be read: on which line (0 for a cell
// alone, or the file as a whole), what is wrong, what would be right.
type Error struct {
	Line  int
	What  string
	Right string
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

func refuse(line int, what, right string) *Error {
	return &Error{Line: line, What: what, Right: right}
}

// quote shows a cell in a message, shortened.
func quote(s string) string {
	if r := []rune(s); len(r) > 40 {
		s = string(r[:40]) + "..."
	}
	return strconv.Quote(s)
}
