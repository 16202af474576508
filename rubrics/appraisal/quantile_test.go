package appraisal

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
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

// Ordering by cells is sorting, whatever the numbers.
func TestCellsOrderAsSorting(t *testing.T) {
	var c cellsOf
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.SliceOfN(rapid.OneOf(rapid.Float64Range(-1e9, 1e9), rapid.Float64Range(0, 1), rapid.Just(0.0), rapid.Float64Range(-1e-300, 1e-300)), 1, 300).Draw(t, "x")
		want, sorted, room := slices.Sorted(slices.Values(x)), make([]float64, len(x)), make([]float64, len(x)+3)
		c.order(x, sorted)
		for i := range want {
			if sorted[i] != want[i] {
				t.Fatalf("place %d has %v, sorting gives %v", i, sorted[i], want[i])
			}
			if got := c.nth(x, i, room); got != want[i] {
				t.Fatalf("number %d is %v, sorting gives %v", i, got, want[i])
			}
		}
	})
}
