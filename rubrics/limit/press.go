package limit

import "asfound/rubrics/say"

const pressCaution = "The capacity plate and the maker's pressure are the limit. A bent head or bed, a cracked weld, home-made bolster pins, " +
	"or a missing gauge or relief valve stops the work. Nobody proof-loads a press or jack for this check."

var pressRelief = rule{
	Definition: Definition{
		Name: "press-relief", Title: "Press: load-limiting device",
		Quantities: []Input{
			{Name: "rated", Title: "rated capacity", Dimension: "force", Unit: "short ton", Metric: "kN"},
			{Name: "opens", Title: "force at which the device opens", Dimension: "force", Unit: "short ton", Metric: "kN"},
		},
		Formula: "opens / rated x 100; beyond under 100 % or over 125 %",
		Source:  "ASME ASP-2010 3-4.1.2, read in a reprinted excerpt",
		Status:  Reprint, Caution: pressCaution + " Read it from what the seller shows; do not set or test the relief.",
	},
	bounds: map[string]bound{"rated": {0.01, 10000}, "opens": {0.01, 20000}},
	judge: func(m *measured) (Result, *Error) {
		share := m.n("opens") / m.n("rated") * 100
		if share > 1000 || share < 10 {
			return Result{}, refuse("opens", m.F("%s does not fit a press rated %s", m.in(m.n("opens"), "opens"), m.in(m.n("rated"), "rated")), m.T("give both as forces and check the units"))
		}
		res := Result{Value: share, Unit: "%", Limit: ptr(125), Finding: Within,
			Text: m.F("The device opens at %s %% of rated capacity, within 100 to 125 %%.", m.show(share, 1))}
		switch {
		case more(share, 125):
			res.Finding, res.Text = Beyond, m.F("The device opens at %s %% of rated capacity, over 125 %%: the press can be overloaded.", m.show(share, 1))
		case more(100, share):
			res.Finding, res.Limit, res.Text = Beyond, ptr(100), m.F("The device opens at %s %% of rated capacity, under 100 %%: the press cannot reach its rating.", m.show(share, 1))
		}
		return res, nil
	},
}

var pressSet = rule{
	Definition: Definition{
		Name: "press-set", Title: "Press: lasting growth of the bolster gap",
		Quantities: []Input{
			{Name: "growth", Title: "growth of the gap", Dimension: "length", Unit: "in", Metric: "mm"},
		},
		Formula: "beyond over 0.125 in (3.18 mm)",
		Source:  "ASME ASP-2010 3-4.1.1 and 3-4.1.3 (a maker's qualification test, used as a yardstick), read in a reprinted excerpt",
		Status:  Reprint, Caution: pressCaution, Maker: "length",
	},
	bounds:    map[string]bound{"growth": {0, 24}},
	makerUnit: "in",
	judge: func(m *measured) (Result, *Error) {
		limit, allowed := 0.125, say.Key("the %s allowed")
		res := Result{Finding: Within}
		if maker, ok := m.maker("in"); ok {
			m.own(&res, maker)
			limit, allowed = maker, say.Key("the maker's %s allowed")
		}
		res.Value, res.Unit = m.to(m.n("growth"), "growth")
		at, _ := m.to(limit, "growth")
		res.Limit = ptr(at)
		grown := m.F("The gap has grown by %s", m.in(m.n("growth"), "growth"))
		most := m.Pattern(allowed, m.in(limit, "growth"))
		res.Text = m.F("%s, not more than %s.", grown, most)
		if more(m.n("growth"), limit) {
			res.Finding = Beyond
			res.Text = m.F("%s, more than %s: the frame has taken a set.", grown, most)
		}
		return res, nil
	},
}

const handSpeed = 63 // in/s, the speed of a hand by 29 CFR 1910.217(c)(3)

var pressDistance = rule{
	Definition: Definition{
		Name: "press-distance", Title: "Mechanical power press: distance of the guarding device",
		Quantities: []Input{
			{Name: "device", Title: "guarding device", Dimension: "word", Words: []string{"presence-sensing", "two-hand-control", "two-hand-trip", "full-revolution"}},
			{Name: "stop", Title: "stopping time, or closing time after a trip", Dimension: "time", Unit: "s", Metric: "s", Optional: true, Either: "stopping"},
			{Name: "rpm", Title: "strokes a minute", Dimension: "number", Optional: true, Either: "stopping"},
			{Name: "points", Title: "engaging points of the clutch", Dimension: "number", Optional: true},
			{Name: "distance", Title: "distance as installed", Dimension: "length", Unit: "in", Metric: "mm", Optional: true},
		},
		Formula: "least distance = 63 in/s x time; full-revolution clutch: time = (1/2 + 1/points) x 60 / rpm; beyond when nearer",
		Source:  "29 CFR 1910.217(c)(3); the constant read in Washington WAC 296-806-45524",
		Status:  Published, Maker: "length",
		Caution: "The stopping time is measured by a specialist with the press as it runs, never timed by hand. A full-revolution clutch cannot stop in mid-stroke: a specialist judges it. " + pressCaution,
	},
	bounds:    map[string]bound{"stop": {0.005, 10}, "rpm": {1, 2000}, "points": {1, 60}, "distance": {0, 240}},
	makerUnit: "in",
	judge: func(m *measured) (Result, *Error) {
		res := Result{Finding: Computed}
		time := m.n("stop")
		if device := m.words["device"]; device == "full-revolution" || (device == "two-hand-trip" && m.has("rpm")) {
			if m.has("stop") {
				return Result{}, refuse("stop", m.T("a full-revolution clutch cannot stop in mid-stroke"), m.T("give rpm and points instead"))
			}
			if !m.has("rpm") {
				return Result{}, refuse("rpm", m.T("the strokes a minute are missing"), m.T("read them from the plate, as a whole number"))
			}
			points := m.n("points")
			if !m.has("points") {
				points = 1
				res.Notes = append(res.Notes, m.T("The engaging points were not counted: taken as one, the longest wait."))
			}
			time = (0.5 + 1/points) * 60 / m.n("rpm")
			if points > 1 { // only one engaging point was read in the source
				res.Status, res.Source = Memory, m.T("29 CFR 1910.217(c)(3)(viii)(c), from memory for more than one engaging point")
			}
		} else if !m.has("stop") {
			return Result{}, refuse("stop", m.T("the stopping time is missing"), m.T("give it with its unit, as in 0.25 s"))
		} else if m.has("rpm") || m.has("points") {
			return Result{}, refuse("rpm", m.T("strokes and engaging points count for a full-revolution clutch alone"), m.T("leave them out"))
		}
		need := handSpeed * time
		name := "distance"
		if !m.has(name) {
			m.entered[name], m.base[name] = "in", "in"
		}
		asks := m.F("In %s s a hand travels %s", m.show(time, 3), m.in(need, name))
		res.More = []Figure{{Title: m.T("time counted"), Value: time, Unit: "s"}}
		if maker, ok := m.maker("in"); ok && more(maker, need) {
			notes := res.Notes
			m.own(&res, maker)
			need, res.Notes = maker, notes
			asks = m.F("The maker asks for %s", m.in(need, name))
		} else if ok {
			res.Notes = append(res.Notes, m.T("The maker asks for less than the rule: the rule stands."))
		}
		if !m.has(name) {
			res.Finding, res.Limit = Computed, nil
			res.Value, res.Unit = m.to(need, name)
			res.Text = m.F("%s: it must stand at least so far away.", asks)
			return res, nil
		}
		m.hold(&res, m.n(name), need, name)
		res.Finding, res.Text = Within, m.F("%s; it stands %s away.", asks, m.in(m.n(name), name))
		if more(need, m.n(name)) {
			res.Finding, res.Text = Beyond, m.F("%s; it stands only %s away.", asks, m.in(m.n(name), name))
		}
		return res, nil
	},
}

// pressRules names the rules for a kind of press; one tells whether 1910.217 is
// among them.
var pressRules = map[string]struct {
	one  float64
	text string
}{
	"mechanical":  {1, say.Key("29 CFR 1910.217, mechanical power presses")},
	"hydraulic":   {0, say.Key("29 CFR 1910.212 and the maker's manual; shop presses of 4 to 200 tons by ASME PASE (once ASP), hydraulic power presses by ANSI B11.2")},
	"press-brake": {0, say.Key("29 CFR 1910.212 and the maker's manual")},
	"pneumatic":   {0, say.Key("29 CFR 1910.212 and the maker's manual")},
}

var pressRule = rule{
	Definition: Definition{
		Name: "press-rule", Title: "Which rule a press comes under",
		Quantities: []Input{
			{Name: "press", Title: "kind of press", Dimension: "word", Words: []string{"mechanical", "hydraulic", "press-brake", "pneumatic"}},
		},
		Formula: "29 CFR 1910.217 is for mechanical power presses alone",
		Source:  "29 CFR 1910.217(a)(5), scope",
		Status:  Published, Caution: pressCaution,
	},
	judge: func(m *measured) (Result, *Error) {
		kind := m.words["press"]
		is := pressRules[kind]
		rules := m.Label(is.text)
		res := Result{Value: is.one, Finding: Computed, More: []Figure{{Title: m.T("rules"), Text: rules}}}
		switch kind {
		case "hydraulic":
			res.Text = m.F("A hydraulic press is not under 29 CFR 1910.217; it is under %s.", rules)
		case "pneumatic":
			res.Text = m.F("A pneumatic press is not under 29 CFR 1910.217; it is under %s.", rules)
		case "mechanical":
			res.Text = m.T("A mechanical power press is under 29 CFR 1910.217: guards or devices, clutch and brake tests, records.")
		case "press-brake":
			res.Text = m.F("A press brake is not under 29 CFR 1910.217; it is under %s.", rules)
		}
		return res, nil
	},
}

var jackPressure = rule{
	Definition: Definition{
		Name: "jack-pressure", Title: "Jack: static test pressure of its maker",
		Quantities: []Input{
			{Name: "rated", Title: "rated pressure", Dimension: "pressure", Unit: "psi", Metric: "bar"},
		},
		Formula: "test pressure = 1.5 x rated",
		Source:  "ASME B30.1-1998, qualification of hydraulic jacks, read in a reprinted excerpt",
		Status:  Reprint, Caution: "The maker's own test, on the maker's stand: nobody else puts this pressure on a jack. " + pressCaution,
	},
	bounds: map[string]bound{"rated": {10, 40000}},
	judge: func(m *measured) (Result, *Error) {
		res := Result{Finding: Computed}
		res.Value, res.Unit = m.to(1.5*m.n("rated"), "rated")
		res.Text = m.F("By the standard its maker tests such a jack at %s; nobody else does.", m.in(1.5*m.n("rated"), "rated"))
		return res, nil
	},
}
