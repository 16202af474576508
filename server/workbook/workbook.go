// Package workbook writes tables as one XLSX workbook, a sheet each. It knows cells and how they are shown, and
// nothing of what the tables mean.
package workbook

import (
	"errors"
	"fmt"
	"math"
	"time"
	"unicode/utf16"

	"github.com/xuri/excelize/v2"
)

// Bounds of a workbook.
const (
	MaxTables  = 20
	MaxColumns = 60
	MaxRows    = 20_000 // of all tables
	maxCell    = 32_767 // UTF-16 units, the format's own (ECMA-376, part 1, 18.3.1.4; from memory)
)

// ErrTable is what every error about a table is; each names table, row and column.
var ErrTable = errors.New("no workbook was made")

// Table is one sheet.
type Table struct {
	Name  string `json:"name"`
	Title string `json:"title"`
	// Columns have a kind: text, number, money, date.
	Columns []Column `json:"columns"`
	// Rows have one cell a column: a text, a number, a day as YYYY-MM-DD, or null.
	Rows [][]any `json:"rows"`
}

// Column of a table.
type Column struct {
	Title string `json:"title"`
	Kind  string `json:"kind"`
}

func wrong(pattern string, args ...any) error {
	return fmt.Errorf("%w: %s", ErrTable, fmt.Sprintf(pattern, args...))
}

// Make gives the workbook. Texts stay texts, whatever they begin with. Errors are ErrTable.
func Make(tables []Table) (book []byte, err error) {
	if err := bounds(tables); err != nil {
		return nil, err
	}
	f := excelize.NewFile()
	defer func() { err = errors.Join(err, f.Close()) }()
	if err := f.SetDocProps(&excelize.DocProperties{Creator: "Asfound"}); err != nil {
		return nil, err
	}
	styles, err := stylesOf(f)
	if err != nil {
		return nil, err
	}
	for i, name := range sheetNames(tables) {
		if i == 0 {
			err = f.SetSheetName(f.GetSheetName(0), name)
		} else {
			_, err = f.NewSheet(name)
		}
		if err == nil {
			err = fill(f, name, &tables[i], styles)
		}
		if err != nil {
			return nil, err
		}
	}
	out, err := f.WriteToBuffer()
	if err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

func bounds(tables []Table) error {
	if len(tables) < 1 || len(tables) > MaxTables {
		return wrong("%d tables: 1 to %d are expected", len(tables), MaxTables)
	}
	rows := 0
	for i, t := range tables {
		if len(t.Columns) < 1 || len(t.Columns) > MaxColumns {
			return wrong("table %d has %d columns: 1 to %d are expected", i+1, len(t.Columns), MaxColumns)
		}
		for j, c := range t.Columns {
			switch c.Kind {
			case "text", "number", "money", "date":
			default:
				return wrong("table %d, column %d: kind %q: text, number, money or date is expected", i+1, j+1, c.Kind)
			}
		}
		if rows += len(t.Rows); rows > MaxRows {
			return wrong("more than %d rows", MaxRows)
		}
		for j, r := range t.Rows {
			if len(r) != len(t.Columns) {
				return wrong("table %d, row %d has %d cells: one for each of the %d columns is expected", i+1, j+1, len(r), len(t.Columns))
			}
			for k, v := range r {
				if _, err := cellOf(v, t.Columns[k].Kind); err != nil {
					return wrong("table %d, row %d, column %d: %s", i+1, j+1, k+1, err)
				}
			}
		}
		if units(t.Title) > maxCell {
			return wrong("table %d: its title is too long", i+1)
		}
	}
	return nil
}

// cellOf is the value as it is written: a string, a float64, a day, or nil.
func cellOf(v any, kind string) (any, error) {
	switch v := v.(type) {
	case nil:
		return nil, nil
	case string:
		if n := units(v); n > maxCell {
			return nil, fmt.Errorf("the text has %d characters: at most %d", n, maxCell)
		}
		if kind != "date" || v == "" {
			return v, nil
		}
		day, err := time.Parse("2006-01-02", v)
		if err != nil || day.Year() < 1901 {
			return nil, fmt.Errorf("%.40q is no day: YYYY-MM-DD from 1901 on is expected", v)
		}
		return day, nil
	case float64:
		if kind == "date" || math.IsNaN(v) || math.IsInf(v, 0) {
			return nil, fmt.Errorf("%v is no %s", v, kind)
		}
		return v, nil
	}
	return nil, fmt.Errorf("a text, a number or null is expected")
}

func units(s string) int { return len(utf16.Encode([]rune(s))) }
