package sales

import (
	"math"
	"sort"

	"asfound/rubrics/kernel"
)

// Predict adjusts the most alike sales to the thing and takes their middle.
func (m *Market) Predict(thing *Sale) Prediction {
	near := m.alike(thing)
	p := m.local(thing, near, -1)
	p.Shape = m.shape(near)
	p.Rows = m.rows(thing, near)
	return p
}

// neighbour is a sale that is adjusted, with its likeness.
type neighbour struct {
	sale     int
	likeness float64
}

func (m *Market) alike(thing *Sale) []neighbour {
	near := make([]neighbour, len(m.sales))
	for i := range near {
		near[i] = neighbour{i, m.likeness(thing, &m.sales[i])}
	}
	most := m.form.Neighbours
	if most <= 0 {
		most = defaultAlike
	}
	if len(near) > most {
		sort.SliceStable(near, func(a, b int) bool { return near[a].likeness > near[b].likeness })
		near = near[:most]
		sort.Slice(near, func(a, b int) bool { return near[a].sale < near[b].sale })
	}
	return near
}

// weights are the neighbours' shares, and how many they are worth.
func (m *Market) weights(near []neighbour, skip int) (w []float64, worth float64) {
	w = make([]float64, len(near))
	sum, squares := 0.0, 0.0
	for k, n := range near {
		if k == skip {
			continue
		}
		s := &m.sales[n.sale]
		w[k] = float64(float64(n.likeness+shared/float64(len(near))) * float64(s.Weight*m.trust[n.sale]))
		sum += w[k]
		squares += float64(w[k]*w[k]) / s.Weight
	}
	for k := range w {
		w[k] /= sum
	}
	return w, float64(sum*sum) / squares
}

// local is the middle of the adjusted prices and their spread, shrunk to the
// whole market's; skip leaves a neighbour out.
func (m *Market) local(thing *Sale, near []neighbour, skip int) Prediction {
	w, worth := m.weights(near, skip)
	row := m.terms(thing)
	values := make([]float64, len(near))
	for k, n := range near {
		values[k] = m.residual[n.sale]
	}
	middle := weightedMiddle(values, w)
	spread := 0.0
	for k, e := range values {
		spread += float64(w[k] * float64((e-middle)*(e-middle)))
	}
	count := m.form.Count
	variance := (float64(worth*spread) + float64(count*m.variance)) / max(worth+count-1, 1)
	total := max(float64(variance*(1+1/worth)), tightest*tightest) + m.doubt(thing, row, near, w)
	return Prediction{
		Mean: dot(row, m.beta) + middle, Scatter: math.Sqrt(spread),
		SD: float64(math.Sqrt(total) * student(count+float64(len(near))-1) / normal90),
	}
}

// doubt is the variance of the adjustment itself: of the rates over the distance
// from the neighbours to the thing, and of a word that no sale has.
func (m *Market) doubt(thing *Sale, row []term, near []neighbour, w []float64) float64 {
	d := make([]float64, m.columns)
	for _, t := range row {
		d[t.column] += t.value
	}
	for k, n := range near {
		if w[k] > 0 {
			for _, t := range m.design[n.sale] {
				d[t.column] -= float64(w[k] * t.value)
			}
		}
	}
	d[0] = 0
	var gap []term
	for j, v := range d {
		if math.Abs(v) > 1e-12 {
			gap = append(gap, term{j, v})
		}
	}
	v := max(quadratic(gap, m.cov), 0)
	for k := range m.form.Labels {
		if word := thing.Labels[k]; word != "" {
			if _, seen := m.levels[k][word]; !seen {
				v += float64(m.labelSD(k) * m.labelSD(k))
			}
		}
	}
	return v
}

// rows shows each neighbour with its adjustments.
func (m *Market) rows(thing *Sale, near []neighbour) []Row {
	w, _ := m.weights(near, -1)
	out := make([]Row, len(near))
	for k, n := range near {
		s := &m.sales[n.sale]
		r := Row{Sale: n.sale, Weight: w[k], Trust: m.trust[n.sale], Log: s.Log}
		for i := range m.form.Attributes {
			by := float64((m.off(thing, i) - m.off(s, i)) * m.beta[1+i])
			r.Factors = append(r.Factors, by)
			r.Log += by
		}
		for i := range m.levels {
			by := m.Premium(i, m.word(thing, i)) - m.Premium(i, m.word(s, i))
			r.Factors = append(r.Factors, by)
			r.Log += by
		}
		out[k] = r
	}
	return out
}

// weightedMiddle is the weighted median, halfway where two share the middle.
func weightedMiddle(values, weights []float64) float64 {
	order := make([]int, 0, len(values))
	total := 0.0
	for i := range values {
		if weights[i] > 0 {
			order = append(order, i)
			total += weights[i]
		}
	}
	sort.SliceStable(order, func(a, b int) bool { return values[order[a]] < values[order[b]] })
	sum := 0.0
	for k, i := range order {
		sum += weights[i]
		if gap := sum - total/2; gap >= 0 {
			if gap < float64(1e-9*total) && k+1 < len(order) {
				return (values[i] + values[order[k+1]]) / 2
			}
			return values[i]
		}
	}
	return values[order[len(order)-1]]
}

// normal90 is the 90 % quantile of the standard normal distribution.
const normal90 = 1.2815515655446004

// student is the 90 % quantile of Student's t with nu degrees of freedom, by the
// Cornish-Fisher expansion (Abramowitz and Stegun 26.7.5, 1964): within 0.002
// from 4 degrees on.
func student(nu float64) float64 {
	const z = normal90
	const z3, z5, z7 = z * z * z, z * z * z * z * z, z * z * z * z * z * z * z
	return z + (z3+z)/(4*nu) + (5*z5+16*z3+3*z)/(96*nu*nu) + (3*z7+19*z5+17*z3-15*z)/(384*nu*nu*nu)
}

// Quantile is the log price that a share q of like sales stays below.
func (p *Prediction) Quantile(q float64) float64 {
	return p.Mean + float64(p.SD*p.Shape.At(q))
}

// Price is the middle price.
func (p *Prediction) Price() float64 { return kernel.Exp(p.Mean) }
