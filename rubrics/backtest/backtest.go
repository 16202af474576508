// Package backtest measures how well prices are found: it holds rows of a table of
// sales back, values each by the others, and scores the result against what it
// brought. It knows tables and the valuation by sales, not where a table comes
// from, and does no I/O.
package backtest

import (
	"fmt"
	"math"

	"asfound/rubrics/sales"
	"asfound/rubrics/table"
)

// Bounds that keep a large table to minutes.
const (
	MaxTraining = 5000 // sales in a fold; an even sample of more
	MaxHeldOut  = 2000 // rows valued in a fold; an even sample of more
	MaxFolds    = 1000
	MaxPrice    = 1e12
	minPrice    = 0.01
	leastRows   = 5
)

// Ask is what is wanted of a backtest.
type Ask struct {
	Roles map[string]Role // of columns, by name; the others are taken by name and values
	// Row i, from 1, is held out if i mod Of = Fold.
	Fold, Of int
	// All runs every fold from 0 to Of-1.
	All        bool
	Neighbours int         // sales that a thing is valued by; 0 takes the default
	Stop       func() bool // asked between rows; true ends with ErrStopped
}

// ErrStopped is the end of a backtest that was stopped.
var ErrStopped = fmt.Errorf("stopped before the end: nothing is measured")

// Report is what a backtest found. Percentages are of 100, amounts in the currency
// of the table.
type Report struct {
	Scores          // of all folds together
	Rows     int    `json:"rows"`
	Usable   int    `json:"usable"`
	Currency string `json:"currency,omitempty"` // as it stands beside the prices
	// Of and Folds say which rows were held out.
	Of       int             `json:"of"`
	Folds    []Fold          `json:"folds"`
	Columns  []Column        `json:"columns"`
	Notes    []string        `json:"notes"`
	Problems []table.Problem `json:"-"`
}

// Fold is one set of rows held out.
type Fold struct {
	Fold     int `json:"fold"`
	Training int `json:"training"`
	Scores
}

// Run measures the valuation by sales on a table.
func Run(t *table.Table, ask Ask) (*Report, error) {
	if ask.Of < 2 || ask.Of > MaxFolds || ask.Fold < 0 || ask.Fold >= ask.Of {
		return nil, fmt.Errorf("rows %d of %d cannot be held out: give M/N with N from 2 to %d and M from 0 to N-1", ask.Fold, ask.Of, MaxFolds)
	}
	r := &Report{Rows: len(t.Rows), Of: ask.Of, Notes: []string{}}
	columns, err := roles(t, ask.Roles)
	if err != nil {
		return nil, err
	}
	r.Columns = columns
	rows, err := read(t, r)
	if err != nil {
		return nil, err
	}
	first, last := ask.Fold, ask.Fold
	if ask.All {
		first, last = 0, ask.Of-1
	}
	var all scorer
	for f := first; f <= last; f++ {
		train, held := split(rows, f, ask.Of)
		switch {
		case len(held) == 0 && ask.All:
			r.note("No usable row falls to fold %d.", f)
			continue
		case len(held) == 0:
			return nil, fmt.Errorf("no usable row is held out by %d/%d: there are %d", f, ask.Of, len(rows))
		case len(train) == 0:
			return nil, fmt.Errorf("every usable row is held out by %d/%d: none is left to value them by", f, ask.Of)
		}
		if len(train) > MaxTraining {
			r.note("Fold %d: an even sample of %d of %d sales was taken to value by.", f, MaxTraining, len(train))
			train = sample(train, MaxTraining)
		}
		if len(held) > MaxHeldOut {
			r.note("Fold %d: an even sample of %d of %d rows held out was valued.", f, MaxHeldOut, len(held))
			held = sample(held, MaxHeldOut)
		}
		one, err := value(columns, train, held, ask)
		if err != nil {
			return nil, err
		}
		all.results = append(all.results, one.results...)
		r.Folds = append(r.Folds, Fold{Fold: f, Training: len(train), Scores: one.scores()})
	}
	r.Scores = all.scores()
	return r, nil
}

func (r *Report) note(format string, args ...any) {
	r.Notes = append(r.Notes, fmt.Sprintf(format, args...))
}

func split(rows []row, fold, of int) (train, held []row) {
	for _, r := range rows {
		if r.number%of == fold {
			held = append(held, r)
		} else {
			train = append(train, r)
		}
	}
	return train, held
}

// sample takes n of the rows, evenly.
func sample(rows []row, n int) []row {
	out := make([]row, n)
	for i := range out {
		out[i] = rows[i*len(rows)/n]
	}
	return out
}

// Priors of a backtest, which knows nothing of what its columns mean (judgement).
const (
	rateSD   = 0.5 // log price over one standard deviation of a number
	width    = 2.0 // standard deviations of a number
	labelSD  = 0.2
	unlike   = 0.1
	together = 0.2
)

// form is the form of a market of these sales, and which columns it takes: a
// number that is the same for all of them says nothing.
func form(columns []Column, train []row, neighbours int) (f sales.Form, numbers, labels []int) {
	f = sales.Form{Together: together, Spread: sales.DefaultSpread, Count: sales.DefaultCount, Neighbours: neighbours}
	for k, c := range columns {
		switch c.Role {
		case Number, Log:
			if sd := deviation(train, k); sd > 0 {
				f.Attributes = append(f.Attributes, sales.Attribute{ID: c.Name, RateSD: rateSD / sd, Width: width * sd})
				numbers = append(numbers, k)
			}
		case Label:
			f.Labels = append(f.Labels, sales.Label{ID: c.Name, SD: labelSD, Unlike: unlike})
			labels = append(labels, k)
		}
	}
	return f, numbers, labels
}

// deviation is the standard deviation of a number, over the rows that know it.
func deviation(rows []row, k int) float64 {
	n, mean, squares := 0.0, 0.0, 0.0
	for _, r := range rows {
		if x := r.numbers[k]; !math.IsNaN(x) {
			n++
			d := x - mean
			mean += d / n
			squares += d * (x - mean)
		}
	}
	if n < 2 || squares <= 0 || math.Sqrt(squares/n) < 1e-9*math.Abs(mean) {
		return 0
	}
	return math.Sqrt(squares / n)
}

// value values each row held out by the training rows.
func value(columns []Column, train, held []row, ask Ask) (s scorer, err error) {
	f, numbers, labels := form(columns, train, ask.Neighbours)
	sale := func(r row) sales.Sale {
		s := sales.Sale{Log: math.Log(r.price), Weight: 1}
		for _, k := range numbers {
			s.Numbers = append(s.Numbers, r.numbers[k])
		}
		for _, k := range labels {
			s.Labels = append(s.Labels, r.words[k])
		}
		return s
	}
	market := make([]sales.Sale, len(train))
	prices := make([]float64, len(train))
	for i, r := range train {
		market[i], prices[i] = sale(r), r.price
	}
	m := sales.Fit(f, market)
	middle := median(prices)
	for _, r := range held {
		if ask.Stop != nil && ask.Stop() {
			return s, ErrStopped
		}
		thing := sale(r)
		p := m.Predict(&thing)
		one := result{price: r.price, found: amount(p.Mean), unadjusted: unadjusted(market, p.Rows), middle: middle}
		for i, q := range quantiles {
			one.quantiles[i] = amount(p.Quantile(q))
		}
		s.results = append(s.results, one)
	}
	return s, nil
}

// amount is a price from its logarithm. What runs off beyond any price stays a
// number.
func amount(log float64) float64 { return math.Exp(min(log, math.Log(1000*MaxPrice))) }

// unadjusted is the middle of the same neighbours' prices as they stand.
func unadjusted(market []sales.Sale, rows []sales.Row) float64 {
	logs, weights := make([]float64, len(rows)), make([]float64, len(rows))
	for i, r := range rows {
		logs[i], weights[i] = market[r.Sale].Log, r.Weight
	}
	return math.Exp(sales.WeightedMiddle(logs, weights))
}
