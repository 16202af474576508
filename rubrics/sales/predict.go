package sales

import (
	"math"

	"asfound/rubrics/kernel"
)

// Predict adjusts the most alike sales to the thing and takes their middle.
func (m *Market) Predict(thing *Sale) Prediction {
	t := m.code(thing)
	c := m.circle(&t)
	p := c.local(&t, nobody)
	p.Rows = c.rows(&t)
	p.Shape = c.shape()
	return p
}

// doubt is the variance of the adjustment itself: of the rates over the distance
// from the neighbours to the thing, of what is not known of the thing but of
// them, and of a word that no sale has.
func (c *circle) doubt(thing *coded) float64 {
	m := c.m
	clear(c.gap)
	for _, t := range thing.row {
		c.gap[t.column] += t.value
	}
	for k, n := range c.near {
		if w := c.share[k]; w > 0 {
			for _, t := range m.coded[n.sale].row {
				c.gap[t.column] -= float64(w * t.value)
			}
		}
	}
	c.gap[0] = 0
	c.far = c.far[:0]
	for j, v := range c.gap {
		if math.Abs(v) > 1e-12 {
			c.far = append(c.far, term{j, v})
		}
	}
	v := max(quadratic(c.far, m.cov), 0)
	for k := range m.form.Attributes {
		if math.IsNaN(thing.numbers[k]) {
			rate2 := float64(m.beta[1+k]*m.beta[1+k]) + m.cov[1+k][1+k]
			v += float64(c.knowing(func(s *coded) bool { return !math.IsNaN(s.numbers[k]) }) * float64(rate2*m.range2[k]))
		}
	}
	for k := range m.form.Labels {
		code, sd := thing.words[k], m.labelSD(k)
		switch {
		case code == 0:
			v += float64(c.knowing(func(s *coded) bool { return s.words[k] != 0 }) * float64(sd*sd))
		case m.levels[k].column(code) == 0:
			v += float64(sd * sd)
		}
	}
	return v
}

// knowing is the share of the neighbours that know something.
func (c *circle) knowing(knows func(s *coded) bool) float64 {
	sum := 0.0
	for k, n := range c.near {
		if knows(&c.m.coded[n.sale]) {
			sum += c.share[k]
		}
	}
	return sum
}

// rows shows each neighbour with its adjustments.
func (c *circle) rows(thing *coded) []Row {
	m := c.m
	out := make([]Row, len(c.near))
	kinds := len(m.form.Attributes) + len(m.levels)
	factors := make([]float64, kinds*len(c.near))
	for k, n := range c.near {
		s := &m.coded[n.sale]
		r := Row{Sale: n.sale, Weight: c.share[k], Trust: min(m.trust[n.sale], 1), Factors: factors[k*kinds : (k+1)*kinds : (k+1)*kinds]}
		for i := range m.form.Attributes {
			r.Factors[i] = float64((m.known(thing, i) - m.known(s, i)) * m.beta[1+i])
		}
		for i := range m.levels {
			r.Factors[len(m.form.Attributes)+i] = m.premium(i, thing.words[i]) - m.premium(i, s.words[i])
		}
		r.Log = m.sales[n.sale].Log
		for _, by := range r.Factors {
			r.Log += by
		}
		out[k] = r
	}
	return out
}

// known is the i-th number, the centre of the sales where it is not known.
func (m *Market) known(s *coded, i int) float64 {
	if x := s.numbers[i]; !math.IsNaN(x) {
		return x
	}
	return m.centre[i]
}

// Quantile is the log price that a share q of like sales stays below.
func (p *Prediction) Quantile(q float64) float64 {
	return p.Mean + float64(p.SD*p.Shape.At(q))
}

// Price is the middle price.
func (p *Prediction) Price() float64 { return kernel.Exp(p.Mean) }
