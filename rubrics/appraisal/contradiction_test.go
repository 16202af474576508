package appraisal

import (
	"strings"
	"testing"
)

func TestContradictionsAreNoted(t *testing.T) {
	r := testRubric()
	rope := &r.Sections[0].Checks[2]
	rope.Limit = &Limit{Name: "rope-diameter", Ask: []string{"nominal", "measured"}, Within: "sound", Watch: "worn", Beyond: "failed"}
	judge := NewJudge([]Rubric{r}, []Part{{ID: "part", Title: "Part", Unit: "each"}})
	rods := func(measured float64, g *int) Finding {
		return Finding{Grade: g, Measured: map[string]Quantity{"nominal": {0.375, "in"}, "measured": {measured, "in"}}}
	}
	four, zero := 4, 0
	for _, c := range []struct {
		name     string
		phase    string
		findings map[string]Finding
		says     string // "": no note at all
	}{
		{"graded where it does not apply", "one", map[string]Finding{"only": grade(0)}, "Point only: a finding stands here, but by the facts told the point does not apply: the finding is kept, and counts for nothing."},
		{"measured where it does not apply", "one", map[string]Finding{"only": {Measured: map[string]Quantity{"x": {1, "in"}}}}, "Point only: a finding stands here"},
		{"skipped where it does not apply", "one", map[string]Finding{"only": {Skipped: "no-time"}}, ""},
		{"graded where it applies", "three", map[string]Finding{"only": grade(0)}, ""},
		{"as new, but worn through", "three", map[string]Finding{"rope": rods(0.2, &four)}, "Point rope: graded as new, but what was measured is beyond its limit: it counts as failed."},
		{"failed, though it measures full", "three", map[string]Finding{"rope": rods(0.375, &zero)}, ""},
		{"measured only", "three", map[string]Finding{"rope": rods(0.2, nil)}, ""},
		{"scrap among as new", "three", map[string]Finding{"weld": grade(0), "lock": grade(4), "rope": grade(4), "hose": grade(4)}, "Point weld rules repair out, and all else that was checked is as new: look there once more. Until then it counts as found."},
		{"scrap among few", "three", map[string]Finding{"weld": grade(0), "lock": grade(4), "rope": grade(4)}, ""},
		{"scrap among sound", "three", map[string]Finding{"weld": grade(0), "lock": grade(4), "rope": grade(4), "hose": grade(4), "paint": grade(3)}, ""},
		{"all as new", "three", map[string]Finding{"weld": grade(4), "lock": grade(4), "rope": grade(4), "hose": grade(4)}, ""},
	} {
		f := testFile()
		f.Facts, f.Findings = map[string]string{"phase": c.phase}, c.findings
		res, err := judge.Of(f, Ask{})
		if err != nil {
			t.Fatal(err)
		}
		notes := strings.Join(res.Notes, "\n")
		if (c.says == "") != (notes == "") || !strings.Contains(notes, c.says) {
			t.Errorf("%s: notes %q, want %q", c.name, notes, c.says)
		}
		if c.name == "scrap among as new" && res.Verdict.Code != "do-not-use" {
			t.Errorf("a note softened the verdict: %s", res.Verdict.Code)
		}
		// What does not apply changes nothing but the notes.
		if c.phase == "one" {
			f.Findings = nil
			without, err := judge.Of(f, Ask{})
			if err != nil {
				t.Fatal(err)
			}
			if without.Hidden.Mean != res.Hidden.Mean || without.Hidden.Care != res.Hidden.Care || without.Estimate.Mean != res.Estimate.Mean || without.Progress != res.Progress {
				t.Errorf("%s: it counts for something", c.name)
			}
		}
	}
}
