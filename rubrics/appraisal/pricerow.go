package appraisal

import (
	"strings"

	"asfound/rubrics/say"
	"asfound/rubrics/table"
)

// priceReading is the state of one reading.
type priceReading struct {
	voice
	book         PriceBook
	parts        map[string]*Part
	at           map[string]int // column by its usual name
	table        *table.Table
	decimalComma bool
	dayFirst     bool
	seen         map[string]int // line by id
	problems     table.Problems
}

// columns finds the columns and how their amounts and dates are written.
func (p *priceReading) columns() error {
	for i, name := range p.table.Columns {
		if id, ok := priceNames[table.Fold(name)]; ok {
			if _, twice := p.at[id]; !twice {
				p.at[id] = i
			}
		}
	}
	var missing []string
	for _, id := range []string{"id", "low", "likely", "high"} {
		if _, ok := p.at[id]; !ok {
			missing = append(missing, id)
		}
	}
	if len(missing) > 0 {
		return refuseLine(p.table.Head, "it names id, low, likely and high; title, unit, currency and dated may stand too", "no column is called %s", strings.Join(missing, " or "))
	}
	comma, point := 0, 0
	for _, id := range []string{"low", "likely", "high"} {
		c, d := table.Marks(p.table.Column(p.table.Columns[p.at[id]]))
		comma, point = comma+c, point+d
	}
	p.decimalComma = comma > point || comma == point && p.table.DecimalComma
	if i, ok := p.at["dated"]; ok {
		order := table.OrderOf(p.table.Column(p.table.Columns[i]))
		p.dayFirst = order.Day > order.Month || order.Day == order.Month && p.decimalComma
	}
	return nil
}

// cell is a cell of a row by its column's usual name, "" where there is none.
func (p *priceReading) cell(i int, id string) string {
	at, ok := p.at[id]
	if !ok {
		return ""
	}
	return strings.TrimSpace(table.Bare(p.table.Rows[i][at]))
}

// say notes a problem with a cell of a row.
func (p *priceReading) say(i int, id, format string, args ...any) {
	p.problems.Add(p.table.Lines[i], p.table.Columns[p.at[id]], say.Fill(format, args...))
}

// row reads one line; empty means that it gives no price at all.
func (p *priceReading) row(i int) (row PriceRow, empty, ok bool) {
	id := p.cell(i, "id")
	if p.cell(i, "low")+p.cell(i, "likely")+p.cell(i, "high") == "" {
		return row, true, false
	}
	part, known := p.parts[id]
	now, own := p.book.Own[id]
	switch {
	case id == "":
		p.say(i, "id", "it is empty: write the id of the part as the saved price book has it")
		return row, false, false
	case !known && !own:
		p.say(i, "id", "no part is called %.60q: write the id as the saved price book has it", id)
		return row, false, false
	case p.seen[id] > 0:
		p.say(i, "id", "%.60q stands twice: line %d is taken, this one is not", id, p.seen[id])
		return row, false, false
	}
	row = PriceRow{Line: p.table.Lines[i], ID: id, Now: now, Own: own}
	if known {
		row.Title, row.Unit = part.Title, part.Unit
		if !own {
			row.Now = part.Price
		}
	}
	if !p.unitFits(i, &row) || !p.currencyFits(i) {
		return row, false, false
	}
	if row.Price, ok = p.amounts(i); !ok {
		return row, false, false
	}
	p.seen[id] = row.Line
	row.Changes = row.Price != row.Now
	if row.Changes {
		row.Note = p.note(i, &row)
	}
	return row, false, true
}

// unitFits refuses a price for another unit than the part is counted in.
func (p *priceReading) unitFits(i int, row *PriceRow) bool {
	unit := p.cell(i, "unit")
	if unit == "" || row.Unit == "" || table.Fold(unit) == table.Fold(row.Unit) {
		return true
	}
	p.say(i, "unit", "the price is for one %.20q, the part is counted by %q: convert the price", unit, row.Unit)
	return false
}

func (p *priceReading) currencyFits(i int) bool {
	cell := p.cell(i, "currency")
	if cell == "" || strings.EqualFold(cell, p.book.Currency) {
		return true
	}
	if c := table.Currency(cell); c != "" && table.Alike(c, p.book.Currency) {
		return true
	}
	p.say(i, "currency", "it is in %.20q, and this shop counts in %s: convert the prices of the line", cell, p.book.Currency)
	return false
}

// amounts reads low, likely and high, and says of each what is wrong with it.
func (p *priceReading) amounts(i int) (Range, bool) {
	var got [3]Money
	ok := true
	for k, id := range []string{"low", "likely", "high"} {
		m, err := moneyCell(p.cell(i, id), p.decimalComma, p.book.Currency, true)
		if err != nil {
			p.say(i, id, "%s", err)
			ok = false
		}
		got[k] = m
	}
	if !ok {
		return Range{}, false
	}
	r := Range{got[0], got[1], got[2]}
	if r.Low > r.Likely || r.Likely > r.High {
		p.say(i, "low", "%s, %s, %s do not rise: low, likely and high in rising order", exactly(r.Low), exactly(r.Likely), exactly(r.High))
		return Range{}, false
	}
	return r, true
}

// note tells of a price that is older than the example it would replace.
func (p *priceReading) note(i int, row *PriceRow) string {
	cell := p.cell(i, "dated")
	if cell == "" {
		return ""
	}
	date, err := table.Date(cell, p.dayFirst)
	switch {
	case err != nil:
		return p.Error(err)
	case !row.Own && p.book.Dated != "" && date < p.book.Dated:
		return p.F("It is dated %s, older than the example price of %s that it replaces.", date, p.book.Dated)
	}
	return ""
}
