package appraisal

import (
	"math"
	"sort"

	"asfound/rubrics/kernel"
)

const (
	mostSwings = 5
	// More are computed than are kept, since the first ranking is rough.
	triedSwings = mostSwings + 3
	leastSwing  = 1_00 // in cents: what does not show in whole units is none
)

const instead = " instead of "

// input is one thing that might turn out low or high.
type input struct {
	id, title     string
	low, high     float64
	lowAt, highAt string
	lead, than    string // what stands before the worse and the better value
	rough         float64
	// redraw writes the break-even prices with the input at a value.
	redraw func(at float64, into []float64)
}

// swings finds the inputs that move the fair offer most. Each stands at its 10 %
// and at its 90 % while all else is drawn as before, and the fair offer is read
// from the draws again.
func swings(m *model, j *joint, o *outlook) []Swing {
	inputs := m.inputs(j, o)
	sort.SliceStable(inputs, func(a, b int) bool { return inputs[a].rough > inputs[b].rough })
	out := []Swing{}
	more := spare.Get().(*joint)
	defer more.release()
	column := more.breakEven
	at := place(below(m.file.Shop.Odds.Fair), Draws)
	for _, in := range inputs[:min(len(inputs), triedSwings)] {
		s := Swing{Input: in.id, Title: in.title, LowAt: in.lowAt, HighAt: in.highAt}
		in.redraw(in.low, column)
		s.Low = cents(j.cells.nth(column, at, j.room))
		in.redraw(in.high, column)
		s.High = cents(j.cells.nth(column, at, j.room))
		if s.width() < leastSwing {
			continue
		}
		s.Sentence = s.sentence(in.lead, in.than)
		out = append(out, s)
	}
	sort.SliceStable(out, func(a, b int) bool { return out[a].width() > out[b].width() })
	return out[:min(len(out), mostSwings)]
}

func (s *Swing) width() Money { return max(s.High-s.Low, s.Low-s.High) }

func (s *Swing) sentence(lead, than string) string {
	worse, better, worst, best := s.LowAt, s.HighAt, s.Low, s.High
	if s.High < s.Low {
		worse, better, worst, best = better, worse, best, worst
	}
	head := lead + worse + than + better + ", "
	switch {
	case best <= 0:
		return head + "even as a gift it falls short by " + whole(-worst) + instead + whole(-best) + "."
	case worst <= 0:
		return head + "the fair offer of " + whole(best) + " is gone: even as a gift it falls short by " + whole(-worst) + "."
	}
	return head + "the fair offer falls from " + whole(best) + " to " + whole(worst) + "."
}

// inputs lists what is uncertain, with a rough width of what it moves: nearly all
// of them shift every draw alike.
func (m *model) inputs(j *joint, o *outlook) []input {
	var list []input
	normal := normalTable()
	add := func(in input) {
		if in.high > in.low && in.rough > 0 {
			list = append(list, in)
		}
	}
	if !m.scrap {
		in := input{id: "worth", title: "Worth, sound", lead: "If a sound one is worth ", than: instead}
		in.low = kernel.Exp(m.belief.mu + float64(m.belief.sd*normal.at(0.1)))
		in.high = kernel.Exp(m.belief.mu + float64(m.belief.sd*normal.at(0.9)))
		in.lowAt, in.highAt, in.rough = whole(cents(in.low)), whole(cents(in.high)), in.high-in.low
		in.redraw = func(at float64, into []float64) {
			for i := range into {
				into[i] = m.price(j, i, at+m.kept, j.repair[i], j.hiddenBefore(i), j.landing[i], j.ruined[i])
			}
		}
		add(in)
		add(m.overrunInput(j))
		for t := range m.tasks {
			add(m.repairInput(j, &m.tasks[t]))
		}
		add(m.hiddenInput(j))
		add(m.careInput(j, o))
	}
	for t := range m.landing {
		if l := &m.landing[t]; !l.line.Off {
			add(m.landingInput(j, l))
		}
	}
	return list
}

// hiddenBefore is what hidden remedies cost in a draw, were it not ruined.
func (j *joint) hiddenBefore(i int) float64 { return float64(j.extra[i] * j.over[i]) }

// price is the break-even price of a draw from its parts; worth must be known.
// Where repair is ruled out, hidden is not what the remedies cost but all that
// is lost down to the scrap.
func (m *model) price(j *joint, i int, value, repair, hidden, land float64, ruined bool) float64 {
	switch {
	case m.scrap:
		repair, hidden = value-j.left[i], 0
	case ruined:
		hidden = max(value-j.left[i]-repair, 0)
	}
	return (value - float64(m.file.Shop.Fees) - land - repair - hidden) / m.taxed()
}

func (m *model) overrunInput(j *joint) input {
	b, normal := m.overrun(), normalTable()
	in := input{id: "overrun", title: "Overrun of repairs", lead: "If repairs come to ", than: " of what is estimated" + instead}
	if b.sd == 0 {
		return in
	}
	in.low, in.high = kernel.Exp(b.mu+float64(b.sd*normal.at(0.1))), kernel.Exp(b.mu+float64(b.sd*normal.at(0.9)))
	in.lowAt, in.highAt = percent(in.low), percent(in.high)
	in.rough = float64((in.high - in.low) * (average(j.base) + average(j.extra)))
	in.redraw = func(at float64, into []float64) {
		for i := range into {
			into[i] = m.price(j, i, j.worth[i], float64(j.base[i]*at), float64(j.extra[i]*at), j.landing[i], j.ruined[i])
		}
	}
	return in
}

// line is what the swings of one line share.
func line(t *task) input {
	in := input{id: t.line.Kind + ":" + t.line.ID, title: t.line.Title, lead: "If \u201c" + t.line.Title + "\u201d costs ", than: instead}
	in.low, in.high = t.pert.at(0.1), t.pert.at(0.9)
	in.lowAt, in.highAt = whole(cents(in.low)), whole(cents(in.high))
	in.rough = in.high - in.low
	return in
}

func (m *model) repairInput(j *joint, t *task) input {
	in := line(t)
	in.rough = float64(in.rough * average(j.over))
	in.redraw = func(at float64, into []float64) {
		m.column(t, into)
		for i, c := range into {
			repair := float64((j.base[i] - c + at) * j.over[i])
			into[i] = m.price(j, i, j.worth[i], repair, j.hiddenBefore(i), j.landing[i], j.ruined[i])
		}
	}
	return in
}

func (m *model) landingInput(j *joint, t *task) input {
	in := line(t)
	in.redraw = func(at float64, into []float64) {
		m.column(t, into)
		for i, c := range into {
			into[i] = m.price(j, i, j.worth[i], j.repair[i], j.hiddenBefore(i), j.landing[i]-c+at, j.ruined[i])
		}
	}
	return in
}

// hiddenInput is the whole of what was not checked, the loss of a ruined thing
// with it; at a value there is no other loss.
func (m *model) hiddenInput(j *joint) input {
	in := input{id: "hidden", title: "What was not checked", lead: "If what was not checked costs ", than: instead}
	in.low, in.high = j.cells.nth(j.hidden, place(0.1, Draws), j.room), j.cells.nth(j.hidden, place(0.9, Draws), j.room)
	in.lowAt, in.highAt = whole(cents(in.low)), whole(cents(in.high))
	in.rough = in.high - in.low
	in.redraw = func(at float64, into []float64) {
		for i := range into {
			into[i] = m.price(j, i, j.worth[i], j.repair[i], at, j.landing[i], false)
		}
	}
	return in
}

var keeping = [3]string{"well kept", "ordinarily kept", "neglected"}

// careInput is how the thing was kept. Its 10 % and 90 % are classes too: where
// one class fills all between, there is nothing to swing.
func (m *model) careInput(j *joint, o *outlook) input {
	in := input{id: "care", title: "How it was kept", lead: "If it was ", than: instead}
	if len(m.suspects) == 0 {
		return in
	}
	low, high := m.care.class(0.1), m.care.class(0.9)
	in.low, in.high = float64(low), float64(high)
	in.lowAt, in.highAt = keeping[low], keeping[high]
	in.rough = math.Abs(o.open.whole[high]-o.open.whole[low]) * m.taxed()
	in.redraw = func(at float64, into []float64) {
		all := spare.Get().(*joint)
		defer all.release()
		for i := range all.class {
			all.class[i] = uint8(at)
		}
		m.hide(j, all.class, all.extra, all.ruined, false)
		for i := range into {
			into[i] = m.price(j, i, j.worth[i], j.repair[i], float64(all.extra[i]*j.over[i]), j.landing[i], all.ruined[i])
		}
	}
	return in
}

// class is the q-quantile of the classes.
func (c *care) class(q float64) int {
	if q < c.post[0] {
		return 0
	}
	if q < c.post[0]+c.post[1] {
		return 1
	}
	return 2
}
