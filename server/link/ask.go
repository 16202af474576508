package link

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"slices"

	"asfound/rubrics/document"
	"asfound/server/photo"
	"asfound/server/record"
)

// Ask is a link that is asked for.
type Ask struct {
	// ID is made by who asks, 26 characters as a listing's: asking again with it makes no second link.
	ID      string
	Listing string
	Days    int // 0 is UsualDays
	Lines   []string
	// Document is JSON of a document.Document.
	Document []byte
	// Photos are JPEGs by Photo.Key.
	Photos map[string][]byte
}

// paper is an Ask that was checked.
type paper struct {
	document document.Document
	copies   map[string]Copy
	files    map[string][]byte // by Copy.File
	content  string
}

// check reads all of an Ask. Errors are ErrRefused.
func (a *Ask) check() (p paper, err error) {
	if record.CheckDoc("listing:"+a.ID) != nil {
		return p, refused("id %q: 26 characters 0-9, a-z without i, l, o, u are expected", clip(a.ID))
	}
	if record.CheckDoc("listing:"+a.Listing) != nil {
		return p, refused("listing %q: the id of a listing is expected", clip(a.Listing))
	}
	if a.Days == 0 {
		a.Days = UsualDays
	}
	if a.Days < MinDays || a.Days > MaxDays {
		return p, refused("days is %d: %d to %d are expected", a.Days, MinDays, MaxDays)
	}
	if p.document, err = ReadDocument(a.Document); err != nil {
		return p, err
	}
	about := checker{answerable: map[string]bool{}, keys: map[string]bool{}}
	about.document(&p.document)
	if err := checkLines(a.Lines, &p.document, about.answerable); err != nil {
		return p, err
	}
	if p.copies, p.files, err = checkCopies(a.Photos, about.keys); err != nil {
		return p, err
	}
	p.content, err = contentOf(a, &p)
	return p, err
}

func checkLines(lines []string, doc *document.Document, answerable map[string]bool) error {
	if len(lines) > 0 && doc.Answers == nil {
		return refused("lines: %d may be answered, but the document has no words for answers", len(lines))
	}
	for i, line := range lines {
		if !answerable[line] {
			return refused("lines[%d]: %q is no part of the document that may be answered", i, clip(line))
		}
		if slices.Contains(lines[:i], line) {
			return refused("lines[%d]: %q is there twice", i, line)
		}
	}
	return nil
}

// checkCopies holds the copies to the photos of the document: one for each that is there, and no other.
func checkCopies(photos map[string][]byte, wanted map[string]bool) (map[string]Copy, map[string][]byte, error) {
	if len(photos) > MaxPhotos {
		return nil, nil, refused("%d photos: at most %d", len(photos), MaxPhotos)
	}
	keys := make([]string, 0, len(photos)+len(wanted))
	for key := range wanted {
		keys = append(keys, key)
	}
	for key := range photos {
		if !wanted[key] {
			return nil, nil, refused("photo %s is not in the document: send only what it shows", clip(key))
		}
	}
	slices.Sort(keys) // so that the same fault is told each time
	copies, files := map[string]Copy{}, map[string][]byte{}
	for _, key := range keys {
		b, ok := photos[key]
		if !ok {
			return nil, nil, refused("photo %s is in the document, but no copy of it came", key)
		}
		if len(b) > MaxPhotoBytes {
			return nil, nil, refused("photo %s has %d bytes: at most %d", key, len(b), MaxPhotoBytes)
		}
		bare, size, err := photo.Bare(b, MaxPhotoSide)
		if err != nil {
			return nil, nil, refused("photo %s: %s", key, err)
		}
		sum := sha256.Sum256(bare)
		file := hex.EncodeToString(sum[:])
		copies[key], files[file] = Copy{File: file, Width: size.X, Height: size.Y}, bare
	}
	return copies, files, nil
}

// contentOf is the same for two requests that ask for the same.
func contentOf(a *Ask, p *paper) (string, error) {
	text, err := json.Marshal(struct {
		Listing  string
		Days     int
		Lines    []string
		Document document.Document
		Copies   map[string]Copy
	}{a.Listing, a.Days, a.Lines, p.document, p.copies})
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:]), err
}
