package appraisal

import (
	"fmt"
	"strings"
)

// conclusion says in plain sentences who leads, by how much, what would change
// that, and what is not known.
func conclusion(c *Comparison, listings []rankable, results []*Result) []string {
	var free, barred []int // in order of rank
	for _, i := range c.Order {
		if listings[i].gated {
			barred = append(barred, i)
		} else {
			free = append(free, i)
		}
	}
	out := append(noneWorthIts(c, free), leading(c, listings, free))
	if len(free) > 0 {
		out = append(out, inMoney(c, free)...)
	}
	for _, i := range barred {
		out = append(out, fmt.Sprintf("%s: %s. No weight and no price lifts it above a listing without this verdict.", c.quoted(i), c.Sides[i].Verdict.Title))
	}
	for i := range c.Sides {
		out = append(out, gaps(c, listings, results, i)...)
	}
	switch {
	case len(c.Moves) > 0:
		out = append(out, c.Moves[0].Sentence)
	case len(free) > 1:
		out = append(out, fmt.Sprintf("No single weight, from 0 to %d, gives another leader.", mostWeight))
	}
	return out
}

// noneWorthIts says first of all that every one that could be bought is priced
// above its walk-away price: a leader among them is no advice to buy.
func noneWorthIts(c *Comparison, free []int) []string {
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
	return []string{"None of those that may be bought is worth its price as things stand."}
}

// quoted sets a title apart from the sentence around it: titles hold commas.
func (c *Comparison) quoted(i int) string { return "\u201c" + c.Sides[i].Title + "\u201d" }

// leading names the one that leads the ranking, and its verdict.
func leading(c *Comparison, listings []rankable, free []int) string {
	if len(free) == 0 {
		return "None leads: the verdict bars every one of them."
	}
	s, title := &c.Sides[free[0]], c.quoted(free[0])
	points := "on nothing but what is not known"
	if s.Score != nil {
		points = fmt.Sprintf("with %.1f of 100 points", *s.Score)
	}
	verdict := " Its verdict: " + lowered(s.Verdict.Title) + "."
	if len(free) == 1 {
		return fmt.Sprintf("%s leads, %s: the verdict bars all others.%s", title, points, verdict)
	}
	next := c.quoted(free[1])
	weights := weightsOf(c.Criteria)
	lead := listings[free[0]].sum(weights) - listings[free[1]].sum(weights)
	if lead == 0 {
		return fmt.Sprintf("%s leads, %s, level with %s, only because it was named first.%s", title, points, next, verdict)
	}
	by := fmt.Sprintf("%.1f", tenths(100*(float64(lead)/float64(full*total(weights)))))
	if by == "0.0" {
		by = "less than 0.1"
	}
	return fmt.Sprintf("%s leads, %s, %s before %s.%s", title, points, by, next, verdict)
}

// inMoney holds the leader against each that no verdict bars.
func inMoney(c *Comparison, free []int) []string {
	lead := free[0]
	s := &c.Sides[lead]
	priced := false
	for i := range c.Sides {
		priced = priced || c.Sides[i].Ahead != nil
	}
	switch {
	case !priced:
		return []string{"None can be priced yet, so none is held against another in money."}
	case s.Ahead == nil:
		return nil
	}
	average := c.quoted(lead) + " " + onAverage(*s.Ahead)
	var out []string
	for _, i := range free[1:] {
		p := c.Better[lead][i]
		if p == nil {
			continue
		}
		opening, who := average+"; in", "it"
		if average = ""; len(out) > 0 {
			opening, who = "In", c.quoted(lead)
		}
		out = append(out, fmt.Sprintf("%s %s of 100 cases %s is a better buy than %s. %s", opening, inHundred(*p), who, c.quoted(i), levelling(c, lead, i, *p)))
	}
	if average != "" {
		out = append(out, average+".")
	}
	if walk := s.WalkAway; !walk.None && *s.Price > walk.Price {
		out = append(out, fmt.Sprintf("%s is offered above its walk-away price of %s.", c.quoted(lead), whole(walk.Price)))
	}
	return out
}

func onAverage(ahead Money) string {
	switch a := whole(max(ahead, -ahead)); {
	case a == "0":
		return "comes out even on average"
	case ahead < 0:
		return fmt.Sprintf("falls short by %s on average", a)
	default:
		return fmt.Sprintf("comes out ahead by %s on average", a)
	}
}

// levelling says at which price the worse buy of two would draw level.
func levelling(c *Comparison, a, b int, odds float64) string {
	worse, other := b, a
	if odds < 0.5 {
		worse, other = a, b
	}
	s := &c.Sides[worse]
	price := c.Overtake[worse][other]
	switch {
	case *price < 0:
		return c.quoted(worse) + " would not draw level even as a gift."
	case whole(*price) == whole(*s.Price):
		return "At these prices they are level."
	}
	return fmt.Sprintf("%s would draw level at %s instead of %s.", c.quoted(worse), whole(*price), whole(*s.Price))
}

// gaps says what is not known of a side, and what that does to its place.
func gaps(c *Comparison, listings []rankable, results []*Result, i int) []string {
	s := &c.Sides[i]
	var out, open []string
	if s.Missing != "" {
		out = append(out, c.quoted(i)+": "+lowered(s.Missing))
	}
	for k := range c.Criteria {
		if c.Criteria[k].Weight > 0 && listings[i].parts[k] == notKnown {
			open = append(open, lowered(c.Criteria[k].Title))
		}
	}
	if len(open) > 0 {
		out = append(out, fmt.Sprintf("Not known of %s, so counted as the middle of the scale: %s.", c.quoted(i), strings.Join(open, ", ")))
	}
	if beyondRepair(results[i]) {
		out = append(out, fmt.Sprintf("A finding at %s cannot be put right, so in hours of work it counts as the worst.", c.quoted(i)))
	}
	return out
}
