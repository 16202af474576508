package appraisal

import (
	"fmt"
	"slices"

	"asfound/rubrics/table"
)

// WritePrices writes the price book as CSV: own prices with the day they are
// written on, and where there is none the example with its own day. Own prices of
// parts that no rubric names any more come last.
func (jd *Judge) WritePrices(book PriceBook, today string) (string, error) {
	if err := book.check(); err != nil {
		return "", err
	}
	if err := checkDate("date", today); err != nil {
		return "", err
	}
	var rows [][]string
	known := map[string]bool{}
	for _, part := range append(slices.Clip(jd.parts), book.Parts...) {
		known[part.ID] = true
		price, day := part.Price, book.Dated
		if mine, ok := book.Own[part.ID]; ok {
			price, day = mine, today
		}
		rows = append(rows, priceLine(part.ID, part.Title, part.Unit, price, book.Currency, day))
	}
	for _, id := range sortedKeys(book.Own) {
		if !known[id] {
			rows = append(rows, priceLine(id, "", "", book.Own[id], book.Currency, today))
		}
	}
	return table.Write(priceColumns, rows), nil
}

func priceLine(id, title, unit string, r Range, currency, day string) []string {
	return []string{id, title, unit, r.Low.decimal(), r.Likely.decimal(), r.High.decimal(), currency, day}
}

// decimal writes an amount as spreadsheets read it: 12.50.
func (m Money) decimal() string {
	cents := int64(m) % 100
	return fmt.Sprintf("%d.%d%d", int64(m)/100, cents/10, cents%10)
}

// Priced is the whole price book as a file has it, own entries last: quantities are 0.
func (jd *Judge) Priced(f *File) []PartLine {
	p := newPricing(&Rubric{}, append(slices.Clip(jd.parts), f.Parts...), f, &notes{})
	var uses []PartUse
	for _, part := range jd.parts {
		uses = append(uses, PartUse{Part: part.ID})
	}
	for _, part := range f.Parts {
		uses = append(uses, PartUse{Part: part.ID})
	}
	lines, _ := p.use(uses)
	for i := range lines {
		lines[i].Own = lines[i].Own || p.own[lines[i].Part]
	}
	return lines
}
