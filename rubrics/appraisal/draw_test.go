package appraisal

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
)

var causes = []string{"worth", "care", "overrun", "remedy:lift-cables", "landing:transport", "doubt:column-weld", "failed:column-weld", ""}

// What makes a Latin hypercube: each 1009th of the probability has exactly one
// draw in every block.
func TestEveryLayerOnceABlock(t *testing.T) {
	u := make([]float64, Draws)
	for _, name := range causes {
		s := newStream(name)
		s.fill(u)
		for b := range blocks {
			var seen [layers]bool
			at := s.orders()[b]
			for k, x := range u[b*layers : (b+1)*layers] {
				layer := int(math.Floor(x * layers))
				if !(x > 0 && x < 1) || seen[layer] {
					t.Fatalf("%q block %d draw %d: %v lies in layer %d, which has one already", name, b, k, x, layer)
				}
				seen[layer] = true
				if layer != at.layer(k) || x != s.at(b*layers+k, layer) {
					t.Fatalf("%q block %d draw %d: read alone it is another number", name, b, k)
				}
			}
		}
	}
}

// Over all orders, two draws meet every two layers exactly once: that is why the
// variance over a block is that of layers shuffled independently.
func TestOrdersMeetEveryPairOnce(t *testing.T) {
	const k, l, from = 3, 700, 310 // 700+310 is 1, 3+310 no special number
	met := make([]bool, layers*layers)
	for step := 1; step < layers; step++ {
		for start := range layers {
			o := order{step, start, from}
			pair := o.layer(k)*layers + o.layer(l)
			if o.layer(k) == o.layer(l) || met[pair] {
				t.Fatalf("order %+v meets layers %d and %d again", o, o.layer(k), o.layer(l))
			}
			met[pair] = true
		}
	}
}

// Reciprocals are what they are called.
func TestReciprocals(t *testing.T) {
	for x := 1; x < layers; x++ {
		if r := int(reciprocal[x]); x*r%layers != 1 || reciprocal[x+layers] != reciprocal[x] {
			t.Errorf("1/%d is said to be %d", x, r)
		}
	}
	if reciprocal[0] != 0 || reciprocal[layers] != 0 {
		t.Error("1/0 must stay 0, or two draws would share a layer")
	}
}

// The orders that names hash to have that variance too. For centred layers x,
// the mean over a block of x of one stream times x of another has the variance
// (sum of x^2)^2 / (n^2 (n-1)), as for independent shuffles.
func TestOrdersVaryAsShuffles(t *testing.T) {
	const pairs = 4000
	squares, sum := 0.0, 0.0
	for x := range layers {
		squares += float64((x - layers/2) * (x - layers/2))
	}
	want := squares * squares / (layers * layers * (layers - 1))
	for p := range pairs {
		one, two := newStream(fmt.Sprint("one", p)), newStream(fmt.Sprint("two", p))
		for b := range blocks {
			a, c, dot := one.block(b), two.block(b), 0
			for k := range layers {
				dot += (a.layer(k) - layers/2) * (c.layer(k) - layers/2)
			}
			sum += float64(dot) / layers * float64(dot) / layers
		}
	}
	if ratio := sum / (pairs * blocks) / want; math.Abs(ratio-1) > 0.1 {
		t.Errorf("variance is %.3f of that of independent shuffles", ratio)
	}
}

// Within the layers the numbers are uniform: chi-squared over 100 classes stays
// below the 99.99 % point of gonum's distribution for each of many causes.
func TestStreamsAreUniformWithinLayers(t *testing.T) {
	most := distuv.ChiSquared{K: 99}.Quantile(0.9999)
	for _, name := range causes {
		var hits [100]float64
		for i := range Draws {
			hits[int(newStream(name).within(i)*100)]++
		}
		chi := 0.0
		for _, h := range hits {
			chi += (h - Draws/100.0) * (h - Draws/100.0) / (Draws / 100.0)
		}
		if chi > most {
			t.Errorf("stream %q: chi-squared %.1f over %.1f", name, chi, most)
		}
	}
}

// Streams of different names, and of one name at another turn, have nothing to do
// with each other: their correlations are those of independent numbers.
func TestStreamsAreIndependent(t *testing.T) {
	var all [][]float64
	for n := range 24 {
		u := make([]float64, Draws)
		newStream(fmt.Sprint("doubt:point-", n)).other(uint64(n % 3)).fill(u)
		all = append(all, u)
	}
	squares, n := 0.0, 0.0
	for a := range all {
		for b := range a {
			r := 0.0
			for i := range Draws {
				r += (all[a][i] - 0.5) * (all[b][i] - 0.5)
			}
			r *= 12.0 / Draws
			if squares += r * r; math.Abs(r) > 0.045 {
				t.Errorf("streams %d and %d correlate by %.3f", a, b, r)
			}
			n++
		}
	}
	if rms := math.Sqrt(squares/n) * math.Sqrt(Draws); rms < 0.7 || rms > 1.3 {
		t.Errorf("correlations are %.2f times those of independent numbers", rms)
	}
}
