package appraisal

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"time"
)

// judgeEdited judges an edited test file and fails on anything but a result.
func judgeEdited(t *testing.T, edit func(f *File)) *Result {
	t.Helper()
	f := testFile()
	edit(f)
	start := time.Now()
	r, err := testJudge().Of(f, Ask{})
	if err != nil {
		t.Fatal(err)
	}
	if took := time.Since(start); took > 10*time.Second {
		t.Errorf("judging took %s", took)
	}
	if _, err := json.Marshal(r); err != nil {
		t.Error(err)
	}
	return r
}

func noted(r *Result, part string) bool {
	for _, n := range r.Notes {
		if strings.Contains(n, part) {
			return true
		}
	}
	return false
}

// An answer that the rubric does not offer must hide no check: "only" applies
// only to the option three.
func TestUnknownAnswerHidesNothing(t *testing.T) {
	applies := func(answer string) (bool, *Result) {
		r := judgeEdited(t, func(f *File) { f.Facts = map[string]string{"phase": answer, "moon": "full"} })
		for _, c := range r.Checks {
			if c.Check == "only" {
				return c.Applies, r
			}
		}
		t.Fatal("no such check")
		return false, nil
	}
	if is, _ := applies("one"); is {
		t.Error("the fact does not rule the check out")
	}
	is, r := applies("steam")
	if !is || !noted(r, `"steam" is not offered`) {
		t.Errorf("an unknown answer: applies %v, notes %q", is, r.Notes)
	}
}

func TestNothingIsDroppedSilently(t *testing.T) {
	r := judgeEdited(t, func(f *File) {
		f.Landing = map[string]LandingChoice{"moon": {Cost: &Range{1, 2, 3}}}
		f.NewPrice = &NewPrice{}
		f.Listing.Capacity = &Quantity{5, "furlong"}
		f.Shop.Rates = map[string]Money{"own": 1_00}
		f.Findings = map[string]Finding{"lock": grade(1)}
		f.Ways = map[string]string{"fix": "hire"}
	})
	for _, part := range []string{`landing cost "moon"`, "price of a new one is 0", "capacity 5 furlong does not convert to lb", "No rate is set for an hour of lift or press fitter: the example of 115"} {
		if !noted(r, part) {
			t.Errorf("no note says %q: %q", part, r.Notes)
		}
	}
}

// Sizes far apart are of different machines: such a comparable is left out, with
// the reason in its row.
func TestCapacitiesFarApart(t *testing.T) {
	r := judgeEdited(t, func(f *File) {
		f.Listing.Capacity = &Quantity{9000, "lb"}
		f.Comparables[0].Capacity = &Quantity{9000 * 21, "lb"}
		f.Comparables[1].Capacity = &Quantity{9000 * 2, "lb"}
		f.NewPrice = &NewPrice{Price: Range{1, 2, 3}, Capacity: &Quantity{400, "lb"}}
	})
	if row := r.Worth.Rows[0]; row.Used || !strings.Contains(row.Note, "more than 20 times apart") {
		t.Errorf("21 times the size: %+v", row)
	}
	if row := r.Worth.Rows[1]; !row.Used || row.Note != "" {
		t.Errorf("twice the size: %+v", row)
	}
	if r.Worth.Cost != nil || !noted(r, "The new one's capacity is more than 20 times apart") {
		t.Errorf("the new price counts: %+v, %q", r.Worth.Cost, r.Notes)
	}
	r = judgeEdited(t, func(f *File) {
		f.Comparables[0].Capacity = &Quantity{3, "m"}
	})
	if row := r.Worth.Rows[0]; !row.Used || row.Note != "not scaled: its capacity does not convert to lb" {
		t.Errorf("a capacity of another kind: %+v", row)
	}
}

// Prices that say nothing give no worth, in words, rather than an absurd one.
func TestPricesTooFarApart(t *testing.T) {
	r := judgeEdited(t, func(f *File) {
		f.Comparables[0].Price, f.Comparables[1].Price = 1, maxMoney
	})
	if r.Worth.Known || r.Offer.Known || !strings.Contains(r.Offer.Missing, "too far apart") {
		t.Errorf("worth %+v, offer %+v", r.Worth, r.Offer)
	}
}

// Every amount at its bound at once: sums stay in reach, the three prices order.
func TestEverythingAtItsBound(t *testing.T) {
	r := judgeEdited(t, func(f *File) {
		asking := maxMoney
		f.Listing.Asking = &asking
		f.Shop.Tax, f.Shop.Fees = 100_00, maxMoney
		for k := range f.Shop.Rates {
			f.Shop.Rates[k] = maxMoney
		}
		f.Shop.Odds = Odds{Opening: 99_00, Fair: 99_00, WalkAway: 1_00}
		f.Shop.Overrun = Overrun{Mean: 50_00, SD: 100_00}
		f.Prices = map[string]Range{"part": {0, 0, maxMoney}}
		f.Findings = map[string]Finding{"lock": grade(0), "rope": grade(0)}
		f.Comparables[0].Price, f.Comparables[1].Price = maxMoney, maxMoney
		f.Listing.Distance = &Quantity{20_000, "mi"}
	})
	if r.Estimate.High > reach || r.Offer.AllIn.Total > reach || r.Offer.AllIn.Total < maxMoney {
		t.Errorf("estimate %+v, all-in %+v", r.Estimate.High, r.Offer.AllIn)
	}
}

func TestNothingCostsAnything(t *testing.T) {
	r := judgeEdited(t, func(f *File) {
		f.Landing = map[string]LandingChoice{"drive": {Off: true}, "anchors": {Off: true}}
		for k := range f.Shop.Rates {
			f.Shop.Rates[k] = 0
		}
		f.Prices = map[string]Range{"part": {}}
		f.Findings = map[string]Finding{"lock": grade(1)}
	})
	if r.Landing.High != 0 || r.Estimate.High != 0 || r.Hidden.Mean < 0 || !r.Offer.Known {
		t.Errorf("landing %d, estimate %d, hidden %d", r.Landing.High, r.Estimate.High, r.Hidden.Mean)
	}
}

func TestTwentyThousandComparables(t *testing.T) {
	r := judgeEdited(t, func(f *File) {
		f.Comparables = nil
		for i := range 20_000 {
			f.Comparables = append(f.Comparables, Comparable{ID: fmt.Sprint(i), Price: Money(3000_00 + i), Basis: "sold", Made: 2014})
		}
	})
	if len(r.Worth.Rows) != 20_000 || r.Worth.Sales.Centre < 3000_00 || r.Worth.Sales.Centre > 3200_00 {
		t.Errorf("%d rows, centre %d", len(r.Worth.Rows), r.Worth.Sales.Centre)
	}
}

// What was read can be written and read again, however little room is left.
func TestEncodeStaysReadable(t *testing.T) {
	t.Parallel()
	src := with(`"x":[` + strings.Repeat("[],", 2_000_000) + `[]]`)
	d, err := Decode([]byte(src))
	if err != nil {
		t.Fatal(err)
	}
	out, err := d.Encode()
	if err != nil {
		t.Fatal(err)
	}
	if _, err := Decode(out); err != nil {
		t.Errorf("%d bytes written of %d read: %v", len(out), len(src), err)
	}
}
