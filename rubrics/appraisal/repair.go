package appraisal

import "slices"

// Repair is what was found and what putting it right costs. It holds nothing of
// worth, odds or the buyer's shop: it is all that a paper for the seller is made of.
type Repair struct {
	Rubric  *Rubric
	Verdict Verdict
	Checks  []CheckResult // in walking order
	// Estimate of the lines that were not left out. Its range is drawn from these
	// lines alone, each with the luck it has in the whole estimate.
	Estimate Estimate
	// Scrap are the checks whose finding cannot be put right.
	Scrap []string
}

// LeftOut is what a person keeps out of an estimate, by id. What is not there is
// passed over: it may have gone since it was chosen.
type LeftOut struct {
	Lines  []string
	Checks []string
}

// RepairOf is the estimate without what was left out. A finding that is left out
// asks for nothing; a preparation stands as long as a remaining remedy needs it. A
// bad file is refused with an *Error.
func (jd *Judge) RepairOf(f *File, left LeftOut) (*Repair, error) {
	if err := f.check(); err != nil {
		return nil, err
	}
	r, err := jd.RubricOf(f)
	if err != nil {
		return nil, err
	}
	v := jd.voice
	walked := v.walk(r, f)
	p := newPricing(r, append(slices.Clip(jd.parts), f.Parts...), f, &notes{voice: v})
	tasks, scrap := p.repairs(left.from(walked))
	tasks = slices.DeleteFunc(tasks, func(t task) bool {
		return t.line.Kind == "preparation" && slices.Contains(left.Lines, t.line.ID)
	})
	m := &model{voice: v, rubric: r, file: f, pricing: p, tasks: tasks, scrap: len(scrap) > 0}
	return &Repair{Rubric: r, Verdict: v.verdict(walked), Checks: v.checkResults(walked), Estimate: m.repairAlone(scrap), Scrap: scrap}, nil
}

// from gives the checks that still ask for something.
func (l LeftOut) from(walked []judged) []judged {
	var out []judged
	for i := range walked {
		id := walked[i].remedy()
		if id == "scrap" {
			id = haulLine
		}
		if !slices.Contains(l.Checks, walked[i].check.ID) && !slices.Contains(l.Lines, id) {
			out = append(out, walked[i])
		}
	}
	return out
}

// repairAlone is the estimate of the tasks for themselves. Where a finding rules
// repair out, it is these lines and the hauling, not the loss of the whole worth.
func (m *model) repairAlone(scrap []string) Estimate {
	j := spare.Get().(*joint)
	defer j.release()
	m.spreadOf(m.overrun(), "overrun", j.over)
	m.sum(j.base, m.tasks...)
	clear(j.haul)
	var e Estimate
	e.Lines, e.Hours = linesOf(m.tasks)
	if m.scrap {
		haul := m.haulTask(scrap)
		m.sum(j.haul, haul)
		e.Lines = append([]Line{haul.line}, e.Lines...)
	}
	for i := range j.repair {
		j.repair[i] = float64(j.base[i]*j.over[i]) + j.haul[i]
	}
	summary(&e, j, j.repair)
	return e
}

// haulLine is the line of taking away what cannot be put right.
const haulLine = "haul"

func (m *model) haulTask(scrap []string) task {
	_, haul := m.scrapTasks()
	haul.line.Title, haul.line.Because = m.voice.T("Cannot be put right: taken away as scrap"), scrap
	return haul
}

// CheckPrice refuses an amount that is no price; field is what to call it.
func CheckPrice(field string, m Money) error { return checkMoney(field, m) }
