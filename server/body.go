package server

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net/http"
	"reflect"
	"strings"
	"time"

	"github.com/go-playground/validator/v10"

	"asfound/server/record"
)

// maxBodyDepth bounds the nesting of a body before it is unpacked. A value may have 16 levels, five are around it;
// between the two a single entry is refused instead of the whole.
const maxBodyDepth = 64

// patient gives a slow sender time as long as something comes.
type patient struct {
	io.Reader
	control *http.ResponseController
	idle    time.Duration
	end     time.Time
}

func (p *patient) Read(b []byte) (int, error) {
	limit := time.Now().Add(p.idle)
	if limit.After(p.end) {
		limit = p.end
	}
	// Not every connection has a deadline (in tests); then there is none to move.
	_ = p.control.SetReadDeadline(limit)
	return p.Reader.Read(b)
}

func (s *Server) patiently(w http.ResponseWriter, r *http.Request) io.Reader {
	return &patient{r.Body, http.NewResponseController(w), s.idle, time.Now().Add(s.whole)}
}

// readJSON reads a bounded body into v and checks it. Unknown fields are left alone: an older server serves a newer app.
func (s *Server) readJSON(w http.ResponseWriter, r *http.Request, most int64, v any) error {
	if err := wantType(r, "application/json"); err != nil {
		return err
	}
	tooLarge := problem(http.StatusRequestEntityTooLarge, "too-large", fmt.Sprintf("the request has more than %d bytes: send fewer at a time", most))
	if r.ContentLength > most {
		return tooLarge
	}
	body, err := io.ReadAll(io.LimitReader(s.patiently(w, r), most+1))
	if err != nil {
		return problem(http.StatusBadRequest, "cut-off", "the request was cut off: nothing was stored, send it again")
	}
	if int64(len(body)) > most {
		return tooLarge
	}
	if deep(body, maxBodyDepth) {
		return problem(http.StatusBadRequest, "too-deep", fmt.Sprintf("the request is nested too deep: a value may have %d levels", record.MaxValueDepth))
	}
	if err := json.Unmarshal(body, v); err != nil {
		return problem(http.StatusBadRequest, "json", plainJSON(err))
	}
	if err := s.validate.Struct(v); err != nil {
		return problem(http.StatusUnprocessableEntity, "field", plainField(err))
	}
	return nil
}

// deep tells whether brackets are nested more than most levels.
func deep(text []byte, most int) bool {
	depth, inText := 0, false
	for i := 0; i < len(text); i++ {
		switch c := text[i]; {
		case inText && c == '\\':
			i++
		case c == '"':
			inText = !inText
		case inText:
		case c == '{' || c == '[':
			if depth++; depth > most {
				return true
			}
		case c == '}' || c == ']':
			depth--
		}
	}
	return false
}

func plainJSON(err error) string {
	var kind *json.UnmarshalTypeError
	if errors.As(err, &kind) {
		if kind.Field == "" {
			return fmt.Sprintf("the request is a %s: an object is expected", kind.Value)
		}
		return fmt.Sprintf("%s: a %s is not what is expected there: %s", kind.Field, kind.Value, kindWord(kind.Type))
	}
	return "the request is not JSON: " + err.Error()
}

func kindWord(t reflect.Type) string {
	switch t.Kind() {
	case reflect.String:
		return "a text"
	case reflect.Int, reflect.Int64, reflect.Uint64:
		return "a whole number within bounds"
	case reflect.Slice:
		return "a list"
	}
	return "an object"
}

func newValidator() *validator.Validate {
	v := validator.New(validator.WithRequiredStructEnabled())
	v.RegisterTagNameFunc(func(f reflect.StructField) string {
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		return name
	})
	for tag, check := range map[string]func(string) error{
		"device": record.CheckDevice,
		"stamp":  func(s string) error { return record.Stamp(s).Check() },
	} {
		if err := v.RegisterValidation(tag, func(f validator.FieldLevel) bool { return check(f.Field().String()) == nil }); err != nil {
			panic(err) // an empty tag: a programming error
		}
	}
	return v
}

func plainField(err error) string {
	var fields validator.ValidationErrors
	if !errors.As(err, &fields) || len(fields) == 0 {
		return "a field is not as expected: " + err.Error()
	}
	f := fields[0]
	_, name, _ := strings.Cut(f.Namespace(), ".")
	switch f.Tag() {
	case "required":
		return name + " is missing"
	case "device":
		return name + ": 16 digits 0-9 and a-f, not all 0, are expected"
	case "stamp":
		return name + ": a stamp of 32 digits 0-9 and a-f, or nothing, is expected"
	case "max":
		return name + ": too large or too many: at most " + f.Param()
	case "min":
		return name + ": too small: at least " + f.Param()
	}
	return name + " is not as expected"
}
