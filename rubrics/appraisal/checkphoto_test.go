package appraisal

import (
	"encoding/json"
	"fmt"
	"reflect"
	"strings"
	"testing"
)

func TestMarksAreBounded(t *testing.T) {
	hash, other := strings.Repeat("a", 64), strings.Repeat("b", 64)
	finding := func(marks string) string {
		return strings.Replace(plainFile, `"listing"`, `"findings":{"lock":{"photos":[{"hash":"`+hash+`","marks":[`+marks+`]}]}},"listing"`, 1)
	}
	pairs := func(list string) string {
		return strings.Replace(plainFile, `"listing"`, `"findings":{"lock":{"photos":[{"hash":"`+hash+`"},{"hash":"`+other+`"}],"pairs":[`+list+`]}},"listing"`, 1)
	}
	mark := func(id, rest string) string { return `{"id":"` + id + `","from":[0,0],"to":[0.5,1],` + rest + `}` }
	scale := `"kind":"scale","length":{"n":2,"unit":"in"}`
	many := make([]string, 41)
	for i := range many {
		many[i] = mark(fmt.Sprint(i), `"kind":"arrow"`)
	}
	for _, c := range []struct{ name, src, says string }{
		{"outside of the picture", finding(`{"id":"a","kind":"arrow","from":[0,0],"to":[0.5,1.01]}`), "findings.lock.photos[0].marks[0].to: 1.01 lies outside of the picture: 0 to 1"},
		{"before the picture", finding(`{"id":"a","kind":"arrow","from":[-0.1,0],"to":[0,0]}`), "marks[0].from: -0.1 lies outside"},
		{"one coordinate", finding(`{"id":"a","kind":"arrow","from":[0],"to":[0,0]}`), "marks[0].from: found a list: write a list of 2 in brackets"},
		{"no end", finding(`{"id":"a","kind":"arrow","from":[0,0]}`), "marks[0].to: it is missing"},
		{"an unknown kind", finding(mark("a", `"kind":"spray"`)), `marks[0].kind: "spray" is no mark: one of arrow, circle, text, scale, measure`},
		{"no id", finding(mark("", `"kind":"arrow"`)), "marks[0].id"},
		{"an id twice", finding(mark("a", `"kind":"arrow"`) + "," + mark("a", `"kind":"circle"`)), `marks[1].id: "a" stands twice`},
		{"a long label", finding(mark("a", `"kind":"arrow","label":"`+strings.Repeat("x", 61)+`"`)), "marks[0].label: 61 characters: at most 60"},
		{"a text without words", finding(mark("a", `"kind":"text"`)), "marks[0].label: a text without words"},
		{"a scale without length", finding(mark("a", `"kind":"scale"`)), "marks[0].length: the scale says no length"},
		{"a scale of nothing", finding(mark("a", `"kind":"scale","length":{"n":0,"unit":"in"}`)), "marks[0].length: 0 is no length"},
		{"a scale in pounds", finding(mark("a", `"kind":"scale","length":{"n":2,"unit":"lb"}`)), `marks[0].length.unit: "lb" is no unit of length here: one of mm, cm, m, in, ft`},
		{"a scale that is a point", finding(`{"id":"a","from":[0,0],"to":[0,0],` + scale + `}`), "marks[0]: the scale has no length in the picture"},
		{"two scales", finding(mark("a", scale) + "," + mark("b", scale)), "marks[1]: this is a second one: one scale on a photo"},
		{"a measured length that is kept", finding(mark("a", `"kind":"measure","length":{"n":2,"unit":"in"}`)), "marks[0].length: what is measured by a scale is worked out from it"},
		{"41 marks", finding(strings.Join(many, ",")), "findings.lock.photos[0].marks: 41 are too many: at most 40"},
		{"marks of the listing", strings.Replace(plainFile, `"title":"Invented"`, `"title":"Invented","photos":[{"hash":"`+hash+`","marks":[`+mark("a", `"kind":"spray"`)+`]}]`, 1), "listing.photos[0].marks[0].kind"},
		{"a pair of one photo", pairs(`{"before":"` + hash + `","after":"` + hash + `"}`), "findings.lock.pairs[0]: before and after are the same one"},
		{"a pair with another's photo", pairs(`{"before":"` + hash + `","after":"` + strings.Repeat("c", 64) + `"}`), "findings.lock.pairs[0].after: cccccccccccc is none of its photos"},
		{"a pair of no photos", pairs(`{"before":"x","after":"y"}`), `pairs[0].before: "x" is no photo hash`},
		{"41 pairs", pairs(strings.Repeat(`{"before":"`+hash+`","after":"`+other+`"},`, 40) + `{"before":"` + hash + `","after":"` + other + `"}`), "findings.lock.pairs: 41 are too many"},
	} {
		if _, err := Decode([]byte(c.src)); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want it to say %q", c.name, err, c.says)
		}
	}
	whole := finding(mark("a", `"kind":"arrow","label":"worn"`) + "," + mark("b", scale) + "," + mark("c", `"kind":"measure"`))
	if _, err := Decode([]byte(whole)); err != nil {
		t.Errorf("good marks: %v", err)
	}
	if _, err := Decode([]byte(pairs(`{"before":"` + hash + `","after":"` + other + `"}`))); err != nil {
		t.Errorf("a good pair: %v", err)
	}
}

func TestMarksSurviveAFile(t *testing.T) {
	src := strings.Replace(plainFile, `"title":"Invented"`, `"title":"Invented","photos":[{"hash":"`+strings.Repeat("a", 64)+
		`","marks":[{"id":"a","kind":"scale","from":[0.25,0],"to":[1,0.125],"label":"plate","length":{"n":2,"unit":"in"},"ink":"red"}]}]`, 1)
	d, err := Decode([]byte(src))
	if err != nil {
		t.Fatal(err)
	}
	out, err := d.Encode()
	if err != nil {
		t.Fatal(err)
	}
	var got, want any
	if err := json.Unmarshal(out, &got); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal([]byte(src), &want); err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got %s", out)
	}
}

// What is drawn or laid side by side is shown and never judged: a length from a
// picture must not reach a limit.
func TestMarksChangeNoJudgement(t *testing.T) {
	hash := strings.Repeat("a", 64)
	judged := func(photo Photo) *Result {
		f := testFile()
		f.Findings = map[string]Finding{"lock": grade(1), "hose": {Photos: []Photo{photo}}}
		r, err := testJudge().Of(f, Ask{})
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	drawn := []PhotoMark{{ID: "a", Kind: "scale", To: [2]float64{1, 0}, Length: &Quantity{N: 2, Unit: "in"}}, {ID: "b", Kind: "measure", To: [2]float64{0.5, 0}}}
	if !reflect.DeepEqual(judged(Photo{Hash: hash}), judged(Photo{Hash: hash, Marks: drawn})) {
		t.Error("marks on a photo changed the judgement")
	}
}
