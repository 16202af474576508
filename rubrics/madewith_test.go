package rubrics

import (
	"encoding/json"
	"errors"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"asfound/rubrics/appraisal"

	"pgregory.net/rapid"
)

func walked(t *testing.T) *appraisal.File {
	t.Helper()
	src, err := os.ReadFile("../testdata/demo/1-lift-walked.json")
	if err != nil {
		t.Fatal(err)
	}
	doc, err := appraisal.Decode(src)
	if err != nil {
		t.Fatal(err)
	}
	return &doc.File
}

func rubricOf(t *testing.T, id string) appraisal.Rubric {
	t.Helper()
	for _, r := range load(t) {
		if r.ID == id {
			return r
		}
	}
	t.Fatalf("no rubric %s", id)
	return appraisal.Rubric{}
}

// A file that brings its rubric is judged by it, and by the same one as if the
// program carried it.
func TestMadeWith(t *testing.T) {
	parts, err := Parts()
	if err != nil {
		t.Fatal(err)
	}
	f := walked(t)
	r := rubricOf(t, f.Rubric.ID)
	f.Rubric.Version = r.Version
	plain, err := appraisal.NewJudge([]appraisal.Rubric{r}, parts).Of(f, appraisal.Ask{})
	if err != nil {
		t.Fatal(err)
	}
	f.MadeWith = &r
	brought, err := appraisal.NewJudge(nil, parts).Of(f, appraisal.Ask{})
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(plain, brought) {
		t.Error("the same rubric judges otherwise when the file brings it")
	}
	f.Rubric.Version++
	if _, err := appraisal.NewJudge(nil, parts).Of(f, appraisal.Ask{}); err == nil || !strings.Contains(err.Error(), "made_with.id") {
		t.Errorf("another version was taken: %v", err)
	}
}

// A part that is in no book is told, and an own part of that id is priced.
func TestOwnParts(t *testing.T) {
	f := walked(t)
	r := rubricOf(t, f.Rubric.ID)
	judge := appraisal.NewJudge([]appraisal.Rubric{r}, nil)
	res, err := judge.Of(f, appraisal.Ask{})
	if err != nil {
		t.Fatal(err)
	}
	missing := ""
	for _, n := range res.Notes {
		if strings.Contains(n, "is not in the price book") {
			missing = n
		}
	}
	if missing == "" {
		t.Fatal("parts without a price were not told")
	}
	id := strings.Split(missing, `"`)[1]
	f.Parts = []appraisal.Part{{ID: id, Title: "Own", Unit: "piece", Price: appraisal.Range{Low: 100, Likely: 200, High: 300}}}
	again, err := judge.Of(f, appraisal.Ask{})
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range again.Notes {
		if n == missing {
			t.Errorf("an own part counts for nothing: %s", n)
		}
	}
	f.Parts[0].Price.Low = 400
	if _, err := judge.Of(f, appraisal.Ask{}); err == nil || !strings.Contains(err.Error(), "parts[0].price.likely") {
		t.Errorf("a falling price was taken: %v", err)
	}
}

// However a rubric is spoilt: where the file rules take it, the engine takes it;
// and the engine never panics on what it takes.
func TestGuardIsNoStricterThanTheFileRules(t *testing.T) {
	o, err := embedded()
	if err != nil {
		t.Fatal(err)
	}
	f := walked(t)
	text, err := json.Marshal(rubricOf(t, f.Rubric.ID))
	if err != nil {
		t.Fatal(err)
	}
	f.Findings = map[string]appraisal.Finding{}
	taken, refused := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		var tree any
		if err := json.Unmarshal(text, &tree); err != nil {
			t.Fatal(err)
		}
		spoilt, err := json.Marshal(spoil(t, tree))
		if err != nil {
			t.Fatal(err)
		}
		var r appraisal.Rubric
		if json.Unmarshal(spoilt, &r) != nil {
			return
		}
		f := *f
		f.Rubric = appraisal.RubricRef{ID: r.ID, Version: r.Version}
		f.MadeWith = &r
		_, err = appraisal.NewJudge(nil, o.Parts).Of(&f, appraisal.Ask{})
		valid := Validate("spoilt", r, o) == nil
		if err != nil {
			refused++
			var e *appraisal.Error
			if !errors.As(err, &e) || e.Field == "" || e.What == "" {
				t.Fatalf("the refusal names no field: %v", err)
			}
			if valid && strings.HasPrefix(e.Field, "made_with") {
				t.Fatalf("the file rules take it, the engine refuses: %v", err)
			}
			return
		}
		taken++
	})
	if taken == 0 || refused == 0 {
		t.Errorf("%d taken, %d refused: the property was not tested", taken, refused)
	}
}

// spoil replaces one value anywhere in a tree.
func spoil(t *rapid.T, v any) any {
	switch v := v.(type) {
	case map[string]any:
		keys := make([]string, 0, len(v))
		for k := range v {
			keys = append(keys, k)
		}
		if len(keys) == 0 {
			return v
		}
		k := rapid.SampledFrom(sortedStrings(keys)).Draw(t, "key")
		if rapid.IntRange(0, 9).Draw(t, "drop") == 0 {
			delete(v, k)
		} else {
			v[k] = spoil(t, v[k])
		}
		return v
	case []any:
		if len(v) == 0 || rapid.IntRange(0, 19).Draw(t, "empty") == 0 {
			return []any{}
		}
		i := rapid.IntRange(0, len(v)-1).Draw(t, "item")
		if rapid.IntRange(0, 9).Draw(t, "twice") == 0 {
			return append(v, v[i])
		}
		v[i] = spoil(t, v[i])
		return v
	case float64:
		return rapid.SampledFrom([]float64{0, -1, 1, 0.5, 2, 1e6, 1e13}).Draw(t, "number")
	case string:
		return rapid.SampledFrom([]string{"", "x", "danger", "<script>alert(1)</script>", v + v}).Draw(t, "text")
	}
	return v
}

func sortedStrings(s []string) []string {
	slices.Sort(s)
	return s
}
