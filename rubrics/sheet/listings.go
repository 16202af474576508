package sheet

import (
	"slices"

	"asfound/rubrics/appraisal"
)

func (s *sheets) listings() Table {
	v := s.v
	t := Table{Name: "listings", Title: v.T("Listings"), Columns: []Column{
		{v.T("Listing"), Text}, {v.T("Kind"), Text}, {v.T("Maker"), Text}, {v.T("Model"), Text}, {v.T("Serial number"), Text}, {v.T("Year built"), Number},
		{v.T("Size"), Number}, {v.T("Unit of size"), Text}, {v.T("Hours run"), Number}, {v.T("Place"), Text}, {v.T("Distance"), Number}, {v.T("Unit of distance"), Text},
		{v.T("Kind of seller"), Text}, {v.T("Where it was seen"), Text}, {v.T("Note"), Text}, {v.T("Day of the appraisal"), Day},
		{v.T("Verdict"), Text}, {v.T("Safety score"), Number}, {v.T("Safety points checked, %"), Number}, {v.T("Condition score"), Number}, {v.T("Points checked"), Number}, {v.T("Points that apply"), Number},
		{v.T("Currency"), Text}, {v.T("Asking price"), Amount}, {v.T("Repair, 10 %"), Amount}, {v.T("Repair, middle"), Amount}, {v.T("Repair, 90 %"), Amount},
		{v.T("Allowance for what was not checked"), Amount}, {v.T("Getting it home and standing"), Amount}, {v.T("Worth, sound"), Amount}, {v.T("Worth, 10 %"), Amount}, {v.T("Worth, 90 %"), Amount},
		{v.T("Opening offer"), Amount}, {v.T("Fair offer"), Amount}, {v.T("Walk-away price"), Amount}, {v.T("Odds at the price, %"), Number},
	}}
	for i := range s.all {
		a := &s.all[i]
		l, r := &a.file.Listing, a.result
		size1, size2 := size(l.Capacity)
		far1, far2 := size(l.Distance)
		row := []Cell{
			l.Title, a.rubric.Kind, words(l.Maker), words(l.Model), words(l.Serial), known(float64(l.Made)), size1, size2, known(l.Hours), words(l.Place), far1, far2,
			s.choice(appraisal.Sellers, l.Seller), words(l.Seen), words(l.Note), a.file.Date,
			r.Verdict.Title, score(&r.Safety), r.Safety.Coverage, score(&r.Condition), float64(r.Progress.Graded), float64(r.Progress.Applies),
			r.Currency, moneyOf(l.Asking), money(r.Estimate.Low), money(r.Estimate.Median), money(r.Estimate.High), money(r.Hidden.Mean), money(r.Landing.Median),
		}
		row = append(row, three(r.Worth.Known, r.Worth.Centre, r.Worth.Low, r.Worth.High)...)
		row = append(row, price(r.Offer.Known, &r.Offer.Opening), price(r.Offer.Known, &r.Offer.Fair), price(r.Offer.Known, &r.Offer.WalkAway), odds(r.Offer.At))
		t.Rows = append(t.Rows, row)
	}
	return t
}

func score(s *appraisal.Score) Cell {
	if s.Value == nil {
		return nil
	}
	return *s.Value
}

func three(is bool, amounts ...appraisal.Money) []Cell {
	out := make([]Cell, len(amounts))
	for i, m := range amounts {
		if is {
			out[i] = money(m)
		}
	}
	return out
}

func price(is bool, p *appraisal.PricePoint) Cell {
	if !is || p == nil || p.None {
		return nil
	}
	return money(p.Price)
}

func odds(p *appraisal.PricePoint) Cell {
	if p == nil {
		return nil
	}
	return hundredths(p.Odds)
}

// hundredths is a share of 0 to 1 in percent, as it is kept: to four places.
func hundredths(share float64) Cell { return float64(int64(float64(share*10_000)+0.5)) / 100 }

func (s *sheets) sides(c *appraisal.Comparison) Table {
	v := s.v
	t := Table{Name: "comparison", Title: v.T("Listings side by side"), Columns: []Column{
		{v.T("Place in the ranking"), Number}, {v.T("Listing"), Text}, {v.T("Verdict"), Text}, {v.T("Safety points checked, %"), Number}, {v.T("Points of 100"), Number}, {v.T("Currency"), Text},
		{v.T("Price"), Amount}, {v.T("Tax"), Amount}, {v.T("Fees"), Amount}, {v.T("Getting it home and standing"), Amount}, {v.T("Repair of what was found"), Amount}, {v.T("Allowance for what was not checked"), Amount}, {v.T("All in"), Amount},
		{v.T("Odds at the price, %"), Number}, {v.T("Ahead on average"), Amount}, {v.T("Ahead, 10 %"), Amount}, {v.T("Ahead, 90 %"), Amount},
		{v.T("Opening offer"), Amount}, {v.T("Fair offer"), Amount}, {v.T("Walk-away price"), Amount}, {v.T("Hours until it works"), Number}, {v.T("Working days until it works"), Number}, {v.T("Distance"), Number}, {v.T("Unit of distance"), Text},
	}}
	for i := range c.Sides {
		x := &c.Sides[i]
		points := Cell(nil)
		if x.Score != nil {
			points = *x.Score
		}
		row := []Cell{float64(slices.Index(c.Order, i) + 1), x.Title, x.Verdict.Title, x.Safety.Coverage, points, c.Currency, moneyOf(x.Price)}
		a := x.AllIn
		if a == nil {
			a = &appraisal.AllIn{}
		}
		row = append(row, three(x.AllIn != nil, a.Tax, a.Fees, a.Landing, a.Repair, a.Hidden, a.Total)...)
		if x.Odds == nil {
			row = append(row, nil)
		} else {
			row = append(row, hundredths(*x.Odds))
		}
		row = append(row, moneyOf(x.Ahead), moneyOf(x.AheadLow), moneyOf(x.AheadTop), price(true, x.Opening), price(true, x.Fair), price(true, x.WalkAway), x.Hours, days(x.Days))
		far, unit := size(x.Distance)
		t.Rows = append(t.Rows, append(row, far, unit))
	}
	return t
}

func (s *sheets) decisions(all []Decision) Table {
	v := s.v
	t := Table{Name: "decisions", Title: v.T("Decisions"), Columns: []Column{
		{v.T("Day"), Day}, {v.T("Bought"), Text}, {v.T("Price"), Amount}, {v.T("Currency"), Text}, {v.T("Reason"), Text}, {v.T("Listings, best first"), Text}, {v.T("Withdrawn on"), Day},
	}}
	for i := range all {
		d := &all[i]
		t.Rows = append(t.Rows, []Cell{words(d.Date), words(d.Chosen), moneyOf(d.Price), words(d.Currency), words(d.Reason), words(joined(d.Sides)), words(d.Withdrawn)})
	}
	return t
}

func joined(list []string) string {
	out := ""
	for i, s := range list {
		if i > 0 {
			out += "; "
		}
		out += s
	}
	return out
}

// days until it is in service, most likely; nothing where it cannot be put right.
func days(d *appraisal.Days) Cell {
	if d == nil {
		return nil
	}
	return float64(d.Likely)
}
