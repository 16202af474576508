package sales

import (
	"cmp"
	"math"
	"slices"
)

// circle is the sales that one thing is valued by, ready to be weighed for it and
// for one after the other of themselves.
type circle struct {
	m     *Market
	near  []neighbour
	count float64 // of sales, copies together as one
	// By neighbour, and the order of the residuals:
	residual []float64
	rank     []int
	// For one thing at a time, by neighbour, and by column of the design:
	likeness, share []float64
	gap             []float64
	far             []term
}

// neighbour is a sale that is adjusted, with its likeness.
type neighbour struct {
	sale     int
	likeness float64
}

// nobody is left out.
const nobody = -1

func (m *Market) circle(thing *coded) *circle {
	c := &circle{m: m, near: make([]neighbour, len(m.coded))}
	for i := range c.near {
		c.near[i] = neighbour{i, m.likeness(thing, &m.coded[i])}
	}
	most := m.form.Neighbours
	if most <= 0 {
		most = defaultAlike
	}
	if len(c.near) > most {
		c.near = m.mostAlike(c.near, most)
	}
	n := len(c.near)
	c.residual, c.likeness, c.share = make([]float64, n), make([]float64, n), make([]float64, n)
	for k, n := range c.near {
		c.residual[k], c.likeness[k] = m.residual[n.sale], n.likeness
		c.count += m.sales[n.sale].Weight
	}
	c.rank = ranked(c.residual)
	c.gap, c.far = make([]float64, m.columns), make([]term, 0, m.columns)
	return c
}

// mostAlike are the most alike, in the order of the sales. Ties go by residual, so
// that the order means nothing.
func (m *Market) mostAlike(near []neighbour, most int) []neighbour {
	slices.SortFunc(near, func(a, b neighbour) int {
		return cmp.Or(cmp.Compare(b.likeness, a.likeness), cmp.Compare(m.residual[a.sale], m.residual[b.sale]), a.sale-b.sale)
	})
	near = near[:most]
	slices.SortFunc(near, func(a, b neighbour) int { return a.sale - b.sale })
	return near
}

// weigh sets the neighbours' shares but for the copies of the sale left out, and
// tells how many they are worth.
func (c *circle) weigh(out int) (worth float64) {
	sum, squares := 0.0, 0.0
	for k, n := range c.near {
		c.share[k] = 0
		if c.m.same[n.sale] == out {
			continue
		}
		weight := c.m.sales[n.sale].Weight
		w := float64(float64(c.likeness[k]+shared/c.count) * float64(weight*c.m.trust[n.sale]))
		c.share[k] = w
		sum += w
		squares += float64(w*w) / weight
	}
	for k := range c.share {
		c.share[k] /= sum
	}
	return float64(sum*sum) / squares
}

// local is the middle of the adjusted prices and their spread, shrunk to the
// whole market's.
func (c *circle) local(thing *coded, out int) (p Prediction) {
	m := c.m
	worth := c.weigh(out)
	middle := weightedMiddle(c.residual, c.share, c.rank)
	spread := 0.0
	for k, e := range c.residual {
		e -= middle
		spread += float64(c.share[k] * float64(e*e))
	}
	count := m.form.Count
	variance := (float64(worth*spread)/m.tails.share + float64(count*m.variance)) / max(worth+count-1, 1)
	total := max(float64(variance*(1+1/worth)), tightest*tightest) + c.doubt(thing)
	return Prediction{
		Mean: dot(thing.row, m.beta) + middle, Scatter: math.Sqrt(spread),
		SD: float64(math.Sqrt(total) * student(count+c.count-1) / normal90),
	}
}
