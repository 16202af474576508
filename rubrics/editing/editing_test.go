package editing

import (
	"encoding/json"
	"os"
	"strings"
	"testing"

	"asfound/rubrics"
)

func call[T any](t *testing.T, name string, q any) T {
	t.Helper()
	text, err := json.Marshal(q)
	if err != nil {
		t.Fatal(err)
	}
	var r Reply
	if err := json.Unmarshal(Call(name, text), &r); err != nil {
		t.Fatal(err)
	}
	if r.Error != "" {
		t.Fatal(r.Error)
	}
	var out T
	if err := json.Unmarshal(r.Value, &out); err != nil {
		t.Fatal(err)
	}
	return out
}

func press(t *testing.T) ReadRequest {
	t.Helper()
	src, err := os.ReadFile("../h-frame-press.yaml")
	if err != nil {
		t.Fatal(err)
	}
	parts, err := rubrics.Parts()
	if err != nil {
		t.Fatal(err)
	}
	return ReadRequest{Name: "mine.yaml", Text: string(src), Parts: parts}
}

func TestReadAndWrite(t *testing.T) {
	q := press(t)
	read := call[RubricRead](t, "read", q)
	if read.Rubric == nil || len(read.Problems) != 0 || read.Report == nil || read.Report.Checks < 20 {
		t.Fatalf("read %v with %v", read.Rubric != nil, read.Problems)
	}
	text := call[Written](t, "write", WriteRequest{*read.Rubric}).Text
	q.Text = text
	if again := call[RubricRead](t, "read", q); len(again.Problems) != 0 || call[Written](t, "write", WriteRequest{*again.Rubric}).Text != text {
		t.Errorf("its own text comes back otherwise: %v", again.Problems)
	}
}

// What is wrong is told with its place, as text or while it is edited.
func TestReadTellsProblems(t *testing.T) {
	q := press(t)
	q.Taken = []string{"h-frame-press", "h-frame-press-2"}
	read := call[RubricRead](t, "read", q)
	if len(read.Problems) != 1 || read.Problems[0].Field != "id" || !strings.Contains(read.Problems[0].Right, "h-frame-press-3") {
		t.Errorf("an id taken gives %+v", read.Problems)
	}
	q.Taken = nil
	edited := *read.Rubric
	edited.Sections[0].Checks[0].Title = ""
	edited.Remedies[0].Ways[0].Parts = append(edited.Remedies[0].Ways[0].Parts, edited.Remedies[0].Ways[0].Parts...)
	edited.Remedies[0].Ways[0].Kind = "borrow"
	edited.Sections[0].Checks[1].Grades.Sound = "Unsafety aside, it is safe to use."
	fields := map[string]bool{}
	for _, p := range call[RubricRead](t, "read", ReadRequest{Name: "mine", Rubric: &edited, Parts: q.Parts}).Problems {
		if p.What == "" || p.Right == "" {
			t.Errorf("%+v says too little", p)
		}
		fields[p.Field] = true
	}
	for _, want := range []string{"sections[0].checks[0].title", "remedies[0].ways[0].kind", "sections[0].checks[1].grades.sound"} {
		if !fields[want] {
			t.Errorf("%s is not among the problems %v", want, fields)
		}
	}
	q.Text = strings.Repeat("x", rubrics.MaxFile+1)
	if big := call[RubricRead](t, "read", q); big.Rubric != nil || len(big.Problems) != 1 || !strings.Contains(big.Problems[0].Right, "at most") {
		t.Errorf("too large a file gives %+v", big.Problems)
	}
	q.Text, q.Parts = press(t).Text, nil
	if poor := call[RubricRead](t, "read", q); len(poor.Problems) == 0 || !strings.Contains(poor.Problems[0].What, "not in the price book") || poor.Problems[0].Line == 0 {
		t.Errorf("parts of no price book give %+v", poor.Problems)
	}
}

func TestWeigh(t *testing.T) {
	got := call[struct{ Weights []float64 }](t, "weigh", WeighRequest{[][]float64{{1, 3}, {1. / 3, 1}}})
	if len(got.Weights) != 2 || got.Weights[0] < 0.749 || got.Weights[0] > 0.751 {
		t.Errorf("weights %v", got.Weights)
	}
}

func TestUnknownCall(t *testing.T) {
	for _, c := range []struct{ name, argument, says string }{
		{"sing", "{}", "no call is named"}, {"read", "{", "unexpected end"}, {"weigh", `{"answers":[[1]]}`, "2 to 10"},
	} {
		var r Reply
		if err := json.Unmarshal(Call(c.name, []byte(c.argument)), &r); err != nil || !strings.Contains(r.Error, c.says) {
			t.Errorf("%s %s: %q, %v", c.name, c.argument, r.Error, err)
		}
	}
}
