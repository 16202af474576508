package appraisal

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func compared(t interface {
	Helper()
	Fatal(...any)
}, prices []*Money, files ...*File) *Comparison {
	t.Helper()
	c, err := testJudge().Compare(files, prices)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// listing is an invented file with a title, an asking price and some findings.
func listing(title string, asking Money, findings map[string]Finding) *File {
	f := testFile()
	f.Listing.Title, f.Listing.Asking, f.Findings = title, &asking, findings
	return f
}

func concludes(c *Comparison, part string) bool {
	return slices.ContainsFunc(c.Sentences, func(s string) bool { return strings.Contains(s, part) })
}

func TestIdenticalListingsAreLevel(t *testing.T) {
	a, b := listing("Lift", 2400_00, nil), listing("Lift", 2400_00, nil)
	a.Shop.Tax, b.Shop.Tax = 7_25, 7_25
	c := compared(t, nil, a, b)
	for _, x := range [][2]int{{0, 1}, {1, 0}} {
		if p := c.Better[x[0]][x[1]]; p == nil || *p != 0.5 {
			t.Errorf("better %v, want exactly 0.5", p)
		}
		if m := c.Overtake[x[0]][x[1]]; m == nil || *m != 2400_00 {
			t.Errorf("overtake %v, want its own price", m)
		}
	}
	if c.Better[0][0] != nil || c.Overtake[1][1] != nil {
		t.Error("a listing is held against itself")
	}
	if c.Sides[0].Title != "Lift (1)" || c.Sides[1].Title != "Lift (2)" {
		t.Errorf("titles %q and %q", c.Sides[0].Title, c.Sides[1].Title)
	}
	if !slices.Equal(c.Order, []int{0, 1}) || len(c.Moves) != 0 || !concludes(c, "No single weight") || !concludes(c, "named first") {
		t.Errorf("order %v, moves %v, %q", c.Order, c.Moves, c.Sentences)
	}
}

// The same random numbers: what differs by a known sum alone differs by it in every
// draw, so the cheaper is always better and the overtaking price is its price.
func TestCommonRandomNumbers(t *testing.T) {
	c := compared(t, nil, listing("A", 2400_00, nil), listing("B", 2399_00, nil))
	if *c.Better[1][0] != 1 || *c.Better[0][1] != 0 || *c.Overtake[0][1] != 2399_00 {
		t.Errorf("better %g and %g, overtake %s", *c.Better[1][0], *c.Better[0][1], exact(*c.Overtake[0][1]))
	}
}

// A side holds what its appraisal alone says.
func TestSidesAreTheAppraisals(t *testing.T) {
	a := listing("A", 2400_00, map[string]Finding{"lock": grade(2), "weld": grade(4)})
	b := listing("B", 1200_00, map[string]Finding{"rope": grade(2), "hose": grade(1)})
	asked := Money(1000_00)
	c := compared(t, []*Money{nil, &asked}, a, b)
	for i, f := range []*File{a, b} {
		ask := Ask{}
		if i == 1 {
			ask.Price = &asked
		}
		r, err := testJudge().Of(f, ask)
		if err != nil {
			t.Fatal(err)
		}
		s := &c.Sides[i]
		if *s.Odds != r.Offer.At.Odds || *s.Ahead != *r.Offer.Ahead || *s.AllIn != *r.Offer.AllIn || *s.Fair != r.Offer.Fair || s.Hides != r.Hidden.Mean || *s.Price != r.Offer.At.Price {
			t.Errorf("side %d %+v is not the offer %+v", i, s, r.Offer)
		}
		hours := 0.0
		for _, l := range append(r.Estimate.Lines, r.Landing.Lines...) {
			if !l.Off {
				hours += l.Hours.Likely
			}
		}
		if math.Abs(s.Hours-hours) > 1e-9 {
			t.Errorf("side %d: %g hours, its lines have %g", i, s.Hours, hours)
		}
		if !(*s.AheadLow < *s.Ahead && *s.Ahead < *s.AheadTop) {
			t.Errorf("side %d: %d, %d, %d do not rise", i, *s.AheadLow, *s.Ahead, *s.AheadTop)
		}
		// Coming out ahead turns from a loss to a gain between the two odds.
		if (*s.AheadLow >= 0) != (*s.Odds >= 0.9) || (*s.AheadTop >= 0) != (*s.Odds >= 0.1) {
			t.Errorf("side %d: 10 %% at %d and 90 %% at %d do not fit odds of %g", i, *s.AheadLow, *s.AheadTop, *s.Odds)
		}
		if s.Gate != "" || s.Score == nil || s.Missing != "" {
			t.Errorf("side %d: gate %q, score %v, missing %q", i, s.Gate, s.Score, s.Missing)
		}
	}
	if sum := *c.Better[0][1] + *c.Better[1][0]; sum != 1 {
		t.Errorf("the two chances come to %g", sum)
	}
	// Asked at its overtaking price, each is better in half the draws.
	level := *c.Overtake[0][1]
	if d := compared(t, []*Money{&level, &asked}, a, b); math.Abs(*d.Better[0][1]-0.5) > 2e-4 {
		t.Errorf("at %s the first is better in %g of the draws", exact(level), *d.Better[0][1])
	}
}

// M57 through the whole: a failed danger point stands last whatever the weights.
func TestFailedDangerPointStandsLast(t *testing.T) {
	t.Parallel()
	barred := map[string]Finding{}
	for _, id := range []string{"weld", "rope", "hose", "paint", "only"} {
		barred[id] = grade(4)
	}
	barred["lock"] = grade(0)
	good := listing("Barred", 1_00, barred)
	good.Listing.Distance = &Quantity{0, "km"}
	poor := listing("Open", 9000_00, map[string]Finding{"hose": grade(1), "paint": grade(0)})
	rapid.Check(t, func(t *rapid.T) {
		good.Shop.Weights = map[string]int{}
		all := 0
		for _, k := range Criteria {
			good.Shop.Weights[k.ID] = rapid.IntRange(0, mostWeight).Draw(t, k.ID)
			all += good.Shop.Weights[k.ID]
		}
		if all == 0 { // refused: at least one must count
			good.Shop.Weights[Criteria[0].ID] = 1
		}
		c := compared(t, nil, good, poor)
		if !slices.Equal(c.Order, []int{1, 0}) || c.Sides[0].Gate != "do-not-use" || len(c.Moves) != 0 {
			t.Fatalf("order %v, gate %q, moves %v", c.Order, c.Sides[0].Gate, c.Moves)
		}
		if !concludes(c, "“Barred” (A): Do not use: tag it out") || !concludes(c, "“Open” (B) leads") {
			t.Fatalf("%q", c.Sentences)
		}
	})
}

// What cannot be priced stays in the comparison and is said.
func TestCompareWithoutPrices(t *testing.T) {
	bare := func(title string) *File {
		f := listing(title, 0, nil)
		f.Listing.Asking, f.Comparables, f.Listing.Distance = nil, nil, nil
		return f
	}
	c := compared(t, nil, bare(""), bare(" "))
	if c.Sides[0].Title != "Listing 1" || c.Sides[1].Title != "Listing 2" {
		t.Errorf("titles %q, %q", c.Sides[0].Title, c.Sides[1].Title)
	}
	for _, part := range []string{"None can be priced yet", "A: nothing says yet what a sound one is worth", "counted as the middle of the scale: coming out ahead, odds of coming out ahead, condition, distance"} {
		if !concludes(c, part) {
			t.Errorf("%q is not said: %q", part, c.Sentences)
		}
	}
	if p := c.Sides[0].Parts; p[0] != nil || p[1] != nil || p[2] != nil || p[3] == nil || p[4] == nil || p[5] != nil {
		t.Errorf("parts %v", p)
	}
	// Its worth is known, its price is not: the price that would do is still told.
	unpriced := listing("Unpriced", 0, nil)
	unpriced.Listing.Asking = nil
	c = compared(t, nil, listing("Priced", 2000_00, nil), unpriced)
	if c.Better[1][0] != nil || c.Overtake[0][1] != nil || c.Overtake[1][0] == nil || *c.Overtake[1][0] != 2000_00 {
		t.Errorf("better %v, overtake %v", c.Better, c.Overtake)
	}
	if s := c.Sides[1]; s.Missing != "No price is asked: enter one." || s.Fair == nil || s.Odds != nil || s.Price != nil {
		t.Errorf("side %+v", s)
	}
	// Nothing that counts is known: no score, but a place.
	f := bare("A")
	f.Shop.Weights = map[string]int{"ahead": 1, "odds": 0, "condition": 0, "coverage": 0, "hours": 0, "distance": 0}
	if c = compared(t, nil, f, bare("B")); c.Sides[0].Score != nil || !concludes(c, "are level: the first leads") {
		t.Errorf("score %v, %q", c.Sides[0].Score, c.Sentences)
	}
}

// What is priced above its worth leads the others, and is called no buy.
func TestNoneWorthItsPriceIsCalledABuy(t *testing.T) {
	for _, prices := range [][]Money{{3300_00, 3600_00}, {3300_00, 3600_00, 3900_00}} {
		var files []*File
		for i, price := range prices {
			files = append(files, listing(fmt.Sprintf("Dear %d", i+1), price, nil))
		}
		c := compared(t, nil, files...)
		if !concludes(c, "None of those that may be bought is worth its price") || !concludes(c, "“Dear 1” (A) comes off be") {
			t.Errorf("%q", c.Sentences)
		}
		if concludes(c, "is the best buy:") || concludes(c, "is the better buy: ahead") {
			t.Errorf("called a buy: %q", c.Sentences)
		}
	}
}

func TestConclusionSaysWhoLeadsAndWhatWouldChangeIt(t *testing.T) {
	sound := map[string]Finding{}
	for _, id := range []string{"weld", "lock", "rope", "hose", "paint", "only"} {
		sound[id] = grade(3)
	}
	near := listing("Near", 2400_00, nil)
	far := listing("Far", 200_00, sound)
	far.Listing.Distance = &Quantity{500 * 1.609344, "km"}
	c := compared(t, nil, near, far)
	if c.Order[0] != 1 || *c.Sides[1].Parts[5] != 0 || *c.Sides[0].Parts[5] != 0.9 {
		t.Fatalf("order %v, distances count %g and %g", c.Order, *c.Sides[0].Parts[5], *c.Sides[1].Parts[5])
	}
	by := *c.Sides[1].Ahead - *c.Sides[0].Ahead
	for _, part := range []string{
		fmt.Sprintf("“Far” (B) is the better buy: ahead of “Near” (A) by %s on average, in %s of 100 cases. A would draw level at %s instead of 2,400.", whole(by), inHundred(*c.Better[1][0]), whole(*c.Overtake[0][1])),
		"Verdict on B: no stop item found.",
		fmt.Sprintf("At its price of 200, B comes out ahead by %s on average.", whole(*c.Sides[1].Ahead)),
	} {
		if !concludes(c, part) {
			t.Errorf("%q is not said: %q", part, c.Sentences)
		}
	}
	near.Shop.Weights = map[string]int{"ahead": 10, "odds": 0, "condition": 0, "coverage": 0, "hours": 0, "distance": 1}
	c = compared(t, nil, near, far)
	m := c.Moves[slices.IndexFunc(c.Moves, func(m Move) bool { return m.Criterion == "distance" })]
	if want := fmt.Sprintf("If distance counted %d instead of 1, “Near” would lead.", m.To); m.Sentence != want || !concludes(c, c.Moves[0].Sentence) {
		t.Errorf("%q, want %q; %q", m.Sentence, want, c.Sentences)
	}
	// Just past it the leader is another, just before it is not.
	for to, want := range map[int]int{m.To: 0, m.To - 1: 1} {
		near.Shop.Weights["distance"] = to
		if c := compared(t, nil, near, far); c.Order[0] != want {
			t.Errorf("at %d listing %d leads", to, c.Order[0]+1)
		}
	}
}

// A listing that cannot be put right is never soonest in service.
func TestBeyondRepairTakesTheMostHours(t *testing.T) {
	c := compared(t, nil, listing("Scrap", 100_00, map[string]Finding{"weld": grade(0)}), listing("B", 100_00, nil))
	if *c.Sides[0].Parts[4] != 0 || !concludes(c, "A finding at A cannot be put right") {
		t.Errorf("hours count %g, %q", *c.Sides[0].Parts[4], c.Sentences)
	}
}

// A long title is cut where it is first named, between characters, and told by its letter.
func TestLongTitlesInSentences(t *testing.T) {
	c := compared(t, nil, listing(strings.Repeat("ü", 60), 2000_00, nil), listing(strings.Repeat("é🔧", 100), 2050_00, nil))
	for _, part := range []string{"“" + strings.Repeat("ü", 60) + "” (A)", "“" + strings.Repeat("é🔧", 29) + "é…” (B)"} {
		if !concludes(c, part) {
			t.Errorf("%q is not said: %q", part, c.Sentences)
		}
	}
}

func TestTitlesAreToldApart(t *testing.T) {
	var files []*File
	for _, title := range []string{"Lift", "", "Lift (1)", "Lift ", "Listing 2"} {
		f := testFile()
		f.Listing.Title = title
		files = append(files, f)
	}
	want := []string{"Lift (2)", "Listing 2 (1)", "Lift (1)", "Lift (3)", "Listing 2 (2)"}
	if got := titles(files); !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestCompareRefuses(t *testing.T) {
	euros := listing("In euros", 100_00, nil)
	euros.Shop.Currency = "EUR"
	weighty := func(w map[string]int) *File {
		f := listing("Weighty", 100_00, nil)
		f.Shop.Weights = w
		return f
	}
	odd, minus := listing("Odd", 100_00, nil), Money(-1)
	odd.Rubric.ID = "no-such"
	plain := listing("Plain", 100_00, nil)
	for _, c := range []struct {
		files  []*File
		prices []*Money
		field  string
		want   string
	}{
		{nil, nil, "files", "0 cannot be compared: 2 to 8"},
		{[]*File{plain}, nil, "files", "1 cannot be compared"},
		{slices.Repeat([]*File{plain}, 9), nil, "files", "9 cannot be compared"},
		{[]*File{plain, nil}, nil, "files[1]", "it is missing"},
		{[]*File{plain, plain}, []*Money{nil}, "prices", "1 prices are given: one for each of the 2 files"},
		{[]*File{plain, plain}, []*Money{nil, &minus}, "price", "Plain (2): price: -0.01 is no price"},
		{[]*File{plain, euros}, nil, "shop.currency", "“In euros” has its amounts in EUR but “Plain” in USD: compare listings of one currency"},
		{[]*File{plain, odd}, nil, "rubric.id", "Odd: rubric.id: no rubric is called \"no-such\""},
		{[]*File{weighty(map[string]int{"colour": 3}), plain}, nil, "shop.weights", "\"colour\" is no criterion: one of [ahead odds"},
		{[]*File{weighty(map[string]int{"ahead": 101}), plain}, nil, "shop.weights.ahead", "101 is no weight: 0 to 100"},
		{[]*File{weighty(map[string]int{"ahead": -1}), plain}, nil, "shop.weights.ahead", "-1 is no weight: 0 to 100"},
		{[]*File{weighty(map[string]int{"ahead": 0, "odds": 0, "condition": 0, "coverage": 0, "hours": 0, "distance": 0}), plain}, nil, "shop.weights", "at least one above 0"},
	} {
		_, err := testJudge().Compare(c.files, c.prices)
		var e *Error
		if !errors.As(err, &e) || e.Field != c.field || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v, want %s: %s", err, c.field, c.want)
		}
	}
}

// Days by hand, of hours that were chosen for it.
func TestDaysUntilInService(t *testing.T) {
	line := func(rate string, low, likely, high float64) Line {
		return Line{Kind: "remedy", Rate: rate, Hours: Hours{low, likely, high}}
	}
	off := line("rigger", 9, 9, 9)
	off.Off = true
	scrap := line("own", 1, 1, 1)
	scrap.Kind = "scrap"
	for _, c := range []struct {
		name             string
		day              float64
		repair, landing  []Line
		low, likely, top int
	}{
		{"nothing to do", 0, nil, nil, 0, 0, 0},
		// 8, 12.5 and 20 hours at the default 4 a day.
		{"own work", 0, []Line{line("own", 6, 10, 16)}, []Line{line("own", 2, 2.5, 4)}, 2, 4, 5},
		{"own machine time is own work", 0, []Line{line("own", 4, 4, 4), line("machine", 4, 4, 4)}, nil, 2, 2, 2},
		{"a whole day of it", 8, []Line{line("own", 6, 10, 16)}, []Line{line("own", 2, 2.5, 4)}, 1, 2, 3},
		// 3+4/8 beat 2 days of own work; 3+5+8/8; 5+10+16/8.
		{"one trade", 0, []Line{line("own", 8, 12, 20)}, []Line{line("electrician", 4, 8, 16)}, 4, 9, 17},
		// Own work outlasts the wait at best.
		{"one trade, much own work", 0, []Line{line("own", 40, 40, 40)}, []Line{line("electrician", 4, 8, 16)}, 10, 16, 22},
		// Called at once one wait, at worst two; the longest of them at best: 3+8/8.
		{"two trades", 0, []Line{line("welder", 2, 4, 8)}, []Line{line("rigger", 8, 8, 8)}, 4, 7, 22},
		{"the same trade twice waits once", 0, []Line{line("rigger", 2, 2, 2)}, []Line{line("rigger", 6, 6, 6)}, 4, 6, 11},
		{"left out or without hours", 0, []Line{line("electrician", 0, 0, 0)}, []Line{off}, 0, 0, 0},
	} {
		f := testFile()
		f.Shop.Day = c.day
		r := &Result{Estimate: Estimate{Lines: c.repair}, Landing: Estimate{Lines: c.landing}}
		d := daysOf(voice{}, f, r)
		if d.Low != c.low || d.Likely != c.likely || d.High != c.top {
			t.Errorf("%s: %d, %d to %d; want %d, %d to %d", c.name, d.Likely, d.Low, d.High, c.likely, c.low, c.top)
		}
	}
	f := testFile()
	if d := daysOf(voice{}, f, &Result{Estimate: Estimate{Lines: []Line{scrap}}}); d != nil {
		t.Errorf("what cannot be put right is in service after %d days", d.Likely)
	}
	r := &Result{Landing: Estimate{Lines: []Line{line("rigger", 8, 8.5, 9), line("own", 2, 6, 8)}}}
	want := []string{
		"Own work: 6 hours, most likely (2 to 8), at 4 hours a day.",
		"Hired: rigger, 8.5 hours in all. Called at once they come after 5 working days, and work 8 hours a day.",
		"At best they come after 3 days, while own work goes on; at worst one is waited for after the other, 10 days each.",
		"Hours a day and waits are a judgement, no source. What was not checked is not counted.",
	}
	f.Shop.Day = 0
	if d := daysOf(voice{}, f, r); !slices.Equal(d.Steps, want) {
		t.Errorf("%q", d.Steps)
	}
	for _, bad := range []float64{-1, 0.25, 25, math.NaN(), math.Inf(1)} {
		f.Shop.Day = bad
		var e *Error
		if err := f.checkShop(); !errors.As(err, &e) || e.Field != "shop.day" || e.Right == "" {
			t.Errorf("%g hours a day: %v", bad, err)
		}
	}
}

func TestDearestOpenPoints(t *testing.T) {
	got := dearest([]Doubt{{Check: "a", Mean: 5}, {Check: "b", Mean: 0}, {Check: "c", Mean: 9}, {Check: "d", Mean: 5}})
	if len(got) != 2 || got[0].Check != "c" || got[1].Check != "a" {
		t.Errorf("%v", got)
	}
	c := compared(t, nil, listing("A", 100_00, map[string]Finding{"lock": grade(3)}), listing("B", 100_00, nil))
	if a, b := c.Sides[0].Open, c.Sides[1].Open; a != b-1 || a < 1 {
		t.Errorf("%d and %d points are open", a, b)
	}
}

// What an open point would mean is the judgement with that point known: by the
// classes of keeping, the mean over both answers is what it was.
func TestAnswersOfOpenPoints(t *testing.T) {
	f := listing("A", 2400_00, nil)
	f.Shop.Tax = 7_25
	r, err := testJudge().Of(f, Ask{})
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, n := range r.Next {
		a := n.answers
		if mean := a.chance*a.bad + (1-a.chance)*a.sound; math.Abs(mean) > 1e-6*float64(*f.Listing.Asking) {
			t.Errorf("%s: the answers come to %g on average, not to nothing", n.Check, mean)
		}
		if a.bad < -1 {
			seen++
		}
		if a.bad > 1e-6 || a.sound < -1e-6 {
			t.Errorf("%s: bad brings %g, sound %g", n.Check, a.bad, a.sound)
		}
	}
	if seen == 0 {
		t.Error("no open point matters")
	}
}

// Of two that are alike, an open point that turns out bad at the better one turns it.
func TestAnOpenPointWouldChangeTheWinner(t *testing.T) {
	known := map[string]Finding{"lock": grade(3), "weld": grade(3)}
	a, b := listing("A", 2000_00, nil), listing("B", 2050_00, nil)
	a.Findings, b.Findings = known, known
	c := compared(t, nil, a, b)
	if !concludes(c, "ahead of “B” (B) by 50 on average") || !concludes(c, ", B would be the better buy.") {
		t.Errorf("%q", c.Sentences)
	}
	// At a margin that no single answer makes up for, it is said.
	b = listing("B", 90_000_00, nil)
	if c = compared(t, nil, a, b); !concludes(c, "No single point that is still open would change that") {
		t.Errorf("%q", c.Sentences)
	}
}
