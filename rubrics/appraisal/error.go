package appraisal

import "fmt"

// Error is an input the engine refuses: which field, what is wrong, what would
// be right.
type Error struct {
	Field string
	What  string
	Right string
}

func (e *Error) Error() string {
	s := e.What
	if e.Field != "" {
		s = e.Field + ": " + s
	}
	if e.Right != "" {
		s += ": " + e.Right
	}
	return s
}

func refuse(field, right, format string, args ...any) *Error {
	return &Error{Field: field, What: fmt.Sprintf(format, args...), Right: right}
}
