package appraisal

import (
	"strings"
	"testing"
)

func TestChanges(t *testing.T) {
	from, to := testRubric(), testRubric()
	grade := 1
	f := testFile()
	f.Findings = map[string]Finding{"rope": {Grade: &grade}, "weld": {Grade: &grade}}
	f.Facts = map[string]string{"phase": "one"}
	f.Landing = map[string]LandingChoice{"drive": {Off: true}}
	if got := Changes(&from, &to, f); len(got) != 0 {
		t.Fatalf("the same rubric has changes: %v", got)
	}
	checks := to.Sections[0].Checks
	checks[0].Weight.Safety = 7                         // weld, found
	checks[3].Hazard = "danger"                         // hose, not found
	checks[2].ID, checks[2].Title = "strand", "Strands" // rope, found, is gone
	to.Facts = nil
	to.Landing = to.Landing[1:]
	to.Life.High = 40
	got := Changes(&from, &to, f)
	want := []struct {
		kind, of, id string
		finding      bool
		says         string
	}{
		{"changed", "check", "weld", true, "weight from 10 and 0 to 7 and 0"},
		{"dropped", "check", "rope", true, "what you found stays"},
		{"dropped", "fact", "phase", true, ""},
		{"dropped", "landing", "drive", true, ""},
		{"changed", "check", "hose", false, "hazard from warning to danger"},
		{"added", "check", "strand", false, "is new"},
		{"changed", "rubric", "worth", false, ""},
	}
	if len(got) != len(want) {
		t.Fatalf("%d changes, want %d: %+v", len(got), len(want), got)
	}
	for i, w := range want {
		if g := got[i]; g.Kind != w.kind || g.Of != w.of || g.ID != w.id || g.Finding != w.finding || !strings.Contains(g.Sentence, w.says) {
			t.Errorf("change %d is %+v, want %+v", i, g, w)
		}
	}
}
