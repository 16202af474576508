package appraisal

import (
	"slices"
	"sort"

	"asfound/rubrics/say"
	"asfound/rubrics/table"
)

// priceColumns are the columns of a price book as a table, in the order they are
// written.
var priceColumns = []string{"id", "title", "unit", "low", "likely", "high", "currency", "dated"}

// priceNames are other names of these columns, as table.Fold writes them.
var priceNames = spellings([]synonyms{
	{"id", "id|part|part id|nr|number|item"}, {"title", "title|name|description|text"}, {"unit", "unit|per|uom"},
	{"low", "low|lowest|at least|minimum|min"}, {"likely", "likely|most likely|price|usual|typical"}, {"high", "high|highest|at most|maximum|max"},
	{"currency", "currency|curr"}, {"dated", "dated|date|as of"},
})

// PriceImport is what a table of prices gives: lines that can be used, and what is
// wrong with the others. A line with a problem is not among Rows.
type PriceImport struct {
	Rows     []PriceRow      `json:"rows"`
	Problems []ImportProblem `json:"problems"` // in the order of the lines
	Total    int             `json:"total"`    // lines below the names of the columns
	Empty    int             `json:"empty"`    // lines without any price: they change nothing
	// DecimalComma tells how amounts were read, Separator what parts the cells.
	DecimalComma bool   `json:"decimal_comma"`
	Separator    string `json:"separator"`
}

// PriceRow is one price that was read, beside the one that stands.
type PriceRow struct {
	Line  int    `json:"line"`
	ID    string `json:"id"`
	Title string `json:"title"`
	Unit  string `json:"unit"`
	Price Range  `json:"price"`
	// Now is the price that stands: the own one, or the example where Own is false.
	Now Range `json:"now"`
	Own bool  `json:"own"`
	// Changes tells that Price is another than Now.
	Changes bool `json:"changes"`
	// Note is what to look at before it is applied.
	Note string `json:"note,omitempty"`
}

// PriceBook is the prices of one shop: its own ones by part, its own entries beside
// those of the program, and the day of the example prices.
type PriceBook struct {
	Own      map[string]Range
	Parts    []Part
	Currency string
	Dated    string
}

// ReadPrices reads a price book from a table saved from a spreadsheet (see package
// table) and holds it beside the one that stands. The error, of a file that is no
// such table, is *Error.
func (jd *Judge) ReadPrices(src []byte, book PriceBook) (*PriceImport, error) {
	if err := book.check(); err != nil {
		return nil, err
	}
	t, err := table.Read(src)
	if err != nil {
		return nil, tableError(err)
	}
	p := &priceReading{voice: jd.voice, book: book, parts: map[string]*Part{}, at: map[string]int{}, table: t, seen: map[string]int{}}
	all := append(slices.Clip(jd.parts), book.Parts...)
	for i := range all {
		p.parts[all[i].ID] = &all[i]
	}
	if err := p.columns(); err != nil {
		return nil, err
	}
	for _, problem := range t.Problems {
		p.problems.Add(problem.Line, problem.Column, problem.Said())
	}
	out := &PriceImport{Rows: []PriceRow{}, Problems: []ImportProblem{}, Total: len(t.Rows) + t.LeftOut, DecimalComma: p.decimalComma, Separator: t.SeparatorWord()}
	for i := range t.Rows {
		row, empty, ok := p.row(i)
		switch {
		case empty:
			out.Empty++
		case ok:
			out.Rows = append(out.Rows, row)
		}
	}
	for _, problem := range p.problems.List() {
		out.Problems = append(out.Problems, p.problem(problem))
	}
	sort.SliceStable(out.Problems, func(a, b int) bool { return out.Problems[a].Line < out.Problems[b].Line })
	return out, nil
}

func (b *PriceBook) check() error {
	if !slices.Contains(Currencies, b.Currency) {
		return refuse("currency", say.Later("one of %v", Currencies), "%.40q is no currency kept here", b.Currency)
	}
	for _, id := range sortedKeys(b.Own) {
		if err := checkRange(step("own", id), b.Own[id]); err != nil {
			return err
		}
	}
	return checkParts(b.Parts)
}
