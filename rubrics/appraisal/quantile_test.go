package appraisal

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
)

// Reference: Go's math library.
func TestSine(t *testing.T) {
	for i := range 1001 {
		s := float64(i) / 1000
		if got, want := sine(s), math.Sin(s*math.Pi/2); math.Abs(got-want) > 1e-14 {
			t.Errorf("sine(%v) = %v, want %v", s, got, want)
		}
	}
}

// Reference: gonum distuv.Normal, and the quantiles of R's qnorm.
func TestNormalTable(t *testing.T) {
	q := normalTable()
	for _, c := range []struct{ u, want float64 }{
		{.8, .841621233573}, {.9, 1.28155156554}, {.95, 1.64485362695}, {.975, 1.95996398454}, {.99, 2.32634787404},
	} {
		if got := q.at(c.u); math.Abs(got-c.want) > 2e-3 {
			t.Errorf("quantile %v = %v, want %v within 0.002", c.u, got, c.want)
		}
	}
	mean, sd := moments(q)
	if math.Abs(mean) > 1e-4 || math.Abs(sd-1) > 1e-3 {
		t.Errorf("table has mean %v and sd %v, want 0 and 1", mean, sd)
	}
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

// moments integrates a table, cell by cell.
func moments(q *quantiles) (mean, sd float64) {
	m2 := 0.0
	for i := range cells {
		a, b := q[i], q[i+1]
		mean += (a + b) / 2 / cells
		m2 += (a*a + a*b + b*b) / 3 / cells
	}
	return mean, math.Sqrt(m2 - mean*mean)
}

// The streams are uniform: chi-squared over 100 classes of 10,000 numbers stays
// below the 99.99 % point of gonum's distribution for each of many causes.
func TestStreamsAreUniform(t *testing.T) {
	most := distuv.ChiSquared{K: 99}.Quantile(0.9999)
	for _, name := range []string{"worth", "care", "overrun", "remedy:lift-cables", "landing:transport", "doubt:column-weld", ""} {
		s := newStream(name)
		var hits [100]float64
		for i := range Draws {
			hits[int(s.at(i)*100)]++
		}
		chi := 0.0
		for _, h := range hits {
			chi += (h - Draws/100) * (h - Draws/100) / (Draws / 100)
		}
		if chi > most {
			t.Errorf("stream %q: chi-squared %.1f over %.1f", name, chi, most)
		}
	}
}
