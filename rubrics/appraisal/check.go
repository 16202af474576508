package appraisal

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"sort"
	"strconv"
	"time"
	"unicode/utf8"

	"asfound/rubrics/say"
)

// check refuses an appraisal whose figures make no sense, naming the field.
func (f *File) check() error {
	switch {
	case f.Format != FileFormat:
		return refuse("format", say.Plain(strconv.Quote(FileFormat)), "this is not an appraisal file (%.40q)", f.Format)
	case f.Version < 1:
		return refuse("version", "1 or more", "%d is no file version", f.Version)
	case f.Version > FileVersion:
		return refuse("version", say.Later("%d, or a newer program", FileVersion), "the file has version %d, which is newer than this program knows", f.Version)
	case f.Rubric.ID == "":
		return refuse("rubric.id", "the id of a rubric, such as two-post-lift", "missing")
	case f.Rubric.Version < 0:
		return refuse("rubric.version", "1 or more", "%d is no rubric version", f.Rubric.Version)
	}
	if err := checkDate("date", f.Date); err != nil {
		return err
	}
	for _, part := range []func() error{f.checkCounts, f.checkListing, f.checkAsked, f.checkFindings, f.checkPrices, f.checkParts, f.checkComparables, f.checkCare, f.checkShop} {
		if err := part(); err != nil {
			return err
		}
	}
	return nil
}

// sortedKeys walks a map in order, so that the same file gives the same error.
func sortedKeys[V any](m map[string]V) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	return keys
}

// checkDate takes the dates of a life: an earlier or later one is a slip.
func checkDate(field, s string) error {
	t, err := time.Parse(time.DateOnly, s)
	if err != nil || t.Year() < 1900 || t.Year() > 2200 {
		return refuse(field, "a date like 2026-03-31", "%.40q is no date", s)
	}
	return nil
}

// checkCounts bounds the lists, far above what a rubric or a day's work can need.
func (f *File) checkCounts() error {
	photos := len(f.Listing.Photos)
	for _, x := range f.Findings {
		photos += len(x.Photos)
	}
	for _, c := range []struct {
		field   string
		n, most int
	}{
		{"findings", len(f.Findings), 2000}, {"facts", len(f.Facts), 2000}, {"asked", len(f.Asked), 2000}, {"ways", len(f.Ways), 2000}, {"prices", len(f.Prices), 20_000},
		{"landing", len(f.Landing), 2000}, {"parts", len(f.Parts), 20_000}, {"photos", photos, 20_000}, {"comparables", len(f.Comparables), 20_000},
	} {
		if c.n > c.most {
			return refuse(c.field, say.Later("at most %d", c.most), "%d are too many", c.n)
		}
	}
	return nil
}

// maxHours bounds the hours run: a century around the clock is less.
const maxHours = 1e6

func checkText(field, s string, most int) error {
	if n := utf8.RuneCountInString(s); n > most {
		return refuse(field, say.Later("at most %d characters", most), "%d characters", n)
	}
	return nil
}

func checkMoney(field string, m Money) error {
	if m < 0 || m > maxMoney {
		return refuse(field, "0 to 1,000,000,000", "%s is no price", exactly(m))
	}
	return nil
}

func checkRange(field string, r Range) error {
	for _, m := range []Money{r.Low, r.Likely, r.High} {
		if err := checkMoney(field, m); err != nil {
			return err
		}
	}
	if r.Low > r.Likely || r.Likely > r.High {
		return refuse(field, "low, likely and high in rising order", "%s, %s, %s do not rise", exactly(r.Low), exactly(r.Likely), exactly(r.High))
	}
	return nil
}

func checkYear(field string, y int) error {
	if y != 0 && (y < 1800 || y > 2200) {
		return refuse(field, "a year like 2014, or 0 when unknown", "%d is no year of manufacture", y)
	}
	return nil
}

func checkQuantity(field string, q *Quantity) error {
	if q == nil {
		return nil
	}
	if math.IsNaN(q.N) || math.IsInf(q.N, 0) || math.Abs(q.N) > 1e12 {
		return refuse(field, "a finite number", "the number is out of reach")
	}
	return checkText(field+".unit", q.Unit, 20)
}

func checkSize(field string, q *Quantity) error {
	if q != nil && !(q.N >= 1e-6 && q.N <= 1e9) {
		return refuse(field, "more than 0 and at most 1e9, in a fitting unit", "%g is no size", q.N)
	}
	return checkQuantity(field, q)
}

func oneOf(field, word string, choices []Choice) error {
	if word == "" {
		return nil
	}
	ids := make([]string, len(choices))
	for i, c := range choices {
		if ids[i] = c.ID; c.ID == word {
			return nil
		}
	}
	return refuse(field, say.Later("one of %v", ids), "%.40q is not known", word)
}

func (f *File) checkListing() error {
	l := &f.Listing
	if l.Asking != nil {
		if err := checkMoney("listing.asking", *l.Asking); err != nil {
			return err
		}
	}
	if !(l.EffectiveAge >= 0 && l.EffectiveAge <= 200) {
		return refuse("listing.effective_age", "0 to 200 years, 0 when it is its age", "%g is no age", l.EffectiveAge)
	}
	if err := checkHours("listing.hours", l.Hours); err != nil {
		return err
	}
	if d := l.Distance; d != nil && d.Unit != "mi" && d.Unit != "km" {
		return refuse("listing.distance.unit", "mi or km", "%.40q is no distance unit", d.Unit)
	}
	if d := l.Distance; d != nil && (!(d.N >= 0) || d.N > 20_000) {
		return refuse("listing.distance", "0 to 20,000", "%g is no distance", d.N)
	}
	for _, err := range []error{
		checkText("listing.title", l.Title, 300), checkText("listing.maker", l.Maker, 2000), checkText("listing.model", l.Model, 2000),
		checkText("listing.serial", l.Serial, 2000), checkText("listing.place", l.Place, 2000), checkText("listing.seen", l.Seen, 20_000),
		checkText("listing.text", l.Text, 20_000), checkText("listing.note", l.Note, 20_000),
		checkYear("listing.made", l.Made), checkSize("listing.capacity", l.Capacity), oneOf("listing.seller", l.Seller, Sellers),
		checkPhotos("listing.photos", l.Photos), l.checkPlate(),
	} {
		if err != nil {
			return err
		}
	}
	return nil
}

func (f *File) checkAsked() error {
	for _, id := range sortedKeys(f.Asked) {
		if err := checkText(step("asked", id), f.Asked[id], 2000); err != nil {
			return err
		}
	}
	return nil
}

func (f *File) checkFindings() error {
	for _, id := range sortedKeys(f.Findings) {
		x := f.Findings[id]
		field := step("findings", id)
		if x.Grade != nil && (*x.Grade < 0 || *x.Grade > 4) {
			return refuse(field+".grade", "0 failed, 1 bad, 2 worn, 3 sound or 4 as new", "%d is no grade", *x.Grade)
		}
		if x.Grade != nil && x.Skipped != "" {
			return refuse(field, "a grade or a reason, not both", "it is both graded and marked as not checked")
		}
		for _, err := range []error{
			oneOf(field+".skipped", x.Skipped, Reasons), checkText(field+".note", x.Note, 20_000),
			checkQuantity(field+".maker", x.Maker), checkPhotos(field+".photos", x.Photos),
			checkPairs(field+".pairs", x),
		} {
			if err != nil {
				return err
			}
		}
		for _, name := range sortedKeys(x.Measured) {
			q := x.Measured[name]
			if err := checkQuantity(step(field+".measured", name), &q); err != nil {
				return err
			}
		}
	}
	return nil
}

// checkParts holds own entries of the price book to the rules of the book.
func (f *File) checkParts() error { return checkParts(f.Parts) }

func checkParts(parts []Part) error {
	for i := range parts {
		var wrong *Error
		path := fmt.Sprintf("parts[%d]", i)
		ruled(path, reflect.ValueOf(parts[i]), "", func(at string, what, right say.Text) {
			if wrong == nil {
				wrong = refuse(at, right, "%s", what)
			}
		})
		if wrong != nil {
			return wrong
		}
	}
	return nil
}

func (f *File) checkPrices() error {
	for _, id := range sortedKeys(f.Prices) {
		if err := checkRange(step("prices", id), f.Prices[id]); err != nil {
			return err
		}
	}
	for _, id := range sortedKeys(f.Landing) {
		if c := f.Landing[id].Cost; c != nil {
			if err := checkRange(step("landing", id)+".cost", *c); err != nil {
				return err
			}
		}
	}
	if n := f.NewPrice; n != nil {
		if err := checkRange("new_price.price", n.Price); err != nil {
			return err
		}
		if x := n.Index; x != nil && !(x.Then >= 1e-3 && x.Then <= 1e6 && x.Now >= 1e-3 && x.Now <= 1e6) {
			return refuse("new_price.index", "the index then and now, both above 0", "%g and %g are no index", x.Then, x.Now)
		}
		if err := checkSize("new_price.capacity", n.Capacity); err != nil {
			return err
		}
	}
	return f.checkLost()
}

func (f *File) checkLost() error {
	for _, cause := range sortedKeys(f.Adjust) {
		if err := checkText("adjust", cause, 60); err != nil {
			return err
		}
	}
	l := f.Lost
	if l == nil {
		return nil
	}
	switch {
	case l.Functional < 0 || l.Functional > 95_00:
		return refuse("lost.functional", "0 to 95 %", "%d %% is no loss of worth", l.Functional/100)
	case l.Economic < 0 || l.Economic > 95_00:
		return refuse("lost.economic", "0 to 95 %", "%d %% is no loss of worth", l.Economic/100)
	case !(l.Used >= 0) || !(l.Rated >= 0) || l.Used > 1e9 || l.Rated > 1e9 || l.Used > l.Rated:
		return refuse("lost.used", "used output from 0 to the rated one, in one unit", "%g of %g is no use", l.Used, l.Rated)
	case l.Rated > 0 && l.Used == 0:
		return refuse("lost.used", "more than 0: what is never used is worth nothing", "the rated output stands alone")
	}
	for _, err := range []error{checkText("lost.functional_why", l.FunctionalWhy, 2000), checkText("lost.economic_why", l.EconomicWhy, 2000)} {
		if err != nil {
			return err
		}
	}
	return nil
}

func checkHours(field string, h float64) error {
	if !(h >= 0 && h <= 1e6) {
		return refuse(field, "0 to 1,000,000 hours, 0 when unknown", "%g are no hours run", h)
	}
	return nil
}

func (f *File) checkComparables() error {
	seen := map[string]bool{}
	for i := range f.Comparables {
		c := &f.Comparables[i]
		field := fmt.Sprintf("comparables[%d]", i)
		if c.Basis != "asked" && c.Basis != "sold" {
			return refuse(field+".basis", "asked or sold", "%.40q is not known", c.Basis)
		}
		if seen[c.ID] {
			return refuse(field+".id", "give each its own", "%.40q stands twice", c.ID)
		}
		seen[c.ID] = true
		if c.Date != "" {
			if err := checkDate(field+".date", c.Date); err != nil {
				return err
			}
		}
		if !(c.Hours >= 0 && c.Hours <= maxHours) {
			return refuse(field+".hours", "0 to 1,000,000", "%g is no number of hours run", c.Hours)
		}
		for _, err := range []error{
			checkMoney(field+".price", c.Price), checkYear(field+".made", c.Made), checkSize(field+".capacity", c.Capacity),
			oneOf(field+".condition", c.Condition, Conditions), checkText(field+".title", c.Title, 300), checkText(field+".id", c.ID, 300),
			oneOf(field+".complete", c.Complete, Completeness), checkText(field+".maker", c.Maker, 2000), checkText(field+".note", c.Note, 20_000),
		} {
			if err != nil {
				return err
			}
		}
	}
	return nil
}

// leastBelief is the least probability of a class of keeping, basis points. At
// 0 no finding could ever bring the class back, and a belief so sure that ten bad
// points hardly move it is a slip, not a belief (the least is a judgement).
const leastBelief = 1_00

func (f *File) checkCare() error {
	b := f.Care
	if b == nil {
		return nil
	}
	for _, c := range []struct {
		field string
		n     int
	}{{"well", b.Well}, {"ordinary", b.Ordinary}, {"neglected", b.Neglected}} {
		switch {
		case c.n < 0 || c.n > 100_00:
			return refuse("care."+c.field, "1 to 98 % (in hundredths of a percent: 100 to 9800)", "%d is no probability", c.n)
		case c.n < leastBelief:
			return refuse("care."+c.field, "at least 1 % (100), since what is ruled out beforehand no finding can bring back", "%s leaves no room", basisPoints(c.n))
		}
	}
	if sum := b.Well + b.Ordinary + b.Neglected; sum != 100_00 {
		return refuse("care", "well kept, ordinary and neglected sum to 100 % (10000)", "they sum to %s", basisPoints(sum))
	}
	return nil
}

func (f *File) checkShop() error {
	s := &f.Shop
	if !slices.Contains(Currencies, s.Currency) {
		return refuse("shop.currency", say.Later("one of %v", Currencies), "%.40q is no currency kept here", s.Currency)
	}
	if s.Units != "inch" && s.Units != "metric" {
		return refuse("shop.units", "inch or metric", "%.40q is not known", s.Units)
	}
	for _, trade := range sortedKeys(s.Rates) {
		if err := oneOf("shop.rates", trade, Trades); err != nil {
			return err
		}
		if err := checkMoney("shop.rates."+trade, s.Rates[trade]); err != nil {
			return err
		}
	}
	if err := CheckWeights("shop.weights", s.Weights); err != nil {
		return err
	}
	o := s.Odds
	switch {
	case s.Tax < 0 || s.Tax > 100_00:
		return refuse("shop.tax", "0 to 100 %", "%s is no tax", tax(s.Tax))
	case o.WalkAway < 1_00 || o.Opening > 99_00 || o.WalkAway > o.Fair || o.Fair > o.Opening:
		return refuse("shop.odds", "opening at least fair, fair at least walk-away, all between 1 and 99 %", "the odds %d, %d, %d do not fall", o.Opening/100, o.Fair/100, o.WalkAway/100)
	case s.Overrun.Mean < 50_00 || s.Overrun.Mean > 300_00:
		return refuse("shop.overrun.mean", "50 to 300 %", "%d %% is no overrun", s.Overrun.Mean/100)
	case s.Overrun.SD < 0 || s.Overrun.SD > 100_00:
		return refuse("shop.overrun.sd", "0 to 100 %", "%d %% is no spread", s.Overrun.SD/100)
	case s.Kept < 0 || s.Kept > 100_00:
		return refuse("shop.kept", "0 to 100 %", "%d %% is no share", s.Kept/100)
	case math.IsNaN(s.Day) || s.Day != 0 && (s.Day < leastDay || s.Day > mostDay):
		return refuse("shop.day", "0.5 to 24 hours, or nothing for 4", "%g hours of a working day cannot be given", s.Day)
	case s.Region != 0 && (s.Region < leastRegion || s.Region > mostRegion):
		return refuse("shop.region", "25 to 400 % (2500 to 40000), or nothing for 100 %", "%s is no factor for a region's prices", basisPoints(s.Region))
	}
	for _, err := range []error{checkMoney("shop.fees", s.Fees), s.Site.check(), s.Haulage.check()} {
		if err != nil {
			return err
		}
	}
	return nil
}

// tax is a rate in hundredths of a percent, with its decimals whatever they are.
type tax int

func (n tax) In(v *say.Voice) string { return v.Number(float64(n)/100, 2) + " %" }

// CheckWeights refuses weights of criteria that rank nothing; those not given
// have their default. field is what to call them.
func CheckWeights(field string, weights map[string]int) error {
	var ids []string
	for i := range Criteria {
		ids = append(ids, Criteria[i].ID)
	}
	for _, id := range sortedKeys(weights) {
		if !slices.Contains(ids, id) {
			return refuse(field, say.Later("one of %v", ids), "%.40q is no criterion", id)
		}
		if w := weights[id]; w < 0 || w > mostWeight {
			return refuse(field+"."+id, say.Later("0 to %d", mostWeight), "%d is no weight", w)
		}
	}
	for _, c := range (voice{}).weighed(weights) {
		if c.Weight > 0 {
			return nil
		}
	}
	return refuse(field, "at least one above 0", "all are 0, so nothing would rank the listings")
}
