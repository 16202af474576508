package record

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
)

// Refusal is one entry (or, with an empty stamp, a whole row) that was not taken, and why.
type Refusal struct {
	Doc    string `json:"doc"`
	Path   string `json:"path"`
	Stamp  string `json:"stamp"`
	Reason string `json:"reason"`
}

// Read reads one row as sent by a stranger. What is wrong is refused entry by entry and the rest is taken: ok is false
// when nothing at all is left. The row is normal.
func Read(text []byte) (row Row, refused []Refusal, ok bool) {
	var raw struct {
		Doc     string            `json:"doc"`
		Path    string            `json:"path"`
		Entries []json.RawMessage `json:"entries"`
		Seen    []json.RawMessage `json:"seen"`
	}
	refuse := func(stamp string, err error) {
		refused = append(refused, Refusal{long(raw.Doc), long(raw.Path), long(stamp), err.Error()})
	}
	if err := json.Unmarshal(text, &raw); err != nil {
		refuse("", fmt.Errorf("the row is not readable: %s", plain(err)))
		return Row{}, refused, false
	}
	if err := CheckKey(Key{raw.Doc, raw.Path}); err != nil {
		refuse("", err)
		return Row{}, refused, false
	}
	if len(raw.Entries) > MaxDevices || len(raw.Seen) > MaxDevices {
		refuse("", fmt.Errorf("%w: the row has entries of too many devices: at most %d", ErrEntry, MaxDevices))
		return Row{}, refused, false
	}
	row = Row{Doc: raw.Doc, Path: raw.Path}
	for _, text := range raw.Entries {
		var e Entry
		if err := json.Unmarshal(text, &e); err != nil {
			refuse(stampOf(text), fmt.Errorf("the entry is not readable: %s", plain(err)))
		} else if e, err := e.Validate(); err != nil {
			refuse(stampOf(text), err)
		} else {
			row.Entries = append(row.Entries, e)
		}
	}
	for _, text := range raw.Seen {
		var s Stamp
		if json.Unmarshal(text, &s) != nil || s.Check() != nil {
			refuse("", fmt.Errorf("seen: %w: %s", ErrStamp, clip(string(text))))
			return Row{}, refused, false
		}
		row.Seen = append(row.Seen, s)
	}
	if len(row.Entries) == 0 && len(row.Seen) == 0 {
		if len(refused) == 0 {
			refuse("", fmt.Errorf("%w: the row is empty: at least one entry is expected", ErrEntry))
		}
		return Row{}, refused, false
	}
	return Merge(Row{}, row), refused, true
}

// Ahead is the latest stamp in the row that is too far ahead of now (ms), "" for none.
func (r Row) Ahead(now int64) (latest Stamp) {
	look := func(s Stamp) {
		if s.Ahead(now) {
			latest = max(latest, s)
		}
	}
	for _, e := range r.Entries {
		look(e.Stamp) // base and settles are older than it
	}
	for _, s := range r.Seen {
		look(s)
	}
	return latest
}

func stampOf(text []byte) string {
	var e struct {
		Stamp string `json:"stamp"`
	}
	_ = json.Unmarshal(text, &e) // only to name the entry in a refusal
	return e.Stamp
}

// plain puts the JSON package's errors in the user's words.
func plain(err error) string {
	var kind *json.UnmarshalTypeError
	if errors.As(err, &kind) {
		return fmt.Sprintf("%s is a %s: %s is expected", kind.Field, kind.Value, kindWord(kind.Type.Kind().String()))
	}
	return "it is not JSON: " + err.Error()
}

func kindWord(kind string) string {
	switch kind {
	case "string":
		return "a text"
	case "slice":
		return "a list"
	case "struct":
		return "an object"
	}
	return "a " + kind
}

// long shortens what is echoed to a stranger so that a refusal stays small.
func long(s string) string {
	if len(s) <= MaxPathBytes {
		return s
	}
	return strings.ToValidUTF8(s[:MaxPathBytes], "")
}
