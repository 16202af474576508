package appraisal

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func salesOf(t testing.TB, change func(*File)) *Result {
	f := testFile()
	f.Comparables, f.NewPrice = nil, nil
	change(f)
	r, err := testJudge().Of(f, Ask{})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func lots(n int, price func(int) Money) []Comparable {
	var out []Comparable
	for i := range n {
		out = append(out, Comparable{ID: fmt.Sprint("c", i), Title: fmt.Sprint("lift ", i), Basis: "sold", Price: price(i), Condition: "sound"})
	}
	return out
}

// More comparables that agree narrow the range, and never to nothing.
func TestRangeNarrowsWithComparables(t *testing.T) {
	last := math.Inf(1)
	for _, n := range []int{1, 3, 10, 100} {
		r := salesOf(t, func(f *File) { f.Comparables = lots(n, func(int) Money { return 2000_00 }) })
		sd := r.Worth.LogSD
		if sd >= last || sd < 0.02 {
			t.Errorf("%d comparables: log sd %v after %v", n, sd, last)
		}
		if r.Worth.Centre < 1990_00 || r.Worth.Centre > 2010_00 {
			t.Errorf("%d equal comparables of 2,000 say %d", n, r.Worth.Centre)
		}
		last = sd
	}
}

// An outlier loses weight and says so; a sale told twice counts once.
func TestOutlierAndRepeat(t *testing.T) {
	base := func(i int) Money { return Money(1900_00 + 20_00*i) }
	far := salesOf(t, func(f *File) {
		f.Comparables = lots(10, base)
		f.Comparables[9].Price = 12_000_00
	})
	row := far.Worth.Rows[9]
	if !row.Outlier || !strings.Contains(row.Note, "stands apart") || row.Weight > 0.05 {
		t.Errorf("outlier: %+v", row)
	}
	if c := far.Worth.Centre; c < 1900_00 || c > 2150_00 {
		t.Errorf("with an outlier the middle is %d", c)
	}
	once := salesOf(t, func(f *File) { f.Comparables = lots(3, base) })
	twice := salesOf(t, func(f *File) {
		f.Comparables = lots(3, base)
		again := f.Comparables[2]
		again.ID = "again"
		f.Comparables = append(f.Comparables, again)
	})
	if once.Worth.Centre != twice.Worth.Centre || twice.Worth.Rows[3].Same != "c2" || twice.Worth.Sales.Count != 3 {
		t.Errorf("once %d, twice %d: %+v", once.Worth.Centre, twice.Worth.Centre, twice.Worth.Rows[3])
	}
}

// Each adjustment goes the way the trade has it, and none is left where it is
// switched off.
func TestAdjustmentsAndSwitches(t *testing.T) {
	for _, c := range []struct {
		cause string
		set   func(*File, *Comparable)
		up    bool
	}{
		{"asked", func(_ *File, c *Comparable) { c.Basis = "asked" }, false},
		{"age", func(f *File, c *Comparable) { f.Listing.Made, c.Made, f.Listing.EffectiveAge = 2006, 2022, 0 }, false},
		{"age", func(f *File, c *Comparable) { f.Listing.Made, c.Made, f.Listing.EffectiveAge = 2006, 2006, 3 }, true},
		{"hours", func(f *File, c *Comparable) { f.Listing.Hours, c.Hours = 500, 9000 }, true},
		{"capacity", func(f *File, c *Comparable) {
			f.Listing.Capacity, c.Capacity = &Quantity{12_000, "lb"}, &Quantity{9000, "lb"}
		}, true},
		{"condition", func(_ *File, c *Comparable) { c.Condition = "bad" }, true},
		{"condition", func(_ *File, c *Comparable) { c.Condition = "as_new" }, false},
		{"complete", func(_ *File, c *Comparable) { c.Complete = "missing" }, true},
	} {
		for _, off := range []bool{false, true} {
			r := salesOf(t, func(f *File) {
				f.Comparables = lots(1, func(int) Money { return 2000_00 })
				c.set(f, &f.Comparables[0])
				f.Adjust = map[string]AdjustChoice{c.cause: {Off: off}}
			})
			row := r.Worth.Rows[0]
			found := false
			for _, a := range row.Adjustments {
				found = found || a.Cause == c.cause && a.Title != ""
			}
			if found == off {
				t.Errorf("%s, off %v: adjustments %+v", c.cause, off, row.Adjustments)
			}
			if want := 2000_00; !off && (row.Adjusted > Money(want)) != c.up || off && row.Adjusted != Money(want) {
				t.Errorf("%s, off %v: 2,000 becomes %d", c.cause, off, row.Adjusted)
			}
		}
	}
}

// The capacity rule before any data is the six-tenths rule (M16's ratio).
func TestOneComparableIsScaledByThePrior(t *testing.T) {
	r := salesOf(t, func(f *File) {
		f.Comparables = lots(1, func(int) Money { return 5200_00 })
		f.Listing.Capacity, f.Comparables[0].Capacity = &Quantity{7500, "lb"}, &Quantity{10_000, "lb"}
	})
	near(t, "M16 ratio", float64(r.Worth.Rows[0].Adjusted), 4375_63, 1e-4)
}

// Rates move from the prior to the data: sold prices rising with the square root
// of the size teach an exponent near a half, 41 %
// more for twice the size, where the prior of six tenths says 52.
func TestRatesLearn(t *testing.T) {
	r := salesOf(t, func(f *File) {
		f.Listing.Capacity = &Quantity{10_000, "lb"}
		f.Comparables = lots(60, func(i int) Money { return Money(2000_00 * math.Sqrt(float64(6000+200*i)/10_000)) })
		for i := range f.Comparables {
			f.Comparables[i].Capacity = &Quantity{float64(6000 + 200*i), "lb"}
		}
	})
	for _, a := range r.Worth.Rates {
		if a.Cause == "capacity" && (a.FromData < 0.5 || a.Says != "Twice the size brings 42\u00a0% more.") {
			t.Errorf("%+v", a)
		}
		if a.Cause == "condition" && a.FromData > 0.01 {
			t.Errorf("nothing was told of condition: %+v", a)
		}
	}
}

// The two approaches by hand: weights by precision, and Birge's widening.
func TestReconcile(t *testing.T) {
	b, wide := reconcile(belief{mu: 8, sd: 0.2}, belief{mu: 8.1, sd: 0.4})
	near(t, "mean", b.mu, (8/0.04+8.1/0.16)/(1/0.04+1/0.16), 1e-12)
	near(t, "sd", b.sd, math.Sqrt(1/(1/0.04+1/0.16)), 1e-12)
	if wide {
		t.Error("they agree within their spread")
	}
	b, wide = reconcile(belief{mu: 8, sd: 0.2}, belief{mu: 9, sd: 0.2})
	near(t, "widened sd", b.sd, 0.2/math.Sqrt2*(1/(0.2*math.Sqrt2)), 1e-12)
	if !wide {
		t.Error("they disagree and are not widened")
	}
}

// The cost approach step by step against M12's and M13's rules and an index.
func TestCostApproachSteps(t *testing.T) {
	f := testFile()
	f.Comparables = nil
	f.NewPrice = &NewPrice{Price: Range{18_000_00, 18_000_00, 18_000_00}, Index: &Index{Then: 210.7, Now: 262.4}}
	plainly := func() Money {
		r, err := testJudge().Of(f, Ask{})
		if err != nil {
			t.Fatal(err)
		}
		if r.Worth.Cost == nil {
			t.Fatalf("no cost approach: %v", r.Notes)
		}
		return r.Worth.Cost.Centre
	}
	indexed := plainly()
	f.NewPrice.Index = nil
	before := plainly()
	near(t, "M67", float64(indexed)/float64(before), 22_416.71/18_000, 1e-5)
	f.Lost = &Lost{Functional: 10_00, Economic: 5_00}
	near(t, "M13", float64(plainly())/float64(before), 4617.0/5400, 1e-5)
	f.Lost = &Lost{Used: 80, Rated: 100}
	near(t, "M14", float64(plainly())/float64(before), 1-0.1446, 1e-3)
	f.Lost = nil
	f.Listing.EffectiveAge = 1
	if young := plainly(); young <= before {
		t.Errorf("a younger effective age gives %d, not more than %d", young, before)
	}
}

// Whatever comparables say, the answer is finite or says what is missing.
func TestWorthNeverBreaks(t *testing.T) {
	jd := testJudge()
	rapid.Check(t, func(t *rapid.T) {
		f := testFile()
		n := rapid.IntRange(0, 12).Draw(t, "n")
		f.Comparables = lots(n, func(int) Money { return 1 })
		for i := range f.Comparables {
			c := &f.Comparables[i]
			c.Price = Money(rapid.Int64Range(0, int64(maxMoney)).Draw(t, "price"))
			c.Basis = rapid.SampledFrom([]string{"asked", "sold"}).Draw(t, "basis")
			c.Made = rapid.SampledFrom([]int{0, 1800, 2020, 2200}).Draw(t, "made")
			c.Hours = rapid.SampledFrom([]float64{0, 1, 1e6}).Draw(t, "hours")
			c.Condition = rapid.SampledFrom([]string{"", "as_new", "bad"}).Draw(t, "condition")
			c.Complete = rapid.SampledFrom([]string{"", "missing"}).Draw(t, "complete")
			c.Date = rapid.SampledFrom([]string{"", "1900-01-01", "2026-01-31", "2200-12-31"}).Draw(t, "date")
		}
		r, err := jd.Of(f, Ask{})
		if err != nil {
			t.Fatal(err)
		}
		w := r.Worth
		if w.Known && !(w.Low <= w.Centre && w.Centre <= w.High && w.LogSD > 0 && w.LogSD < vague+0.001) {
			t.Fatalf("%+v", w)
		}
		if !w.Known && w.Missing == "" {
			t.Fatal("unknown without a reason")
		}
		sum := 0.0
		for _, row := range w.Rows {
			if math.IsNaN(row.Weight) || row.Weight < 0 || row.Adjusted < 0 {
				t.Fatalf("%+v", row)
			}
			sum += row.Weight
		}
		if w.Sales != nil && math.Abs(sum-1) > 0.01 {
			t.Fatalf("the weights sum to %v", sum)
		}
	})
}
