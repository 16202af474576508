package backtest

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"

	"asfound/rubrics/table"
)

// row is one usable sale.
type row struct {
	number  int // from 1, of the rows of the table
	price   float64
	numbers []float64 // by column; NaN unknown or no number
	words   []string  // by column; "" unknown or no label
}

// maxNumber bounds numbers so that their squares stay in range.
const maxNumber = 1e12

// read takes the usable rows, and notes what could not be used, by line.
func read(t *table.Table, r *Report) ([]row, error) {
	var problems table.Problems
	for _, p := range t.Problems {
		problems.Add(p.Line, p.Column, p.Said())
	}
	price := 0
	for r.Columns[price].Role != Price {
		price++
	}
	r.Currency = currency(t, price)
	var rows []row
	for i, cells := range t.Rows {
		amount, err := priceOf(cells[r.Columns[price].place], t.DecimalComma, r.Currency)
		if err != nil {
			problems.Add(t.Lines[i], r.Columns[price].Name, err.Error()+"; the row is left out")
			continue
		}
		one := row{number: i + 1, price: amount, numbers: make([]float64, len(r.Columns)), words: make([]string, len(r.Columns))}
		for k := range r.Columns {
			c := &r.Columns[k]
			one.numbers[k] = math.NaN()
			switch c.Role {
			case Number, Log:
				x, err := c.number(cells[c.place], t.DecimalComma)
				if err != nil {
					problems.Add(t.Lines[i], c.Name, err.Error()+"; it is taken as not known")
				}
				one.numbers[k] = x
				if math.IsNaN(x) {
					c.Unknown++
				}
			case Label:
				if one.words[k] = word(cells[c.place]); one.words[k] == "" {
					c.Unknown++
				}
			}
		}
		rows = append(rows, one)
	}
	r.Usable, r.Problems = len(rows), problems.List()
	switch bad := len(t.Rows) - len(rows); {
	case 2*bad > len(t.Rows):
		return nil, fmt.Errorf("%d of %d rows have no usable price in %q, beginning with %s: check which column is the price", bad, len(t.Rows), r.Columns[price].Name, firstOf(r.Problems, r.Columns[price].Name))
	case len(rows) < leastRows:
		return nil, fmt.Errorf("%d rows have a usable price: a backtest needs %d or more", len(rows), leastRows)
	}
	return rows, nil
}

func firstOf(problems []table.Problem, column string) string {
	for _, p := range problems {
		if p.Column == column {
			return p.String()
		}
	}
	return "the first"
}

// currency is the one that most prices stand in, "" where none says.
func currency(t *table.Table, place int) string {
	counts := map[string]int{}
	for _, cells := range t.Rows {
		if _, code, err := table.Amount(cells[place], t.DecimalComma); err == nil && code != "" {
			counts[code]++
		}
	}
	best := table.Currency(t.Columns[place])
	for _, code := range slices.Sorted(maps.Keys(counts)) {
		if counts[code] > counts[best] {
			best = code
		}
	}
	return best
}

func priceOf(cell string, decimalComma bool, main string) (float64, error) {
	x, code, err := table.Amount(cell, decimalComma)
	switch {
	case err != nil:
		return 0, err
	case x == 0:
		return 0, errors.New("a price of 0 says nothing: write what it brought")
	case x < 0:
		return 0, fmt.Errorf("a price cannot be %s: write what it brought", plain(x))
	case x < minPrice || x > MaxPrice:
		return 0, fmt.Errorf("a price of %s cannot be: one lies between 0.01 and 1000000000000", plain(x))
	case !table.Alike(code, main):
		return 0, fmt.Errorf("it is in %s, the others in %s: one table has one currency", code, main)
	}
	return x, nil
}

func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// number reads a cell of a number or log column; an empty one is NaN.
func (c *Column) number(cell string, decimalComma bool) (float64, error) {
	if word(cell) == "" {
		return math.NaN(), nil
	}
	if c.date {
		return years(cell, c.dayFirst)
	}
	x, err := table.Number(cell, decimalComma)
	switch {
	case err != nil:
		return math.NaN(), err
	case math.Abs(x) > maxNumber:
		return math.NaN(), fmt.Errorf("%s is too large: at most 1000000000000", plain(x))
	case c.Role == Log && x <= 0:
		return math.NaN(), fmt.Errorf("%s has no logarithm: it must be above 0", plain(x))
	case c.Role == Log:
		return math.Log(x), nil
	}
	return x, nil
}

// years is a date as a year with its part, to the day.
func years(cell string, dayFirst bool) (float64, error) {
	date, err := table.Date(cell, dayFirst)
	if err != nil {
		return math.NaN(), err
	}
	year, month, day := digits(date[:4]), digits(date[5:7]), digits(date[8:])
	return year + (month-1)/12 + (day-1)/365, nil
}

func digits(s string) float64 {
	n, err := strconv.Atoi(s)
	if err != nil {
		panic(err) // table.Date gives nothing else
	}
	return float64(n)
}
