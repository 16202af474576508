// Package sheet lays appraisals out as tables for a spreadsheet: listings, findings,
// estimate lines, what to buy, comparables, prices, photos, the sides of a comparison
// and decisions. A cell is a text, a number or nothing; how the tables are written
// (CSV here, a workbook elsewhere) is not decided by who fills them. The package does
// no I/O and judges nothing itself.
package sheet

import (
	"strconv"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/table"
)

// Kind of what stands in a column.
type Kind string

const (
	Text   Kind = "text"
	Number Kind = "number"
	Amount Kind = "money" // in whole units of the currency, not in cents
	Day    Kind = "date"  // YYYY-MM-DD
)

// Table is one sheet.
type Table struct {
	// Name is plain letters, the same in every language: what a file is called.
	Name    string   `json:"name"`
	Title   string   `json:"title"`
	Columns []Column `json:"columns"`
	// Rows have one cell a column.
	Rows [][]Cell `json:"rows"`
}

// Column of a table.
type Column struct {
	Title string `json:"title"`
	Kind  Kind   `json:"kind"`
}

// Cell is a string, a float64 or nil.
type Cell any

// CSV writes a table as it opens in a spreadsheet: RFC 4180, UTF-8 with its mark
// before it, since spreadsheets take a file without one for another encoding. A text
// that a spreadsheet would run as a formula gets an apostrophe before it (OWASP, CSV
// Injection); numbers stay numbers.
func (t *Table) CSV() string {
	columns := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		columns[i] = c.Title
	}
	rows := make([][]string, len(t.Rows))
	for i, row := range t.Rows {
		rows[i] = make([]string, len(row))
		for j, c := range row {
			switch c := c.(type) {
			case string:
				rows[i][j] = c
			case float64:
				rows[i][j] = strconv.FormatFloat(c, 'f', -1, 64)
			}
		}
	}
	return "\ufeff" + table.Write(columns, rows)
}

func money(m appraisal.Money) Cell { return float64(m) / 100 }

func moneyOf(m *appraisal.Money) Cell {
	if m == nil {
		return nil
	}
	return money(*m)
}

// known is a number where 0 says that it is not known.
func known(x float64) Cell {
	if x == 0 {
		return nil
	}
	return x
}

func size(q *appraisal.Quantity) (n, unit Cell) {
	if q == nil {
		return nil, nil
	}
	return q.N, q.Unit
}

// words is a text, or nothing where it is empty.
func words(s string) Cell {
	if s == "" {
		return nil
	}
	return s
}
