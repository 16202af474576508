package table

import (
	"encoding/csv"
	"reflect"
	"strings"
	"testing"
)

// TestWriteRunsNothing: no cell begins with what a spreadsheet would run, and what
// was written is read again as it was. The marks = + - @ are those of CWE-1236, the
// tab is added by OWASP ASVS requirement 1.2.10 (both seen in public copies); the
// carriage return and the wide forms are from memory.
func TestWriteRunsNothing(t *testing.T) {
	for _, c := range []struct{ cell, written string }{
		{"plain", "plain"}, {"", ""}, {"12.50", "12.50"}, {"-12.50", "-12.50"}, {"1/2 in", "1/2 in"}, {"a=b", "a=b"},
		{"=1+1", "'=1+1"}, {"+1-800", "'+1-800"}, {"-1+1", "'-1+1"}, {"@SUM(A1)", "'@SUM(A1)"}, {"＝1", "'＝1"},
		{"=HYPERLINK(\"x\",\"y\")", `"'=HYPERLINK(""x"",""y"")"`}, {" =1", "' =1"}, {"\t=1", "\"'\t=1\""}, {"\rx", "\"'\rx\""},
		{"with, comma", `"with, comma"`}, {`12" lathe`, `"12"" lathe"`}, {"two\nlines", "\"two\nlines\""}, {" blank", `" blank"`}, {"'quoted", "'quoted"},
	} {
		got := Write([]string{"x"}, [][]string{{c.cell}})
		if got != "x\r\n"+c.written+"\r\n" {
			t.Errorf("%q is written %q, want %q", c.cell, got, c.written)
		}
	}
}

// TestWrittenIsRead: by this package and by the library's reader (RFC 4180).
func TestWrittenIsRead(t *testing.T) {
	columns := []string{"id", "title", "price"}
	rows := [][]string{{"a", `12" plate, =hot`, "12.50"}, {"b", "=SUM(A1)", "-3"}, {"c", "zwei\nZeilen; und | mehr", "1"}, {"d", "ends with apostrophe'", ""}}
	text := Write(columns, rows)
	read, err := Read([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	all, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(read.Columns, columns) || !reflect.DeepEqual(all[0], columns) || len(read.Rows) != len(rows) || len(read.Problems) > 0 {
		t.Fatalf("%+v", read)
	}
	for i, row := range rows {
		for k := range row {
			if got := Bare(read.Rows[i][k]); got != row[k] {
				t.Errorf("%q comes back as %q", row[k], got)
			}
			if got := Bare(all[i+1][k]); got != row[k] {
				t.Errorf("%q comes back from the library as %q", row[k], got)
			}
		}
	}
}
