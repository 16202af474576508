package document

import (
	"strconv"
	"strings"
	"unicode"
)

// plain makes a text that people entered harmless on paper: one line, no control
// characters, and none of the marks that turn the direction of what follows. Words
// of any script stay as they are.
func plain(s string) string {
	return strings.Join(strings.FieldsFunc(strings.Map(printable, s), func(c rune) bool { return c == ' ' }), " ")
}

// tidy does so to every text of some blocks: sentences of the judgement quote names.
func tidy(blocks []Block) {
	for i := range blocks {
		b := &blocks[i]
		b.Text = plain(b.Text)
		for j := range b.Facts {
			b.Facts[j] = Fact{Name: plain(b.Facts[j].Name), Value: plain(b.Facts[j].Value)}
		}
		items := make([]string, len(b.Items)) // some are the judgement's own
		for j, s := range b.Items {
			items[j] = plain(s)
		}
		if len(items) > 0 {
			b.Items = items
		}
		for j := range b.Photos {
			b.Photos[j].Caption = plain(b.Photos[j].Caption)
		}
		if t := b.Table; t != nil {
			t.Title = plain(t.Title)
			for j := range t.Columns {
				t.Columns[j].Title = plain(t.Columns[j].Title)
			}
			for j := range t.Rows {
				for k := range t.Rows[j].Cells {
					t.Rows[j].Cells[k] = plain(t.Rows[j].Cells[k])
				}
			}
		}
		tidy(b.Blocks)
	}
}

// lines does so and keeps the lines of the text, empty ones left out.
func lines(s string) []string {
	var out []string
	for _, l := range strings.Split(strings.ReplaceAll(s, "\r", "\n"), "\n") {
		if l = plain(l); l != "" {
			out = append(out, l)
		}
	}
	return out
}

func printable(c rune) rune {
	switch {
	case c >= '\u202a' && c <= '\u202e', c >= '\u2066' && c <= '\u2069', c == '\u200e', c == '\u200f', c == '\u061c', c == '\ufeff':
		return -1
	case c == '\t', c == '\u2028', c == '\u2029', unicode.IsControl(c):
		return ' '
	}
	return c
}

// quoted shows an entry in a message, cut where it is long.
func quoted(s string) string {
	if r := []rune(s); len(r) > 40 {
		s = string(r[:40]) + "..."
	}
	return strconv.Quote(s)
}
