package document

import "asfound/rubrics/appraisal"

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
	// Missing are photos that are not on this device, by hash.
	Missing []string `json:"missing,omitempty"`
}
