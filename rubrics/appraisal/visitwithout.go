package appraisal

import (
	"strings"

	"asfound/rubrics/say"
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
func (v voice) without(r *Rubric, f *File, points []visitPoint) []VisitNeed {
	out := []VisitNeed{}
	for _, m := range []struct {
		id, title string
		loss      loss
		needs     func(visitPoint) bool
	}{
		{"power", v.T("Without power"), powerLoss, func(x visitPoint) bool { return runs(x.section.State) }},
		{"load", v.T("Without a load"), loadLoss, func(x visitPoint) bool { return x.section.State == "loaded" }},
		{"access", v.T("Without getting at it"), accessLoss, atHand},
	} {
		var lost []visitPoint
		for _, x := range points {
			if x.open() && m.needs(x) {
				lost = append(lost, x)
			}
		}
		if len(lost) > 0 {
			n := newNeed(m.id, m.title, points, lost)
			n.Sentence = v.lost(&n, m.loss)
			out = append(out, n)
		} else if n, ok := v.ruledOut(r, f, points, m.id, m.title, m.needs); ok {
			out = append(out, n)
		}
	}
	return out
}

// ruledOut finds the told fact that leaves no check of such a need: nothing is
// asked of one that cannot be run, so nothing is lost by that, and nothing proven.
func (v voice) ruledOut(r *Rubric, f *File, points []visitPoint, id, title string, needs func(visitPoint) bool) (VisitNeed, bool) {
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
			n.Sentence = fact.Ask + " " + factTold(r, fact.ID, facts) + ". " + v.unasked(&n)
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

// unasked says that the points of a need are not asked, and names the danger points.
func (v voice) unasked(n *VisitNeed) string {
	names, count := v.named(n), len(n.Checks)
	switch {
	case count == 1 && names == "":
		return v.T("So one point is not asked at all, and none of it is proven by this visit.")
	case count == 1:
		return v.F("So one point is not asked at all, and none of it is proven by this visit: %s.", names)
	case names == "":
		return v.F("So %s points are not asked at all, and none of it is proven by this visit.", v.spelled(count))
	}
	return v.F("So %s points are not asked at all, and none of it is proven by this visit: %s.", v.spelled(count), names)
}

// loss is how it is said what a visit loses without something: of one check, with
// the share of the safety weight, and of several, with their number before it.
type loss struct{ one, many string }

var (
	instrumentLoss = loss{
		say.Key("Without it one check is lost: %s of the safety weight."),
		say.Key("Without it %s checks are lost: %s of the safety weight."),
	}
	powerLoss = loss{
		say.Key("Where it cannot be run, one check is lost: %s of the safety weight."),
		say.Key("Where it cannot be run, %s checks are lost: %s of the safety weight."),
	}
	loadLoss = loss{
		say.Key("Where it is not shown under load, one check is lost: %s of the safety weight."),
		say.Key("Where it is not shown under load, %s checks are lost: %s of the safety weight."),
	}
	accessLoss = loss{
		say.Key("Where it may only be looked at from outside, at least one check is lost: %s of the safety weight."),
		say.Key("Where it may only be looked at from outside, at least %s checks are lost: %s of the safety weight."),
	}
)

// lost says what the checks of a need come to.
func (v voice) lost(n *VisitNeed, l loss) string {
	share := v.percent(float64(n.Safety) / 10_000)
	s := v.Pattern(l.one, share)
	if count := len(n.Checks); count != 1 {
		s = v.Pattern(l.many, v.spelled(count), share)
	}
	if names := v.named(n); names != "" {
		s += " " + v.F("Not proven stays where failure can kill: %s.", names)
	}
	return s
}

// mostNamed is how many danger points a sentence names before it counts.
const mostNamed = 3

// named lists the danger points, "" where there is none.
func (v voice) named(n *VisitNeed) string {
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
	list := strings.Join(names, ", ")
	if more > 0 {
		return v.F("%s, and %s more", list, v.spelled(more))
	}
	return list
}
