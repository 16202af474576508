package sales

import "math"

// circle is the sales that a thing is valued by. It is drawn anew for one thing
// after the other.
type circle struct {
	m     *Market
	near  []int   // sales, by residual
	count float64 // of them, copies together as one
	// By neighbour:
	residual, likeness, share []float64
	// Scratch, by sale and by column of the design:
	all, order, gap []float64
	far             []term
}

func (m *Market) newCircle() *circle {
	n := min(len(m.coded), m.most())
	return &circle{
		m: m, near: make([]int, 0, n), residual: make([]float64, 0, n), likeness: make([]float64, 0, n), share: make([]float64, n),
		all: make([]float64, len(m.coded)), gap: make([]float64, m.columns), far: make([]term, 0, m.columns),
	}
}

// most bounds how many sales are drawn.
func (m *Market) most() int {
	if m.form.Neighbours > 0 {
		return m.form.Neighbours
	}
	return defaultAlike
}

const nobody = -1

// draw takes the sales most alike to a thing, without the copies of the one left
// out. Ties go by residual, so that the order of the sales means nothing.
func (c *circle) draw(thing *coded, out int) {
	m := c.m
	for i := range m.coded {
		c.all[i] = nobody
		if m.same[i] != out {
			c.all[i] = m.likeness(thing, &m.coded[i])
		}
	}
	least, ties := 0.0, len(c.all)
	if most := m.most(); most < len(c.all) {
		c.order = append(c.order[:0], c.all...)
		least, ties = greatest(c.order, most), most
		for _, x := range c.all {
			if x > least {
				ties--
			}
		}
	}
	c.near, c.residual, c.likeness, c.count = c.near[:0], c.residual[:0], c.likeness[:0], 0
	for _, i := range m.rank {
		x := c.all[i]
		if x < 0 || x < least || x == least && ties == 0 {
			continue
		}
		if x == least {
			ties--
		}
		c.near, c.residual, c.likeness = append(c.near, i), append(c.residual, m.residual[i]), append(c.likeness, x)
		c.count += m.sales[i].Weight
	}
	c.share = c.share[:len(c.near)]
}

// greatest is the k-th greatest value, k from 1, by Hoare's FIND (CACM 4:321,
// 1961). It moves the values about.
func greatest(values []float64, k int) float64 {
	low, high := 0, len(values)-1
	for low < high {
		pivot := values[(low+high)/2]
		i, j := low, high
		for i <= j {
			for values[i] > pivot {
				i++
			}
			for values[j] < pivot {
				j--
			}
			if i <= j {
				values[i], values[j] = values[j], values[i]
				i++
				j--
			}
		}
		switch {
		case k-1 <= j:
			high = j
		case k-1 >= i:
			low = i
		default:
			return values[k-1]
		}
	}
	return values[k-1]
}

// weigh sets the neighbours' shares, and tells how many they are worth.
func (c *circle) weigh() (worth float64) {
	sum, squares := 0.0, 0.0
	for k, i := range c.near {
		weight := c.m.sales[i].Weight
		w := float64(float64(c.likeness[k]+shared/c.count) * float64(weight*c.m.trust[i]))
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
// whole market's, for a thing that the circle is drawn for.
func (c *circle) local(thing *coded) Prediction {
	m := c.m
	worth := c.weigh()
	middle := weightedMiddle(c.residual, c.share)
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

// doubt is the variance of the adjustment itself: of the rates over the distance
// from the neighbours to the thing, of what is not known of the thing but of
// them, and of a word that no sale has.
func (c *circle) doubt(thing *coded) float64 {
	m := c.m
	clear(c.gap)
	for _, t := range thing.row {
		c.gap[t.column] += t.value
	}
	for k, i := range c.near {
		w := c.share[k]
		for _, t := range m.coded[i].row {
			c.gap[t.column] -= float64(w * t.value)
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
	for k, i := range c.near {
		if knows(&c.m.coded[i]) {
			sum += c.share[k]
		}
	}
	return sum
}
