package appraisal

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
)

// M36, M37: PM Knowledge Center, PERT: incorporating activity time variability,
// Table 1; means and sd are the classic rule's.
func TestPert(t *testing.T) {
	for _, c := range []struct {
		id                          string
		low, likely, high, mean, sd float64
	}{
		{"M36 activity B", 1, 2, 9, 3, 8.0 / 6},
		{"M37 activity A", 2, 5, 8, 5, 1},
		{"M37 activity E", 1, 2, 9, 3, 8.0 / 6},
		{"M37 activity F", 1, 3, 11, 4, 10.0 / 6},
	} {
		p := newPert(c.low, c.likely, c.high)
		near(t, c.id+" mean", p.mean, c.mean, 1e-12)
		near(t, c.id+" sd", p.sd, c.sd, 1e-12)
	}
	// The path A-B-E-F: mean 15, variance 7.3333, by drawing it.
	path := []pert{newPert(2, 5, 8), newPert(1, 2, 9), newPert(1, 2, 9), newPert(1, 3, 11)}
	total, u := make([]float64, Draws), make([]float32, Draws)
	for k := range path {
		newStream(string(rune('A'+k))).fill(u, nil)
		for i := range total {
			total[i] += path[k].at(float64(u[i]))
		}
	}
	near(t, "M37 mean, drawn", average(total), 15, 0.005)
	near(t, "M37 sd, drawn", spread(total), 2.70801, 0.02)
	within := 0
	for _, x := range total {
		if x <= 18 {
			within++
		}
	}
	// The normal approximation of the source gives .86603; the beta sum is close to it.
	near(t, "M37 P(<=18), drawn", float64(within)/Draws, .86603, 0.02)
}

// The beta that is drawn has the classic PERT moments, and the quantiles of
// gonum's beta with the same shape.
func TestBetaTableAgainstGonum(t *testing.T) {
	for _, mean := range []float64{1.0 / 6, 0.2, 0.35, 0.5, 0.7, 5.0 / 6} {
		nu := 36*mean*(1-mean) - 1
		ref := distuv.Beta{Alpha: mean * nu, Beta: (1 - mean) * nu}
		q := betaTable(mean)
		for u := 0.005; u < 1; u += 0.005 {
			if got, want := q.at(u), ref.Quantile(u); math.Abs(got-want) > 2e-3 {
				t.Errorf("mean %.3f: quantile %.3f = %.5f, gonum %.5f", mean, u, got, want)
			}
		}
		m, sd := moments(q)
		if math.Abs(m-mean) > 5e-4 || math.Abs(sd-1.0/6) > 5e-4 {
			t.Errorf("mean %.3f: table has mean %v sd %v, want sd 1/6", mean, m, sd)
		}
	}
}

// M42: the 0.9 quantile of Beta(2, 5) is .5103163066 (R). A three-point amount
// draws from betas of standard deviation 1/6 only; for the one of that mean, 2/7,
// gonum's beta is the reference, once it gives R's figure.
func TestBetaQuantile(t *testing.T) {
	near(t, "M42 gonum", distuv.Beta{Alpha: 2, Beta: 5}.Quantile(0.9), .5103163066, 1e-9)
	const mean = 2.0 / 7
	nu := 36*mean*(1-mean) - 1
	ref := distuv.Beta{Alpha: mean * nu, Beta: (1 - mean) * nu}
	near(t, "mean 2/7", betaTable(mean).at(0.9), ref.Quantile(0.9), 5e-4)
	// The same grid and sums draw Beta(2, 5) itself.
	near(t, "M42", betaOf(2, 5).at(0.9), .5103163066, 5e-4)
}
