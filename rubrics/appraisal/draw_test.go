package appraisal

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
)

var causes = []string{"worth", "care", "overrun", "remedy:lift-cables", "landing:transport", "doubt:column-weld", "failed:column-weld", ""}

// What makes a Latin hypercube: each 1009th of the probability has exactly one
// draw in every block, whether read by draw or by layer.
func TestEveryLayerOnceABlock(t *testing.T) {
	u := make([]float32, Draws)
	for _, name := range causes {
		s := newStream(name)
		s.fill(u, nil)
		for b := range blocks {
			var seen [layers]bool
			o := s.block(b)
			for k := range layers {
				i, layer := b*layers+k, o.layer(k)
				x := s.at(i, layer)
				if at := int(math.Floor(x * layers)); !(x > 0 && x < 1) || at != layer || seen[layer] || u[i] != float32(x) {
					t.Fatalf("%q block %d draw %d: %v is to be the only one of layer %d, the column has %v", name, b, k, x, layer, u[i])
				}
				if o.draw(layer) != k {
					t.Fatalf("%q block %d: layer %d is said to be of draw %d, it is of %d", name, b, layer, o.draw(layer), k)
				}
				seen[layer] = true
			}
		}
	}
}

// A threshold passes the draws below its chance and no other.
func TestThresholds(t *testing.T) {
	s := newStream("doubt:column-weld")
	for _, chance := range []float64{1e-9, 1.0 / layers, 2.0 / layers, 0.03, 0.12, 0.25, 0.4, 1008.0 / layers, 1 - 1e-12} {
		th, n := newThreshold(chance), 0
		for b := range blocks {
			o := s.block(b)
			for layer := range layers {
				i := b*layers + o.draw(layer)
				got, want := th.passed(s, i, layer), s.at(i, layer) < chance
				if got != want || (want && layer >= th.layer+2) {
					t.Fatalf("chance %v, layer %d: passed %v, want %v", chance, layer, got, want)
				}
				if want {
					n++
				}
			}
		}
		if math.Abs(float64(n)/Draws-chance) > 1.0/layers {
			t.Errorf("chance %v: %d of %d draws", chance, n, Draws)
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
	const pairs = 1500
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
	if ratio := sum / (pairs * blocks) / want; math.Abs(ratio-1) > 0.06 {
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
		u, one := make([]float64, Draws), make([]float32, Draws)
		newStream(fmt.Sprint("doubt:point-", n)).other(uint64(n%3)).fill(one, nil)
		for i, x := range one {
			u[i] = float64(x)
		}
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
