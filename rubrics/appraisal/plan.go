package appraisal

import (
	"math"

	"asfound/rubrics/say"
)

// mostMinutes is the longest time a plan is made for: a day.
const mostMinutes = 1440

// rare is the chance below which answers are not split any further, so that
// their number stays small. What comes after is taken as not learnt, so a gain is
// never overstated for it.
const rare = 1e-4

func checkMinutes(minutes float64) error {
	if !(minutes >= 0 && minutes <= mostMinutes) {
		return refuse("minutes", say.Later("0 to %d", mostMinutes), "%g is no time left for checking", minutes)
	}
	return nil
}

// planning is a plan under way: what is chosen, and all the ways it may turn out.
type planning struct {
	o       *outlook
	price   float64
	minutes float64
	chosen  []bool
	view    view
	answers []answers
	settled []branch // where nothing more is to be learnt
	// informed is the expected gain over the price, deciding with the answers, and
	// certain the part of it that is settled.
	informed, certain float64
	trial             view
}

// plan chooses the open checks for the minutes left: danger checks first, then
// those that add most to the joint value of knowing, a minute, then those that
// change no decision, by their weight for safety. The danger checks too go by
// added value a minute, and where that is nothing by the fewest minutes.
func plan(m *model, o *outlook, price, minutes float64) *Plan {
	p := &planning{o: o, price: price, minutes: minutes, chosen: make([]bool, len(m.suspects)), view: newView(len(o.cost)), trial: newView(len(o.cost)), answers: []answers{o.first}}
	p.view.set(&o.open)
	p.informed = o.all(&p.view, &o.first).over(price)
	free := func(s int) bool {
		j := m.suspects[s].j
		return !p.chosen[s] && j.held == "" && p.fits(s)
	}
	danger := func(s int) bool { return free(s) && m.suspects[s].j.check.Hazard == "danger" }
	for p.best(danger, false) || p.best(free, true) || p.heaviest(free) {
	}
	return p.write(m)
}

// fits adds up the minutes; hundredths, so that 0.1 and 0.2 fit into 0.3.
func (p *planning) fits(s int) bool {
	used := 0.0
	for i, in := range p.chosen {
		if in || i == s {
			used += p.o.suspects[i].j.check.Minutes
		}
	}
	return round2(used) <= p.minutes
}

// best takes the point that adds most a minute; false where none is left, or
// where none adds anything and it has to.
func (p *planning) best(may func(int) bool, gaining bool) bool {
	best, most, shortest := -1, 0.0, 0.0
	for s := range p.chosen {
		if !may(s) {
			continue
		}
		minutes := p.o.suspects[s].j.check.Minutes
		gain := p.adds(s) / minutes
		if gaining && gain == 0 {
			continue
		}
		if best < 0 || gain > most || (gain == most && minutes < shortest) {
			best, most, shortest = s, gain, minutes
		}
	}
	return p.take(best)
}

// heaviest takes the point that weighs most for safety.
func (p *planning) heaviest(may func(int) bool) bool {
	best, most := -1, -1
	for s := range p.chosen {
		if w := p.o.suspects[s].j.check.Weight.Safety; may(s) && w > most {
			best, most = s, w
		}
	}
	return p.take(best)
}

// adds is what knowing point s as well would add, in cents of price; below half
// a cent it is nothing.
func (p *planning) adds(s int) float64 {
	p.o.without(&p.view, s, &p.trial)
	informed := p.certain
	for i := range p.answers {
		for _, b := range p.o.split(&p.trial, &p.answers[i], s) {
			informed += b.over(p.price)
		}
	}
	if gain := informed - p.informed; gain >= 0.5 {
		return gain
	}
	return 0
}

// take puts a point into the plan; false for none.
func (p *planning) take(s int) bool {
	if s < 0 {
		return false
	}
	p.chosen[s] = true
	p.o.without(&p.view, s, &p.trial)
	p.view.set(&p.trial)
	var open []answers
	p.informed = p.certain
	for i := range p.answers {
		g := &p.answers[i]
		for n, b := range p.o.split(&p.view, g, s) {
			p.informed += b.over(p.price)
			if p.o.suspects[s].outcome[n].scrap || b.chance < rare {
				p.settled = append(p.settled, b)
				p.certain += b.over(p.price)
			} else {
				open = append(open, p.o.with(g, s, n))
			}
		}
	}
	p.answers = open
	return true
}

// write tells the plan, in walking order.
func (p *planning) write(m *model) *Plan {
	out := &Plan{Minutes: p.minutes, Points: []PlanPoint{}}
	danger, dangerLeft, shortest := 0, 0, math.Inf(1)
	for i := range m.suspects {
		j := m.suspects[i].j
		c := j.check
		isDanger := c.Hazard == "danger"
		switch {
		case p.chosen[i]:
			out.Points = append(out.Points, PlanPoint{Check: c.ID, Title: c.Title, Hazard: c.Hazard, Minutes: c.Minutes, Must: isDanger})
			out.Used += c.Minutes
			if isDanger {
				danger++
			}
		case isDanger:
			dangerLeft++
		}
		if j.held == "" {
			shortest = min(shortest, c.Minutes)
		}
	}
	out.Used = round2(out.Used)
	branches := p.settled
	for i := range p.answers {
		branches = append(branches, p.o.all(&p.view, &p.answers[i]))
	}
	out.Gain = cents(m.gain(branches, p.price))
	out.Sentence = m.voice.planSentence(out, danger, dangerLeft, len(m.suspects), shortest)
	return out
}

func (v voice) planSentence(p *Plan, danger, dangerLeft, open int, shortest float64) string {
	left := ""
	if dangerLeft > 0 {
		left = " " + v.many(dangerLeft, "One point where failure can kill stays open.", "%s points where failure can kill stay open.")
	}
	switch {
	case open == 0:
		return v.T("No point is left whose answer could change the price.")
	case len(p.Points) == 0 && math.IsInf(shortest, 1):
		return v.T("What is open must not be run or loaded as things stand, so there is nothing to check now.") + left
	case len(p.Points) == 0:
		return v.F("In %s no point can be checked: the shortest takes %s.", v.minutes(p.Minutes), v.minutes(shortest)) + left
	}
	s := v.planned(p, danger, dangerLeft == 0) + left
	switch {
	case v.whole(p.Gain) == "0":
		return s + " " + v.T("At this price they do not change whether to buy.")
	case len(p.Points) == 1:
		return s + " " + v.F("Knowing it first is worth about %s.", v.whole(p.Gain))
	}
	return s + " " + v.F("Knowing them first is worth about %s.", v.whole(p.Gain))
}

// planned counts the points of a plan, and the danger points among them; all tells
// that these are all there are.
func (v voice) planned(p *Plan, danger int, all bool) string {
	within, used, n := v.minutes(p.Minutes), v.minutes(p.Used), len(p.Points)
	switch {
	case n == 1 && danger == 0:
		return v.F("In %s: 1 point, %s.", within, used)
	case n == 1 && all:
		return v.F("In %s: 1 point, %s, the one danger point among them.", within, used)
	case n == 1:
		return v.F("In %s: 1 point, %s, 1 danger point among them.", within, used)
	case danger == 0:
		return v.F("In %s: %d points, %s.", within, n, used)
	case danger == 1 && all:
		return v.F("In %s: %d points, %s, the one danger point among them.", within, n, used)
	case danger == 1:
		return v.F("In %s: %d points, %s, 1 danger point among them.", within, n, used)
	case all:
		return v.F("In %s: %d points, %s, the %d danger points among them.", within, n, used, danger)
	}
	return v.F("In %s: %d points, %s, %d danger points among them.", within, n, used, danger)
}

func (v voice) minutes(x float64) string {
	if x == 1 {
		return v.T("1 minute")
	}
	return v.F("%g minutes", round2(x))
}
