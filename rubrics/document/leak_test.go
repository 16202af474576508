package document_test

import (
	"bytes"
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/document"
	"asfound/rubrics/document/marked"
)

func pair(t *testing.T) (a, b *appraisal.File, marks []marked.Mark) {
	t.Helper()
	r, err := judge(t).Rubric("two-post-lift")
	if err != nil {
		t.Fatal(err)
	}
	a, b, marks, err = marked.Files(r)
	if err != nil {
		t.Fatal(err)
	}
	return a, b, marks
}

func paperOf(t *testing.T, f *appraisal.File, ask document.Ask) []byte {
	t.Helper()
	d, err := document.Make(judge(t), nil, f, ask)
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(d)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// TestNothingLeaks: the seller's paper holds no mark of a private field, and two
// files that differ in every private field give the same paper to the byte.
func TestNothingLeaks(t *testing.T) {
	a, b, marks := pair(t)
	price := appraisal.Money(123456)
	for _, ask := range []document.Ask{
		{Kind: "estimate", Units: "inch"},
		{Kind: "estimate", Units: "metric", From: "F", To: "T", Contact: "C", Word: "W", Price: &price},
		{Kind: "estimate", Units: "inch", LeaveLines: []string{"pads"}, LeaveChecks: []string{"cable-wires"}, LeavePhotos: []string{"none"}},
	} {
		one, other := paperOf(t, a, ask), paperOf(t, b, ask)
		if told := marked.Told(one, marks); told != nil {
			t.Errorf("%+v tells:\n%s", ask, strings.Join(told, "\n"))
		}
		if !bytes.Equal(one, other) {
			i := 0
			for i < len(one) && i < len(other) && one[i] == other[i] {
				i++
			}
			t.Errorf("%+v: a private field changes the paper from byte %d: %.80s, %.80s", ask, i, one[max(0, i-40):], other[max(0, i-40):])
		}
		for _, clock := range []string{"17:18", "03:04"} {
			if bytes.Contains(one, []byte(clock)) {
				t.Errorf("it tells the hour of a photo, %s", clock)
			}
		}
	}
}

// TestMarksAreFound: the search is no search if what may be told is not found.
func TestMarksAreFound(t *testing.T) {
	a, _, marks := pair(t)
	paper := paperOf(t, a, document.Ask{Kind: "estimate", Units: "inch", Notes: []string{"pads"}})
	for _, path := range []string{"listing.maker", "listing.model", "listing.serial", "findings.pads.note"} {
		i := slices.IndexFunc(marks, func(m marked.Mark) bool { return m.Path == path })
		if i < 0 || !bytes.Contains(paper, []byte(marks[i].Text)) {
			t.Errorf("%s is not in the paper", path)
		}
	}
	if told := marked.Told(paper, marks); len(told) != 1 || !strings.HasPrefix(told[0], "findings.pads.note") {
		t.Errorf("a note that was asked for is all that is told, not %v", told)
	}
}
