package door

import (
	"bytes"
	"encoding/json"
	"fmt"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/notice"
	"asfound/rubrics/say"
)

// tongue is all that the door knows in one language.
type tongue struct {
	language string
	words    map[string]string
	judge    *appraisal.Judge
	ids      []string
	raw      map[string]json.RawMessage // the rubrics as they were given
	kinds    []notice.Kind              // as a listing's text is read for them, once asked for
	dated    string                     // day of the example prices
}

// hear takes in a catalogue as JSON. A rubric is read when it is first asked for:
// all of them together take longer than a start may.
func hear(catalogue []byte) (*tongue, error) {
	var c struct {
		Language   string            `json:"language"`
		Words      map[string]string `json:"words"`
		Rubrics    []json.RawMessage `json:"rubrics"`
		Parts      []appraisal.Part  `json:"parts"`
		PartsDated string            `json:"parts_dated"`
	}
	if err := json.Unmarshal(catalogue, &c); err != nil {
		return nil, fmt.Errorf("the catalogue of rubrics cannot be read: %w", err)
	}
	t := &tongue{language: c.Language, words: c.Words, ids: make([]string, len(c.Rubrics)), raw: map[string]json.RawMessage{}, dated: c.PartsDated}
	for i, text := range c.Rubrics {
		var err error
		if t.ids[i], err = idOf(text); err != nil {
			return nil, fmt.Errorf("rubric %d of the catalogue cannot be read: %w", i+1, err)
		}
		t.raw[t.ids[i]] = text
	}
	late := func(id string) (*appraisal.Rubric, error) {
		var r appraisal.Rubric
		err := json.Unmarshal(t.raw[id], &r)
		return &r, err
	}
	t.judge = appraisal.NewLateJudge(t.ids, late, c.Parts)
	return t, nil
}

// idOf reads the id of a rubric, which NewCatalogue writes first.
func idOf(text []byte) (string, error) {
	d := json.NewDecoder(bytes.NewReader(text))
	for _, want := range []json.Token{json.Delim('{'), "id"} {
		if got, err := d.Token(); err != nil || got != want {
			return "", fmt.Errorf("it does not begin with its id (%v)", got)
		}
	}
	var id string
	err := d.Decode(&id)
	return id, err
}

// Learn takes in the catalogue of another language, or of one anew.
func (d *Door) Learn(catalogue []byte) error {
	t, err := hear(catalogue)
	if err == nil {
		d.tongues[t.language] = t
	}
	return err
}

// asking is how one call is answered: by what is known in the language of its
// locale, in that voice.
type asking struct {
	*tongue
	voice *say.Voice
}

// in finds the language of a locale such as es-MX; "" is the language the door was
// opened with. A language that was not learned is answered in that one too, with
// the numbers of the locale.
func (d *Door) in(locale string) asking {
	l := say.Nearest(locale)
	t, ok := d.tongues[l.Language]
	if locale == "" || !ok {
		t = d.tongues[d.first]
	}
	if locale == "" && l.Language != t.language {
		l = say.Nearest(t.language)
	}
	return asking{t, say.New(l, t.words)}
}

// judgeFor is a judge that speaks the language of a locale such as es-MX, and the
// voice it speaks with. A language that the door has not learned is refused.
func (d *Door) judgeFor(locale string) (*appraisal.Judge, *say.Voice, error) {
	if language := say.Nearest(locale).Language; locale != "" && d.tongues[language] == nil {
		return nil, nil, say.Errorf("the language of %.20q was not loaded: load it and ask again", locale)
	}
	a := d.in(locale)
	return a.judge.In(a.voice), a.voice, nil
}
