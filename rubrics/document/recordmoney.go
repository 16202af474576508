package document

import (
	"asfound/rubrics/appraisal"
	"asfound/rubrics/say"
)

// titleOf is what is shown for the id of a choice; "" for none.
func titleOf(v *say.Voice, choices []appraisal.Choice, id string) string {
	for _, c := range choices {
		if c.ID == id {
			return v.Label(c.Title)
		}
	}
	return plain(id)
}

func (r *dossier) hidden() []Block {
	v, h := r.v, &r.all.Hidden
	out := []Block{heading(2, v.T("What was not checked, in money")), text(h.Sentence)}
	t := Table{Title: v.T("Points not checked"), Columns: []Column{{Title: v.T("Point"), Share: 56}, {Title: v.T("Bad in"), Right: true, Share: 22}, {Title: v.T("Allowance"), Right: true, Share: 22}}}
	for i := range h.Points {
		x := &h.Points[i]
		t.Rows = append(t.Rows, Row{Cells: []string{plain(x.Title), v.Percent(x.Chance), amount(v, x.Mean)}})
	}
	if len(t.Rows) > 0 {
		out = append(out, tableOf(t))
	}
	return out
}

func (r *dossier) landing() []Block {
	v, e := r.v, &r.all.Landing
	t := Table{Title: v.T("Getting it home and standing"), Columns: []Column{
		{Title: v.T("Line"), Share: 46}, {Title: v.T("Hours"), Right: true, Share: 12}, {Title: v.T("At least"), Right: true, Share: 14}, {Title: v.T("Most likely"), Right: true, Share: 14}, {Title: v.T("At most"), Right: true, Share: 14},
	}}
	var says []string
	for i := range e.Lines {
		l := &e.Lines[i]
		if l.Says != "" {
			says = append(says, v.F("%s: %s", plain(l.Title), l.Says))
		}
		if l.Off {
			continue
		}
		t.Rows = append(t.Rows, Row{Cells: []string{plain(l.Title), v.Short(l.Hours.Likely, 1), amount(v, l.Cost.Low), amount(v, l.Cost.Likely), amount(v, l.Cost.High)}})
	}
	t.Rows = append(t.Rows, Row{Cells: []string{v.T("Together"), v.Short(e.Hours.Likely, 1), amount(v, e.Low), amount(v, e.Median), amount(v, e.High)}, Kind: "total"})
	out := []Block{heading(2, t.Title), tableOf(t)}
	if len(says) > 0 {
		out = append(out, list(says))
	}
	return out
}

func (r *dossier) worth() []Block {
	v, w := r.v, &r.all.Worth
	out := []Block{heading(2, v.T("Worth"))}
	if !w.Known {
		return append(out, text(w.Missing))
	}
	out = append(out, text(w.Sentence))
	for _, a := range []*appraisal.Approach{w.Sales, w.Cost} {
		if a != nil {
			out = append(out, list(a.Steps))
		}
	}
	t := Table{Title: v.T("Comparables"), Columns: []Column{
		{Title: v.T("Comparable"), Share: 46}, {Title: v.T("Price"), Right: true, Share: 18}, {Title: v.T("Brought to this one"), Right: true, Share: 20}, {Title: v.T("Weight"), Right: true, Share: 16},
	}}
	for i := range w.Rows {
		x := &w.Rows[i]
		weight := v.T("not used")
		if x.Used {
			weight = v.Percent(x.Weight)
		}
		t.Rows = append(t.Rows, Row{Cells: []string{plain(x.Title), amount(v, x.Price), amount(v, x.Adjusted), weight}})
	}
	if len(t.Rows) > 0 {
		out = append(out, tableOf(t))
	}
	return out
}

func (r *dossier) offer() []Block {
	v, o := r.v, &r.all.Offer
	out := []Block{heading(2, v.T("Offer"))}
	if !o.Known {
		return append(out, text(o.Missing))
	}
	t := Table{Title: v.T("Prices and odds"), Columns: []Column{{Title: v.T("Price point"), Share: 44}, {Title: v.T("Price"), Right: true, Share: 28}, {Title: v.T("Coming out ahead in"), Right: true, Share: 28}}}
	row := func(title string, at *appraisal.PricePoint) {
		price := amount(v, at.Price)
		if at.None {
			price = v.T("not even as a gift")
		}
		t.Rows = append(t.Rows, Row{Cells: []string{title, price, v.Percent(at.Odds)}})
	}
	row(v.T("Opening offer"), &o.Opening)
	row(v.T("Fair offer"), &o.Fair)
	row(v.T("Walk-away price"), &o.WalkAway)
	if o.At != nil {
		row(v.T("At the price asked"), o.At)
	}
	out = append(out, tableOf(t), list(o.Sentences))
	w := Table{Title: v.T("From worth to the fair offer"), Columns: []Column{{Title: v.T("Cause"), Share: 56}, {Title: v.T("Amount"), Right: true, Share: 22}, {Title: v.T("Left over"), Right: true, Share: 22}}}
	for i := range o.Waterfall {
		x := &o.Waterfall[i]
		w.Rows = append(w.Rows, Row{Cells: []string{plain(x.Title), amount(v, x.Amount), amount(v, x.Total)}})
	}
	if len(w.Rows) > 0 {
		out = append(out, tableOf(w))
	}
	return out
}

func (r *dossier) fit() []Block {
	v, f := r.v, r.all.Fit
	if f == nil {
		return nil
	}
	t := Table{Title: v.T("Fit with the shop"), Columns: []Column{{Title: v.T("Point"), Share: 24}, {Title: v.T("Finding"), Share: 20}, {Title: v.T("Why"), Share: 56}}}
	for i := range f.Points {
		x := &f.Points[i]
		t.Rows = append(t.Rows, Row{Cells: []string{plain(x.Title), fitWord(v, x.Finding), x.Text}})
	}
	return []Block{heading(2, t.Title), text(f.Sentence), tableOf(t), list(f.Cautions)}
}

func (r *dossier) home() []Block {
	v, h := r.v, r.all.Home
	if h == nil {
		return nil
	}
	out := []Block{heading(2, v.T("The way home")), text(h.Sentence)}
	t := Table{Title: v.T("Points of the way home"), Columns: []Column{{Title: v.T("Point"), Share: 24}, {Title: v.T("Finding"), Share: 20}, {Title: v.T("Why"), Share: 56}}}
	for i := range h.Points {
		x := &h.Points[i]
		t.Rows = append(t.Rows, Row{Cells: []string{plain(x.Title), fitWord(v, x.Finding), x.Text}})
	}
	out = append(out, tableOf(t), list(h.Steps))
	if len(h.Gear) > 0 {
		var gear []string
		for i := range h.Gear {
			gear = append(gear, v.F("%s: %s", plain(h.Gear[i].Title), v.Whole(int64(h.Gear[i].Count))))
		}
		out = append(out, heading(3, v.T("To take along")), list(gear))
	}
	return append(out, list(h.Cautions))
}

func fitWord(v *say.Voice, finding string) string {
	switch finding {
	case appraisal.Fits:
		return v.T("fits")
	case appraisal.WithWork:
		return v.T("with work")
	case appraisal.DoesNot:
		return v.T("does not fit")
	}
	return v.T("not known")
}
