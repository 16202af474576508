package appraisal

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"asfound/rubrics/say"
)

// How many listings can be compared.
const (
	LeastCompared = 2
	MostCompared  = 8
)

// Compare puts 2 to 8 listings of one currency side by side, of one kind or of
// several, each at its asking price or at the price given for it (prices may be
// nil, or hold one for each file). The weights are those of the first file's
// shop. What makes no sense is refused with an *Error.
func (jd *Judge) Compare(files []*File, prices []*Money) (*Comparison, error) {
	if n := len(files); n < LeastCompared || n > MostCompared {
		return nil, refuse("files", say.Later("%d to %d", LeastCompared, MostCompared), "%d cannot be compared", n)
	}
	if n := len(prices); n != 0 && n != len(files) {
		return nil, refuse("prices", say.Later("one for each of the %d files, or none at all", len(files)), "%d prices are given", n)
	}
	for i, f := range files {
		if f == nil {
			return nil, refuse(fmt.Sprintf("files[%d]", i), "an appraisal file", "it is missing")
		}
	}
	voice := jd.voice
	names := voice.titles(files)
	out := &Comparison{Currency: files[0].Shop.Currency, Criteria: voice.weighed(files[0].Shop.Weights)}
	weights := weightsOf(out.Criteria)
	listings := make([]rankable, len(files))
	results := make([]*Result, len(files))
	draws := make([]*joint, len(files))
	for i, f := range files {
		ask := Ask{}
		if len(prices) > 0 {
			ask.Price = prices[i]
		}
		var err error
		if results[i], draws[i], err = jd.judge(f, ask); err != nil {
			return nil, of{names[i], err}
		}
		if c := results[i].Currency; c != out.Currency {
			return nil, refuse("shop.currency", "compare listings of one currency", "\u201c%s\u201d has its amounts in %s but \u201c%s\u201d in %s", names[i], c, names[0], out.Currency)
		}
		price := ask.Price
		if price == nil {
			price = f.Listing.Asking
		}
		s := side(voice, names[i], f, results[i], draws[i], price)
		listings[i] = measure(f, results[i], &s)
		s.Letter = string(rune('A' + i))
		s.Parts, s.Score = shown(listings[i].parts), listings[i].score(weights)
		out.Sides = append(out.Sides, s)
	}
	out.Better, out.Overtake = duels(files, results, draws, out.Sides)
	out.Order = rank(listings, weights)
	out.Moves = out.moves(voice, listings)
	out.Sentences = conclusion(voice, out, listings, results)
	return out, nil
}

func side(v voice, name string, f *File, r *Result, j *joint, price *Money) Side {
	o := &r.Offer
	s := Side{
		Title: name, Verdict: r.Verdict, Safety: r.Safety, State: r.Condition, Price: price,
		Hours: round2(r.Estimate.Hours.Likely + r.Landing.Hours.Likely), Distance: f.Listing.Distance,
		Hides: r.Hidden.Mean, Missing: o.Missing, Rubric: r.Rubric,
		Days: daysOf(v, f, r), Open: r.Progress.Applies - r.Progress.Graded, Dearest: dearest(r.Hidden.Points),
	}
	if r.Verdict.Code == "do-not-use" {
		s.Gate = r.Verdict.Code
	}
	if !o.Known {
		return s
	}
	s.Opening, s.Fair, s.WalkAway = &o.Opening, &o.Fair, &o.WalkAway
	if price == nil {
		s.Missing = v.T("No price is asked: enter one.")
		return s
	}
	s.Odds, s.Ahead, s.AllIn = &o.At.Odds, o.Ahead, o.AllIn
	sorted := slices.Sorted(slices.Values(j.breakEven))
	tax := float64(10_000+f.Shop.Tax) / 10_000
	ahead := func(q float64) *Money {
		m := cents(float64((share(sorted, q) - float64(*price)) * tax))
		return &m
	}
	s.AheadLow, s.AheadTop = ahead(0.1), ahead(0.9)
	return s
}

// dearest are the two open points that count most in the allowance, dearest first.
func dearest(points []Doubt) []Doubt {
	out := []Doubt{}
	for _, p := range points {
		if p.Mean > 0 {
			out = append(out, p)
		}
	}
	slices.SortStableFunc(out, func(a, b Doubt) int { return cmp.Compare(b.Mean, a.Mean) })
	return out[:min(len(out), 2)]
}

// shown gives parts as 0 to 1.
func shown(parts []int) []*float64 {
	out := make([]*float64, len(parts))
	for i, p := range parts {
		if p != notKnown {
			x := float64(p) / full
			out[i] = &x
		}
	}
	return out
}

// duels fills the two matrices of a comparison, a pair at a time.
func duels(files []*File, results []*Result, draws []*joint, sides []Side) (better [][]*float64, overtake [][]*Money) {
	n := len(files)
	better, overtake = make([][]*float64, n), make([][]*Money, n)
	for i := range n {
		better[i], overtake[i] = make([]*float64, n), make([]*Money, n)
	}
	for a := range n {
		for b := a + 1; b < n; b++ {
			if !results[a].Offer.Known || !results[b].Offer.Known {
				continue
			}
			p := newPair(draws[a].breakEven, draws[b].breakEven, files[a].Shop.Tax, files[b].Shop.Tax)
			if at := sides[b].Price; at != nil {
				m := p.overtakeA(*at)
				overtake[a][b] = &m
			}
			if at := sides[a].Price; at != nil {
				m := p.overtakeB(*at)
				overtake[b][a] = &m
			}
			if sides[a].Price != nil && sides[b].Price != nil {
				won := round4(p.better(*sides[a].Price, *sides[b].Price))
				lost := round4(1 - won)
				better[a][b], better[b][a] = &won, &lost
			}
		}
	}
	return better, overtake
}

// titles names the listings: those without a title by their place, and those of
// one title by a number behind it.
func (v voice) titles(files []*File) []string {
	names := make([]string, len(files))
	times := map[string]int{}
	for i, f := range files {
		names[i] = strings.TrimSpace(f.Listing.Title)
		if names[i] == "" {
			names[i] = v.F("Listing %d", i+1)
		}
		times[names[i]]++
	}
	taken := map[string]bool{}
	for _, name := range names {
		taken[name] = true
	}
	for i, name := range names {
		if times[name] < 2 {
			continue
		}
		for n := 1; taken[names[i]]; n++ {
			names[i] = fmt.Sprintf("%s (%d)", name, n)
		}
		taken[names[i]] = true
	}
	return names
}

// of is an error of one of several listings.
type of struct {
	name string
	err  error
}

func (e of) Error() string          { return e.In(nil) }
func (e of) Unwrap() error          { return e.err }
func (e of) In(v *say.Voice) string { return e.name + ": " + v.Error(e.err) }
