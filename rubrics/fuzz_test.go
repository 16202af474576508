package rubrics

import (
	"encoding/json"
	"errors"
	"reflect"
	"strings"
	"testing"

	"asfound/rubrics/appraisal"
)

// FuzzDecode: whatever comes in, there is a rubric or problems with places, never
// a panic; and what decodes is still right after it went through JSON.
func FuzzDecode(f *testing.F) {
	f.Add([]byte(fixture))
	for _, old := range []string{"version: 1", "[0.3, 0.5, 0.2]", "when: {drive: [belt]}", "title: Truck", "make:"} {
		for _, text := range []string{"", "[", "{a: {b: c}}", "? x", "- - -", "&a *a", "!!int x", "'", "\"\\x00\"", "|\n  x", ".inf", "1e400", "0x7fffffffffffffff", "null", "<<: {}", "%TAG", "---"} {
			f.Add([]byte(strings.Replace(fixture, old, text, 1)))
		}
	}
	f.Add([]byte("a: {? b}\n...\n"))
	f.Add([]byte("id: a\n...\n"))
	f.Fuzz(func(t *testing.T, src []byte) {
		r, err := Decode("fuzz.yaml", src, fixtureOptions)
		if err != nil {
			var ps Problems
			if !errors.As(err, &ps) || len(ps) == 0 {
				t.Fatalf("the error is no list of problems: %v", err)
			}
			for _, p := range ps {
				if p.Line < 1 || p.Column < 1 || p.What == "" || p.Right == "" {
					t.Fatalf("%+v leaves place, what or right empty", *p)
				}
			}
			return
		}
		text, err := Write(r)
		if err != nil {
			t.Fatal(err)
		}
		if back, err := Decode("written.yaml", text, fixtureOptions); err != nil || !reflect.DeepEqual(r, back) {
			t.Fatalf("written and read again it differs: %v\n%s", err, text)
		}
		b, err := json.Marshal(r)
		if err != nil {
			t.Fatal(err)
		}
		var again appraisal.Rubric
		if err := json.Unmarshal(b, &again); err != nil {
			t.Fatal(err)
		}
		if err := Validate("fuzz.json", again, fixtureOptions); err != nil {
			t.Fatalf("passed as YAML and not as JSON: %v", err)
		}
		c, err := json.Marshal(again)
		if err != nil || !reflect.DeepEqual(b, c) {
			t.Fatalf("JSON changed on the way: %v\n%s\n%s", err, b, c)
		}
	})
}

// FuzzDecodeBook: the same of a price book; what decodes has every amount in range.
func FuzzDecodeBook(f *testing.F) {
	const book = "dated: 2026-01-31\ncurrency: USD\nnote: Examples.\nparts:\n  - {id: pin, title: Pin, unit: piece, price: {low: 1, likely: 2, high: 3}}\n...\n"
	f.Add([]byte(book))
	for _, text := range []string{"-1", "1e3", "0.001", ".inf", ".nan", "1000000001", "0x10", "1_0", "~", "[2]", "&a 2", "'2'", "007"} {
		f.Add([]byte(strings.Replace(book, "likely: 2", "likely: "+text, 1)))
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		b, err := DecodeBook("fuzz.yaml", src)
		if err != nil {
			var ps Problems
			if !errors.As(err, &ps) || len(ps) == 0 || len(ps) > maxProblems+1 {
				t.Fatalf("no short list of problems: %v", err)
			}
			return
		}
		seen := map[string]bool{}
		for _, p := range b.Parts {
			if seen[p.ID] || p.Price.Low < 0 || p.Price.Low > p.Price.Likely || p.Price.Likely > p.Price.High || p.Price.High > 1_000_000_000_00 {
				t.Fatalf("%+v went through", p)
			}
			seen[p.ID] = true
		}
	})
}
