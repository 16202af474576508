package pdf

import (
	"strings"

	"asfound/rubrics/document/form"
)

const (
	inset     = 4.0  // of a cell's text from its column's edge
	narrowest = 34.0 // a column below that is no column
)

// table sets a table with its head on every page. One with more columns than a page
// has room for is set as a list of its cells instead.
func (s *sheet) table(t *form.Table) {
	columns, rows := squared(t)
	if len(columns) == 0 {
		return
	}
	widths := s.columnWidths(columns, rows)
	if widths == nil {
		s.stacked(columns, rows)
		return
	}
	s.within("Table", func(n int) {
		s.parts[n].alt = strings.Join(clean(t.Title), " ")
		at := make([]float64, len(columns)+1)
		for i, w := range widths {
			at[i+1] = at[i] + w
		}
		cells := func(tr int, role string, texts []string, st style) []cellOf {
			out := make([]cellOf, len(texts))
			for i, text := range texts {
				out[i] = cellOf{wrap(text, st, widths[i]-2*inset), st, at[i] + inset, widths[i] - 2*inset, columns[i].Right, s.parts.add(tr, role)}
				s.parts[out[i].part].column = role == "TH"
			}
			return out
		}
		var top []strip
		if titles := titlesOf(columns); titles != nil {
			s.within("TR", func(tr int) {
				top = s.row(cells(tr, "TH", titles, head), rowLook{2, 3, func(_ bool, h float64) []ink {
					return []ink{{kind: inkFill, w: s.width, h: h, fill: tint}, {kind: inkRule, w: s.width, thick: 1, fill: black}, {kind: inkRule, y: h, w: s.width, thick: 0.75, fill: black}}
				}, s.whole})
			})
		}
		if !s.under {
			s.gap = max(s.gap, 7)
		}
		for i := range top {
			top[i].keep = true
		}
		s.put(top...)
		again := decoration(top)
		first := len(s.strips)
		for i, r := range rows {
			begin := len(s.strips)
			s.within("TR", func(tr int) { s.tableRow(tr, r, cells, rows[i:]) })
			for k := begin; k < len(s.strips); k++ {
				s.strips[k].again = again
			}
			if r.Kind == "total" && begin > first {
				s.strips[begin-1].keep = true // what adds up stays with what it adds
			}
		}
		if n := len(s.strips); n-first >= 2 {
			s.strips[n-2].keep = true
		}
		if len(s.strips) > first {
			s.strips[len(s.strips)-1].keep = false
		}
	})
	s.gap = max(s.gap, 7)
}

func (s *sheet) tableRow(tr int, r form.Row, cells func(int, string, []string, style) []cellOf, rest []form.Row) {
	look := rowLook{3, 3, func(last bool, h float64) []ink {
		if !last {
			return nil
		}
		return []ink{{kind: inkRule, y: h, w: s.width, thick: 0.4, fill: hair}}
	}, s.whole * 0.4}
	switch r.Kind {
	case "group":
		text := strings.Join(r.Cells, "  ")
		set := []cellOf{{lines: wrap(text, cellB, s.width-2*inset), style: cellB, x: inset, w: s.width - 2*inset, part: s.parts.add(tr, "TH")}}
		look.above = 6
		look.rule = func(last bool, h float64) []ink {
			if !last {
				return nil
			}
			return []ink{{kind: inkRule, y: h, w: s.width, thick: 0.75, fill: ruled}}
		}
		list := s.row(set, look)
		if len(rest) > 1 {
			list[len(list)-1].keep = true
		}
		s.put(list...)
	case "total":
		look.rule = func(last bool, h float64) []ink {
			out := []ink{{kind: inkFill, w: s.width, h: h, fill: tint}, {kind: inkRule, w: s.width, thick: 1, fill: black}}
			if last {
				out = append(out, ink{kind: inkRule, y: h, w: s.width, thick: 1, fill: black})
			}
			return out
		}
		s.put(s.row(cells(tr, "TD", r.Cells, cellB), look)...)
	default:
		s.put(s.row(cells(tr, "TD", r.Cells, cell), look)...)
	}
}

// decoration is a head as it is repeated: seen, but told once.
func decoration(list []strip) []strip {
	out := make([]strip, len(list))
	for i, p := range list {
		p.gap = 0
		p.inks = append([]ink(nil), p.inks...)
		for k := range p.inks {
			p.inks[k].part = 0
		}
		out[i] = p
	}
	return out
}

// squared gives every row one cell a column. A cell too many is put to the last
// column: no word is lost.
func squared(t *form.Table) ([]form.Column, []form.Row) {
	columns := t.Columns
	if len(columns) == 0 {
		most := 0
		for _, r := range t.Rows {
			most = max(most, len(r.Cells))
		}
		columns = make([]form.Column, most)
	}
	rows := make([]form.Row, len(t.Rows))
	for i, r := range t.Rows {
		rows[i] = form.Row{Kind: r.Kind, Cells: make([]string, len(columns))}
		for k, text := range r.Cells {
			if k >= len(columns) && len(columns) > 0 {
				rows[i].Cells[len(columns)-1] += "\n" + text
			} else if k < len(columns) {
				rows[i].Cells[k] = text
			}
		}
	}
	return columns, rows
}

func titlesOf(columns []form.Column) []string {
	titles := make([]string, len(columns))
	any := false
	for i, c := range columns {
		titles[i] = c.Title
		any = any || strings.TrimSpace(c.Title) != ""
	}
	if !any {
		return nil
	}
	return titles
}

// columnWidths divides the width by the shares, then gives columns what their
// longest word needs, if the others can spare it: a figure is never broken for want
// of a point. It is nil where there are too many columns.
func (s *sheet) columnWidths(columns []form.Column, rows []form.Row) []float64 {
	if float64(len(columns))*narrowest > s.width {
		return nil
	}
	shares, sum := make([]float64, len(columns)), 0.0
	for i, c := range columns {
		shares[i] = float64(min(max(c.Share, 0), 1000))
		sum += shares[i]
	}
	widths, need := make([]float64, len(columns)), make([]float64, len(columns))
	for i, c := range columns {
		widths[i] = s.width / float64(len(columns))
		if sum > 0 {
			widths[i] = s.width * shares[i] / sum
		}
		most := s.width / 5
		if c.Right {
			most = s.width / 3
		}
		need[i] = widest(c.Title, head)
		for _, r := range rows {
			if r.Kind != "group" && need[i] < most {
				st := cell
				if r.Kind == "total" {
					st = cellB
				}
				if c.Right { // a figure stays on one line
					need[i] = max(need[i], widthOf(r.Cells[i], st))
				} else {
					need[i] = max(need[i], widest(r.Cells[i], st))
				}
			}
		}
		need[i] = max(narrowest, min(need[i], most)+2*inset+0.1)
	}
	short, spare := 0.0, 0.0
	for i := range widths {
		short += max(0, need[i]-widths[i])
		spare += max(0, widths[i]-need[i])
	}
	if short == 0 {
		return widths
	}
	part := min(1, spare/short) // of what is wanted
	for i := range widths {
		if widths[i] < need[i] {
			widths[i] += (need[i] - widths[i]) * part
		} else if spare > 0 {
			widths[i] -= (widths[i] - need[i]) * short * part / spare
		}
	}
	for _, w := range widths {
		if w < narrowest*0.9 {
			return nil
		}
	}
	return widths
}

// stacked sets each row as lines of column and cell.
func (s *sheet) stacked(columns []form.Column, rows []form.Row) {
	for _, r := range rows {
		if r.Kind == "group" {
			s.heading(strings.Join(r.Cells, " "), 3)
			continue
		}
		s.gap = max(s.gap, 8)
		for i, text := range r.Cells {
			if title := strings.TrimSpace(columns[i].Title); title != "" && strings.TrimSpace(text) != "" {
				text = title + ": " + text
			}
			s.under = i > 0 // lines of a row stand close
			st := body
			if r.Kind == "total" {
				st = strong
			}
			s.paragraph(text, st, 0, "P")
		}
		if n := len(s.strips); n > 0 { // rows may part
			s.strips[n-1].keep = false
		}
	}
	s.under = false
	if len(rows) == 0 {
		s.paragraph(strings.Join(titlesOf(columns), " · "), strong, 0, "P")
	}
}
