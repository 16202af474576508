package document

import (
	"asfound/rubrics/appraisal"
	"asfound/rubrics/say"
)

// paper is a document about one appraisal being written: what was found and what
// putting it right costs.
type paper struct {
	v      *say.Voice
	ask    *Ask
	seen   *seen
	repair *appraisal.Repair
	checks map[string]*appraisal.Check
	result map[string]*appraisal.CheckResult
	told   map[string]string // remedy to the finding that tells of it
}

func newPaper(jd *appraisal.Judge, v *say.Voice, f *appraisal.File, ask *Ask) (*paper, error) {
	repair, err := jd.RepairOf(f, appraisal.LeftOut{Lines: ask.LeaveLines, Checks: ask.LeaveChecks})
	if err != nil {
		return nil, err
	}
	p := &paper{v: v, ask: ask, seen: reveal(f, ask), repair: repair, checks: map[string]*appraisal.Check{}, result: map[string]*appraisal.CheckResult{}, told: map[string]string{}}
	for s := range repair.Rubric.Sections {
		for c := range repair.Rubric.Sections[s].Checks {
			check := &repair.Rubric.Sections[s].Checks[c]
			p.checks[check.ID] = check
		}
	}
	for i := range repair.Checks {
		p.result[repair.Checks[i].Check] = &repair.Checks[i]
	}
	return p, nil
}
