package appraisal

import "sort"

// next ranks the open points: danger checks first whatever they are worth, what
// is held last, the rest by the gain of knowing per minute. The gain is the
// expected value of sample information at the price asked about: how much better
// one decides to buy or not, if the answer were known before.
func next(m *model, o *outlook, price float64) []Next {
	out := []Next{}
	var after view
	if o != nil {
		after = newView(len(o.cost))
	}
	for i := range m.suspects {
		s := &m.suspects[i]
		c := s.j.check
		n := Next{Check: c.ID, Title: c.Title, Hazard: c.Hazard, Minutes: c.Minutes, Must: c.Hazard == "danger" && s.j.held == "", Held: m.voice.held(s.j)}
		if o != nil {
			o.without(&o.open, i, &after)
			branches := o.split(&after, &o.first, i)
			gain := m.gain(branches[:], price)
			n.answers = m.answered(branches)
			n.Gain, n.PerMin = cents(gain), cents(gain/c.Minutes)
		}
		out = append(out, n)
	}
	sort.SliceStable(out, func(a, b int) bool {
		if out[a].Must != out[b].Must {
			return out[a].Must
		}
		if held := out[a].Held != ""; held != (out[b].Held != "") {
			return !held
		}
		return out[a].PerMin > out[b].PerMin
	})
	return out
}

// answered is what an open point would mean once it is known, for comparing: the
// chance that it is bad or failed, and what either answer would add to the mean of
// coming out ahead at any price, with tax.
type answered struct {
	chance     float64
	bad, sound float64
}

func (m *model) answered(b [3]branch) answered {
	mean := b[0].worth + b[1].worth + b[2].worth
	a := answered{chance: b[1].chance + b[2].chance}
	if a.chance > 0 {
		a.bad = float64(((b[1].worth+b[2].worth)/a.chance - mean) * m.taxed())
	}
	if b[0].chance > 0 {
		a.sound = float64((b[0].worth/b[0].chance - mean) * m.taxed())
	}
	return a
}

// gain is the value of knowing which branch it is before buying at a price or
// walking away, with tax.
func (m *model) gain(branches []branch, price float64) float64 {
	buy, walk := make([]float64, len(branches)), make([]float64, len(branches))
	signal, weights := make([]int, len(branches)), make([]float64, len(branches))
	for i, b := range branches {
		signal[i], weights[i] = i, b.chance
		if b.chance > 0 {
			buy[i] = float64((b.worth/b.chance - price) * m.taxed())
		}
	}
	return Information([][]float64{buy, walk}, signal, weights)
}
