package table

import (
	"math"
	"strings"
	"testing"
	"unicode"
)

func TestNumber(t *testing.T) {
	const either, point, comma = 0, 1, 2
	for _, c := range []struct {
		cell string
		mark int // with which decimal mark it is read so
		want float64
	}{
		{"0", either, 0}, {"2100", either, 2100}, {" 2100 ", either, 2100}, {"12.5", either, 12.5}, {"12,5", either, 12.5},
		{"1,234.50", either, 1234.5}, {"1.234,50", either, 1234.5}, {"1,234,567", either, 1234567}, {"1.234.567", either, 1234567},
		{"1 234,50", either, 1234.5}, {"1\u00a0234,50", either, 1234.5}, {"1\u202f234.50", either, 1234.5}, {"1\u2009234", either, 1234},
		{"1'234.50", either, 1234.5}, {"1’234’567", either, 1234567}, {"12 345 678", either, 12345678},
		{"$2,100", point, 2100}, {"2100 USD", either, 2100}, {"€ 950", either, 950}, {"950€", either, 950}, {"950.00 EUR", either, 950}, {"$1,200.00 USD", either, 1200},
		{"US$ 1,200.50", either, 1200.5}, {"CHF 1'250.00", either, 1250}, {"Fr. 1250", either, 1250}, {"kr. 500", either, 500}, {"R1200", either, 1200},
		{"950,-", either, 950}, {"950.-", either, 950}, {"1.950,-", either, 1950}, {"1,950.-", either, 1950}, {"950,– €", either, 950}, {"950,-€", either, 950},
		{"(120)", either, -120}, {"($1,200.50)", either, -1200.5}, {"$(120)", either, -120}, {"-120", either, -120}, {"−120", either, -120}, {"120-", either, -120},
		{"$-120", either, -120}, {"-$120", either, -120}, {"- 120", either, -120}, {"+120", either, 120}, {"120 USD-", either, -120}, {"-0", either, 0},
		{".5", either, 0.5}, {",5", either, 0.5}, {"0,375", either, 0.375}, {"0.375", either, 0.375}, {"1234,567", either, 1234.567}, {"12,3456", either, 12.3456},
		{"1 234,567", either, 1234.567},
		{"1,234", point, 1234}, {"1,234", comma, 1.234}, {"1.234", point, 1.234}, {"1.234", comma, 1234},
		{"9,000", point, 9000}, {"9.000", comma, 9000}, {"12,500", point, 12500}, {"$ 12.500", comma, 12500},
		{"1234.56999999999994", either, 1234.57}, // as spreadsheets write it
	} {
		for _, decimalComma := range []bool{false, true} {
			if c.mark == point && decimalComma || c.mark == comma && !decimalComma {
				continue
			}
			got, err := Number(c.cell, decimalComma)
			if err != nil || got != c.want || math.Signbit(got) && got == 0 {
				t.Errorf("%q with decimal comma %v: %v, %v; want %v", c.cell, decimalComma, got, err, c.want)
			}
		}
	}
}

func TestNumberRefuses(t *testing.T) {
	for _, c := range []struct{ cell, says string }{
		{"", "it is empty: write a number"}, {" \u00a0", "it is empty"},
		{"=B2*0.9", `"=B2*0.9" is a formula, not a number: paste values`}, {"=1+1", "is a formula"}, {`=HYPERLINK("x","y")`, "is a formula"},
		{"@SUM(A1)", "is a formula"}, {"+1+1", "is a formula"}, {"-1+1", "is a formula"}, {"-B2*2", "is a formula"},
		{"12 %", `"12 %" is a percentage: write the number itself`}, {"-12%", "is a percentage"},
		{"1.2E+05", `"1.2E+05" is cut short to a power of ten`}, {"1e5", "power of ten"},
		{"abc", `"abc" is not a number: write it like 1234 or 1234.50`}, {"-", "is not a number"}, {"12 lb", "is not a number"}, {"12k", "is not a number"},
		{"6 ft", "is not a number"}, {`12"`, "is not a number"}, {"1/2", "is not a number"}, {"0x10", "is not a number"}, {"1_000", "is not a number"},
		{"NaN", "is not a number"}, {"Inf", "is not a number"}, {"infinity1", "is not a number"}, {"٣", "is not a number"},
		{"12 34", "is not a number"}, {"1,23,456", "is not a number"}, {"1.23.4", "is not a number"}, {"1234,567.8", "is not a number"}, {"1 234'567", "is not a number"},
		{"1,234 567", "is not a number"}, {"1.", "is not a number"}, {"1,", "is not a number"}, {"1..2", "is not a number"}, {"1,2,", "is not a number"},
		{"(-120)", "is not a number"}, {"(120)-", "is not a number"}, {"--120", "is a formula"}, {"(120", "is not a number"}, {"€ 950 USD", "is not a number"},
		{"9.5.-", "is not a number"}, {"2100 obo", "is not a number"}, {"31.12.2025", "is not a number"},
		{strings.Repeat("9", 17), "is too large: at most 1000000000000000"}, {strings.Repeat("9", 61), "is not a number"},
	} {
		for _, decimalComma := range []bool{false, true} {
			if n, err := Number(c.cell, decimalComma); err == nil || !strings.Contains(err.Error(), c.says) {
				t.Errorf("%q: %v, %v; want %q", c.cell, n, err, c.says)
			}
		}
	}
	for _, c := range []struct {
		cell         string
		decimalComma bool
	}{{"9,000", true}, {"9.000", false}, {"€ 12,000", true}} {
		n, err := Number(c.cell, c.decimalComma)
		if err == nil || !strings.Contains(err.Error(), " could be ") {
			t.Errorf("%q with decimal comma %v: %v, %v", c.cell, c.decimalComma, n, err)
		}
	}
	if _, err := Number("9,000", true); err.Error() != `"9,000" could be 9000 or 9: write 9000 or 9` {
		t.Error(err)
	}
}

func TestAmountGivesTheCurrency(t *testing.T) {
	for cell, want := range map[string]string{
		"2100": "", "$2,100": "$", "2100 USD": "USD", "$2,100 USD": "USD", "USD $2100": "USD", "€ 950": "EUR", "950 Euro": "EUR", "£5": "GBP",
		"500 kr": "kr", "SEK 500 kr": "SEK", "(C$120)": "CAD",
	} {
		if _, got, err := Amount(cell, false); err != nil || got != want {
			t.Errorf("%q: %q, %v; want %q", cell, got, err, want)
		}
	}
	for name, want := range map[string]string{
		"Price": "", "Price (USD)": "USD", "Price $": "$", "Preis in €": "EUR", "Prix, euros": "EUR", "R": "", "Fr": "", "price_eur": "EUR",
	} {
		if got := Currency(name); got != want {
			t.Errorf("column %q: %q, want %q", name, got, want)
		}
	}
	for _, c := range []struct {
		a, b string
		want bool
	}{{"", "EUR", true}, {"$", "CAD", true}, {"USD", "$", true}, {"USD", "CAD", false}, {"$", "EUR", false}, {"kr", "NOK", true}, {"$", "kr", false}} {
		if Alike(c.a, c.b) != c.want || Alike(c.b, c.a) != c.want {
			t.Errorf("%q and %q: want %v", c.a, c.b, c.want)
		}
	}
}

func TestDecimalComma(t *testing.T) {
	for _, c := range []struct {
		name         string
		cells        []string
		comma, point int
	}{
		{"nothing shows", []string{"1,234", "9.000", "12", "x,y", "31.12.2025", "12:30", ""}, 0, 0},
		{"a comma", []string{"12,5", "1,234"}, 1, 0},
		{"groups by points", []string{"1.234.567"}, 1, 0},
		{"both marks", []string{"1.234,50", "1,234.50", "12.5"}, 1, 2},
		{"currency and units", []string{"€ 3,5", "4,5 t", "12.5 hrs", "Lift 9,5"}, 2, 1},
		{"no cents", []string{"950,-", "950.-"}, 1, 1},
		{"zero before it", []string{"0,375"}, 1, 0},
	} {
		comma, point := Marks(c.cells)
		if comma != c.comma || point != c.point || DecimalComma(c.cells) != (c.comma > c.point) {
			t.Errorf("%s: %d, %d, want %d, %d", c.name, comma, point, c.comma, c.point)
		}
	}
}

func TestDoubtful(t *testing.T) {
	for _, c := range []struct {
		cell         string
		comma, point bool
	}{{"1,234", true, false}, {"1.234", false, true}, {"$ 9,000", true, false}, {"0,375", false, false}, {"1234", false, false}, {"1,234.5", false, false}, {"x", false, false}} {
		if Doubtful(c.cell, true) != c.comma || Doubtful(c.cell, false) != c.point {
			t.Errorf("%q", c.cell)
		}
	}
}

func FuzzNumber(f *testing.F) {
	for _, s := range []string{"1,234.50", "1.234,50", "1\u00a0234,50", "1'234", "$2,100", "2100 USD", "€ 950", "(120)", "120-", "=B2*0.9", "12 %", "1.2E+05", "9,000", "950,-", "Fr. 1"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, cell string) {
		var read [2]float64
		var errs [2]error
		for i, decimalComma := range []bool{false, true} {
			read[i], errs[i] = Number(cell, decimalComma)
			if err := errs[i]; err != nil {
				if s := err.Error(); len(s) > 700 || strings.ContainsFunc(s, unicode.IsControl) {
					t.Fatalf("no readable line: %.500q", s)
				}
			} else if n := read[i]; math.IsNaN(n) || math.Abs(n) > maxNumber || n == 0 && math.Signbit(n) {
				t.Fatalf("%q: %v", cell, n)
			}
			if Doubtful(cell, decimalComma) && errs[i] == nil && math.Abs(read[i]) >= 1000 {
				t.Fatalf("%q is doubtful and read as %v", cell, read[i])
			}
		}
		// Both marks read the same, or exactly one of them is doubtful.
		if same := read[0] == read[1] && (errs[0] == nil) == (errs[1] == nil); same == (Doubtful(cell, false) != Doubtful(cell, true)) {
			t.Fatalf("%q: %v and %v, %v and %v", cell, read[0], read[1], errs[0], errs[1])
		}
		if shown(cell) != 0 && !strings.ContainsAny(cell, ",.") {
			t.Fatalf("%q shows a mark it does not have", cell)
		}
	})
}
