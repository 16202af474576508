package limit

const chainCaution = "The lift maker's figure overrides. Measure each strand under light load and take the worst; replace both sides " +
	"together, never splice. Cracked plates, turned pins or pitting take a chain out too. A chain that cannot be measured is not assessed."

func chainQuantities(more ...Input) []Input {
	return append([]Input{
		{Name: "pitch", Title: "chain pitch", Dimension: "length", Unit: "in", Metric: "mm"},
		{Name: "pitches", Title: "pitches measured", Dimension: "number"},
		{Name: "measured", Title: "length over them, pin centre to pin centre", Dimension: "length", Unit: "in", Metric: "mm"},
	}, more...)
}

var chainBounds = map[string]bound{"pitch": {0.1, 12}, "pitches": {1, 1000}, "measured": {0.1, 2000}, "teeth": {5, 500}}

const stretchFormula = "elongation % = (measured / (pitches x pitch) - 1) x 100"

// stretch gives the elongation in percent; a length that cannot be wear is refused.
func stretch(m *measured) (percent, length float64, err *Error) {
	length = m.n("pitches") * m.n("pitch")
	percent = (m.n("measured")/length - 1) * 100
	asNew := m.F("%s pitches are %s new", m.show(m.n("pitches"), 0), m.in(length, "measured"))
	switch {
	case percent < -1:
		return 0, 0, refuse("measured", m.F("%s is shorter than a new chain", m.in(m.n("measured"), "measured")),
			m.F("%s; N pins enclose N-1 pitches", asNew))
	case percent > 25:
		return 0, 0, refuse("measured", m.F("%s is too long to be wear", m.in(m.n("measured"), "measured")),
			m.F("%s; check the pitch, the count and the units", asNew))
	}
	return percent, length, nil
}

// chainResult judges an elongation; watch is 0 for none.
func chainResult(m *measured, percent, length, limit, watch float64) Result {
	res := Result{Value: percent, Unit: "%", Limit: ptr(limit), Finding: Within}
	res.Text = m.F("The chain is %s %% longer than new, under the limit of %s %%.", m.show(percent, 2), m.show(limit, 2))
	if percent < 0 {
		res.Text = m.F("The chain is not longer than new; the limit is %s %%.", m.show(limit, 2))
	}
	if m.n("pitches") < 12 {
		res.Notes = append(res.Notes, m.T("Fewer than 12 pitches make the figure coarse: measure 12 or more where the chain runs over the sheave."))
	}
	if one := 100 / m.n("pitches"); percent > one-1.5 && percent < one+3.5 && one < 25 {
		res.Notes = append(res.Notes, m.T("This is about one whole pitch too long: count again, N pins enclose N-1 pitches."))
	}
	out := limit
	notes := res.Notes
	if maker, ok := m.maker("%"); ok {
		out, watch = maker, 0
		m.own(&res, maker)
		res.Text = m.F("The chain is %s %% longer than new, under the maker's %s %%.", m.show(percent, 2), m.show(maker, 2))
	} else if maker, ok := m.maker("in"); ok {
		out, watch = (maker/length-1)*100, 0
		m.own(&res, out)
		res.Text = m.F("The chain measures %s, under the maker's %s.", m.in(m.n("measured"), "measured"), m.in(maker, makerKey))
	}
	res.Notes = notes
	switch {
	case least(percent+100, out+100): // compared as lengths, which carry the rounding
		res.Finding = Beyond
		res.Text = m.F("The chain is %s %% longer than new: at %s %% it is replaced, all strands together.", m.show(percent, 2), m.show(out, 2))
	case watch > 0 && least(percent+100, watch+100):
		res.Finding = Watch
		res.Text = m.F("The chain is %s %% longer than new: from %s %% on set a date, at %s %% it is out.", m.show(percent, 2), m.show(watch, 2), m.show(limit, 2))
	}
	res.More = []Figure{
		m.figure(m.T("length new"), length, "measured"),
		m.figure(m.T("length at the limit"), length*(100+out)/100, "measured"),
	}
	return res
}

var leafChain = rule{
	Definition: Definition{
		Name: "leaf-chain", Title: "Leaf chain: elongation",
		Quantities: chainQuantities(),
		Formula:    stretchFormula + "; beyond at 3 %, watch from 2 %",
		Source:     "US Army TM 10-3930-671-24, Lift Chain Inspection and Wear Criteria (3 %); the 2 % is chain trade practice",
		Status:     Published, Caution: chainCaution, Maker: "share",
	},
	bounds: chainBounds, makerUnit: "%", makerAlso: [2]string{"length", "in"},
	judge: func(m *measured) (Result, *Error) {
		percent, length, err := stretch(m)
		if err != nil {
			return Result{}, err
		}
		if err := makerStretch(m, length); err != nil {
			return Result{}, err
		}
		return chainResult(m, percent, length, 3, 2), nil
	},
}

// makerStretch refuses a maker's figure that cannot be an elongation.
func makerStretch(m *measured, length float64) *Error {
	right := m.T("give a percentage such as 3 %, or the length over the same number of pitches")
	if p, ok := m.maker("%"); ok && p > 25 {
		return refuse(makerKey, m.F("%s is no elongation", m.in(p, makerKey)), right)
	}
	if l, ok := m.maker("in"); ok && (l < length || l > 1.25*length) {
		return refuse(makerKey, m.F("%s does not fit %s of new chain", m.in(l, makerKey), m.in(length, "measured")), right)
	}
	return nil
}

var rollerChain = rule{
	Definition: Definition{
		Name: "roller-chain", Title: "Roller chain: elongation",
		Quantities: chainQuantities(
			Input{Name: "teeth", Title: "teeth of the larger sprocket", Dimension: "number", Optional: true},
			Input{Name: "fixed-centres", Title: "fixed centres, parallel strands or smooth running", Dimension: "word", Words: []string{"yes", "no"}, Optional: true, Default: "no"},
		),
		Formula: stretchFormula + "; beyond at 3 %, or 200 / teeth above 66 teeth, or 1.5 % on fixed centres",
		Source:  "chain makers' service advice that names ANSI B29.1; the standard itself was not read",
		Status:  Practice, Caution: chainCaution, Maker: "share",
	},
	bounds: chainBounds, makerUnit: "%", makerAlso: [2]string{"length", "in"},
	judge: func(m *measured) (Result, *Error) {
		percent, length, err := stretch(m)
		if err != nil {
			return Result{}, err
		}
		if err := makerStretch(m, length); err != nil {
			return Result{}, err
		}
		limit := 3.0
		if m.has("teeth") && 200/m.n("teeth") < limit {
			limit = 200 / m.n("teeth")
		}
		if m.words["fixed-centres"] == "yes" && limit > 1.5 {
			limit = 1.5
		}
		res := chainResult(m, percent, length, limit, 0)
		if !m.has("teeth") {
			res.Notes = append(res.Notes, m.T("The teeth were not given: above 66 teeth the limit is lower."))
		}
		return res, nil
	},
}
