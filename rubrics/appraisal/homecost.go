package appraisal

// Parts of the price book that the way home buys or hires.
const (
	partTruck     = "truck-hire-day"
	partTrailer   = "trailer-hire-day"
	partChain     = "tie-down-chain"
	partStrap     = "tie-down-strap"
	partProtector = "edge-protector"
	partSkates    = "machine-skates"
	partRigger    = "rigger-call-out"
)

// HomeParts are the parts of the price book that the way home may buy or hire,
// whatever the rubric.
var HomeParts = []string{partTruck, partTrailer, partChain, partStrap, partProtector, partSkates, partRigger}

// haulCost is what the plan puts in place of a landing line's own cost.
type haulCost struct {
	parts []PartUse
	// keep leaves the rubric's cost: only the drive is the shop's own figure.
	keep bool
	// perDistance of the own truck, 0 for the rubric's.
	perDistance Money
	rate        string // of the hours, "" for the rubric's
	says        string
}

// skatesFrom is the weight of a piece from which skates are taken along, lb (judgement).
const skatesFrom = 1000

// costs gives the lines the plan computes, by the word of Landing.Haul. Where
// nothing is told the rubric's own figures stay.
func (w *ride) costs() map[string]haulCost {
	out := map[string]haulCost{}
	if c, ok := w.transport(); ok {
		out["transport"] = c
	}
	switch {
	case w.haul.Lifting == nil || w.lifts == open:
	case w.lifts == passes:
		out["loading"] = haulCost{rate: "own", says: w.T("Your own gear lifts it: the hours are yours. At the seller's end it must be there too.")}
	default:
		c := haulCost{parts: []PartUse{{partRigger, 1}}, says: w.T("Your own gear does not lift the heaviest piece: a rigger comes, at hired prices.")}
		if top := w.heaviest(); top != nil && top.weight.span.Likely >= skatesFrom {
			c.parts = append(c.parts, PartUse{partSkates, 1})
		}
		out["loading"] = c
	}
	if t := &w.ties; t.set && t.standing != open {
		c := haulCost{says: w.T("Your own tie-downs do.")}
		if n := t.straps; n > 0 {
			c.parts = append(c.parts, PartUse{partStrap, float64(n)}, PartUse{partProtector, float64(2 * n)})
		}
		if n := t.chains; n > 0 {
			c.parts = append(c.parts, PartUse{partChain, float64(n)})
		}
		if len(c.parts) > 0 {
			c.says = w.F("Your own tie-downs do not come to what the rule asks for: %d more.", t.straps+t.chains)
		}
		out["tie-downs"] = c
	}
	return out
}

// transport is the drive with own or hired truck and trailer.
func (w *ride) transport() (haulCost, bool) {
	c := haulCost{perDistance: w.haul.PerDistance, says: w.T("Driven with your own truck and trailer.")}
	if w.haul.Truck == nil && w.haul.Trailer == nil {
		c.keep, c.says = true, w.T("The drive at your own cost of the distance.")
		return c, w.haul.PerDistance > 0
	}
	if w.truck == open || w.tow == open || w.trailer == open {
		c.keep = true
		c.says += " " + w.T("What truck and trailer may carry is not known yet, so the rubric's other costs stay.")
		return c, w.haul.PerDistance > 0
	}
	if w.hiresTruck() {
		c.parts, c.perDistance = append(c.parts, PartUse{partTruck, 1}), 0
	}
	if w.hiresTrailer() {
		c.parts = append(c.parts, PartUse{partTrailer, 1})
	}
	if len(c.parts) > 0 {
		c.says = w.T("Your own truck and trailer do not do it as they are: what lacks is hired for a day.")
	}
	return c, true
}
