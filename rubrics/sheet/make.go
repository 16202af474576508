package sheet

import (
	"slices"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/say"
)

// From is what tables are made of.
type From struct {
	Files []*appraisal.File
	// Prices in place of the asking prices, one a file, nil for the asking price.
	Prices    []*appraisal.Money
	Decisions []Decision
	// Compared asks for the sides of a comparison of all files.
	Compared bool
}

// Decision is what was decided about listings, as it was written down.
type Decision struct {
	Date     string           `json:"date"`
	Chosen   string           `json:"chosen,omitempty"` // title of the listing bought; "" for none
	Price    *appraisal.Money `json:"price,omitempty"`
	Currency string           `json:"currency,omitempty"`
	Reason   string           `json:"reason,omitempty"`
	// Sides are the titles of the listings that stood beside each other, best first.
	Sides     []string `json:"sides,omitempty"`
	Withdrawn string   `json:"withdrawn,omitempty"` // day, where it stands no more
}

// appraised is one file with its judgement.
type appraised struct {
	file   *appraisal.File
	rubric *appraisal.Rubric
	result *appraisal.Result
}

// sheets are tables being filled.
type sheets struct {
	v   *say.Voice
	jd  *appraisal.Judge
	all []appraised
}

// Make makes all tables of some appraisals; those with no rows are left out. A file
// that cannot be judged is refused with an *appraisal.Error.
func Make(jd *appraisal.Judge, v *say.Voice, from From) ([]Table, error) {
	s := &sheets{v: v, jd: jd}
	for i, f := range from.Files {
		var price *appraisal.Money
		if i < len(from.Prices) {
			price = from.Prices[i]
		}
		result, err := jd.Of(f, appraisal.Ask{Price: price})
		if err != nil {
			return nil, err
		}
		rubric, err := jd.RubricOf(f)
		if err != nil {
			return nil, err
		}
		s.all = append(s.all, appraised{f, rubric, result})
	}
	out := []Table{s.listings(), s.findings(), s.lines(), s.shopping(), s.comparables(), s.prices(), s.photos()}
	if from.Compared {
		c, err := jd.Compare(from.Files, from.Prices)
		if err != nil {
			return nil, err
		}
		out = append(out, s.sides(c))
	}
	out = append(out, s.decisions(from.Decisions))
	return slices.DeleteFunc(out, func(t Table) bool { return len(t.Rows) == 0 }), nil
}

func (s *sheets) choice(choices []appraisal.Choice, id string) Cell {
	for _, c := range choices {
		if c.ID == id {
			return s.v.Label(c.Title)
		}
	}
	return words(id)
}
