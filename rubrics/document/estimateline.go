package document

import (
	"slices"

	"asfound/rubrics/appraisal"
)

// remedy tells how a finding is put right, once a remedy: a further finding that the
// same work cures names the first.
func (p *paper) remedy(c *appraisal.CheckResult) []Block {
	v := p.v
	lines := p.repair.Estimate.Lines
	i := slices.IndexFunc(lines, func(l appraisal.Line) bool { return l.Kind != "preparation" && slices.Contains(l.Because, c.Check) })
	switch {
	case slices.Contains(p.repair.Scrap, c.Check) || c.Remedy == "scrap":
		return []Block{text(v.T("This cannot be put right: no repair is estimated for it."))}
	case i < 0 && c.Remedy == "":
		return []Block{text(v.T("No repair is estimated for it."))}
	case i < 0:
		return []Block{text(v.T("What its repair costs is not part of this paper."))}
	}
	l := &lines[i]
	if first, ok := p.told[l.ID]; ok {
		return []Block{text(v.F("Put right by the same work as “%s”: %s.", plain(p.checks[first].Title), plain(l.Title)))}
	}
	p.told[l.ID] = c.Check
	return p.line(l, v.T("Repair"))
}

// line tells all of one line of the estimate; name is what its title is called.
func (p *paper) line(l *appraisal.Line, name string) []Block {
	v := p.v
	var f []Fact
	if name != "" { // else the heading says it
		f = told(f, name, plain(l.Title))
	}
	for i := range l.Ways {
		if w := &l.Ways[i]; w.ID == l.Way {
			f = told(f, v.T("How"), plain(w.Title))
		}
	}
	if l.Hours.High > 0 {
		f = told(f, v.T("Hours of work"), hours(v, l.Hours))
		f = told(f, v.T("Price of an hour"), v.F("%s (%s)", exactly(v, l.PerHour), p.trade(l.Rate)))
	}
	if l.Minutes > 0 {
		f = told(f, v.T("Machining in these hours"), v.F("%s min", v.Short(l.Minutes, 1)))
	}
	f = told(f, v.T("Cost"), between(v, l.Cost, amount))
	out := []Block{facts(f)}
	if len(l.Parts) > 0 {
		out = append(out, tableOf(p.parts(l)))
	}
	if l.Caution != "" {
		out = append(out, small(plain(l.Caution)))
	}
	return out
}

func (p *paper) parts(l *appraisal.Line) Table {
	v := p.v
	t := Table{Title: v.F("Parts for: %s", plain(l.Title)), Columns: []Column{
		{Title: v.T("Part"), Share: 38}, {Title: v.T("Quantity"), Right: true, Share: 16}, {Title: v.T("Price of one"), Right: true, Share: 24}, {Title: v.T("Where the price is from"), Share: 22},
	}}
	for i := range l.Parts {
		t.Rows = append(t.Rows, Row{Cells: p.partCells(&l.Parts[i])})
	}
	return t
}

func (p *paper) partCells(x *appraisal.PartLine) []string {
	v := p.v
	from := v.T("estimate without a quotation")
	if x.Own || p.seen.own[x.Part] {
		from = v.T("price found by the buyer")
	}
	many := v.Short(x.Quantity, 2)
	if x.Unit != "" {
		many = v.F("%s %s", many, plain(x.Unit))
	}
	return []string{plain(x.Title), many, between(v, x.Price, exactly), from}
}

func (p *paper) trade(id string) string {
	v := p.v
	switch id {
	case "own":
		return v.T("the buyer's own work")
	case "machine":
		return v.T("the buyer's own machine")
	case "electrician":
		return v.T("licensed electrician")
	case "rigger":
		return v.T("rigger")
	case "welder":
		return v.T("certified welder")
	case "specialist":
		return v.T("lift or press fitter")
	case "inspector":
		return v.T("qualified inspector")
	}
	return id
}

// preparations are told once, with the repairs that need them.
func (p *paper) preparations() []Block {
	v := p.v
	var out []Block
	titles := map[string]string{}
	for i := range p.repair.Estimate.Lines {
		l := &p.repair.Estimate.Lines[i]
		titles[l.ID] = plain(l.Title)
	}
	for i := range p.repair.Estimate.Lines {
		l := &p.repair.Estimate.Lines[i]
		if l.Kind != "preparation" {
			continue
		}
		blocks := append([]Block{heading(3, plain(l.Title))}, p.line(l, "")...)
		var needs []string
		for _, id := range l.Because {
			needs = append(needs, titles[id])
		}
		out = append(out, Block{Kind: "part", ID: l.ID, Blocks: append(blocks, small(v.T("Needed for:")), list(needs))})
	}
	if out == nil {
		return nil
	}
	return append([]Block{heading(2, v.T("Preparations")), text(v.T("Each is done and reckoned once, however many repairs need it."))}, out...)
}

// sum is the table of all lines with what they come to together.
func (p *paper) sum() []Block {
	v, e := p.v, &p.repair.Estimate
	if len(e.Lines) == 0 {
		return nil
	}
	t := Table{Title: v.T("All lines of the estimate"), Columns: []Column{
		{Title: v.T("Line"), Share: 46}, {Title: v.T("Hours"), Right: true, Share: 12}, {Title: v.T("At least"), Right: true, Share: 14}, {Title: v.T("Most likely"), Right: true, Share: 14}, {Title: v.T("At most"), Right: true, Share: 14},
	}}
	group := func(kind, title string) {
		first := true
		for i := range e.Lines {
			l := &e.Lines[i]
			if l.Kind != kind {
				continue
			}
			if first {
				t.Rows, first = append(t.Rows, Row{Cells: []string{title, "", "", "", ""}, Kind: "group"}), false
			}
			t.Rows = append(t.Rows, Row{Cells: []string{plain(l.Title), v.Short(l.Hours.Likely, 1), amount(v, l.Cost.Low), amount(v, l.Cost.Likely), amount(v, l.Cost.High)}})
		}
	}
	group("scrap", v.T("What cannot be put right"))
	group("preparation", v.T("Preparations"))
	group("remedy", v.T("Repairs"))
	t.Rows = append(t.Rows, Row{Cells: []string{v.T("Together"), v.Short(e.Hours.Likely, 1), amount(v, e.Low), amount(v, e.Median), amount(v, e.High)}, Kind: "total"})
	out := []Block{
		heading(2, v.T("What it costs")), tableOf(t),
		text(v.F("Together these lines come to about %s: half of the time more, half of the time less, and in eight of ten cases between %s and %s. That is not the sum of a column, since the lines do not all turn out dear or cheap at once.", amount(v, e.Median), amount(v, e.Low), amount(v, e.High))),
	}
	if p.seen.overrun != 100_00 {
		out = append(out, small(v.F("Taken together, repairs and preparations are reckoned at %s of their lines on average, since work rarely goes as planned.", v.Percent(float64(p.seen.overrun)/10_000))))
	}
	return out
}
