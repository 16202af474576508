package sales

import (
	"math"
	"slices"

	"asfound/rubrics/kernel"
)

// Predict adjusts the most alike sales to the thing and takes their middle.
func (m *Market) Predict(thing *Sale) Prediction {
	t := m.code(thing)
	c := m.newCircle()
	c.draw(&t, nobody)
	p := c.local(&t)
	p.Rows = c.rows(&t)
	p.Shape = m.shape(c.near)
	return p
}

// rows shows each neighbour with its adjustments, in the order of the sales.
func (c *circle) rows(thing *coded) []Row {
	m := c.m
	out := make([]Row, len(c.near))
	kinds := len(m.form.Attributes) + len(m.levels)
	factors := make([]float64, kinds*len(c.near))
	for k, i := range c.near {
		s := &m.coded[i]
		r := Row{Sale: i, Weight: c.share[k], Trust: min(m.trust[i], 1), Factors: factors[k*kinds : (k+1)*kinds : (k+1)*kinds]}
		for a := range m.form.Attributes {
			r.Factors[a] = float64((m.known(thing, a) - m.known(s, a)) * m.beta[1+a])
		}
		for l := range m.levels {
			r.Factors[len(m.form.Attributes)+l] = m.premium(l, thing.words[l]) - m.premium(l, s.words[l])
		}
		r.Log = m.sales[i].Log
		for _, by := range r.Factors {
			r.Log += by
		}
		out[k] = r
	}
	slices.SortFunc(out, func(a, b Row) int { return a.Sale - b.Sale })
	return out
}

// known is a number of a sale, the centre of the sales where it is not known.
func (m *Market) known(s *coded, attribute int) float64 {
	if x := s.numbers[attribute]; !math.IsNaN(x) {
		return x
	}
	return m.centre[attribute]
}

// Quantile is the log price that a share q of like sales stays below.
func (p *Prediction) Quantile(q float64) float64 {
	return p.Mean + float64(p.SD*p.Shape.At(q))
}

// Price is the middle price.
func (p *Prediction) Price() float64 { return kernel.Exp(p.Mean) }
