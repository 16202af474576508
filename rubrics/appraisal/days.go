package appraisal

import (
	"math"
	"strings"
)

// What is taken of days, all of it judgement, no source: bounds of the hours a
// shop gives a day, the working day of hired trades, and the working days until
// one comes who was called.
const (
	leastDay, mostDay = 0.5, 24.0
	hiredDay          = 8.0
	waitLow           = 3
	waitLikely        = 5
	waitHigh          = 10
)

// daysOf reckons the working days until a listing is in service from the hours of
// its estimate and landing lines. Own work goes at the hours a day that the shop
// gives it. Hired trades are waited for and then work a day of their own:
//
//	low     all called at once, own work done meanwhile
//	likely  all called at once, so waited for once; own work before and after
//	high    called one after the other
//
// What was not checked is in none of them. nil where a finding cannot be put right.
func daysOf(v voice, f *File, r *Result) *Days {
	if beyondRepair(r) {
		return nil
	}
	own, work, trades := v.hoursByTrade(r)
	day := f.Shop.Day
	if day == 0 {
		day = DefaultShop().Day
	}
	var total Hours // of hired work
	longest := 0.0
	for _, h := range work {
		total.Low, total.Likely, total.High = total.Low+h.Low, total.Likely+h.Likely, total.High+h.High
		longest = max(longest, h.Low)
	}
	n := float64(len(trades))
	low, likely, high := own.Low/day, own.Likely/day, own.High/day
	if n > 0 {
		low = max(low, waitLow+longest/hiredDay)
		likely += waitLikely + total.Likely/hiredDay
		high += float64(n*waitHigh) + total.High/hiredDay
	}
	d := &Days{Low: begun(low), Likely: begun(likely), High: begun(high)}
	hours := func(x float64) string { return v.Short(x, 1) }
	d.Steps = []string{v.F("Own work: %s hours, most likely (%s to %s), at %s hours a day.", hours(own.Likely), hours(own.Low), hours(own.High), hours(day))}
	if n > 0 {
		d.Steps = append(d.Steps,
			v.F("Hired: %s, %s hours in all. Called at once they come after %s working days, and work %s hours a day.", strings.Join(trades, ", "), hours(total.Likely), v.Whole(waitLikely), hours(hiredDay)),
			v.F("At best they come after %s days, while own work goes on; at worst one is waited for after the other, %s days each.", v.Whole(waitLow), v.Whole(waitHigh)))
	}
	d.Steps = append(d.Steps, v.T("Hours a day and waits are a judgement, no source. What was not checked is not counted."))
	return d
}

// begun is the number of days begun; a hair of a day is none.
func begun(days float64) int { return int(math.Ceil(days - 1e-9)) }

// hoursByTrade adds up what counts: own work and own machine time together, and
// each hired trade, in the order in which they are first needed.
func (v voice) hoursByTrade(r *Result) (own Hours, work []Hours, trades []string) {
	at := map[string]int{}
	for _, lines := range [][]Line{r.Estimate.Lines, r.Landing.Lines} {
		for i := range lines {
			l := &lines[i]
			if l.Off || l.Rate == "" || l.Hours == (Hours{}) {
				continue
			}
			into := &own
			if hired(l.Rate) {
				k, ok := at[l.Rate]
				if !ok {
					k = len(work)
					at[l.Rate], work, trades = k, append(work, Hours{}), append(trades, v.trade(l.Rate))
				}
				into = &work[k]
			}
			into.Low, into.Likely, into.High = into.Low+l.Hours.Low, into.Likely+l.Hours.Likely, into.High+l.Hours.High
		}
	}
	return own, work, trades
}
