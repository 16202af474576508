package limit

import (
	"math"

	"asfound/rubrics/say"
)

var driveSize = rule{
	Definition: Definition{
		Name: "drive-size", Title: "Frequency drive on single-phase supply",
		Quantities: []Input{
			{Name: "current", Title: "table current of the motor", Dimension: "current", Unit: "A", Metric: "A"},
			{Name: "rated", Title: "three-phase output rating of the drive at hand", Dimension: "current", Unit: "A", Metric: "A", Optional: true},
		},
		Formula: "rated output at least 2.0 x motor current; input about 1.732 x motor current",
		Source:  "a drive dealer's published guide; wire 125 % of the drive's rated input (NFPA 70 430.122(A)) from memory",
		Status:  Practice, Caution: motorCaution, Maker: "current",
	},
	bounds: map[string]bound{"current": {0.1, 1000}, "rated": {0.1, 5000}}, makerUnit: "A",
	judge: func(m *measured) (Result, *Error) {
		amps := m.n("current")
		need := 2 * amps
		res := Result{Value: need, Unit: "A", Finding: Computed, Text: m.F("The drive must be rated %s A or more.", m.show(need, 1))}
		res.More = []Figure{
			{Title: m.T("rating needed"), Value: need, Unit: "A"},
			{Title: m.T("input current"), Value: 1.732 * amps, Unit: "A"},
			{Title: m.T("wire must carry"), Value: 1.25 * 1.732 * amps, Unit: "A", Text: m.F("%s A; the drive's plate decides", m.show(1.25*1.732*amps, 1))},
		}
		res.Notes = []string{m.T("A drive made for single-phase input (to about 3 hp) needs no such margin: its maker's own rating decides.")}
		if maker, ok := m.maker("A"); ok {
			more1 := res.More
			res = m.held(amps, maker, "current")
			m.own(&res, *res.Limit)
			res.More = more1[1:]
			res.Text = m.F("The motor draws %s A, not more than the drive's own single-phase rating of %s A.", m.show(amps, 1), m.show(maker, 1))
			if more(amps, maker) {
				res.Finding = Beyond
				res.Text = m.F("The motor draws %s A, more than the drive's own single-phase rating of %s A.", m.show(amps, 1), m.show(maker, 1))
			}
			return res, nil
		}
		if m.has("rated") {
			res.Value, res.Limit, res.Finding = m.n("rated"), ptr(need), Within
			res.Text = m.F("The drive is rated %s A, at least the %s A needed.", m.show(m.n("rated"), 1), m.show(need, 1))
			if more(need, m.n("rated")) {
				res.Finding, res.Text = Beyond, m.F("The drive is rated %s A, less than the %s A needed.", m.show(m.n("rated"), 1), m.show(need, 1))
			}
		}
		return res, nil
	},
}

var rotarySupply = rule{
	Definition: Definition{
		Name: "rotary-supply", Title: "Supply of a rotary converter",
		Quantities: []Input{
			{Name: "current", Title: "fixed: sum of the motors' table currents; variable: input current by the converter's plate", Dimension: "current", Unit: "A", Metric: "A"},
			{Name: "kind", Title: "kind of load", Dimension: "word", Words: []string{"fixed", "variable"}},
		},
		Formula: "wire at least 2.5 x the sum (fixed), 1.25 x the plate input (variable)",
		Source:  "NFPA 70 (NEC) 455.6(A) and 455.7, from memory; Table 310.16 (2023), read in reprints",
		Status:  Memory, Caution: motorCaution,
	},
	bounds: map[string]bound{"current": {0.1, 1000}},
	judge: func(m *measured) (Result, *Error) {
		factor := 2.5
		if m.words["kind"] == "variable" {
			factor = 1.25
		}
		need := factor * m.n("current")
		low, high := size(need, func(w wire) float64 { return w.at60 }), size(need, func(w wire) float64 { return w.at75 })
		res := Result{Value: need, Unit: "A", Finding: Computed, More: []Figure{
			{Title: m.T("copper wire, terminals 60 degC or unmarked"), Text: m.wireText(low)},
			{Title: m.T("copper wire, terminals marked 75 degC"), Text: m.wireText(high)},
		}}
		res.Text = m.F("The wire to the converter must carry %s A: %s at 60 degC terminals.", m.show(need, 1), m.wireText(low))
		res.Notes = []string{m.T("Breaker at most 125 % of the converter's plate input. No coil or contactor on the made-up leg.")}
		return res, nil
	},
}

var startFactor = map[string]float64{"easy": 1, "normal": 1.5, "hard": 2}

var startNeeds = map[string]string{
	"easy":   say.Key("An easy start needs %s and the converter has %s"),
	"normal": say.Key("A normal start needs %s and the converter has %s"),
	"hard":   say.Key("A hard start needs %s and the converter has %s"),
}

var rotarySize = rule{
	Definition: Definition{
		Name: "rotary-size", Title: "Size of a rotary converter",
		Quantities: []Input{
			{Name: "machine", Title: "largest motor to start", Dimension: "power", Unit: "hp", Metric: "kW"},
			{Name: "converter", Title: "rating of the converter", Dimension: "power", Unit: "hp", Metric: "kW"},
			{Name: "start", Title: "start: easy (grinder), normal (mill, clutched lathe), hard (compressor, lathe in gear)", Dimension: "word", Words: []string{"easy", "normal", "hard"}},
		},
		Formula: "converter at least 1.0, 1.5 or 2.0 x the largest motor",
		Source:  "common practice, from memory",
		Status:  Memory, Caution: motorCaution, Maker: "power",
	},
	bounds: map[string]bound{"machine": {0.05, 500}, "converter": {0.05, 1000}}, makerUnit: "hp",
	judge: func(m *measured) (Result, *Error) {
		need := startFactor[m.words["start"]] * m.n("machine")
		if maker, ok := m.maker("hp"); ok { // largest motor by the converter's maker
			res := m.held(m.n("machine"), maker, "machine")
			m.own(&res, *res.Limit)
			res.Text = m.F("The motor has %s, not more than the converter's maker lets it start.", m.in(m.n("machine"), "machine"))
			if more(m.n("machine"), maker) {
				res.Finding, res.Text = Beyond, m.F("The motor has %s, more than the converter's maker lets it start.", m.in(m.n("machine"), "machine"))
			}
			return res, nil
		}
		res := m.held(m.n("converter"), need, "converter")
		res.More = []Figure{m.figure(m.T("rating needed"), need, "converter")}
		is := m.Pattern(startNeeds[m.words["start"]], m.in(need, "converter"), m.in(m.n("converter"), "converter"))
		res.Text = is + "."
		if more(need, m.n("converter")) {
			res.Finding, res.Text = Beyond, m.F("%s: too small.", is)
		}
		return res, nil
	},
}

var legBalance = rule{
	Definition: Definition{
		Name: "leg-balance", Title: "Balance of three legs",
		Quantities: []Input{
			{Name: "leg-1", Title: "first leg to second", Dimension: "voltage", Unit: "V", Metric: "V"},
			{Name: "leg-2", Title: "second leg to third", Dimension: "voltage", Unit: "V", Metric: "V"},
			{Name: "leg-3", Title: "third leg to first", Dimension: "voltage", Unit: "V", Metric: "V"},
			{Name: "load", Title: "state", Dimension: "word", Words: []string{"idle", "loaded"}},
		},
		Formula: "largest departure from the mean / mean x 100; beyond over 10 % idle, 5 % loaded",
		Source:  "common practice with rotary converters, no source",
		Status:  Practice, Caution: liveCaution + motorCaution, Maker: "share",
	},
	bounds: map[string]bound{"leg-1": {0, 1000}, "leg-2": {0, 1000}, "leg-3": {0, 1000}}, makerUnit: "%",
	judge: func(m *measured) (Result, *Error) {
		mean := (m.n("leg-1") + m.n("leg-2") + m.n("leg-3")) / 3
		if mean == 0 {
			return Result{}, refuse("leg-1", m.T("all three legs read 0 V"), m.T("an electrician measures between the legs while it runs"))
		}
		if mean < 90 {
			return Result{}, refuse("leg-1", m.F("the legs read %s V on average, no supply of a three-phase machine", m.show(mean, 1)), m.T("give volts from leg to leg, each of them"))
		}
		worst := 0.0
		for _, name := range []string{"leg-1", "leg-2", "leg-3"} {
			worst = math.Max(worst, math.Abs(m.n(name)-mean))
		}
		share := worst / mean * 100
		limit, is := 10.0, m.T("The legs, idle, are out of balance by")
		if m.words["load"] == "loaded" {
			limit, is = 5, m.T("The legs, loaded, are out of balance by")
		}
		res := m.percent(is, share, limit)
		if more(share, 1) && res.Status != Own {
			res.Notes = []string{m.T("From memory: motor makers ask for 1 % at the motor, and derate it above.")}
		}
		res.More = []Figure{{Title: m.T("mean"), Value: mean, Unit: "V"}}
		return res, nil
	},
}
