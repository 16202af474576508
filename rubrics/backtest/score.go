package backtest

import (
	"math"
	"slices"
)

// Scores measure prices found against prices brought.
type Scores struct {
	N int `json:"n"` // rows valued
	// Sizes of errors in percent of the price brought.
	MedianError float64 `json:"median_abs_pct_error"`
	MeanError   float64 `json:"mean_abs_pct_error"`
	// Coverage is how many of 100 prices lie within the central 50, 80 and 90 %.
	Coverage50 float64 `json:"coverage_50"`
	Coverage80 float64 `json:"coverage_80"`
	Coverage90 float64 `json:"coverage_90"`
	// IntervalScore is of the central 80 %, PinballLoss the mean over the five
	// quantiles; both in the currency of the prices, and less is better.
	IntervalScore float64 `json:"interval_score"`
	PinballLoss   float64 `json:"pinball_loss"`
	// The median error with the same neighbours' prices as they stand, and with
	// the median of all prices for every row.
	Unadjusted float64 `json:"unadjusted_median_abs_pct_error"`
	Baseline   float64 `json:"baseline_median_abs_pct_error"`
	// Gain is how much of the unadjusted error the adjustments take away.
	Gain float64 `json:"gain_pct"`
}

// quantiles are those that are scored.
var quantiles = [...]float64{0.05, 0.1, 0.25, 0.5, 0.75, 0.9, 0.95}

// pinballAt are the places in quantiles over which the pinball loss is averaged.
var pinballAt = [...]int{1, 2, 3, 4, 5}

// result is one row valued.
type result struct {
	price, found, unadjusted, middle float64
	quantiles                        [len(quantiles)]float64
}

type scorer struct{ results []result }

// Pinball is the loss of a quantile tau forecast as q where y came: tau (y-q)
// above, (1-tau) (q-y) below (Gneiting and Raftery, JASA 102:359-378, 2007,
// section 6.1).
func Pinball(tau, q, y float64) float64 {
	if y >= q {
		return tau * (y - q)
	}
	return (1 - tau) * (q - y)
}

// IntervalScore is the score of a central 1-alpha interval: its width, and 2/alpha
// times how far y lies outside (the same, section 6.2).
func IntervalScore(alpha, low, high, y float64) float64 {
	return high - low + 2/alpha*(max(low-y, 0)+max(y-high, 0))
}

func (s *scorer) scores() Scores {
	n := float64(len(s.results))
	out := Scores{N: len(s.results)}
	if n == 0 {
		return out
	}
	errors := func(of func(r *result) float64) []float64 {
		list := make([]float64, len(s.results))
		for i := range s.results {
			r := &s.results[i]
			list[i] = 100 * math.Abs(of(r)-r.price) / r.price
		}
		return list
	}
	found := errors(func(r *result) float64 { return r.found })
	out.MedianError = median(found)
	out.Unadjusted = median(errors(func(r *result) float64 { return r.unadjusted }))
	out.Baseline = median(errors(func(r *result) float64 { return r.middle }))
	if out.Unadjusted > 0 {
		out.Gain = 100 * (1 - out.MedianError/out.Unadjusted)
	}
	var in50, in80, in90 int
	for i := range s.results {
		r := &s.results[i]
		q, y := &r.quantiles, r.price
		out.MeanError += found[i] / n
		in50 += inside(q[2], q[4], y)
		in80 += inside(q[1], q[5], y)
		in90 += inside(q[0], q[6], y)
		out.IntervalScore += IntervalScore(0.2, q[1], q[5], y) / n
		for _, k := range pinballAt {
			out.PinballLoss += Pinball(quantiles[k], q[k], y) / n / float64(len(pinballAt))
		}
	}
	out.Coverage50, out.Coverage80, out.Coverage90 = 100*float64(in50)/n, 100*float64(in80)/n, 100*float64(in90)/n
	return out
}

// inside is 1 where y lies in the interval, else 0.
func inside(low, high, y float64) int {
	if y >= low && y <= high {
		return 1
	}
	return 0
}

func median(values []float64) float64 {
	s := slices.Sorted(slices.Values(values))
	n := len(s)
	if n%2 == 1 {
		return s[n/2]
	}
	return s[n/2-1] + (s[n/2]-s[n/2-1])/2
}
