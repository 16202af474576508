package door

import (
	"fmt"
	"slices"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/notice"
)

// NoticeRequest asks what the text of a listing tells. Rubric is its kind where it
// is known, Date (YYYY-MM-DD, or empty) the day of asking.
type NoticeRequest struct {
	Text     string `json:"text"`
	Rubric   string `json:"rubric,omitempty"`
	Currency string `json:"currency"`
	Units    string `json:"units"`
	Date     string `json:"date,omitempty"`
	// Own are rubrics besides those of the catalogue, or in their place.
	Own []appraisal.Rubric `json:"own,omitempty"`
}

// Notice is what a text tells, to be confirmed by a person.
type Notice struct {
	Proposals []notice.Proposal `json:"proposals"`
}

// kindsOf gives the kinds of the rubrics, as far as a text can speak of them.
func kindsOf(rubrics []appraisal.Rubric) []notice.Kind {
	out := make([]notice.Kind, len(rubrics))
	for i := range rubrics {
		r := &rubrics[i]
		k := notice.Kind{ID: r.ID, Title: r.Kind, Words: r.Words, Size: notice.Size{Title: r.Capacity.Title, Unit: r.Capacity.Unit, Other: r.Capacity.Other}}
		for _, fact := range r.Facts {
			f := notice.Fact{ID: fact.ID}
			for _, o := range fact.Options {
				f.Options = append(f.Options, notice.Option{ID: o.ID, Title: o.Title, Words: o.Words})
			}
			k.Facts = append(k.Facts, f)
		}
		out[i] = k
	}
	return out
}

// carriedKinds are those of the catalogue.
func (d *Door) carriedKinds() ([]notice.Kind, error) {
	if d.kinds == nil {
		all := make([]appraisal.Rubric, len(d.ids))
		for i, id := range d.ids {
			r, err := d.judge.Rubric(id)
			if err != nil {
				return nil, err
			}
			all[i] = *r
		}
		d.kinds = kindsOf(all)
	}
	return d.kinds, nil
}

func (d *Door) notice(q *NoticeRequest) (*Notice, error) {
	if !slices.Contains(appraisal.Currencies, q.Currency) {
		return nil, &appraisal.Error{Field: "currency", What: fmt.Sprintf("%.40q is no currency kept here", q.Currency), Right: fmt.Sprintf("one of %v", appraisal.Currencies)}
	}
	if q.Units != "inch" && q.Units != "metric" {
		return nil, &appraisal.Error{Field: "units", What: fmt.Sprintf("%.40q is not known", q.Units), Right: "inch or metric"}
	}
	kinds := kindsOf(q.Own)
	carried, err := d.carriedKinds()
	if err != nil {
		return nil, err
	}
	for _, k := range carried {
		if !slices.ContainsFunc(q.Own, func(r appraisal.Rubric) bool { return r.ID == k.ID }) {
			kinds = append(kinds, k)
		}
	}
	all, err := notice.Read(q.Text, notice.Ask{Currency: q.Currency, Units: q.Units, Date: q.Date, Kind: q.Rubric, Kinds: kinds})
	if err != nil {
		return nil, err
	}
	return &Notice{all}, nil
}
