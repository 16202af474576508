package appraisal

import (
	"math"
	"sort"
)

// curvePoints is how many points the odds curve is drawn with.
const curvePoints = 41

// offer reads the three prices off the curve P(coming out ahead) against price:
// at price p one comes out ahead in the draws whose break-even price is p or more.
func offer(m *model, j *joint, at *Money, missing string) Offer {
	o := Offer{Curve: []CurvePoint{}, Waterfall: []Step{}, Sentences: []string{}, Missing: missing}
	if missing != "" {
		return o
	}
	o.Known = true
	v := m.voice
	odds := m.file.Shop.Odds
	o.Error = Money(math.Ceil(j.standardError(below(odds.Fair))))
	o.Step = priceStep(j.meanWorth, o.Error)
	j.cells.order(j.breakEven, j.sorted)
	sorted := j.sorted
	o.Opening = pricePoint(sorted, odds.Opening, o.Step)
	o.Fair = pricePoint(sorted, odds.Fair, o.Step)
	o.WalkAway = pricePoint(sorted, odds.WalkAway, o.Step)
	o.Curve = curve(sorted, at)
	o.Waterfall = waterfall(m, j, o.Fair)
	if at != nil {
		p := PricePoint{Price: *at, Odds: chance(sorted, float64(*at))}
		o.At = &p
		o.AllIn = allIn(m, j, *at)
		ahead := cents(j.meanWorth) - o.AllIn.Total
		o.Ahead = &ahead
		o.Sentences = append(o.Sentences, v.F("At %s you come out ahead in %s of 100 cases.", v.whole(*at), v.inHundred(p.Odds)))
	}
	if o.WalkAway.None {
		o.Sentences = append(o.Sentences, v.T("Even as a gift it costs more than it is worth in most cases: walk away."))
	} else {
		o.Sentences = append(o.Sentences, v.F("Walk away above %s: there you come out ahead in %s of 100 cases.", v.whole(o.WalkAway.Price), v.inHundred(o.WalkAway.Odds)))
	}
	return o
}

// below is the share of the draws that may come out behind at some wished odds.
func below(basis int) float64 { return 1 - float64(basis)/10_000 }

// pricePoint is the highest price on the step with at least the wished odds.
func pricePoint(sorted []float64, basis int, step Money) PricePoint {
	q := share(sorted, below(basis))
	price := math.Floor(q/float64(step)) * float64(step)
	if price <= 0 {
		return PricePoint{None: true, Odds: float64(basis) / 10_000}
	}
	return PricePoint{Price: Money(price), Odds: float64(basis) / 10_000}
}

// standardError of the q-quantile of the break-even price, in cents. Each block
// gives a quantile of its own, independent of the others, so their mean is off by
// their standard deviation over the root of their number; the quantile of all
// draws together is off by as much.
func (j *joint) standardError(q float64) float64 {
	var at [blocks]float64
	for b := range at {
		at[b] = j.cells.nth(j.breakEven[b*layers:(b+1)*layers], place(q, layers), j.room)
	}
	return spread(at[:]) / math.Sqrt(blocks-1)
}

// stepShare of the worth in place is the finest step a price is told in (judgement).
const stepShare = 0.004

// priceStep is the least of 1, 2, 5, 10, 20, 50 ... currency units that is not
// finer than the worth allows and above the error of drawing.
func priceStep(worth float64, drawing Money) Money {
	for unit := Money(1_00); ; unit *= 10 {
		for _, times := range []Money{1, 2, 5} {
			if step := times * unit; float64(step) >= float64(stepShare*worth) && step > drawing {
				return step
			}
		}
	}
}

// chance is the share of draws whose break-even price is p or more.
func chance(sorted []float64, p float64) float64 {
	below := sort.SearchFloat64s(sorted, p)
	return round4(float64(len(sorted)-below) / float64(len(sorted)))
}

// curve spans from the price nearly all draws bear to the one nearly none does,
// and always shows the price asked about.
func curve(sorted []float64, at *Money) []CurvePoint {
	low, high := max(share(sorted, 0.005), 0), share(sorted, 0.995)
	if at != nil {
		low, high = min(low, float64(*at)), max(high, float64(*at)*1.05)
	}
	if high <= low {
		high = low + 100_00
	}
	step := math.Ceil((high-low)/(curvePoints-1)/100) * 100
	start := math.Floor(low/100) * 100
	out := make([]CurvePoint, curvePoints)
	for k := range out {
		p := start + float64(float64(k)*step)
		out[k] = CurvePoint{Price: Money(p), Odds: chance(sorted, p)}
	}
	return out
}

func taxOn(m *model, price Money) Money {
	return cents(float64(float64(price) * (float64(m.file.Shop.Tax) / 10_000)))
}

// allIn adds the means to a price; the total is the sum of what is shown.
func allIn(m *model, j *joint, price Money) *AllIn {
	a := AllIn{
		Price: price, Tax: taxOn(m, price), Fees: m.file.Shop.Fees, Landing: cents(j.meanLand),
		Repair: cents(j.meanRepair), Hidden: cents(j.meanHide),
	}
	a.Total = a.Price + a.Tax + a.Fees + a.Landing + a.Repair + a.Hidden
	return &a
}

// waterfall leads from worth in place to the fair offer, a step a cause. Where
// there is no fair offer it ends at what is left.
func waterfall(m *model, j *joint, offered PricePoint) []Step {
	v, fair := m.voice, offered.Price
	total := cents(j.meanWorth)
	steps := []Step{{Cause: "worth", Title: v.T("Worth in place, sound"), Amount: total, Total: total, Lines: []StepLine{
		{v.T("As it would sell, sound and complete"), total - cents(m.kept)},
		{v.T("Installation that stays, as counted"), cents(m.kept)},
	}}}
	take := func(cause, title string, amount Money, lines []StepLine) {
		if amount == 0 && len(lines) == 0 {
			return
		}
		total -= amount
		steps = append(steps, Step{Cause: cause, Title: title, Amount: -amount, Total: total, Lines: lines})
	}
	take("repair", v.T("Repair of what was found"), cents(j.meanRepair), v.stepLines(m.tasks, cents(j.meanRepair)))
	var doubts []StepLine
	for i := range m.suspects {
		if s := &m.suspects[i]; s.total > 0 {
			doubts = append(doubts, StepLine{s.j.check.Title, cents(s.total / Draws)})
		}
	}
	sort.SliceStable(doubts, func(a, b int) bool { return doubts[a].Amount > doubts[b].Amount })
	take("hidden", v.T("Allowance for what was not checked"), cents(j.meanHide), v.balance(doubts, cents(j.meanHide)))
	take("landing", v.T("Getting it home and standing"), cents(j.meanLand), v.stepLines(m.landing, cents(j.meanLand)))
	take("fees", v.T("Fees"), m.file.Shop.Fees, []StepLine{})
	if offered.None {
		return steps
	}
	take("tax", v.T("Tax on the fair offer"), taxOn(m, fair), []StepLine{})
	take("margin", v.T("Margin for the odds chosen"), total-fair, []StepLine{})
	return append(steps, Step{Cause: "fair", Title: v.T("Fair offer"), Amount: fair, Total: fair, Lines: []StepLine{}})
}

// stepLines opens a step onto its tasks; overrun and scrap make up the rest.
func (v voice) stepLines(tasks []task, total Money) []StepLine {
	lines := []StepLine{}
	for i := range tasks {
		if l := &tasks[i].line; !l.Off {
			lines = append(lines, StepLine{l.Title, l.Mean})
		}
	}
	return v.balance(lines, total)
}

// balance closes the lines of a step to its total.
func (v voice) balance(lines []StepLine, total Money) []StepLine {
	rest := total
	for _, l := range lines {
		rest -= l.Amount
	}
	if lines == nil {
		lines = []StepLine{}
	}
	if rest != 0 {
		lines = append(lines, StepLine{v.T("Overrun and what comes together"), rest})
	}
	return lines
}
