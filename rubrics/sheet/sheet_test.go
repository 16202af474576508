package sheet_test

import (
	"encoding/csv"
	"encoding/json"
	"os"
	"strings"
	"testing"
	"time"

	"asfound/rubrics"
	"asfound/rubrics/appraisal"
	"asfound/rubrics/sheet"
)

func made(t *testing.T, from sheet.From) map[string]sheet.Table {
	t.Helper()
	all, err := rubrics.All()
	if err != nil {
		t.Fatal(err)
	}
	parts, err := rubrics.Parts()
	if err != nil {
		t.Fatal(err)
	}
	tables, err := sheet.Make(appraisal.NewJudge(all, parts), nil, from)
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]sheet.Table{}
	for _, x := range tables {
		out[x.Name] = x
	}
	return out
}

func file(t *testing.T, name string) *appraisal.File {
	t.Helper()
	src, err := os.ReadFile("../../testdata/" + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	d, err := appraisal.Decode(src)
	if err != nil {
		t.Fatal(err)
	}
	return &d.File
}

// TestTables: all tables are there, each cell is of its column's kind, and the JSON
// comes back the same.
func TestTables(t *testing.T) {
	lift := file(t, "demo/1-lift-walked")
	x := lift.Findings["pads"]
	x.Photos = []appraisal.Photo{{Hash: strings.Repeat("a", 64), At: "2026-10-01T11:12:13Z"}}
	lift.Findings["pads"] = x
	price := appraisal.Money(215000)
	all := made(t, sheet.From{Files: []*appraisal.File{lift, file(t, "demo/2-lift-half")}, Compared: true, Decisions: []sheet.Decision{{Date: "2026-11-03", Chosen: "B", Price: &price, Currency: "USD", Reason: "because", Sides: []string{"B", "A"}}}})
	for _, name := range []string{"listings", "findings", "lines", "shopping", "comparables", "prices", "photos", "comparison", "decisions"} {
		if _, ok := all[name]; !ok {
			t.Errorf("there is no table %s", name)
		}
	}
	for name, x := range all {
		for _, row := range x.Rows {
			if len(row) != len(x.Columns) {
				t.Fatalf("%s: %d cells in %d columns", name, len(row), len(x.Columns))
			}
			for i, c := range row {
				_, number := c.(float64)
				s, text := c.(string)
				switch kind := x.Columns[i].Kind; {
				case c == nil:
				case (kind == sheet.Number || kind == sheet.Amount) != number || (kind == sheet.Text || kind == sheet.Day) != text:
					t.Errorf("%s, %s: %v is no %s", name, x.Columns[i].Title, c, kind)
				case kind == sheet.Day:
					if _, err := time.Parse(time.DateOnly, s); err != nil {
						t.Errorf("%s, %s: %q", name, x.Columns[i].Title, s)
					}
				}
			}
		}
		src, err := json.Marshal(x)
		if err != nil {
			t.Fatal(err)
		}
		var back sheet.Table
		if err := json.Unmarshal(src, &back); err != nil {
			t.Fatal(err)
		}
		if back.CSV() != x.CSV() {
			t.Errorf("%s: through JSON it is another table", name)
		}
	}
	if d := all["decisions"].Rows[0]; d[2] != 2150.0 || d[5] != "B; A" {
		t.Errorf("the decision is %v", d)
	}
	if len(made(t, sheet.From{})) != 0 {
		t.Error("of nothing there are tables")
	}
}

// TestCSV is read back by the library's reader: cells that would run as a formula are
// held off, numbers are numbers. The marks are those of OWASP, CSV Injection: = + - @,
// tab and carriage return, in full width too.
func TestCSV(t *testing.T) {
	x := sheet.Table{Columns: []sheet.Column{{"text", sheet.Text}, {"number", sheet.Number}}}
	for _, s := range []string{"=1+1", "+1+1", "-1+cmd", "@SUM(A1)", "\t=1", "\r=1", " =1", "＝1", "－x", "plain", "a,b", "a\"b", "line\nbreak", "-5", ""} {
		x.Rows = append(x.Rows, []sheet.Cell{s, -1234.5})
	}
	x.Rows = append(x.Rows, []sheet.Cell{nil, nil}, []sheet.Cell{"y", 1e21})
	text, ok := strings.CutPrefix(x.CSV(), "\ufeff")
	if !ok {
		t.Error("there is no mark of UTF-8")
	}
	r := csv.NewReader(strings.NewReader(text))
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []string{"'=1+1", "'+1+1", "'-1+cmd", "'@SUM(A1)", "'\t=1", "'\r=1", "' =1", "'＝1", "'－x", "plain", "a,b", "a\"b", "line\nbreak", "-5", ""} {
		if got := rows[i+1]; got[0] != want || got[1] != "-1234.5" {
			t.Errorf("row %d is %q, not %q", i+1, got, want)
		}
	}
	if last := rows[len(rows)-1]; last[1] != "1000000000000000000000" {
		t.Errorf("a large number is %q", last[1])
	}
}

// TestBadFile is named and nothing is made.
func TestBadFile(t *testing.T) {
	all, err := rubrics.All()
	if err != nil {
		t.Fatal(err)
	}
	bad := file(t, "demo/1-lift-walked")
	bad.Shop.Currency = "XXX"
	if _, err := sheet.Make(appraisal.NewJudge(all, nil), nil, sheet.From{Files: []*appraisal.File{bad}}); err == nil || !strings.Contains(err.Error(), "shop.currency") {
		t.Error(err)
	}
}
