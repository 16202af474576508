package kernel

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
)

// Reference: gonum distuv.UnitNormal, and the quantiles of R's qnorm.
func TestNormalQuantile(t *testing.T) {
	for _, c := range []struct{ q, want float64 }{
		{.8, .841621233573}, {.9, 1.28155156554}, {.95, 1.64485362695}, {.975, 1.95996398454}, {.99, 2.32634787404},
	} {
		if got := NormalQuantile(c.q); math.Abs(got-c.want) > 1e-8 {
			t.Errorf("quantile %v = %v, R gives %v", c.q, got, c.want)
		}
	}
	for i := 1; i < 10_000; i++ {
		q := float64(i) / 10_000
		if got, want := NormalQuantile(q), distuv.UnitNormal.Quantile(q); math.Abs(got-want) > 1e-8 {
			t.Fatalf("quantile %v = %v, gonum gives %v", q, got, want)
		}
	}
}
