package main

import (
	"fmt"
	"io"
	"text/tabwriter"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/say"
)

// compareReport writes a comparison for a person to read.
func compareReport(out io.Writer, v *say.Voice, c *appraisal.Comparison) error {
	w := tabwriter.NewWriter(out, 0, 0, 2, ' ', 0)
	row := func(cells ...string) {
		for i, cell := range cells {
			if i > 0 {
				fmt.Fprint(w, "\t")
			}
			fmt.Fprint(w, oneLine([]any{cell})...)
		}
		fmt.Fprintln(w)
	}
	row(v.T("listing"), v.T("verdict"), v.T("coverage"), v.T("asking"), v.T("all-in"), v.T("odds"), v.T("ahead"), v.T("days"), v.T("opening"), v.T("fair"), v.T("walk-away"))
	for _, s := range c.Sides {
		var allIn *appraisal.Money
		if s.AllIn != nil {
			allIn = &s.AllIn.Total
		}
		row(s.Title, s.Verdict.Title, fmt.Sprintf("%.0f %%", s.Safety.Coverage), amount(v, s.Price), amount(v, allIn), odds(s.Odds), amount(v, s.Ahead), days(s.Days), point(v, s.Opening), point(v, s.Fair), point(v, s.WalkAway))
	}
	matrix(row, c, v.T("BETTER BUY THAN"), func(a, b int) string { return odds(c.Better[a][b]) })
	matrix(row, c, v.T("PRICE TO DRAW LEVEL WITH"), func(a, b int) string {
		if m := c.Overtake[a][b]; m != nil && *m < 0 {
			return v.T("none")
		}
		return amount(v, c.Overtake[a][b])
	})
	ranking(row, v, c)
	row()
	for _, s := range c.Sentences {
		row(s)
	}
	if len(c.Moves) > 0 {
		for _, m := range c.Moves[1:] { // the nearest stands among the sentences
			row(m.Sentence)
		}
	}
	return w.Flush()
}

// days until it is in service, with their span.
func days(d *appraisal.Days) string {
	if d == nil {
		return "-"
	}
	return fmt.Sprintf("%d (%d-%d)", d.Likely, d.Low, d.High)
}

// matrix writes a figure for each two listings; the columns are the rows' letters.
func matrix(row func(...string), c *appraisal.Comparison, title string, figure func(a, b int) string) {
	row()
	head := []string{title}
	for b := range c.Sides {
		head = append(head, c.Sides[b].Letter)
	}
	row(head...)
	for a, s := range c.Sides {
		cells := []string{fmt.Sprintf("  %s %s", s.Letter, s.Title)}
		for b := range c.Sides {
			cells = append(cells, figure(a, b))
		}
		row(cells...)
	}
}

// ranking writes the listings, best first, with their part of each criterion.
func ranking(row func(...string), v *say.Voice, c *appraisal.Comparison) {
	row()
	head := []string{v.T("RANKING"), v.T("points")}
	for _, k := range c.Criteria {
		head = append(head, fmt.Sprintf("%s (%d)", k.ID, k.Weight))
	}
	row(head...)
	for place, i := range c.Order {
		s := &c.Sides[i]
		cells := []string{fmt.Sprintf("  %d. %s", place+1, s.Title), "-"}
		if s.Score != nil {
			cells[1] = v.Number(*s.Score, 1)
		}
		for _, part := range s.Parts {
			if part == nil {
				cells = append(cells, "-")
			} else {
				cells = append(cells, v.Number(*part, 2))
			}
		}
		row(cells...)
	}
}

func amount(v *say.Voice, m *appraisal.Money) string {
	if m == nil {
		return "-"
	}
	return money(v, *m)
}

func odds(x *float64) string {
	if x == nil {
		return "-"
	}
	return fmt.Sprintf("%.0f %%", 100**x)
}

func point(v *say.Voice, p *appraisal.PricePoint) string {
	if p == nil {
		return "-"
	}
	if p.None {
		return v.T("none")
	}
	return money(v, p.Price)
}
