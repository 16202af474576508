package limit

import (
	"strings"
	"testing"
)

// California Title 8 s.3545(b): 3 in or 10 % of the oil, plungers fully up; both
// are asked. Exact.
func TestReservoirLevel(t *testing.T) {
	check(t, "reservoir-level", 1e-9, []row{
		{"LF04", "depth=3.5 in; share=8 %", 8, "%", Beyond, nil},
		{"LF04 shallow", "depth=2.9 in; share=20 %", 2.9, "in", Beyond, nil},
		{"LF04 edge", "depth=3 in; share=10 %", 3, "in", Within, nil},
		{"LF04 metric edge", "depth=76.2 mm; share=10 %", 76.2, "mm", Within, nil},
		{"dry", "depth=0 in; share=0 %", 0, "in", Beyond, nil},
		{"maker", "depth=3.5 in; share=20 %; maker=4 in", 3.5, "in", Beyond, nil},
	})
	holds(t, "reservoir-level", []held{
		{"depth", "depth=3.5 in; share=20 %", 3, "in", Published},
		{"share", "depth=3.5 in; share=8 %", 10, "%", Published},
	})
	refuses(t, "reservoir-level", []refusal{
		{"depth=3 in", "share", "missing"},
		{"depth=3 in; share=110 %", "share", "between 0 % and 100 %"},
		{"depth=3 psi; share=10 %", "depth", "unit of pressure"},
	})
}

// ANSI/ALI ALOIM (2020): at least once a year, read in trade articles. 29 CFR
// 1910.244(a)(2)(vi)(a): jacks every six months. Exact.
func TestInspectionInterval(t *testing.T) {
	check(t, "inspection-interval", 0, []row{
		{"LF07", "equipment=vehicle-lift; months=13", 13, "months", Beyond, nil},
		{"LF07 edge", "equipment=vehicle-lift; months=12", 12, "months", Within, nil},
		{"PR13", "equipment=jack; months=7", 7, "months", Beyond, nil},
		{"PR13 edge", "equipment=jack; months=6", 6, "months", Within, nil},
		{"this month", "equipment=jack; months=0", 0, "months", Within, nil},
		{"maker stricter", "equipment=vehicle-lift; months=7; maker=6", 7, "months", Beyond, nil},
		{"maker does not loosen", "equipment=vehicle-lift; months=13; maker=24", 13, "months", Beyond, nil},
	})
	holds(t, "inspection-interval", []held{
		{"lift", "equipment=vehicle-lift; months=1", 12, "months", Reprint},
		{"jack", "equipment=jack; months=1", 6, "months", Published},
		{"maker", "equipment=jack; months=1; maker=3", 3, "months", Own},
	})
	refuses(t, "inspection-interval", []refusal{
		{"equipment=jack; months=1.5", "months", "not a whole number"},
		{"equipment=jack; months=-1", "months", "cannot be -1"},
		{"equipment=jack", "months", "missing"},
	})
}

// Michigan R 408.17251(3): maker, model, serial number, rated capacity. Exact.
func TestRatingPlate(t *testing.T) {
	check(t, "rating-plate", 0, []row{
		{"LF08", "maker=yes; model=yes; serial=no; capacity=yes", 1, "missing", Beyond, nil},
		{"LF08 all there", "maker=yes; model=yes; serial=yes; capacity=yes", 0, "missing", Within, nil},
		{"no plate", "maker=no; model=no; serial=no; capacity=no", 4, "missing", Beyond, nil},
	})
	for _, part := range plateParts {
		g := map[string]string{"maker": "yes", "model": "yes", "serial": "yes", "capacity": "yes"}
		g[part[0]] = "no"
		if res, err := Compute("rating-plate", g); err != nil || res.Finding != Beyond || !strings.HasSuffix(res.Text, ": "+part[1]+".") {
			t.Errorf("%s missing: %v %q", part[0], err, res.Text)
		}
	}
	refuses(t, "rating-plate", []refusal{
		{"model=yes; serial=yes; capacity=yes", "maker", "missing"},
		{"maker=3 in; model=yes; serial=yes; capacity=yes", "maker", "one of yes, no"},
	})
}

// California Title 8 s.3542(a) to (c).
func TestLiftStandard(t *testing.T) {
	says(t, "lift-standard", []saying{
		{"LF10", "made=2010", map[string]string{"design standard": "ANSI/ALI ALCTV-1998"}},
		{"the day after 28 July 2005", "made=2006", map[string]string{"design standard": "ANSI/ALI ALCTV-1998"}},
		{"1995", "made=1995", map[string]string{"design standard": "ANSI/ALI B153.1-1990 or ALCTV-1998"}},
		{"1980", "made=1980", map[string]string{"design standard": "ANSI B153.1-1974 or -1981"}},
	})
	for year, both := range map[string][2]string{"1976": {"B153.1-1974", "November 1976"}, "1994": {"-1981", "B153.1-1990"}, "2005": {"B153.1-1990", "ALCTV-1998 after"}} {
		res, err := Compute("lift-standard", map[string]string{"made": year})
		if err != nil || !strings.Contains(res.Text, both[0]) || !strings.Contains(res.Text, both[1]) {
			t.Errorf("%s: %v %q, want it to name both sides of the date", year, err, res.Text)
		}
	}
	refuses(t, "lift-standard", []refusal{
		{"made=98", "made", "between 1920 and 2100"},
		{"made=1998.5", "made", "not a whole number"},
	})
}
