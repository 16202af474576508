package door

import "asfound/rubrics/appraisal"

// PricesReadRequest brings a price book as a table as it was saved (Source is
// base64 in JSON), and the own prices that stand.
type PricesReadRequest struct {
	Source   []byte                     `json:"source"`
	Own      map[string]appraisal.Range `json:"own"`
	Parts    []appraisal.Part           `json:"parts"` // entries of the shop's own
	Currency string                     `json:"currency"`
	Locale   string                     `json:"locale,omitempty"`
}

// PricesWriteRequest asks for the price book as CSV. Date is today, YYYY-MM-DD.
type PricesWriteRequest struct {
	Own      map[string]appraisal.Range `json:"own"`
	Parts    []appraisal.Part           `json:"parts"` // entries of the shop's own
	Currency string                     `json:"currency"`
	Date     string                     `json:"date"`
	Locale   string                     `json:"locale,omitempty"`
}

// PricesWritten is the price book as CSV.
type PricesWritten struct {
	Text string `json:"text"`
}
