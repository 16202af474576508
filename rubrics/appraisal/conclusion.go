package appraisal

import "strings"

// conclusion says in plain sentences who leads, by how much, what would change
// that, and what is not known.
func conclusion(v voice, c *Comparison, listings []rankable, results []*Result) []string {
	var free, barred []int // in order of rank
	for _, i := range c.Order {
		if listings[i].gated {
			barred = append(barred, i)
		} else {
			free = append(free, i)
		}
	}
	out := append(noneWorthIts(v, c, free), leading(v, c, listings, free))
	if len(free) > 0 {
		out = append(out, inMoney(v, c, free)...)
	}
	for _, i := range barred {
		out = append(out, v.F("%s: %s. No weight and no price lifts it above a listing without this verdict.", c.quoted(i), c.Sides[i].Verdict.Title))
	}
	for i := range c.Sides {
		out = append(out, gaps(v, c, listings, results, i)...)
	}
	switch {
	case len(c.Moves) > 0:
		out = append(out, c.Moves[0].Sentence)
	case len(free) > 1:
		out = append(out, v.F("No single weight, from 0 to %d, gives another leader.", mostWeight))
	}
	return out
}

// noneWorthIts says first of all that every one that could be bought is priced
// above its walk-away price: a leader among them is no advice to buy.
func noneWorthIts(v voice, c *Comparison, free []int) []string {
	priced := 0
	for _, i := range free {
		s := &c.Sides[i]
		if s.Price == nil || s.WalkAway == nil {
			continue
		}
		priced++
		if !s.WalkAway.None && *s.Price <= s.WalkAway.Price {
			return nil
		}
	}
	if priced == 0 {
		return nil
	}
	return []string{v.T("None of those that may be bought is worth its price as things stand.")}
}

// quoted sets a title apart from the sentence around it: titles hold commas.
func (c *Comparison) quoted(i int) string { return "\u201c" + c.Sides[i].Title + "\u201d" }

// leading names the one that leads the ranking, and its verdict.
func leading(v voice, c *Comparison, listings []rankable, free []int) string {
	if len(free) == 0 {
		return v.T("None leads: the verdict bars every one of them.")
	}
	s, title := &c.Sides[free[0]], c.quoted(free[0])
	points := v.T("on nothing but what is not known")
	if s.Score != nil {
		points = v.F("with %.1f of 100 points", *s.Score)
	}
	verdict := " " + v.F("Its verdict: %s.", lowerFirst(s.Verdict.Title))
	if len(free) == 1 {
		return v.F("%s leads, %s: the verdict bars all others.", title, points) + verdict
	}
	next := c.quoted(free[1])
	weights := weightsOf(c.Criteria)
	lead := listings[free[0]].sum(weights) - listings[free[1]].sum(weights)
	if lead == 0 {
		return v.F("%s leads, %s, level with %s, only because it was named first.", title, points, next) + verdict
	}
	by := tenths(100 * (float64(lead) / float64(full*total(weights))))
	if by == 0 {
		return v.F("%s leads, %s, less than %.1f before %s.", title, points, 0.1, next) + verdict
	}
	return v.F("%s leads, %s, %.1f before %s.", title, points, by, next) + verdict
}

// inMoney holds the leader against each that no verdict bars.
func inMoney(v voice, c *Comparison, free []int) []string {
	lead := free[0]
	s := &c.Sides[lead]
	priced := false
	for i := range c.Sides {
		priced = priced || c.Sides[i].Ahead != nil
	}
	switch {
	case !priced:
		return []string{v.T("None can be priced yet, so none is held against another in money.")}
	case s.Ahead == nil:
		return nil
	}
	average := onAverage(v, c.quoted(lead), *s.Ahead)
	var out []string
	for _, i := range free[1:] {
		p := c.Better[lead][i]
		if p == nil {
			continue
		}
		says := v.F("In %s of 100 cases %s is a better buy than %s.", v.inHundred(*p), c.quoted(lead), c.quoted(i))
		if len(out) == 0 {
			says = v.F("%s; in %s of 100 cases it is a better buy than %s.", average, v.inHundred(*p), c.quoted(i))
		}
		out = append(out, says+" "+levelling(v, c, lead, i, *p))
	}
	if len(out) == 0 {
		out = append(out, average+".")
	}
	if walk := s.WalkAway; !walk.None && *s.Price > walk.Price {
		out = append(out, v.F("%s is offered above its walk-away price of %s.", c.quoted(lead), v.whole(walk.Price)))
	}
	return out
}

// onAverage begins a sentence with what one comes out ahead by.
func onAverage(v voice, title string, ahead Money) string {
	switch a := v.whole(max(ahead, -ahead)); {
	case a == "0":
		return v.F("%s comes out even on average", title)
	case ahead < 0:
		return v.F("%s falls short by %s on average", title, a)
	default:
		return v.F("%s comes out ahead by %s on average", title, a)
	}
}

// levelling says at which price the worse buy of two would draw level.
func levelling(v voice, c *Comparison, a, b int, odds float64) string {
	worse, other := b, a
	if odds < 0.5 {
		worse, other = a, b
	}
	s := &c.Sides[worse]
	price := c.Overtake[worse][other]
	switch {
	case *price < 0:
		return v.F("%s would not draw level even as a gift.", c.quoted(worse))
	case v.whole(*price) == v.whole(*s.Price):
		return v.T("At these prices they are level.")
	}
	return v.F("%s would draw level at %s instead of %s.", c.quoted(worse), v.whole(*price), v.whole(*s.Price))
}

// gaps says what is not known of a side, and what that does to its place.
func gaps(v voice, c *Comparison, listings []rankable, results []*Result, i int) []string {
	s := &c.Sides[i]
	var out, open []string
	if s.Missing != "" {
		out = append(out, c.quoted(i)+": "+lowerFirst(s.Missing))
	}
	for k := range c.Criteria {
		if c.Criteria[k].Weight > 0 && listings[i].parts[k] == notKnown {
			open = append(open, lowerFirst(c.Criteria[k].Title))
		}
	}
	if len(open) > 0 {
		out = append(out, v.F("Not known of %s, so counted as the middle of the scale: %s.", c.quoted(i), strings.Join(open, ", ")))
	}
	if beyondRepair(results[i]) {
		out = append(out, v.F("A finding at %s cannot be put right, so in hours of work it counts as the worst.", c.quoted(i)))
	}
	return out
}
