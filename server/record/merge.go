package record

import (
	"bytes"
	"cmp"
	"slices"
	"strings"
)

// Merge joins what two sides know about one row. It is commutative, associative and idempotent on normal rows, and
// its result is normal: per device the entry with the highest stamp and the highest stamp seen, base and settles of
// every entry counted as seen, no entry at or below what was seen of its device, all sorted. Merge(Row{}, r) makes r
// normal. Both rows must have the same key (an empty one takes the other's) and hold checked entries.
func Merge(a, b Row) Row {
	out := Row{Doc: cmp.Or(a.Doc, b.Doc), Path: cmp.Or(a.Path, b.Path), Entries: []Entry{}, Seen: []Stamp{}}
	for _, r := range [2]Row{a, b} {
		for _, s := range r.Seen {
			out.Seen = raise(out.Seen, s)
		}
		for _, e := range r.Entries {
			out.Entries = keep(out.Entries, e)
			out.Seen = raise(out.Seen, e.Base)
			for _, s := range e.Settles {
				out.Seen = raise(out.Seen, s)
			}
		}
	}
	out.Entries = slices.DeleteFunc(out.Entries, func(e Entry) bool { return replaced(out.Seen, e.Stamp) })
	slices.SortFunc(out.Entries, CompareEntries)
	slices.Sort(out.Seen)
	return out
}

// CompareEntries orders entries by stamp. Two entries with one stamp are a fault; they are ordered by canonical value
// bytes, then base, then settles joined with commas, so that every side keeps the same one.
func CompareEntries(a, b Entry) int {
	if c := cmp.Compare(a.Stamp, b.Stamp); c != 0 {
		return c
	}
	if c := bytes.Compare(a.Value, b.Value); c != 0 {
		return c
	}
	if c := cmp.Compare(a.Base, b.Base); c != 0 {
		return c
	}
	return cmp.Compare(joined(a.Settles), joined(b.Settles))
}

// keep holds the greatest entry per device. A row has a handful of devices, so a walk is the fastest search.
func keep(entries []Entry, e Entry) []Entry {
	for i := range entries {
		if entries[i].Stamp.Device() == e.Stamp.Device() {
			if CompareEntries(entries[i], e) < 0 {
				entries[i] = e
			}
			return entries
		}
	}
	return append(entries, e)
}

// raise holds the highest stamp per device.
func raise(seen []Stamp, s Stamp) []Stamp {
	if s == "" {
		return seen
	}
	for i := range seen {
		if seen[i].Device() == s.Device() {
			seen[i] = max(seen[i], s)
			return seen
		}
	}
	return append(seen, s)
}

func replaced(seen []Stamp, s Stamp) bool {
	return slices.ContainsFunc(seen, func(t Stamp) bool { return t.Device() == s.Device() && s <= t })
}

func joined(stamps []Stamp) string {
	var b strings.Builder
	for i, s := range stamps {
		if i > 0 {
			b.WriteByte(',')
		}
		b.WriteString(string(s))
	}
	return b.String()
}
