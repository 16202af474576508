package limit

import "asfound/rubrics/say"

// jointFactor is the joint efficiency E by its word.
var jointFactor = map[string]float64{"1.0": 1, "0.85": 0.85, "0.70": 0.70}

// mostStress is above S of the carbon steels that shop tanks are made of, and far
// under their tensile strength: VIII-1 as amended since 1999, from memory.
const mostStress = 25000 // psi

var wallNotes = []string{
	say.Key("For the cylinder alone: a head, the bottom of an upright tank for one, is held against the thickness its plate prints."),
	say.Key("The joint shares are those of a seam welded from both sides. Welded from one side it is 0.60, with a backing strip 0.65 (from memory): ask an inspector."),
	say.Key("Paint and scale read as steel: bare metal, or a gauge made to read through paint."),
}

const leastShell = 3.0 / 32 // in, compressed-air shells, UG-16(b), from memory

var receiverWall = rule{
	Definition: Definition{
		Name: "receiver-wall", Title: "Air receiver: wall against its pressure",
		Quantities: []Input{
			{Name: "pressure", Title: "maximum allowable working pressure by its plate", Dimension: "pressure", Unit: "psi", Metric: "bar"},
			{Name: "radius", Title: "inside radius of the shell", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "stress", Title: "allowable stress S of the steel by the maker's data report", Dimension: "pressure", Unit: "psi", Metric: "MPa"},
			{Name: "joint", Title: "joint efficiency by the plate (full RT 1.0, spot 0.85, none 0.70)", Dimension: "word", Words: []string{"1.0", "0.85", "0.70"}},
			{Name: "measured", Title: "thinnest wall measured", Dimension: "length", Unit: "in", Metric: "mm", Optional: true},
			{Name: "allowance", Title: "corrosion allowance", Dimension: "length", Unit: "in", Metric: "mm", Optional: true},
		},
		Formula: "t = P R / (S E - 0.6 P) + allowance; allowed P = S E t / (R + 0.6 t); beyond where measured is thinner",
		Source:  "ASME VIII-1 UG-27(c)(1), formula read in a reprint, no edition; its bounds P <= 0.385 S E, t <= R / 2, and UG-16(b), from memory",
		Status:  Reprint,
		Caution: "A reading clears no tank: pits, welds, heads and the bottom decide, and a pressure-vessel inspector. S and E come from the plate or the maker's data report, never a guess. " + airCaution,
	},
	bounds: map[string]bound{"pressure": {1, 5000}, "radius": {1, 120}, "stress": {1000, 120000}, "measured": {0.01, 2}, "allowance": {0, 1}},
	judge: func(m *measured) (Result, *Error) {
		p, r := m.n("pressure"), m.n("radius")
		if s := m.n("stress"); more(s, mostStress) {
			return Result{}, refuse("stress", m.F("%s is no allowable stress of a tank's steel; it may be its tensile strength, about four times as much", m.in(s, "stress")),
				m.F("give S of the maker's data report, at most %s here", m.in(mostStress, "stress")))
		}
		se := m.n("stress") * jointFactor[m.words["joint"]]
		if more(p, 0.385*se) {
			return Result{}, refuse("pressure", m.F("%s is beyond the thin-wall formula", m.in(p, "pressure")), m.F("it ends at 0.385 S E, here %s", m.in(0.385*se, "pressure")))
		}
		bare := p * r / (se - 0.6*p)
		if more(bare, r/2) {
			return Result{}, refuse("radius", m.T("the wall would be more than half the radius"), m.T("the thin-wall formula ends there; check pressure and radius"))
		}
		need := bare + m.n("allowance")
		res := Result{Finding: Computed, Notes: m.labels(wallNotes), Text: m.F("The wall must be at least %s thick.", m.fine(need, "radius"))}
		res.Value, res.Unit = m.to(need, "radius")
		res.More = []Figure{m.figure(m.T("thickness needed"), need, "radius"), m.figure(m.T("without allowance"), bare, "radius")}
		if !m.has("measured") {
			return res, nil
		}
		t := m.n("measured")
		kept := res.More
		res = m.held(t, need, "measured")
		res.Notes = m.labels(wallNotes)
		left := t - m.n("allowance")
		holds := 0.0
		if left > 0 {
			holds = se * left / (r + 0.6*left)
		}
		res.More = append(kept, m.figure(m.T("pressure the measured wall allows"), holds, "pressure"))
		is := m.F("The wall measures %s and must be %s for %s", m.fine(t, "measured"), m.fine(need, "measured"), m.in(p, "pressure"))
		res.Text = m.F("%s, where it was measured.", is)
		switch {
		case more(need, t):
			res.Finding, res.Text = Beyond, m.F("%s: too thin, it allows %s.", is, m.in(holds, "pressure"))
		case more(leastShell, t):
			res.Limit = m.held(t, leastShell, "measured").Limit
			res.Finding, res.Text = Watch, m.F("The wall measures %s, under the %s least of an air tank's shell (from memory).", m.fine(t, "measured"), m.fine(leastShell, "measured"))
		}
		return res, nil
	},
}

func (m *measured) labels(keys []string) []string {
	out := make([]string, len(keys))
	for i, k := range keys {
		out[i] = m.Label(k)
	}
	return out
}
