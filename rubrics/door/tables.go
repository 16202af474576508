package door

import (
	"encoding/json"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/sheet"
)

// TablesRequest asks for everything as tables: of files, each at its asking price or
// at the price given for it, with the sides of their comparison if Compared says so,
// and of decisions.
type TablesRequest struct {
	Files     []json.RawMessage  `json:"files"`
	Prices    []*appraisal.Money `json:"prices,omitempty"`
	Compared  bool               `json:"compared,omitempty"`
	Decisions []sheet.Decision   `json:"decisions,omitempty"`
	Locale    string             `json:"locale,omitempty"`
}

// CSVRequest asks for a table as CSV.
type CSVRequest struct {
	Table  sheet.Table `json:"table"`
	Locale string      `json:"locale,omitempty"`
}

// CSVWritten is a table as CSV.
type CSVWritten struct {
	Text string `json:"text"`
}

func (c *call) tables(argument []byte) ([]sheet.Table, error) {
	var q TablesRequest
	if err := c.read(argument, &q, &q.Locale); err != nil {
		return nil, err
	}
	files, err := decoded(q.Files)
	if err != nil {
		return nil, err
	}
	return sheet.Make(c.speaking(), c.voice, sheet.From{Files: files, Prices: q.Prices, Decisions: q.Decisions, Compared: q.Compared})
}
