package sales

import (
	"math"
	"slices"

	"asfound/rubrics/kernel"
)

// Shape is how the errors of predictions spread, in units of SD: the normal
// shape where few sales say otherwise, their own errors where many do. It is
// symmetric, and scaled with SD so that the market's own errors are covered.
type Shape struct {
	sizes []float64 // sizes of errors left out one by one, sorted
	own   float64   // share of them in the shape
}

// shape leaves out one neighbour after the other, at most leftOut of them and from
// all over the range of residuals, and predicts it from the rest.
func (c *circle) shape() *Shape {
	m := c.m
	one := make([]int, 0, len(c.near)) // of each group of copies
	for _, k := range c.rank {
		if i := c.near[k].sale; m.same[i] == i {
			one = append(one, i)
		}
	}
	s := &Shape{}
	if len(one) < 2 {
		return s
	}
	stride := (len(one) + leftOut - 1) / leftOut
	for k := stride / 2; k < len(one); k += stride {
		i := one[k]
		thing := &m.coded[i]
		for j, n := range c.near {
			c.likeness[j] = m.likeness(thing, &m.coded[n.sale])
		}
		p := c.local(thing, i)
		// The fit saw this sale: its error without it is larger by the leverage.
		e := m.residual[i] / (1 - m.hat[i])
		fitted := m.sales[i].Log - m.residual[i]
		s.sizes = append(s.sizes, math.Abs(e-(p.Mean-fitted))/p.SD)
	}
	slices.Sort(s.sizes)
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
