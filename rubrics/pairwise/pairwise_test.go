package pairwise

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

// full makes a matrix of its upper triangle, row by row.
func full(n int, upper ...float64) [][]float64 {
	a := make([][]float64, n)
	for i := range a {
		a[i] = make([]float64, n)
		a[i][i] = 1
	}
	k := 0
	for i := range n {
		for j := i + 1; j < n; j++ {
			a[i][j], a[j][i] = upper[k], 1/upper[k]
			k++
		}
	}
	return a
}

// Saaty, EJOR 48 (1990) 9-26: buying a house by eight criteria, answers that
// contradict each other on purpose (matrix from memory; weights as printed there);
// and choosing a leader by four (from memory, weights recomputed).
func TestPublished(t *testing.T) {
	for _, c := range []struct {
		row            string
		a              [][]float64
		weights        []float64
		places         float64
		largest, ratio float64
	}{
		{"M51", full(8,
			5, 3, 7, 6, 6, 1./3, 1./4,
			1./3, 5, 3, 3, 1./5, 1./7,
			6, 3, 4, 6, 1./5,
			1./3, 1./4, 1./7, 1./8,
			1./2, 1./5, 1./6,
			1./5, 1./6,
			1./2),
			[]float64{.173, .054, .188, .018, .031, .036, .167, .333}, 0.0006, 9.66889, 0.16909},
		{"M52", full(4, 4, 3, 7, 1./3, 3, 5), []float64{.5476, .1266, .2699, .0559}, 0.00006, 4.118418, 0.043859},
	} {
		t.Run(c.row, func(t *testing.T) {
			got, err := Weigh(c.a)
			if err != nil {
				t.Fatal(err)
			}
			for i, w := range c.weights {
				if math.Abs(got.Weights[i]-w) > c.places {
					t.Errorf("weight %d is %.5f, printed %g", i, got.Weights[i], w)
				}
			}
			if math.Abs(got.Largest-c.largest) > 1e-5 || math.Abs(got.Ratio-c.ratio) > 1e-5 {
				t.Errorf("largest %.6f ratio %.6f, want %g and %g", got.Largest, got.Ratio, c.largest, c.ratio)
			}
		})
	}
}

// M53: Saaty's random indices, n = 3 to 8, as printed in a water-management paper's copy.
func TestRandomIndices(t *testing.T) {
	for i, want := range []float64{.58, .90, 1.12, 1.24, 1.32, 1.41} {
		if random[i+3] != want {
			t.Errorf("n = %d: %g, printed %g", i+3, random[i+3], want)
		}
	}
}

// One answer turned round among consistent ones is the one that is named.
func TestWorstAnswer(t *testing.T) {
	a := full(4, 2, 4, 8, 2, 4, 1./2)
	got, err := Weigh(a)
	if err != nil {
		t.Fatal(err)
	}
	if got.Worst != [2]int{2, 3} || math.Abs(got.WorstFits-2) > 1e-9 {
		t.Errorf("named %v, which fits %g", got.Worst, got.WorstFits)
	}
}

// Any answers: weights are positive and sum to 1, and the eigenvalue is the one a
// general library finds.
func TestWeighIsTheEigenvector(t *testing.T) {
	scale := []float64{1. / 9, 1. / 7, 1. / 5, 1. / 3, 1. / 2, 1, 2, 3, 4, 6, 8, 9}
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, Most).Draw(t, "n")
		upper := make([]float64, n*(n-1)/2)
		for i := range upper {
			upper[i] = rapid.SampledFrom(scale).Draw(t, "answer")
		}
		a := full(n, upper...)
		got, err := Weigh(a)
		if err != nil {
			t.Fatal(err)
		}
		flat := mat.NewDense(n, n, nil)
		for i := range a {
			flat.SetRow(i, a[i])
		}
		var eigen mat.Eigen
		if !eigen.Factorize(flat, mat.EigenNone) {
			t.Fatal("the library found no eigenvalues")
		}
		largest := 0.0
		for _, v := range eigen.Values(nil) {
			largest = math.Max(largest, real(v))
		}
		if math.Abs(got.Largest-largest) > 1e-6*largest {
			t.Fatalf("largest eigenvalue %g, the library says %g", got.Largest, largest)
		}
		sum := 0.0
		for _, w := range got.Weights {
			if !(w > 0) {
				t.Fatalf("weights %v", got.Weights)
			}
			sum += w
		}
		if math.Abs(sum-1) > 1e-9 || got.Ratio < 0 {
			t.Fatalf("weights sum to %g, ratio %g", sum, got.Ratio)
		}
	})
}

// Answers made from weights agree throughout and give those weights back.
func TestConsistentAnswers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.SliceOfN(rapid.Float64Range(1, 3), 3, Most).Draw(t, "weights")
		sum := 0.0
		for _, x := range w {
			sum += x
		}
		var upper []float64
		for i := range w {
			for j := i + 1; j < len(w); j++ {
				upper = append(upper, w[i]/w[j])
			}
		}
		got, err := Weigh(full(len(w), upper...))
		if err != nil {
			t.Fatal(err)
		}
		for i := range w {
			if math.Abs(got.Weights[i]-w[i]/sum) > 1e-9 {
				t.Fatalf("%v gave %v", w, got.Weights)
			}
		}
		if got.Ratio > 1e-9 {
			t.Fatalf("ratio %g", got.Ratio)
		}
	})
}

func TestWeighRefuses(t *testing.T) {
	for name, a := range map[string][][]float64{
		"one thing":       {{1}},
		"not square":      {{1, 2}, {0.5}},
		"off the scale":   full(2, 10),
		"zero":            {{1, 0}, {0, 1}},
		"not a number":    {{1, math.NaN()}, {1, 1}},
		"not the inverse": {{1, 2}, {2, 1}},
		"diagonal":        {{2, 1}, {1, 1}},
		"eleven things":   full(11, make([]float64, 55)...),
	} {
		if _, err := Weigh(a); err == nil {
			t.Errorf("%s was taken", name)
		}
	}
}
