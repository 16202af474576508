package link

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"asfound/rubrics/document"
	"asfound/server/photo"
	"asfound/server/record"
)

// Bounds of a document, far above what sixty lines with eighty photos need.
const (
	maxBlocks  = 4000
	maxDepth   = 4
	maxRows    = 4000
	maxColumns = 12
	maxTitle   = 500
	maxText    = 8000
	maxShort   = 2000
)

// ReadDocument reads and checks the JSON of a document that is to be given to a seller. Errors are ErrRefused and name
// the place.
func ReadDocument(text []byte) (doc document.Document, err error) {
	if len(text) > MaxDocumentBytes {
		return doc, refused("the document has %d bytes: at most %d", len(text), MaxDocumentBytes)
	}
	d := json.NewDecoder(bytes.NewReader(text))
	// What the page does not show must not be kept either: a field that is not known may hold anything.
	d.DisallowUnknownFields()
	if err := d.Decode(&doc); err != nil {
		return doc, refused("the document cannot be read: %s", plain(err))
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		return doc, refused("something stands after the document's end")
	}
	c := checker{answerable: map[string]bool{}, keys: map[string]bool{}}
	c.document(&doc)
	return doc, c.err
}

func plain(err error) string {
	var kind *json.UnmarshalTypeError
	if errors.As(err, &kind) {
		return fmt.Sprintf("%s is a %s, which is not expected there", kind.Field, kind.Value)
	}
	return strings.TrimPrefix(err.Error(), "json: ")
}

func refused(pattern string, args ...any) error {
	return fmt.Errorf("%w: %s", ErrRefused, fmt.Sprintf(pattern, args...))
}

// checker walks a document; the first error counts.
type checker struct {
	err          error
	blocks, rows int
	answerable   map[string]bool // ids of parts
	keys         map[string]bool // of the photos that are there
}

func (c *checker) fail(pattern string, args ...any) {
	if c.err == nil {
		c.err = refused(pattern, args...)
	}
}

func (c *checker) text(place, text string, most int) {
	if n := utf8.RuneCountInString(text); n > most {
		c.fail("%s has %d characters: at most %d", place, n, most)
	}
	for _, r := range text {
		if r < ' ' && r != '\n' && r != '\t' || r >= 0x7f && r < 0xa0 {
			c.fail("%s holds a control character (%U): leave it out", place, r)
		}
	}
}

func (c *checker) oneOf(place, text string, allowed ...string) {
	for _, a := range allowed {
		if text == a {
			return
		}
	}
	named := strings.Join(allowed, ", ")
	if allowed[0] == "" {
		named = "nothing" + named
	}
	c.fail("%s is %q: %s is expected", place, clip(text), named)
}

func (c *checker) document(d *document.Document) {
	// The other kinds are for oneself: they hold worth and odds.
	c.oneOf("kind", d.Kind, "estimate")
	if !isLanguage(d.Language) {
		c.fail("language is %q: a tag as en-US is expected", clip(d.Language))
	}
	if d.Title == "" {
		c.fail("title is missing")
	}
	c.text("title", d.Title, maxTitle)
	c.text("date", d.Date, maxTitle)
	c.text("foot", d.Foot, maxShort)
	c.text("page", d.Page, maxTitle)
	c.text("absent", d.Absent, maxTitle)
	if len(d.Blocks) == 0 {
		c.fail("blocks: there is none, so nothing to show")
	}
	c.inside("blocks", d.Blocks, 1)
	if w := d.Answers; w != nil {
		for _, a := range []struct {
			name, text string
			needed     bool
		}{
			{"lead", w.Lead, false}, {"agree", w.Agree, true}, {"disagree", w.Disagree, true}, {"done", w.Done, true},
			{"word", w.Word, true}, {"photo", w.Photo, true}, {"send", w.Send, true}, {"sent", w.Sent, true}, {"yours", w.Yours, true},
			{"expires", w.Expires, false}, {"too_long", w.TooLong, true}, {"no_photo", w.NoPhoto, true}, {"no_answer", w.NoAnswer, true},
		} {
			if a.needed && a.text == "" {
				c.fail("answers.%s is missing: the page would say nothing there", a.name)
			}
			c.text("answers."+a.name, a.text, maxShort)
		}
	}
}

func (c *checker) inside(place string, blocks []document.Block, depth int) {
	if depth > maxDepth {
		c.fail("%s: parts lie %d deep: at most %d", place, depth, maxDepth)
		return
	}
	for i := range blocks {
		if c.blocks++; c.blocks > maxBlocks {
			c.fail("more than %d blocks", maxBlocks)
		}
		if c.err != nil {
			return
		}
		c.block(fmt.Sprintf("%s[%d]", place, i), &blocks[i], depth)
	}
}

func (c *checker) block(place string, b *document.Block, depth int) {
	c.oneOf(place+".kind", b.Kind, "heading", "text", "facts", "list", "table", "caution", "photos", "part")
	c.text(place+".text", b.Text, maxText)
	c.text(place+".word", b.Word, maxTitle)
	c.oneOf(place+".tone", b.Tone, "", "small", "strong")
	if len(b.Facts) > maxRows || len(b.Items) > maxRows || len(b.Photos) > MaxPhotos {
		c.fail("%s has too many entries", place)
		return
	}
	for i, f := range b.Facts {
		c.text(fmt.Sprintf("%s.facts[%d]", place, i), f.Name+f.Value, maxShort)
	}
	for i, item := range b.Items {
		c.text(fmt.Sprintf("%s.items[%d]", place, i), item, maxShort)
	}
	switch b.Kind {
	case "heading":
		if b.Level < 1 || b.Level > 3 {
			c.fail("%s.level is %d: 1 to 3 is expected", place, b.Level)
		}
	case "caution":
		c.oneOf(place+".signal", b.Signal, "danger", "warning", "caution", "notice")
	case "table":
		if b.Table == nil {
			c.fail("%s.table is missing", place)
		} else {
			c.table(place+".table", b.Table)
		}
	case "photos":
		c.photos(place, b.Photos)
	case "part":
		c.part(place, b)
		c.inside(place+".blocks", b.Blocks, depth+1)
	}
	if b.Kind != "part" && len(b.Blocks) > 0 || b.Kind != "table" && b.Table != nil || b.Kind != "photos" && len(b.Photos) > 0 ||
		b.Kind != "facts" && len(b.Facts) > 0 || b.Kind != "list" && len(b.Items) > 0 ||
		b.Kind != "part" && (b.ID != "" || b.Answer) || b.Kind != "caution" && b.Signal+b.Word != "" ||
		b.Kind != "heading" && b.Kind != "text" && b.Kind != "caution" && b.Text != "" {
		c.fail("%s holds what a %s does not show", place, b.Kind)
	}
}

func (c *checker) part(place string, b *document.Block) {
	c.text(place+".id", b.ID, maxTitle)
	if !b.Answer {
		return
	}
	// An answer is a row under this id.
	if strings.Contains(b.ID, "/") || record.CheckPath(b.ID) != nil {
		c.fail("%s.id is %q: 1 to 64 characters a-z, 0-9, _ . - are expected", place, clip(b.ID))
	}
	if c.answerable[b.ID] {
		c.fail("%s.id: %q is there twice", place, b.ID)
	}
	c.answerable[b.ID] = true
}

func (c *checker) table(place string, t *document.Table) {
	c.text(place+".title", t.Title, maxShort)
	if len(t.Columns) < 1 || len(t.Columns) > maxColumns {
		c.fail("%s has %d columns: 1 to %d are expected", place, len(t.Columns), maxColumns)
		return
	}
	sum := 0
	for i, col := range t.Columns {
		c.text(fmt.Sprintf("%s.columns[%d].title", place, i), col.Title, maxTitle)
		if col.Share < 1 || col.Share > 100 {
			c.fail("%s.columns[%d].share is %d: 1 to 100 is expected", place, i, col.Share)
		}
		sum += col.Share
	}
	if sum != 100 {
		c.fail("%s: the shares of the columns sum to %d: 100 is expected", place, sum)
	}
	for i, row := range t.Rows {
		if c.rows++; c.rows > maxRows {
			c.fail("more than %d rows", maxRows)
			return
		}
		at := fmt.Sprintf("%s.rows[%d]", place, i)
		c.oneOf(at+".kind", row.Kind, "", "group", "total")
		if len(row.Cells) != len(t.Columns) {
			c.fail("%s has %d cells: one for each of the %d columns is expected", at, len(row.Cells), len(t.Columns))
		}
		for _, cell := range row.Cells {
			c.text(at, cell, maxShort)
		}
	}
}

func (c *checker) photos(place string, photos []document.Photo) {
	for i, p := range photos {
		at := fmt.Sprintf("%s.photos[%d]", place, i)
		c.text(at+".caption", p.Caption, maxShort)
		if err := photo.CheckName(p.Key); err != nil {
			c.fail("%s.key: 64 digits 0-9 and a-f are expected", at)
			return
		}
		if !p.Missing {
			c.keys[p.Key] = true
		}
		if p.Pair && i+1 == len(photos) {
			c.fail("%s.pair: no photo comes after it", at)
		}
	}
}

// isLanguage tells whether a tag has the shape of BCP 47: letters, then parts of letters and digits.
func isLanguage(tag string) bool {
	for i, part := range strings.Split(tag, "-") {
		if len(part) < 2 || len(part) > 8 || i > 4 {
			return false
		}
		for _, r := range part {
			letter := r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
			if !letter && (i == 0 || r < '0' || r > '9') {
				return false
			}
		}
	}
	return true
}

func clip(s string) string {
	if len(s) <= 60 {
		return s
	}
	return strings.ToValidUTF8(s[:60], "") + "…"
}
