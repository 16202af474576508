package appraisal

import (
	"sort"
	"strings"

	"asfound/rubrics/say"
)

// VisitPlan is what to settle before the drive: what to ask, what to bring, how
// long it takes, and what will stay open. It counts the checks that apply and
// have no grade yet.
type VisitPlan struct {
	Sentence  string          `json:"sentence"`
	Questions []VisitQuestion `json:"questions"`
	// Message is the questions still to ask as one text, "" where none is.
	Message string `json:"message"`
	// Instruments that the checks name, those that most checks need first.
	Instruments []VisitNeed    `json:"instruments"`
	Wear        []string       `json:"wear"`
	Bring       []string       `json:"bring"` // besides the instruments
	Minutes     float64        `json:"minutes"`
	Sections    []VisitSection `json:"sections"`
	// Without tells what cannot be judged without power, load, or getting at it.
	Without  []VisitNeed `json:"without"`
	Cautions []string    `json:"cautions"`
}

// VisitQuestion is a question for the seller and how it stands.
type VisitQuestion struct {
	ID  string `json:"id"`
	Ask string `json:"ask"`
	Why string `json:"why,omitempty"`
	// Told is what the listing tells that answers it; then it is not asked.
	Told string `json:"told,omitempty"`
	// Asked tells that it was put, Answer what the seller said.
	Asked  bool   `json:"asked"`
	Answer string `json:"answer,omitempty"`
}

// VisitNeed is something the visit may have to do without, and what is lost then.
type VisitNeed struct {
	ID       string       `json:"id"` // power, load, access; of an instrument its title
	Title    string       `json:"title"`
	Sentence string       `json:"sentence"`
	Minutes  float64      `json:"minutes"` // of the checks that need it
	Checks   []VisitCheck `json:"checks"`
	// Safety is the share of the safety weight that applies, basis points.
	Safety int `json:"safety"`
	// Certain tells that it is missing already, by a fact that was told.
	Certain bool `json:"certain,omitempty"`
}

// VisitCheck is a check as a plan names it.
type VisitCheck struct {
	ID     string `json:"id"`
	Title  string `json:"title"`
	Danger bool   `json:"danger"`
}

// VisitSection is the time one section takes.
type VisitSection struct {
	ID      string  `json:"id"`
	Title   string  `json:"title"`
	State   string  `json:"state"`
	Checks  int     `json:"checks"`
	Minutes float64 `json:"minutes"`
}

// Visit plans the visit to one listing. An appraisal that makes no sense, or of
// no known rubric, is refused with an *Error.
func (jd *Judge) Visit(f *File) (*VisitPlan, error) {
	if err := f.check(); err != nil {
		return nil, err
	}
	r, err := jd.RubricOf(f)
	if err != nil {
		return nil, err
	}
	v := jd.voice
	out := &VisitPlan{
		Questions: v.questionsOf(r, f), Instruments: []VisitNeed{}, Wear: []string{}, Bring: []string{},
		Sections: []VisitSection{}, Without: []VisitNeed{}, Cautions: r.Cautions,
	}
	out.Message = v.message(r, f, out.Questions)
	if r.Visit != nil {
		out.Wear, out.Bring = append(out.Wear, r.Visit.Wear...), append(out.Bring, r.Visit.Bring...)
	}
	points := pointsOf(r, f)
	out.times(r, points)
	out.Instruments = v.instruments(points)
	out.Without = v.without(r, f, points)
	out.Sentence = v.visiting(out)
	return out, nil
}

// visitPoint is one check that can be asked of this listing.
type visitPoint struct {
	*judged
	section *Section
}

// pointsOf lists the checks that apply, in walking order.
func pointsOf(r *Rubric, f *File) []visitPoint {
	walked, i := walk(r, f), 0
	var out []visitPoint
	for s := range r.Sections {
		for range r.Sections[s].Checks {
			if j := &walked[i]; j.applies {
				out = append(out, visitPoint{j, &r.Sections[s]})
			}
			i++
		}
	}
	return out
}

func (p *VisitPlan) times(r *Rubric, points []visitPoint) {
	at := map[string]int{}
	for _, x := range points {
		if !x.open() {
			continue
		}
		i, ok := at[x.section.ID]
		if !ok {
			i = len(p.Sections)
			at[x.section.ID] = i
			p.Sections = append(p.Sections, VisitSection{ID: x.section.ID, Title: x.section.Title, State: x.section.State})
		}
		p.Sections[i].Checks++
		p.Sections[i].Minutes = round2(p.Sections[i].Minutes + x.check.Minutes)
		p.Minutes = round2(p.Minutes + x.check.Minutes)
	}
}

// instruments is the union of what the open checks name. The same thing in other
// capitals is the same thing.
func (v voice) instruments(points []visitPoint) []VisitNeed {
	var order []string
	users := map[string][]visitPoint{}
	for _, x := range points {
		if !x.open() {
			continue
		}
		seen := map[string]bool{}
		for _, title := range x.check.Instrument {
			key := strings.ToLower(strings.TrimSpace(title))
			if seen[key] {
				continue
			}
			seen[key] = true
			if users[key] == nil {
				order = append(order, title)
			}
			users[key] = append(users[key], x)
		}
	}
	out := []VisitNeed{}
	for _, title := range order {
		n := newNeed(title, title, points, users[strings.ToLower(strings.TrimSpace(title))])
		n.Sentence = v.lost(&n, instrumentLoss)
		out = append(out, n)
	}
	sort.SliceStable(out, func(a, b int) bool { return len(out[a].Checks) > len(out[b].Checks) })
	return out
}

// visiting sums the plan up: what to ask, what to bring, how long it takes.
func (v voice) visiting(p *VisitPlan) string {
	ask := 0
	for _, q := range p.Questions {
		if q.Told == "" && !q.Asked {
			ask++
		}
	}
	if len(p.Sections) == 0 {
		return v.T("Every point that applies has a grade already.")
	}
	says := []string{}
	switch {
	case ask == 1:
		says = append(says, v.T("ask 1 question"))
	case ask > 1:
		says = append(says, v.F("ask %d questions", ask))
	}
	switch n := len(p.Instruments); {
	case n == 1:
		says = append(says, v.T("bring 1 instrument"))
	case n > 1:
		says = append(says, v.F("bring %d instruments", n))
	}
	says = append(says, v.F("allow about %.0f minutes at the machine", p.Minutes))
	return say.Capital(strings.Join(says, ", ")) + "."
}
