package sales

import (
	"math"
	"sort"

	"asfound/rubrics/kernel"
)

// Market is a set of sales with the rates fitted to them.
type Market struct {
	form     Form
	sales    []Sale
	centre   []float64        // mean of each attribute over the sales that know it
	levels   []map[string]int // column of each word, by label; the last for combinations
	columns  int
	prior    []float64 // mean of each column
	tight    []float64 // prior precision of each column
	beta     []float64
	cov      [][]float64
	variance float64
	residual []float64
	trust    []float64
	hat      []float64
	design   [][]term
}

// Fit finds rates, premiums and spread by least squares with normal priors
// (Gelman et al., Bayesian Data Analysis, 3rd ed. 2013, section 14.8), reweighted
// for Student-t errors (Lange, Little, Taylor, JASA 84:881-896, 1989). It needs
// at least one sale; every sale must have as many numbers and labels as the form.
func Fit(form Form, sales []Sale) *Market {
	m := &Market{form: form, sales: sales, columns: 1 + len(form.Attributes)}
	m.centres()
	m.words()
	m.priors()
	m.design = make([][]term, len(sales))
	for i := range sales {
		m.design[i] = m.terms(&sales[i])
	}
	m.regress(m.design)
	return m
}

// term is one entry of a sparse design row.
type term struct {
	column int
	value  float64
}

func (m *Market) centres() {
	m.centre = make([]float64, len(m.form.Attributes))
	for k := range m.centre {
		sum, n := 0.0, 0.0
		for i := range m.sales {
			if x := m.sales[i].Numbers[k]; !math.IsNaN(x) {
				sum += float64(m.sales[i].Weight * x)
				n += m.sales[i].Weight
			}
		}
		m.centre[k] = math.NaN() // no sale knows it: it adjusts nothing
		if n > 0 {
			m.centre[k] = sum / n
		}
	}
}

// words gives each word a column, the frequent ones first; a word met once tells
// nothing of itself that its price does not.
func (m *Market) words() {
	kinds := len(m.form.Labels)
	if m.form.Together > 0 {
		kinds++
	}
	m.levels = make([]map[string]int, kinds)
	for k := range m.levels {
		m.levels[k] = map[string]int{}
		times := map[string]int{}
		for i := range m.sales {
			if w := m.word(&m.sales[i], k); w != "" {
				times[w]++
			}
		}
		list := make([]string, 0, len(times))
		for w, n := range times {
			if n > 1 || k == len(m.form.Labels) {
				list = append(list, w)
			}
		}
		sort.Slice(list, func(a, b int) bool {
			if times[list[a]] != times[list[b]] {
				return times[list[a]] > times[list[b]]
			}
			return list[a] < list[b]
		})
		for _, w := range list {
			if m.columns < maxColumns {
				m.levels[k][w] = m.columns
				m.columns++
			}
		}
	}
}

// word is the k-th label of a sale; past the last, all of them together.
func (m *Market) word(s *Sale, k int) string {
	if k < len(m.form.Labels) {
		return s.Labels[k]
	}
	all := ""
	for _, w := range s.Labels {
		all += w + "\x00"
	}
	return all
}

func (m *Market) labelSD(k int) float64 {
	if k < len(m.form.Labels) {
		return m.form.Labels[k].SD
	}
	return m.form.Together
}

func (m *Market) priors() {
	m.prior, m.tight = make([]float64, m.columns), make([]float64, m.columns)
	m.tight[0] = 1e-6
	for k, a := range m.form.Attributes {
		m.prior[1+k] = a.Rate
		m.tight[1+k] = 1 / max(float64(a.RateSD*a.RateSD), 1e-12)
	}
	for k, level := range m.levels {
		sd := m.labelSD(k)
		for _, column := range level {
			m.tight[column] = 1 / max(float64(sd*sd), 1e-12)
		}
	}
}

func (m *Market) terms(s *Sale) []term {
	row := []term{{0, 1}}
	for k := range m.form.Attributes {
		if d := m.off(s, k); d != 0 {
			row = append(row, term{1 + k, d})
		}
	}
	for k := range m.levels {
		if column, ok := m.levels[k][m.word(s, k)]; ok {
			row = append(row, term{column, 1})
		}
	}
	return row
}

// off is how far a sale lies from the average of an attribute; where it is not
// known, the average is taken.
func (m *Market) off(s *Sale, k int) float64 {
	if d := s.Numbers[k] - m.centre[k]; !math.IsNaN(d) {
		return d
	}
	return 0
}

func dot(row []term, b []float64) float64 {
	sum := 0.0
	for _, t := range row {
		sum += float64(t.value * b[t.column])
	}
	return sum
}

// quadratic is row' V row.
func quadratic(row []term, v [][]float64) float64 {
	sum := 0.0
	for _, a := range row {
		for _, b := range row {
			sum += float64(float64(a.value*b.value) * v[a.column][b.column])
		}
	}
	return sum
}

// regress alternates between coefficients, spread and trust.
func (m *Market) regress(rows [][]term) {
	n := len(rows)
	count, level := 0.0, 0.0
	for i := range m.sales {
		count += m.sales[i].Weight
		level += float64(m.sales[i].Weight * m.sales[i].Log)
	}
	level /= count
	m.trust, m.residual, m.hat = make([]float64, n), make([]float64, n), make([]float64, n)
	for i := range m.trust {
		m.trust[i] = 1
	}
	guess := float64(m.form.Spread * m.form.Spread)
	m.variance = guess
	for range passes {
		a, b := make([][]float64, m.columns), make([]float64, m.columns)
		for j := range a {
			a[j] = make([]float64, m.columns)
			a[j][j] = m.tight[j]
			b[j] = float64(m.tight[j] * m.prior[j])
		}
		for i, row := range rows {
			w := float64(m.sales[i].Weight*m.trust[i]) / m.variance
			y := m.sales[i].Log - level
			for _, s := range row {
				b[s.column] += float64(float64(w*s.value) * y)
				for _, t := range row {
					a[s.column][t.column] += float64(float64(w*s.value) * t.value)
				}
			}
		}
		m.cov = invert(a)
		m.beta = make([]float64, m.columns)
		for j := range m.beta {
			for k := range b {
				m.beta[j] += float64(m.cov[j][k] * b[k])
			}
		}
		free := count - float64(m.columns)
		for j := range m.tight {
			free += float64(m.tight[j] * m.cov[j][j]) // what the priors hold costs no freedom
		}
		squares := 0.0
		for i, row := range rows {
			e := m.sales[i].Log - level - dot(row, m.beta)
			m.residual[i] = e
			squares += float64(float64(m.sales[i].Weight*m.trust[i]) * float64(e*e))
		}
		was := m.variance
		m.variance = (float64(m.form.Count*guess) + squares) / (m.form.Count + max(free, 0))
		for i, e := range m.residual {
			m.trust[i] = (outlier + 1) / (outlier + float64(e*e)/m.variance)
		}
		if math.Abs(m.variance/was-1) < 1e-9 {
			break
		}
	}
	for i, row := range rows {
		m.trust[i] = min(m.trust[i], 1)
		m.hat[i] = min(float64(float64(m.sales[i].Weight*m.trust[i])*quadratic(row, m.cov))/m.variance, 0.9)
	}
	m.beta[0] += level
}

// Rates are what the market came to think of each attribute, in order.
func (m *Market) Rates() []Rate {
	out := make([]Rate, len(m.form.Attributes))
	for k := range out {
		v := m.cov[1+k][1+k]
		out[k] = Rate{Mean: m.beta[1+k], SD: math.Sqrt(v), FromData: min(max(1-float64(v*m.tight[1+k]), 0), 1)}
	}
	return out
}

// Premium is the log premium of a word of the k-th label against the average.
func (m *Market) Premium(k int, word string) float64 {
	if column, ok := m.levels[k][word]; ok {
		return m.beta[column]
	}
	return 0
}

// Spread is the log spread of the sales around the fitted rates.
func (m *Market) Spread() float64 { return math.Sqrt(m.variance) }

// likeness is what sale s counts beside the thing valued, above 0 and at most 1.
func (m *Market) likeness(thing, s *Sale) float64 {
	far, k := 0.0, 1.0
	for i, a := range m.form.Attributes {
		x, y := thing.Numbers[i], s.Numbers[i]
		if math.IsNaN(x) != math.IsNaN(y) {
			k *= unknownCounts
		} else if !math.IsNaN(x) {
			d := (x - y) / a.Width
			far += float64(d * d)
		}
	}
	for i, l := range m.form.Labels {
		switch x, y := thing.Labels[i], s.Labels[i]; {
		case x == y:
		case x == "" || y == "":
			k *= unknownCounts
		default:
			k *= l.Unlike
		}
	}
	return float64(k * kernel.Exp(-far/2))
}
