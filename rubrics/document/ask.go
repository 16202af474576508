package document

import (
	"unicode/utf8"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/say"
)

// Ask says which document is wanted of an appraisal and what it may hold.
type Ask struct {
	Kind   string `json:"kind"` // estimate, record, jobs, comparison
	Locale string `json:"locale"`
	// Units that quantities are shown in beside those entered: inch or metric.
	Units string `json:"units"`
	// From and Contact are who looked, To the seller, as they wish to be named.
	From    string `json:"from,omitempty"`
	Contact string `json:"contact,omitempty"`
	To      string `json:"to,omitempty"`
	// Word is the buyer's own word to the seller.
	Word string `json:"word,omitempty"`
	// Price is the one price the buyer chose to state.
	Price *appraisal.Money `json:"price,omitempty"`
	// LeaveLines and LeaveChecks are estimate lines and findings left out by the
	// buyer, LeavePhotos photos by hash.
	LeaveLines  []string `json:"leave_lines,omitempty"`
	LeaveChecks []string `json:"leave_checks,omitempty"`
	LeavePhotos []string `json:"leave_photos,omitempty"`
	// Notes are the checks whose note the seller may read; all others stay private.
	Notes []string `json:"notes,omitempty"`
	// Missing are photos that are not on this device, by hash.
	Missing []string `json:"missing,omitempty"`
}

const (
	mostName = 300
	mostWord = 4000
)

// check refuses what no paper can hold, with an *appraisal.Error that names the field.
func (a *Ask) check(v *say.Voice) error {
	for _, t := range []struct {
		field, text string
		most        int
	}{{"from", a.From, mostName}, {"contact", a.Contact, mostName}, {"to", a.To, mostName}, {"word", a.Word, mostWord}} {
		if n := utf8.RuneCountInString(t.text); n > t.most {
			return &appraisal.Error{Field: t.field, What: v.F("it has %s characters", v.Whole(int64(n))), Right: v.F("at most %s", v.Whole(int64(t.most)))}
		}
	}
	if a.Units != "inch" && a.Units != "metric" {
		return &appraisal.Error{Field: "units", What: v.F("%s is not known", quoted(a.Units)), Right: v.T("inch or metric")}
	}
	if a.Price != nil {
		return appraisal.CheckPrice("price", *a.Price)
	}
	return nil
}
