package appraisal

import (
	"math"
	"sort"
)

// mostWeight bounds the weight of a criterion.
const mostWeight = 100

// full is the best part of a criterion. Parts are whole numbers, so that sums,
// ties and turning points are exact.
const full = 10_000

// notKnown marks a part that is not known; it counts as the middle.
const notKnown = -1

// rankable is what the ranking knows of a listing: whether a verdict bars it, and
// its part of each criterion, 0 worst to full best, or notKnown.
type rankable struct {
	gated bool
	parts []int
}

// counted is a part as it enters the sum.
func (r *rankable) counted(criterion int) int {
	if p := r.parts[criterion]; p != notKnown {
		return p
	}
	return full / 2
}

// sum is the weighted sum, 0 to full times the sum of the weights.
func (r *rankable) sum(weights []int) int {
	s := 0
	for c, w := range weights {
		s += w * r.counted(c)
	}
	return s
}

// score is the weighted sum as 0 to 100; nil where nothing that counts is known.
func (r *rankable) score(weights []int) *float64 {
	known := false
	for c, w := range weights {
		known = known || w > 0 && r.parts[c] != notKnown
	}
	if !known {
		return nil
	}
	s := tenths(100 * (float64(r.sum(weights)) / float64(full*total(weights))))
	return &s
}

func total(weights []int) int {
	t := 0
	for _, w := range weights {
		t += w
	}
	return t
}

// rank orders listings, best first: what a verdict bars stands behind all that
// none bars (a conjunctive gate), then the weighted sum decides, then the order
// given. Each listing is held against fixed scales alone, so one more or less
// never turns two others round.
func rank(listings []rankable, weights []int) []int {
	order := make([]int, len(listings))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool {
		x, y := &listings[order[a]], &listings[order[b]]
		if x.gated != y.gated {
			return y.gated
		}
		return x.sum(weights) > y.sum(weights)
	})
	return order
}

// weighed is the criteria with the weights of a shop over the defaults.
func (v voice) weighed(weights map[string]int) []Criterion {
	out := append([]Criterion(nil), Criteria...)
	for i := range out {
		out[i].Title, out[i].Scale = v.Label(out[i].Title), v.Label(out[i].Scale)
		if w, ok := weights[out[i].ID]; ok {
			out[i].Weight = w
		}
	}
	return out
}

func weightsOf(criteria []Criterion) []int {
	out := make([]int, len(criteria))
	for i := range criteria {
		out[i] = criteria[i].Weight
	}
	return out
}

// The ends of the scales in Criteria.
const (
	halfOfWorth = 0.5
	mostHours   = 80.0
	mostMiles   = 500.0
)

// measure reads the criteria, in their order, off a judgement.
func measure(f *File, r *Result, s *Side) rankable {
	away, told := miles(f.Listing.Distance)
	scale := func(known bool, x func() float64) int {
		if !known {
			return notKnown
		}
		return int(math.Floor(float64(min(max(x(), 0), 1)*full) + 0.5))
	}
	return rankable{gated: s.Gate != "", parts: []int{
		scale(s.Ahead != nil && r.Worth.InPlace > 0, func() float64 {
			return (float64(*s.Ahead)/float64(r.Worth.InPlace) + halfOfWorth) / (2 * halfOfWorth)
		}),
		scale(s.Odds != nil, func() float64 { return *s.Odds }),
		scale(s.State.Value != nil, func() float64 { return *s.State.Value / 100 }),
		scale(true, func() float64 { return s.Safety.Coverage / 100 }),
		scale(true, func() float64 {
			if beyondRepair(r) {
				return 0 // no hours bring it into service
			}
			return 1 - s.Hours/mostHours
		}),
		scale(told, func() float64 { return 1 - away/mostMiles }),
	}}
}

func beyondRepair(r *Result) bool {
	for i := range r.Estimate.Lines {
		if r.Estimate.Lines[i].Kind == "scrap" {
			return true
		}
	}
	return false
}
