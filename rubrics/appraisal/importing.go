package appraisal

import (
	"errors"
	"slices"
	"sort"
	"strings"

	"asfound/rubrics/say"
	"asfound/rubrics/table"
)

// ImportChoice is what a person says about a table; what is left out is found
// from the table itself.
type ImportChoice struct {
	// Columns is the name of the column by field id; "" leaves the field out.
	Columns map[string]string `json:"columns,omitempty"`
	// Basis, asked or sold, of rows for which no column says.
	Basis string `json:"basis,omitempty"`
	// Unit of capacities written as plain numbers.
	Unit         string `json:"unit,omitempty"`
	DecimalComma *bool  `json:"decimal_comma,omitempty"`
	DayFirst     *bool  `json:"day_first,omitempty"`
}

// Import is what a table gives: comparables, and how it was read.
type Import struct {
	Columns []ImportColumn `json:"columns"`
	Fields  []Choice       `json:"fields"`
	Rows    []Comparable   `json:"rows"`
	Lines   []int          `json:"lines"` // of each of the rows in the file, from 1
	// Problems in the order of the lines. A row with one in its price, or that
	// does not fit the columns, is not among Rows.
	Problems     []ImportProblem `json:"problems"`
	Total        int             `json:"total"` // rows of the file
	Read         int             `json:"read"`  // rows that were read
	DecimalComma bool            `json:"decimal_comma"`
	DayFirst     bool            `json:"day_first"`
	Separator    string          `json:"separator"` // its word
	Basis        string          `json:"basis"`     // of rows for which no column says
	Unit         string          `json:"unit"`      // of capacities written as plain numbers
	// Currency that the prices or their column name: an ISO 4217 code, "$", "kr" or
	// the yen sign for one of several, "" for none. It is not held against the shop's.
	Currency string `json:"currency"`
}

// ImportColumn is one column: its name, some of its cells, the field it is read as.
type ImportColumn struct {
	Name   string   `json:"name"`
	Sample []string `json:"sample"`
	Field  string   `json:"field"` // "" for none
}

// ImportProblem is something that was not read as it may have been meant.
type ImportProblem struct {
	Line   int    `json:"line"`
	Column string `json:"column"` // "" for the whole row
	Text   string `json:"text"`
}

func (p ImportProblem) String() string {
	return table.Problem{Line: p.Line, Column: p.Column, Text: p.Text}.String()
}

func (v voice) problem(p table.Problem) ImportProblem {
	return ImportProblem{Line: p.Line, Column: p.Column, Text: p.In(v.Voice)}
}

// ImportComparables reads comparables from a table saved from a spreadsheet
// (see package table). Rows get their ids from their own cells, so that the same
// file gives the same ids again. Errors are *Error: a file that is no table, or a
// choice that does not fit it.
func ImportComparables(r *Rubric, src []byte, choice ImportChoice) (*Import, error) {
	return importComparables(voice{}, r, src, choice)
}

// ImportComparables reads them and says in the judge's language what was wrong.
func (jd *Judge) ImportComparables(r *Rubric, src []byte, choice ImportChoice) (*Import, error) {
	return importComparables(jd.voice, r, src, choice)
}

func importComparables(v voice, r *Rubric, src []byte, choice ImportChoice) (*Import, error) {
	t, err := table.Read(src)
	if err != nil {
		return nil, tableError(err)
	}
	if choice.Basis != "" && choice.Basis != "asked" && choice.Basis != "sold" {
		return nil, refuse("basis", "asked or sold", "%.40q is not known", choice.Basis)
	}
	at, err := columnsOf(r, t, choice.Columns)
	if err != nil {
		return nil, err
	}
	m := &importing{voice: v, rubric: r, table: t, at: at, sizes: map[string]string{}}
	for _, p := range t.Problems {
		m.problems.Add(p.Line, p.Column, p.Said())
	}
	if err := m.settle(choice); err != nil {
		return nil, err
	}
	out := m.preview()
	m.rows(out)
	for _, p := range m.problems.List() {
		out.Problems = append(out.Problems, v.problem(p))
	}
	sort.SliceStable(out.Problems, func(a, b int) bool { return out.Problems[a].Line < out.Problems[b].Line })
	return out, nil
}

func tableError(err error) *Error {
	var e *table.Error
	if !errors.As(err, &e) {
		return refuse("", say.Plain(""), "%s", err)
	}
	what, right := e.Said()
	if e.Line > 0 {
		return refuseLine(e.Line, right, "%s", what)
	}
	return refuse("", right, "%s", what)
}

// importing is the state of one import.
type importing struct {
	voice
	rubric       *Rubric
	table        *table.Table
	at           map[string]int // field to column
	problems     table.Problems
	decimalComma bool
	sure         bool // the decimal mark was said or shows
	dayFirst     bool
	basis        string // where a row does not say
	basisSaid    bool   // by choice, or by the name of the prices' column
	soldColumn   bool   // the column of the basis asks whether it was sold
	currency     string
	unit         string            // of plain capacities
	sizes        map[string]string // what sizeUnit found
	distanceUnit string            // of plain distances, "" where nothing says
	unspoken     tally             // rows whose basis nothing says
	unitless     tally             // distances without unit
}

// tally counts cells of one kind and keeps the line of the first.
type tally struct{ n, line int }

func (c *tally) add(line int) {
	if c.n++; c.n == 1 {
		c.line = line
	}
}

// column gives the cells of a field's column and the column's name.
func (m *importing) column(field string) (cells []string, name string) {
	i, ok := m.at[field]
	if !ok {
		return nil, ""
	}
	name = m.table.Columns[i]
	return m.table.Column(name), name
}

// settle decides, before any row is read, what holds for the whole table.
func (m *importing) settle(choice ImportChoice) error {
	comma, point := 0, 0
	for _, field := range []string{"price", "hours", "capacity", "distance"} {
		cells, _ := m.column(field)
		c, p := table.Marks(cells)
		comma, point = comma+c, point+p
	}
	switch {
	case choice.DecimalComma != nil:
		m.decimalComma, m.sure = *choice.DecimalComma, true
	case comma != point:
		m.decimalComma, m.sure = comma > point, true
	default:
		m.decimalComma, m.sure = m.table.DecimalComma, m.table.Decided
	}
	m.settleDates(choice)
	prices, name := m.column("price")
	m.currency = currencyOf(prices, name)
	m.basis, m.basisSaid = choice.Basis, choice.Basis != ""
	if !m.basisSaid {
		m.basis, m.basisSaid = basisOf(name)
	}
	_, basisName := m.column("basis")
	m.soldColumn = slices.ContainsFunc(strings.Fields(table.Fold(basisName)), func(w string) bool { return basisSynonyms[w] == "sold" })
	_, distanceName := m.column("distance")
	m.distanceUnit = unitIn(distanceName, wayUnit)
	_, capacityName := m.column("capacity")
	m.unit = unitIn(capacityName, m.sizeUnit)
	if m.unit == "" {
		m.unit = m.rubric.Capacity.Unit
	}
	if choice.Unit != "" {
		if m.unit = m.sizeUnit(choice.Unit); m.unit == "" {
			return refuse("unit", say.Plain(m.units()), "%.40q does not convert to %s", choice.Unit, m.rubric.Capacity.Unit)
		}
	}
	return nil
}

func (m *importing) settleDates(choice ImportChoice) {
	cells, name := m.column("date")
	order := table.OrderOf(cells)
	m.dayFirst = order.Day > order.Month || order.Day == order.Month && m.decimalComma
	if choice.DayFirst != nil {
		m.dayFirst = *choice.DayFirst
		return
	}
	if len(order.Open) == 0 || (order.Day > 0) != (order.Month > 0) {
		return
	}
	first := cells[order.Open[0]]
	date, err := table.Date(first, m.dayFirst)
	if err != nil {
		return
	}
	m.problems.Add(m.table.Lines[order.Open[0]], name, readAs(first, len(order.Open)-1, order.Day > 0, m.dayFirst, date))
}

// readAs says how dates that can be read in two ways were taken: the first of them,
// how many more there are, and whether the column has dates in both orders.
func readAs(first string, more int, both, dayFirst bool, date string) say.Text {
	text := say.Later("%.40q can be read in two ways", first)
	switch {
	case more > 0 && both:
		text = say.Later("%.40q and %d more can be read in two ways, and the column has dates in both orders", first, more)
	case more > 0:
		text = say.Later("%.40q and %d more can be read in two ways", first, more)
	case both:
		text = say.Later("%.40q can be read in two ways, and the column has dates in both orders", first)
	}
	if dayFirst {
		return say.Later("%s: taken with the day first, here as %s", text, date)
	}
	return say.Later("%s: taken with the month first, here as %s", text, date)
}

// basisOf is what the name of a price column says of its basis; asked, the more
// careful reading, where it says nothing.
func basisOf(name string) (basis string, said bool) {
	for _, w := range strings.Fields(table.Fold(name)) {
		if b, ok := basisSynonyms[w]; ok {
			return b, true
		}
	}
	return "asked", false
}

// currencyOf is the currency that a column's name speaks of, else the one that
// most prices name: "$" beside "USD" counts for it, and USD is the answer.
func currencyOf(prices []string, name string) string {
	if c := table.Currency(name); c != "" {
		return c
	}
	var met []string
	counts := map[string]int{}
	for _, cell := range prices {
		if _, c, err := table.Amount(cell, false); err == nil && c != "" {
			if counts[c]++; counts[c] == 1 {
				met = append(met, c)
			}
		}
	}
	sum := func(of string) (n int) {
		for _, c := range met {
			if table.Alike(of, c) {
				n += counts[c]
			}
		}
		return n
	}
	best := ""
	for _, c := range met {
		if best == "" || sum(c) > sum(best) {
			best = c
		}
	}
	if len(best) == 3 { // a code; the signs of several currencies are shorter
		return best
	}
	exact := ""
	for _, c := range met {
		if len(c) == 3 && table.Alike(best, c) && (exact == "" || counts[c] > counts[exact]) {
			exact = c
		}
	}
	if exact == "" {
		return best
	}
	return exact
}

// preview shows the columns and what they are read as.
func (m *importing) preview() *Import {
	t := m.table
	out := &Import{
		Columns: []ImportColumn{}, Fields: slices.Clone(ImportFields), Rows: []Comparable{}, Lines: []int{}, Problems: []ImportProblem{},
		Total: len(t.Rows) + t.LeftOut, DecimalComma: m.decimalComma, DayFirst: m.dayFirst, Separator: t.SeparatorWord(),
		Basis: m.basis, Unit: m.unit, Currency: m.currency,
	}
	for i := range out.Fields {
		out.Fields[i].Title = m.Label(out.Fields[i].Title)
		if out.Fields[i].ID == "capacity" && m.rubric.Capacity.Title != "" {
			out.Fields[i].Title = m.rubric.Capacity.Title
		}
	}
	for i, name := range t.Columns {
		c := ImportColumn{Name: name, Sample: []string{}}
		for _, row := range t.Rows {
			if cell := oneLine(row[i], 80); cell != "" {
				if c.Sample = append(c.Sample, cell); len(c.Sample) == 3 {
					break
				}
			}
		}
		for _, f := range ImportFields {
			if k, ok := m.at[f.ID]; ok && k == i {
				c.Field = f.ID
			}
		}
		out.Columns = append(out.Columns, c)
	}
	return out
}
