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
	total, u := make([]float64, Draws), make([]float64, Draws)
	for k := range path {
		path[k].ready()
		newStream(string(rune('A' + k))).fill(u)
		path[k].through(u)
		for i := range total {
			total[i] += u[i]
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
