package sales

import (
	"math"
	"sort"

	"asfound/rubrics/kernel"
)

// Shape is how the errors of predictions spread, in units of SD: the normal
// shape where few sales say otherwise, their own errors where many do. It is
// symmetric, and scaled with SD so that the market's own errors are covered.
type Shape struct {
	sizes []float64 // sizes of errors left out one by one, sorted
	own   float64   // share of them in the shape
}

// shape leaves out one neighbour after the other, at most leftOut of them, and
// predicts it from the rest.
func (m *Market) shape(near []neighbour) *Shape {
	if len(near) < 2 {
		return &Shape{}
	}
	s := &Shape{}
	around := make([]neighbour, len(near))
	stride := (len(near) + leftOut - 1) / leftOut
	for k := 0; k < len(near); k += stride {
		n := near[k]
		thing := &m.sales[n.sale]
		for j, o := range near {
			around[j] = neighbour{o.sale, m.likeness(thing, &m.sales[o.sale])}
		}
		p := m.local(thing, around, k)
		// The fit saw this sale: its error without it is larger by the leverage.
		e := m.residual[n.sale] / (1 - m.hat[n.sale])
		fitted := m.sales[n.sale].Log - m.residual[n.sale]
		s.sizes = append(s.sizes, math.Abs(e-(p.Mean-fitted))/p.SD)
	}
	sort.Float64s(s.sizes)
	s.own = float64(len(s.sizes)) / (float64(len(s.sizes)) + calibrateAfter)
	return s
}

// At is the quantile q in units of SD.
func (s *Shape) At(q float64) float64 {
	if q < 0.5 {
		return -s.At(1 - q)
	}
	z := kernel.NormalQuantile(q)
	if s == nil || s.own == 0 {
		return z
	}
	x := float64((2*q - 1) * float64(len(s.sizes)))
	i := min(int(x), len(s.sizes)-1)
	return float64((1-s.own)*z) + float64(s.own*s.sizes[i])
}

// Own is the share of the shape that comes of the sales' own errors.
func (s *Shape) Own() float64 { return s.own }
