package limit

import (
	"math"
	"sort"

	"asfound/rubrics/say"
)

// mixed is a bolt of one thread in a hole of another.
type mixed struct {
	bolt, hole *standardThread
	over       float64 // bolt larger than the hole's thread, mm
	gap        float64 // of the pitches, percent of the bolt's
	turns      float64 // until a quarter pitch out; 0 where the pitches are the same
}

// mix pairs a bolt with a hole by the rule of pairs, here also within one system:
// major diameters within 1 mm, pitches within 25 %. A bolt that goes into its own
// thread is no mix, and one of much smaller diameter drops through.
func mix(bolt, hole *standardThread) (mixed, bool) {
	x := mixed{bolt: bolt, hole: hole, over: bolt.majorMM() - hole.majorMM()}
	off := math.Abs(bolt.pitchMM() - hole.pitchMM())
	x.gap = off / bolt.pitchMM() * 100
	if off > 0.001 {
		x.turns = bolt.pitchMM() / (4 * off)
	}
	return x, bolt != hole && !more(math.Abs(x.over), 1) && !more(x.gap, 25)
}

// runs tells whether the bolt goes in by hand over its whole length.
func (x mixed) runs() bool { return !more(x.gap, 6) && !more(x.over, 0) }

// goes says how the bolt goes into the hole.
func (m *measured) goes(x mixed) string {
	turns := m.F("a quarter pitch out after %s turns", m.show(x.turns, 1))
	if x.turns == 0 {
		turns = m.T("of the same pitch")
	}
	switch {
	case x.runs():
		return m.F("a %s bolt in a %s hole: runs in loose by %s mm, %s, holds little", x.bolt.name, x.hole.name, m.show(-x.over, 3), turns)
	case more(x.over, 0):
		return m.F("a %s bolt in a %s hole: forced, too large by %s mm, %s, cuts or strips the thread", x.bolt.name, x.hole.name, m.show(x.over, 3), turns)
	}
	return m.F("a %s bolt in a %s hole: starts, %s, then binds and strips", x.bolt.name, x.hole.name, turns)
}

// forced lists what was probably forced: bolts into this hole, or this bolt into
// holes, the likeliest three first. Likely is what goes in at all: what runs, then
// the nearest pitch (judgement).
func (m *measured) forced(s *standardThread, hole bool) []Figure {
	var all []mixed
	for i := range threads {
		x, ok := mix(s, &threads[i])
		if hole {
			x, ok = mix(&threads[i], s)
		}
		if ok {
			all = append(all, x)
		}
	}
	sort.SliceStable(all, func(i, j int) bool {
		if a, b := all[i].runs(), all[j].runs(); a != b {
			return a
		}
		return all[i].gap < all[j].gap
	})
	title := say.Key("probably forced into: %s")
	if hole {
		title = say.Key("probably forced in: %s")
	}
	var out []Figure
	for _, x := range all[:min(3, len(all))] {
		other := x.hole
		if hole {
			other = x.bolt
		}
		out = append(out, Figure{Title: m.Pattern(title, other.name), Short: other.name, Value: x.turns, Unit: m.T("turns"), Text: m.goes(x)})
	}
	return out
}
