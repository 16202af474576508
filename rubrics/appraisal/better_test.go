package appraisal

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

// For two independent normal break-even prices the probability that one is the
// better buy is Phi((mA-mB)/sqrt(sA^2+sB^2)) of what each brings at its price, and
// the overtaking price is where the two means meet. Reference: gonum's normal, which
// also makes the samples.
func TestBetterAgainstTheNormal(t *testing.T) {
	const n = 40_000
	sample := func(mean, sd float64, seed uint64) []float64 {
		d := distuv.Normal{Mu: mean, Sigma: sd, Src: rand.NewPCG(seed, 1)}
		out := make([]float64, n)
		for i := range out {
			out[i] = d.Rand()
		}
		return out
	}
	for _, c := range []struct {
		name           string
		meanA, sdA     float64
		meanB, sdB     float64
		taxA, taxB     int
		priceA, priceB Money
	}{
		{"alike", 2000_00, 300_00, 2000_00, 300_00, 0, 0, 1500_00, 1500_00},
		{"a is ahead by half a spread", 2000_00, 300_00, 1900_00, 400_00, 0, 0, 1500_00, 1650_00},
		{"b is far ahead", 1000_00, 100_00, 1900_00, 250_00, 0, 0, 1000_00, 1500_00},
		{"other taxes", 2000_00, 300_00, 1900_00, 400_00, 10_00, 2_50, 1500_00, 1500_00},
		{"a would not do as a gift", 100_00, 300_00, 4000_00, 400_00, 0, 0, 1500_00, 1500_00},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := newPair(sample(c.meanA, c.sdA, 7), sample(c.meanB, c.sdB, 8), c.taxA, c.taxB)
			withA, withB := 1+float64(c.taxA)/1e4, 1+float64(c.taxB)/1e4
			aheadA, aheadB := (c.meanA-float64(c.priceA))*withA, (c.meanB-float64(c.priceB))*withB
			spread := math.Hypot(c.sdA*withA, c.sdB*withB)
			want := distuv.UnitNormal.CDF((aheadA - aheadB) / spread)
			// Four standard errors of a share.
			if got, may := p.better(c.priceA, c.priceB), 4*math.Sqrt(want*(1-want)/n)+1e-9; math.Abs(got-want) > may {
				t.Errorf("a is better in %.4f, want %.4f within %.4f", got, want, may)
			}
			// Four standard errors of a median, sqrt(pi/2) of those of a mean.
			may := 4 * math.Sqrt(math.Pi/2) * spread / math.Sqrt(n)
			if got, want := float64(p.overtakeA(c.priceB)), c.meanA-aheadB/withA; math.Abs(got-want) > may/withA {
				t.Errorf("a draws level at %.0f, want %.0f within %.0f", got, want, may/withA)
			}
			if got, want := float64(p.overtakeB(c.priceA)), c.meanB-aheadA/withB; math.Abs(got-want) > may/withB {
				t.Errorf("b draws level at %.0f, want %.0f within %.0f", got, want, may/withB)
			}
		})
	}
}

// By hand: four draws, one of them level at these prices.
func TestBetterCountsTiesHalf(t *testing.T) {
	p := newPair([]float64{100, 200, 300, 400}, []float64{100, 100, 400, 100}, 0, 0)
	if got := p.better(50, 50); got != (2+0.5)/4 {
		t.Errorf("better in %g of the draws, want 0.625", got)
	}
	if got := p.middle; got != 50 { // gaps -100, 0, 100, 300
		t.Errorf("the middle gap is %g, want 50", got)
	}
	if a, b := p.overtakeA(50), p.overtakeB(50); a != 100 || b != 0 {
		t.Errorf("level at %d and %d, want 100 and 0", a, b)
	}
}

// The median by searching against that by sorting.
func TestMiddleOf(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.SliceOfN(rapid.OneOf(rapid.Float64Range(-1e9, 1e9), rapid.SampledFrom([]float64{0, 1, 2})), 1, 200).Draw(t, "x")
		sorted := slices.Sorted(slices.Values(x))
		n := len(x)
		want := sorted[n/2]
		if n%2 == 0 {
			want = want/2 + sorted[n/2-1]/2
		}
		if got := middleOf(slices.Clone(x)); got != want {
			t.Fatalf("%g, want %g", got, want)
		}
	})
}
