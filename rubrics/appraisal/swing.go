package appraisal

import (
	"sort"

	"asfound/rubrics/kernel"
	"asfound/rubrics/say"
)

const (
	mostSwings = 5
	leastSwing = 1_00 // in cents: what does not show in whole units is none
)

// input is one thing that might turn out low or high.
type input struct {
	id, title     string
	low, high     float64
	lowAt, highAt string
	// what is said of it: three patterns of the worse and the better value (and the
	// line's title before them).
	says swingWords
	// redraw writes the break-even prices with the input at a value.
	redraw func(at float64, into []float64)
	// slope is what one cent of the input does to every one of them alike, 0 where
	// it does not.
	slope float64
}

// swings finds the inputs that move the fair offer most. Each stands at its 10 %
// and at its 90 % while all else is drawn as before, and the fair offer is read
// from the draws again.
func swings(m *model, j *joint) []Swing {
	out := []Swing{}
	more := spare.Get().(*joint)
	defer more.release()
	column, at := more.breakEven, place(below(m.file.Shop.Odds.Fair), Draws)
	for _, kind := range m.inputs(j) {
		for _, in := range kind {
			s := Swing{Input: in.id, Title: in.title, LowAt: in.lowAt, HighAt: in.highAt}
			low, high := in.fair(func(x float64) float64 {
				in.redraw(x, column)
				return j.cells.nth(column, at, j.room)
			})
			s.Low, s.High = cents(low), cents(high)
			s.Sentence = s.sentence(m.voice, &in, m.taxed())
			out = append(out, s)
			sort.SliceStable(out, func(a, b int) bool { return out[a].width() > out[b].width() })
			if len(out) > mostSwings {
				// The wider a line of a kind, the more it moves: the others follow.
				last := out[mostSwings].Input == in.id
				if out = out[:mostSwings]; last {
					break
				}
			}
		}
	}
	for len(out) > 0 && out[len(out)-1].width() < leastSwing {
		out = out[:len(out)-1]
	}
	return out
}

// fair gives the fair offers at the low and the high value, from what it is at one.
func (in *input) fair(at func(x float64) float64) (low, high float64) {
	low = at(in.low)
	if in.slope != 0 {
		return low, low + float64(in.slope*(in.high-in.low))
	}
	return low, at(in.high)
}

func (s *Swing) width() Money { return max(s.High-s.Low, s.Low-s.High) }

// swingWords are the sentences of a swing, with the worse and the better value: where
// even a gift falls short by two sums, where the fair offer is gone and by what a
// gift falls short, and where it falls from one to another.
type swingWords struct{ short, gone, falls string }

var (
	worthSwing = swingWords{
		say.Key("If a sound one is worth %s instead of %s, even as a gift it falls short by %s instead of %s."),
		say.Key("If a sound one is worth %s instead of %s, the fair offer of %s is gone: even as a gift it falls short by %s."),
		say.Key("If a sound one is worth %s instead of %s, the fair offer falls from %s to %s."),
	}
	overrunSwing = swingWords{
		say.Key("If repairs come to %s of what is estimated instead of %s, even as a gift it falls short by %s instead of %s."),
		say.Key("If repairs come to %s of what is estimated instead of %s, the fair offer of %s is gone: even as a gift it falls short by %s."),
		say.Key("If repairs come to %s of what is estimated instead of %s, the fair offer falls from %s to %s."),
	}
	hiddenSwing = swingWords{
		say.Key("If what was not checked costs %s instead of %s, even as a gift it falls short by %s instead of %s."),
		say.Key("If what was not checked costs %s instead of %s, the fair offer of %s is gone: even as a gift it falls short by %s."),
		say.Key("If what was not checked costs %s instead of %s, the fair offer falls from %s to %s."),
	}
	careSwing = swingWords{
		say.Key("If it was %s instead of %s, even as a gift it falls short by %s instead of %s."),
		say.Key("If it was %s instead of %s, the fair offer of %s is gone: even as a gift it falls short by %s."),
		say.Key("If it was %s instead of %s, the fair offer falls from %s to %s."),
	}
	lineSwing = swingWords{
		say.Key("If \u201c%s\u201d costs %s instead of %s, even as a gift it falls short by %s instead of %s."),
		say.Key("If \u201c%s\u201d costs %s instead of %s, the fair offer of %s is gone: even as a gift it falls short by %s."),
		say.Key("If \u201c%s\u201d costs %s instead of %s, the fair offer falls from %s to %s."),
	}
)

// sentence says a swing; below nothing it is what is missing that counts, and no
// tax is paid on a gift.
func (s *Swing) sentence(v voice, in *input, taxed float64) string {
	short := func(m Money) string { return v.whole(cents(float64(-m) * taxed)) }
	worse, better, worst, best := s.LowAt, s.HighAt, s.Low, s.High
	if s.High < s.Low {
		worse, better, worst, best = better, worse, best, worst
	}
	args := []any{worse, better}
	if in.says == lineSwing {
		args = []any{in.title, worse, better}
	}
	switch {
	case best <= 0:
		return v.Pattern(in.says.short, append(args, short(worst), short(best))...)
	case worst <= 0:
		return v.Pattern(in.says.gone, append(args, v.whole(best), short(worst))...)
	}
	return v.Pattern(in.says.falls, append(args, v.whole(best), v.whole(worst))...)
}

// inputs lists what is uncertain by kind, in each kind the widest first.
func (m *model) inputs(j *joint) [][]input {
	var repair, landing []input
	for t := range m.landing {
		if l := &m.landing[t]; !l.line.Off && l.pert.high > l.pert.low {
			landing = append(landing, m.landingInput(j, l))
		}
	}
	widestFirst(landing)
	if m.scrap {
		return [][]input{landing}
	}
	for t := range m.tasks {
		if l := &m.tasks[t]; l.pert.high > l.pert.low {
			repair = append(repair, m.repairInput(j, l))
		}
	}
	widestFirst(repair)
	kinds := [][]input{}
	for _, in := range []input{m.worthInput(j), m.hiddenInput(j), m.careInput(j), m.overrunInput(j)} {
		if in.high > in.low {
			kinds = append(kinds, []input{in})
		}
	}
	return append(kinds, repair, landing)
}

func widestFirst(list []input) {
	sort.SliceStable(list, func(a, b int) bool { return list[a].high-list[a].low > list[b].high-list[b].low })
}

func (m *model) worthInput(j *joint) input {
	in := input{id: "worth", title: m.voice.T("Worth, sound"), says: worthSwing}
	normal := normalTable()
	in.low = kernel.Exp(m.belief.mu + float64(m.belief.sd*normal.at(0.1)))
	in.high = kernel.Exp(m.belief.mu + float64(m.belief.sd*normal.at(0.9)))
	in.lowAt, in.highAt = m.voice.whole(cents(in.low)), m.voice.whole(cents(in.high))
	in.redraw = func(at float64, into []float64) {
		a := m.account()
		for i := range into {
			into[i] = a.price(j, i, at+m.kept, j.repair[i], j.hiddenBefore(i), j.landing[i], j.ruined[i])
		}
	}
	return in
}

// hiddenBefore is what hidden remedies cost in a draw, were it not ruined.
func (j *joint) hiddenBefore(i int) float64 { return float64(j.extra[i] * j.over[i]) }

func (m *model) overrunInput(j *joint) input {
	b, normal := m.overrun(), normalTable()
	in := input{id: "overrun", title: m.voice.T("Overrun of repairs"), says: overrunSwing}
	if b.sd == 0 {
		return in
	}
	in.low, in.high = kernel.Exp(b.mu+float64(b.sd*normal.at(0.1))), kernel.Exp(b.mu+float64(b.sd*normal.at(0.9)))
	in.lowAt, in.highAt = m.voice.percent(in.low), m.voice.percent(in.high)
	in.redraw = func(at float64, into []float64) {
		a := m.account()
		for i := range into {
			into[i] = a.price(j, i, j.worth[i], float64(j.base[i]*at), float64(j.extra[i]*at), j.landing[i], j.ruined[i])
		}
	}
	return in
}

// line is what the swings of one line share.
func (v voice) line(t *task) input {
	in := input{id: t.line.Kind + ":" + t.line.ID, title: t.line.Title, says: lineSwing}
	in.low, in.high = t.pert.at(0.1), t.pert.at(0.9)
	in.lowAt, in.highAt = v.whole(cents(in.low)), v.whole(cents(in.high))
	return in
}

func (m *model) repairInput(j *joint, t *task) input {
	in := m.voice.line(t)
	in.redraw = func(at float64, into []float64) {
		a := m.account()
		m.sum(into, *t)
		for i, c := range into {
			repair := float64((j.base[i] - c + at) * j.over[i])
			into[i] = a.price(j, i, j.worth[i], repair, j.hiddenBefore(i), j.landing[i], j.ruined[i])
		}
	}
	return in
}

func (m *model) landingInput(j *joint, t *task) input {
	in := m.voice.line(t)
	a := m.account()
	in.slope = -1 / a.tax
	in.redraw = func(at float64, into []float64) {
		m.sum(into, *t)
		for i, c := range into {
			into[i] = j.breakEven[i] + (c-at)/a.tax
		}
	}
	return in
}

// hiddenInput is the whole of what was not checked, the loss of a ruined thing
// with it; at a value there is no other loss.
func (m *model) hiddenInput(j *joint) input {
	in := input{id: "hidden", title: m.voice.T("What was not checked"), says: hiddenSwing}
	in.low, in.high = j.cells.nth(j.hidden, place(0.1, Draws), j.room), j.cells.nth(j.hidden, place(0.9, Draws), j.room)
	in.lowAt, in.highAt = m.voice.whole(cents(in.low)), m.voice.whole(cents(in.high))
	in.slope = -1 / m.taxed()
	in.redraw = func(at float64, into []float64) {
		a := m.account()
		for i := range into {
			into[i] = a.price(j, i, j.worth[i], j.repair[i], at, j.landing[i], false)
		}
	}
	return in
}

var keeping = [3]string{say.Key("well kept"), say.Key("ordinarily kept"), say.Key("neglected")}

// careInput is how the thing was kept. Its 10 % and 90 % are classes too: where
// one class fills all between, there is nothing to swing.
func (m *model) careInput(j *joint) input {
	in := input{id: "care", title: m.voice.T("How it was kept"), says: careSwing}
	if len(m.suspects) == 0 {
		return in
	}
	low, high := m.care.class(0.1), m.care.class(0.9)
	in.low, in.high = float64(low), float64(high)
	in.lowAt, in.highAt = m.voice.Label(keeping[low]), m.voice.Label(keeping[high])
	in.redraw = func(at float64, into []float64) {
		a := m.account()
		all := spare.Get().(*joint)
		defer all.release()
		for i := range all.class {
			all.class[i] = uint8(at)
		}
		m.hide(j, all.class, all.extra, all.ruined, false)
		for i := range into {
			into[i] = a.price(j, i, j.worth[i], j.repair[i], float64(all.extra[i]*j.over[i]), j.landing[i], all.ruined[i])
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
