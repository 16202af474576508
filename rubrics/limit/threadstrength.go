package limit

import "asfound/rubrics/say"

const jointCaution = "Strength of the thread alone: the marked grade, the joint and the maker's torque decide. " +
	"A bolt without marks is of unknown strength and carries no lift arm, anchor or press pin."

func pitchInputs(more ...Input) []Input {
	return append([]Input{
		{Name: "diameter", Title: "nominal diameter", Dimension: "length", Unit: "in", Metric: "mm"},
		{Name: "tpi", Title: "threads per inch", Dimension: "threads", Unit: "tpi", Metric: "tpi", Optional: true, Either: "pitch"},
		{Name: "pitch", Title: "pitch", Dimension: "length", Unit: "mm", Metric: "mm", Optional: true, Either: "pitch"},
	}, more...)
}

// pitchInches gives the pitch in inches from whichever was given.
func pitchInches(m *measured) (float64, *Error) {
	pitch := m.n("pitch") / 25.4
	switch {
	case m.has("pitch") && m.has("tpi"):
		return 0, refuse("pitch", m.T("pitch and threads per inch were both given"), m.T("give one of them"))
	case m.has("tpi"):
		pitch = 1 / m.n("tpi")
	case !m.has("pitch"):
		return 0, refuse("pitch", m.T("neither pitch nor threads per inch is given"), m.T("measure over ten threads, or use a thread gauge"))
	}
	if pitch > m.n("diameter")/2 {
		return 0, refuse("pitch", m.F("a pitch of %s mm is too coarse for %s", m.show(pitch*25.4, 3), m.in(m.n("diameter"), "diameter")), m.T("check both units"))
	}
	return pitch, nil
}

var strengthBounds = map[string]bound{"diameter": {0.03, 10}, "pitch": {0.1, 20}, "tpi": {1, 120}}

// boltGrades are least tensile strengths in psi, inch and metric marks.
var boltGrades = []struct {
	name   string
	inch   bool
	tensil float64
}{{say.Key("unmarked"), true, 60000}, {say.Key("Grade 5"), true, 120000}, {say.Key("Grade 8"), true, 150000}, {"8.8", false, 830 * 145.03773773}, {"10.9", false, 1040 * 145.03773773}}

var threadStrength = rule{
	Definition: Definition{
		Name: "thread-strength", Title: "Stress area and breaking load of a bolt",
		Quantities: pitchInputs(
			Input{Name: "minor-pitch", Title: "least pitch diameter of the bolt", Dimension: "length", Unit: "in", Metric: "mm", Optional: true},
			Input{Name: "strong", Title: "steel above 100,000 psi", Dimension: "word", Words: []string{"yes", "no"}, Optional: true, Default: "no"},
		),
		Formula: "At = 0.7854 (D - 0.9743 / n)^2; metric 0.7854 (D - 0.9382 P)^2; above 100,000 psi At = 3.1416 (Es / 2 - 0.16238 / n)^2",
		Source:  "Machinery's Handbook, as two engineering sites print it, no edition; constant 0.9743 from memory; strengths: a fastener dealer's table",
		Status:  Reprint, Caution: jointCaution,
	},
	bounds: map[string]bound{"diameter": {0.03, 10}, "pitch": {0.1, 20}, "tpi": {1, 120}, "minor-pitch": {0.02, 10}},
	judge: func(m *measured) (Result, *Error) {
		pitch, err := pitchInches(m)
		if err != nil {
			return Result{}, err
		}
		inch := m.has("tpi")
		d := m.n("diameter") - 0.9743*pitch
		switch {
		case m.words["strong"] == "yes" && !inch:
			return Result{}, refuse("strong", m.T("the formula above 100,000 psi is one of inch threads"), m.T("give threads per inch, or leave it out"))
		case m.words["strong"] == "yes" && !m.has("minor-pitch"):
			return Result{}, refuse("minor-pitch", m.T("above 100,000 psi the least pitch diameter is needed"), m.T("take it from a thread table, as in 0.4435 in for 1/2-13"))
		case m.words["strong"] == "yes":
			if e := m.n("minor-pitch"); e >= m.n("diameter") || e < m.n("diameter")-pitch {
				return Result{}, refuse("minor-pitch", m.F("%s does not fit this thread", m.in(e, "minor-pitch")), m.T("it is less than the diameter, by two thirds of a pitch or so"))
			}
			d = m.n("minor-pitch") - float64(2*0.16238)*pitch
		case !inch:
			d = m.n("diameter") - 0.9382*pitch
		}
		at := area(d)
		res := Result{Value: at, Unit: "in2", Finding: Computed, Text: m.F("The stress area is %s in2.", m.show(at, 4))}
		if !inch {
			res.Value, res.Unit = at*645.16, "mm2"
			res.Text = m.F("The stress area is %s mm2.", m.show(res.Value, 1))
		}
		for _, g := range boltGrades {
			if g.inch != inch {
				continue
			}
			f := Figure{Title: m.F("breaks at, %s", m.Label(g.name)), Value: at * g.tensil, Unit: "lbf"}
			if !inch {
				f.Value, f.Unit = f.Value*0.0044482216152605, "kN"
			}
			res.More = append(res.More, f)
		}
		return res, nil
	},
}

var threadEngagement = rule{
	Definition: Definition{
		Name: "thread-engagement", Title: "Least engagement so that the bolt breaks first",
		Quantities: []Input{
			{Name: "area", Title: "stress area of the bolt", Dimension: "area", Unit: "in2", Metric: "mm2"},
			{Name: "nut-minor", Title: "largest minor diameter of the nut", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "bolt-pitch", Title: "least pitch diameter of the bolt", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "tpi", Title: "threads per inch", Dimension: "threads", Unit: "tpi", Metric: "tpi"},
		},
		Formula: "Le = 2 At / (3.1416 Kn (1/2 + 0.57735 n (Es - Kn))), bolt and nut of one material",
		Source:  "Machinery's Handbook, 24th ed., as quoted on a public page",
		Status:  Reprint, Caution: jointCaution,
	},
	bounds: map[string]bound{"area": {0.001, 100}, "nut-minor": {0.02, 10}, "bolt-pitch": {0.02, 10}, "tpi": {1, 120}},
	judge: func(m *measured) (Result, *Error) {
		k, e, n := m.n("nut-minor"), m.n("bolt-pitch"), m.n("tpi")
		grip := 0.5 + float64(float64(0.57735*n)*(e-k))
		if grip < 0.1 || e >= k+1.2/n {
			return Result{}, refuse("bolt-pitch", m.F("%s and a minor diameter of %s do not make a thread", m.in(e, "bolt-pitch"), m.in(k, "nut-minor")), m.T("take both from the table of one size, in one unit"))
		}
		le := 2 * m.n("area") / (3.1416 * k * grip)
		res := Result{Finding: Computed, Text: m.F("At least %s of thread must engage.", m.in(le, "nut-minor"))}
		res.Value, res.Unit = m.to(le, "nut-minor")
		res.Notes = []string{m.T("From memory: 1 diameter of steel in steel, 1.5 in cast iron, 2 in aluminium.")}
		return res, nil
	},
}

var threadInsert = rule{
	Definition: Definition{
		Name: "thread-insert", Title: "Wire thread insert: hole and bore",
		Quantities: pitchInputs(),
		Formula:    "tapped hole = D + 1.299 P; smallest bore = D + 0.2165 P",
		Source:     "ASME B18.29, from memory; drills from memory",
		Status:     Memory, Caution: jointCaution + " The insert maker's own drill and tap come first.",
	},
	bounds: strengthBounds,
	judge: func(m *measured) (Result, *Error) {
		pitch, err := pitchInches(m)
		if err != nil {
			return Result{}, err
		}
		tapped, bore := insertHole(m.n("diameter"), pitch)
		res := Result{Finding: Computed, Text: m.F("Bore at least %s, tap to %s with the insert's own tap.", m.fine(bore, "diameter"), m.fine(tapped, "diameter"))}
		res.Value, res.Unit = m.to(bore, "diameter")
		res.More = []Figure{m.figure(m.T("tapped hole"), tapped, "diameter"), m.figure(m.T("smallest bore"), bore, "diameter")}
		found := matches(float64(m.n("diameter")*25.4), float64(pitch*25.4), boltReach)
		if len(found) > 0 && found[0].row.insert != "" {
			res.More = append(res.More, Figure{Title: m.F("drill for %s", found[0].row.name), Text: m.Label(found[0].row.insert)})
		}
		return res, nil
	},
}

// insertHole gives the major diameter of the tapped hole and the smallest bore,
// in the unit of diameter and pitch.
func insertHole(diameter, pitch float64) (tapped, bore float64) {
	return diameter + float64(1.299*pitch), diameter + float64(0.2165*pitch)
}
