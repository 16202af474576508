package sales

import (
	"cmp"
	"math"
	"slices"
	"strings"
)

// coded is a sale or thing as the arithmetic wants it.
type coded struct {
	numbers []float64
	words   []int  // by label, then all of them together; 0 unknown, unmet for new ones
	row     []term // of the design
}

// term is one entry of a sparse design row.
type term struct {
	column int
	value  float64
}

// unmet is the code of a word that no sale has.
const unmet = -1

// centres finds the mean of each number over the sales that know it, and how far
// one that is not known may lie from there: as the sales do, with one Width among
// them, and the mean itself.
func (m *Market) centres() {
	m.centre, m.range2 = make([]float64, len(m.form.Attributes)), make([]float64, len(m.form.Attributes))
	for k, a := range m.form.Attributes {
		sum, n := 0.0, 0.0
		for i := range m.sales {
			if x := m.sales[i].Numbers[k]; !math.IsNaN(x) {
				sum += float64(m.sales[i].Weight * x)
				n += m.sales[i].Weight
			}
		}
		if n > 0 {
			m.centre[k] = sum / n
		}
		m.told = append(m.told, n > 0)
		squares := float64(a.Width * a.Width)
		for i := range m.sales {
			if d := m.sales[i].Numbers[k] - m.centre[k]; !math.IsNaN(d) {
				squares += float64(m.sales[i].Weight * float64(d*d))
			}
		}
		n = max(n, 1)
		m.range2[k] = float64(squares/n) * (1 + 1/n)
	}
}

// level is what the sales tell of one label: its words, numbered from 1, and the
// column of each, 0 for none.
type level struct {
	codes   map[string]int
	columns []int
}

func (l *level) code(word string) int {
	if word == "" {
		return 0
	}
	if c, ok := l.codes[word]; ok {
		return c
	}
	return unmet
}

// column is the column of a coded word, 0 for none: column 0 is the intercept.
func (l *level) column(code int) int {
	if code == unmet {
		return 0
	}
	return l.columns[code]
}

// words numbers the words and gives each a column, the frequent ones first; a
// word met once tells nothing of itself that its price does not.
func (m *Market) words() {
	kinds := len(m.form.Labels)
	if m.form.Together > 0 && kinds > 0 {
		kinds++
	}
	m.levels = make([]level, kinds)
	for k := range m.levels {
		type count struct {
			word  string
			times float64
		}
		l := level{codes: map[string]int{}, columns: []int{0}}
		var list []count
		for i := range m.sales {
			w := m.word(&m.sales[i], k)
			if w == "" {
				continue
			}
			if l.codes[w] == 0 {
				list = append(list, count{word: w})
				l.codes[w] = len(list)
				l.columns = append(l.columns, 0)
			}
			list[l.codes[w]-1].times += m.sales[i].Weight
		}
		for i := range list {
			list[i].times = math.Floor(float64(list[i].times*1e6)+0.5) / 1e6 // ten tenths are one
		}
		slices.SortFunc(list, func(a, b count) int {
			return cmp.Or(cmp.Compare(b.times, a.times), cmp.Compare(a.word, b.word))
		})
		for _, w := range list {
			if (w.times > 1 || k == len(m.form.Labels)) && m.columns < maxColumns {
				l.columns[l.codes[w.word]] = m.columns
				m.columns++
			}
		}
		m.levels[k] = l
	}
}

// word is the k-th label of a sale; past the last, all of them together.
func (m *Market) word(s *Sale, k int) string {
	if k < len(m.form.Labels) {
		return s.Labels[k]
	}
	return strings.Join(s.Labels, "\x00") + "\x00"
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
	for k, l := range m.levels {
		sd := m.labelSD(k)
		for _, column := range l.columns {
			if column > 0 {
				m.tight[column] = 1 / max(float64(sd*sd), 1e-12)
			}
		}
	}
}

// code brings a sale into the form of the design; a number that is not known
// stands at the centre.
func (m *Market) code(s *Sale) coded {
	c := coded{numbers: slices.Clone(s.Numbers), words: make([]int, len(m.levels)), row: make([]term, 1, 1+len(s.Numbers)+len(m.levels))}
	c.row[0] = term{0, 1}
	for k := range m.form.Attributes {
		if !m.told[k] {
			c.numbers[k] = math.NaN() // no sale tells it, so it adjusts nothing
		}
		if x := c.numbers[k]; !math.IsNaN(x) && x != m.centre[k] {
			c.row = append(c.row, term{1 + k, x - m.centre[k]})
		}
	}
	for k := range m.levels {
		c.words[k] = m.levels[k].code(m.word(s, k))
		if column := m.levels[k].column(c.words[k]); column > 0 {
			c.row = append(c.row, term{column, 1})
		}
	}
	return c
}

// twins finds the copies of one sale: those that count less than 1 and are the
// same in all. Each group goes by its first, and has their weight together.
func (m *Market) twins() {
	m.same, m.group = make([]int, len(m.sales)), make([]float64, len(m.sales))
	for i := range m.sales {
		m.same[i] = i
		for j := 0; m.sales[i].Weight < 1 && j < i; j++ {
			if m.same[j] == j && m.sales[j].Weight < 1 && m.alikeInAll(i, j) {
				m.same[i] = j
				break
			}
		}
		m.group[m.same[i]] += m.sales[i].Weight
	}
}

func (m *Market) alikeInAll(i, j int) bool {
	a, b := &m.sales[i], &m.sales[j]
	if a.Log != b.Log {
		return false
	}
	for k, x := range a.Numbers {
		if y := b.Numbers[k]; x != y && !(math.IsNaN(x) && math.IsNaN(y)) {
			return false
		}
	}
	return slices.Equal(a.Labels, b.Labels)
}
