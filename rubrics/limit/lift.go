package limit

import (
	"math"

	"asfound/rubrics/say"
)

const liftCaution = "Reading and looking only; the seller operates, and no vehicle is loaded for the sake of this check. " +
	"US federal rules have no vehicle-lift standard: the ANSI/ALI standards apply, enforced through the general duty clause " +
	"(OSHA letter, 19 Nov 2014). Before use: installed to the manual, then inspected by a qualified lift inspector; local code and permits apply."

var descentSpeed = rule{
	Definition: Definition{
		Name: "descent-speed", Title: "Descent speed of a lift",
		Quantities: []Input{
			{Name: "travel", Title: "height travelled", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "time", Title: "time it took", Dimension: "time", Unit: "s", Metric: "s"},
		},
		Formula: "travel / time; beyond over 20 ft/min",
		Source:  "California Title 8 s.3549 (statement of reasons, Art. 19, 2005)",
		Status:  Published, Caution: liftCaution, Maker: "speed",
	},
	bounds:    map[string]bound{"travel": {1, 600}, "time": {0.2, 3600}},
	makerUnit: "ft/min",
	judge: func(m *measured) (Result, *Error) {
		speed := m.n("travel") / 12 / m.n("time") * 60
		limit, allowed := 20.0, say.Key("the %s ft/min allowed")
		res := Result{Finding: Within, Notes: []string{
			m.T("This is an average: the fastest moment may be faster."),
			m.T("California treats scissor and parallelogram lifts apart."),
		}}
		if maker, ok := m.maker("ft/min"); ok {
			m.own(&res, maker)
			limit, allowed = maker, say.Key("the maker's %s ft/min allowed")
			res.Notes = []string{m.T("This is an average: the fastest moment may be faster.")}
		}
		res.Value, res.Unit, res.Limit = speed, "ft/min", ptr(limit)
		said := m.show(speed, 1) + " ft/min"
		if m.entered["travel"] == "mm" || m.entered["travel"] == "cm" || m.entered["travel"] == "m" {
			res.Value, res.Unit, res.Limit = speed*0.00508, "m/s", ptr(limit*0.00508)
			said = m.show(res.Value, 3) + " m/s (" + said + ")"
		}
		most := m.Pattern(allowed, m.show(limit, 1))
		res.Text = m.F("It comes down at %s on average, not faster than %s.", said, most)
		if more(speed, limit) {
			res.Finding = Beyond
			res.Text = m.F("It comes down at %s on average, faster than %s.", said, most)
		}
		res.More = []Figure{{Title: m.T("shortest time allowed"), Value: m.n("travel") / 12 / limit * 60, Unit: "s"}}
		return res, nil
	},
}

var armLoad = rule{
	Definition: Definition{
		Name: "arm-load", Title: "Load on one arm of a two-post lift",
		Quantities: []Input{
			{Name: "weight", Title: "vehicle weight", Dimension: "mass", Unit: "lb", Metric: "kg"},
			{Name: "rear", Title: "share of the weight on the rear axle", Dimension: "share", Unit: "%", Metric: "%", Optional: true},
			{Name: "rated", Title: "rated capacity of the lift", Dimension: "mass", Unit: "lb", Metric: "kg"},
		},
		Formula: "heavier axle / 2 against rated / 4; the whole vehicle against rated",
		Source:  "lift dealers' published advice: each arm carries a quarter of the rating",
		Status:  Practice, Caution: "The lift's own plate and manual overrule. Pads at the vehicle maker's points; lift the whole vehicle, never one end. " + liftCaution,
		Maker: "mass",
	},
	bounds:    map[string]bound{"weight": {100, 2e5}, "rear": {10, 90}, "rated": {100, 2e5}},
	makerUnit: "lb",
	judge: func(m *measured) (Result, *Error) {
		share := 50.0
		if m.has("rear") {
			share = math.Max(m.n("rear"), 100-m.n("rear"))
		}
		arm, limit := m.n("weight")*share/200, m.n("rated")/4
		res := Result{Finding: Within}
		if maker, ok := m.maker("lb"); ok {
			m.own(&res, maker)
			limit = maker
		}
		res.Value, res.Unit = m.to(arm, "weight")
		at, _ := m.to(limit, "weight")
		res.Limit = ptr(at)
		carried := m.F("The heavier axle puts %s on each of its arms", m.in(arm, "weight"))
		res.Text = m.F("%s, not more than %s an arm.", carried, m.in(limit, "weight"))
		switch {
		case more(m.n("weight"), m.n("rated")):
			res.Finding = Beyond
			res.Status, res.Source = Published, m.T("the lift's plate; Michigan R 408.17251: never above rated capacity")
			res.Value, res.Unit = m.to(m.n("weight"), "weight")
			at, _ := m.to(m.n("rated"), "weight")
			res.Limit = ptr(at)
			res.Text = m.F("The vehicle weighs %s, more than the lift's rating of %s.", m.in(m.n("weight"), "weight"), m.in(m.n("rated"), "rated"))
		case more(arm, limit):
			res.Finding = Beyond
			res.Text = m.F("%s, more than %s an arm.", carried, m.in(limit, "weight"))
		case !m.has("rear"):
			res.Finding = Watch
			res.Text = m.F("With the weight spread evenly each arm carries %s of %s, but no vehicle is that even: weigh the axles.", m.in(arm, "weight"), m.in(limit, "weight"))
		}
		return res, nil
	},
}
