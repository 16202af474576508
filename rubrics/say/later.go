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

// ByKey keeps a text that stands elsewhere as a Key.
func ByKey(key string) Text { return Fill(key) }

// Fill keeps a pattern that stands elsewhere as a Key, with its arguments.
func Fill(key string, args ...any) Text { return Text{key, args} }

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

// Key marks an English text that is said elsewhere, by Label; it gives it back.
func Key(text string) string { return text }

// Of is a text to be said later: a Text as it is, an error by its own words, a string
// by its own pattern.
func Of(text any) Text {
	switch t := text.(type) {
	case Text:
		return t
	case error:
		return Later("%s", t)
	}
	return ByKey(text.(string))
}

// Errorf is an error of a pattern and its arguments, which can be said.
func Errorf(pattern string, args ...any) error { return failure{Later(pattern, args...)} }

type failure struct{ Text }

func (f failure) Error() string { return f.String() }
