package printing

import (
	"encoding/json"
	"strings"
	"testing"

	"asfound/rubrics/document/form"
)

func TestCall(t *testing.T) {
	ask := func(name string, q any, photo func(int) []byte) (string, error) {
		argument, err := json.Marshal(q)
		if err != nil {
			t.Fatal(err)
		}
		out, err := Call(name, argument, photo)
		return string(out), err
	}
	doc := form.Document{Title: "日", Blocks: []form.Block{{Kind: "photos", Photos: []form.Photo{{Key: "b", Caption: "c"}}}}}
	asked := -1
	out, err := ask("pdf", PDFRequest{doc, "a4", []string{"a", "b"}}, func(i int) []byte { asked = i; return nil })
	if err != nil || !strings.HasPrefix(out, "%PDF-") || asked != 1 {
		t.Errorf("pdf: %v, photo %d was asked for, want 1", err, asked)
	}
	if out, err := ask("uncovered", UncoveredRequest{doc}, nil); err != nil || out != `["日"]` {
		t.Errorf("uncovered: %s, %v", out, err)
	}
	for _, c := range []struct{ name, argument, want string }{
		{"pdf", `{"page":"a5"}`, `page "a5": say letter or a4`},
		{"pdf", `{`, "the document cannot be read: unexpected end of JSON input"},
		{"fax", `{}`, `no call is named "fax"`},
	} {
		if _, err := Call(c.name, []byte(c.argument), nil); err == nil || err.Error() != c.want {
			t.Errorf("%s %s: %v, want %s", c.name, c.argument, err, c.want)
		}
	}
	// A fault while drawing is told, not passed on.
	if _, err := ask("pdf", PDFRequest{doc, "a4", []string{"b"}}, func(int) []byte { panic("gone") }); err == nil || !strings.Contains(err.Error(), "a fault of its own (gone)") {
		t.Errorf("a fault: %v", err)
	}
}
