package document

import (
	"slices"
	"strconv"

	"asfound/rubrics/appraisal"
)

// dossier is the record of an appraisal being written: unlike a paper for the seller
// it has the whole file and its judgement.
type dossier struct {
	*paper
	file *appraisal.File
	all  *appraisal.Result
}

// record is the whole appraisal, for the buyer's own file.
func record(jd *appraisal.Judge, f *appraisal.File, p *paper) (*Document, error) {
	all, err := jd.Of(f, appraisal.Ask{Price: p.ask.Price})
	if err != nil {
		return nil, err
	}
	r := &dossier{p, f, all}
	v := p.v
	d := begin(v, Record, v.T("Appraisal record"), p.seen.date)
	d.Foot = p.foot(v.T("Appraisal record, private"))
	d.Add(facts(append(p.identity(), r.listing()...)))
	d.Add(small(v.F("All amounts in this paper are in %s.", f.Shop.Currency)))
	x := &all.Verdict
	d.Add(caution(v, x.Hazard, x.Title+". "+x.Sentence))
	if len(x.Points) > 0 {
		var points []string
		for _, at := range x.Points {
			points = append(points, v.F("%s: %s", plain(at.Title), r.gradeOf(at.Grade)))
		}
		d.Add(list(points))
	}
	d.Add(list(x.Always), tableOf(r.scores()))
	if len(all.Notes) > 0 {
		d.Add(heading(2, v.T("To be known")), list(all.Notes))
	}
	found := p.found()
	d.Add(heading(2, v.T("What was found")))
	if len(found) == 0 {
		d.Add(text(v.T("Nothing was found that is worn or needs repair.")))
	}
	d.Add(found...)
	d.Add(p.preparations()...)
	d.Add(p.sum()...)
	if len(all.Estimate.Lines) > 0 && len(p.repair.Scrap) > 0 {
		d.Add(text(v.T("A finding cannot be put right: in the offer all above the material is lost, whatever these lines cost.")))
	}
	d.Add(r.hidden()...)
	d.Add(r.landing()...)
	d.Add(r.worth()...)
	d.Add(r.offer()...)
	d.Add(r.fit()...)
	d.Add(r.home()...)
	d.Add(p.scope()...)
	d.Add(r.told()...)
	d.Add(r.photoTable()...)
	d.Add(facts([]Fact{{Name: v.T("Judged by the rubric"), Value: v.F("%s, version %s", all.Rubric.ID, strconv.Itoa(all.Rubric.Version))}}))
	return d, nil
}

func (r *dossier) gradeOf(grade *int) string {
	if grade == nil {
		return r.v.T("not checked")
	}
	return gradeWord(r.v, *grade)
}

// listing is what was told about it and where it stands.
func (r *dossier) listing() []Fact {
	v, l, units := r.v, &r.file.Listing, r.ask.Units
	f := told(nil, v.T("Listing"), plain(l.Title))
	size := func(name string, q *appraisal.Quantity) {
		if q != nil {
			f = told(f, name, quantity(v, *q, units))
		}
	}
	if l.Hours > 0 {
		f = told(f, v.T("Hours run"), v.Short(l.Hours, 1))
	}
	size(v.T("Weight"), l.Weight)
	size(v.T("Length"), l.Length)
	size(v.T("Width"), l.Width)
	size(v.T("Height"), l.Height)
	size(v.T("Power"), l.Power)
	size(v.T("Voltage"), l.Voltage)
	size(v.T("Current"), l.Current)
	if l.Phases != 0 {
		f = told(f, v.T("Phases"), strconv.Itoa(l.Phases))
	}
	f = told(f, v.T("Place"), plain(l.Place))
	size(v.T("Distance"), l.Distance)
	if l.Asking != nil {
		f = told(f, v.T("Asking price"), exactly(v, *l.Asking))
	}
	f = told(f, v.T("Kind of seller"), titleOf(v, appraisal.Sellers, l.Seller))
	f = told(f, v.T("Where it was seen"), plain(l.Seen))
	f = told(f, v.T("Text of the listing"), plain(l.Text))
	return told(f, v.T("Note"), plain(l.Note))
}

// told are the facts and answers given, and the notes at points that no finding shows.
func (r *dossier) told() []Block {
	v, rubric := r.v, r.repair.Rubric
	var f []Fact
	for _, fact := range rubric.Facts {
		for _, o := range fact.Options {
			if o.ID == r.file.Facts[fact.ID] {
				f = told(f, plain(fact.Ask), plain(o.Title))
			}
		}
	}
	if rubric.Visit != nil {
		for _, q := range rubric.Visit.Questions {
			f = told(f, plain(q.Ask), plain(r.file.Asked[q.ID]))
		}
	}
	var notes []string
	for i := range r.all.Checks {
		c := &r.all.Checks[i]
		if note := plain(r.file.Findings[c.Check].Note); note != "" && (!c.Applies || c.Grade == nil || *c.Grade > 2) {
			notes = append(notes, v.F("%s: %s", plain(r.checks[c.Check].Title), note))
		}
	}
	var out []Block
	if len(f) > 0 {
		out = append(out, heading(2, v.T("What was told")), facts(f))
	}
	if len(notes) > 0 {
		out = append(out, heading(2, v.T("Notes at other points")), list(notes))
	}
	return out
}

func (r *dossier) scores() Table {
	v := r.v
	t := Table{Title: v.T("Scores"), Columns: []Column{
		{Title: v.T("Score"), Share: 32}, {Title: v.T("Of 100"), Right: true, Share: 14}, {Title: v.T("Could be"), Right: true, Share: 20}, {Title: v.T("Checked, by weight"), Right: true, Share: 18}, {Title: v.T("Points"), Right: true, Share: 16},
	}}
	for _, s := range []struct {
		title string
		score *appraisal.Score
	}{{v.T("Safety points"), &r.all.Safety}, {v.T("Condition"), &r.all.Condition}} {
		value := "–"
		if s.score.Value != nil {
			value = v.Number(*s.score.Value, 1)
		}
		t.Rows = append(t.Rows, Row{Cells: []string{s.title, value, v.F("%s to %s", v.Number(s.score.Low, 1), v.Number(s.score.High, 1)),
			v.Percent(s.score.Coverage / 100), v.F("%s of %s", v.Whole(int64(s.score.Checked)), v.Whole(int64(s.score.Applies)))}})
	}
	return t
}

// photoTable tells of every photo when it was taken and by which hash an altered one
// is noticed; those that no finding shows stand here.
func (r *dossier) photoTable() []Block {
	v := r.v
	t := Table{Title: v.T("Photos with time and hash"), Columns: []Column{{Title: v.T("Of what"), Share: 28}, {Title: v.T("Taken"), Share: 22}, {Title: v.T("SHA-256 of the original"), Share: 50}}}
	var rest []Photo
	row := func(of string, x appraisal.Photo) {
		t.Rows = append(t.Rows, Row{Cells: []string{of, plain(x.At), x.Hash}})
	}
	show := func(of string, x appraisal.Photo) {
		caption := of
		if at := day(x.At); at != "" {
			caption = v.F("%s, %s", of, v.Date(at))
		}
		rest = append(rest, Photo{Key: x.Hash, Caption: caption, Missing: slices.Contains(r.ask.Missing, x.Hash)})
	}
	for _, x := range r.file.Listing.Photos {
		row(v.T("the equipment"), x)
		show(v.T("the equipment"), x)
	}
	for i := range r.all.Checks {
		c := &r.all.Checks[i]
		for _, x := range r.file.Findings[c.Check].Photos {
			row(plain(r.checks[c.Check].Title), x)
			if !c.Applies || c.Grade == nil || *c.Grade > 2 { // the others stand with their finding
				show(plain(r.checks[c.Check].Title), x)
			}
		}
	}
	if len(t.Rows) == 0 {
		return nil
	}
	out := []Block{heading(2, v.T("Photos"))}
	if len(rest) > 0 {
		out = append(out, Block{Kind: "photos", Photos: rest})
	}
	return append(out, tableOf(t))
}
