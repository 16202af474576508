package depreciation

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mathext"
	"pgregory.net/rapid"
)

// Reference: Go's math library.
func TestLogGamma(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z := rapid.Float64Range(1, 200).Draw(t, "z")
		want, _ := math.Lgamma(z)
		if got := logGamma(z); math.Abs(got-want) > 4e-14*max(1, math.Abs(want)) {
			t.Fatalf("logGamma(%v) = %v, want %v", z, got, want)
		}
	})
}

// Reference: gonum mathext.RegIncBeta (Cephes). The fraction is slowest at the
// edge of its near side, so that is tried as well as any x.
func TestIncompleteBetaAgainstGonum(t *testing.T) {
	worst := 0.0
	for a := 1.0; a <= 60; a += 2.95 {
		for b := 1.0; b <= 60; b += 2.95 {
			edge := (a + 1) / (a + b + 2)
			for _, x := range []float64{0, edge / 8, edge / 2, edge, (1 + edge) / 2, 1} {
				got, want := incompleteBeta(x, a, b), mathext.RegIncBeta(a, b, x)
				if want > 0 {
					worst = max(worst, math.Abs(got/want-1))
				} else if got != 0 {
					t.Errorf("I_%v(%v, %v) = %v, gonum 0", x, a, b, got)
				}
			}
		}
	}
	if worst > 1e-12 {
		t.Errorf("off by %v of the value", worst)
	}
	rapid.Check(t, func(t *rapid.T) {
		shape := rapid.Float64Range(1, 60)
		a, b := shape.Draw(t, "a"), shape.Draw(t, "b")
		x := rapid.Float64Range(0, 1).Draw(t, "x")
		got, want := incompleteBeta(x, a, b), mathext.RegIncBeta(a, b, x)
		if math.Abs(got-want) > 1e-13 {
			t.Fatalf("I_%v(%v, %v) = %v, gonum %v", x, a, b, got, want)
		}
	})
}

// Whole shapes have a closed form: I_x(1, b) = 1 - (1-x)^b, and I_x(2, 2) = 3x^2 - 2x^3.
func TestIncompleteBetaClosedForms(t *testing.T) {
	for x := 0.0; x <= 1; x += 1.0 / 64 {
		for b := 1.0; b <= 30; b++ {
			if got, want := incompleteBeta(x, 1, b), 1-math.Pow(1-x, b); math.Abs(got-want) > 1e-13 {
				t.Errorf("I_%v(1, %v) = %v, want %v", x, b, got, want)
			}
		}
		if got, want := incompleteBeta(x, 2, 2), x*x*(3-2*x); math.Abs(got-want) > 1e-13 {
			t.Errorf("I_%v(2, 2) = %v, want %v", x, got, want)
		}
	}
}
