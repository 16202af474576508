package limit

// codeLetter is one row of the locked-rotor table, kVA per hp; high 0 where the
// row has no upper end.
type codeLetter struct {
	letter    string
	low, high float64
}

// codeLetters: NFPA 70 Table 430.7(B), read in reprints that name 2023.
var codeLetters = []codeLetter{
	{"A", 0, 3.14}, {"B", 3.15, 3.54}, {"C", 3.55, 3.99}, {"D", 4.0, 4.49}, {"E", 4.5, 4.99}, {"F", 5.0, 5.59},
	{"G", 5.6, 6.29}, {"H", 6.3, 7.09}, {"J", 7.1, 7.99}, {"K", 8.0, 8.99}, {"L", 9.0, 9.99}, {"M", 10, 11.19},
	{"N", 11.2, 12.49}, {"P", 12.5, 13.99}, {"R", 14, 15.99}, {"S", 16, 17.99}, {"T", 18, 19.99}, {"U", 20, 22.39}, {"V", 22.4, 0},
}

func codeInput() Input {
	in := Input{Name: "code", Title: "code letter by its plate", Dimension: "word"}
	for _, c := range codeLetters {
		in.Words = append(in.Words, c.letter)
	}
	return in
}

// starting gives the kVA that the motor draws at rest, least and most; most is 0
// for letter V, which has no upper end.
func starting(m *measured) (low, high float64) {
	for _, c := range codeLetters {
		if c.letter == m.words["code"] {
			low, high = m.n("power")*c.low, m.n("power")*c.high
		}
	}
	return low, high
}

// amps of an apparent power in kVA at the voltage given.
func (m *measured) amps(kva float64) float64 {
	volts := m.n("voltage")
	if m.words["phases"] == "3" {
		volts *= 1.732
	}
	return kva * 1000 / volts
}

var motorStart = rule{
	Definition: Definition{
		Name: "motor-start", Title: "Starting current of a motor",
		Quantities: motorQuantities(codeInput()),
		Formula:    "current = hp x kVA per hp x 1000 / V, three-phase / (1.732 V)",
		Source:     "NFPA 70 (NEC) Table 430.7(B), read in reprints that name 2023",
		Status:     Reprint, Caution: motorCaution,
	},
	bounds: motorBounds,
	judge: func(m *measured) (Result, *Error) {
		low, high := starting(m)
		res := Result{Value: m.amps(high), Unit: "A", Finding: Computed}
		res.Text = m.F("Starting it draws %s to %s A.", m.show(m.amps(low), 1), m.show(m.amps(high), 1))
		switch {
		case low == 0:
			res.Text = m.F("Starting it draws up to %s A.", m.show(m.amps(high), 1))
		case high == 0:
			res.Value = m.amps(low)
			res.Text = m.F("Starting it draws %s A or more: letter V has no upper end.", m.show(m.amps(low), 1))
		}
		res.More = []Figure{
			{Title: m.T("starting current, least"), Value: m.amps(low), Unit: "A"},
			{Title: m.T("starting power, least"), Value: low, Unit: "kVA"},
		}
		if high > 0 {
			res.More = append(res.More, Figure{Title: m.T("starting current, middle"), Value: m.amps((low + high) / 2), Unit: "A"},
				Figure{Title: m.T("starting power, most"), Value: high, Unit: "kVA"})
		}
		return res, nil
	},
}

// dipped is the share of the starting kVA left at a 30 % voltage dip: 0.7 x 0.7.
const dipped = 0.49

var generatorSurge = rule{
	Definition: Definition{
		Name: "generator", Title: "Generator to start a motor",
		Quantities: motorQuantities(codeInput(),
			Input{Name: "kva", Title: "surge (starting) rating of the generator", Dimension: "power", Unit: "kVA", Metric: "kVA"}),
		Formula: "surge needed = 0.49 x starting kVA (a dip of 30 %); beyond under it, watch under the whole starting kVA",
		Source:  "a generator supplier's article (0.7 x 0.7); NFPA 70 Table 430.7(B), read in a reprint",
		Status:  Practice, Caution: motorCaution + " Never feed a house or shop from a generator without a transfer switch.",
	},
	bounds: map[string]bound{"power": {0.01, 10000}, "voltage": {10, 15000}, "kva": {0.1, 10000}},
	judge: func(m *measured) (Result, *Error) {
		_, high := starting(m)
		if high == 0 {
			return Result{}, refuse("code", m.T("letter V has no upper end"), m.T("ask the motor's maker for its starting current"))
		}
		need := dipped * high
		res := Result{Value: m.n("kva"), Unit: "kVA", Limit: ptr(need), Finding: Within}
		res.More = []Figure{{Title: m.T("surge needed"), Value: need, Unit: "kVA"}, {Title: m.T("starting power, most"), Value: high, Unit: "kVA"}}
		is := m.F("Starting needs %s kVA of surge; the generator has %s kVA", m.show(need, 1), m.show(m.n("kva"), 1))
		res.Text = is + "."
		switch {
		case more(need, m.n("kva")):
			res.Finding, res.Text = Beyond, m.F("%s, too little.", is)
		case more(high, m.n("kva")):
			res.Finding, res.Text = Watch, m.F("%s: it starts, but lights and controls feel the dip.", is)
		}
		return res, nil
	},
}

var clampCurrent = rule{
	Definition: Definition{
		Name: "clamp-current", Title: "Motor current by clamp meter",
		Quantities: []Input{
			{Name: "measured", Title: "current measured, worst wire", Dimension: "current", Unit: "A", Metric: "A"},
			{Name: "plate", Title: "current by the motor's plate", Dimension: "current", Unit: "A", Metric: "A"},
		},
		Formula: "measured / plate x 100; beyond over 100 %",
		Source:  "the motor's own plate, at the voltage it is connected for",
		Status:  Physics, Caution: liveCaution + motorCaution,
	},
	bounds: map[string]bound{"measured": {0.01, 10000}, "plate": {0.1, 10000}},
	judge: func(m *measured) (Result, *Error) {
		share := m.n("measured") / m.n("plate") * 100
		if share > 1000 {
			return Result{}, refuse("measured", m.F("%s is more than ten times the plate", m.in(m.n("measured"), "measured")), m.T("read it running, not starting, around one wire"))
		}
		if share < 5 { // round a whole cord the clamp reads nearly nothing
			return Result{}, refuse("measured", m.F("%s is less than any motor idles at", m.in(m.n("measured"), "measured")), m.T("the clamp goes round one wire, not round a whole cord; an electrician reads it"))
		}
		res := m.held(m.n("measured"), m.n("plate"), "measured")
		res.Text = m.F("It draws %s, %s %% of its plate, as loaded then.", m.in(m.n("measured"), "measured"), m.show(share, 1))
		if more(share, 100) {
			res.Finding = Beyond
			res.Text = m.F("It draws %s, %s %% of its plate: overloaded, low voltage, a lost phase or worn.", m.in(m.n("measured"), "measured"), m.show(share, 1))
			res.Notes = []string{m.T("Where the plate prints a service factor current, a motor may run up to that: hold it against that one.")}
		}
		return res, nil
	},
}

// transformers are usual three-phase sizes in kVA, from memory.
var transformers = []float64{3, 6, 9, 15, 30, 45, 75, 112.5, 150, 225, 300, 500}

var transformerSize = rule{
	Definition: Definition{
		Name: "transformer", Title: "Transformer for a machine, three-phase",
		Quantities: []Input{
			{Name: "voltage", Title: "voltage of the machine", Dimension: "voltage", Unit: "V", Metric: "V"},
			{Name: "current", Title: "table current of its motors", Dimension: "current", Unit: "A", Metric: "A"},
			{Name: "kva", Title: "rating of the transformer", Dimension: "power", Unit: "kVA", Metric: "kVA", Optional: true},
		},
		Formula: "needed kVA = 1.732 x V x I / 1000 x 1.25",
		Source:  "common practice, from memory",
		Status:  Memory, Caution: motorCaution,
	},
	bounds: map[string]bound{"voltage": {10, 15000}, "current": {0.1, 1000}, "kva": {0.05, 10000}},
	judge: func(m *measured) (Result, *Error) {
		need := 1.732 * m.n("voltage") * m.n("current") / 1000 * 1.25
		res := Result{Value: need, Unit: "kVA", Finding: Computed, Text: m.F("It needs %s kVA.", m.show(need, 2))}
		res.More = []Figure{{Title: m.T("needed"), Value: need, Unit: "kVA"}}
		for _, size := range transformers {
			if least(size, need) {
				res.More = append(res.More, Figure{Title: m.T("next usual size"), Value: size, Unit: "kVA"})
				break
			}
		}
		if m.has("kva") {
			res.Value, res.Limit, res.Finding = m.n("kva"), ptr(need), Within
			if u := m.entered["kva"]; u != "kVA" {
				res.Notes = append(res.Notes, m.T("The rating was read as kVA."))
			}
			res.Text = m.F("It needs %s kVA and the transformer has %s kVA.", m.show(need, 2), m.show(m.n("kva"), 2))
			if more(need, m.n("kva")) {
				res.Finding, res.Text = Beyond, m.F("It needs %s kVA; a transformer of %s kVA is too small.", m.show(need, 2), m.show(m.n("kva"), 2))
			}
		}
		return res, nil
	},
}
