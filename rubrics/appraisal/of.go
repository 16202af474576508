package appraisal

import (
	"fmt"
	"slices"
	"sort"

	"asfound/rubrics/say"
)

// Judge holds what does not change between appraisals: the rubrics and the
// example prices. It is for one goroutine at a time.
type Judge struct {
	rubrics map[string]*Rubric
	// late gives a rubric when it is first asked for, nil for an id it does not have.
	late  func(id string) (*Rubric, error)
	ids   []string
	parts []Part
	voice voice
}

// In is the same judge speaking another voice. They share what was read; the
// rubrics stay in the language they are written in.
func (jd *Judge) In(v *say.Voice) *Judge {
	other := *jd
	other.voice = voice{v}
	return &other
}

// NewJudge makes a judge of checked rubrics and parts.
func NewJudge(rubrics []Rubric, parts []Part) *Judge {
	j := &Judge{rubrics: map[string]*Rubric{}, parts: parts}
	for i := range rubrics {
		j.rubrics[rubrics[i].ID] = &rubrics[i]
		j.ids = append(j.ids, rubrics[i].ID)
	}
	return j
}

// NewLateJudge makes a judge whose rubrics of these ids are read when first needed.
func NewLateJudge(ids []string, late func(id string) (*Rubric, error), parts []Part) *Judge {
	return &Judge{rubrics: map[string]*Rubric{}, late: late, ids: ids, parts: parts}
}

// Rubric is the rubric of an id; an unknown one is refused with an *Error.
func (jd *Judge) Rubric(id string) (*Rubric, error) {
	r, ok := jd.rubrics[id]
	if !ok && slices.Contains(jd.ids, id) {
		var err error
		if r, err = jd.late(id); err != nil {
			return nil, err
		}
		jd.rubrics[id], ok = r, true
	}
	if !ok {
		return nil, refuse("rubric.id", say.Later("one of %s", jd.known()), "no rubric is called %q", id)
	}
	return r, nil
}

// RubricOf is the rubric a file is judged by: the one it was made with, or the
// program's own of that id. One that cannot be judged by is refused with an *Error.
func (jd *Judge) RubricOf(f *File) (*Rubric, error) {
	r := f.MadeWith
	if r == nil {
		return jd.Rubric(f.Rubric.ID)
	}
	if r.ID != f.Rubric.ID || r.Version != f.Rubric.Version {
		return nil, refuse("made_with.id", "the rubric that rubric.id and rubric.version name",
			"it holds %.60q version %d, not %.60q version %d", r.ID, r.Version, f.Rubric.ID, f.Rubric.Version)
	}
	return r, r.guard()
}

// Ask is what a judgement is asked about besides the file.
type Ask struct {
	// Price in place of the asking price.
	Price *Money
	// Minutes left for a plan of what to check next; 0 asks for none.
	Minutes float64
}

// Of judges one appraisal. An input that makes no sense is refused with an *Error.
func (jd *Judge) Of(f *File, ask Ask) (*Result, error) {
	res, j, err := jd.judge(f, ask)
	if err != nil {
		return nil, err
	}
	j.release()
	return res, nil
}

// judge gives the draws behind the judgement too.
func (jd *Judge) judge(f *File, ask Ask) (*Result, *joint, error) {
	price := ask.Price
	if err := f.check(); err != nil {
		return nil, nil, err
	}
	if err := checkMinutes(ask.Minutes); err != nil {
		return nil, nil, err
	}
	r, err := jd.RubricOf(f)
	if err != nil {
		return nil, nil, err
	}
	if price == nil {
		price = f.Listing.Asking
	}
	if price != nil && (*price < 0 || *price > maxMoney) {
		return nil, nil, refuse("price", "0 to 1,000,000,000", "%s is no price", exactly(*price))
	}
	v := jd.voice
	n := &notes{voice: v, list: []string{}}
	jd.changed(r, f, n)
	walked := v.walk(r, f)
	contradictions(walked, n)
	m, scrap := prepare(r, append(slices.Clip(jd.parts), f.Parts...), f, walked, n)
	res := &Result{
		Rubric: RubricRef{r.ID, r.Version}, Currency: f.Shop.Currency,
		Verdict:   v.verdict(walked),
		Safety:    score(walked, func(w Weight) int { return w.Safety }),
		Condition: score(walked, func(w Weight) int { return w.Condition }),
		Progress:  progress(walked),
		Swings:    []Swing{},
	}
	res.Worth, m.belief, m.known = worth(r, f, n)
	j := m.draw()
	res.Checks = v.checkResults(walked)
	res.Estimate = estimateOf(m, j, scrap)
	res.Landing = landingOf(m, j)
	res.Hidden = hiddenOf(m, j, walked)
	if m.known {
		res.Worth.InPlace = cents(j.meanWorth)
	}
	res.Fit, res.Home = m.fit, m.home
	res.Offer = offer(m, j, price, res.Worth.Missing)
	at := float64(res.Offer.Fair.Price)
	if price != nil {
		at = float64(*price)
	}
	var o *outlook
	if m.known {
		o = newOutlook(m, j)
		res.Swings = swings(m, j)
		if ask.Minutes > 0 {
			res.Plan = plan(m, o, at, ask.Minutes)
		}
	}
	res.Next = next(m, o, at)
	res.Notes = n.list
	res.Why = derivations(m, res, walked)
	return res, j, nil
}

// prepare costs what was found, and lists what was not looked at; scrap are the
// findings that rule repair out. Worth comes later.
func prepare(r *Rubric, parts []Part, f *File, walked []judged, n *notes) (m *model, scrap []string) {
	m = &model{voice: n.voice, rubric: r, file: f, pricing: newPricing(r, parts, f, n)}
	m.tasks, scrap = m.pricing.repairs(walked)
	m.scrap = len(scrap) > 0
	m.shop()
	m.landing = m.pricing.landings(r, m.scrap)
	m.care = learn(r, f, walked)
	m.care.voice = n.voice
	if !m.scrap {
		m.suspects = suspects(r, walked)
	}
	for i := range m.landing {
		if t := &m.landing[i]; t.line.Stays {
			m.kept += float64(t.pert.mean * (float64(f.Shop.Kept) / 10_000))
		}
	}
	return m, scrap
}

// shop holds the listing against the buyer's shop and plans the way home; both
// decide about landing lines.
func (m *model) shop() {
	h := newHolding(m.rubric, m.file)
	if h == nil {
		return
	}
	h.voice = m.voice
	m.fit = h.fit()
	way := newRide(h)
	m.home = way.home()
	m.pricing.haul = way.costs()
	m.pricing.points = map[string]*FitPoint{}
	for i := range m.fit.Points {
		m.pricing.points[m.fit.Points[i].ID] = &m.fit.Points[i]
	}
}

func (jd *Judge) known() string {
	ids := slices.Clone(jd.ids)
	sort.Strings(ids)
	return fmt.Sprint(ids)
}

// changed notes what an older rubric leaves behind; no finding is dropped.
func (jd *Judge) changed(r *Rubric, f *File, n *notes) {
	if f.Rubric.Version != 0 && f.Rubric.Version != r.Version {
		n.add("This appraisal was made with version %d of the rubric and is judged by version %d.", f.Rubric.Version, r.Version)
	}
	have := map[string]bool{}
	for _, s := range r.Sections {
		for _, c := range s.Checks {
			have[c.ID] = true
		}
	}
	var lost []string
	for id := range f.Findings {
		if !have[id] {
			lost = append(lost, id)
		}
	}
	sort.Strings(lost)
	for _, id := range lost {
		n.add("The finding %.60q has no check in this rubric any more: it is kept, but counts for nothing.", id)
	}
	answers := told(r, f.Facts)
	for _, fact := range r.Facts {
		if answer, ok := f.Facts[fact.ID]; ok && answers[fact.ID] == "" {
			n.add("%s The answer %.60q is not offered: answer again, until then every check is shown.", fact.Ask, answer)
		}
	}
	lines := map[string]bool{}
	for _, l := range r.Landing {
		lines[l.ID] = true
	}
	for _, id := range sortedKeys(f.Landing) {
		if !lines[id] {
			n.add("The landing cost %.60q is no line of this rubric any more: it is kept, but counts for nothing.", id)
		}
	}
}

func progress(walked []judged) Progress {
	var p Progress
	for i := range walked {
		switch j := &walked[i]; {
		case !j.applies:
		case j.grade != nil:
			p.Applies++
			p.Graded++
		case j.finding.Skipped != "":
			p.Applies++
			p.Skipped++
		default:
			p.Applies++
			p.Open++
			p.MinutesLeft += j.check.Minutes
		}
	}
	return p
}

func (v voice) checkResults(walked []judged) []CheckResult {
	out := make([]CheckResult, len(walked))
	for i := range walked {
		j := &walked[i]
		out[i] = CheckResult{Check: j.check.ID, Applies: j.applies, Grade: j.grade, Limit: j.limit, Remedy: j.remedy(), Held: v.held(j), Chance: round4(j.chance)}
		if j.problem != nil {
			out[i].Problem = v.Error(j.problem)
		}
		if j.grade == nil {
			out[i].Skipped = j.finding.Skipped
		}
	}
	return out
}

// summary fills the spread of an estimate from its draws.
func summary(e *Estimate, j *joint, draws []float64) {
	j.cells.order(draws, j.sorted)
	s := j.sorted
	e.Mean, e.SD = cents(average(draws)), cents(spread(draws))
	e.Low, e.Median, e.High = cents(share(s, 0.1)), cents(share(s, 0.5)), cents(share(s, 0.9))
}

func linesOf(tasks []task) (lines []Line, h Hours) {
	lines = []Line{}
	for i := range tasks {
		l := tasks[i].line
		lines = append(lines, l)
		if !l.Off {
			h = Hours{round2(h.Low + l.Hours.Low), round2(h.Likely + l.Hours.Likely), round2(h.High + l.Hours.High)}
		}
	}
	return lines, h
}

func estimateOf(m *model, j *joint, scrap []string) Estimate {
	var e Estimate
	e.Lines, e.Hours = linesOf(m.tasks)
	summary(&e, j, j.repair)
	if m.scrap {
		e.Lines = append([]Line{m.haulTask(scrap).line}, e.Lines...)
	}
	return e
}

func landingOf(m *model, j *joint) Estimate {
	var e Estimate
	e.Lines, e.Hours = linesOf(m.landing)
	summary(&e, j, j.landing)
	return e
}

func hiddenOf(m *model, j *joint, walked []judged) Hidden {
	h := Hidden{Care: parts(m.care.post), Prior: parts(m.care.prior), From: m.care.start.words(m.voice), Points: []Doubt{}, Mean: cents(j.meanHide)}
	h.High = cents(j.cells.nth(j.hidden, place(0.9, Draws), j.room))
	for i := range m.suspects {
		s := &m.suspects[i]
		h.Points = append(h.Points, Doubt{Check: s.j.check.ID, Title: s.j.check.Title, Chance: round4(s.j.chance), Remedy: s.bad, Mean: cents(s.total / Draws)})
	}
	if m.scrap {
		h.Sentence = m.voice.T("A finding already rules repair out, so nothing more is allowed for what was not checked.")
	} else {
		h.Sentence = hiddenSentence(walked, m.care, h.Mean)
	}
	return h
}
