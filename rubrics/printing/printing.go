// Package printing is what the module for paper answers: a document as a PDF, the
// characters that a PDF cannot show, and a link as a QR code. It takes and gives
// bytes by name, does no I/O, and knows nothing of appraisals.
package printing

import (
	"encoding/json"
	"fmt"

	"rsc.io/qr"

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

// QRRequest asks for a text as a QR code.
type QRRequest struct {
	Text string `json:"text"`
}

// Call answers one call: "pdf" with the file, "uncovered" with a JSON list of
// characters, "qr" with a JSON list of rows, true where it is dark. Photo gives the
// JPEG of the key at an index. It never panics; an error is in the user's words.
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
	case "qr":
		var q QRRequest
		if err := json.Unmarshal(argument, &q); err != nil {
			return nil, fmt.Errorf("the text cannot be read: %w", err)
		}
		modules, err := QR(q.Text)
		if err != nil {
			return nil, err
		}
		return json.Marshal(modules)
	}
	return nil, fmt.Errorf("no call is named %q", name)
}

// QR is a text as a QR code (ISO/IEC 18004) that bears 15 % of damage: rows of
// modules, true where dark, without the quiet zone of four modules around it.
func QR(text string) ([][]bool, error) {
	if text == "" {
		return nil, fmt.Errorf("a QR code needs a text: give a link")
	}
	code, err := qr.Encode(text, qr.M)
	if err != nil {
		return nil, fmt.Errorf("a text of %d bytes does not go into a QR code: give at most 2,331", len(text))
	}
	rows := make([][]bool, code.Size)
	for y := range rows {
		rows[y] = make([]bool, code.Size)
		for x := range rows[y] {
			rows[y][x] = code.Black(x, y)
		}
	}
	return rows, nil
}
