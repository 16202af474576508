package record

import (
	"errors"
	"fmt"
	"slices"
	"strings"
)

// Bounds of a key and a row.
const (
	MaxPathBytes    = 200
	MaxPathSegments = 6
	MaxSegmentBytes = 64
	// MaxDevices bounds the entries, the seen stamps and the settles of one row, far above the ten devices a shop has.
	MaxDevices = 1000
)

// ErrKey is what every error about a doc or path is; ErrEntry what every error about base or settles is.
var (
	ErrKey   = errors.New("not a key")
	ErrEntry = errors.New("not an entry")
)

const listingPrefix, idBytes = "listing:", 26

// CheckDoc tells whether doc is shop, book, comparables, rubrics, decisions or listing:<id> with an id of 26 characters of Crockford's
// base32, lower-case (no i, l, o, u).
func CheckDoc(doc string) error {
	switch doc {
	case "shop", "book", "comparables", "rubrics", "decisions":
		return nil
	}
	id, ok := strings.CutPrefix(doc, listingPrefix)
	if !ok {
		return fmt.Errorf("%w: doc %q is unknown: shop, book, comparables, rubrics, decisions or listing:<id> is expected", ErrKey, clip(doc))
	}
	if len(id) != idBytes || strings.Trim(id, "0123456789abcdefghjkmnpqrstvwxyz") != "" {
		return fmt.Errorf("%w: doc %q: the id must be 26 characters 0-9, a-z without i, l, o, u", ErrKey, clip(doc))
	}
	return nil
}

// CheckPath tells whether path is 1 to 6 segments of a-z, 0-9, _ . - joined with /, each 1 to 64 characters, at most
// 200 in all, none of them . or .. alone.
func CheckPath(path string) error {
	if path == "" || len(path) > MaxPathBytes {
		return fmt.Errorf("%w: path %q has %d characters: 1 to %d are expected", ErrKey, clip(path), len(path), MaxPathBytes)
	}
	segments := 0
	for segment := range strings.SplitSeq(path, "/") {
		segments++
		if segment == "" || len(segment) > MaxSegmentBytes {
			return fmt.Errorf("%w: path %q: each part between slashes must have 1 to %d characters", ErrKey, clip(path), MaxSegmentBytes)
		}
		if segment == "." || segment == ".." {
			return fmt.Errorf("%w: path %q: a part of one or two dots alone is not allowed", ErrKey, clip(path))
		}
		if !isSegment(segment) {
			return fmt.Errorf("%w: path %q: only a-z, 0-9, _ . - are allowed between slashes", ErrKey, clip(path))
		}
	}
	if segments > MaxPathSegments {
		return fmt.Errorf("%w: path %q has %d parts: at most %d", ErrKey, clip(path), segments, MaxPathSegments)
	}
	return nil
}

// CheckKey is CheckDoc and CheckPath.
func CheckKey(k Key) error {
	if err := CheckDoc(k.Doc); err != nil {
		return err
	}
	return CheckPath(k.Path)
}

func isSegment(s string) bool {
	for _, c := range []byte(s) {
		if (c < 'a' || c > 'z') && (c < '0' || c > '9') && c != '_' && c != '.' && c != '-' {
			return false
		}
	}
	return true
}

// Validate gives the entry back with its value canonical and its settles sorted without doubles. A missing value is
// not null: it is refused.
func (e Entry) Validate() (Entry, error) {
	if err := e.Stamp.Check(); err != nil {
		return Entry{}, fmt.Errorf("stamp: %w", err)
	}
	if err := below(e.Stamp, e.Base); e.Base != "" && err != nil {
		return Entry{}, fmt.Errorf("base: %w", err)
	}
	if len(e.Settles) > MaxDevices {
		return Entry{}, fmt.Errorf("%w: %d settled stamps: at most %d", ErrEntry, len(e.Settles), MaxDevices)
	}
	for _, s := range e.Settles {
		if err := below(e.Stamp, s); err != nil {
			return Entry{}, fmt.Errorf("settles: %w", err)
		}
	}
	value, err := Canonical(e.Value)
	if err != nil {
		return Entry{}, fmt.Errorf("value: %w", err)
	}
	e.Value = value
	if len(e.Settles) > 0 {
		e.Settles = slices.Clone(e.Settles)
		slices.Sort(e.Settles)
		e.Settles = slices.Compact(e.Settles)
	} else {
		e.Settles = nil
	}
	return e, nil
}

func below(stamp, older Stamp) error {
	if err := older.Check(); err != nil {
		return err
	}
	if older >= stamp {
		return fmt.Errorf("%w: %s is not older than the entry's own stamp %s", ErrEntry, older, stamp)
	}
	return nil
}
