package table

import (
	"slices"
	"strings"
)

// records splits a text into records of cells. A cell in quotes may hold the
// separator, line breaks, and quotation marks written twice; elsewhere a
// quotation mark is a character like any other (12" lathe).
type records struct {
	text      string
	separator byte // 0: the whole line is one cell
	at        int
	line      int // of the next record, from 1
	scratch   []string
}

// record is one row as it stands in the file.
type record struct {
	line  int
	cells []string
	odd   []int // cells whose quotes end in the middle; they are kept as written
	torn  bool  // one of these went on over a line break: rows may have run together
}

// next gives the next record that is not blank; ok is false after the last.
func (r *records) next() (rec record, ok bool, err *Error) {
	for r.at < len(r.text) {
		rec, err = r.one()
		if err != nil {
			return rec, false, err
		}
		if !blank(rec.cells) {
			rec.cells = slices.Clone(rec.cells)
			return rec, true, nil
		}
	}
	return record{}, false, nil
}

func blank(cells []string) bool {
	for _, c := range cells {
		if strings.TrimSpace(c) != "" {
			return false
		}
	}
	return true
}

func (r *records) one() (record, *Error) {
	rec := record{line: r.line, cells: r.scratch[:0]}
	for {
		cell, odd, err := r.cell()
		if err != nil {
			return rec, err
		}
		if odd {
			rec.odd = append(rec.odd, len(rec.cells))
			rec.torn = rec.torn || breaks(cell) > 0
		}
		rec.cells = append(rec.cells, cell)
		if len(rec.cells) > MaxColumns {
			return rec, refuse(rec.line, "there are more than 200 columns", "at most 200")
		}
		if r.at < len(r.text) && r.isSeparator(r.text[r.at]) {
			r.at++
			continue
		}
		if strings.HasPrefix(r.text[r.at:], "\r\n") {
			r.at++
		}
		r.at++ // the line break, or past the end
		r.line++
		r.scratch = rec.cells
		return rec, nil
	}
}

func (r *records) isSeparator(c byte) bool { return c == r.separator && c != 0 }

// ends tells whether a cell ends at i.
func (r *records) ends(i int) bool {
	return i >= len(r.text) || r.text[i] == '\n' || r.text[i] == '\r' || r.isSeparator(r.text[i])
}

// skip goes over blanks.
func (r *records) skip(i int) int {
	for i < len(r.text) && r.text[i] == ' ' {
		i++
	}
	return i
}

// cell reads up to the separator or the end of the line.
func (r *records) cell() (cell string, odd bool, err *Error) {
	start := r.at
	if open := r.skip(start); open < len(r.text) && r.text[open] == '"' {
		end, escaped := r.closing(open)
		if end < 0 {
			return "", false, refuse(r.line, "a quotation mark begins a cell and is never closed", "close it, or delete it")
		}
		inner := r.text[open+1 : end]
		r.line += breaks(inner)
		if after := r.skip(end + 1); r.ends(after) {
			r.at = after
			if escaped {
				inner = strings.ReplaceAll(inner, `""`, `"`)
			}
			return unixBreaks(inner), false, nil
		}
		r.at, odd = end+1, true
	}
	for !r.ends(r.at) {
		r.at++
	}
	return unixBreaks(r.text[start:r.at]), odd, nil
}

// closing finds the quotation mark that closes the one at open, -1 for none.
func (r *records) closing(open int) (end int, escaped bool) {
	for i := open + 1; ; {
		n := strings.IndexByte(r.text[i:], '"')
		if n < 0 {
			return -1, escaped
		}
		i += n
		if i+1 == len(r.text) || r.text[i+1] != '"' {
			return i, escaped
		}
		escaped = true
		i += 2
	}
}

func unixBreaks(s string) string {
	if strings.IndexByte(s, '\r') < 0 {
		return s
	}
	return strings.ReplaceAll(strings.ReplaceAll(s, "\r\n", "\n"), "\r", "\n")
}
