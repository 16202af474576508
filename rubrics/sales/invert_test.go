package sales

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

// Reference: gonum's mat.Cholesky, on symmetric matrices B B' + I.
func TestInvertAgreesWithGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 12).Draw(t, "n")
		b := mat.NewDense(n, n, nil)
		for i := range n {
			for j := range n {
				b.Set(i, j, rapid.Float64Range(-3, 3).Draw(t, "b"))
			}
		}
		var square mat.Dense
		square.Mul(b, b.T())
		full, lower := mat.NewSymDense(n, nil), make([][]float64, n)
		for i := range n {
			square.Set(i, i, square.At(i, i)+1)
			lower[i] = make([]float64, i+1)
			for j := range i + 1 {
				full.SetSym(i, j, square.At(i, j))
				lower[i][j] = square.At(i, j)
			}
		}
		var c mat.Cholesky
		var want mat.SymDense
		if !c.Factorize(full) {
			t.Fatal("gonum finds it not positive definite")
		}
		if err := c.InverseTo(&want); err != nil {
			t.Fatal(err)
		}
		got := invert(lower)
		for i := range n {
			for j := range n {
				if math.Abs(got[i][j]-want.At(i, j)) > 1e-10 {
					t.Fatalf("(%d, %d) is %v, gonum gives %v", i, j, got[i][j], want.At(i, j))
				}
			}
		}
	})
}

// Two columns that are the same leave no pivot for the second.
func TestInvertHoldsALostPivot(t *testing.T) {
	for _, a := range [][][]float64{{{1}, {1, 1}}, {{1e12}, {1e12, 1e12}}, {{4}, {2, 1}, {2, 1, 1}}} {
		for _, line := range invert(a) {
			for _, x := range line {
				if math.IsNaN(x) || math.IsInf(x, 0) {
					t.Errorf("%v gives %v", a, x)
				}
			}
		}
	}
}
