package document

import (
	"slices"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/limit"
	"asfound/rubrics/say"
)

// found are the findings as parts that can be answered, in walking order: what needs
// repair, and what is worn and lived with.
func (p *paper) found() []Block {
	var out []Block
	for i := range p.repair.Checks {
		c := &p.repair.Checks[i]
		if c.Applies && c.Grade != nil && *c.Grade <= 2 && !p.left(c.Check) {
			out = append(out, Block{Kind: "part", ID: c.Check, Answer: p.ask.Kind == Estimate, Blocks: p.finding(c)})
		}
	}
	return out
}

func (p *paper) finding(c *appraisal.CheckResult) []Block {
	v, check, at := p.v, p.checks[c.Check], p.seen.points[c.Check]
	says := gradeWord(v, *c.Grade)
	if means := gradeText(&check.Grades, *c.Grade); means != "" {
		says = v.F("%s: %s", says, plain(means))
	}
	out := []Block{heading(3, plain(check.Title)), caution(v, check.Hazard, says)}
	if f := p.measured(check, c, &at); len(f) > 0 {
		out = append(out, facts(f))
	}
	if c.Limit != nil {
		out = append(out, text(c.Limit.Text))
	}
	for _, l := range lines(at.note) {
		out = append(out, text(l))
	}
	if photos := p.photos(check, at.photos, at.pairs); len(photos) > 0 {
		out = append(out, Block{Kind: "photos", Photos: photos})
	}
	return append(out, p.remedy(c)...)
}

func gradeText(g *appraisal.Grades, grade int) string {
	return []string{g.Failed, g.Bad, g.Worn, g.Sound, g.AsNew}[grade]
}

// measured tells each value as entered, and the figure it was held against with its
// source and standing.
func (p *paper) measured(check *appraisal.Check, c *appraisal.CheckResult, at *point) []Fact {
	var f []Fact
	if check.Limit == nil {
		return nil
	}
	v := p.v
	inputs := inputsOf(check.Limit.Name)
	for i := range inputs {
		in := &inputs[i]
		if q, ok := at.measured[in.Name]; ok {
			f = told(f, say.Capital(v.Label(in.Title)), quantity(v, q, p.ask.Units))
		} else if w, ok := at.words[in.Name]; ok {
			f = told(f, say.Capital(v.Label(in.Title)), p.wordOf(in, w))
		}
	}
	if at.maker != nil {
		f = told(f, v.T("Maker's own limit"), quantity(v, *at.maker, p.ask.Units))
	}
	if r := c.Limit; r != nil {
		f = told(f, v.T("Comes to"), computed(v, r.Value, r.Unit, p.ask.Units))
		if r.Limit != nil {
			f = told(f, v.T("Limit"), computed(v, *r.Limit, r.Unit, p.ask.Units))
		}
		f = told(f, v.T("Source of the limit"), r.Source)
		f = told(f, v.T("Standing of the source"), p.standing(r.Status))
	}
	return f
}

func (p *paper) wordOf(in *limit.Input, word string) string {
	if i := slices.Index(in.Words, word); i >= 0 && i < len(in.Titles) {
		return p.v.Label(in.Titles[i])
	}
	return plain(word)
}

func inputsOf(name string) []limit.Input {
	for _, d := range limit.All() {
		if d.Name == name {
			return d.Quantities
		}
	}
	return nil
}

func (p *paper) standing(s limit.Status) string {
	v := p.v
	switch s {
	case limit.Published:
		return v.T("published")
	case limit.Reprint:
		return v.T("seen in a reprint")
	case limit.Practice:
		return v.T("common practice, no standard behind it")
	case limit.Memory:
		return v.T("from memory, not looked up")
	case limit.Own:
		return v.T("the maker's own figure")
	case limit.Physics:
		return v.T("arithmetic, nothing to look up")
	}
	return string(s)
}

// photos shows the pairs first, then the rest in the order they were taken.
func (p *paper) photos(check *appraisal.Check, photos []appraisal.Photo, pairs []appraisal.PhotoPair) []Photo {
	var out []Photo
	by := map[string]appraisal.Photo{}
	for _, x := range photos {
		by[x.Hash] = x
	}
	shown := map[string]bool{}
	show := func(x appraisal.Photo, word string) {
		out = append(out, Photo{Key: x.Hash, Caption: p.caption(check, x, word), Missing: slices.Contains(p.ask.Missing, x.Hash)})
		shown[x.Hash] = true
	}
	for _, pair := range pairs {
		before, ok := by[pair.Before]
		after, ok2 := by[pair.After]
		if ok && ok2 && pair.Before != pair.After && !shown[pair.Before] && !shown[pair.After] {
			show(before, p.v.T("before"))
			out[len(out)-1].Pair = true
			show(after, p.v.T("after"))
		}
	}
	for _, x := range photos {
		if !shown[x.Hash] {
			show(x, "")
		}
	}
	return out
}

func (p *paper) caption(check *appraisal.Check, x appraisal.Photo, word string) string {
	s := plain(check.Title)
	if word != "" {
		s = p.v.F("%s, %s", s, word)
	}
	if x.At != "" {
		s = p.v.F("%s, %s", s, p.v.Date(x.At))
	}
	return s
}
