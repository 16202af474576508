package seller

import (
	"fmt"
	"reflect"
	"sort"
	"strings"
	"testing"
	"time"

	"golang.org/x/net/html"

	"asfound/rubrics/document"
)

// marker fills every text of a value with one of its own and gives them all. What a kind of block does not show is
// emptied again by the caller.
func marker(v reflect.Value, name string, found *[]string) {
	switch v.Kind() {
	case reflect.String:
		if v.String() == "" {
			v.SetString("mark-" + strings.ToLower(name))
			*found = append(*found, v.String())
		}
	case reflect.Pointer:
		if !v.IsNil() {
			marker(v.Elem(), name, found)
		}
	case reflect.Slice:
		for i := range v.Len() {
			marker(v.Index(i), fmt.Sprintf("%s-%d", name, i), found)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			marker(v.Field(i), name+"-"+v.Type().Field(i).Name, found)
		}
	}
}

var key = strings.Repeat("1", 64)

func marked() (document.Document, []string) {
	d := document.Document{Kind: "estimate", Language: "en-US", Answers: &document.AnswerWords{}, Blocks: []document.Block{
		{Kind: "heading", Level: 1}, {Kind: "text", Tone: "small"}, {Kind: "facts", Facts: make([]document.Fact, 2)}, {Kind: "list", Items: make([]string, 2)},
		{Kind: "table", Table: &document.Table{Columns: make([]document.Column, 2), Rows: []document.Row{{Cells: make([]string, 2)}, {Kind: "total", Cells: make([]string, 2)}, {Kind: "group", Cells: make([]string, 2)}}}},
		{Kind: "caution", Signal: "warning"}, {Kind: "photos", Photos: []document.Photo{{Key: key, Pair: true}, {Key: key}}},
		{Kind: "part", ID: "p", Answer: true, Blocks: []document.Block{{Kind: "heading", Level: 2}}},
	}}
	var found []string
	marker(reflect.ValueOf(&d), "d", &found)
	return d, found
}

// texts are all that a browser shows or reads out: text, and the attributes that are read.
func texts(t *testing.T, page string) map[string]bool {
	t.Helper()
	root, err := html.Parse(strings.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]bool{}
	for n := range root.Descendants() {
		switch n.Type {
		case html.TextNode:
			if s := strings.TrimSpace(n.Data); s != "" {
				found[s] = true
			}
		case html.CommentNode:
			t.Errorf("a comment: %q", n.Data)
		case html.ElementNode:
			for _, a := range n.Attr {
				if strings.HasPrefix(a.Key, "on") || a.Key == "style" || n.Data == "script" {
					t.Errorf("<%s %s=%q>", n.Data, a.Key, a.Val)
				}
				switch a.Key {
				case "alt", "title", "placeholder", "aria-label":
					found[a.Val] = true
				}
			}
		}
	}
	return found
}

// The page shows the document's texts, the language's few words, the date it expires, and nothing else at all.
func TestPageShowsTheDocumentAndNothingElse(t *testing.T) {
	d, marks := marked()
	d.Answers.Expires = "mark-expires %s"
	page := Page{
		Document: d, Base: "/s/token", Expires: time.Date(2026, 3, 9, 23, 0, 0, 0, time.UTC), Sizes: map[string]Size{key: {40, 30}}, Lines: []string{"p"},
		Answers: map[string]Answer{"p": {"agree", "mark-answer", true}}, Sent: "p",
	}
	var b strings.Builder
	if err := page.Write(&b); err != nil {
		t.Fatal(err)
	}
	allowed := map[string]bool{"mark-expires March 9, 2026": true, "mark-answer": true, "Your photo": true}
	for _, m := range marks {
		allowed[m] = true
	}
	shown := texts(t, b.String())
	for text := range shown {
		if !allowed[text] && text != "Your answer: mark-d-blocks-7-blocks-0-text" {
			t.Errorf("the page says %q", text)
		}
	}
	// What has no place on it: the words of faults, counting pages, and fields that a block's kind does not use.
	var missing []string
	for _, m := range marks {
		if !shown[m] {
			missing = append(missing, m)
		}
	}
	sort.Strings(missing)
	used := map[string]string{
		"0": "text", "1": "text", "2": "facts", "3": "items", "4": "table", "5": "text word", "6": "photos", "7": "blocks",
	}
	for _, m := range missing {
		var block, field string
		if rest, ok := strings.CutPrefix(m, "mark-d-blocks-"); ok {
			block, field, _ = strings.Cut(rest, "-")
			field, _, _ = strings.Cut(field, "-")
		}
		inner := m == "mark-d-blocks-7-blocks-0-word" || m == "mark-d-blocks-7-blocks-0-tone" || m == "mark-d-blocks-7-blocks-0-signal" || m == "mark-d-blocks-7-blocks-0-id"
		secondCell := m == "mark-d-blocks-4-table-rows-2-cells-1" || strings.HasSuffix(m, "-kind")
		if block != "" && strings.Contains(used[block], field) && !inner && !secondCell {
			t.Errorf("the page does not say %q", m)
		}
		switch m {
		case "mark-d-title", "mark-d-date", "mark-d-foot", "mark-d-answers-lead", "mark-d-answers-sent", "mark-d-answers-yours", "mark-d-answers-agree", "mark-d-answers-word":
			t.Errorf("the page does not say %q", m)
		}
	}
}

// Each fault has words in the document's language, and what was typed stays.
func TestFaultsAreSaid(t *testing.T) {
	for _, language := range []string{"en-US", "es-MX", "es-CL", "de-DE"} {
		for what := NoAnswer; what <= NotStored; what++ {
			d, _ := marked()
			d.Language = language
			page := Page{Document: d, Base: "/s/token", Lines: []string{"p"}, Fault: &Fault{Line: "p", What: what, Answer: Answer{Says: "done", Word: "typed"}}}
			var b strings.Builder
			if err := page.Write(&b); err != nil {
				t.Fatal(err)
			}
			if s := b.String(); !strings.Contains(s, `role="alert">`+page.says(what, wordsOf(language))+"<") || !strings.Contains(s, ">typed</textarea>") || !strings.Contains(s, `value="done" checked`) {
				t.Errorf("%s, fault %d: %s", language, what, s)
			}
			if page.says(what, wordsOf(language)) == "" {
				t.Errorf("%s: fault %d has no words", language, what)
			}
		}
	}
}

func TestLanguages(t *testing.T) {
	day := time.Date(2026, 3, 9, 0, 0, 0, 0, time.UTC)
	for tag, want := range map[string][2]string{
		"en-US": {"ltr", "March 9, 2026"}, "en-GB": {"ltr", "9 March 2026"}, "es-MX": {"ltr", "9 de marzo de 2026"}, "es-CL": {"ltr", "9 de marzo de 2026"}, "es": {"ltr", "9 de marzo de 2026"},
		"ar-EG": {"rtl", "March 9, 2026"}, "he": {"rtl", "March 9, 2026"},
	} {
		if got := direction(tag); got != want[0] {
			t.Errorf("%s is written %s", tag, got)
		}
		d := document.Document{Language: tag, Answers: &document.AnswerWords{Expires: "%s"}}
		if got := (&Page{Document: d, Expires: day}).view().Expiry; got != want[1] {
			t.Errorf("%s: %q", tag, got)
		}
	}
}

// Headings begin next to the title, whatever level a document begins at.
func TestHeadings(t *testing.T) {
	for top, want := range map[int]string{1: "<h2 <h4 ", 2: "<h2 <h3 ", 3: "<h2 <h2 "} {
		d := document.Document{Title: "t", Blocks: []document.Block{
			{Kind: "heading", Level: top}, {Kind: "part", Blocks: []document.Block{{Kind: "heading", Level: 3}}},
		}}
		var b strings.Builder
		if err := (&Page{Document: d}).Write(&b); err != nil {
			t.Fatal(err)
		}
		got := ""
		for part := range strings.SplitSeq(b.String(), "<h") {
			if len(part) > 1 && part[0] >= '2' && part[0] <= '6' && part[1] == ' ' {
				got += "<h" + part[:2]
			}
		}
		if got != want {
			t.Errorf("from level %d: %s", top, got)
		}
	}
}
