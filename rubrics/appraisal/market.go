package appraisal

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"asfound/rubrics/depreciation"
	"asfound/rubrics/kernel"
	"asfound/rubrics/sales"
)

// The conditions and completenesses of a comparable as log prices beside a sound
// and complete one (judgement, no source).
var (
	conditionLog = map[string]float64{"as_new": kernel.Log(1.15), "sound": 0, "worn": kernel.Log(0.85), "bad": kernel.Log(0.60)}
	completeLog  = map[string]float64{"complete": 0, "bare": kernel.Log(0.92), "missing": kernel.Log(0.75)}
)

// trait is one way in which comparables differ from the listing: a number a
// comparable has, the one the listing has, and what a difference is expected to
// do to the price.
type trait struct {
	attribute sales.Attribute
	title     string
	mine      float64
	theirs    func(*Comparable) float64
	says      func(rate float64) string
}

// makerSpread is the log spread of one maker's prices against another's, and
// makerCounts what another maker's sale counts (judgement).
const makerSpread, makerCounts = 0.10, 0.6

var unknown = math.NaN()

// percentMore says a factor as more or less.
func (v voice) percentMore(log float64) string {
	by := kernel.Exp(log) - 1
	if by < 0 {
		return v.F("%s less", v.percent(-by))
	}
	return v.F("%s more", v.percent(by))
}

// traits are the adjustments of the trade, in its order: terms, time, place,
// then what the thing is. All rates and spreads are judgement until comparables
// say better; only the age curve and the capacity rule have a published form.
func (v voice) traits(r *Rubric, f *File) []trait {
	l := &f.Listing
	now := day(f.Date)
	known := func(x float64, ok bool) float64 {
		if !ok {
			return unknown
		}
		return x
	}
	curve := func(age float64) float64 { return kernel.Log(depreciation.Miscellaneous(max(age, 0))) }
	load := func(q *Quantity) float64 {
		n := capacity(r, q)
		return known(kernel.Log(max(n, 1e-300)), n > 0)
	}
	run := func(h float64) float64 { return known(math.Sqrt(h/1000), h > 0) }
	age, haveAge := effectiveAge(f)
	return []trait{
		{
			sales.Attribute{ID: "asked", Rate: -kernel.Log(0.90), RateSD: 0.07, Width: 2}, v.T("Asked to sold"), 0,
			func(c *Comparable) float64 {
				if c.Basis == "asked" {
					return 1
				}
				return 0
			},
			func(rate float64) string {
				return v.F("What is asked sells for %s.", v.percentMore(-rate))
			},
		},
		{
			sales.Attribute{ID: "time", Rate: 0, RateSD: 0.04, Width: 3}, v.T("Time since"), 0,
			func(c *Comparable) float64 {
				if c.Date == "" {
					return unknown
				}
				return now - day(c.Date)
			},
			func(rate float64) string {
				return v.F("A price a year older is brought to today by %s.", v.percentMore(-rate))
			},
		},
		{
			sales.Attribute{ID: "distance", Width: 300}, v.T("Distance"), 0,
			func(c *Comparable) float64 { d, ok := miles(c.Distance); return known(d, ok) },
			func(float64) string { return v.T("A price from far away counts less; it is not changed.") },
		},
		{
			sales.Attribute{ID: "age", Rate: 0.7, RateSD: 0.3, Width: 0.5}, v.T("Age"), known(curve(age), haveAge),
			func(c *Comparable) float64 {
				at := year(f.Date)
				if c.Date != "" {
					at = year(c.Date)
				}
				return known(curve(float64(at-c.Made)), c.Made > 0)
			},
			func(rate float64) string {
				return v.F("One of 15 years brings %s than one of 5.", v.percentMore(float64(rate*(curve(15)-curve(5)))))
			},
		},
		{
			sales.Attribute{ID: "hours", Rate: -0.10, RateSD: 0.06, Width: 1.5}, v.T("Hours run"), run(l.Hours),
			func(c *Comparable) float64 { return run(c.Hours) },
			func(rate float64) string {
				return v.F("One of 4,000 hours brings %s than one of 1,000.", v.percentMore(rate))
			},
		},
		{
			sales.Attribute{ID: "capacity", Rate: r.Capacity.Exponent, RateSD: 0.2, Width: 0.5}, r.Capacity.Title, load(l.Capacity),
			func(c *Comparable) float64 { return load(c.Capacity) },
			func(rate float64) string {
				return v.F("Twice the size brings %s.", v.percentMore(float64(rate*math.Ln2)))
			},
		},
		{
			sales.Attribute{ID: "condition", Rate: 1, RateSD: 0.3, Width: 0.35}, v.T("Condition"), 0,
			func(c *Comparable) float64 { x, ok := conditionLog[c.Condition]; return known(x, ok) },
			func(rate float64) string {
				return v.F("A worn one brings %s than a sound one.", v.percentMore(float64(rate*conditionLog["worn"])))
			},
		},
		{
			sales.Attribute{ID: "complete", Rate: 1, RateSD: 0.3, Width: 0.3}, v.T("Completeness"), 0,
			func(c *Comparable) float64 { x, ok := completeLog[c.Complete]; return known(x, ok) },
			func(rate float64) string {
				return v.F("With parts missing it brings %s.", v.percentMore(float64(rate*completeLog["missing"])))
			},
		},
	}
}

// miles is a distance in miles.
func miles(q *Quantity) (float64, bool) {
	switch {
	case q == nil || !(q.N >= 0):
		return 0, false
	case q.Unit == "km":
		return q.N * milesPerKilometre, true
	}
	return q.N, q.Unit == "mi"
}

// effectiveAge is the listing's age by its condition, or else by its year.
func effectiveAge(f *File) (years float64, known bool) {
	if f.Listing.EffectiveAge > 0 {
		return f.Listing.EffectiveAge, true
	}
	return float64(max(year(f.Date)-f.Listing.Made, 0)), f.Listing.Made > 0
}

// bySales brings each comparable to the listing and takes their middle.
func bySales(v voice, r *Rubric, f *File, w *Worth) (belief, bool) {
	list := v.traits(r, f)
	form := sales.Form{Spread: sales.DefaultSpread, Count: sales.DefaultCount}
	thing := sales.Sale{}
	var on []trait
	for _, t := range list {
		if !f.Adjust[t.attribute.ID].Off && !math.IsNaN(t.attribute.Rate) {
			on = append(on, t)
			form.Attributes = append(form.Attributes, t.attribute)
			thing.Numbers = append(thing.Numbers, t.mine)
		}
	}
	byMaker := !f.Adjust["maker"].Off
	if byMaker {
		form.Labels = []sales.Label{{ID: "maker", SD: makerSpread, Unlike: makerCounts}}
		thing.Labels = []string{plain(f.Listing.Maker)}
	}
	var used []sales.Sale
	var at []int // row of each
	same := repeats(f.Comparables)
	for i := range f.Comparables {
		c := &f.Comparables[i]
		row := ComparableRow{ID: c.ID, Title: c.Title, Price: c.Price, Adjustments: []Adjustment{}, Note: v.leftOut(r, f, c)}
		if row.Note == "" {
			s := sales.Sale{Log: kernel.Log(float64(c.Price)), Weight: 1 / float64(len(same[i]))}
			for _, t := range on {
				s.Numbers = append(s.Numbers, t.theirs(c))
			}
			if byMaker {
				s.Labels = []string{plain(c.Maker)}
			}
			used, at = append(used, s), append(at, i)
			row.Used = true
			if first := same[i][0]; first != i {
				row.Same = f.Comparables[first].ID
			}
			if c.Capacity != nil && capacity(r, c.Capacity) == 0 {
				row.Note = v.F("not scaled: its capacity does not convert to %s", r.Capacity.Unit)
			}
		}
		w.Rows = append(w.Rows, row)
	}
	if len(used) == 0 {
		w.Rates = v.ratesOf(list, f, nil, nil, w.Rows)
		return belief{}, false
	}
	market := sales.Fit(form, used)
	p := market.Predict(&thing)
	needed := map[int]bool{}
	for _, n := range p.Rows {
		row := &w.Rows[at[n.Sale]]
		needed[at[n.Sale]] = true
		row.Adjusted, row.Weight, row.Outlier = cents(kernel.Exp(n.Log)), round4(n.Weight), n.Trust < 0.5
		for k, by := range n.Factors {
			cause, title := "maker", v.T("Maker")
			if k < len(on) {
				cause, title = on[k].attribute.ID, on[k].title
			}
			if factor := round4(kernel.Exp(by)); factor != 1 {
				row.Adjustments = append(row.Adjustments, Adjustment{Cause: cause, Title: title, Factor: factor})
			}
		}
		if row.Outlier {
			row.Note = join(row.Note, v.F("stands apart from the others: counts %s of what it would", v.percent(n.Trust)))
		}
	}
	for i := range w.Rows {
		if row := &w.Rows[i]; row.Used && !needed[i] {
			row.Note = join(row.Note, v.T("one of the least alike of so many: not needed"))
		}
	}
	w.Rates = v.ratesOf(list, f, on, market.Rates(), w.Rows)
	b := belief{mu: p.Mean, sd: p.SD, shape: p.Shape, shaped: 1}
	w.Sales = approach(b, nil)
	w.Sales.Count = effective(used)
	w.Sales.Steps = v.salesSteps(w, p, market.Spread())
	return b, true
}

func join(a, b string) string {
	if a == "" {
		return b
	}
	return a + "; " + b
}

// effective counts copies once.
func effective(used []sales.Sale) int {
	n := 0.0
	for i := range used {
		n += used[i].Weight
	}
	return int(n + 0.5)
}

func (v voice) salesSteps(w *Worth, p sales.Prediction, spread float64) []string {
	steps := []string{
		v.many(w.Sales.Count, "One comparable, each brought to this listing by the rates below; what is most alike counts most.",
			"%s comparables, each brought to this listing by the rates below; what is most alike counts most."),
		v.F("The middle one by weight says %s.", v.whole(w.Sales.Centre)),
		v.F("Around the rates they scatter by %s, with a spread of %s that stands for %d more; the doubt of the adjustments comes on top. So eight of ten like it fall between %s and %s.",
			v.percent(spread), v.percent(sales.DefaultSpread), int(sales.DefaultCount), v.whole(w.Sales.Low), v.whole(w.Sales.High)),
	}
	if own := p.Shape.Own(); own > 0.2 {
		steps = append(steps, v.F("How far these comparables miss each other, one left out after the other, makes %s of the range's shape.", v.percent(own)))
	}
	return steps
}

// ratesOf shows every adjustment, whether or not it is switched on.
func (v voice) ratesOf(list []trait, f *File, on []trait, fitted []sales.Rate, rows []ComparableRow) []AdjustRate {
	met := map[string]bool{}
	for i := range rows {
		for _, a := range rows[i].Adjustments {
			met[a.Cause] = true
		}
	}
	var out []AdjustRate
	for _, t := range list {
		a := AdjustRate{Cause: t.attribute.ID, Title: t.title, Off: f.Adjust[t.attribute.ID].Off, Used: met[t.attribute.ID]}
		rate := t.attribute.Rate
		for k := range on {
			if on[k].attribute.ID == t.attribute.ID && fitted != nil {
				rate, a.FromData = fitted[k].Mean, round4(fitted[k].FromData)
			}
		}
		a.Says = t.says(rate)
		out = append(out, a)
	}
	return append(out, AdjustRate{
		Cause: "maker", Title: v.T("Maker"), Off: f.Adjust["maker"].Off, Used: met["maker"],
		Says: v.F("Another maker's price is held %s uncertain and counts less.", v.percent(makerSpread)),
	})
}

// leftOut says why a comparable does not count, or nothing.
func (v voice) leftOut(r *Rubric, f *File, c *Comparable) string {
	switch {
	case c.Off:
		return v.T("left out")
	case c.Price <= 0:
		return v.T("left out: it has no price")
	case c.Date > f.Date:
		return v.T("left out: its date lies after the appraisal's")
	case !alike(capacity(r, f.Listing.Capacity), capacity(r, c.Capacity)):
		return v.F("left out: its capacity is more than %d times apart", farApart)
	}
	return ""
}

// plain is a text by its letters and digits alone, in lower case.
func plain(s string) string {
	var out strings.Builder
	for _, c := range strings.ToLower(s) {
		if c >= '0' && c <= '9' || c >= 'a' && c <= 'z' || c > 127 {
			out.WriteRune(c)
		}
	}
	return out.String()
}

// copyWithin is how near two prices lie that are one sale told twice (judgement).
const copyWithin = 0.02

// repeats gives, for each comparable, all that tell the same sale: one title,
// maker, year, hours, size and basis, and a price within 2 % of the next. Those
// left out or without a title stand alone.
func repeats(list []Comparable) [][]int {
	groups := map[string][]int{}
	out := make([][]int, len(list))
	var order []string
	for i := range list {
		c := &list[i]
		out[i] = []int{i}
		if c.Off || c.Price <= 0 || plain(c.Title) == "" {
			continue
		}
		size := ""
		if c.Capacity != nil {
			size = quantityText(*c.Capacity)
		}
		key := fmt.Sprint(plain(c.Title), "|", plain(c.Maker), "|", c.Basis, c.Made, "|", c.Hours, "|", size)
		if groups[key] == nil {
			order = append(order, key)
		}
		groups[key] = append(groups[key], i)
	}
	for _, key := range order {
		g := groups[key]
		sort.SliceStable(g, func(a, b int) bool { return list[g[a]].Price < list[g[b]].Price })
		for from := 0; from < len(g); {
			to := from + 1
			for to < len(g) && float64(list[g[to]].Price) <= float64(float64(list[g[to-1]].Price)*(1+copyWithin)) {
				to++
			}
			set := append([]int(nil), g[from:to]...)
			sort.Ints(set)
			for _, i := range set {
				out[i] = set
			}
			from = to
		}
	}
	return out
}
