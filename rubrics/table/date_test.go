package table

import (
	"reflect"
	"strings"
	"testing"
	"time"
	"unicode"

	"pgregory.net/rapid"
)

func TestDate(t *testing.T) {
	const either, day, month = 0, 1, 2
	for _, c := range []struct {
		cell  string
		first int // what stands first where it is read so
		want  string
	}{
		{"2025-12-31", either, "2025-12-31"}, {" 2025-3-1 ", either, "2025-03-01"}, {"2025/03/01", either, "2025-03-01"}, {"2025.03.01", either, "2025-03-01"},
		{"20250301", either, "2025-03-01"}, {"2025-03-01T12:30:00Z", either, "2025-03-01"}, {"2025-03-01 12:30", either, "2025-03-01"}, {"3/31/2025, 9:05 PM", either, "2025-03-31"},
		{"31.12.2025", either, "2025-12-31"}, {"1.2.2025", either, "2025-02-01"}, {"01.02.25", either, "2025-02-01"},
		{"31/12/2025", either, "2025-12-31"}, {"12/31/2025", either, "2025-12-31"}, {"31-12-2025", either, "2025-12-31"}, {"12-31-25", either, "2025-12-31"},
		{"03/04/2025", day, "2025-04-03"}, {"03/04/2025", month, "2025-03-04"}, {"3-4-25", day, "2025-04-03"}, {"5/5/2025", either, "2025-05-05"},
		{"1/13/68", either, "2068-01-13"}, {"1/13/69", either, "1969-01-13"}, // POSIX strptime %y
		{"2025", either, "2025-07-01"}, {"2025-03", either, "2025-03-01"}, {"03/2025", either, "2025-03-01"}, {"2025/3", either, "2025-03-01"},
		{"Mar 2025", either, "2025-03-01"}, {"March 2025", either, "2025-03-01"}, {"2025 March", either, "2025-03-01"}, {"März 2025", either, "2025-03-01"}, {"marzo de 2025", either, "2025-03-01"}, {"août 2025", either, "2025-08-01"}, {"de\u0301c. 2025", either, "2025-12-01"},
		{"3 Mar 2025", either, "2025-03-03"}, {"Mar 3, 2025", either, "2025-03-03"}, {"3-Mar-25", either, "2025-03-03"}, {"3. Dez. 2025", either, "2025-12-03"}, {"3 de marzo de 2025", either, "2025-03-03"}, {"1er mars 2025", either, "2025-03-01"}, {"March 3rd, 2025", either, "2025-03-03"}, {"2025-Mar-03", either, "2025-03-03"},
		{"29 Feb 2024", either, "2024-02-29"}, {"29.02.2000", either, "2000-02-29"},
	} {
		for _, dayFirst := range []bool{true, false} {
			if c.first == day && !dayFirst || c.first == month && dayFirst {
				continue
			}
			if got, err := Date(c.cell, dayFirst); err != nil || got != c.want {
				t.Errorf("%q with the day first %v: %q, %v; want %q", c.cell, dayFirst, got, err, c.want)
			}
		}
	}
}

func TestDateRefuses(t *testing.T) {
	for _, c := range []struct{ cell, says string }{
		{"", "it is empty: write a date like 2025-12-31"}, {"soon", `"soon" is no date: write it like 2025-12-31`}, {"=TODAY()", "is a formula, not a date: paste values"},
		{"45382", `"45382" is a spreadsheet's number of a day: give the column a date format`}, {"12:30", "is no date"}, {"12.5", "is no date"}, {"1/2", "is no date"},
		{"30.02.2025", `there is no day "30.02.2025"`}, {"29.02.2025", "there is no day"}, {"29.02.2100", "there is no day"}, {"31/31/2025", "there is no day"}, {"12.31.2025", "there is no day"}, {"0/1/2025", "there is no day"}, {"2025-00-10", "there is no day"}, {"31 Apr 2025", "there is no day"}, {"13/2025", "there is no day"},
		{"1/1/1899", "is not of this age: a year from 1900 to 2200"}, {"2201-01-01", "is not of this age"}, {"1/1/0001", "is not of this age"},
		{"Mar-25", "is no date"}, {"Mar 3", "is no date"}, {"Mar Apr 2025", "is no date"}, {"2025-1-1-1", "is no date"}, {"1/2-2025", "is no date"}, {"1/2/025", "is no date"}, {"2025.5", "is no date"}, {"1899", "is no date"}, {"Lift 2025", "is no date"}, {"may", "is no date"},
		{"+1/1/2025", "is no date"}, {strings.Repeat("1", 100), "is no date"},
	} {
		for _, dayFirst := range []bool{true, false} {
			if got, err := Date(c.cell, dayFirst); err == nil || !strings.Contains(err.Error(), c.says) {
				t.Errorf("%q: %q, %v; want %q", c.cell, got, err, c.says)
			}
		}
	}
}

func TestOrderOf(t *testing.T) {
	for _, c := range []struct {
		name  string
		cells []string
		want  Order
	}{
		{"nothing to order", []string{"2025-01-02", "1.2.2025", "Mar 2025", "", "x", "5/5/2025", "13/13/2025", "0/3/2025", "45/3/2025", "3/4/1850"}, Order{}},
		{"the day first", []string{"3/4/2025", "13/4/2025", "4/5/2025"}, Order{Day: 1, Open: []int{0, 2}}},
		{"the month first", []string{"4/13/2025", "4/14/2025"}, Order{Month: 2}},
		{"both", []string{"4/13/2025", "13/4/2025"}, Order{Day: 1, Month: 1}},
	} {
		if got := OrderOf(c.cells); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: %+v, want %+v", c.name, got, c.want)
		}
	}
}

// Every day of 1900 to 2200 comes back from each of the ways in which package
// time writes it.
func TestDatesComeBack(t *testing.T) {
	start := time.Date(1900, 1, 1, 0, 0, 0, 0, time.UTC)
	rapid.Check(t, func(t *rapid.T) {
		day := start.AddDate(0, 0, rapid.IntRange(0, 109_937).Draw(t, "day"))
		layout := rapid.SampledFrom([]string{time.DateOnly, "2006/1/2", "20060102", "02.01.2006", "2/1/2006", "1/2/2006", "2 Jan 2006", "January 2, 2006", time.RFC3339, time.DateTime, "1-2-2006 15:04"}).Draw(t, "layout")
		dayFirst := strings.HasPrefix(layout, "2/") || (layout[0] != '1' && rapid.Bool().Draw(t, "day first"))
		got, err := Date(day.Format(layout), dayFirst)
		if err != nil || got != day.Format(time.DateOnly) {
			t.Fatalf("%s: %q, %v", day.Format(layout), got, err)
		}
	})
}

func FuzzDate(f *testing.F) {
	for _, s := range []string{"2025-12-31", "31.12.2025", "31/12/2025", "12/31/25", "2025", "Mar 2025", "3. März 2025", "2025-03-01T12:30:00Z", "20250301", "45382", "29.02.2100", "3/31/2025 9:05 PM"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, cell string) {
		var read [2]string
		for i, dayFirst := range []bool{false, true} {
			got, err := Date(cell, dayFirst)
			if err != nil {
				if s := err.Error(); len(s) > 700 || strings.ContainsFunc(s, unicode.IsControl) {
					t.Fatalf("no readable line: %.500q", s)
				}
				continue
			}
			if day, err := time.Parse(time.DateOnly, got); err != nil || day.Year() < 1900 || day.Year() > 2200 {
				t.Fatalf("%q: %q is no day", cell, got)
			}
			read[i] = got
		}
		if open := len(OrderOf([]string{cell}).Open) == 1; open != (read[0] != read[1]) {
			t.Fatalf("%q: %q and %q, open %v", cell, read[0], read[1], open)
		}
	})
}
