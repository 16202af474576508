package sales

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

func TestWeightedMiddle(t *testing.T) {
	tenths := make([]float64, 10)
	for i := range tenths {
		tenths[i] = 0.1
	}
	for _, c := range []struct {
		name            string
		values, weights []float64
		want            float64
	}{
		{"M31", []float64{1, 2, 3, 4, 5}, []float64{.15, .10, .20, .30, .25}, 4}, // from memory, of an encyclopaedia
		{"M31 in another order", []float64{4, 1, 5, 3, 2}, []float64{.30, .15, .25, .20, .10}, 4},
		{"two share the middle", []float64{1, 2, 3, 4}, []float64{.25, .25, .25, .25}, 2.5},
		{"two unequal ones share it", []float64{10, 1}, []float64{.5, .5}, 5.5},
		{"tenths, which do not sum to a half exactly", []float64{1, 2, 3, 4, 5, 6, 7, 8, 9, 10}, tenths, 5.5},
		{"one without weight between", []float64{1, 2, 3}, []float64{.5, 0, .5}, 2},
		{"equal values", []float64{7, 7, 7}, []float64{.2, .5, .3}, 7},
		{"one", []float64{-3}, []float64{1}, -3},
		{"the last has no weight", []float64{1, 2}, []float64{1, 0}, 1},
	} {
		if got := weightedMiddle(c.values, c.weights, ranked(c.values)); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// Reference: gonum's empirical quantile, which gives the lower middle: the two
// agree wherever no two values share it.
func TestWeightedMiddleAgreesWithGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 30).Draw(t, "n")
		values, weights, total := make([]float64, n), make([]float64, n), 0.0
		for i := range values {
			values[i] = rapid.Float64Range(-5, 5).Draw(t, "value")
			weights[i] = rapid.Float64Range(0.01, 1).Draw(t, "weight")
			total += weights[i]
		}
		order := ranked(values)
		var sorted, shares []float64
		sum, shared := 0.0, false
		for i := range weights {
			weights[i] /= total
		}
		for _, i := range order {
			sorted, shares = append(sorted, values[i]), append(shares, weights[i])
			sum += weights[i]
			shared = shared || math.Abs(sum-0.5) < 1e-8
		}
		if shared {
			return
		}
		if got, want := weightedMiddle(values, weights, order), stat.Quantile(0.5, stat.Empirical, sorted, shares); got != want {
			t.Fatalf("%v, gonum gives %v", got, want)
		}
	})
}

// References: R's qt as printed, and gonum's StudentsT.
func TestStudent(t *testing.T) {
	for _, c := range []struct{ nu, want float64 }{{4, 1.53320627406}, {6, 1.43975574727}, {9, 1.3830287384}} {
		if got := student(c.nu); math.Abs(got-c.want) > 0.002 {
			t.Errorf("t(.9; %v) = %v, R gives %v", c.nu, got, c.want)
		}
	}
	for nu := 1.0; nu < 400; nu += 0.5 {
		far := 0.002
		if nu < 4 {
			far = 0.13 // the expansion is coarse there: 4 % at 1 degree
		}
		want := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: nu}.Quantile(0.9)
		if got := student(nu); math.Abs(got-want) > far {
			t.Errorf("t(.9; %v) = %v, gonum gives %v", nu, got, want)
		}
	}
	if got := student(0); got != student(1) || math.IsInf(got, 0) {
		t.Errorf("no degrees of freedom give %v", got)
	}
}
