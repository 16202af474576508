package document

import (
	"slices"

	"asfound/rubrics/appraisal"
)

// jobs is the list by which the restoration is done: preparations first and once,
// then the work by section, and all that is bought, made and hired.
func (p *paper) jobs() (*Document, error) {
	v, e := p.v, &p.repair.Estimate
	d := begin(v, Jobs, v.T("Restoration jobs"), p.seen.date)
	d.Foot = p.foot(d.Title)
	d.Add(facts(p.identity()))
	d.Add(p.verdict()...)
	for _, check := range p.repair.Scrap {
		d.Add(caution(v, "danger", v.F("%s: this cannot be put right. No other work makes up for it.", plain(p.checks[check].Title))))
	}
	if len(e.Lines) == 0 {
		d.Add(text(v.T("Nothing was found that needs work.")))
		return d, nil
	}
	d.Add(small(v.F("All amounts in this paper are in %s.", p.seen.currency)))
	d.Add(strong(v.F("Hours of work: %s. Cost: about %s, in eight of ten cases between %s and %s.", hours(v, e.Hours), amount(v, e.Median), amount(v, e.Low), amount(v, e.High))))
	d.Add(heading(2, v.T("Work in order")), text(v.T("Each preparation stands before the first work that needs it, and is reckoned once. Where a later one undoes it, it is done again.")))
	for i, l := range p.inOrder() {
		d.Add(p.job(l, i+1))
	}
	d.Add(p.shopping()...)
	d.Add(heading(2, v.T("Before it is used")), list(p.repair.Verdict.Always))
	return d, nil
}

// inOrder puts the lines in an order that works: first what needs nothing before it,
// then always the work that needs the fewest further preparations, those before it,
// and all other work that they allow. Work of equal need stays in walking order.
func (p *paper) inOrder() []*appraisal.Line {
	var out, preparations, work []*appraisal.Line
	lines := p.repair.Estimate.Lines
	for i := range lines {
		if lines[i].Kind == "preparation" {
			preparations = append(preparations, &lines[i])
		} else {
			work = append(work, &lines[i])
		}
	}
	done := map[string]bool{}
	open := func(l *appraisal.Line) (need []*appraisal.Line) {
		for _, x := range preparations {
			if !done[x.ID] && slices.Contains(x.Because, l.ID) {
				need = append(need, x)
			}
		}
		return need
	}
	for len(work) > 0 {
		least := 0
		for i := range work {
			if len(open(work[i])) < len(open(work[least])) {
				least = i
			}
		}
		for _, x := range open(work[least]) {
			out, done[x.ID] = append(out, x), true
		}
		out = append(out, work[least])
		work = slices.Delete(work, least, least+1)
	}
	return out
}

// job is one step with where it belongs, why, and what must be done before it.
func (p *paper) job(l *appraisal.Line, number int) Block {
	v := p.v
	blocks := []Block{heading(3, v.F("%s. %s", v.Whole(int64(number)), plain(l.Title)))}
	if l.Kind == "preparation" {
		return Block{Kind: "part", ID: l.ID, Blocks: append(append(blocks, small(v.T("Preparation"))), p.line(l, "")...)}
	}
	var after, because []string
	for i := range p.repair.Estimate.Lines {
		if x := &p.repair.Estimate.Lines[i]; x.Kind == "preparation" && slices.Contains(x.Because, l.ID) {
			after = append(after, plain(x.Title))
		}
	}
	section := ""
	for _, id := range l.Because {
		because = append(because, v.F("%s: %s", plain(p.checks[id].Title), gradeWord(v, *p.result[id].Grade)))
		if section == "" {
			section = p.sectionOf(id)
		}
	}
	blocks = append(blocks, small(section))
	blocks = append(append(blocks, p.line(l, "")...), small(v.T("Found:")), list(because))
	if len(after) > 0 {
		blocks = append(blocks, small(v.T("Only after:")), list(after))
	}
	return Block{Kind: "part", ID: l.ID, Blocks: blocks}
}

func (p *paper) sectionOf(check string) string {
	for s := range p.repair.Rubric.Sections {
		section := &p.repair.Rubric.Sections[s]
		if slices.ContainsFunc(section.Checks, func(c appraisal.Check) bool { return c.ID == check }) {
			return plain(section.Title)
		}
	}
	return ""
}
