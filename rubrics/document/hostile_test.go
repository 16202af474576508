package document_test

import (
	"encoding/json"
	"strings"
	"testing"
	"unicode/utf8"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/document"
)

// TestHostileTexts: names and notes of any kind stay one inert line of text: no
// control character, no mark that turns what follows, nothing cut off unasked.
func TestHostileTexts(t *testing.T) {
	for _, name := range []string{
		strings.Repeat("W", 300), strings.Repeat("ش", 300), "<script>alert(1)</script>", "a\x00b\x1b[2J", "one\r\ntwo\ttab", "\u202eevil\u202c", "\u2066x\u2069\u200f",
		"🛠️👨‍👩‍👧", "=HYPERLINK(\"x\")", "%s%d%!", "&amp;<b>", "\u2028para\u2029", "  ",
	} {
		f := *file(t, "demo/1-lift-walked")
		f.Listing.Maker, f.Listing.Model, f.Listing.Serial, f.Listing.Title, f.Listing.Note = name, name, name, name, name
		f.Findings = map[string]appraisal.Finding{"pads": {Grade: new(int), Note: name}}
		for _, ask := range []document.Ask{
			{Kind: "estimate", Units: "inch", From: name, To: name, Contact: name, Word: name, Notes: []string{"pads"}},
			{Kind: "record", Units: "metric", From: name}, {Kind: "jobs", Units: "inch", From: name},
		} {
			d, err := document.Make(judge(t), nil, &f, ask)
			if err != nil {
				t.Fatalf("%.40q: %v", name, err)
			}
			inert(t, name, d)
			if plain := "<script>"; strings.Contains(name, plain) && !strings.Contains(d.Blocks[0].Facts[1].Value, plain) {
				t.Errorf("the text %q was changed to %q", name, d.Blocks[0].Facts[1].Value)
			}
		}
		d, err := document.Compare(judge(t), nil, []*appraisal.File{&f, &f}, nil, document.Ask{Kind: "comparison", Units: "inch"})
		if err != nil {
			t.Fatal(err)
		}
		inert(t, name, d)
	}
}

func inert(t *testing.T, name string, d *document.Document) {
	t.Helper()
	src, err := json.Marshal(d)
	if err != nil {
		t.Fatal(err)
	}
	var tree any
	if err := json.Unmarshal(src, &tree); err != nil {
		t.Fatal(err)
	}
	var visit func(v any)
	visit = func(v any) {
		switch v := v.(type) {
		case map[string]any:
			for _, x := range v {
				visit(x)
			}
		case []any:
			for _, x := range v {
				visit(x)
			}
		case string:
			if strings.ContainsAny(v, "\x00\x1b\r\n\t\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069\u200e\u200f\u2028\u2029") || !utf8.ValidString(v) {
				t.Errorf("%s of %.40q holds %q", d.Kind, name, v)
			}
		}
	}
	visit(tree)
}

// TestAskIsRefused names the field of what no paper can hold.
func TestAskIsRefused(t *testing.T) {
	dear, below := appraisal.Money(1e18), appraisal.Money(-1)
	for field, ask := range map[string]document.Ask{
		"kind":    {Kind: "brochure", Units: "inch"},
		"units":   {Kind: "estimate", Units: "ells"},
		"to":      {Kind: "estimate", Units: "inch", To: strings.Repeat("x", 301)},
		"word":    {Kind: "estimate", Units: "inch", Word: strings.Repeat("x", 4001)},
		"price":   {Kind: "estimate", Units: "inch", Price: &dear},
		"contact": {Kind: "estimate", Units: "inch", Contact: strings.Repeat("\u00e9", 301)},
	} {
		if _, err := document.Make(judge(t), nil, file(t, "demo/1-lift-walked"), ask); refusedField(err) != field {
			t.Errorf("%s: %v", field, err)
		}
	}
	if _, err := document.Make(judge(t), nil, file(t, "demo/1-lift-walked"), document.Ask{Kind: "estimate", Units: "inch", Price: &below}); refusedField(err) != "price" {
		t.Errorf("a price below nothing: %v", err)
	}
	if _, err := document.Compare(judge(t), nil, nil, nil, document.Ask{Kind: "comparison", Units: "inch"}); err == nil {
		t.Error("nothing was compared")
	}
}

func refusedField(err error) string {
	if e, ok := err.(*appraisal.Error); ok {
		return e.Field
	}
	return ""
}
