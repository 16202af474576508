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
		oil := Figure{Title: m.T("oil volume"), Value: volume, Unit: "gal"}
		if m.entered["flow"] != "gpm" {
			oil = Figure{Title: m.T("oil volume"), Value: volume * 3.785411784, Unit: "L"}
		}
		speed := Figure{Title: m.T("cylinder speed at full flow"), Value: gallon * m.n("flow") / (60 * a), Unit: "in/s"}
		if !m.has("time") {
			return Result{
				Value: ideal, Unit: "s", Finding: Computed, Status: Physics, More: []Figure{oil, speed},
				Text: m.F("At full pump flow this stroke takes %s s.", m.show(ideal, 1)),
			}, nil
		}
		efficiency := ideal / m.n("time") * 100
		if efficiency > 150 {
			return Result{}, refuse("time", m.F("%s is far faster than the pump can deliver (%s s)", m.in(m.n("time"), "time"), m.show(ideal, 1)),
				m.T("check bore, stroke and flow; on a chain lift the cylinder moves half as far as the carriage"))
		}
		flow := m.figure(m.T("flow that reached the cylinder"), volume/m.n("time")*60, "flow")
		res := Result{Value: efficiency, Unit: "%", Limit: ptr(80), Finding: Computed,
			More: []Figure{{Title: m.T("time at full flow"), Value: ideal, Unit: "s"}, flow, oil, speed}}
		reached := m.F("%s %% of the pump's plate flow reached the cylinder", m.show(efficiency, 1))
		res.Text = m.F("%s, not under 85 %%.", reached)
		switch {
		case more(80, efficiency):
			res.Finding, res.Text = Beyond, m.F("%s: under 80 %% a pump is usually called worn.", reached)
		case more(85, efficiency):
			res.Finding, res.Text = Watch, m.F("%s: between 80 and 85 %% a pump is suspect.", reached)
		}
		if res.Finding != Computed {
			res.Notes = append(res.Notes, m.T("Other causes: low voltage, cold or low oil, a clogged inlet, a leaking relief valve, air, an unknown chain ratio."))
		}
		if efficiency > 105 {
			res.Notes = append(res.Notes, m.T("More than all of the plate flow: one of bore, stroke or flow is not what was entered."))
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
			More: []Figure{{Title: m.T("in kilowatts"), Value: hp * 0.74569987158227022, Unit: "kW"}},
			Text: m.F("The pump needs %s hp at its shaft.", m.show(hp, 2)),
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
	seen := m.F("It sank %s in %s", m.in(drop, "drop"), m.in(t, "time"))
	switch {
	case more(drop, leakTen) && !more(t, 10):
		limit, res.Finding = leakTen, Beyond
		res.Text = m.F("%s, more than the %s in ten minutes of the jack yardstick.", seen, m.in(leakTen, "drop"))
	case more(drop, leakFirst) && !more(t, 1):
		res.Finding = Beyond
		res.Text = m.F("%s, more than the %s in the first minute of the jack yardstick.", seen, m.in(leakFirst, "drop"))
	case more(t, 10) && more(drop, leakTen):
		// Longer than the rule looks: compare the steady rate, and only warn.
		res.Finding = Computed
		res.Text = m.F("%s, longer than the yardstick's ten minutes, so it is not held against it.", seen)
		if more(drop*10/t, leakTen) {
			res.Finding = Watch
			res.Text = m.F("%s, at that rate more than %s in ten minutes of the jack yardstick.", seen, m.in(leakTen, "drop"))
		}
	case more(10, t) && more(drop*10/t, leakTen):
		res.Finding = Watch
		res.Text = m.F("%s; at that rate it passes %s in ten minutes: watch it for ten.", seen, m.in(leakTen, "drop"))
	case more(1, t):
		res.Finding = Computed
		res.Text = m.F("%s: too short a time to tell, watch it for one minute and for ten.", seen)
	default:
		res.Text = m.F("%s, within the jack yardstick as far as it was watched.", seen)
		if more(10, t) {
			res.Notes = append(res.Notes, m.T("The ten-minute figure was not reached: watch it for ten minutes."))
		}
		if more(drop, leakFirst) {
			limit = leakTen
			res.Notes = append(res.Notes, m.F("The first minute was not read apart: more than %s in it is beyond.", m.in(leakFirst, "drop")))
		}
	}
	at, _ := m.to(limit, "drop")
	res.Limit = ptr(at)
	if m.has("bore") {
		leak := area(m.n("bore")) * drop / t
		res.More = []Figure{
			{Title: m.T("oil leaking past one cylinder"), Value: leak, Unit: "in3/min"},
			{Title: m.T("the same"), Value: leak * 16.387064, Unit: "mL/min"},
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
		return Result{Value: each, Unit: u, Finding: Computed, Text: m.F("The pump must move %s %s a turn, before losses.", m.show(each, 3), u)}, nil
	},
}
