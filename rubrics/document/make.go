package document

import (
	"strings"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/say"
)

// Kinds of papers.
const (
	Estimate   = "estimate"   // for the seller
	Record     = "record"     // all of an appraisal, for oneself
	Jobs       = "jobs"       // what to do, in order, and what to buy
	Comparison = "comparison" // of several appraisals
)

// Make makes the document of an appraisal that is asked for, said by the voice;
// the judge judges in the same language. A bad file or ask is refused with an
// *appraisal.Error that names the field.
func Make(jd *appraisal.Judge, v *say.Voice, f *appraisal.File, ask Ask) (*Document, error) {
	if err := ask.check(v); err != nil {
		return nil, err
	}
	var write func(p *paper) (*Document, error)
	switch ask.Kind {
	case Estimate:
		write = (*paper).estimate
	case Record:
		write = func(p *paper) (*Document, error) { return record(jd, f, p) }
	case Jobs:
		write = (*paper).jobs
	default:
		return nil, unknownKind(v, ask.Kind, Estimate, Record, Jobs)
	}
	if ask.Kind != Estimate { // one's own papers hold all
		ask.LeaveLines, ask.LeaveChecks, ask.LeavePhotos, ask.Notes = nil, nil, nil, nil
		for id := range f.Findings {
			ask.Notes = append(ask.Notes, id)
		}
	}
	p, err := newPaper(jd, v, f, &ask)
	if err != nil {
		return nil, err
	}
	return tidied(write(p))
}

func tidied(d *Document, err error) (*Document, error) {
	if err == nil {
		tidy(d.Blocks)
	}
	return d, err
}

// Compare makes the sheet of several appraisals side by side, each at its asking
// price or at the price given for it. It refuses like Make.
func Compare(jd *appraisal.Judge, v *say.Voice, files []*appraisal.File, prices []*appraisal.Money, ask Ask) (*Document, error) {
	if err := ask.check(v); err != nil {
		return nil, err
	}
	if ask.Kind != Comparison {
		return nil, unknownKind(v, ask.Kind, Comparison)
	}
	c, err := jd.Compare(files, prices)
	if err != nil {
		return nil, err
	}
	return tidied(comparison(v, c, latest(files), &ask), nil)
}

func unknownKind(v *say.Voice, kind string, kinds ...string) error {
	return &appraisal.Error{Field: "kind", What: v.F("no document is called %s", quoted(kind)), Right: v.F("one of %s", strings.Join(kinds, ", "))}
}

// begin is a document with what all have.
func begin(v *say.Voice, kind, title, date string) *Document {
	return &Document{Kind: kind, Language: v.Locale().ID, Title: title, Date: v.Date(date), Page: v.T("Page %s of %s"), Absent: v.T("This photo is not on the device that made the paper.")}
}
