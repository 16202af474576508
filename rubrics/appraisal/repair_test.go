package appraisal_test

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"testing"

	"asfound/rubrics"
	"asfound/rubrics/appraisal"
)

// TestRepairOfTheRest: leaving out any lines, or any findings, gives the estimate of
// a file in which their findings were never made.
func TestRepairOfTheRest(t *testing.T) {
	t.Parallel()
	jd := carriedJudge(t)
	luck := rand.New(rand.NewPCG(5, 7))
	seen := 0
	for _, pattern := range []string{"../../testdata/appraisals/*.json", "../../testdata/demo/*.json"} {
		names, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range names {
			f := fileOf(t, name)
			whole, err := jd.RepairOf(f, appraisal.LeftOut{})
			if err != nil {
				t.Fatal(err)
			}
			if len(whole.Scrap) > 0 {
				continue // its estimate is the loss of the whole, not that of its lines
			}
			same(t, name, jd, f, whole.Estimate)
			for range 4 {
				var byLine, byCheck appraisal.LeftOut
				rest := *f
				rest.Findings = map[string]appraisal.Finding{}
				for id, x := range f.Findings {
					rest.Findings[id] = x
				}
				for _, l := range whole.Estimate.Lines {
					if l.Kind == "remedy" && luck.IntN(2) == 0 {
						byLine.Lines = append(byLine.Lines, l.ID)
						byCheck.Checks = append(byCheck.Checks, l.Because...)
						for _, id := range l.Because {
							delete(rest.Findings, id)
						}
						seen++
					}
				}
				for _, left := range []appraisal.LeftOut{byLine, byCheck} {
					part, err := jd.RepairOf(f, left)
					if err != nil {
						t.Fatal(err)
					}
					same(t, name, jd, &rest, part.Estimate)
				}
			}
		}
	}
	if seen < 100 {
		t.Errorf("only %d lines were left out in all", seen)
	}
}

func same(t *testing.T, name string, jd *appraisal.Judge, f *appraisal.File, got appraisal.Estimate) {
	t.Helper()
	want, err := jd.Of(f, appraisal.Ask{})
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(got, want.Estimate) {
		t.Errorf("%s: %d lines come to %d, %d, %d, not to %d lines of %d, %d, %d", filepath.Base(name),
			len(got.Lines), got.Low, got.Median, got.High, len(want.Estimate.Lines), want.Estimate.Low, want.Estimate.Median, want.Estimate.High)
	}
}

// TestRepairOfScrap: where a finding rules repair out, the estimate is its lines and
// the hauling, whatever a sound one is worth.
func TestRepairOfScrap(t *testing.T) {
	jd := carriedJudge(t)
	f := fileOf(t, "../../testdata/appraisals/lift-cracked-column.json")
	before, err := jd.RepairOf(f, appraisal.LeftOut{})
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(before.Scrap, []string{"column-welds"}) || before.Estimate.Lines[0].ID != "haul" {
		t.Fatalf("scrap for %v, first line %q", before.Scrap, before.Estimate.Lines[0].ID)
	}
	low, high := appraisal.Money(0), appraisal.Money(0)
	for _, l := range before.Estimate.Lines {
		low, high = low+l.Cost.Low, high+l.Cost.High
	}
	if e := before.Estimate; e.Low < low || e.High > 2*high {
		t.Errorf("%d to %d is none of lines of %d to %d", e.Low, e.High, low, high)
	}
	f.Comparables, f.NewPrice = nil, nil
	after, err := jd.RepairOf(f, appraisal.LeftOut{})
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(before.Estimate, after.Estimate) {
		t.Error("what others sold for changes what the repair costs")
	}
	none, err := jd.RepairOf(f, appraisal.LeftOut{Checks: []string{"column-welds"}})
	if err != nil {
		t.Fatal(err)
	}
	if len(none.Scrap) != 0 || none.Estimate.Lines[0].ID == "haul" {
		t.Errorf("left out, it still brings %v and the line %q", none.Scrap, none.Estimate.Lines[0].ID)
	}
}

// TestPreparationLeftOut takes its cost out, and no other line.
func TestPreparationLeftOut(t *testing.T) {
	jd := carriedJudge(t)
	f := fileOf(t, "../../testdata/demo/1-lift-walked.json")
	all, err := jd.RepairOf(f, appraisal.LeftOut{})
	if err != nil {
		t.Fatal(err)
	}
	rest, err := jd.RepairOf(f, appraisal.LeftOut{Lines: []string{"drain-refill"}})
	if err != nil {
		t.Fatal(err)
	}
	if len(rest.Estimate.Lines) != len(all.Estimate.Lines)-1 || rest.Estimate.Mean >= all.Estimate.Mean {
		t.Errorf("%d of %d lines, mean %d of %d", len(rest.Estimate.Lines), len(all.Estimate.Lines), rest.Estimate.Mean, all.Estimate.Mean)
	}
}

func carriedJudge(t testing.TB) *appraisal.Judge {
	t.Helper()
	all, err := rubrics.All()
	if err != nil {
		t.Fatal(err)
	}
	parts, err := rubrics.Parts()
	if err != nil {
		t.Fatal(err)
	}
	return appraisal.NewJudge(all, parts)
}

func fileOf(t testing.TB, name string) *appraisal.File {
	t.Helper()
	src, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	d, err := appraisal.Decode(src)
	if err != nil {
		t.Fatal(err)
	}
	return &d.File
}
