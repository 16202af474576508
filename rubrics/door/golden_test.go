package door_test

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"asfound/rubrics"
	"asfound/rubrics/door"
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
