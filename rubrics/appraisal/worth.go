package appraisal

import (
	"fmt"
	"math"
	"sort"

	"asfound/rubrics/kernel"
	"asfound/rubrics/unit"
)

// Judgements of the worth; none has a source, all are widened for it.
const (
	askedToSold  = 0.90 // what is paid over what is asked
	salesPriorSD = 0.25 // spread of log prices before any comparable, counted as...
	salesPrior   = 4    // ...so many comparables
	costSD       = 0.35 // log spread of a depreciated new price
	noAgeSD      = 0.45 // the same where the age is not known
	vague        = 1.5  // a log spread of 4.5 times either way is no valuation
	farApart     = 20   // capacities that differ more are not of one kind of machine
)

// conditionFactor brings a comparable to sound condition (judgement).
var conditionFactor = map[string]float64{"as_new": 1 / 1.15, "sound": 1, "worn": 1 / 0.85, "bad": 1 / 0.60}

// RemainingValue is the share of the list price of an equivalent new machine
// left after n years (and h hours a year): (C1 - C2 sqrt(n) - C3 sqrt(h))^2,
// ASABE D497.7 (2011, R2020). Coefficients are from memory. At age 0 it is below
// 1 by design: the loss on leaving the yard.
func RemainingValue(c1, c2, c3, years, hours float64) float64 {
	x := c1 - float64(c2*math.Sqrt(years)) - float64(c3*math.Sqrt(hours))
	return float64(max(x, 0) * max(x, 0))
}

// miscellaneous is the ASABE class for machines with no curve of their own; no
// class is published for lifts, presses or machine tools.
func miscellaneous(years float64) float64 {
	return max(RemainingValue(0.943, 0.111, 0, years, 0), percentGoodFloor)
}

// percentGoodFloor is the least share of the new price while in use: assessors'
// schedules stop at 10 to 16 % (Sacramento County, commercial equipment, 2017).
const percentGoodFloor = 0.10

// AgeLife is the physical depreciation effective age / total life, at most 1.
func AgeLife(age, life float64) float64 { return min(max(age/life, 0), 1) }

// CostToCapacity scales a price with size: (q2/q1)^n.
func CostToCapacity(q1, q2, n float64) float64 { return kernel.Pow(q2/q1, n) }

// WeightedMedian is the smallest value whose cumulative weight reaches half.
func WeightedMedian(values, weights []float64) float64 {
	order := make([]int, len(values))
	total := 0.0
	for i := range order {
		order[i] = i
		total += weights[i]
	}
	sort.SliceStable(order, func(a, b int) bool { return values[order[a]] < values[order[b]] })
	sum := 0.0
	for _, i := range order {
		sum += weights[i]
		if sum >= total/2*(1-1e-12) {
			return values[i]
		}
	}
	return values[order[len(order)-1]]
}

// MAD is the median absolute deviation times 1.4826, which estimates the
// standard deviation of a normal sample.
func MAD(values []float64) float64 {
	m := median(values)
	dev := make([]float64, len(values))
	for i, v := range values {
		dev[i] = math.Abs(v - m)
	}
	return 1.4826 * median(dev)
}

func median(values []float64) float64 {
	s := append([]float64(nil), values...)
	sort.Float64s(s)
	n := len(s)
	if n%2 == 1 {
		return s[n/2]
	}
	return (s[n/2-1] + s[n/2]) / 2
}

// belief is a price on the log scale.
type belief struct{ mu, sd float64 }

// span is where it lies in eight cases of ten.
func (b belief) span() (low, high Money) {
	z := normalTable()
	return cents(kernel.Exp(b.mu + float64(b.sd*z.at(0.1)))), cents(kernel.Exp(b.mu + float64(b.sd*z.at(0.9))))
}

// worth values the same thing sound and complete; ok is false where nothing is
// known of it.
func worth(r *Rubric, f *File, n *notes) (w Worth, b belief, ok bool) {
	w.Rows, w.Rates = []ComparableRow{}, []AdjustRate{}
	if q := f.Listing.Capacity; q != nil && capacity(r, q) == 0 {
		n.add("The capacity %g %.20s does not convert to %s, so no price is scaled by it.", q.N, q.Unit, r.Capacity.Unit)
	}
	if f.NewPrice != nil && f.NewPrice.Price.Likely <= 0 {
		n.add("The price of a new one is 0, so it counts for nothing.")
	}
	sales, haveSales := bySales(r, f, &w)
	costs, haveCost := byCost(r, f, &w, n)
	if haveSales {
		w.Sales.Low, w.Sales.High = sales.span()
	}
	if haveCost {
		w.Cost.Low, w.Cost.High = costs.span()
	}
	switch {
	case haveSales && haveCost:
		ps, pc := 1/float64(sales.sd*sales.sd), 1/float64(costs.sd*costs.sd)
		b.mu = (float64(ps*sales.mu) + float64(pc*costs.mu)) / (ps + pc)
		b.sd = math.Sqrt(1 / (ps + pc))
		w.Sales.Weight, w.Cost.Weight = round4(ps/(ps+pc)), round4(pc/(ps+pc))
		// Birge's ratio for two values: apart by more than their spread allows.
		z := math.Abs(sales.mu-costs.mu) / math.Sqrt(float64(sales.sd*sales.sd)+float64(costs.sd*costs.sd))
		if z > 1 {
			b.sd *= z
			w.Widened = true
		}
	case haveSales:
		b = sales
		w.Sales.Weight = 1
	case haveCost:
		b = costs
		w.Cost.Weight = 1
	default:
		w.Missing = "Nothing says yet what a sound one is worth: enter one comparable, or the price of a new one."
		return w, b, false
	}
	if b.sd > vague {
		w.Missing = "What was entered of its worth lies too far apart to say anything: check the prices of the comparables and of a new one."
		return w, b, false
	}
	w.Known = true
	w.Centre = cents(kernel.Exp(b.mu))
	w.Low, w.High = b.span()
	w.LogSD = round4(b.sd)
	w.Sentence = worthSentence(&w)
	return w, b, true
}

func round4(x float64) float64 { return math.Floor(float64(x*10_000)+0.5) / 10_000 }

func worthSentence(w *Worth) string {
	s := fmt.Sprintf("A sound one is worth about %s, most likely between %s and %s.", whole(w.Centre), whole(w.Low), whole(w.High))
	if w.Widened {
		s += fmt.Sprintf(" The comparables say %s and the new price says %s: they disagree, so the range is wider.", whole(w.Sales.Centre), whole(w.Cost.Centre))
	}
	return s
}

// year of a YYYY-MM-DD date; the file was checked before.
func year(date string) int {
	y := 0
	for _, c := range date[:4] {
		y = 10*y + int(c-'0')
	}
	return y
}

// bySales adjusts each comparable to the listing on the log scale.
func bySales(r *Rubric, f *File, w *Worth) (belief, bool) {
	now := year(f.Date)
	var values, weights []float64
	for _, c := range f.Comparables {
		row := ComparableRow{ID: c.ID, Title: c.Title, Price: c.Price, Adjustments: []Adjustment{}}
		if why := leftOut(&c, f.Date); why != "" {
			row.Note = why
			w.Rows = append(w.Rows, row)
			continue
		}
		factor := 1.0
		adjust := func(cause string, by float64) {
			factor *= by
			row.Adjustments = append(row.Adjustments, Adjustment{Cause: cause, Title: cause, Factor: round4(by)})
		}
		if c.Basis == "asked" {
			adjust("asked to sold", askedToSold)
		}
		if f.Listing.Made > 0 && c.Made > 0 {
			at := now
			if c.Date != "" {
				at = year(c.Date)
			}
			mine, theirs := miscellaneous(float64(max(now-f.Listing.Made, 0))), miscellaneous(float64(max(at-c.Made, 0)))
			adjust("age", mine/theirs)
		}
		if by, ok := conditionFactor[c.Condition]; ok && by != 1 {
			adjust("condition", by)
		}
		q, p := capacity(r, f.Listing.Capacity), capacity(r, c.Capacity)
		if !alike(q, p) {
			row.Note = fmt.Sprintf("left out: its capacity is more than %d times apart", farApart)
			row.Adjustments = []Adjustment{}
			w.Rows = append(w.Rows, row)
			continue
		}
		if c.Capacity != nil && p == 0 {
			row.Note = "not scaled: its capacity does not convert to " + r.Capacity.Unit
		}
		if q > 0 && p > 0 {
			adjust("capacity", CostToCapacity(p, q, r.Capacity.Exponent))
		}
		weight := 1.0
		if c.Date != "" {
			weight = 1 / (1 + float64(max(now-year(c.Date), 0))/3) // older news counts less (judgement)
		}
		row.Used, row.Weight = true, round4(weight)
		row.Adjusted = cents(float64(float64(c.Price) * factor))
		values = append(values, kernel.Log(float64(float64(c.Price)*factor)))
		weights = append(weights, weight)
		w.Rows = append(w.Rows, row)
	}
	if len(values) == 0 {
		return belief{}, false
	}
	n := float64(len(values))
	spread := 0.0
	if n > 1 {
		spread = MAD(values)
	}
	// Few comparables cannot prove a small spread: the prior counts as four.
	variance := (salesPrior*salesPriorSD*salesPriorSD + float64(n*float64(spread*spread))) / (salesPrior + n)
	b := belief{mu: WeightedMedian(values, weights), sd: math.Sqrt(float64(variance * (1 + 1/n)))}
	w.Sales = &Approach{Centre: cents(kernel.Exp(b.mu)), LogSD: round4(b.sd), Steps: []string{
		fmt.Sprintf("%s adjusted to this listing; the middle one by weight is %s.", count(len(values), "comparable"), whole(cents(kernel.Exp(b.mu)))),
		fmt.Sprintf("They scatter by %s; with a prior of %s counted as %d more, the next one would fall within %s either way two times in three.", percent(spread), percent(salesPriorSD), salesPrior, percent(b.sd)),
	}}
	return b, true
}

// alike tells whether two sizes, where both are known, can be of one kind; the
// cost-to-capacity rule says nothing of sizes far apart.
func alike(q, p float64) bool {
	return q == 0 || p == 0 || (q <= farApart*p && p <= farApart*q)
}

// capacity is a size in the rubric's unit; 0 where it is missing or of another
// family, so that only like is scaled with like.
func capacity(r *Rubric, q *Quantity) float64 {
	if q == nil {
		return 0
	}
	n, err := unit.Convert(q.N, q.Unit, r.Capacity.Unit)
	if err != nil {
		return 0
	}
	return n
}

// leftOut says why a comparable does not count, or nothing.
func leftOut(c *Comparable, date string) string {
	switch {
	case c.Off:
		return "left out"
	case c.Price <= 0:
		return "left out: it has no price"
	case c.Date > date:
		return "left out: its date lies after the appraisal's"
	}
	return ""
}

// byCost is the new price less what age takes.
func byCost(r *Rubric, f *File, w *Worth, say *notes) (belief, bool) {
	n := f.NewPrice
	if n == nil || n.Price.Likely <= 0 {
		return belief{}, false
	}
	if !alike(capacity(r, f.Listing.Capacity), capacity(r, n.Capacity)) {
		say.add("The new one's capacity is more than %d times apart from this one's, so its price counts for nothing.", farApart)
		return belief{}, false
	}
	p := newPert(float64(n.Price.Low), float64(n.Price.Likely), float64(n.Price.High))
	price, steps := p.mean, []string{fmt.Sprintf("A new one costs about %s.", whole(cents(p.mean)))}
	if q, have := capacity(r, f.Listing.Capacity), capacity(r, n.Capacity); q > 0 && have > 0 && q != have {
		by := CostToCapacity(have, q, r.Capacity.Exponent)
		price *= by
		steps = append(steps, fmt.Sprintf("Scaled to this capacity (exponent %g): %s.", r.Capacity.Exponent, whole(cents(price))))
	}
	sd, age := costSD, float64(0)
	if f.Listing.Made > 0 {
		age = float64(max(year(f.Date)-f.Listing.Made, 0))
	} else {
		age, sd = r.Life.Likely/2, noAgeSD
		steps = append(steps, "Its year is not known: half its useful life is taken, and the range is wider.")
	}
	life := max(1-AgeLife(age, r.Life.Likely), percentGoodFloor)
	curve := miscellaneous(age)
	left := math.Sqrt(float64(life * curve))
	steps = append(steps, fmt.Sprintf("At %g years: age over a life of %g leaves %s, the remaining-value curve for miscellaneous machines %s; their middle is %s. No curve is published for this kind, so the range is wide.",
		age, r.Life.Likely, percent(life), percent(curve), percent(left)))
	own := p.sd / p.mean
	b := belief{mu: kernel.Log(float64(price * left)), sd: math.Sqrt(float64(sd*sd) + float64(own*own))}
	w.Cost = &Approach{Centre: cents(kernel.Exp(b.mu)), LogSD: round4(b.sd), Steps: steps}
	return b, true
}
