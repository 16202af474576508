package say

import "errors"

// Sayer is what can be said in any language: an error, mostly. The nil Voice says
// it in English.
type Sayer interface{ In(v *Voice) string }

// Text is a sentence that is not said yet: a pattern with its arguments, as of F.
// It lets what makes a message know nothing of who reads it.
type Text struct {
	pattern string
	args    []any
}

// Later keeps a pattern and its arguments to be said when it is known in which
// language.
func Later(pattern string, args ...any) Text { return Text{pattern, args} }

// Plain is a text that is the same in every language.
func Plain(text string) Text { return Text{"%s", []any{text}} }

// In says it.
func (t Text) In(v *Voice) string {
	if len(t.args) == 0 {
		return v.T(t.pattern)
	}
	return v.F(t.pattern, t.args...)
}

func (t Text) String() string { return t.In(nil) }

// Error says an error: the first in its chain that can be said, else its own words.
func (v *Voice) Error(err error) string {
	var s interface {
		error
		Sayer
	}
	if errors.As(err, &s) {
		return s.In(v)
	}
	return err.Error()
}
