package table

import (
	"strconv"
	"strings"

	"asfound/rubrics/say"
)

// maxName is how many characters of a column's name are kept.
const maxName = 80

// unnamed tells a row of values from one of names.
func unnamed(cells []string) bool {
	for _, c := range cells {
		if strings.TrimSpace(c) == "" {
			continue
		}
		if _, why := takeApart(c); why == fine {
			continue
		}
		if _, err := Date(c, false); err == nil {
			continue
		}
		return false
	}
	return true
}

// name gives every column a name of its own. It returns which had one.
func (t *Table) name(head record, problems *Problems) []bool {
	taken := map[string]bool{}
	named := make([]bool, len(head.cells))
	for i, cell := range head.cells {
		name := squeeze(cell)
		if r := []rune(name); len(r) > maxName {
			name = string(r[:maxName]) + "..."
		}
		named[i] = name != ""
		if !named[i] {
			name = "column " + strconv.Itoa(i+1)
		}
		unique := name
		for n := 2; taken[unique]; n++ {
			unique = name + " (" + strconv.Itoa(n) + ")"
		}
		taken[unique] = true
		t.Columns = append(t.Columns, unique)
		if unique != name {
			problems.Add(head.line, unique, say.Later("the name %s stands more than once: this column is numbered", quote(name)))
		}
	}
	for _, i := range head.odd {
		problems.Add(head.line, t.Columns[i], "a quotation mark closes in the middle of the cell: write one that belongs to the text twice")
	}
	return named
}

// trim drops unnamed columns at the end that hold nothing, as spreadsheets add
// them, and notes the unnamed ones that hold something.
func (t *Table) trim(named []bool, problems *Problems) {
	full := make([]bool, len(t.Columns))
	for _, row := range t.Rows {
		for i, cell := range row {
			full[i] = full[i] || strings.TrimSpace(cell) != ""
		}
	}
	for i := range t.Columns {
		if !named[i] && full[i] {
			problems.Add(t.Head, t.Columns[i], say.Later("the column has cells but no name: it is called %s", t.Columns[i]))
		}
	}
	width := len(t.Columns)
	for width > 0 && !named[width-1] && !full[width-1] {
		width--
	}
	t.Columns = t.Columns[:width]
	for i, row := range t.Rows {
		t.Rows[i] = row[:width:width]
	}
}
