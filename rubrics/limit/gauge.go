package limit

const gaugeTolerance = 5 // percent

var gaugeError = rule{
	Definition: Definition{
		Name: "gauge-error", Title: "Pressure gauge against a reference",
		Quantities: []Input{
			{Name: "reading", Title: "reading of the gauge", Dimension: "pressure", Unit: "psi", Metric: "bar"},
			{Name: "reference", Title: "reading of a good gauge", Dimension: "pressure", Unit: "psi", Metric: "bar"},
		},
		Formula: "difference / reference x 100; beyond over 5 %",
		Source:  "common practice, no source",
		Status:  Practice, Caution: airCaution, Maker: "share",
	},
	bounds: map[string]bound{"reading": {0, 20000}, "reference": {1, 20000}}, makerUnit: "%",
	judge: func(m *measured) (Result, *Error) {
		res, err := m.off("reading", "reference", gaugeTolerance)
		if err == nil && more(m.n("reference"), m.n("reading")) {
			res.Notes = append(res.Notes, m.T("It reads low: the tank holds more than it shows."))
		}
		return res, err
	},
}

// welderTolerance is the share by which a dial may be off, in percent.
const welderTolerance = 10

var welderOutput = rule{
	Definition: Definition{
		Name: "welder-output", Title: "Welder: output against its dial",
		Quantities: []Input{
			{Name: "dial", Title: "current by the dial", Dimension: "current", Unit: "A", Metric: "A"},
			{Name: "measured", Title: "current measured while welding", Dimension: "current", Unit: "A", Metric: "A"},
		},
		Formula: "difference / dial x 100; beyond over 10 %",
		Source:  "common practice, no source",
		Status:  Practice, Caution: "The seller welds, in helmet and gloves; nobody looks on without a shade. The clamp goes round one insulated lead, far from the arc. ", Maker: "share",
	},
	bounds: map[string]bound{"dial": {1, 2000}, "measured": {0, 2000}}, makerUnit: "%",
	judge: func(m *measured) (Result, *Error) { return m.off("measured", "dial", welderTolerance) },
}

// off is by how much one value differs from another, in percent of the other,
// held against so many percent or the maker's own.
func (m *measured) off(name, of string, percent float64) (Result, *Error) {
	share := (m.n(name) - m.n(of)) / m.n(of) * 100
	size := share
	if size < 0 {
		size = -size
	}
	if size > 200 {
		return Result{}, refuse(name, m.F("%s against %s is no error of a gauge", m.in(m.n(name), name), m.in(m.n(of), of)), m.T("check both values and their units"))
	}
	return m.percent(m.F("%s against %s is off by", m.in(m.n(name), name), m.in(m.n(of), of)), size, percent), nil
}
