package limit

import "math"

const hydraulicCaution = "Never loosen a fitting under load or pressure: oil under pressure pierces skin and kills. " +
	"Lower onto locks or blocks, release the pressure, then work (29 CFR 1910.147(d)(5))."

// area of a bore or rod in square inches.
func area(d float64) float64 { return float64(math.Pi * d * d / 4) }

// gallon is 231 in3 by definition.
const gallon = 231.0

var liftTime = rule{
	Definition: Definition{
		Name: "lift-time", Title: "Lifting time against pump flow",
		Quantities: []Input{
			{Name: "bore", Title: "cylinder bore", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "cylinders", Title: "cylinders", Dimension: "number"},
			{Name: "stroke", Title: "cylinder stroke used (not carriage travel)", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "flow", Title: "pump flow by its plate", Dimension: "flow", Unit: "gpm", Metric: "L/min"},
			{Name: "time", Title: "time the stroke took", Dimension: "time", Unit: "s", Metric: "s", Optional: true},
		},
		Formula: "volume = cylinders x pi bore^2 / 4 x stroke / 231 gal; time = volume / flow; efficiency = volume / time taken / flow; watch under 85 %, beyond under 80 %",
		Source:  "geometry (1 gal = 231 in3); the thresholds 85 % and 80 % are common practice, from memory, with no source",
		Status:  Memory, Caution: hydraulicCaution,
	},
	bounds: map[string]bound{"bore": {0.2, 60}, "cylinders": {1, 16}, "stroke": {0.5, 600}, "flow": {0.01, 500}, "time": {0.5, 7200}},
	judge: func(m *measured) (Result, *Error) {
		a := m.n("cylinders") * area(m.n("bore"))
		volume := a * m.n("stroke") / gallon
		ideal := volume / m.n("flow") * 60
		oil := Figure{Title: "oil volume", Value: volume, Unit: "gal"}
		if m.entered["flow"] != "gpm" {
			oil = Figure{Title: "oil volume", Value: volume * 3.785411784, Unit: "L"}
		}
		speed := Figure{Title: "cylinder speed at full flow", Value: gallon * m.n("flow") / (60 * a), Unit: "in/s"}
		if !m.has("time") {
			return Result{
				Value: ideal, Unit: "s", Finding: Computed, Status: Physics, More: []Figure{oil, speed},
				Text: "At full pump flow this stroke takes " + show(ideal, 1) + " s.",
			}, nil
		}
		efficiency := ideal / m.n("time") * 100
		if efficiency > 150 {
			return Result{}, refuse("time", m.in(m.n("time"), "time")+" is far faster than the pump can deliver ("+show(ideal, 1)+" s)",
				"check bore, stroke and flow; on a chain lift the cylinder moves half as far as the carriage")
		}
		flow := m.figure("flow that reached the cylinder", volume/m.n("time")*60, "flow")
		res := Result{Value: efficiency, Unit: "%", Limit: ptr(80), Finding: Computed,
			More: []Figure{{Title: "time at full flow", Value: ideal, Unit: "s"}, flow, oil, speed}}
		reached := show(efficiency, 1) + " % of the pump's plate flow reached the cylinder"
		res.Text = reached + ", not under 85 %."
		switch {
		case more(80, efficiency):
			res.Finding, res.Text = Beyond, reached+": under 80 % a pump is usually called worn."
		case more(85, efficiency):
			res.Finding, res.Text = Watch, reached+": between 80 and 85 % a pump is suspect."
		}
		if res.Finding != Computed {
			res.Notes = append(res.Notes, "Other causes: low voltage, cold or low oil, a clogged inlet, a leaking relief valve, air, an unknown chain ratio.")
		}
		if efficiency > 105 {
			res.Notes = append(res.Notes, "More than all of the plate flow: one of bore, stroke or flow is not what was entered.")
		}
		return res, nil
	},
}

var pumpPower = rule{
	Definition: Definition{
		Name: "pump-power", Title: "Power a pump needs",
		Quantities: []Input{
			{Name: "flow", Title: "pump flow", Dimension: "flow", Unit: "gpm", Metric: "L/min"},
			{Name: "pressure", Title: "pressure", Dimension: "pressure", Unit: "psi", Metric: "bar"},
			{Name: "efficiency", Title: "overall efficiency", Dimension: "share", Unit: "%", Metric: "%", Optional: true, Default: "100 %"},
		},
		Formula: "hp = gpm x psi / (1714 x efficiency)",
		Source:  "definition: 1714 = 33,000 ft lbf/min per hp x 12 / 231, rounded",
		Status:  Physics, Caution: hydraulicCaution,
	},
	bounds: map[string]bound{"flow": {0.01, 500}, "pressure": {1, 20000}, "efficiency": {20, 100}},
	judge: func(m *measured) (Result, *Error) {
		// The unrounded constant: 33000 x 12 / 231 = 1714.2857.
		hp := m.n("flow") * m.n("pressure") / (33000 * 12 / gallon) / (m.n("efficiency") / 100)
		return Result{Value: hp, Unit: "hp", Finding: Computed,
			More: []Figure{{Title: "in kilowatts", Value: hp * 0.74569987158227022, Unit: "kW"}},
			Text: "The pump needs " + show(hp, 2) + " hp at its shaft.",
		}, nil
	},
}

var leakDown = rule{
	Definition: Definition{
		Name: "leak-down", Title: "Leak-down under load",
		Quantities: []Input{
			{Name: "drop", Title: "drop", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "time", Title: "time", Dimension: "time", Unit: "min", Metric: "min"},
			{Name: "bore", Title: "cylinder bore", Dimension: "length", Unit: "in", Metric: "mm", Optional: true},
		},
		Formula: "beyond over 0.125 in in the first minute or 0.1875 in in ten minutes; leak = pi bore^2 / 4 x drop / time",
		Source:  "ASME PALD-2009 2-4.1.1.5 (transmission jacks), read in a reprinted excerpt; used here as a yardstick, no vehicle-lift figure is published",
		Status:  Reprint,
		Caution: "A jack rule: for a lift this is a finding of condition, the mechanical locks are the finding of safety. " +
			"Nobody goes beneath until every lock is heard and seen engaged and the lift has been lowered onto them. " + hydraulicCaution,
	},
	bounds: map[string]bound{"drop": {0, 240}, "time": {0.05, 2880}, "bore": {0.2, 60}},
	judge:  judgeLeak,
}

const (
	leakFirst = 0.125  // in, in 1 min
	leakTen   = 0.1875 // in, in 10 min
)

func judgeLeak(m *measured) (Result, *Error) {
	drop, t := m.n("drop"), m.n("time")
	limit := leakTen
	if t < 10 {
		limit = leakFirst
	}
	res := Result{Finding: Within}
	res.Value, res.Unit = m.to(drop, "drop")
	seen := "It sank " + m.in(drop, "drop") + " in " + m.in(t, "time")
	switch {
	case more(drop, leakTen) && !more(t, 10):
		limit, res.Finding = leakTen, Beyond
		res.Text = seen + ", more than the " + m.in(leakTen, "drop") + " in ten minutes of the jack yardstick."
	case more(drop, leakFirst) && !more(t, 1):
		res.Finding = Beyond
		res.Text = seen + ", more than the " + m.in(leakFirst, "drop") + " in the first minute of the jack yardstick."
	case more(t, 10) && more(drop, leakTen):
		// Longer than the rule looks: compare the steady rate, and only warn.
		res.Finding = Computed
		res.Text = seen + ", longer than the yardstick's ten minutes, so it is not held against it."
		if more(drop*10/t, leakTen) {
			res.Finding = Watch
			res.Text = seen + ", at that rate more than " + m.in(leakTen, "drop") + " in ten minutes of the jack yardstick."
		}
	case more(10, t) && more(drop*10/t, leakTen):
		res.Finding = Watch
		res.Text = seen + "; at that rate it passes " + m.in(leakTen, "drop") + " in ten minutes: watch it for ten."
	case more(1, t):
		res.Finding = Computed
		res.Text = seen + ": too short a time to tell, watch it for one minute and for ten."
	default:
		res.Text = seen + ", within the jack yardstick as far as it was watched."
		if more(10, t) {
			res.Notes = append(res.Notes, "The ten-minute figure was not reached: watch it for ten minutes.")
		}
		if more(drop, leakFirst) {
			limit = leakTen
			res.Notes = append(res.Notes, "The first minute was not read apart: more than "+m.in(leakFirst, "drop")+" in it is beyond.")
		}
	}
	at, _ := m.to(limit, "drop")
	res.Limit = ptr(at)
	if m.has("bore") {
		leak := area(m.n("bore")) * drop / t
		res.More = []Figure{
			{Title: "oil leaking past one cylinder", Value: leak, Unit: "in3/min"},
			{Title: "the same", Value: leak * 16.387064, Unit: "mL/min"},
		}
	}
	return res, nil
}

var pumpDisplacement = rule{
	Definition: Definition{
		Name: "pump-displacement", Title: "Pump: displacement for a flow",
		Quantities: []Input{
			{Name: "flow", Title: "flow", Dimension: "flow", Unit: "gpm", Metric: "L/min"},
			{Name: "rpm", Title: "pump speed in rpm", Dimension: "number"},
		},
		Formula: "displacement = flow / rpm (in3 = 231 gpm / rpm)",
		Source:  "definition; the gallon is 231 in3",
		Status:  Physics, Caution: hydraulicCaution,
	},
	bounds: map[string]bound{"flow": {0.001, 2000}, "rpm": {1, 20000}},
	judge: func(m *measured) (Result, *Error) {
		each, u := 231*m.n("flow")/m.n("rpm"), "in3"
		if e := m.entered["flow"]; e != "gpm" && e != "cfm" && e != "in3/min" {
			each, u = each*16.387064, "mL"
		}
		return Result{Value: each, Unit: u, Finding: Computed, Text: "The pump must move " + show(each, 3) + " " + u + " a turn, before losses."}, nil
	},
}
