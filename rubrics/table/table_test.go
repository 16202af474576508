package table

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf16"

	"pgregory.net/rapid"
)

// written shows a table in one text: separator, columns, rows with their lines,
// problems.
func written(t *Table) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s comma=%v decided=%v out=%d\n%q\n", t.SeparatorWord(), t.DecimalComma, t.Decided, t.LeftOut, t.Columns)
	for i, row := range t.Rows {
		fmt.Fprintf(&b, "%d %q\n", t.Lines[i], row)
	}
	for _, p := range t.Problems {
		fmt.Fprintf(&b, "%s\n", p)
	}
	return b.String()
}

func wideText(s string, big bool) string {
	out := []byte{0xff, 0xfe}
	if big {
		out = []byte{0xfe, 0xff}
	}
	for _, u := range utf16.Encode([]rune(s)) {
		if big {
			out = append(out, byte(u>>8), byte(u))
		} else {
			out = append(out, byte(u), byte(u>>8))
		}
	}
	return string(out)
}

func TestRead(t *testing.T) {
	for _, c := range []struct{ name, src, want string }{
		{"plain", "title,price\nLift A,2100\nLift B,1950.50\n", `comma comma=false decided=true out=0
["title" "price"]
2 ["Lift A" "2100"]
3 ["Lift B" "1950.50"]
`},
		{"CRLF, byte order mark, no break at the end", "\ufefftitle,price\r\nLift A,2100", `comma comma=false decided=false out=0
["title" "price"]
2 ["Lift A" "2100"]
`},
		{"CR alone", "title,price\rLift A,2100\r\rLift B,5\r", `comma comma=false decided=false out=0
["title" "price"]
2 ["Lift A" "2100"]
4 ["Lift B" "5"]
`},
		{"semicolons with decimal commas", "Titel;Preis\nBühne;1.234,50\nPresse;900,00\n", `semicolon comma=true decided=true out=0
["Titel" "Preis"]
2 ["Bühne" "1.234,50"]
3 ["Presse" "900,00"]
`},
		{"semicolons, nothing decides", "Titel;Preis\nBühne;1234\n", `semicolon comma=true decided=false out=0
["Titel" "Preis"]
2 ["Bühne" "1234"]
`},
		{"semicolons with decimal points", "Titel;Preis\nBühne;12.5\n", `semicolon comma=false decided=true out=0
["Titel" "Preis"]
2 ["Bühne" "12.5"]
`},
		{"commas in the header and in every row", "Preis, EUR;Titel\n1200,50;Lift\n900,00;Press\n", `semicolon comma=true decided=true out=0
["Preis, EUR" "Titel"]
2 ["1200,50" "Lift"]
3 ["900,00" "Press"]
`},
		{"tabs", "title\tprice\nLift, used\t1,234\n", `tab comma=false decided=false out=0
["title" "price"]
2 ["Lift, used" "1,234"]
`},
		{"bars", "title|price\nLift|2,100\n", `vertical bar comma=false decided=false out=0
["title" "price"]
2 ["Lift" "2,100"]
`},
		{"a line that names the separator", "sep=;\r\na,b;c\r\n1;2\r\n", `semicolon comma=true decided=false out=0
["a,b" "c"]
3 ["1" "2"]
`},
		{"the same in quotes, a tab", "\"SEP=\t\"\na\tb\n1\t2\n", `tab comma=false decided=false out=0
["a" "b"]
3 ["1" "2"]
`},
		{"one column of grouped numbers", "price\n1,234\n12,500\n", `none comma=false decided=false out=0
["price"]
2 ["1,234"]
3 ["12,500"]
`},
		{"quotes", "a,b\n\"x, y\",\"he said \"\"12\"\"\"\n\"two\r\nlines\",z\nlast,\"\"\n", `comma comma=false decided=false out=0
["a" "b"]
2 ["x, y" "he said \"12\""]
3 ["two\nlines" "z"]
5 ["last" ""]
`},
		{"quotes with blanks about them", "a,b\n\"x, y\" , \"z\"\n", `comma comma=false decided=false out=0
["a" "b"]
2 ["x, y" "z"]
`},
		{"inch marks", "title,price\nLathe 12\" swing,1200\n", `comma comma=false decided=false out=0
["title" "price"]
2 ["Lathe 12\" swing" "1200"]
`},
		{"a quote in the middle", "title,price\n\"12\" lathe\",1200\nnext,5\n", `comma comma=false decided=false out=0
["title" "price"]
2 ["\"12\" lathe\"" "1200"]
3 ["next" "5"]
line 2, title: a quotation mark closes in the middle of the cell: write one that belongs to the text twice
`},
		{"rows run together", "title,price\n\"big,5\n\"def\",6\nnext,7\n", `comma comma=false decided=false out=1
["title" "price"]
4 ["next" "7"]
line 2, title: a quotation mark closes in the middle of the cell: write one that belongs to the text twice
line 2: rows have run together after a quotation mark, and are left out
`},
		{"ragged", "a,b,c\n1,2\n1,2,3,4\n1,2,3,,\n4,5,6\n", `comma comma=false decided=false out=1
["a" "b" "c"]
2 ["1" "2" ""]
4 ["1" "2" "3"]
5 ["4" "5" "6"]
line 2: 2 cells where the first line names 3: the missing ones are taken as empty
line 3: 4 cells where the first line names 3: the row is left out; a text with the separator in it belongs in quotation marks
`},
		{"blank lines and rows", "\n ,\na,b\n\n,\n1,2\n", `comma comma=false decided=false out=0
["a" "b"]
6 ["1" "2"]
`},
		{"names", " a  b ,Price,,Price,\"x\ny\",,\n1,2,3,4,5,,\n", `comma comma=false decided=false out=0
["a b" "Price" "column 3" "Price (2)" "x y"]
3 ["1" "2" "3" "4" "5"]
line 1, Price (2): the name "Price" stands more than once: this column is numbered
line 1, column 3: the column has cells but no name: it is called column 3
`},
		{"names that look numbered", "a,a (2),a\n1,2,3\n", `comma comma=false decided=false out=0
["a" "a (2)" "a (3)"]
2 ["1" "2" "3"]
line 1, a (3): the name "a" stands more than once: this column is numbered
`},
		{"names alone", "a,b", "comma comma=false decided=false out=0\n[\"a\" \"b\"]\n"},
		{"UTF-16, little end first", wideText("a;b\r\nBühne 🔧;1\r\n", false), `semicolon comma=true decided=false out=0
["a" "b"]
2 ["Bühne 🔧" "1"]
`},
		{"UTF-16, big end first", wideText("a\tb\nß\t1\n", true), `tab comma=false decided=false out=0
["a" "b"]
2 ["ß" "1"]
`},
		{"marks that contradict themselves", "title;price\nA;12,5\nB;12.5\nC;9,75\n", `semicolon comma=true decided=true out=0
["title" "price"]
2 ["A" "12,5"]
3 ["B" "12.5"]
4 ["C" "9,75"]
line 3, price: "12.5" has a decimal point and "12,5" above it a decimal comma: each is read as written, so look at numbers like 1,234
`},
		{"formulas are text", "a,b\n\"=HYPERLINK(\"\"x\"\",\"\"y\"\")\",=1+1\n@SUM(A1),-2\n", `comma comma=false decided=false out=0
["a" "b"]
2 ["=HYPERLINK(\"x\",\"y\")" "=1+1"]
3 ["@SUM(A1)" "-2"]
`},
		{"a long cell", "a,b\n" + strings.Repeat("ü", 2001) + ",1\n", `comma comma=false decided=false out=0
["a" "b"]
2 ["` + strings.Repeat("ü", 2000) + `" "1"]
line 2, a: 2001 characters, at most 2,000: the rest is cut off
`},
	} {
		got, err := Read([]byte(c.src))
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
		} else if w := written(got); w != c.want {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, w, c.want)
		}
	}
}

func TestReadRefuses(t *testing.T) {
	for _, c := range []struct{ name, src, says string }{
		{"nothing", "", "the file is empty: a line that names the columns, then a line a row"},
		{"blanks", "\ufeff \r\n\n", "the file is empty"},
		{"separators alone", ",,\n,,\n", "the file is empty: a line that names"},
		{"a spreadsheet itself", "PK\x03\x04rest", "this is a spreadsheet, not a table as text: save it as CSV first"},
		{"an old spreadsheet", "\xd0\xcf\x11\xe0\xa1\xb1", "this is a spreadsheet"},
		{"another encoding", "title,price\nLift,1\nB\xfchne,2\n", "line 3: byte 0xfc is not UTF-8 text: save it as CSV in UTF-8"},
		{"NUL", "title,price\r\nLi\x00ft,1\r\n", "line 2: the file holds the character NUL"},
		{"UTF-16 without its mark", wideText("a,b\n1,2\n", false)[2:], "line 1: the file holds the character NUL: save it as CSV in UTF-8"},
		{"half of UTF-16", wideText("a,b\n1,2\n", false) + "x", "line 3: the file stops in the middle of a character"},
		{"a lone surrogate", wideText("a,b\n1,2\n", false) + "\x00\xd8a\x00", "line 3: half a character"},
		{"a lone surrogate at the end", wideText("a,b\n1,2\n", false) + "\x00\xd8", "line 3: half a character"},
		{"no names", "2100,2014\n1950,2012\n", "line 1: it holds numbers and dates alone: the first line must name the columns"},
		{"no names, money and dates", "$2,100\t2014-05-01\n", "line 1: it holds numbers and dates alone"},
		{"a title first", "My list\na,b,c\n1,2,3\n", "line 1: the lines below have more columns: the first line must name them"},
		{"a title with a semicolon first", "My list; of lifts\na,b,c\n1,2,3\n", "line 1: the lines below have more columns"},
		{"an open quotation mark", "a,b\n1,2\n\"x,3\n4,5\n", "line 3: a quotation mark begins a cell and is never closed: close it, or delete it"},
		{"another separator", "sep=x\naxb\n", `line 1: "sep=x" names a separator that is not read: a comma, semicolon, tab or vertical bar`},
		{"a separator and no table", "sep=,\n\n", "line 1: there is no table below this line"},
		{"too many columns", strings.Repeat("a,", 200) + "a\n", "line 1: there are more than 200 columns: at most 200"},
		{"too many cells in a row", "a,b\n1,2\n" + strings.Repeat("1,", 200) + "1\n", "line 3: there are more than 200 columns"},
		{"too many rows", "a,b\n" + strings.Repeat("1,2\n", 100_001), "line 100002: there are more than 100,000 rows: at most 100,000"},
		{"too many cells", strings.Repeat("a,", 199) + "a\n" + strings.Repeat("1\n", 20_001), "line 20002: there are more than 4,000,000 cells"},
		{"too large", strings.Repeat("a", MaxBytes+1), "the file is too large: at most 8 MiB"},
	} {
		got, err := Read([]byte(c.src))
		if err == nil || !strings.HasPrefix(err.Error(), c.says) {
			t.Errorf("%s: %v, %v; want %q", c.name, got, err, c.says)
		}
	}
}

func TestBoundsAreReached(t *testing.T) {
	wide := strings.TrimSuffix(strings.Repeat("a,", MaxColumns), ",") + "\n" + strings.Repeat("1,", MaxColumns-1) + "x\n"
	got, err := Read([]byte(wide))
	if err != nil || len(got.Columns) != MaxColumns || len(got.Rows) != 1 {
		t.Errorf("200 columns: %v", err)
	}
	got, err = Read([]byte("a,b\n" + strings.Repeat("1,2\n", MaxRows)))
	if err != nil || len(got.Rows) != MaxRows || got.Lines[MaxRows-1] != MaxRows+1 {
		t.Errorf("100,000 rows: %v", err)
	}
	got, err = Read([]byte("a,b,c\n" + strings.Repeat("1,2\n", 1500)))
	if err != nil || len(got.Problems) != 1001 {
		t.Fatalf("1500 problems: %d, %v", len(got.Problems), err)
	}
	if last := got.Problems[1000].String(); last != "line 1002: from here on there are 500 more" {
		t.Errorf("the last of many problems: %q", last)
	}
}

func TestColumn(t *testing.T) {
	got, err := Read([]byte("a,b\n1,2\n3,4\n"))
	if err != nil {
		t.Fatal(err)
	}
	if b := got.Column("b"); !slices.Equal(b, []string{"2", "4"}) || got.Column("c") != nil {
		t.Errorf("column b: %q", b)
	}
}

// What encoding/csv writes (RFC 4180) reads back as the same cells, with any
// separator, and the separator is found.
func TestReadsWhatIsWritten(t *testing.T) {
	pieces := []string{"a", "Z", "ü", "🔧", "7", " ", "\"", ",", ";", "\t", "|", "\n", ".", "=", "-", "\\."}
	rapid.Check(t, func(t *rapid.T) {
		sep := rapid.SampledFrom(separators).Draw(t, "separator")
		width := rapid.IntRange(2, 6).Draw(t, "columns")
		cell := rapid.Custom(func(t *rapid.T) string {
			return strings.Join(rapid.SliceOfN(rapid.SampledFrom(pieces), 0, 8).Draw(t, "pieces"), "")
		})
		head := make([]string, width)
		for i := range head {
			head[i] = fmt.Sprintf("name %c", 'a'+i)
		}
		rows := rapid.SliceOfN(rapid.SliceOfN(cell, width, width), 0, 12).Draw(t, "rows")
		rows = slices.DeleteFunc(rows, blank)
		var b bytes.Buffer
		w := csv.NewWriter(&b)
		w.Comma, w.UseCRLF = rune(sep), rapid.Bool().Draw(t, "CRLF")
		if err := w.WriteAll(append([][]string{head}, rows...)); err != nil {
			t.Fatal(err)
		}
		// The header's own separator decides: no other one is in it.
		got, err := Read(b.Bytes())
		if err != nil {
			t.Fatalf("%v\n%q", err, b.String())
		}
		if got.Separator != rune(sep) || !slices.Equal(got.Columns, head) {
			t.Fatalf("separator %q, columns %q\n%q", got.Separator, got.Columns, b.String())
		}
		if len(got.Rows) != len(rows) {
			t.Fatalf("%d rows, want %d\n%q", len(got.Rows), len(rows), b.String())
		}
		for i := range rows {
			if !slices.Equal(got.Rows[i], rows[i]) {
				t.Fatalf("row %d: %q, want %q\n%q", i, got.Rows[i], rows[i], b.String())
			}
		}
		for _, p := range got.Problems {
			if p.Column == "" {
				t.Fatalf("a problem where there is none: %s", p)
			}
		}
	})
}

func FuzzRead(f *testing.F) {
	for _, s := range []string{
		"title,price\nLift A,2100\n", "sep=;\r\na;b\r\n1,5;\"x\r\ny\"\r\n", "a\tb\n\"12\" x\t5\n", "a|b\n1|2|3\n1\n", "\ufeffa,a,,\n1,2,3\n",
		wideText("a;b\n1;2\n", false), wideText("a,b\n1,2\n", true), "a,b\n\"x\n", "PK\x03\x04", "a,b\r1,2\r", "\"a\"\"b\",\" c \"\n", "a\n1,5\n1.5\n",
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		got, err := Read(src)
		last := 1 + breaks(string(src))
		if text, bad := text(src); bad == nil {
			last = 1 + breaks(text)
		}
		if err != nil {
			e, ok := err.(*Error)
			if !ok || e.Line < 0 || e.Line > max(last, 1) {
				t.Fatalf("line %d of %d: %v", e.Line, last, err)
			}
			if s := err.Error(); len(s) > 400 || strings.ContainsFunc(s, unicode.IsControl) {
				t.Fatalf("no readable line: %.500q", s)
			}
			return
		}
		if len(got.Lines) != len(got.Rows) || len(got.Columns) == 0 || len(got.Columns) > MaxColumns {
			t.Fatalf("%d rows, %d lines, %d columns", len(got.Rows), len(got.Lines), len(got.Columns))
		}
		names := map[string]bool{}
		for _, c := range got.Columns {
			if c == "" || names[c] {
				t.Fatalf("the column %q is empty or stands twice", c)
			}
			names[c] = true
		}
		before := 1
		for i, row := range got.Rows {
			if len(row) != len(got.Columns) || got.Lines[i] <= before-1 || got.Lines[i] > last {
				t.Fatalf("row %d on line %d after %d has %d cells of %d", i, got.Lines[i], before, len(row), len(got.Columns))
			}
			before = got.Lines[i] + 1
		}
		for _, p := range got.Problems {
			if p.Line < 1 || p.Line > last || p.Text == "" {
				t.Fatalf("line %d of %d: %s", p.Line, last, p)
			}
		}
	})
}

func BenchmarkRead(b *testing.B) {
	var s strings.Builder
	s.WriteString("title;maker;price;date;made;hours;capacity;condition\n")
	for i := range 100_000 {
		fmt.Fprintf(&s, "\"Lift no. %d\";Invented;%d.%03d,50;%02d.%02d.2024;20%02d;%d,5;4,5 t;good\n", i, 1+i%9, i%1000, 1+i%28, 1+i%12, i%25, i%900)
	}
	src := []byte(s.String())
	b.SetBytes(int64(len(src)))
	for b.Loop() {
		if t, err := Read(src); err != nil || len(t.Rows) != 100_000 || !t.DecimalComma {
			b.Fatal(err)
		}
	}
}
