package limit

import "strings"

const haulCaution = "The plates of truck, trailer and hitch come first. Mills, lathes and presses are top-heavy: keep people out of the fall line, hire a rigger when in doubt."

// chainRatings: 49 CFR 393.108 tables, lb, by size and grade 30, 43, 70, 80.
var chainRatings = []struct {
	size   string
	grades [4]float64
}{
	{"1/4", [4]float64{1300, 2600, 3150, 3500}}, {"5/16", [4]float64{1900, 3900, 4700, 4500}},
	{"3/8", [4]float64{2650, 5400, 6600, 7100}}, {"1/2", [4]float64{4500, 9200, 11300, 12000}},
}

var otherRatings = []struct {
	kind string
	lb   float64
}{
	{"webbing 1 3/4 in", 1750}, {"webbing 2 in", 2000}, {"webbing 3 in", 3000}, {"webbing 4 in", 4000},
	{"rope 1/4", 1400}, {"rope 3/8", 3000}, {"rope 1/2", 5300},
}

var chainGrades = [4]string{"30", "43", "70", "80"}

// rating gives the working load limit of a kind; unmarked chain is grade 30.
func rating(kind string) float64 {
	for _, c := range chainRatings {
		if kind == "chain "+c.size+" unmarked" {
			return c.grades[0]
		}
		for i, g := range chainGrades {
			if kind == "chain "+c.size+" grade "+g {
				return c.grades[i]
			}
		}
	}
	for _, o := range otherRatings {
		if kind == o.kind {
			return o.lb
		}
	}
	return 0
}

func tieDownKinds() []string {
	var out []string
	for _, c := range chainRatings {
		for _, g := range chainGrades {
			out = append(out, "chain "+c.size+" grade "+g)
		}
		out = append(out, "chain "+c.size+" unmarked")
	}
	for _, o := range otherRatings {
		out = append(out, o.kind)
	}
	return out
}

var tieDownRating = rule{
	Definition: Definition{
		Name: "tie-down-rating", Title: "Working load limit of a tie-down",
		Quantities: []Input{{Name: "kind", Title: "kind, size and grade", Dimension: "word", Words: tieDownKinds()}},
		Formula:    "table value; unmarked chain counts as grade 30",
		Source:     "49 CFR 393.108 and its tables, read in a reprint",
		Status:     Reprint, Caution: "The mark on the tie-down and the anchor point rule, the weaker of both; cut, knotted or stretched ones are out. " + haulCaution, Maker: "mass",
	},
	makerUnit: "lb",
	judge: func(m *measured) (Result, *Error) {
		kind := m.words["kind"]
		res := Result{Value: rating(kind), Unit: "lb", Finding: Computed, Text: m.F("A %s works to %s lb.", m.Label(kind), m.show(rating(kind), 0))}
		if strings.HasSuffix(kind, "unmarked") {
			res.Text = m.F("Unmarked chain counts as grade 30: %s lb.", m.show(rating(kind), 0))
		}
		if marked, ok := m.maker("lb"); ok { // its maker's mark
			res.Value, res.Unit = m.to(marked, makerKey)
			res.Source, res.Status = m.T("the maker's own limit, as entered"), Own
			res.Text = m.F("By its mark it works to %s.", m.in(marked, makerKey))
		}
		res.Notes = []string{m.T("Tied from the vehicle to the load, half of it counts (393.106(d)).")}
		return res, nil
	},
}

var truckPayload = rule{
	Definition: Definition{
		Name: "truck-payload", Title: "Payload left in the truck",
		Quantities: []Input{
			{Name: "rated", Title: "gross weight rating by its plate", Dimension: "mass", Unit: "lb", Metric: "kg"},
			{Name: "empty", Title: "empty weight", Dimension: "mass", Unit: "lb", Metric: "kg"},
			{Name: "people", Title: "people and gear", Dimension: "mass", Unit: "lb", Metric: "kg"},
			{Name: "tongue", Title: "tongue weight of the trailer", Dimension: "mass", Unit: "lb", Metric: "kg"},
		},
		Formula: "left = rated - empty - people - tongue; beyond under 0",
		Source:  "definition of a gross weight rating",
		Status:  Physics, Caution: haulCaution,
	},
	bounds: map[string]bound{"rated": {500, 200000}, "empty": {300, 100000}, "people": {0, 20000}, "tongue": {0, 20000}},
	judge: func(m *measured) (Result, *Error) {
		if m.n("empty") >= m.n("rated") {
			return Result{}, refuse("empty", m.T("the truck weighs more empty than it is rated for"), m.T("take both from its plate and papers"))
		}
		left := m.n("rated") - m.n("empty") - m.n("people") - m.n("tongue")
		res := m.held(left, 0, "rated")
		res.Text = m.F("%s of payload is left.", m.in(left, "rated"))
		if more(0, left) {
			res.Finding, res.Text = Beyond, m.F("The truck is overloaded by %s.", m.in(-left, "rated"))
		}
		return res, nil
	},
}

var trailerPayload = rule{
	Definition: Definition{
		Name: "trailer-payload", Title: "Load on the trailer",
		Quantities: []Input{
			{Name: "rated", Title: "gross weight rating by its plate", Dimension: "mass", Unit: "lb", Metric: "kg"},
			{Name: "empty", Title: "empty weight", Dimension: "mass", Unit: "lb", Metric: "kg"},
			{Name: "load", Title: "load", Dimension: "mass", Unit: "lb", Metric: "kg"},
		},
		Formula: "payload = rated - empty; beyond where the load is more",
		Source:  "definition of a gross weight rating",
		Status:  Physics, Caution: haulCaution,
	},
	bounds: map[string]bound{"rated": {200, 200000}, "empty": {50, 100000}, "load": {0, 200000}},
	judge: func(m *measured) (Result, *Error) {
		if m.n("empty") >= m.n("rated") {
			return Result{}, refuse("empty", m.T("the trailer weighs more empty than it is rated for"), m.T("take both from its plate and papers"))
		}
		payload := m.n("rated") - m.n("empty")
		res := m.held(m.n("load"), payload, "load")
		res.More = []Figure{m.figure(m.T("payload"), payload, "load")}
		res.Text = m.F("The load is %s, not more than the payload of %s.", m.in(m.n("load"), "load"), m.in(payload, "load"))
		if more(m.n("load"), payload) {
			res.Finding, res.Text = Beyond, m.F("The load is %s, more than the payload of %s.", m.in(m.n("load"), "load"), m.in(payload, "load"))
		}
		return res, nil
	},
}

const leastAngle = 30 // degrees from the horizontal

var slingLeg = rule{
	Definition: Definition{
		Name: "sling-leg", Title: "Load on one sling leg",
		Quantities: []Input{
			{Name: "load", Title: "weight lifted", Dimension: "mass", Unit: "lb", Metric: "kg"},
			{Name: "legs", Title: "legs that carry", Dimension: "number"},
			{Name: "angle", Title: "angle of the leg from the horizontal", Dimension: "angle", Unit: "deg", Metric: "deg"},
		},
		Formula: "leg = load / legs / sin(angle); beyond under 30 deg",
		Source:  "statics; two sling makers' published guides: not under 30 deg from the horizontal",
		Status:  Practice, Caution: "Nobody beneath or beside a hanging load; the sling's tag comes first. " + haulCaution, Maker: "mass",
	},
	bounds: map[string]bound{"load": {1, 1e6}, "legs": {1, 4}, "angle": {5, 90}}, makerUnit: "lb",
	judge: func(m *measured) (Result, *Error) {
		angle := m.n("angle")
		if m.n("legs") == 1 && more(90, angle) {
			return Result{}, refuse("angle", m.F("a single leg hangs upright, not at %s deg", m.show(angle, 1)), m.T("give 90 deg, or count the legs again"))
		}
		leg := m.n("load") / m.n("legs") / sine(angle)
		res := Result{Finding: Computed, Status: Physics, Text: m.F("Each leg carries %s.", m.in(leg, "load"))}
		res.Value, res.Unit = m.to(leg, "load")
		if tag, ok := m.maker("lb"); ok { // of one leg, hanging plumb
			res = m.held(leg, tag, "load")
			m.own(&res, *res.Limit)
			res.Text = m.F("Each leg carries %s, not more than the %s of its tag.", m.in(leg, "load"), m.in(tag, "load"))
			if more(leg, tag) {
				res.Finding, res.Text = Beyond, m.F("Each leg carries %s, more than the %s of its tag.", m.in(leg, "load"), m.in(tag, "load"))
			}
		}
		if more(leastAngle, angle) {
			res = Result{Value: angle, Unit: "deg", Limit: ptr(leastAngle), Finding: Beyond,
				Text: m.F("At %s deg each leg carries %s: slings stay above 30 deg.", m.show(angle, 1), m.in(leg, "load"))}
		}
		if m.n("legs") > 2 {
			two := leg * m.n("legs") / 2
			res.Notes = []string{m.F("A stiff load hangs on two legs whatever their number: reckon with two, %s a leg.", m.in(two, "load"))}
			if res.Finding == Computed {
				res.Text = m.F("Each leg carries %s if all carry alike, but a stiff load hangs on two: %s.", m.in(leg, "load"), m.in(two, "load"))
			}
			if tag, ok := m.maker("lb"); ok && res.Finding == Within && more(two, tag) {
				res.Finding, res.Text = Watch, m.F("Each leg carries %s if all carry alike; hanging on two it is %s, more than the %s of its tag.", m.in(leg, "load"), m.in(two, "load"), m.in(tag, "load"))
			}
		}
		res.More = []Figure{m.figure(m.T("load of one leg"), leg, "load")}
		return res, nil
	},
}

var rollerPull = rule{
	Definition: Definition{
		Name: "roller-pull", Title: "Pull to move a machine on skates",
		Quantities: []Input{
			{Name: "weight", Title: "weight of the machine", Dimension: "mass", Unit: "lb", Metric: "kg"},
			{Name: "slope", Title: "slope of the floor", Dimension: "share", Unit: "%", Metric: "%", Optional: true, Default: "0 %"},
		},
		Formula: "start 5 to 10 % of the weight, rolling half of that, plus slope x weight",
		Source:  "a dolly maker's guide",
		Status:  Practice, Caution: "On a slope hold it back from above, never from below. " + haulCaution,
	},
	bounds: map[string]bound{"weight": {10, 200000}, "slope": {0, 30}},
	judge: func(m *measured) (Result, *Error) {
		w := m.n("weight")
		hill := w * m.n("slope") / 100
		res := Result{Finding: Computed, Text: m.F("Starting it takes %s to %s of pull.", m.in(0.05*w+hill, "weight"), m.in(0.1*w+hill, "weight"))}
		res.Value, res.Unit = m.to(0.1*w+hill, "weight")
		res.More = []Figure{
			m.figure(m.T("to start, least"), 0.05*w+hill, "weight"),
			m.figure(m.T("to keep rolling, least"), 0.025*w+hill, "weight"),
			m.figure(m.T("to keep rolling, most"), 0.05*w+hill, "weight"),
			m.figure(m.T("of it for the slope"), hill, "weight"),
		}
		return res, nil
	},
}
