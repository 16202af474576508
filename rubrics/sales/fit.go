package sales

import (
	"math"

	"asfound/rubrics/kernel"
)

// Market is a set of sales with the rates fitted to them.
type Market struct {
	form    Form
	sales   []Sale
	tails   tails
	coded   []coded
	same    []int     // first copy of each sale, itself for most
	group   []float64 // weight of all copies, by first
	told    []bool    // attributes that some sale tells
	centre  []float64 // mean of each number over the sales that know it
	range2  []float64 // variance of a number that is not known
	levels  []level   // by label; the last for combinations
	columns int
	prior   []float64 // mean of each column
	tight   []float64 // prior precision of each column
	fitted
}

// fitted is what the regression found.
type fitted struct {
	beta     []float64
	cov      [][]float64
	variance float64 // of the errors
	residual []float64
	trust    []float64 // weight left by the size of the error; 1 on average
	hat      []float64 // leverage of each group of copies
}

// Fit finds rates, premiums and spread by least squares with normal priors
// (Gelman et al., Bayesian Data Analysis, 3rd ed. 2013, section 14.8), reweighted
// for Student-t errors (Lange, Little, Taylor, JASA 84:881-896, 1989). It needs
// at least one sale; every sale must have as many numbers and labels as the form.
func Fit(form Form, sales []Sale) *Market { return fit(form, sales, robust) }

// tails is how a fit takes the errors: as Student's t with so many degrees of
// freedom. Where they are in truth normal, the square of the scale so found comes
// to this share of their variance.
type tails struct{ freedom, share float64 }

// robust forgives outliers; the share solves E[5 z^2 / (4 + z^2/share)] = share
// for a standard normal z.
var robust = tails{freedom: 4, share: 0.6905668}

func fit(form Form, sales []Sale, t tails) *Market {
	m := &Market{form: form, sales: sales, tails: t, columns: 1 + len(form.Attributes)}
	m.centres()
	m.words()
	m.priors()
	m.twins()
	m.coded = make([]coded, len(sales))
	for i := range sales {
		m.coded[i] = m.code(&sales[i])
	}
	m.regress()
	return m
}

func dot(row []term, b []float64) float64 {
	sum := 0.0
	for _, t := range row {
		sum += float64(t.value * b[t.column])
	}
	return sum
}

// quadratic is row' v row for a symmetric v.
func quadratic(row []term, v [][]float64) float64 {
	sum := 0.0
	for i, a := range row {
		line, half := v[a.column], 0.0
		for _, b := range row[:i] {
			half += float64(b.value * line[b.column])
		}
		sum += float64(a.value * (float64(2*half) + float64(a.value*line[a.column])))
	}
	return sum
}

// regress alternates between coefficients, spread and trust.
func (m *Market) regress() {
	n := len(m.sales)
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
		m.solve(level)
		free := count - float64(m.columns)
		for j := range m.tight {
			free += float64(m.tight[j] * m.cov[j][j]) // what the priors hold costs no freedom
		}
		squares := 0.0
		for i := range m.coded {
			e := m.sales[i].Log - level - dot(m.coded[i].row, m.beta)
			m.residual[i] = e
			squares += float64(float64(m.sales[i].Weight*m.trust[i]) * float64(e*e))
		}
		was := m.variance
		m.variance = (float64(m.form.Count*guess) + squares/m.tails.share) / (m.form.Count + max(free, 0))
		scale2 := float64(m.tails.share * m.variance)
		for i, e := range m.residual {
			m.trust[i] = (m.tails.freedom + 1) / (m.tails.freedom + float64(e*e)/scale2)
		}
		if math.Abs(m.variance/was-1) < 1e-9 {
			break
		}
	}
	for i := range m.coded {
		group := float64(m.group[m.same[i]] * m.trust[i])
		m.hat[i] = min(float64(group*quadratic(m.coded[i].row, m.cov))/m.variance, 0.9)
	}
	m.beta[0] += level
}

// solve finds the coefficients under the present variance and trust.
func (m *Market) solve(level float64) {
	a, b := make([][]float64, m.columns), make([]float64, m.columns)
	for j := range a {
		a[j] = make([]float64, j+1)
		a[j][j] = m.tight[j]
		b[j] = float64(m.tight[j] * m.prior[j])
	}
	for i := range m.coded {
		w := float64(m.sales[i].Weight*m.trust[i]) / m.variance
		y := m.sales[i].Log - level
		row := m.coded[i].row
		for j, s := range row { // columns rise along a row
			ws := float64(w * s.value)
			b[s.column] += float64(ws * y)
			line := a[s.column]
			for _, t := range row[:j+1] {
				line[t.column] += float64(ws * t.value)
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
func (m *Market) Premium(k int, word string) float64 { return m.premium(k, m.levels[k].code(word)) }

func (m *Market) premium(k, code int) float64 {
	if column := m.levels[k].column(code); column > 0 {
		return m.beta[column]
	}
	return 0
}

// Spread is the log spread of the sales around the fitted rates.
func (m *Market) Spread() float64 { return math.Sqrt(m.variance) }

// likeness is what sale s counts beside the thing valued, above 0 and at most 1.
func (m *Market) likeness(thing, s *coded) float64 {
	far, k := 0.0, 1.0
	for i, a := range m.form.Attributes {
		x, y := thing.numbers[i], s.numbers[i]
		if math.IsNaN(x) != math.IsNaN(y) {
			k *= unknownCounts
		} else if !math.IsNaN(x) {
			d := (x - y) / a.Width
			far += float64(d * d)
		}
	}
	for i, l := range m.form.Labels {
		switch x, y := thing.words[i], s.words[i]; {
		case x == y:
		case x == 0 || y == 0:
			k *= unknownCounts
		default:
			k *= l.Unlike
		}
	}
	return float64(k * kernel.Exp(-far/2))
}
