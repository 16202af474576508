package appraisal

import (
	"strings"

	"asfound/rubrics/say"
)

// conclusion says in plain sentences which is the better buy, by how much, what
// would change that, and what is not known.
func conclusion(v voice, c *Comparison, listings []rankable, results []*Result) []string {
	s := concluding{voice: v, c: c, listings: listings, results: results}
	for _, i := range c.Order {
		if listings[i].gated {
			s.barred = append(s.barred, i)
		} else {
			s.free = append(s.free, i)
		}
	}
	s.noneWorthIts()
	s.winner()
	for _, i := range s.barred {
		s.tell("%s: %s. No weight and no price lifts it above a listing without this verdict.", s.name(i), c.Sides[i].Verdict.Title)
	}
	s.turning()
	s.others()
	for i := range c.Sides {
		s.gaps(i)
	}
	return s.out
}

// concluding is a conclusion being written.
type concluding struct {
	voice
	c            *Comparison
	listings     []rankable
	results      []*Result
	free, barred []int // in order of rank
	// rival is the one held against the leader first: of those priced the one that
	// comes nearest in money, else the next in rank. -1 where there is none.
	rival int
	// none of those that may be bought is worth its price.
	none  bool
	named [MostCompared]bool
	out   []string
}

func (s *concluding) tell(pattern string, args ...string) {
	list := make([]any, len(args))
	for i, a := range args {
		list[i] = a
	}
	s.out = append(s.out, s.Pattern(pattern, list...))
}

// join adds to the sentence before.
func (s *concluding) join(pattern string, args ...string) {
	s.tell(pattern, args...)
	n := len(s.out)
	s.out = append(s.out[:n-2], s.out[n-2]+" "+s.out[n-1])
}

// noneWorthIts says first of all that every one that could be bought is priced
// above its walk-away price: a leader among them is no advice to buy.
func (s *concluding) noneWorthIts() {
	priced := 0
	for _, i := range s.free {
		side := &s.c.Sides[i]
		if side.Price == nil || side.WalkAway == nil {
			continue
		}
		priced++
		if !side.WalkAway.None && *side.Price <= side.WalkAway.Price {
			return
		}
	}
	if priced > 0 {
		s.none = true
		s.tell("None of those that may be bought is worth its price as things stand.")
	}
}

// quoted sets a title apart from the sentence around it: titles hold commas.
func (c *Comparison) quoted(v voice, i int) string { return v.F("\u201c%s\u201d", c.Sides[i].Title) }

// mostTitle is how many characters of a title a sentence takes: its letter tells
// it from the others.
const mostTitle = 60

// name is the title with its letter where it is first spoken of, then the letter:
// titles are long.
func (s *concluding) name(i int) string {
	if letter := s.c.Sides[i].Letter; s.named[i] {
		return letter
	}
	s.named[i] = true
	title := s.c.Sides[i].Title
	if r := []rune(title); len(r) > mostTitle {
		title = strings.TrimSpace(string(r[:mostTitle-1])) + "\u2026"
	}
	return s.F("\u201c%s\u201d", title) + " (" + s.c.Sides[i].Letter + ")"
}

// winner names the one that leads, by how much, at which price another would draw
// level, what its verdict is, and how it comes out by itself.
func (s *concluding) winner() {
	s.rival = -1
	if len(s.free) == 0 {
		s.tell("None leads: the verdict bars every one of them.")
		return
	}
	lead := s.free[0]
	for _, i := range s.free[1:] {
		p := s.c.Better[lead][i]
		switch {
		case s.rival < 0:
			s.rival = i
		case p == nil:
		case s.c.Better[lead][s.rival] == nil || *p < *s.c.Better[lead][s.rival]:
			s.rival = i
		}
	}
	side := &s.c.Sides[lead]
	switch {
	case s.rival < 0:
		s.tell("%s leads: the verdict bars all others.", s.name(lead))
	case s.level(lead):
		s.tell("%s and %s are level: the first leads only because it was named first.", s.name(lead), s.name(s.free[1]))
	case s.inMoney(lead, s.rival):
		best := say.Key("%s is the better buy: ahead of %s by %s on average, in %s of 100 cases.")
		if len(s.free) > 2 {
			best = say.Key("%s is the best buy: ahead of the nearest, %s, by %s on average, in %s of 100 cases.")
		}
		// What is not worth its price is no buy: it is only compared.
		switch {
		case s.none && len(s.free) > 2:
			best = say.Key("%s comes off best among them: better than the nearest, %s, by %s on average, in %s of 100 cases.")
		case s.none:
			best = say.Key("%s comes off better than %s: by %s on average, in %s of 100 cases.")
		}
		s.tell(best, s.name(lead), s.name(s.rival), s.whole(s.ahead(lead, s.rival)), s.inHundred(*s.c.Better[lead][s.rival]))
		s.levelling(lead, s.rival)
	default:
		s.byPoints(lead)
	}
	s.tell("Verdict on %s: %s.", s.name(lead), lowerFirst(side.Verdict.Title))
	if n := len(side.Verdict.Points); side.Verdict.Code == "not-proven" && n == 1 {
		s.join("The danger point that is open would bar it, should it turn out failed.")
	} else if side.Verdict.Code == "not-proven" {
		s.join("Any of its %s open danger points would bar it, should it turn out failed.", s.Whole(int64(n)))
	}
	priced := false
	for i := range s.c.Sides {
		priced = priced || s.c.Sides[i].Ahead != nil
	}
	switch {
	case !priced:
		s.tell("None can be priced yet, so none is held against another in money.")
	case side.Ahead != nil:
		s.byItself(lead)
	}
}

// level tells that the leader leads by the order given alone.
func (s *concluding) level(lead int) bool {
	weights := weightsOf(s.c.Criteria)
	return s.listings[lead].sum(weights) == s.listings[s.free[1]].sum(weights)
}

// ahead is by how much one comes out better than another on average.
func (s *concluding) ahead(a, b int) Money { return *s.c.Sides[a].Ahead - *s.c.Sides[b].Ahead }

// inMoney tells whether one is the better buy both on average and in most cases.
func (s *concluding) inMoney(a, b int) bool {
	p := s.c.Better[a][b]
	return p != nil && *p > 0.5 && s.ahead(a, b) >= 1_00
}

// byPoints names a leader that leads by what counts for the buyer, and who would in
// money alone.
func (s *concluding) byPoints(lead int) {
	next, side := s.free[1], &s.c.Sides[lead]
	points := func(i int) string {
		if p := s.c.Sides[i].Score; p != nil {
			return s.Number(*p, 1)
		}
		return s.Number(50, 1) // nothing of it is known, and that counts as the middle
	}
	if side.Score == nil {
		s.tell("%s leads, on nothing but what is not known.", s.name(lead))
	} else {
		s.tell("%s leads by what counts for you, with %s of 100 points to %s for %s.", s.name(lead), points(lead), points(next), s.name(next))
	}
	if s.c.Better[lead][s.rival] == nil {
		return
	}
	odds := *s.c.Better[lead][s.rival]
	if s.inMoney(s.rival, lead) {
		s.join("In money alone %s is the better buy: by %s on average, in %s of 100 cases.", s.name(s.rival), s.whole(s.ahead(s.rival, lead)), s.inHundred(1-odds))
	} else {
		s.join("In money it is the better buy than %s in %s of 100 cases.", s.name(s.rival), s.inHundred(odds))
	}
	s.levelling(lead, s.rival)
}

// levelling says at which price the worse buy of two would draw level.
func (s *concluding) levelling(a, b int) {
	worse, other := b, a
	if *s.c.Better[a][b] < 0.5 {
		worse, other = a, b
	}
	price := s.c.Overtake[worse][other]
	switch asked := *s.c.Sides[worse].Price; {
	case *price < 0:
		s.join("%s would not draw level even as a gift.", s.name(worse))
	case s.whole(*price) == s.whole(asked):
		s.join("At these prices they are level.")
	default:
		s.join("%s would draw level at %s instead of %s.", s.name(worse), s.whole(*price), s.whole(asked))
	}
}

// byItself says how the leader comes out at its own price.
func (s *concluding) byItself(lead int) {
	side, title := &s.c.Sides[lead], s.name(lead)
	switch a := s.whole(max(*side.Ahead, -*side.Ahead)); {
	case a == "0":
		s.tell("At its price of %s, %s comes out even on average.", s.whole(*side.Price), title)
	case *side.Ahead < 0:
		s.tell("At its price of %s, %s falls short by %s on average.", s.whole(*side.Price), title, a)
	default:
		s.tell("At its price of %s, %s comes out ahead by %s on average.", s.whole(*side.Price), title, a)
	}
	if walk := side.WalkAway; !walk.None && *side.Price > walk.Price {
		s.join("That is above its walk-away price of %s.", s.whole(walk.Price))
	}
}

// others holds the leader against the rest of those that no verdict bars.
func (s *concluding) others() {
	if len(s.free) == 0 {
		return
	}
	lead := s.free[0]
	for _, i := range s.free[1:] {
		p := s.c.Better[lead][i]
		if i == s.rival || p == nil {
			continue
		}
		s.tell("Against %s it is the better buy in %s of 100 cases.", s.name(i), s.inHundred(*p))
		s.levelling(lead, i)
	}
}

// gaps says what is not known of a side, and what that does to its place.
func (s *concluding) gaps(i int) {
	c, side := s.c, &s.c.Sides[i]
	if side.Missing != "" {
		s.out = append(s.out, s.name(i)+": "+lowerFirst(side.Missing))
	}
	var open []string
	for k := range c.Criteria {
		if c.Criteria[k].Weight > 0 && s.listings[i].parts[k] == notKnown {
			open = append(open, lowerFirst(c.Criteria[k].Title))
		}
	}
	if len(open) > 0 {
		s.tell("Not known of %s, so counted as the middle of the scale: %s.", s.name(i), strings.Join(open, ", "))
	}
	if beyondRepair(s.results[i]) {
		s.tell("A finding at %s cannot be put right, so in hours of work it counts as the worst.", s.name(i))
	}
}
