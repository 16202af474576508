package appraisal

import (
	"strings"
)

// runs tells whether a state needs the supply on.
func runs(state string) bool { return state == "unloaded" || state == "loaded" }

// atHand tells whether a check needs the hands on the equipment, as far as a
// rubric can tell: a measurement, or an instrument, beyond reading its papers.
// What is merely looked at may need it too, so the loss is told as "at least".
func atHand(x visitPoint) bool {
	return runs(x.section.State) || x.section.State != "documents" && (x.check.Kind != "look" || len(x.check.Instrument) > 0)
}

// without lists what the visit may have to do without, and what is lost each time.
func without(r *Rubric, f *File, points []visitPoint) []VisitNeed {
	out := []VisitNeed{}
	for _, m := range []struct {
		id, title, begin string
		needs            func(visitPoint) bool
	}{
		{"power", "Without power", "Where it cannot be run,", func(x visitPoint) bool { return runs(x.section.State) }},
		{"load", "Without a load", "Where it is not shown under load,", func(x visitPoint) bool { return x.section.State == "loaded" }},
		{"access", "Without getting at it", "Where it may only be looked at from outside, at least", atHand},
	} {
		var lost []visitPoint
		for _, x := range points {
			if x.open() && m.needs(x) {
				lost = append(lost, x)
			}
		}
		if len(lost) > 0 {
			n := newNeed(m.id, m.title, points, lost)
			n.Sentence = n.lost(m.begin)
			out = append(out, n)
		} else if n, ok := ruledOut(r, f, points, m.id, m.title, m.needs); ok {
			out = append(out, n)
		}
	}
	return out
}

// ruledOut finds the told fact that leaves no check of such a need: nothing is
// asked of one that cannot be run, so nothing is lost by that, and nothing proven.
func ruledOut(r *Rubric, f *File, points []visitPoint, id, title string, needs func(visitPoint) bool) (VisitNeed, bool) {
	for _, x := range points {
		if needs(x) {
			return VisitNeed{}, false // there were some, and all have a grade
		}
	}
	facts := told(r, f.Facts)
	for _, fact := range r.Facts {
		answer, ok := facts[fact.ID]
		if !ok {
			continue
		}
		delete(facts, fact.ID)
		n := VisitNeed{ID: id, Title: title, Checks: []VisitCheck{}, Certain: true}
		for s := range r.Sections {
			for c := range r.Sections[s].Checks {
				check := &r.Sections[s].Checks[c]
				if x := (visitPoint{&judged{check: check}, &r.Sections[s]}); meets(check.When, facts) && needs(x) {
					n.add(check)
				}
			}
		}
		facts[fact.ID] = answer
		if len(n.Checks) > 0 {
			n.Sentence = fact.Ask + " " + factTold(r, fact.ID, facts) + ". So " + countOf(len(n.Checks), "point", "is", "are") +
				" not asked at all, and none of it is proven by this visit" + n.named(": ") + "."
			return n, true
		}
	}
	return VisitNeed{}, false
}

func newNeed(id, title string, points, users []visitPoint) VisitNeed {
	n := VisitNeed{ID: id, Title: title, Checks: []VisitCheck{}}
	all, lost := 0, 0
	for _, x := range points {
		all += x.check.Weight.Safety
	}
	for _, x := range users {
		n.add(x.check)
		lost += x.check.Weight.Safety
	}
	if all > 0 {
		n.Safety = (lost*10_000 + all/2) / all
	}
	return n
}

func (n *VisitNeed) add(c *Check) {
	n.Checks = append(n.Checks, VisitCheck{ID: c.ID, Title: c.Title, Danger: c.Hazard == "danger"})
	n.Minutes = round2(n.Minutes + c.Minutes)
}

// lost says what the checks of a need come to.
func (n *VisitNeed) lost(begin string) string {
	s := begin + " " + countOf(len(n.Checks), "check", "is", "are") + " lost: " + percent(float64(n.Safety)/10_000) + " of the safety weight."
	if names := n.named(""); names != "" {
		s += " Not proven stays where failure can kill: " + names + "."
	}
	return s
}

// mostNamed is how many danger points a sentence names before it counts.
const mostNamed = 3

// named lists the danger points after a lead, "" where there is none.
func (n *VisitNeed) named(lead string) string {
	var names []string
	more := 0
	for _, c := range n.Checks {
		switch {
		case !c.Danger:
		case len(names) < mostNamed:
			names = append(names, "\u201c"+c.Title+"\u201d")
		default:
			more++
		}
	}
	if len(names) == 0 {
		return ""
	}
	if more > 0 {
		names = append(names, "and "+spelled(more)+" more")
	}
	return lead + strings.Join(names, ", ")
}

// countOf writes a number in words with its noun and verb.
func countOf(n int, noun, one, many string) string {
	if n == 1 {
		return "one " + noun + " " + one
	}
	return spelled(n) + " " + noun + "s " + many
}
