package document

import (
	"slices"

	"asfound/rubrics/appraisal"
)

// need is a part of the shopping list: how many of it all lines of a kind take.
type need struct {
	part     appraisal.PartLine
	quantity float64
}

// shopping lists what is bought, what is stock for parts made in the shop, and whose
// hours are hired. The price book knows no supplier, so no other grouping is honest.
func (p *paper) shopping() []Block {
	v := p.v
	out := []Block{heading(2, v.T("Shopping list"))}
	before := len(out)
	for _, g := range []struct{ kind, title string }{
		{"buy", v.T("To buy")}, {"make", v.T("Stock for making it in the shop")}, {"hire", v.T("Parts with hired work")}, {"", v.T("For the preparations")},
	} {
		if needs := p.needs(g.kind); len(needs) > 0 {
			out = append(out, heading(3, g.title), tableOf(p.needed(g.title, needs)))
		}
	}
	if t := p.hired(); len(t.Rows) > 0 {
		out = append(out, heading(3, t.Title), tableOf(t))
	}
	if len(out) == before {
		return append(out, text(v.T("Nothing is bought or hired.")))
	}
	return out
}

// needs adds the parts of all lines whose way is of a kind; "" are preparations.
func (p *paper) needs(kind string) []need {
	var out []need
	for i := range p.repair.Estimate.Lines {
		l := &p.repair.Estimate.Lines[i]
		if wayKind(l) != kind {
			continue
		}
		for _, part := range l.Parts {
			at := slices.IndexFunc(out, func(n need) bool { return n.part.Part == part.Part })
			if at < 0 {
				out, at = append(out, need{part: part}), len(out)
			}
			out[at].quantity += part.Quantity
		}
	}
	return out
}

func wayKind(l *appraisal.Line) string {
	for i := range l.Ways {
		if l.Ways[i].ID == l.Way {
			return l.Ways[i].Kind
		}
	}
	return ""
}

func (p *paper) needed(title string, needs []need) Table {
	v := p.v
	t := Table{Title: title, Columns: []Column{
		{Title: v.T("Part"), Share: 38}, {Title: v.T("Quantity"), Right: true, Share: 16}, {Title: v.T("Price of one"), Right: true, Share: 24}, {Title: v.T("Where the price is from"), Share: 22},
	}}
	for i := range needs {
		x := needs[i].part
		x.Quantity = needs[i].quantity
		t.Rows = append(t.Rows, Row{Cells: p.partCells(&x)})
	}
	return t
}

// hired are the hours of each trade besides one's own.
func (p *paper) hired() Table {
	v := p.v
	t := Table{Title: v.T("Hired work"), Columns: []Column{{Title: v.T("Who"), Share: 40}, {Title: v.T("Hours"), Right: true, Share: 36}, {Title: v.T("Price of an hour"), Right: true, Share: 24}}}
	for _, trade := range appraisal.Trades {
		if trade.ID == "own" || trade.ID == "machine" {
			continue
		}
		var sum appraisal.Hours
		var per appraisal.Money
		for i := range p.repair.Estimate.Lines {
			if l := &p.repair.Estimate.Lines[i]; l.Rate == trade.ID {
				sum = appraisal.Hours{Low: sum.Low + l.Hours.Low, Likely: sum.Likely + l.Hours.Likely, High: sum.High + l.Hours.High}
				per = l.PerHour
			}
		}
		if sum.High > 0 {
			t.Rows = append(t.Rows, Row{Cells: []string{p.trade(trade.ID), hours(v, sum), exactly(v, per)}})
		}
	}
	return t
}
