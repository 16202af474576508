package appraisal

import (
	"math"
	"testing"
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
