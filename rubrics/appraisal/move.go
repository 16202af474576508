package appraisal

import (
	"sort"
)

// moves finds for each criterion the smallest change of its weight, the others
// fixed, that gives another winner among those no verdict bars; nearest first.
func (c *Comparison) moves(v voice, listings []rankable) []Move {
	out := []Move{}
	weights := weightsOf(c.Criteria)
	winner := rank(listings, weights)[0]
	if listings[winner].gated {
		return out
	}
	for k := range c.Criteria {
		from := weights[k]
		to, ok := turn(listings, weights, winner, k)
		if !ok {
			continue
		}
		moved := append([]int(nil), weights...)
		moved[k] = to
		m := Move{Criterion: c.Criteria[k].ID, From: from, To: to, Winner: rank(listings, moved)[0]}
		m.Sentence = v.F("If %s counted %s instead of %s, %s would lead.", lowerFirst(c.Criteria[k].Title), v.Whole(int64(to)), v.Whole(int64(from)), c.quoted(v, m.Winner))
		out = append(out, m)
	}
	sort.SliceStable(out, func(a, b int) bool { return out[a].distance() < out[b].distance() })
	return out
}

func (m Move) distance() int { return max(m.To-m.From, m.From-m.To) }

// turn is the weight of criterion c nearest to its own at which somebody else
// leads. The lead over each rival is a straight line in that weight, so its zero
// tells where; a rival named earlier needs only a tie.
func turn(listings []rankable, weights []int, winner, c int) (to int, ok bool) {
	from := weights[c]
	if total(weights) == from {
		return 0, false // the only criterion that counts: its weight scales all alike
	}
	lead := &listings[winner]
	for i := range listings {
		rival := &listings[i]
		if i == winner || rival.gated {
			continue
		}
		slope := rival.counted(c) - lead.counted(c)
		rest := rival.sum(weights) - lead.sum(weights) - from*slope
		need := 1 // rest + weight*slope must come to this
		if i < winner {
			need = 0
		}
		at := -1
		switch {
		case slope > 0: // the rival is behind, so rest is below need
			at = (need - rest + slope - 1) / slope
		case slope < 0 && rest >= need:
			at = (rest - need) / -slope
		}
		if at < 0 || at > mostWeight {
			continue
		}
		if !ok || max(at-from, from-at) < max(to-from, from-to) {
			to, ok = at, true
		}
	}
	return to, ok
}
