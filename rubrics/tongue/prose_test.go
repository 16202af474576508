package tongue

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"asfound/rubrics"
	"asfound/rubrics/appraisal"
	"asfound/rubrics/door"
	"asfound/rubrics/limit"
	"asfound/rubrics/say"
)

func catalogue(t *testing.T) door.Catalogue {
	t.Helper()
	all, err := rubrics.All()
	if err != nil {
		t.Fatal(err)
	}
	book, err := rubrics.PriceBook()
	if err != nil {
		t.Fatal(err)
	}
	return door.NewCatalogue(all, book.Parts, book.Dated)
}

// texts of a value that people read, each once, in order.
func texts(value any) []string {
	var out []string
	seen := map[string]bool{}
	say.Prose(value, func(s *string) {
		if !seen[*s] {
			seen[*s] = true
			out = append(out, *s)
		}
	})
	return out
}

func load(t *testing.T, language string) *Tongue {
	t.Helper()
	l, err := Load(language)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// TestLabels: every label of the catalogue and of the tables is in every language.
func TestLabels(t *testing.T) {
	c := catalogue(t)
	c.Rubrics, c.Parts, c.Limits, c.Subjects = nil, nil, nil, nil
	labels := texts(&c)
	fields := slices.Clone(appraisal.ImportFields)
	labels = append(labels, texts(&fields)...)
	if len(labels) < 60 {
		t.Fatalf("only %d labels found", len(labels))
	}
	for _, language := range Languages {
		l := load(t, language)
		for _, english := range labels {
			if _, ok := l.prose("labels", english); !ok {
				t.Errorf("%s/labels.yaml lacks %q", language, english)
			}
		}
		for english := range l.files["labels"] {
			if !slices.Contains(labels, english) {
				t.Errorf("%s/labels.yaml: nothing is labelled %q", language, english)
			}
		}
	}
}

// TestProse: a file of a language has all that people read of its rubric, and nothing
// else. A rubric without a file is still English there, which is told and no error.
func TestProse(t *testing.T) {
	c := catalogue(t)
	for _, language := range Languages {
		l := load(t, language)
		hold := func(name string, english []string) {
			if !l.Has(name) {
				t.Logf("%s/%s.yaml is not there: %d texts stay English", language, name, len(english))
				return
			}
			for _, e := range english {
				if _, ok := l.prose(name, e); !ok {
					t.Errorf("%s/%s.yaml lacks %q", language, name, e)
				}
			}
			for e := range l.files[name] {
				if !slices.Contains(english, e) {
					t.Errorf("%s/%s.yaml: the rubric does not say %q", language, name, e)
				}
			}
		}
		for i := range c.Rubrics {
			hold(c.Rubrics[i].ID, texts(&c.Rubrics[i]))
		}
		hold("parts", texts(&c.Parts))
	}
}

// TestTranslatedRubricsKeepTheRules: an appraisal may bring its rubric along, so a
// translated one must pass what every rubric must pass, lengths of texts included.
func TestTranslatedRubricsKeepTheRules(t *testing.T) {
	c := catalogue(t)
	for _, language := range Languages {
		own, err := load(t, language).Catalogue(c)
		if err != nil {
			t.Fatal(err)
		}
		for i := range own.Rubrics {
			r := &own.Rubrics[i]
			if err := rubrics.Validate(language+"/"+r.ID, *r, rubrics.Options{Parts: own.Parts, Limits: limit.All()}); err != nil {
				t.Error(err)
			}
		}
	}
}

// TestCatalogue: what a program reads by is the same in every language, and the
// English catalogue is left as it was.
func TestCatalogue(t *testing.T) {
	c := catalogue(t)
	before, err := json.Marshal(c)
	if err != nil {
		t.Fatal(err)
	}
	for _, language := range Languages {
		own, err := load(t, language).Catalogue(c)
		if err != nil {
			t.Fatal(err)
		}
		if own.Language != language || len(own.Words) < 1000 {
			t.Errorf("%s: language %q, %d words", language, own.Language, len(own.Words))
		}
		if own.Grades[0] == c.Grades[0] || own.Reasons[0].Title == c.Reasons[0].Title || own.Criteria[0].Title == c.Criteria[0].Title {
			t.Errorf("%s: labels stay English: %q, %q, %q", language, own.Grades[0], own.Reasons[0].Title, own.Criteria[0].Title)
		}
		if a, b := bare(t, c), bare(t, own); a != b {
			at := 0
			for at < min(len(a), len(b)) && a[at] == b[at] {
				at++
			}
			t.Errorf("%s: more than prose differs: …%.120s, English …%.120s", language, b[max(at-40, 0):], a[max(at-40, 0):])
		}
	}
	after, err := json.Marshal(c)
	if err != nil {
		t.Fatal(err)
	}
	if string(before) != string(after) {
		t.Error("translating changed the English catalogue")
	}
}

// bare is a catalogue without what people read, and without the words by which a
// listing's text is known, as JSON.
func bare(t *testing.T, c door.Catalogue) string {
	t.Helper()
	var out door.Catalogue
	if err := copied(c, &out); err != nil {
		t.Fatal(err)
	}
	out.Language, out.Words = "", nil
	say.Prose(&out, func(s *string) { *s = "" })
	for i := range out.Rubrics {
		out.Rubrics[i].Words = nil
		for k := range out.Rubrics[i].Facts {
			for n := range out.Rubrics[i].Facts[k].Options {
				out.Rubrics[i].Facts[k].Options[n].Words = nil
			}
		}
	}
	for i := range out.Limits {
		for k := range out.Limits[i].Quantities {
			out.Limits[i].Quantities[k].Titles = nil
		}
	}
	text, err := json.Marshal(out)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// TestFilesAreReadStrictly: a slip in a file is told with its line.
func TestFilesAreReadStrictly(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"twice", "- en: a\n  es: b\n- en: c\n  es: d\n- en: a\n  es: e\n", `x.yaml:5: "a" stands on line 1 already`},
		{"empty", "- en: a\n  es: \"\"\n", "x.yaml:1: es is missing or empty"},
		{"missing", "- en: a\n  es: b\n- en: c\n", "x.yaml:3: es is missing or empty"},
		{"unknown key", "- en: a\n  fr: b\n", `x.yaml:2: "fr" is no key of a pair: en or es`},
		{"no text", "- en: a\n  es: 7\n", "x.yaml:2: es is no text: put it in quotes"},
		{"no list", "en: a\nes: b\n", "x.yaml:1: a list of pairs belongs here"},
		{"no pair", "- a\n", "x.yaml:1: a pair belongs here"},
		{"no YAML", "- en: \"a\n", "x.yaml: "},
	} {
		if _, err := read("x.yaml", "es", []byte(c.text)); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
	got, err := read("x.yaml", "es", []byte("# note\n- en: \"a %s\\x04note\"\n  es: |-\n    b\n    c\n- en: 'no'\n  es: ni\n"))
	if err != nil || got["a %s\x04note"] != "b\nc" || got["no"] != "ni" {
		t.Errorf("%q, %v", got, err)
	}
}
