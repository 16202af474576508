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

// shape is that of the neighbours' own errors, of at most leftOut of them from all
// over the range of residuals.
func (m *Market) shape(near []int) *Shape {
	one := make([]int, 0, len(near)) // of each group of copies
	for _, i := range near {
		if m.same[i] == i {
			one = append(one, i)
		}
	}
	s := &Shape{}
	if len(one) < 2 {
		return s
	}
	stride := (len(one) + leftOut - 1) / leftOut
	for k := stride / 2; k < len(one); k += stride {
		s.sizes = append(s.sizes, m.missed(one[k]))
	}
	slices.Sort(s.sizes)
	s.own = float64(len(s.sizes)) / (float64(len(s.sizes)) + calibrateAfter)
	return s
}

// missed is the size of the error at a sale that is predicted from the others, in
// units of SD. It is reckoned once.
func (m *Market) missed(i int) float64 {
	if m.misses == nil {
		m.misses, m.around = make([]float64, len(m.sales)), m.newCircle()
		for k := range m.misses {
			m.misses[k] = -1
		}
	}
	if m.misses[i] >= 0 {
		return m.misses[i]
	}
	m.around.draw(&m.coded[i], i)
	p := m.around.local(&m.coded[i])
	// The fit saw this sale: its error without it is larger by the leverage.
	e := m.residual[i] / (1 - m.hat[i])
	fitted := m.sales[i].Log - m.residual[i]
	m.misses[i] = math.Abs(e-(p.Mean-fitted)) / p.SD
	return m.misses[i]
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
