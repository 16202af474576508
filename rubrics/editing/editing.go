// Package editing is what the screen for own rubrics asks: it reads and writes
// rubric files, holds a rubric being edited to the rules of rubric files, and makes
// weights of comparisons two by two. It answers by name, JSON in and JSON out, does
// no I/O, and is loaded only where rubrics are edited.
package editing

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"

	"asfound/rubrics"
	"asfound/rubrics/appraisal"
	"asfound/rubrics/limit"
	"asfound/rubrics/pairwise"
	"asfound/rubrics/say"
)

// Tongue is the language that calls are answered in: a locale (BCP 47), and the
// engine's sentences in it as the catalogue of that language has them.
type Tongue struct {
	Locale string            `json:"locale"`
	Words  map[string]string `json:"words"`
}

// ReadRequest brings a rubric as text, or as it is being edited; one of the two.
type ReadRequest struct {
	Name   string            `json:"name"` // how messages call the file
	Text   string            `json:"text,omitempty"`
	Rubric *appraisal.Rubric `json:"rubric,omitempty"`
	// Parts is the price book a rubric may refer to, the user's own entries included.
	Parts []appraisal.Part `json:"parts"`
	// Taken are ids that an own rubric must not have.
	Taken []string `json:"taken"`
}

// RubricRead is a rubric looked through. Rubric is nil where the text gave none; Problems
// are in the order of the text.
type RubricRead struct {
	Rubric   *appraisal.Rubric `json:"rubric"`
	Problems []rubrics.Problem `json:"problems"`
	Report   *rubrics.Report   `json:"report"` // nil while there are problems
}

// WriteRequest asks for the text of a rubric.
type WriteRequest struct {
	Rubric appraisal.Rubric `json:"rubric"`
}

// Written is a rubric file.
type Written struct {
	Text string `json:"text"`
}

// WeighRequest brings answers two by two: row i, column j is how many times i
// matters more than j.
type WeighRequest struct {
	Answers [][]float64 `json:"answers"`
}

// Reply is what every call answers: a value or an error in the user's words.
type Reply struct {
	Value json.RawMessage `json:"value,omitempty"`
	Error string          `json:"error,omitempty"`
}

// Editor answers calls, in English until the call "speak" brings another Tongue. It
// is for one goroutine at a time.
type Editor struct{ voice *say.Voice }

// Call answers one call in English.
func Call(name string, argument []byte) []byte { return new(Editor).Call(name, argument) }

// Call answers one call; it never panics and always answers a Reply as JSON.
func (e *Editor) Call(name string, argument []byte) (out []byte) {
	defer func() {
		if r := recover(); r != nil {
			out = e.reply(nil, say.Errorf("the editor met a fault of its own (%v); what you entered is kept", r))
		}
	}()
	value, err := e.answer(name, argument)
	return e.reply(value, err)
}

func (e *Editor) answer(name string, argument []byte) (any, error) {
	switch name {
	case "speak":
		var q Tongue
		if err := json.Unmarshal(argument, &q); err != nil {
			return nil, err
		}
		e.voice = say.New(say.Nearest(q.Locale), q.Words)
		return true, nil
	case "read":
		var q ReadRequest
		if err := json.Unmarshal(argument, &q); err != nil {
			return nil, err
		}
		return e.read(&q), nil
	case "write":
		var q WriteRequest
		if err := json.Unmarshal(argument, &q); err != nil {
			return nil, err
		}
		text, err := rubrics.Write(q.Rubric)
		return Written{string(text)}, err
	case "weigh":
		var q WeighRequest
		if err := json.Unmarshal(argument, &q); err != nil {
			return nil, err
		}
		return pairwise.Weigh(q.Answers)
	}
	return nil, say.Errorf("no call is named %q", name)
}

func (e *Editor) read(q *ReadRequest) RubricRead {
	out := RubricRead{Rubric: q.Rubric, Problems: []rubrics.Problem{}}
	o := rubrics.Options{Parts: q.Parts, Limits: limit.All()}
	var err error
	if q.Rubric != nil {
		err = rubrics.Validate(q.Name, *q.Rubric, o)
	} else {
		var r appraisal.Rubric
		if r, err = rubrics.Decode(q.Name, []byte(q.Text), o); err == nil {
			out.Rubric = &r
		}
	}
	var problems rubrics.Problems
	switch {
	case errors.As(err, &problems):
		for _, p := range problems {
			out.Problems = append(out.Problems, p.Said(e.voice))
		}
	case err != nil:
		out.Problems = append(out.Problems, rubrics.Problem{File: q.Name, What: e.voice.Error(err)})
	}
	if out.Rubric != nil && slices.Contains(q.Taken, out.Rubric.ID) {
		out.Problems = append(out.Problems, rubrics.Problem{File: q.Name, Field: "id",
			What:  e.voice.F("%s is the id of another rubric", appraisal.Quoted(out.Rubric.ID)),
			Right: e.voice.F("an id of its own, such as %s", free(out.Rubric.ID, q.Taken))})
	}
	if out.Rubric != nil && len(out.Problems) == 0 {
		report := rubrics.Describe(out.Rubric, q.Parts)
		out.Report = &report
	}
	return out
}

// free gives an id near one that is taken.
func free(id string, taken []string) string {
	for n := 2; ; n++ {
		if next := fmt.Sprintf("%s-%d", id, n); !slices.Contains(taken, next) {
			return next
		}
	}
}

func (e *Editor) reply(value any, err error) []byte {
	r := Reply{}
	if err == nil {
		r.Value, err = json.Marshal(value)
	}
	if err != nil {
		r.Value, r.Error = nil, e.voice.Error(err)
	}
	out, err := json.Marshal(r)
	if err != nil {
		return []byte(`{"error":"the answer could not be written"}`)
	}
	return out
}
