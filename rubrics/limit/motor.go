package limit

import (
	"math"
	"strings"

	"asfound/rubrics/say"
)

const motorCaution = "A licensed electrician decides, by the code in force and the local amendments. Power locked out before a cover comes off. " +
	"The plate's own current sets the overload relay only."

// liveCaution is for readings that are taken on live parts.
const liveCaution = "The reading is taken on live parts: by a qualified electrician alone, everybody else stands back. "

func motorQuantities(more ...Input) []Input {
	return append([]Input{
		{Name: "power", Title: "motor power by its plate", Dimension: "power", Unit: "hp", Metric: "kW"},
		{Name: "voltage", Title: "voltage", Dimension: "voltage", Unit: "V", Metric: "V"},
		{Name: "phases", Title: "phases", Dimension: "word", Words: []string{"1", "3"}},
	}, more...)
}

var motorBounds = map[string]bound{"power": {0.01, 10000}, "voltage": {10, 15000}, "length": {1, 5000}}

var motorCurrent = rule{
	Definition: Definition{
		Name: "motor-current", Title: "Motor full-load current",
		Quantities: motorQuantities(),
		Formula:    "table value by power, voltage and phases; nothing is interpolated",
		Source:     "NFPA 70 (NEC) Tables 430.248 and 430.250, read in reprints of the 2008 edition; use 430.6(A)(1)",
		Status:     Reprint, Caution: motorCaution,
	},
	bounds: motorBounds,
	judge: func(m *measured) (Result, *Error) {
		hp, volts, amps, err := motorRow(m)
		if err != nil {
			return Result{}, err
		}
		return Result{Value: amps, Unit: "A", Finding: Computed,
			Text: m.F("The table gives %s A for %s hp at %s V, %s.", m.show(amps, 1), m.show(hp, 2), m.show(volts, 0), m.phase()),
			More: []Figure{{Title: m.T("conductor must carry (125 %, 430.22)"), Value: amps * 1.25, Unit: "A"}},
		}, nil
	},
}

func (m *measured) phase() string {
	if m.words["phases"] == "1" {
		return m.T("single-phase")
	}
	return m.T("three-phase")
}

// motorRow finds the table's power, voltage and current. Powers in kW are taken
// to the row within 2 %, the difference between preferred kW and hp sizes.
func motorRow(m *measured) (hp, volts, amps float64, err *Error) {
	columns := threeVolts[:]
	if m.words["phases"] == "1" {
		columns = singleVolts[:]
	}
	column := -1
	for i, v := range columns {
		if tableVolts(m.n("voltage")) == v {
			column = i
		}
	}
	if column < 0 {
		return 0, 0, 0, refuse("voltage", m.F("%s %s is beyond the table", m.in(m.n("voltage"), "voltage"), m.phase()),
			m.F("it has %s V; also 110 to 120, 220 to 240 and, three-phase, 440 to 480 V are read there", m.list(columns, 0)))
	}
	var rows []float64
	for _, row := range motors {
		a := row.three[column]
		if m.words["phases"] == "1" {
			a = row.single[column]
		}
		if a == 0 {
			continue
		}
		rows = append(rows, row.hp)
		if math.Abs(m.n("power")-row.hp) <= 0.02*row.hp {
			return row.hp, columns[column], a, nil
		}
	}
	what := say.Key("%s %s lies between the rows of the table")
	if m.n("power") < rows[0] || m.n("power") > rows[len(rows)-1] {
		what = say.Key("%s %s is beyond the table")
	}
	return 0, 0, 0, refuse("power", m.Pattern(what, m.in(m.n("power"), "power"), m.phase()), m.F("it has %s hp; nothing is extrapolated", m.list(rows, 2)))
}

// tableVolts reads a system voltage at the column meant for it: the tables say
// that 115 V serves 110 to 120, 230 V 220 to 240 and 460 V 440 to 480.
func tableVolts(v float64) float64 {
	switch {
	case v >= 110 && v <= 120:
		return 115
	case v >= 220 && v <= 240:
		return 230
	case v >= 440 && v <= 480:
		return 460
	}
	return v
}

func (m *measured) list(values []float64, decimals int) string {
	out := make([]string, len(values))
	for i, v := range values {
		out[i] = m.show(v, decimals)
	}
	return strings.Join(out, ", ")
}

func wireNames() []string {
	out := make([]string, len(wires))
	for i, w := range wires {
		out[i] = w.name + " AWG"
	}
	return out
}

var motorSupply = rule{
	Definition: Definition{
		Name: "motor-supply", Title: "Wire and breaker for a motor",
		Quantities: motorQuantities(
			Input{Name: "length", Title: "one-way length of the run", Dimension: "length", Unit: "ft", Metric: "m", Optional: true},
			Input{Name: "wire", Title: "copper wire there", Dimension: "word", Words: wireNames(), Optional: true},
		),
		Formula: "wire at least 1.25 x table current; breaker 2.5 x, next standard size up; drop = 2 L I R / 1000, three-phase 1.732 L I R / 1000; watch over 3 %",
		Source: "NFPA 70 (NEC) 430.22, 430.52(C)(1) Exception 1, 240.6(A), Table 310.16 (2023), Tables 430.248 and 430.250, read in reprints; " +
			"wire resistance partly from memory, the 3 % is advice",
		Status: Reprint, Caution: motorCaution,
	},
	bounds: motorBounds,
	judge:  judgeSupply,
}

func judgeSupply(m *measured) (Result, *Error) {
	hp, volts, amps, err := motorRow(m)
	if err != nil {
		return Result{}, err
	}
	need := amps * 1.25
	low, high := size(need, func(w wire) float64 { return w.at60 }), size(need, func(w wire) float64 { return w.at75 })
	res := Result{Value: need, Unit: "A", Finding: Computed, More: []Figure{
		{Title: m.T("table current"), Value: amps, Unit: "A", Text: m.F("%s A: %s hp, %s V, %s", m.show(amps, 1), m.show(hp, 2), m.show(volts, 0), m.phase())},
		{Title: m.T("copper wire, terminals 60 degC or unmarked"), Text: m.wireText(low)},
		{Title: m.T("copper wire, terminals marked 75 degC"), Text: m.wireText(high)},
		{Title: m.T("largest usual breaker"), Value: breaker(amps * 2.5), Unit: "A", Text: m.F("%s A: 250 %%, next standard size up", m.show(breaker(amps*2.5), 0))},
	}}
	res.Text = m.F("The wire must carry %s A; %s at 60 degC terminals, breaker at most %s A.", m.show(need, 2), m.wireText(low), m.show(breaker(amps*2.5), 0))
	laid := low
	if name := m.words["wire"]; name != "" {
		laid = nil
		for i := range wires {
			if wires[i].name+" AWG" == name {
				laid = &wires[i]
			}
		}
		judgeWire(m, &res, laid, need)
	}
	if m.has("length") {
		addDrop(m, &res, laid, amps)
	}
	return res, nil
}

// size is the thinnest wire that carries the current by a column, or nil.
func size(need float64, column func(wire) float64) *wire {
	for i := range wires {
		if least(column(wires[i]), need) {
			return &wires[i]
		}
	}
	return nil
}

func (m *measured) wireText(w *wire) string {
	if w == nil {
		return m.T("beyond the table")
	}
	return w.name + " AWG"
}

// breaker is the standard size at or next above the current.
func breaker(amps float64) float64 {
	for _, b := range breakers {
		if least(b, amps) {
			return b
		}
	}
	return 0 // the motor table ends long before the breakers do
}

func judgeWire(m *measured, res *Result, w *wire, need float64) {
	// Held against the 60 degC column: up to 100 A it rules unless terminals are
	// marked 75 degC (110.14(C)).
	res.Value, res.Limit, res.Finding = w.at60, ptr(need), Within
	res.Text = m.F("%s AWG carries %s A by the 60 degC column, at least the %s A needed.", w.name, m.show(w.at60, 0), m.show(need, 2))
	switch {
	case more(need, w.at75):
		res.Finding = Beyond
		res.Text = m.F("%s AWG carries %s A at most, less than the %s A needed.", w.name, m.show(w.at75, 0), m.show(need, 2))
	case more(need, w.at60):
		res.Finding = Watch
		res.Text = m.F("%s AWG carries the %s A needed only where every terminal is marked 75 degC.", w.name, m.show(need, 2))
		res.Notes = append(res.Notes, m.T("Nonmetallic-sheathed cable counts by the 60 degC column whatever its terminals say (334.80, from memory)."))
	}
	res.Notes = append(res.Notes, m.T("The limit is the current the wire must at least carry."))
}

// addDrop adds the voltage drop over the run; over 3 % it warns.
func addDrop(m *measured, res *Result, w *wire, amps float64) {
	if w == nil || w.ohms == 0 {
		res.Notes = append(res.Notes, m.T("Voltage drop: the wire is beyond the table of resistances held here."))
		return
	}
	factor := 2.0
	if m.words["phases"] == "3" {
		factor = 1.732
	}
	drop := factor * m.n("length") * amps * w.ohms / 1000
	share := drop / m.n("voltage") * 100
	run := m.in(m.n("length"), "length")
	text := m.F("over %s of %s AWG", run, w.name)
	if w.recall {
		text = m.F("over %s of %s AWG; resistance from memory, it can only warn", run, w.name)
	}
	res.More = append(res.More,
		Figure{Title: m.T("voltage drop"), Value: drop, Unit: "V", Text: m.F("%s V %s", m.show(drop, 2), text)},
		Figure{Title: m.F("voltage drop of %s", m.in(m.n("voltage"), "voltage")), Value: share, Unit: "%", Text: m.F("%s %%; 3 %% is the usual aim, advice and not law", m.show(share, 2))})
	if !more(share, 3) {
		return
	}
	over := m.F("The voltage drop %s is %s %%, over the usual aim of 3 %%: thicker wire.", text, m.show(share, 2))
	res.Notes = append(res.Notes, over)
	if res.Finding == Within || res.Finding == Computed {
		res.Notes[len(res.Notes)-1] = res.Text
		res.Text = m.F("The voltage drop over %s of %s AWG is %s %%, over the usual aim of 3 %%: thicker wire.", m.in(m.n("length"), "length"), w.name, m.show(share, 2))
		res.Value, res.Unit, res.Limit, res.Finding = share, "%", ptr(3), Watch
		res.Status, res.Source = Practice, m.T("the usual aim of 3 % is advice; wire resistance NFPA 70 Chapter 9 Table 8, partly from memory")
	}
}
