package document

import (
	"strconv"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/say"
)

// abreast is how many listings stand in one table; a page is no wider.
const abreast = 4

// sheet is a comparison being written.
type sheet struct {
	v   *say.Voice
	c   *appraisal.Comparison
	ask *Ask
}

// comparison is the sheet of several listings side by side.
func comparison(v *say.Voice, c *appraisal.Comparison, date string, ask *Ask) *Document {
	s := &sheet{v, c, ask}
	d := begin(v, Comparison, v.T("Listings side by side"), date)
	d.Foot = v.F("%s · %s", v.T("Listings side by side, private"), d.Date)
	d.Add(list(c.Sentences), small(v.F("All amounts in this paper are in %s.", c.Currency)))
	for i := range c.Sides {
		if x := &c.Sides[i].Verdict; x.Hazard != "notice" {
			d.Add(caution(v, x.Hazard, v.F("%s: %s", plain(c.Sides[i].Title), x.Title+". "+x.Sentence)))
		}
	}
	for from := 0; from < len(c.Sides); from += abreast {
		d.Add(tableOf(s.figures(from, min(from+abreast, len(c.Sides)))))
	}
	d.Add(heading(2, v.T("Ranking")), tableOf(s.ranking()))
	d.Add(heading(2, v.T("Two by two")))
	d.Add(s.duels()...)
	return d
}

// latest is the day of the youngest appraisal.
func latest(files []*appraisal.File) string {
	out := ""
	for _, f := range files {
		out = max(out, f.Date)
	}
	return out
}

// columns are the names of some sides after one for what is told of them.
func (s *sheet) columns(first string, from, to int) []Column {
	share := 70 / (to - from)
	out := []Column{{Title: first, Share: 100 - share*(to-from)}}
	for i := from; i < to; i++ {
		out = append(out, Column{Title: plain(s.c.Sides[i].Title), Right: true, Share: share})
	}
	return out
}

func (s *sheet) figures(from, to int) Table {
	v := s.v
	t := Table{Title: v.T("Figures of each listing"), Columns: s.columns(v.T("Figure"), from, to)}
	row := func(title string, of func(*appraisal.Side) string) {
		cells := []string{title}
		for i := from; i < to; i++ {
			cells = append(cells, of(&s.c.Sides[i]))
		}
		t.Rows = append(t.Rows, Row{Cells: cells})
	}
	money := func(m *appraisal.Money) string {
		if m == nil {
			return "–"
		}
		return amount(v, *m)
	}
	point := func(p *appraisal.PricePoint) string {
		switch {
		case p == nil:
			return "–"
		case p.None:
			return v.T("none")
		}
		return amount(v, p.Price)
	}
	row(v.T("Verdict"), func(x *appraisal.Side) string { return x.Verdict.Title })
	row(v.T("Safety points checked"), func(x *appraisal.Side) string { return v.Percent(x.Safety.Coverage / 100) })
	row(v.T("Price"), func(x *appraisal.Side) string { return money(x.Price) })
	for _, part := range []struct {
		title string
		of    func(*appraisal.AllIn) appraisal.Money
	}{
		{v.T("Tax"), func(a *appraisal.AllIn) appraisal.Money { return a.Tax }}, {v.T("Fees"), func(a *appraisal.AllIn) appraisal.Money { return a.Fees }},
		{v.T("Getting it home and standing"), func(a *appraisal.AllIn) appraisal.Money { return a.Landing }}, {v.T("Repair of what was found"), func(a *appraisal.AllIn) appraisal.Money { return a.Repair }},
		{v.T("Allowance for what was not checked"), func(a *appraisal.AllIn) appraisal.Money { return a.Hidden }}, {v.T("All in"), func(a *appraisal.AllIn) appraisal.Money { return a.Total }},
	} {
		row(part.title, func(x *appraisal.Side) string {
			if x.AllIn == nil {
				return "–"
			}
			return amount(v, part.of(x.AllIn))
		})
	}
	t.Rows[len(t.Rows)-1].Kind = "total"
	row(v.T("Coming out ahead in"), func(x *appraisal.Side) string {
		if x.Odds == nil {
			return "–"
		}
		return v.Percent(*x.Odds)
	})
	row(v.T("Ahead on average"), func(x *appraisal.Side) string { return money(x.Ahead) })
	row(v.T("Ahead in eight of ten cases"), func(x *appraisal.Side) string {
		if x.AheadLow == nil || x.AheadTop == nil {
			return "–"
		}
		return v.F("%s to %s", amount(v, *x.AheadLow), amount(v, *x.AheadTop))
	})
	row(v.T("Opening offer"), func(x *appraisal.Side) string { return point(x.Opening) })
	row(v.T("Fair offer"), func(x *appraisal.Side) string { return point(x.Fair) })
	row(v.T("Walk-away price"), func(x *appraisal.Side) string { return point(x.WalkAway) })
	row(v.T("Hours until it works"), func(x *appraisal.Side) string { return v.Short(x.Hours, 1) })
	row(v.T("Working days until it works"), func(x *appraisal.Side) string {
		if x.Days == nil {
			return "–"
		}
		return v.F("%s (%s to %s)", v.Whole(int64(x.Days.Likely)), v.Whole(int64(x.Days.Low)), v.Whole(int64(x.Days.High)))
	})
	row(v.T("Distance"), func(x *appraisal.Side) string {
		if x.Distance == nil {
			return "–"
		}
		return quantity(v, *x.Distance, s.ask.Units)
	})
	return t
}

func (s *sheet) ranking() Table {
	v := s.v
	t := Table{Title: v.T("Ranking"), Columns: []Column{{Title: v.T("Rank"), Right: true, Share: 12}, {Title: v.T("Listing"), Share: 64}, {Title: v.T("Points of 100"), Right: true, Share: 24}}}
	for place, i := range s.c.Order {
		x := &s.c.Sides[i]
		points := "–"
		if x.Score != nil {
			points = v.Number(*x.Score, 1)
		}
		if x.Gate != "" {
			points = x.Verdict.Title
		}
		t.Rows = append(t.Rows, Row{Cells: []string{strconv.Itoa(place + 1), plain(x.Title), points}})
	}
	return t
}

// duels tells of each two how often the one is the better buy.
func (s *sheet) duels() []Block {
	v := s.v
	var out []string
	for a := range s.c.Sides {
		for b := range s.c.Sides {
			if p := s.c.Better[a][b]; p != nil && a < b {
				out = append(out, v.F("“%s” is the better buy than “%s” in %s of the cases.", plain(s.c.Sides[a].Title), plain(s.c.Sides[b].Title), v.Percent(*p)))
			}
		}
	}
	if out == nil {
		return []Block{text(v.T("No two of them can be compared in money yet."))}
	}
	return []Block{list(out)}
}
