package appraisal

import "asfound/rubrics/say"

// Error is an input the engine refuses: which field, what is wrong, what would
// be right, in English; In says it in another language.
type Error struct {
	Field string
	What  string
	Right string

	line        int // of the file, in place of a field
	what, right say.Text
}

func (e *Error) Error() string { return joined(e.Field, e.What, e.Right) }

// In says the error in a language.
func (e *Error) In(v *say.Voice) string {
	field := e.Field
	if e.line > 0 {
		field = v.F("line %d", e.line)
	}
	return joined(field, e.what.In(v), e.right.In(v))
}

func joined(field, what, right string) string {
	if field != "" {
		what = field + ": " + what
	}
	if right != "" {
		what += ": " + right
	}
	return what
}

// refuse makes an error of a field. Right is a text, or a say.Text with arguments.
func refuse(field string, right any, format string, args ...any) *Error {
	e := &Error{Field: field, what: say.Fill(format, args...), right: say.Of(right)}
	e.What, e.Right = e.what.String(), e.right.String()
	return e
}

// refuseLine makes an error of a line of the file.
func refuseLine(line int, right any, format string, args ...any) *Error {
	e := refuse("", right, format, args...)
	e.line = line
	e.Field = say.Later("line %d", line).String()
	return e
}

// Refuse makes an error of a field for what reads input beside the engine.
func Refuse(field string, right, what say.Text) *Error { return refuse(field, right, "%s", what) }
