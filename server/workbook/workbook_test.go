package workbook

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

var columns = []Column{{"Line", "text"}, {"Hours", "number"}, {"Cost", "money"}, {"Day", "date"}}

func sample() []Table {
	return []Table{
		{Name: "Lines: parts/hours [all] of the whole estimate", Title: "Estimate, invented", Columns: columns, Rows: [][]any{
			{"Cable set", 2.5, 1234.5, "2024-05-01"},
			{`=HYPERLINK("https://evil.example","x")`, nil, -3.0, "1901-01-01"},
			{"+1", "about 3", "=1+1", ""},
			{"@SUM(A1)", 0.0, 0.0, nil},
			{"<b>&\"' \u202eورشة 🔧\nsecond line", 1e15, 0.1 + 0.2, "9999-12-31"},
		}},
		{Name: "lines: parts/hours [all] of the whole estimate", Columns: columns[:1], Rows: [][]any{{"-2+3"}}},
		{Name: "  '': ", Columns: columns[:1]},
		{Name: "History", Columns: columns[:1]},
		{Name: strings.Repeat("🔧", 40), Columns: columns[:1]},
	}
}

// The workbook is read by the library that wrote it.
func TestWorkbookByItsOwnReader(t *testing.T) {
	b, err := Make(sample())
	if err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	names := f.GetSheetList()
	want := []string{"Lines parts hours all of the wh", "lines parts hours all of th (2)", "Table 3", "History (2)", strings.Repeat("🔧", 15)}
	if fmt.Sprintf("%q", names) != fmt.Sprintf("%q", want) {
		t.Errorf("%q", names)
	}
	for cell, want := range map[string]string{
		"A1": "Estimate, invented", "A2": "Line", "D2": "Day", "A3": "Cable set", "B3": "2.5", "C3": "1,234.50", "D3": "2024-05-01", "C4": "-3.00", "D4": "1901-01-01",
		"A4": `=HYPERLINK("https://evil.example","x")`, "A5": "+1", "B5": "about 3", "C5": "=1+1", "D5": "", "A6": "@SUM(A1)", "D6": "", "C7": "0.30", "D7": "9999-12-31",
		"A7": "<b>&\"' \u202eورشة 🔧\nsecond line",
	} {
		got, err := f.GetCellValue(names[0], cell)
		if err != nil || got != want {
			t.Errorf("%s: %q, want %q, %v", cell, got, want, err)
		}
		if formula, err := f.GetCellFormula(names[0], cell); err != nil || formula != "" {
			t.Errorf("%s is a formula: %q, %v", cell, formula, err)
		}
	}
	panes, err := f.GetPanes(names[0])
	if err != nil || !panes.Freeze || panes.YSplit != 2 || panes.TopLeftCell != "A3" {
		t.Errorf("%+v, %v", panes, err)
	}
	id, err := f.GetCellStyle(names[0], "A2")
	if err != nil {
		t.Fatal(err)
	}
	if style, err := f.GetStyle(id); err != nil || !style.Font.Bold {
		t.Errorf("the head is not bold: %+v, %v", style, err)
	}
	if w, err := f.GetColWidth(names[0], "A"); err != nil || w < 30 || w > 60 {
		t.Errorf("width %v, %v", w, err)
	}
}

// The same workbook read as what it is, zipped XML (ECMA-376): every text is a text by its type, no formula anywhere,
// no address that leads out.
func TestWorkbookByPlainXML(t *testing.T) {
	b, err := Make(sample())
	if err != nil {
		t.Fatal(err)
	}
	z, err := zip.NewReader(bytes.NewReader(b), int64(len(b)))
	if err != nil {
		t.Fatal(err)
	}
	var sheet struct {
		Pane struct {
			State  string  `xml:"state,attr"`
			YSplit float64 `xml:"ySplit,attr"`
		} `xml:"sheetViews>sheetView>pane"`
		Rows []struct {
			Cells []struct {
				Ref     string  `xml:"r,attr"`
				Type    string  `xml:"t,attr"`
				Value   string  `xml:"v"`
				Inline  string  `xml:"is>t"`
				Formula *string `xml:"f"`
			} `xml:"c"`
		} `xml:"sheetData>row"`
	}
	for _, file := range z.File {
		r, err := file.Open()
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		if err := r.Close(); err != nil {
			t.Fatal(err)
		}
		if strings.HasSuffix(file.Name, ".rels") && bytes.Contains(text, []byte(`TargetMode="External"`)) {
			t.Errorf("%s leads out: %s", file.Name, text)
		}
		if file.Name == "docProps/core.xml" && !bytes.Contains(text, []byte("<dc:creator>Asfound</dc:creator>")) {
			t.Errorf("%s: %s", file.Name, text)
		}
		if file.Name == "xl/worksheets/sheet1.xml" {
			if err := xml.Unmarshal(text, &sheet); err != nil {
				t.Fatal(err)
			}
		}
	}
	if sheet.Pane.State != "frozen" || sheet.Pane.YSplit != 2 || len(sheet.Rows) != 7 {
		t.Errorf("%+v, %d rows", sheet.Pane, len(sheet.Rows))
	}
	found := map[string]string{}
	for _, row := range sheet.Rows {
		for _, c := range row.Cells {
			if c.Formula != nil {
				t.Errorf("%s is a formula", c.Ref)
			}
			found[c.Ref] = c.Type + "|" + c.Value + c.Inline
		}
	}
	for ref, want := range map[string]string{
		"A4": `inlineStr|=HYPERLINK("https://evil.example","x")`, "C5": "inlineStr|=1+1", "B3": "n|2.5", "C3": "n|1234.5", "D3": "n|45413", "D4": "n|367",
	} {
		if got := found[ref]; got != want && got != strings.TrimPrefix(want, "n") {
			t.Errorf("%s: %q, want %q", ref, got, want)
		}
	}
}

func TestRefusals(t *testing.T) {
	long := strings.Repeat("x", maxCell+1)
	for name, c := range map[string]struct {
		tables []Table
		says   string
	}{
		"none":         {nil, "0 tables"},
		"too many":     {make([]Table, MaxTables+1), "21 tables"},
		"no columns":   {[]Table{{}}, "table 1 has 0 columns"},
		"a kind":       {[]Table{{Columns: []Column{{"x", "formula"}}}}, `table 1, column 1: kind "formula"`},
		"a cell less":  {[]Table{{Columns: columns, Rows: [][]any{{"x"}}}}, "table 1, row 1 has 1 cells"},
		"no day":       {[]Table{{Columns: columns[3:], Rows: [][]any{{"2024-02-30"}}}}, `"2024-02-30" is no day`},
		"an early day": {[]Table{{Columns: columns[3:], Rows: [][]any{{"1899-01-01"}}}}, "from 1901 on"},
		"a number day": {[]Table{{Columns: columns[3:], Rows: [][]any{{12.0}}}}, "is no date"},
		"a list":       {[]Table{{Columns: columns[:1], Rows: [][]any{{[]any{}}}}}, "a text, a number or null"},
		"a long text":  {[]Table{{Columns: columns[:1], Rows: [][]any{{long}}}}, "32768 characters"},
		"many rows":    {[]Table{{Columns: columns[:1], Rows: make([][]any, MaxRows+1)}}, "more than 20000 rows"},
	} {
		if b, err := Make(c.tables); !errors.Is(err, ErrTable) || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %d bytes, %v", name, len(b), err)
		}
	}
}
