package table

import "strings"

// Write writes a table as CSV (RFC 4180): commas, CR LF, quotation marks where a
// cell needs them. A cell that a spreadsheet would run as a formula gets an
// apostrophe before it (OWASP, CSV Injection), which Bare takes off again.
func Write(columns []string, rows [][]string) string {
	var b strings.Builder
	line := func(cells []string) {
		for i, c := range cells {
			if i > 0 {
				b.WriteByte(',')
			}
			writeCell(&b, c)
		}
		b.WriteString("\r\n")
	}
	line(columns)
	for _, row := range rows {
		line(row)
	}
	return b.String()
}

func writeCell(b *strings.Builder, c string) {
	if runs(c) {
		c = "'" + c
	}
	if !strings.ContainsAny(c, "\",;\t|\r\n") && c == strings.TrimSpace(c) {
		b.WriteString(c)
		return
	}
	b.WriteByte('"')
	b.WriteString(strings.ReplaceAll(c, `"`, `""`))
	b.WriteByte('"')
}

// runs tells whether a spreadsheet may take a cell for a formula: it begins with
// one of the marks of one, in either width, and is no plain number. Spreadsheets
// pass over blanks before it.
func runs(c string) bool {
	s := strings.TrimLeft(c, " \t\r\n\u00a0\u3000")
	for _, m := range []string{"=", "+", "-", "@", "＝", "＋", "－", "＠"} {
		if strings.HasPrefix(s, m) {
			return !plainNumber(c)
		}
	}
	return s != c && strings.TrimLeft(c, " ") != s // a tab or break of its own begins the cell
}

func plainNumber(c string) bool {
	whole, frac, dot := strings.Cut(strings.TrimPrefix(c, "-"), ".")
	return allDigits(whole) && (!dot || allDigits(frac))
}

// Bare takes off the apostrophe that Write put before a cell.
func Bare(c string) string {
	if rest, ok := strings.CutPrefix(c, "'"); ok && runs(rest) {
		return rest
	}
	return c
}
