package door

import (
	"encoding/json"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/document"
)

// DocumentRequest asks for a document of one file, or of several that are compared,
// each at its asking price or at the price given for it. It is said in ask.locale.
type DocumentRequest struct {
	File   json.RawMessage    `json:"file,omitempty"`
	Files  []json.RawMessage  `json:"files,omitempty"`
	Prices []*appraisal.Money `json:"prices,omitempty"`
	Ask    document.Ask       `json:"ask"`
}

func (c *call) document(argument []byte) (*document.Document, error) {
	var q DocumentRequest
	if err := c.read(argument, &q, &q.Ask.Locale); err != nil {
		return nil, err
	}
	judge, voice, err := c.door.judgeFor(q.Ask.Locale)
	if err != nil {
		return nil, err
	}
	if q.Ask.Kind == document.Comparison {
		files, err := decoded(q.Files)
		if err != nil {
			return nil, err
		}
		return document.Compare(judge, voice, files, q.Prices, q.Ask)
	}
	doc, err := appraisal.Decode(q.File)
	if err != nil {
		return nil, err
	}
	return document.Make(judge, voice, &doc.File, q.Ask)
}

// decoded reads several files; an error names which.
func decoded(sources []json.RawMessage) ([]*appraisal.File, error) {
	files := make([]*appraisal.File, len(sources))
	for i, src := range sources {
		doc, err := appraisal.Decode(src)
		if err != nil {
			return nil, ofListing{i + 1, err}
		}
		files[i] = &doc.File
	}
	return files, nil
}
