package appraisal

import (
	"fmt"
	"math"
	"sort"

	"asfound/rubrics/limit"
)

// Tie-downs are bought of two kinds: a strap where its rating does, else a chain.
const (
	boughtStrap = "webbing 2 in"
	boughtChain = "chain 3/8 grade 43"
)

// Common practice beyond the rule's least: a top-heavy piece gets a direct tie-down
// to each corner, a light one two; alike pieces that two people carry go as one
// bundle.
const (
	topHeavyTies  = 4
	lightTopHeavy = 2
	lightWeight   = 1100 // lb, where 49 CFR 393.110 asks for more too
	bundleWeight  = 150  // lb of one, at its likely weight
)

// lashed is what is tied as one: a piece, or a bundle of alike ones.
type lashed struct {
	*moved
	weight float64 // lb, at its largest
	count  int
}

func (w *ride) lashed() []lashed {
	var out []lashed
	for i := range w.load {
		p := &w.load[i]
		l := lashed{p, p.weight.span.High, p.Count}
		if p.Count > 1 && !p.TopHeavy && p.weight.span.Likely <= bundleWeight {
			l.weight, l.count = float64(l.weight*float64(p.Count)), 1
		}
		out = append(out, l)
	}
	sort.SliceStable(out, func(a, b int) bool { return out[a].weight > out[b].weight })
	return out
}

// practice is how many tie-downs common practice gives it.
func (l *lashed) practice() int {
	switch {
	case !l.TopHeavy:
		return 0
	case l.weight > lightWeight:
		return topHeavyTies
	}
	return lightTopHeavy
}

// tied is what one kind of own tie-down gives to the load.
type tied struct {
	kind  string
	count int
}

// tying is how the pieces are lashed down.
type tying struct {
	trial
	own            []tied
	straps, chains int // to buy
	each           float64
	total          int
	set            bool // own ones are told
}

// strength is the working load limit of a kind, lb; 0 where none is known.
func strength(kind string) float64 {
	res, err := limit.Compute("tie-down-rating", map[string]string{"kind": kind})
	if err != nil {
		return 0
	}
	return res.Value
}

// tie shares the own tie-downs out, the heaviest piece first. Each holds direct,
// from the load to the deck, and so counts half of its working load limit
// (49 CFR 393.106(d)): together they must come to the piece's weight.
func (w *ride) tie() tying {
	var t tying
	t.set = len(w.haul.TieDowns) > 0
	type rated struct {
		kind string
		wll  float64
		left int
	}
	var own []rated
	for _, kind := range sortedKeys(w.haul.TieDowns) {
		if n := w.haul.TieDowns[kind]; n > 0 {
			own = append(own, rated{kind, strength(kind), n})
		}
	}
	sort.SliceStable(own, func(a, b int) bool { return own[a].wll > own[b].wll })
	used := map[string]int{}
	load := w.lashed()
	for i := range load {
		p := &load[i]
		rule := w.rule(p, "", 0)
		if i == 0 {
			t.trial = rule
		}
		if rule.limit == nil {
			t.standing, t.text = open, rule.text
			return t
		}
		want := max(int(rule.limit.Value), p.practice())
		for range p.count {
			need, held := want, 0.0
			for k := range own {
				for own[k].left > 0 && own[k].wll > 0 && (need > 0 || held < p.weight) {
					own[k].left--
					used[own[k].kind]++
					held += own[k].wll
					need--
				}
			}
			t.total += want
			t.buy(max(need, 0), p.weight-held)
		}
		if i == 0 {
			t.each = p.weight / float64(max(want, 1))
		}
	}
	for _, o := range own {
		if n := used[o.kind]; n > 0 {
			t.own = append(t.own, tied{o.kind, n})
		}
	}
	w.tieFinding(&t, load)
	return t
}

// buy adds what a piece still lacks, n tie-downs or so many pounds.
func (t *tying) buy(n int, rest float64) {
	if n == 0 && rest <= 0 {
		return
	}
	strap, chain := strength(boughtStrap), strength(boughtChain)
	if strap == 0 || chain == 0 {
		return
	}
	n = max(n, 1)
	if rest <= float64(float64(n)*strap) {
		t.straps += n
		return
	}
	t.chains += max(n, int(math.Ceil(rest/chain)))
}

// rule is 49 CFR 393.110 for one piece, not blocked in front; wll and count hold
// the own ones against it.
func (w *ride) rule(p *lashed, wll string, count int) trial {
	weight := w.in(p.weight, "lb")
	if told := p.moved.weight.told; told != nil {
		weight = *told
	}
	given := map[string]string{
		"weight": quantityText(weight), "length": quantityText(Quantity{round4(p.length.span.High / 12), "ft"}), "blocked": "no", "tie": "direct",
	}
	if wll != "" {
		given["wll"], given["count"] = wll, fmt.Sprint(count)
	}
	return w.try("tie-downs", given)
}

func (w *ride) tieFinding(t *tying, load []lashed) {
	if len(load) == 0 {
		t.trial = missed(w.T("No piece of it applies to what was told about it."))
		return
	}
	top := &load[0]
	text := w.many(t.total, "One tie-down in all, each for at least %s on the heaviest piece (direct, not blocked in front).",
		"%s tie-downs in all, each for at least %s on the heaviest piece (direct, not blocked in front).", w.say(t.each, "lb"))
	if top.practice() == topHeavyTies {
		text += " " + w.T("Four to a top-heavy piece, one to each corner, is common practice beyond the rule's least.")
	}
	switch {
	case !t.set:
		t.trial = trial{standing: open, text: text, limit: t.limit, missing: []string{"haul.tie_downs"}}
	case t.straps+t.chains > 0:
		t.trial = trial{standing: lacks, text: text + " " + w.F("To be bought or borrowed: %s.", w.spelled(t.straps+t.chains)), limit: t.limit}
	default:
		t.trial = trial{text: text + " " + w.T("Your own do."), limit: t.limit}
		for _, o := range t.own {
			if o.count >= top.practice() {
				if held := w.rule(top, quantityText(Quantity{strength(o.kind), "lb"}), o.count); held.limit != nil && held.standing == passes {
					t.limit = held.limit
				}
				break
			}
		}
	}
}
