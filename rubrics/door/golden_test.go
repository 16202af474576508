package door_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"asfound/rubrics"
	"asfound/rubrics/door"
	"asfound/rubrics/tongue"
)

func open(t testing.TB) *door.Door {
	t.Helper()
	all, err := rubrics.All()
	if err != nil {
		t.Fatal(err)
	}
	parts, err := rubrics.Parts()
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(door.NewCatalogue(all, parts, "2026-01-01"))
	if err != nil {
		t.Fatal(err)
	}
	d, err := door.Open(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// TestGolden: the whole result of each appraisal stays what it was, to the cent.
// After a wanted change: go run ./cmd/dev golden, and read the difference.
func TestGolden(t *testing.T) {
	d := open(t)
	names, err := filepath.Glob("../../testdata/appraisals/*.json")
	if err != nil {
		t.Fatal(err)
	}
	more, err := filepath.Glob("../../testdata/demo/*.json")
	if err != nil {
		t.Fatal(err)
	}
	names = append(names, more...)
	if len(names) < 5 {
		t.Fatalf("only %d appraisals found", len(names))
	}
	for _, name := range names {
		t.Run(filepath.Base(name), func(t *testing.T) {
			src, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			var r door.Reply
			if err := json.Unmarshal(d.Call("appraise", append(append([]byte(`{"file":`), src...), '}')), &r); err != nil {
				t.Fatal(err)
			}
			if r.Error != "" {
				t.Fatal(r.Error)
			}
			var got bytes.Buffer
			if err := json.Indent(&got, r.Value, "", "  "); err != nil {
				t.Fatal(err)
			}
			got.WriteByte('\n')
			want, err := os.ReadFile("../../testdata/golden/" + filepath.Base(name))
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(got.Bytes(), want) {
				t.Errorf("the result changed: go run ./cmd/dev golden, then read git diff testdata/golden")
			}
		})
	}
}

// TestGoldenSpanish: so do the results of some in Spanish, written as in Spain.
func TestGoldenSpanish(t *testing.T) {
	d := open(t)
	learn(t, d)
	names, err := filepath.Glob("../../testdata/golden/es/*.json")
	if err != nil || len(names) < 2 {
		t.Fatalf("%d Spanish results found, %v", len(names), err)
	}
	for _, name := range names {
		t.Run(filepath.Base(name), func(t *testing.T) {
			got := appraised(t, d, fileNamed(t, filepath.Base(name)), "es-ES")
			want, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(got, want) {
				t.Errorf("the result changed: go run ./cmd/dev golden, then read git diff testdata/golden/es")
			}
		})
	}
}

// TestLanguageChangesNoFigure: in another language every figure, id and order is the
// same; only texts differ.
func TestLanguageChangesNoFigure(t *testing.T) {
	d := open(t)
	learn(t, d)
	names, err := filepath.Glob("../../testdata/*/*.json")
	if err != nil {
		t.Fatal(err)
	}
	told := 0
	for _, name := range names {
		if folder := filepath.Base(filepath.Dir(name)); folder != "appraisals" && folder != "demo" {
			continue
		}
		src := fileNamed(t, filepath.Base(name))
		english, spanish := appraised(t, d, src, ""), appraised(t, d, src, "es-ES")
		if bytes.Equal(english, spanish) {
			t.Errorf("%s: nothing is said in Spanish", name)
		}
		if a, b := figures(t, english), figures(t, spanish); a != b {
			at := 0
			for at < min(len(a), len(b)) && a[at] == b[at] {
				at++
			}
			t.Errorf("%s: the figures differ: Spanish …%.100s, English …%.100s", name, b[max(at-60, 0):], a[max(at-60, 0):])
		}
		told++
	}
	if told < 15 {
		t.Fatalf("only %d appraisals found", told)
	}
}

// learn teaches a door Spanish.
func learn(t *testing.T, d *door.Door) {
	t.Helper()
	all, err := rubrics.All()
	if err != nil {
		t.Fatal(err)
	}
	parts, err := rubrics.Parts()
	if err != nil {
		t.Fatal(err)
	}
	es, err := tongue.Load("es")
	if err != nil {
		t.Fatal(err)
	}
	own, err := es.Catalogue(door.NewCatalogue(all, parts, "2026-01-01"))
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(own)
	if err != nil {
		t.Fatal(err)
	}
	var r door.Reply
	if err := json.Unmarshal(d.Call("learn", append(append([]byte(`{"catalogue":`), text...), '}')), &r); err != nil || r.Error != "" {
		t.Fatal(err, r.Error)
	}
}

func fileNamed(t *testing.T, name string) []byte {
	t.Helper()
	for _, folder := range []string{"appraisals", "demo"} {
		if src, err := os.ReadFile("../../testdata/" + folder + "/" + name); err == nil {
			return src
		}
	}
	t.Fatalf("no appraisal is called %s", name)
	return nil
}

func appraised(t *testing.T, d *door.Door, file []byte, locale string) []byte {
	t.Helper()
	var r door.Reply
	if err := json.Unmarshal(d.Call("appraise", []byte(fmt.Sprintf(`{"file":%s,"locale":%q}`, file, locale))), &r); err != nil || r.Error != "" {
		t.Fatal(err, r.Error)
	}
	var out bytes.Buffer
	if err := json.Indent(&out, r.Value, "", "  "); err != nil {
		t.Fatal(err)
	}
	out.WriteByte('\n')
	return out.Bytes()
}

// figures are a result without its texts.
func figures(t *testing.T, result []byte) string {
	t.Helper()
	var v any
	if err := json.Unmarshal(result, &v); err != nil {
		t.Fatal(err)
	}
	var strip func(any) any
	strip = func(v any) any {
		switch v := v.(type) {
		case string:
			return ""
		case []any:
			for i := range v {
				v[i] = strip(v[i])
			}
		case map[string]any:
			for k := range v {
				v[k] = strip(v[k])
			}
		}
		return v
	}
	text, err := json.Marshal(strip(v))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// TestDoorNeverPanics: rubbish gets an answer in words.
func TestDoorAnswersRubbish(t *testing.T) {
	d := open(t)
	for _, c := range []struct{ call, argument string }{
		{"appraise", ""}, {"appraise", "{}"}, {"appraise", `{"file":7}`}, {"appraise", `{"file":{}}`},
		{"visit", "{}"}, {"visit", `{"file":null}`},
		{"prices-read", "{}"}, {"prices-read", `{"source":"aWQ7bG93","currency":"USD"}`}, {"prices-write", "{}"}, {"prices-write", `{"currency":"USD","date":"yesterday"}`},
		{"notice", "{}"}, {"notice", `{"text":7}`}, {"notice", `{"text":"lift","currency":"EUR","units":"ells"}`},
		{"compare", "{}"}, {"compare", "null"}, {"compare", `{"files":[{},{}]}`}, {"compare", `{"files":[null,null]}`}, {"compare", `{"files":7}`},
		{"comparables", "{}"}, {"comparables", `{"rubric":"two-post-lift","source":"?"}`}, {"comparables", `{"rubric":"two-post-lift","source":""}`},
		{"document", "{}"}, {"document", `{"file":null,"ask":{"kind":"estimate","units":"inch"}}`}, {"document", `{"files":[],"ask":{"kind":"comparison","units":"inch"}}`}, {"document", `{"ask":{"locale":"xx"}}`},
		{"tables", `{"files":7}`}, {"tables", `{"files":[{}]}`}, {"csv", "7"},
		{"limit", "null"}, {"limit", `{"name":"x"}`}, {"quantity", `{"text":"3 psi","dimension":"length"}`}, {"nonsense", "{}"},
	} {
		var r door.Reply
		if err := json.Unmarshal(d.Call(c.call, []byte(c.argument)), &r); err != nil || r.Error == "" {
			t.Errorf("%s %s: %v, error %q", c.call, c.argument, err, r.Error)
		}
	}
}
