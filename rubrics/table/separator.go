package table

import (
	"strings"

	"asfound/rubrics/say"
)

// separators in the order they win a draw: a comma stands in more texts than the
// others do.
var separators = []byte{'\t', ';', '|', ','}

// sampled is how many records decide on the separator.
const sampled = 30

// separator finds what stands between the cells: what the first line says
// ("sep=;", as spreadsheets write it), or what splits the first records most
// evenly. begin is where the table begins; 0 means that there is one column.
func separator(text string) (found byte, begin int, err *Error) {
	first := text
	if i := strings.IndexAny(text, "\r\n"); i >= 0 {
		first = text[:i]
	}
	if said := strings.Trim(first, `"`); len(said) == 5 && strings.EqualFold(said[:4], "sep=") {
		for _, c := range separators {
			if said[4] == c {
				return c, len(first), nil
			}
		}
		return 0, 0, refuse(1, say.Later("%s names a separator that is not read", quote(first)), "a comma, semicolon, tab or vertical bar")
	}
	share, width := 0.0, 0
	for _, c := range separators {
		if s, w := evenness(text, c); w > 1 && (s > share || s == share && w > width) {
			found, share, width = c, s, w
		}
	}
	if share <= 0.5 {
		err = untitled(text)
	}
	return found, 0, err
}

// evenness is the share of the first records that have as many cells as the
// first of all, and how many that are.
func evenness(text string, c byte) (share float64, width int) {
	r := records{text: text, separator: c, line: 1}
	same, all := 0, 0
	for all < sampled {
		rec, ok, err := r.next()
		if !ok && err == nil {
			break
		}
		all++
		if all == 1 {
			width = len(rec.cells)
		}
		if err != nil {
			break
		}
		if len(rec.cells) == width {
			same++
		}
	}
	if all == 0 {
		return 0, 0
	}
	// A first record that cannot be read is better than none: Read says why.
	return max(float64(same)/float64(all), 1e-9), width
}

// untitled refuses a table under a line that names no columns, such as a title.
// Two cells prove nothing there: they may be one number with a comma.
func untitled(text string) *Error {
	for _, c := range separators {
		r := records{text: text, separator: c, line: 1}
		wide, all := 0, 0
		first, _, _ := r.next()
		for all < sampled {
			rec, ok, err := r.next()
			if !ok || err != nil {
				break
			}
			all++
			if len(rec.cells) > max(2, len(first.cells)) {
				wide++
			}
		}
		if wide > all/2 {
			return refuse(first.line, "the lines below have more columns", "the first line must name them")
		}
	}
	return nil
}
