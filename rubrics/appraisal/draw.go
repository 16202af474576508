package appraisal

// Every sum is drawn in ten independent blocks. Each block is a Latin hypercube
// over 1009 layers (McKay, Beckman, Conover, Technometrics 21, 1979): every
// cause has exactly one draw in each 1009th of its probability. How far the
// blocks differ says how far the drawing may have moved a figure.
const (
	blocks = 10
	layers = 1009 // a prime
	// Draws is how many times every sum is drawn.
	Draws = blocks * layers
)

// stream gives the uniform numbers of one named cause, so adding a line never
// disturbs the others, and two listings that share a cause share its luck
// (common random numbers).
type stream uint64

// newStream derives a stream from its name (FNV-1a, 64 bit).
func newStream(name string) stream {
	h := uint64(14695981039346656037)
	for i := range len(name) {
		h ^= uint64(name[i])
		h *= 1099511628211
	}
	return stream(mix(h))
}

// other is the same cause with other luck; turn 0 is the stream itself.
func (s stream) other(turn uint64) stream { return s + stream(turn*0xD1B54A32D192ED03) }

// weyl is the increment of SplitMix64.
const weyl = 0x9E3779B97F4A7C15

// order is the order in which a block visits the layers of a stream: draw k lies
// in layer (step/(k+from) + start) mod 1009, where 1/0 is 0. The affine maps over
// a prime field take any two layers to any two others equally often, so the
// variance of a mean over a block is exactly that of independently shuffled
// layers. The reciprocal before them changes nothing of that; it keeps two streams
// with like steps from going hand in hand through a whole block.
type order struct{ step, start, from int }

// block gives the order of block b; the draws take the counters below Draws.
func (s stream) block(b int) order {
	z := mix(uint64(s) + uint64(Draws+1+b)*weyl)
	return order{1 + int(z>>43)%(layers-1), int(z>>22&0x1FFFFF) % layers, int(z&0x3FFFFF) % layers}
}

// layer is the layer of draw k of the block.
func (o order) layer(k int) int { return (o.step*int(reciprocal[k+o.from]) + o.start) % layers }

// draw is the draw that lies in a layer.
func (o order) draw(layer int) int {
	y := (layer + layers - o.start) * int(reciprocal[o.step]) % layers
	k := int(reciprocal[y]) - o.from
	if k < 0 {
		k += layers
	}
	return k
}

// reciprocal is 1/x in the field of the layers, twice over.
var reciprocal = func() (out [2 * layers]uint16) {
	out[1] = 1
	for x := 2; x < layers; x++ {
		// From layers = q*x + r: 1/x = -q * 1/r.
		out[x] = uint16((layers - layers/x) * int(out[layers%x]) % layers)
	}
	copy(out[layers:], out[:layers])
	return out
}()

// within is where in its layer draw i lies, in (0, 1). Forty bits and a half
// keep every number strictly inside its layer after rounding.
func (s stream) within(i int) float64 {
	return (float64(int64(mix(uint64(s)+uint64(i+1)*weyl)>>24)) + 0.5) / (1 << 40)
}

// at is the number of draw i, which lies in the given layer.
func (s stream) at(i, layer int) float64 { return (float64(layer) + s.within(i)) / layers }

// fill writes what a table gives for the numbers of all draws; without one, the
// numbers themselves.
func (s stream) fill(out []float32, table *quantiles) {
	for b := range blocks {
		o := s.block(b)
		for k := range layers {
			i := b*layers + k
			u := s.at(i, o.layer(k))
			if table != nil {
				u = table.at(u)
			}
			out[i] = float32(u)
		}
	}
}

// threshold tells which draws lie below a chance: those in the layers before it,
// and of that layer those that a closer look finds below.
type threshold struct {
	layer  int
	chance float64
}

func newThreshold(chance float64) threshold {
	return threshold{int(float64(chance * layers)), chance}
}

func (t threshold) passed(s stream, i, layer int) bool {
	// The product may round to the next layer, so its neighbours are looked at too.
	if layer < t.layer-1 {
		return true
	}
	return layer <= t.layer+1 && s.at(i, layer) < t.chance
}

// mix is the finalizer of SplitMix64 (Steele, Lea, Flood, OOPSLA 2014).
func mix(z uint64) uint64 {
	z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9
	z = (z ^ (z >> 27)) * 0x94D049BB133111EB
	return z ^ (z >> 31)
}
