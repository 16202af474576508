package sheet

import (
	"slices"

	"asfound/rubrics/appraisal"
)

func (s *sheets) lines() Table {
	v := s.v
	t := Table{Name: "lines", Title: v.T("Estimate lines"), Columns: []Column{
		{v.T("Listing"), Text}, {v.T("Kind of line"), Text}, {v.T("Line"), Text}, {v.T("How"), Text}, {v.T("Counted"), Text},
		{v.T("Hours, at least"), Number}, {v.T("Hours, most likely"), Number}, {v.T("Hours, at most"), Number}, {v.T("Whose hours"), Text}, {v.T("Price of an hour"), Amount},
		{v.T("Currency"), Text}, {v.T("Cost, at least"), Amount}, {v.T("Cost, most likely"), Amount}, {v.T("Cost, at most"), Amount}, {v.T("Cost on average"), Amount},
	}}
	for i := range s.all {
		a := &s.all[i]
		for _, e := range []*appraisal.Estimate{&a.result.Estimate, &a.result.Landing} {
			for j := range e.Lines {
				l := &e.Lines[j]
				counted := v.T("counted")
				if l.Off {
					counted = v.T("left out")
				}
				t.Rows = append(t.Rows, []Cell{
					a.file.Listing.Title, s.kind(l.Kind), l.Title, words(wayTitle(l)), counted, l.Hours.Low, l.Hours.Likely, l.Hours.High, s.choice(appraisal.Trades, l.Rate), known(float64(l.PerHour) / 100),
					a.result.Currency, money(l.Cost.Low), money(l.Cost.Likely), money(l.Cost.High), money(l.Mean),
				})
			}
		}
	}
	return t
}

func (s *sheets) kind(of string) string {
	v := s.v
	switch of {
	case "preparation":
		return v.T("Preparation")
	case "landing":
		return v.T("Getting it home and standing")
	case "scrap":
		return v.T("Taken away as scrap")
	}
	return v.T("Repair")
}

func wayTitle(l *appraisal.Line) string {
	for i := range l.Ways {
		if l.Ways[i].ID == l.Way {
			return l.Ways[i].Title
		}
	}
	return ""
}

// shopping is a row for each part of a line, with the way of the line: what is
// bought, what is stock for making, what comes with hired work.
func (s *sheets) shopping() Table {
	v := s.v
	t := Table{Name: "shopping", Title: v.T("Shopping list"), Columns: []Column{
		{v.T("Listing"), Text}, {v.T("Way"), Text}, {v.T("Part"), Text}, {v.T("Quantity"), Number}, {v.T("Unit"), Text},
		{v.T("Currency"), Text}, {v.T("Price of one, at least"), Amount}, {v.T("Price of one, most likely"), Amount}, {v.T("Price of one, at most"), Amount}, {v.T("Where the price is from"), Text}, {v.T("For which line"), Text},
	}}
	for i := range s.all {
		a := &s.all[i]
		for j := range a.result.Estimate.Lines {
			l := &a.result.Estimate.Lines[j]
			for k := range l.Parts {
				x := &l.Parts[k]
				from := v.T("estimate without a quotation")
				if x.Own || slices.ContainsFunc(a.file.Parts, func(p appraisal.Part) bool { return p.ID == x.Part }) {
					from = v.T("own price")
				}
				t.Rows = append(t.Rows, []Cell{
					a.file.Listing.Title, s.way(l), x.Title, x.Quantity, words(x.Unit),
					a.result.Currency, money(x.Price.Low), money(x.Price.Likely), money(x.Price.High), from, l.Title,
				})
			}
		}
	}
	return t
}

func (s *sheets) way(l *appraisal.Line) Cell {
	v := s.v
	for i := range l.Ways {
		if l.Ways[i].ID != l.Way {
			continue
		}
		switch l.Ways[i].Kind {
		case "make":
			return v.T("made in the shop")
		case "hire":
			return v.T("hired")
		}
		return v.T("bought")
	}
	return s.kind(l.Kind)
}

func (s *sheets) comparables() Table {
	v := s.v
	t := Table{Name: "comparables", Title: v.T("Comparables"), Columns: []Column{
		{v.T("Listing"), Text}, {v.T("Comparable"), Text}, {v.T("Maker"), Text}, {v.T("Currency"), Text}, {v.T("Price"), Amount}, {v.T("Asked or sold"), Text}, {v.T("Day"), Day}, {v.T("Year built"), Number},
		{v.T("Size"), Number}, {v.T("Unit of size"), Text}, {v.T("Hours run"), Number}, {v.T("Condition"), Text}, {v.T("Completeness"), Text}, {v.T("Place"), Text}, {v.T("Distance"), Number}, {v.T("Unit of distance"), Text},
		{v.T("Where it was seen"), Text}, {v.T("Note"), Text}, {v.T("Brought to this listing"), Amount}, {v.T("Weight, %"), Number},
	}}
	for i := range s.all {
		a := &s.all[i]
		for j := range a.file.Comparables {
			c := &a.file.Comparables[j]
			basis := v.T("asked")
			if c.Basis == "sold" {
				basis = v.T("sold")
			}
			size1, size2 := size(c.Capacity)
			far1, far2 := size(c.Distance)
			row := []Cell{
				a.file.Listing.Title, words(c.Title), words(c.Maker), a.result.Currency, money(c.Price), basis, words(c.Date), known(float64(c.Made)), size1, size2, known(c.Hours),
				s.choice(appraisal.Conditions, c.Condition), s.choice(appraisal.Completeness, c.Complete), words(c.Place), far1, far2, words(c.Seen), words(c.Note), nil, nil,
			}
			for k := range a.result.Worth.Rows {
				if x := &a.result.Worth.Rows[k]; x.ID == c.ID && x.Used {
					row[len(row)-2], row[len(row)-1] = money(x.Adjusted), hundredths(x.Weight)
				}
			}
			t.Rows = append(t.Rows, row)
		}
	}
	return t
}

// prices are the own prices of the shop and those of the lines, each part once a
// currency.
func (s *sheets) prices() Table {
	v := s.v
	t := Table{Name: "prices", Title: v.T("Prices"), Columns: []Column{
		{v.T("Part"), Text}, {v.T("Name of the part"), Text}, {v.T("Unit"), Text}, {v.T("Currency"), Text}, {v.T("At least"), Amount}, {v.T("Most likely"), Amount}, {v.T("At most"), Amount}, {v.T("Where the price is from"), Text},
	}}
	seen := map[string]bool{}
	for i := range s.all {
		a := &s.all[i]
		for _, x := range s.jd.Priced(a.file) {
			key := a.result.Currency + " " + x.Part
			if seen[key] {
				continue
			}
			seen[key] = true
			from := v.T("estimate without a quotation")
			if x.Own {
				from = v.T("own price")
			}
			t.Rows = append(t.Rows, []Cell{x.Part, words(x.Title), words(x.Unit), a.result.Currency, money(x.Price.Low), money(x.Price.Likely), money(x.Price.High), from})
		}
	}
	return t
}
