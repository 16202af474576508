package table

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"asfound/rubrics/say"
)

// Bounds of a table, far above what a shop's own list comes to.
const (
	MaxBytes   = 8 << 20
	MaxRows    = 100_000
	MaxColumns = 200
	MaxCells   = 4_000_000
	MaxCell    = 2000 // characters
	// maxProblems bounds what is listed; the last one says how many more there are.
	maxProblems = 1000
)

// Table is a table as text. Each row has as many cells as there are columns.
type Table struct {
	Columns   []string // names as written, made unique
	Head      int      // the line that names them, from 1
	Separator rune     // comma, semicolon, tab, vertical bar; 0 for one column
	// DecimalComma tells how numbers like 1,234 are to be read, and Decided
	// whether the numbers show it; else the separator was taken as a hint.
	DecimalComma bool
	Decided      bool
	Rows         [][]string
	Lines        []int // where each row begins, from 1
	LeftOut      int   // rows that could not be split into the columns, each a Problem
	Problems     []Problem
}

// Problem is something in a table that was not read as it may have been meant.
type Problem struct {
	Line   int
	Column string // empty where the whole row is meant
	Text   string // in English; In says it in another language

	text say.Text
}

// In says the problem without its place.
func (p Problem) In(v *say.Voice) string { return p.text.In(v) }

// Said gives what Text says, to be said.
func (p Problem) Said() say.Text { return p.text }

func (p Problem) String() string {
	s := "line " + strconv.Itoa(p.Line)
	if p.Column != "" {
		s += ", " + p.Column
	}
	return s + ": " + p.Text
}

// Read reads a table of at most MaxBytes. The first line that is not blank names
// the columns. Rows that do not fit them become Problems; errors are *Error.
func Read(src []byte) (*Table, error) {
	s, err := text(src)
	if err != nil {
		return nil, err
	}
	sep, begin, err := separator(s)
	if err != nil {
		return nil, err
	}
	r := records{text: s, separator: sep, at: begin, line: 1}
	head, ok, err := r.next()
	if err != nil {
		return nil, err
	}
	if !ok {
		return nil, refuse(1, "there is no table below this line", "a line that names the columns, then a line a row")
	}
	if unnamed(head.cells) {
		return nil, refuse(head.line, "it holds numbers and dates alone", "the first line must name the columns")
	}
	t := &Table{Separator: rune(sep), Head: head.line}
	var problems Problems
	named := t.name(head, &problems)
	for {
		rec, ok, err := r.next()
		if err != nil {
			return nil, err
		}
		if !ok {
			break
		}
		if len(t.Rows)+t.LeftOut == MaxRows {
			return nil, refuse(rec.line, "there are more than 100,000 rows", "at most 100,000")
		}
		if (len(t.Rows)+1)*len(t.Columns) > MaxCells {
			return nil, refuse(rec.line, "there are more than 4,000,000 cells", "fewer rows or columns")
		}
		t.take(rec, &problems)
	}
	t.trim(named, &problems)
	t.decide(&problems)
	t.Problems = problems.List()
	return t, nil
}

// take adds a record to the rows, or says why not.
func (t *Table) take(rec record, problems *Problems) {
	width := len(t.Columns)
	for _, i := range rec.odd {
		problems.Add(rec.line, t.column(i), "a quotation mark closes in the middle of the cell: write one that belongs to the text twice")
	}
	if rec.torn {
		t.LeftOut++
		problems.Add(rec.line, "", "rows have run together after a quotation mark, and are left out")
		return
	}
	if n := len(rec.cells); n > width && !blank(rec.cells[width:]) {
		t.LeftOut++
		problems.Add(rec.line, "", say.Later("%d cells where the first line names %d: the row is left out; a text with the separator in it belongs in quotation marks", n, width))
		return
	} else if n < width {
		problems.Add(rec.line, "", say.Later("%d cells where the first line names %d: the missing ones are taken as empty", n, width))
	}
	row := rec.cells
	for len(row) < width {
		row = append(row, "")
	}
	row = row[:width:width]
	for i, cell := range row {
		if len(cell) <= MaxCell {
			continue
		}
		if n := utf8.RuneCountInString(cell); n > MaxCell {
			row[i] = string([]rune(cell)[:MaxCell])
			problems.Add(rec.line, t.Columns[i], say.Later("%d characters, at most 2,000: the rest is cut off", n))
		}
	}
	t.Rows = append(t.Rows, row)
	t.Lines = append(t.Lines, rec.line)
}

// column is the name of the i-th column, also beyond the last.
func (t *Table) column(i int) string {
	if i < len(t.Columns) {
		return t.Columns[i]
	}
	return "column " + strconv.Itoa(i+1)
}

// Column gives all cells of a column, nil where there is none of that name.
func (t *Table) Column(name string) []string {
	for i, c := range t.Columns {
		if c == name {
			out := make([]string, len(t.Rows))
			for k, row := range t.Rows {
				out[k] = row[i]
			}
			return out
		}
	}
	return nil
}

// SeparatorWord is what people call the separator.
func (t *Table) SeparatorWord() string {
	switch t.Separator {
	case '\t':
		return "tab"
	case ';':
		return "semicolon"
	case '|':
		return "vertical bar"
	case ',':
		return "comma"
	}
	return "none"
}

// Problems gathers problems in the order they are met, and counts those beyond
// the bound of the list.
type Problems struct {
	list []Problem
	more int
	line int // of the first beyond
}

// Add notes a problem. Its text is a string, a say.Text or an error.
func (p *Problems) Add(line int, column string, text any) {
	if len(p.list) < maxProblems {
		p.list = append(p.list, newProblem(line, column, say.Of(text)))
		return
	}
	if p.more == 0 {
		p.line = line
	}
	p.more++
}

// List gives what was noted, and how much more there is.
func (p *Problems) List() []Problem {
	if p.more == 0 {
		return p.list
	}
	return append(p.list[:len(p.list):len(p.list)], newProblem(p.line, "", say.Later("from here on there are %d more", p.more)))
}

func newProblem(line int, column string, text say.Text) Problem {
	return Problem{Line: line, Column: column, Text: text.String(), text: text}
}

// squeeze makes one line of a text, with single blanks.
func squeeze(s string) string { return strings.Join(strings.Fields(s), " ") }
