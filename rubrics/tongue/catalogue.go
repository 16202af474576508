package tongue

import (
	"encoding/json"
	"slices"
	"strings"
	"sync"
	"unicode/utf8"

	"asfound/rubrics"
	"asfound/rubrics/appraisal"
	"asfound/rubrics/door"
	"asfound/rubrics/limit"
	"asfound/rubrics/say"
)

var rubricNames = sync.OnceValue(func() map[string]bool {
	out := map[string]bool{}
	all, err := rubrics.All()
	if err != nil {
		return out // it is told where the rubrics themselves are asked for
	}
	for i := range all {
		out[all[i].ID] = true
	}
	return out
})

// Catalogue is a catalogue in the language. A text that is not translated stays
// English. What is given is left as it is.
func (t *Tongue) Catalogue(c door.Catalogue) (door.Catalogue, error) {
	var out door.Catalogue
	if err := copied(c, &out); err != nil {
		return out, err
	}
	for i := range out.Rubrics {
		t.rubric(&out.Rubrics[i])
	}
	t.put("parts", &out.Parts)
	t.limits(out.Limits)
	t.put("limits", &out.Subjects)
	// The rest of the catalogue is labels; what was put above is looked for again in
	// vain, since it is not English any more.
	rest := out
	rest.Rubrics, rest.Parts, rest.Limits, rest.Subjects = nil, nil, nil, nil
	t.put("labels", &rest)
	rest.Rubrics, rest.Parts, rest.Limits, rest.Subjects = out.Rubrics, out.Parts, out.Limits, out.Subjects
	rest.Language, rest.Words = t.Language, t.Words()
	return rest, nil
}

// Rubrics are the embedded rubrics and the price book in the language.
func (t *Tongue) Rubrics() ([]appraisal.Rubric, []appraisal.Part, error) {
	all, err := rubrics.All()
	if err != nil {
		return nil, nil, err
	}
	parts, err := rubrics.Parts()
	if err != nil {
		return nil, nil, err
	}
	for i := range all {
		t.rubric(&all[i])
	}
	t.put("parts", &parts)
	return all, parts, nil
}

// rubric puts one rubric into the language. What a seller's text may have for the kind
// and its answers keeps the English besides: listings are read in both.
func (t *Tongue) rubric(r *appraisal.Rubric) {
	r.Words = withEnglish(r.Words, r.Kind)
	for i := range r.Facts {
		for k := range r.Facts[i].Options {
			o := &r.Facts[i].Options[k]
			if head, _, _ := strings.Cut(o.Title, ","); strings.Contains(head, " ") {
				o.Words = withEnglish(o.Words, head)
			}
		}
	}
	t.put(r.ID, r)
}

// withEnglish adds a title to the words of a text, as far as a rubric may have them.
func withEnglish(words []string, title string) []string {
	if len(words) >= mostWords || utf8.RuneCountInString(title) > longestWord {
		return words
	}
	return append(slices.Clone(words), title)
}

// What a rubric may have, by the rules of appraisal.Rubric.
const mostWords, longestWord = 20, 40

// limits puts the limits into the language; a word to choose gets a title where the
// language has one.
func (t *Tongue) limits(all []limit.Definition) {
	for i := range all {
		for k := range all[i].Quantities {
			q := &all[i].Quantities[k]
			if len(q.Titles) > 0 {
				continue
			}
			titles, found := make([]string, len(q.Words)), false
			for n, word := range q.Words {
				own, ok := t.prose("limits", word)
				titles[n], found = own, found || ok
			}
			if found {
				q.Titles = titles
			}
		}
	}
	t.put("limits", &all)
}

// put puts every text of a value into the language, looked up in a file first.
func (t *Tongue) put(file string, value any) {
	say.Prose(value, func(text *string) { *text, _ = t.prose(file, *text) })
}

// copied is a copy that shares nothing.
func copied(from, to any) error {
	text, err := json.Marshal(from)
	if err != nil {
		return err
	}
	return json.Unmarshal(text, to)
}
