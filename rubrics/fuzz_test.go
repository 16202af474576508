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
