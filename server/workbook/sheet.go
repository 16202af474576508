package workbook

import (
	"fmt"
	"strings"
	"time"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"
)

// styles are by kind of column, and title and head.
type styles map[string]int

func stylesOf(f *excelize.File) (styles, error) {
	money, day := "#,##0.00", "yyyy-mm-dd"
	top := &excelize.Alignment{Vertical: "top", WrapText: true}
	out := styles{}
	for name, style := range map[string]*excelize.Style{
		"title":  {Font: &excelize.Font{Bold: true, Size: 14}},
		"head":   {Font: &excelize.Font{Bold: true}, Alignment: &excelize.Alignment{Vertical: "bottom", WrapText: true}, Border: []excelize.Border{{Type: "bottom", Color: "14202A", Style: 2}}},
		"text":   {Alignment: top},
		"number": {Alignment: &excelize.Alignment{Vertical: "top"}},
		"money":  {CustomNumFmt: &money, Alignment: &excelize.Alignment{Vertical: "top"}},
		"date":   {CustomNumFmt: &day, Alignment: &excelize.Alignment{Vertical: "top"}},
	} {
		id, err := f.NewStyle(style)
		if err != nil {
			return nil, err
		}
		out[name] = id
	}
	return out, nil
}

// fill writes one sheet, row by row.
func fill(f *excelize.File, name string, t *Table, by styles) error {
	w, err := f.NewStreamWriter(name)
	if err != nil {
		return err
	}
	for i := range t.Columns {
		if err := w.SetColWidth(i+1, i+1, width(t, i)); err != nil {
			return err
		}
	}
	head := 1
	if t.Title != "" {
		head = 2
	}
	frozen := &excelize.Panes{Freeze: true, YSplit: head, TopLeftCell: fmt.Sprintf("A%d", head+1), ActivePane: "bottomLeft"}
	if err := w.SetPanes(frozen); err != nil {
		return err
	}
	if t.Title != "" {
		if err := w.SetRow("A1", []any{excelize.Cell{StyleID: by["title"], Value: t.Title}}); err != nil {
			return err
		}
	}
	cells := make([]any, len(t.Columns))
	for i, c := range t.Columns {
		cells[i] = excelize.Cell{StyleID: by["head"], Value: c.Title}
	}
	if err := w.SetRow(fmt.Sprintf("A%d", head), cells); err != nil {
		return err
	}
	for j, r := range t.Rows {
		for i, v := range r {
			kind := t.Columns[i].Kind
			value, err := cellOf(v, kind)
			if err != nil {
				return err
			}
			if _, text := value.(string); text {
				kind = "text"
			}
			if day, ok := value.(time.Time); ok {
				value = serial(day)
			}
			cells[i] = excelize.Cell{StyleID: by[kind], Value: value}
		}
		if err := w.SetRow(fmt.Sprintf("A%d", head+1+j), cells); err != nil {
			return err
		}
	}
	return w.Flush()
}

// serial is a day as the format counts it: 1 March 1900 is 61 (ECMA-376, part 1, 18.17.4.1, the 1900 date base).
func serial(day time.Time) int {
	return int((day.Unix() - time.Date(1899, 12, 30, 0, 0, 0, 0, time.UTC).Unix()) / 86_400)
}

// width of a column in characters, by its longest line but within reason.
func width(t *Table, i int) float64 {
	most := longest(t.Columns[i].Title)
	for _, r := range t.Rows {
		switch v := r[i].(type) {
		case string:
			most = max(most, longest(v))
		case float64:
			most = max(most, len(fmt.Sprintf("%.2f", v))+2)
		}
	}
	return float64(min(60, max(8, most+2)))
}

func longest(s string) (most int) {
	for line := range strings.SplitSeq(s, "\n") {
		most = max(most, utf8.RuneCountInString(line))
	}
	return most
}

// maxName is how long a sheet's name may be, UTF-16 units.
const maxName = 31

// sheetNames makes names that every reader takes: none of : \ / ? * [ ], no ' at an end, not empty, not the one that
// is reserved, none twice whatever the case.
func sheetNames(tables []Table) []string {
	taken := map[string]bool{"history": true}
	names := make([]string, len(tables))
	for i, t := range tables {
		name := strings.Map(func(r rune) rune {
			if r < ' ' || r == utf8.RuneError || strings.ContainsRune(`:\/?*[]`, r) {
				return ' '
			}
			return r
		}, t.Name)
		name = trimmed(strings.Join(strings.Fields(name), " "), maxName)
		if name == "" {
			name = fmt.Sprintf("Table %d", i+1)
		}
		for n, base := 2, name; taken[strings.ToLower(name)]; n++ {
			mark := fmt.Sprintf(" (%d)", n)
			name = trimmed(base, maxName-len(mark)) + mark
		}
		taken[strings.ToLower(name)] = true
		names[i] = name
	}
	return names
}

// trimmed cuts to so many UTF-16 units, between characters.
func trimmed(s string, most int) string {
	for units(s) > most {
		_, size := utf8.DecodeLastRuneInString(s)
		s = s[:len(s)-size]
	}
	return strings.Trim(s, "' ")
}
