// Package pdf draws a Document as a PDF: one way of laying it out, like a workshop
// drawing, the same bytes for the same Document. It reads no file and no clock,
// knows nothing of appraisals, and puts into the file what the Document says
// and nothing else: no author, no program, no date of its own, and of photos the
// pixels alone.
package pdf

import (
	"fmt"

	"asfound/rubrics/document/form"
)

// Page is a size of paper.
type Page string

const (
	Letter Page = "letter" // 8.5 by 11 in
	A4     Page = "a4"     // 210 by 297 mm (ISO 216)
)

// size in points of 1/72 in.
func (p Page) size() (w, h float64, err error) {
	switch p {
	case Letter:
		return 612, 792, nil
	case A4:
		return 595.28, 841.89, nil
	}
	return 0, 0, fmt.Errorf("page %q: say letter or a4", string(p))
}

// Distances from the edges of the page, in points.
const (
	sideMargin = 45.0
	topMargin  = 42.0
	footMargin = 34.0
)

// Render draws the document. Photos gives the JPEG copy of a photo by its key, nil
// where there is none; it is asked once for each. What is no whole JPEG is drawn as
// a photo that is not there. An error names what cannot be used.
func Render(doc form.Document, page Page, photos func(key string) []byte) ([]byte, error) {
	w, h, err := page.size()
	if err != nil {
		return nil, err
	}
	l := layOut(doc, w, h, photos)
	raw, err := l.draw()
	if err != nil {
		return nil, fmt.Errorf("the PDF could not be drawn: %w", err)
	}
	return l.seal(raw)
}

// Uncovered are the characters of a document that its PDF shows as an empty box,
// each once, in the order of reading; emoji and Chinese are among them. Where it is
// not empty, tell so before the PDF is handed over.
func Uncovered(doc form.Document) []string {
	out := []string{}
	seen := map[string]bool{}
	look := func(texts ...string) {
		for _, text := range texts {
			for _, paragraph := range clean(text) {
				all, _ := letters(paragraph, false)
				for _, l := range all {
					if l.typed != "" && !seen[l.typed] {
						seen[l.typed] = true
						out = append(out, l.typed)
					}
				}
			}
		}
	}
	var walk func(list []form.Block)
	walk = func(list []form.Block) {
		for _, b := range list {
			look(b.Word, b.Text)
			for _, f := range b.Facts {
				look(f.Name, f.Value)
			}
			look(b.Items...)
			if b.Table != nil {
				for _, c := range b.Table.Columns {
					look(c.Title)
				}
				for _, r := range b.Table.Rows {
					look(r.Cells...)
				}
			}
			for _, p := range b.Photos {
				look(p.Caption)
			}
			walk(b.Blocks)
		}
	}
	look(doc.Title, doc.Date)
	walk(doc.Blocks)
	look(doc.Absent, doc.Foot, doc.Page)
	return out
}
