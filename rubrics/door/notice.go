package door

import (
	"encoding/json"
	"slices"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/notice"
	"asfound/rubrics/say"
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
	Own    []appraisal.Rubric `json:"own,omitempty"`
	Locale string             `json:"locale,omitempty"`
}

// Notice is what a text tells, to be confirmed by a person.
type Notice struct {
	Proposals []notice.Proposal `json:"proposals"`
}

// spoken is what a text can speak of a rubric; the rest of it need not be read.
type spoken struct {
	ID       string             `json:"id"`
	Kind     string             `json:"kind"`
	Words    []string           `json:"words"`
	Capacity appraisal.Capacity `json:"capacity"`
	Facts    []appraisal.Fact   `json:"facts"`
}

func (s *spoken) kind() notice.Kind {
	k := notice.Kind{ID: s.ID, Title: s.Kind, Words: s.Words, Size: notice.Size{Title: s.Capacity.Title, Unit: s.Capacity.Unit, Other: s.Capacity.Other}}
	for _, fact := range s.Facts {
		f := notice.Fact{ID: fact.ID}
		for _, o := range fact.Options {
			f.Options = append(f.Options, notice.Option{ID: o.ID, Title: o.Title, Words: o.Words})
		}
		k.Facts = append(k.Facts, f)
	}
	return k
}

// kindsFor gives the kinds a text may speak of: the one that is known, or all.
func (d *tongue) kindsFor(q *NoticeRequest) ([]notice.Kind, error) {
	var out []notice.Kind
	own := map[string]bool{}
	for i := range q.Own {
		r := &q.Own[i]
		own[r.ID] = true
		out = append(out, (&spoken{r.ID, r.Kind, r.Words, r.Capacity, r.Facts}).kind())
	}
	if raw, ok := d.raw[q.Rubric]; ok && !own[q.Rubric] {
		var s spoken
		if err := json.Unmarshal(raw, &s); err != nil {
			return nil, err
		}
		return []notice.Kind{s.kind()}, nil
	}
	if len(d.kinds) == 0 {
		for _, id := range d.ids {
			var s spoken
			if err := json.Unmarshal(d.raw[id], &s); err != nil {
				return nil, err
			}
			d.kinds = append(d.kinds, s.kind())
		}
	}
	for _, k := range d.kinds {
		if !own[k.ID] {
			out = append(out, k)
		}
	}
	return out, nil
}

func (d *call) notice(q *NoticeRequest) (*Notice, error) {
	if !slices.Contains(appraisal.Currencies, q.Currency) {
		return nil, appraisal.Refuse("currency", say.Later("one of %v", appraisal.Currencies), say.Later("%.40q is no currency kept here", q.Currency))
	}
	if q.Units != "inch" && q.Units != "metric" {
		return nil, appraisal.Refuse("units", say.Later("inch or metric"), say.Later("%.40q is not known", q.Units))
	}
	kinds, err := d.kindsFor(q)
	if err != nil {
		return nil, err
	}
	all, err := notice.Read(q.Text, notice.Ask{Currency: q.Currency, Units: q.Units, Date: q.Date, Kind: q.Rubric, Kinds: kinds, Voice: d.voice})
	if err != nil {
		return nil, err
	}
	return &Notice{all}, nil
}
