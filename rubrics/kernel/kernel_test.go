package kernel

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Reference: Go's math library, which is tested against published vectors.
func TestKernelsAgreeWithLibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(-700, 700).Draw(t, "x")
		if got, want := Exp(x), math.Exp(x); math.Abs(got/want-1) > 4e-15 {
			t.Fatalf("Exp(%v) = %v, want %v", x, got, want)
		}
		y := rapid.Float64Range(1e-300, 1e300).Draw(t, "y")
		if got, want := Log(y), math.Log(y); math.Abs(got-want) > 4e-15*max(1, math.Abs(want)) {
			t.Fatalf("Log(%v) = %v, want %v", y, got, want)
		}
		b, e := rapid.Float64Range(0.01, 100).Draw(t, "base"), rapid.Float64Range(-5, 5).Draw(t, "exponent")
		if got, want := Pow(b, e), math.Pow(b, e); math.Abs(got/want-1) > 1e-13 {
			t.Fatalf("Pow(%v, %v) = %v, want %v", b, e, got, want)
		}
	})
}
