package limit

const airCaution = "Ear and eye protection. Never pressure-test a tank, stand over one, tighten under pressure, or pressurise one that is rusted, dented, patched or without a plate."

// airFlow gives the unit in which the flow of a volume is shown, and how many
// cubic feet a minute one is.
func airFlow(volumeUnit string) (name string, cfm float64) {
	switch volumeUnit {
	case "m3":
		return "m3/min", 1 / 0.028316846592
	case "L", "mL":
		return "L/min", 1 / 28.316846592
	}
	return "cfm", 1
}

// inFlow writes cubic feet a minute in a unit of airFlow.
func (m *measured) inFlow(cfm float64, name string, per float64) string {
	return m.show(cfm/per, 3) + " " + name
}

// span refuses two gauge readings that are the wrong way round.
func span(m *measured, low, high string) (float64, *Error) {
	dp := m.n(high) - m.n(low)
	if dp <= 0 {
		return 0, refuse(high, m.F("%s is not above %s", m.in(m.n(high), high), m.in(m.n(low), low)), m.T("give the gauge pressures at the start and the end of the time"))
	}
	return dp, nil
}

const sea = 14.7 // psi, of the free air

var pumpUp = rule{
	Definition: Definition{
		Name: "pump-up", Title: "Air delivered, by pumping up the tank",
		Quantities: []Input{
			{Name: "volume", Title: "volume of tank and pipes", Dimension: "volume", Unit: "gal", Metric: "L"},
			{Name: "from", Title: "gauge pressure at the start", Dimension: "pressure", Unit: "psi", Metric: "bar"},
			{Name: "to", Title: "gauge pressure at the end", Dimension: "pressure", Unit: "psi", Metric: "bar"},
			{Name: "time", Title: "time it took", Dimension: "time", Unit: "s", Metric: "s"},
			{Name: "rated", Title: "delivery by its plate", Dimension: "flow", Unit: "cfm", Metric: "L/min", Optional: true},
			{Name: "ambient", Title: "air pressure of the place", Dimension: "pressure", Unit: "psi", Metric: "bar", Optional: true, Default: "14.7 psi"},
		},
		Formula: "delivery = volume x (to - from) / (ambient x time); against the plate watch under 90 %, beyond under 75 %",
		Source:  "gas law, the same form as a compressor dealer's calculator; the shares 90 and 75 % from memory",
		Status:  Memory, Caution: airCaution,
	},
	bounds: map[string]bound{"volume": {0.2, 20000}, "from": {0, 5000}, "to": {1, 5000}, "time": {1, 36000}, "rated": {0.1, 20000}, "ambient": {7, 16}},
	judge: func(m *measured) (Result, *Error) {
		dp, err := span(m, "from", "to")
		if err != nil {
			return Result{}, err
		}
		minutes := m.n("time") / 60
		cfm := m.n("volume") * gallon / 1728 * dp / (m.n("ambient") * minutes)
		name, per := airFlow(m.entered["volume"])
		res := Result{Value: cfm / per, Unit: name, Finding: Computed, Status: Physics}
		res.Text = m.F("It delivers %s of free air, give or take 5 %%.", m.inFlow(cfm, name, per))
		res.More = []Figure{{Title: m.T("by the warm-air factor 0.536 psi gal/s"), Value: 0.536 * m.n("volume") * dp / m.n("time") / per, Unit: name}}
		res.Notes = []string{m.T("Average three runs with drains shut: a hot tank reads high.")}
		if !m.has("rated") {
			return res, nil
		}
		rated := m.n("rated")
		share := cfm / rated * 100
		if share > 150 { // judgement: a gallon for a litre, or a wrong mark, would pass a worn pump
			return Result{}, refuse("rated", m.F("it would deliver %s %% of its plate, which no pump does", m.show(share, 0)), m.T("check volume, both gauge readings, the time and the plate's figure with its unit"))
		}
		res.Status, res.Finding, res.Limit = Memory, Within, ptr(0.9*rated/per)
		is := m.F("It delivers %s, %s %% of its plate", m.inFlow(cfm, name, per), m.show(share, 1))
		res.Text = is + "."
		switch {
		case more(75, share):
			res.Finding, res.Limit, res.Text = Beyond, ptr(0.75*rated/per), m.F("%s: under 75 %%, rebuild.", is)
		case more(90, share):
			res.Finding, res.Text = Watch, m.F("%s: under 90 %%, worn valves or rings.", is)
		}
		res.Notes = append(res.Notes, m.T("A plate's displacement is not delivery: a two-stage pump delivers 75 to 85 % of it (from memory)."))
		return res, nil
	},
}

// leakFactors corrects a leak for the falling pressure: drop in psi, factor.
var leakFactors = [][2]float64{{10, 1}, {20, 1.12}, {50, 1.25}}

var airLeak = rule{
	Definition: Definition{
		Name: "air-leak", Title: "Leakage of an air system",
		Quantities: []Input{
			{Name: "volume", Title: "volume of tank and pipes", Dimension: "volume", Unit: "gal", Metric: "L"},
			{Name: "from", Title: "gauge pressure at the start", Dimension: "pressure", Unit: "psi", Metric: "bar"},
			{Name: "to", Title: "gauge pressure at the end", Dimension: "pressure", Unit: "psi", Metric: "bar"},
			{Name: "time", Title: "time it took", Dimension: "time", Unit: "s", Metric: "s"},
		},
		Formula: "leak = volume x (from - to) / (14.7 psi x time) x 1.0 up to 10 psi of drop, 1.12 at 20, 1.25 at 50, straight between",
		Source:  "a compressor dealer's calculator and its factors",
		Status:  Practice, Caution: airCaution,
	},
	bounds: map[string]bound{"volume": {0.2, 20000}, "from": {1, 5000}, "to": {0, 5000}, "time": {1, 360000}},
	judge: func(m *measured) (Result, *Error) {
		dp, err := span(m, "to", "from")
		if err != nil {
			return Result{}, err
		}
		if more(dp, 50) {
			return Result{}, refuse("to", m.F("a drop of %s is beyond the factors", m.in(dp, "to")), m.F("they end at %s: watch it for a shorter time", m.in(50, "to")))
		}
		factor := 1.0
		for i := 1; i < len(leakFactors); i++ {
			a, b := leakFactors[i-1], leakFactors[i]
			if dp > a[0] {
				factor = a[1] + float64((b[1]-a[1])*(dp-a[0]))/(b[0]-a[0])
			}
		}
		raw := m.n("volume") * gallon / 1728 * dp / (sea * m.n("time") / 60)
		name, per := airFlow(m.entered["volume"])
		return Result{Value: raw * factor / per, Unit: name, Finding: Computed,
			Text: m.F("It leaks %s of free air.", m.inFlow(raw*factor, name, per)),
			More: []Figure{{Title: m.T("before the correction"), Value: raw / per, Unit: name}},
		}, nil
	},
}

var tankLeak = rule{
	Definition: Definition{
		Name: "tank-leak", Title: "Tank alone: pressure lost",
		Quantities: []Input{
			{Name: "drop", Title: "pressure lost, valve shut", Dimension: "pressure", Unit: "psi", Metric: "bar"},
			{Name: "time", Title: "time watched", Dimension: "time", Unit: "min", Metric: "min"},
		},
		Formula: "drop in 10 min; watch over 2 psi, beyond over 10 psi",
		Source:  "shop practice, from memory; no rule of law is known",
		Status:  Practice, Caution: airCaution,
	},
	bounds: map[string]bound{"drop": {0, 1000}, "time": {1, 2880}},
	judge: func(m *measured) (Result, *Error) {
		rate := m.n("drop") * 10 / m.n("time")
		res := m.most(m.T("In ten minutes the tank loses"), rate, 2, 10, "drop", m.T(": a leak at check valve, drain, a fitting or a weld"))
		if more(10, m.n("time")) {
			res.Notes = append(res.Notes, m.F("Reckoned up from %s: watch the whole ten minutes.", m.in(m.n("time"), "time")))
		}
		res.Notes = append(res.Notes, m.T("A tank just pumped up loses pressure by cooling alone. Air from a weld or the shell: let it down, never fill it again."))
		return res, nil
	},
}

var leakShare = rule{
	Definition: Definition{
		Name: "leak-share", Title: "Leakage by cycling with no air used",
		Quantities: []Input{
			{Name: "on", Title: "time pumping", Dimension: "time", Unit: "min", Metric: "min"},
			{Name: "off", Title: "time resting", Dimension: "time", Unit: "min", Metric: "min"},
			{Name: "flow", Title: "delivery of the compressor", Dimension: "flow", Unit: "cfm", Metric: "L/min", Optional: true},
		},
		Formula: "share = on / (on + off) x 100; watch over 10 %",
		Source:  "a compressor dealer's published example; the 10 % is opinion",
		Status:  Practice, Caution: airCaution,
	},
	bounds: map[string]bound{"on": {0.01, 10000}, "off": {0, 10000}, "flow": {0.1, 20000}},
	judge: func(m *measured) (Result, *Error) {
		share := m.n("on") / (m.n("on") + m.n("off")) * 100
		res := Result{Value: share, Unit: "%", Limit: ptr(10), Finding: Within, Text: m.F("It leaks %s %% of what it delivers.", m.show(share, 1))}
		if more(share, 10) {
			res.Finding, res.Text = Watch, m.F("It leaks %s %% of what it delivers, more than the usual 10 %%.", m.show(share, 1))
		}
		if m.has("flow") {
			res.More = []Figure{m.figure(m.T("leak"), m.n("flow")*share/100, "flow")}
		}
		return res, nil
	},
}
