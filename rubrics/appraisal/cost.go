package appraisal

import (
	"math"

	"asfound/rubrics/depreciation"
	"asfound/rubrics/kernel"
)

// Log spreads of a depreciated new price (judgement, no source): of a kind with
// a published class, of one without, and where the age is not known either.
const (
	classSD = 0.25
	costSD  = 0.35
	noAgeSD = 0.45
)

// byCost is what a new one costs today, less what age, a better design and idle
// capacity take.
func byCost(r *Rubric, f *File, w *Worth, say *notes) (belief, bool) {
	n := f.NewPrice
	if n == nil || n.Price.Likely <= 0 {
		return belief{}, false
	}
	if !alike(capacity(r, f.Listing.Capacity), capacity(r, n.Capacity)) {
		say.add("The new one's capacity is more than %d times apart from this one's, so its price counts for nothing.", farApart)
		return belief{}, false
	}
	c := costing{voice: say.voice, rubric: r, file: f, price: newPert(float64(n.Price.Low), float64(n.Price.Likely), float64(n.Price.High))}
	for _, part := range []func() error{c.today, c.scaled, c.physical, c.beyondAge} {
		if err := part(); err != nil {
			say.add("The price of a new one counts for nothing (%s).", err)
			return belief{}, false
		}
	}
	own := c.price.sd / c.price.mean
	b := belief{mu: kernel.Log(c.value), sd: math.Sqrt(float64(c.sd*c.sd) + float64(own*own))}
	w.Cost = approach(b, nil)
	c.say("So it would bring about %s; eight of ten like it between %s and %s.", c.whole(w.Cost.Centre), c.whole(w.Cost.Low), c.whole(w.Cost.High))
	w.Cost.Steps = c.steps
	return b, true
}

// costing is a value on its way from new to as it stands.
type costing struct {
	voice
	rubric *Rubric
	file   *File
	price  pert
	value  float64 // cents
	sd     float64 // on the log scale
	steps  []string
}

func (c *costing) say(format string, args ...any) {
	c.steps = append(c.steps, c.Pattern(format, args...))
}

func (c *costing) today() error {
	c.value = c.price.mean
	c.say("A new one costs about %s.", c.whole(cents(c.value)))
	x := c.file.NewPrice.Index
	if x == nil {
		return nil
	}
	value, err := depreciation.Trended(c.value, x.Then, x.Now)
	if err != nil {
		return err
	}
	c.value = value
	if x.Series != "" {
		c.say("The price index (%.60s) went from %g to %g: today %s.", x.Series, x.Then, x.Now, c.whole(cents(c.value)))
	} else {
		c.say("The price index went from %g to %g: today %s.", x.Then, x.Now, c.whole(cents(c.value)))
	}
	return nil
}

func (c *costing) scaled() error {
	r := c.rubric
	q, have := capacity(r, c.file.Listing.Capacity), capacity(r, c.file.NewPrice.Capacity)
	if q == 0 || have == 0 || q == have {
		return nil
	}
	by, err := depreciation.CostToCapacity(have, q, r.Capacity.Exponent)
	if err != nil {
		return err
	}
	c.value *= by
	c.say("Scaled from %g to %g %s by the cost-to-capacity rule, exponent %g: %s.", have, q, r.Capacity.Unit, r.Capacity.Exponent, c.whole(cents(c.value)))
	return nil
}

// physical takes the middle, on the log scale, of two ways to see age: the life
// left by the survivor curve, and the remaining-value curve.
func (c *costing) physical() error {
	life := c.rubric.Life.Likely
	age, known := effectiveAge(c.file)
	c.sd = costSD
	if !known {
		age, c.sd = life/2, noAgeSD
		c.say("Its age is not known: half its useful life of %g years is taken, and the range is wider.", life)
	}
	years, worn, err := depreciation.RemainingLife(c.rubric.Depreciation.Survivor, life, age)
	if err != nil {
		return err
	}
	left := max(1-worn, depreciation.PercentGoodFloor)
	c.say("At %g years, of a kind that lasts %g on average (Iowa curve %s; judgement), those still at work have %.1f years before them: age over age and rest leaves %s.",
		tenths(age), life, c.rubric.Depreciation.Survivor, years, c.percent(left))
	curve, of := depreciation.Miscellaneous(age), c.T("miscellaneous machines")
	if class, ok := depreciation.FindClass(c.rubric.Depreciation.Class); ok {
		of = c.Label(class.Title)
		perYear := 0.0
		if age > 0 {
			perYear = c.file.Listing.Hours / age
		}
		if curve, err = depreciation.RemainingValue(class, age, perYear); err != nil {
			return err
		}
		curve = max(curve, depreciation.PercentGoodFloor)
		c.sd -= costSD - classSD
		c.say("The remaining-value curve for %s leaves %s.", of, c.percent(curve))
	} else {
		c.say("The remaining-value curve for %s leaves %s. No curve is published for this kind, so the range is wide.", of, c.percent(curve))
	}
	share := math.Sqrt(float64(left * curve))
	c.value *= share
	c.say("The middle of both is %s: %s.", c.percent(share), c.whole(cents(c.value)))
	return nil
}

// beyondAge takes functional, then economic obsolescence.
func (c *costing) beyondAge() error {
	l := c.file.Lost
	if l == nil {
		return nil
	}
	economic := float64(l.Economic) / 10_000
	if l.Used > 0 || l.Rated > 0 {
		idle, err := depreciation.Inutility(l.Used, l.Rated, c.rubric.Depreciation.Inutility)
		if err != nil {
			return err
		}
		economic = idle
	}
	functional := float64(l.Functional) / 10_000
	value, err := depreciation.DepreciatedCost(c.value, 0, functional, economic)
	if err != nil {
		return err
	}
	switch {
	case functional > 0 && l.FunctionalWhy != "":
		c.say("Functional obsolescence (%.120s) takes %s.", l.FunctionalWhy, c.percent(functional))
	case functional > 0:
		c.say("Functional obsolescence takes %s.", c.percent(functional))
	}
	switch {
	case economic > 0 && l.EconomicWhy != "":
		c.say("Economic obsolescence (%.120s) takes %s.", l.EconomicWhy, c.percent(economic))
	case economic > 0:
		c.say("Economic obsolescence takes %s.", c.percent(economic))
	}
	c.value = value
	return nil
}
