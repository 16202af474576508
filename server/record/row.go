package record

import (
	"encoding/json"
	"strconv"
)

// Entry is one edit of one path.
type Entry struct {
	// Value is canonical JSON; null means removed.
	Value json.RawMessage `json:"value"`
	// Stamp is when and by which device.
	Stamp Stamp `json:"stamp"`
	// Base is the stamp of the value this edit replaced, "" for none. A device that replaces its own entry before
	// that was acknowledged carries the old base forward.
	Base Stamp `json:"base"`
	// Settles are the stamps of further values the user saw and settled when choosing; sorted.
	Settles []Stamp `json:"settles,omitempty"`
}

// Key names a row.
type Key struct {
	Doc  string `json:"doc"`
	Path string `json:"path"`
}

// Row is all that is known about one key.
type Row struct {
	Doc  string `json:"doc"`
	Path string `json:"path"`
	// Entries, sorted by stamp, at most one per device. The last one is the winner.
	Entries []Entry `json:"entries"`
	// Seen has per device the highest stamp that any entry had as base or settles; sorted.
	Seen []Stamp `json:"seen"`
}

// Key is the row's key.
func (r Row) Key() Key { return Key{r.Doc, r.Path} }

// Winner is the entry that counts; ok is false for a row without entries.
func (r Row) Winner() (e Entry, ok bool) {
	if len(r.Entries) == 0 {
		return Entry{}, false
	}
	return r.Entries[len(r.Entries)-1], true
}

// Losers are the other entries: made apart from the winner, kept and shown, latest first.
func (r Row) Losers() []Entry {
	var losers []Entry
	for i := len(r.Entries) - 2; i >= 0; i-- {
		losers = append(losers, r.Entries[i])
	}
	return losers
}

// Append writes a normal row (see Merge) as compact JSON, the same bytes for the same row everywhere. It is what is
// stored and what is sent. encoding/json is not used because it rewrites <, > and & inside the values.
func (r Row) Append(b []byte) []byte {
	b = append(b, `{"doc":"`...)
	b = append(b, r.Doc...)
	b = append(b, `","path":"`...)
	b = append(b, r.Path...)
	b = append(b, `","entries":[`...)
	for i, e := range r.Entries {
		if i > 0 {
			b = append(b, ',')
		}
		b = e.append(b)
	}
	b = append(b, `],"seen":`...)
	b = appendStamps(b, r.Seen)
	return append(b, '}')
}

// String is the row's JSON.
func (r Row) String() string {
	if CheckKey(r.Key()) != nil {
		return "row of the malformed key " + strconv.Quote(clip(r.Doc)) + " " + strconv.Quote(clip(r.Path))
	}
	return string(r.Append(nil))
}

func (e Entry) append(b []byte) []byte {
	b = append(b, `{"value":`...)
	b = append(b, e.Value...)
	b = append(b, `,"stamp":"`...)
	b = append(b, e.Stamp...)
	b = append(b, `","base":"`...)
	b = append(b, e.Base...)
	b = append(b, '"')
	if len(e.Settles) > 0 {
		b = append(b, `,"settles":`...)
		b = appendStamps(b, e.Settles)
	}
	return append(b, '}')
}

func appendStamps(b []byte, stamps []Stamp) []byte {
	b = append(b, '[')
	for i, s := range stamps {
		if i > 0 {
			b = append(b, ',')
		}
		b = append(b, '"')
		b = append(b, s...)
		b = append(b, '"')
	}
	return append(b, ']')
}
