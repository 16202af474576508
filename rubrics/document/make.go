package document

import (
	"strings"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/say"
)

// Kinds of papers that are made of one appraisal.
const (
	Estimate = "estimate"
)

// Make makes the document of an appraisal that is asked for, said by the voice;
// the judge judges in the same language. A bad file or ask is refused with an
// *appraisal.Error that names the field.
func Make(jd *appraisal.Judge, v *say.Voice, f *appraisal.File, ask Ask) (*Document, error) {
	if err := ask.check(v); err != nil {
		return nil, err
	}
	if ask.Kind == Estimate {
		return estimate(jd, v, f, &ask)
	}
	return nil, &appraisal.Error{Field: "kind", What: v.F("no document is called %s", quoted(ask.Kind)), Right: v.F("one of %s", strings.Join([]string{Estimate}, ", "))}
}

// begin is a document with what all have.
func begin(v *say.Voice, kind, title, date string) *Document {
	return &Document{Kind: kind, Language: v.Locale().ID, Title: title, Date: v.Date(date), Page: v.T("Page %s of %s")}
}
