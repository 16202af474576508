// Package printing is what the module for paper answers: a document as a PDF, and
// the characters that a PDF cannot show. It takes and gives bytes by name, does no I/O, and knows nothing of appraisals.
package printing

import (
	"encoding/json"
	"fmt"

	"asfound/rubrics/document/form"
	"asfound/rubrics/document/pdf"
)

// PDFRequest asks for a document as a PDF. Keys are those of the photos that come
// with it, in their order.
type PDFRequest struct {
	Document form.Document `json:"document"`
	Page     string        `json:"page"` // letter or a4
	Keys     []string      `json:"keys"`
}

// UncoveredRequest asks which characters a PDF of the document would not show.
type UncoveredRequest struct {
	Document form.Document `json:"document"`
}

// Call answers one call: "pdf" with the file, "uncovered" with a JSON list of
// characters. Photo gives the JPEG of the key at an index. It never panics; an error is in the user's words.
func Call(name string, argument []byte, photo func(i int) []byte) (out []byte, err error) {
	defer func() {
		if r := recover(); r != nil {
			out, err = nil, fmt.Errorf("the paper met a fault of its own (%v); nothing that you entered is lost", r)
		}
	}()
	switch name {
	case "pdf":
		var q PDFRequest
		if err := json.Unmarshal(argument, &q); err != nil {
			return nil, fmt.Errorf("the document cannot be read: %w", err)
		}
		at := make(map[string]int, len(q.Keys))
		for i, key := range q.Keys {
			at[key] = i
		}
		return pdf.Render(q.Document, pdf.Page(q.Page), func(key string) []byte {
			if i, ok := at[key]; ok {
				return photo(i)
			}
			return nil
		})
	case "uncovered":
		var q UncoveredRequest
		if err := json.Unmarshal(argument, &q); err != nil {
			return nil, fmt.Errorf("the document cannot be read: %w", err)
		}
		return json.Marshal(pdf.Uncovered(q.Document))
	}
	return nil, fmt.Errorf("no call is named %q", name)
}
