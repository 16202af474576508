package depreciation

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// ASABE D497.7 (2011, R2020): formula published, coefficients from memory; the
// 23 % of M01 is printed in Iowa State University A3-29.
func TestRemainingValue(t *testing.T) {
	for _, r := range []struct {
		id, class    string
		years, hours float64
		want         float64
	}{
		{"M01 tractor over 150 hp", "tractor-over-112-kw", 15, 400, .227639},
		{"M03 tractor 80-150 hp", "tractor-60-112-kw", 10, 300, .374441},
		{"M04 tractor under 80 hp", "tractor-under-60-kw", 5, 200, .477510},
		{"M05 combine", "combine", 8, 250, .292032},
		{"M06 skid-steer", "skid-steer", 6, 500, .311243},
		{"M07 miscellaneous", "miscellaneous", 7, 0, .421619},
	} {
		c, ok := FindClass(r.class)
		if !ok {
			t.Fatalf("%s: no class %s", r.id, r.class)
		}
		v, err := RemainingValue(c, r.years, r.hours)
		near(t, r.id, must(t, v, err), r.want, 1e-4)
	}
	c, _ := FindClass("tractor-over-112-kw")
	v, err := RemainingValue(c, 15, 400)
	printed := math.Round(100 * must(t, v, err))
	if printed != 23 {
		t.Errorf("M01: %v %%, printed 23 %%", printed)
	}
	near(t, "M02 salvage of 150,000 at the printed 23 %", 150_000*printed/100, 34_500, 1e-9)
	if c, ok := FindClass("lathe"); ok {
		t.Errorf("a class %v for lathes: none is published", c)
	}
}

// The same table: C1^2 is left at age 0, and every class loses with age and hours.
func TestEveryClassLoses(t *testing.T) {
	ids := map[string]bool{}
	for _, c := range Classes {
		if ids[c.ID] || c.Title == "" {
			t.Errorf("%q stands twice or has no title", c.ID)
		}
		ids[c.ID] = true
		t.Run(c.ID, rapid.MakeCheck(func(t *rapid.T) {
			years, more := rapid.Float64Range(0, 60).Draw(t, "years"), rapid.Float64Range(0, 20).Draw(t, "more")
			hours, longer := rapid.Float64Range(0, 2000).Draw(t, "hours"), rapid.Float64Range(0, 2000).Draw(t, "longer")
			at := func(years, hours float64) float64 {
				v, err := RemainingValue(c, years, hours)
				return must(t, v, err)
			}
			v := at(years, hours)
			if v < 0 || v > c.C1*c.C1 {
				t.Fatalf("%v years, %v hours: %v outside 0 to C1^2 = %v", years, hours, v, c.C1*c.C1)
			}
			if w := at(years+more, hours); w > v {
				t.Fatalf("%v more years: %v after %v", more, w, v)
			}
			if w := at(years, hours+longer); w > v || (c.C3 == 0 && w != v) {
				t.Fatalf("%v more hours: %v after %v", longer, w, v)
			}
		}))
	}
	if len(ids) != 12 {
		t.Errorf("%d classes, the table has 12", len(ids))
	}
}

// The schedule's floor holds for the curve of miscellaneous machines, and no
// number that comes in is without an answer.
func TestMiscellaneous(t *testing.T) {
	near(t, "M07", Miscellaneous(7), .421619, 1e-4)
	for _, c := range []struct{ years, want float64 }{
		{60, PercentGoodFloor}, {math.Inf(1), PercentGoodFloor}, {math.NaN(), PercentGoodFloor},
		{-5, .943 * .943}, {math.Inf(-1), .943 * .943},
	} {
		near(t, "clamped", Miscellaneous(c.years), c.want, 1e-12)
	}
}
