package link

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"asfound/rubrics/document"
)

const small = `{"kind":"estimate","language":"en-US","title":"t","date":"","blocks":[{"kind":"part","id":"a","answer":true,"blocks":[{"kind":"text","text":"x"}]}],"foot":"","page":""}`

func TestReadDocument(t *testing.T) {
	if d, err := ReadDocument([]byte(small)); err != nil || d.Blocks[0].ID != "a" {
		t.Errorf("%+v, %v", d, err)
	}
	with := func(old, new string) string {
		changed := strings.Replace(small, old, new, 1)
		if changed == small {
			t.Fatalf("%q is not there", old)
		}
		return changed
	}
	for name, c := range map[string][2]string{
		"two documents":     {small + small, "after the document's end"},
		"a note behind":     {small + " x", "after the document's end"},
		"another case":      {with(`"title"`, `"worth"`), "unknown field"},
		"a list as title":   {with(`"t"`, `[]`), "title is a array"},
		"many blocks":       {with(`{"kind":"text","text":"x"}`, strings.Repeat(`{"kind":"text"},`, maxBlocks)+`{"kind":"text"}`), "more than 4000 blocks"},
		"more than a MiB":   {with(`"t"`, `"`+strings.Repeat("t", MaxDocumentBytes)+`"`), "bytes: at most"},
		"a name of 501":     {with(`"t"`, `"`+strings.Repeat("é", 501)+`"`), "501 characters"},
		"a tag of language": {with("en-US", "en_US"), "language"},
		"a long absence":    {with(`"date":""`, `"date":"","absent":"`+strings.Repeat("x", 501)+`"`), "absent"},
		"a hidden id":       {with(`{"kind":"text",`, `{"kind":"text","id":"not shown",`), "blocks[0].blocks[0] holds"},
		"a hidden word":     {with(`{"kind":"text",`, `{"kind":"text","word":"not shown",`), "blocks[0].blocks[0] holds"},
		"a hidden text":     {with(`"answer":true,`, `"answer":true,"text":"not shown",`), "blocks[0] holds"},
		"an empty part":     {with(`"id":"a"`, `"id":""`), "blocks[0].id"},
	} {
		if _, err := ReadDocument([]byte(c[0])); !errors.Is(err, ErrRefused) || !strings.Contains(err.Error(), c[1]) {
			t.Errorf("%s: %v, want %q", name, err, c[1])
		}
	}
	if _, err := ReadDocument([]byte(with(`"t"`, `"`+strings.Repeat("é", 300)+`"`))); err != nil {
		t.Errorf("a name of 300 characters: %v", err)
	}
}

// What is taken can be written and read again, and is within bounds.
func FuzzReadDocument(f *testing.F) {
	f.Add([]byte(small))
	whole, err := json.Marshal(document.Document{Kind: "estimate", Language: "es-MX", Title: "t", Answers: &document.AnswerWords{}, Blocks: []document.Block{
		{Kind: "table", Table: &document.Table{Columns: []document.Column{{Share: 100}}, Rows: []document.Row{{Cells: []string{"x"}}}}},
		{Kind: "photos", Photos: []document.Photo{{Key: strings.Repeat("1", 64)}}}, {Kind: "caution", Signal: "danger"}, {Kind: "heading", Level: 3},
	}})
	if err != nil {
		f.Fatal(err)
	}
	f.Add(whole)
	f.Fuzz(func(t *testing.T, text []byte) {
		d, err := ReadDocument(text)
		if err != nil {
			if !errors.Is(err, ErrRefused) {
				t.Error(err)
			}
			return
		}
		again, err := json.Marshal(d)
		if err != nil {
			t.Fatal(err)
		}
		if len(again) <= MaxDocumentBytes {
			if _, err := ReadDocument(again); err != nil {
				t.Errorf("%s: %v", again, err)
			}
		}
		if d.Kind != "estimate" || len(d.Blocks) == 0 {
			t.Errorf("taken: %s", again)
		}
	})
}
