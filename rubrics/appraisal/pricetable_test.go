package appraisal

import (
	"errors"
	"fmt"
	"strings"
	"testing"
)

func priceJudge() *Judge {
	return NewJudge(nil, []Part{
		{ID: "oil", Title: "Hydraulic oil", Unit: "gal", Price: Range{14_00, 19_00, 30_00}},
		{ID: "plate", Title: `=Plate, 1/4" thick`, Unit: "piece", Price: Range{10_00, 16_50, 28_00}},
		{ID: "pin", Title: "Pin", Unit: "piece", Price: Range{9_00, 18_00, 40_00}},
	})
}

// ownParts are entries of the shop's own.
var ownParts = []Part{{ID: "rail", Title: "Rail of ours", Unit: "ft", Price: Range{2_00, 3_00, 4_00}}}

// shownPrices writes what was read as text.
func shownPrices(p *PriceImport) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%d of %d, %d empty, %s\n", len(p.Rows), p.Total, p.Empty, p.Separator)
	for _, r := range p.Rows {
		fmt.Fprintf(&b, "%d %s %d %d %d", r.Line, r.ID, r.Price.Low, r.Price.Likely, r.Price.High)
		if r.Changes {
			fmt.Fprintf(&b, " was %d %d %d own=%t", r.Now.Low, r.Now.Likely, r.Now.High, r.Own)
		}
		if r.Note != "" {
			b.WriteString(" (" + r.Note + ")")
		}
		b.WriteString("\n")
	}
	for _, x := range p.Problems {
		b.WriteString(x.String() + "\n")
	}
	return strings.TrimSpace(b.String())
}

func TestReadPrices(t *testing.T) {
	own := map[string]Range{"pin": {8_00, 9_00, 10_00}, "gone": {1_00, 2_00, 3_00}}
	for _, c := range []struct{ name, src, currency, want string }{
		{"as it was written", "id,title,unit,low,likely,high,currency,dated\noil,Hydraulic oil,gal,15.50,20,31,USD,2026-12-01\npin,Pin,piece,8,9,10,USD,\n", "USD", `
2 of 2, 0 empty, comma
2 oil 1550 2000 3100 was 1400 1900 3000 own=false
3 pin 800 900 1000`},
		{"semicolons and decimal commas", "Part;Description;Minimum;Usual;Maximum\noil;x;1.014,50;1.020,00;1.031,00\n\npin;;8;9,5;10\n", "EUR", `
2 of 2, 0 empty, semicolon
2 oil 101450 102000 103100 was 1400 1900 3000 own=false
4 pin 800 950 1000 was 800 900 1000 own=true`},
		{"each line with its own fault", "id,unit,low,likely,high,currency,dated\n" +
			"oyl,gal,1,2,3,USD,\n" + "oil,gal,9,12,10,USD,\n" + "oil,gal,cheap,2,-3,USD,\n" + "oil,L,1,2,3,USD,\n" + "oil,gal,1,2,3,EUR,\n" + "oil,gal,€1,2,3,,\n" +
			",gal,1,2,3,USD,\n" + "oil,gal,,,,USD,\n" + "oil,gal,1,,3,USD,\n" + "oil,gal,=1+1,2,3%,USD,\n" + "oil,gal,15,20,31,USD,\n" + "oil,gal,16,21,32,USD,\n", "USD", `
1 of 12, 1 empty, comma
12 oil 1500 2000 3100 was 1400 1900 3000 own=false
line 2, id: no part is called "oyl": write the id as the saved price book has it
line 3, low: 9, 12, 10 do not rise: low, likely and high in rising order
line 4, low: "cheap" is not a number: write it like 1234 or 1234.50
line 4, high: "-3" is no price: write 0 to 1,000,000,000
line 5, unit: the price is for one "L", the part is counted by "gal": convert the price
line 6, currency: it is in "EUR", and this shop counts in USD: convert the prices of the line
line 7, low: "€1" is in EUR, the column in USD: convert it
line 8, id: it is empty: write the id of the part as the saved price book has it
line 10, likely: it is empty: write a number
line 11, low: "=1+1" is a formula, not a number: paste values
line 11, high: "3%" is a percentage: write the number itself
line 13, id: "oil" stands twice: line 12 is taken, this one is not`},
		{"thousands or decimals", "id,low,likely,high\noil,1,2,\"1.234\"\n", "USD", `
0 of 1, 0 empty, comma
line 2, high: "1.234" could be 1234 or 1.234: write 1234, or other than three decimals`},
		{"free, and cents", "id,low,likely,high,currency\noil,0,0,0.01,$\n", "USD", `
1 of 1, 0 empty, comma
2 oil 0 0 1 was 1400 1900 3000 own=false`},
		{"older than the examples", "id,low,likely,high,dated\noil,1,2,3,2025-01-31\npin,1,2,3,2025-01-31\nplate,1,2,3,soon\n", "USD", `
3 of 3, 0 empty, comma
2 oil 100 200 300 was 1400 1900 3000 own=false (It is dated 2025-01-31, older than the example price of 2026-11-01 that it replaces.)
3 pin 100 200 300 was 800 900 1000 own=true
4 plate 100 200 300 was 1000 1650 2800 own=false ("soon" is no date: write it like 2025-12-31)`},
		{"a part no rubric names any more", "id,low,likely,high\ngone,1,2,4\n", "USD", `
1 of 1, 0 empty, comma
2 gone 100 200 400 was 100 200 300 own=true`},
		{"a part of the shop's own", "id,unit,low,likely,high\nrail,ft,1,2,4\n", "USD", `
1 of 1, 0 empty, comma
2 rail 100 200 400 was 200 300 400 own=false`},
		{"cells too many", "id,low,likely,high\noil,1,2,3,4\npin,1,2,3\n", "USD", `
1 of 2, 0 empty, comma
3 pin 100 200 300 was 800 900 1000 own=true
line 2: 5 cells where the first line names 4: the row is left out; a text with the separator in it belongs in quotation marks`},
	} {
		p, err := priceJudge().ReadPrices([]byte(c.src), PriceBook{Own: own, Parts: ownParts, Currency: c.currency, Dated: "2026-11-01"})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if got := shownPrices(p); got != strings.TrimSpace(c.want) {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, got, strings.TrimSpace(c.want))
		}
	}
}

func TestReadPricesRefuses(t *testing.T) {
	for _, c := range []struct{ name, src, currency, says string }{
		{"no table", "", "USD", "the file is empty"},
		{"a spreadsheet", "PK\x03\x04", "USD", "save it as CSV first"},
		{"other columns", "name,price\na,1\n", "USD", "line 1: no column is called id or low or high: it names id, low, likely and high"},
		{"no currency of here", "id,low,likely,high\n", "XXX", "currency: "},
	} {
		_, err := priceJudge().ReadPrices([]byte(c.src), PriceBook{Currency: c.currency})
		var e *Error
		if !errors.As(err, &e) || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want it to say %q", c.name, err, c.says)
		}
	}
}

// TestPricesRoundTrip: what is written is read again without a change or a problem,
// and nothing in it is run by a spreadsheet.
func TestPricesRoundTrip(t *testing.T) {
	own := map[string]Range{"pin": {8_05, 9_00, 10_10}, "=gone": {1_00, 2_00, 3_00}}
	book := PriceBook{Own: own, Parts: ownParts, Currency: "USD", Dated: "2026-11-01"}
	text, err := priceJudge().WritePrices(book, "2026-12-24")
	if err != nil {
		t.Fatal(err)
	}
	want := "id,title,unit,low,likely,high,currency,dated\r\n" +
		"oil,Hydraulic oil,gal,14.00,19.00,30.00,USD,2026-11-01\r\n" +
		"plate,\"'=Plate, 1/4\"\" thick\",piece,10.00,16.50,28.00,USD,2026-11-01\r\n" +
		"pin,Pin,piece,8.05,9.00,10.10,USD,2026-12-24\r\n" +
		"rail,Rail of ours,ft,2.00,3.00,4.00,USD,2026-11-01\r\n" +
		"'=gone,,,1.00,2.00,3.00,USD,2026-12-24\r\n"
	if text != want {
		t.Errorf("%s\nwant\n%s", text, want)
	}
	p, err := priceJudge().ReadPrices([]byte(text), book)
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Rows) != 5 || len(p.Problems) != 0 {
		t.Errorf("%s", shownPrices(p))
	}
	for _, r := range p.Rows {
		if r.Changes || r.Note != "" {
			t.Errorf("%+v", r)
		}
	}
	var e *Error
	if _, err := priceJudge().WritePrices(PriceBook{Own: map[string]Range{"pin": {3, 2, 1}}, Currency: "USD"}, "2026-12-24"); !errors.As(err, &e) || e.Field != "own.pin" {
		t.Error(err)
	}
}
