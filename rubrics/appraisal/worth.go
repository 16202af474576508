package appraisal

import (
	"math"

	"asfound/rubrics/kernel"
	"asfound/rubrics/sales"
	"asfound/rubrics/unit"
)

const (
	vague    = 1.5 // a log spread of 4.5 times either way is no valuation
	farApart = 20  // capacities that differ more are not of one kind of machine
)

// belief is a price on the log scale: normal, or of the shape of the errors that
// many comparables make of each other.
type belief struct {
	mu, sd float64
	shape  *sales.Shape
	shaped float64 // share of that shape
}

// z is the quantile q in units of the spread.
func (b *belief) z(q float64) float64 {
	z := kernel.NormalQuantile(q)
	if b.shape != nil {
		z = float64((1-b.shaped)*z) + float64(b.shaped*b.shape.At(q))
	}
	return z
}

// at is the log price that a share q lies below.
func (b *belief) at(q float64) float64 { return b.mu + float64(b.sd*b.z(q)) }

// table is z for drawing, where it has a shape of its own. Its ends lie where the mean of a normal's outer cell
// comes out right.
func (b *belief) table() *quantiles {
	var t quantiles
	for k := 1; k < cells; k++ {
		t[k] = b.z(float64(k) / cells)
	}
	t[0], t[cells] = b.z(0.2/cells), b.z(1-0.2/cells)
	return &t
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
	v := n.voice
	market, haveSales := bySales(v, r, f, &w)
	costs, haveCost := byCost(r, f, &w, n)
	switch {
	case haveSales && haveCost:
		b, w.Widened = reconcile(market, costs)
		share := precision(market) / (precision(market) + precision(costs))
		b.shape, b.shaped = market.shape, share
		w.Sales.Weight, w.Cost.Weight = round4(share), round4(1-share)
	case haveSales:
		b = market
		w.Sales.Weight = 1
	case haveCost:
		b = costs
		w.Cost.Weight = 1
	default:
		w.Missing = v.T("Nothing says yet what a sound one is worth: enter one comparable, or the price of a new one.")
		return w, b, false
	}
	if b.sd > vague {
		w.Missing = v.T("What was entered of its worth lies too far apart to say anything: check the prices of the comparables and of a new one.")
		return w, b, false
	}
	w.Known = true
	w.Centre, w.Low, w.High = cents(kernel.Exp(b.mu)), cents(kernel.Exp(b.at(0.1))), cents(kernel.Exp(b.at(0.9)))
	w.LogSD = round4(b.sd)
	w.Sentence = v.worthSentence(&w)
	return w, b, true
}

func precision(b belief) float64 { return 1 / float64(b.sd*b.sd) }

// reconcile weighs two beliefs by their precision. Apart by more than their
// spread allows, the result is widened by Birge's ratio of the two (R. T. Birge,
// Physical Review 40:207-227, 1932).
func reconcile(a, c belief) (b belief, widened bool) {
	pa, pc := precision(a), precision(c)
	b.mu = (float64(pa*a.mu) + float64(pc*c.mu)) / (pa + pc)
	b.sd = math.Sqrt(1 / (pa + pc))
	z := math.Abs(a.mu-c.mu) / math.Sqrt(float64(a.sd*a.sd)+float64(c.sd*c.sd))
	if z > 1 {
		b.sd *= z
		return b, true
	}
	return b, false
}

func round4(x float64) float64 { return math.Floor(float64(x*10_000)+0.5) / 10_000 }

func (v voice) worthSentence(w *Worth) string {
	s := v.F("A sound one is worth about %s; in eight of ten cases between %s and %s.", v.whole(w.Centre), v.whole(w.Low), v.whole(w.High))
	if w.Widened {
		s += " " + v.F("The comparables say %s and the new price says %s: they disagree, so the range is wider.", v.whole(w.Sales.Centre), v.whole(w.Cost.Centre))
	}
	if w.Sales != nil && w.Sales.Count < 3 {
		s += " " + v.many(w.Sales.Count, "One comparable: each one more narrows the range.", "%s comparables: each one more narrows the range.")
	}
	return s
}

// approach fills what both ways to worth show.
func approach(b belief, steps []string) *Approach {
	return &Approach{
		Centre: cents(kernel.Exp(b.mu)), LogSD: round4(b.sd), Steps: steps,
		Low: cents(kernel.Exp(b.at(0.1))), High: cents(kernel.Exp(b.at(0.9))),
	}
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

// year of a YYYY-MM-DD date; the file was checked before.
func year(date string) int {
	y := 0
	for _, c := range date[:4] {
		y = 10*y + int(c-'0')
	}
	return y
}

// day is a date in years, near enough to tell how old a price is.
func day(date string) float64 {
	two := func(at int) float64 { return float64(10*int(date[at]-'0') + int(date[at+1]-'0')) }
	return float64(year(date)) + (two(5)-1)/12 + (two(8)-1)/365
}
