package sales

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"
)

// drawn is a market whose truth is known.
type drawn struct {
	form  Form
	sales []Sale
	thing Sale
	truth float64 // log price of the thing
}

// drawMarket draws spread, rates and premiums from their priors, then n sales and
// the thing. A share of the sales stands apart by 0.7 to 1.6 on the log scale
// (half to a fifth of the price, or twice to five times).
func drawMarket(r *rand.Rand, n int, apart float64) drawn {
	k := drawn{form: Form{
		Attributes: []Attribute{{ID: "age", Rate: -0.05, RateSD: 0.02, Width: 6}, {ID: "log capacity", Rate: 0.6, RateSD: 0.2, Width: 0.4}},
		Labels:     []Label{{ID: "maker", SD: 0.15, Unlike: 0.6}, {ID: "condition", SD: 0.2, Unlike: 0.5}},
		Together:   0.1, Spread: DefaultSpread, Count: DefaultCount,
	}}
	// The spread has the scaled inverse chi-squared distribution that a prior
	// counted as Count sales stands for (Gelman et al., section 3.3).
	chi2 := 0.0
	for range int(k.form.Count) {
		z := r.NormFloat64()
		chi2 += z * z
	}
	spread := k.form.Spread * math.Sqrt(k.form.Count/chi2)
	var rates []float64
	for _, a := range k.form.Attributes {
		rates = append(rates, a.Rate+a.RateSD*r.NormFloat64())
	}
	premium := map[string]float64{}
	draw := func() Sale {
		s := Sale{Weight: 1, Log: 8 + spread*r.NormFloat64(), Numbers: []float64{25 * r.Float64(), 0.5 * r.NormFloat64()}}
		s.Labels = []string{"maker" + strconv.Itoa(r.IntN(4)), "condition" + strconv.Itoa(r.IntN(3))}
		for i, x := range s.Numbers {
			s.Log += rates[i] * x
		}
		for _, w := range []struct {
			word string
			sd   float64
		}{{s.Labels[0], k.form.Labels[0].SD}, {s.Labels[1], k.form.Labels[1].SD}, {s.Labels[0] + s.Labels[1], k.form.Together}} {
			if _, ok := premium[w.word]; !ok {
				premium[w.word] = w.sd * r.NormFloat64()
			}
			s.Log += premium[w.word]
		}
		return s
	}
	bring := func() Sale {
		s := draw()
		if r.Float64() < apart {
			by := 0.7 + 0.9*r.Float64()
			if r.IntN(2) == 0 {
				by = -by
			}
			s.Log += by
		}
		return s
	}
	for range n {
		k.sales = append(k.sales, bring())
	}
	k.thing = bring()
	k.truth = k.thing.Log
	return k
}

// Intervals are honest where the truth is known: of markets drawn from the model
// the 80 % interval holds the price of the thing in 76 to 86 of 100, with few
// sales and with many. The thing is drawn as the sales are, so where one in ten
// stands apart it may itself.
func TestIntervalsHoldWhatTheySay(t *testing.T) {
	for _, c := range []struct {
		n, rounds int
		apart     float64
		least     float64
	}{
		{1, 1000, 0, 76}, {3, 1000, 0, 76}, {10, 1000, 0, 76}, {100, 200, 0, 76},
		// A sale alone cannot show that it stands apart: one market in ten is lost.
		{1, 1000, 0.1, 68}, {3, 1000, 0.1, 76}, {10, 1000, 0.1, 76}, {100, 200, 0.1, 76},
	} {
		r := rand.New(rand.NewPCG(7, uint64(c.n)))
		inside := 0
		for range c.rounds {
			k := drawMarket(r, c.n, c.apart)
			p := Fit(k.form, k.sales).Predict(&k.thing)
			if k.truth >= p.Quantile(0.1) && k.truth <= p.Quantile(0.9) {
				inside++
			}
		}
		if share := 100 * float64(inside) / float64(c.rounds); share < c.least || share > 86 {
			t.Errorf("%d sales, %.0f %% apart: %.1f of 100 inside, want %.0f to 86", c.n, 100*c.apart, share, c.least)
		} else {
			t.Logf("%d sales, %.0f %% apart: %.1f of 100 inside", c.n, 100*c.apart, share)
		}
	}
}

// What is not known of the thing, but of the sales, makes its price less sure.
func TestIntervalsCoverWhatIsNotKnown(t *testing.T) {
	for name, forget := range map[string]func(s *Sale){
		"age":       func(s *Sale) { s.Numbers = []float64{math.NaN(), s.Numbers[1]} },
		"condition": func(s *Sale) { s.Labels = []string{s.Labels[0], ""} },
		"anything":  func(s *Sale) { s.Numbers, s.Labels = []float64{math.NaN(), math.NaN()}, []string{"", ""} },
	} {
		for _, n := range []int{3, 30} {
			r := rand.New(rand.NewPCG(8, uint64(n)))
			inside, wider, rounds := 0, 0.0, 400
			for range rounds {
				k := drawMarket(r, n, 0)
				m := Fit(k.form, k.sales)
				known := m.Predict(&k.thing)
				forget(&k.thing)
				p := m.Predict(&k.thing)
				if k.truth >= p.Quantile(0.1) && k.truth <= p.Quantile(0.9) {
					inside++
				}
				wider += p.SD / known.SD / float64(rounds)
			}
			if share := 100 * float64(inside) / float64(rounds); share < 76 || share > 87 || wider <= 1 {
				t.Errorf("%s not known, %d sales: %.1f of 100 inside, want 76 to 87; %.2f times as wide", name, n, share, wider)
			} else {
				t.Logf("%s not known, %d sales: %.1f of 100 inside, %.2f times as wide", name, n, share, wider)
			}
		}
	}
}
