package limit

import (
	"math"

	"asfound/rubrics/say"
)

const turningCaution = "The maker's inspection sheet comes first. Power locked out while a hand or a gauge is at the spindle; chuck key out."

const droop = "Direction counts: the free end may only rise, and only lean toward the tool."

// latheChecks: what one maker's inspection record allows of a new engine lathe,
// G1 to G14; close to ISO 1708 general class (from memory).
var latheChecks = []allowed{
	{"bed-straight", 0.04, 0, "Bed straight, vertical plane (G1a)", ""},
	{"bed-level", 0.04, 1000, "Bed level across (G1b)", ""},
	{"spindle-axial", 0.015, 0, "Spindle axial movement (G3)", ""},
	{"nose-runout", 0.01, 0, "Spindle nose runout (G4)", ""},
	{"taper-nose", 0.01, 0, "Taper runout at the nose (G5a)", ""},
	{"taper-far", 0.02, 300, "Taper runout along the bar (G5b)", ""},
	{"axis-vertical", 0.02, 300, "Spindle axis to carriage, vertical (G6a)", say.Key(droop)},
	{"axis-horizontal", 0.015, 300, "Spindle axis to carriage, horizontal (G6b)", say.Key(droop)},
	{"centre-runout", 0.015, 0, "Centre runout (G7)", ""},
	{"tailstock-height", 0.04, 0, "Tailstock height (G10)", say.Key("The tailstock may only be high.")},
	{"top-slide", 0.015, 150, "Top slide to spindle axis (G11)", ""},
	{"cross-slide", 0.02, 160, "Cross slide square (G12)", say.Key("The face may be flat or hollow, never high in the middle.")},
	{"leadscrew", 0.1, 0, "Leadscrew to ways (G13)", ""},
}

var latheGeometry = rule{
	Definition: Definition{
		Name: "lathe-geometry", Title: "Engine lathe: geometry",
		Quantities: checkQuantities(latheChecks, Input{Name: "class", Title: "class of lathe", Dimension: "word", Words: []string{"general", "toolroom"}, Optional: true, Default: "general"}),
		Formula:    "measured, scaled to the length of the figure; within what a new one is allowed" + bandFormula,
		Source:     "a lathe maker's inspection record, G1 to G14, no date, read in a copy; toolroom: Schlesinger, Testing Machine Tools, quoted second hand",
		Status:     Reprint, Caution: turningCaution, Maker: "length",
	},
	bounds: checkBounds, makerUnit: "in",
	judge: func(m *measured) (Result, *Error) {
		a := *checkOf(latheChecks, m.words["check"])
		if m.words["class"] == "general" {
			return m.banded(&a)
		}
		if a.word != "axis-vertical" && a.word != "axis-horizontal" {
			return Result{}, refuse("class", m.F("no toolroom figure is held for %s", a.word), m.T("give general; toolroom is known of axis-vertical and axis-horizontal"))
		}
		a.mm, a.over = 0.0004*25.4, 12*25.4
		a.title = say.Key("Spindle axis to carriage, toolroom")
		res, err := m.banded(&a)
		if res.Status == "" {
			res.Status, res.Source = Practice, m.T("Schlesinger, Testing Machine Tools, 0.0004 in per 12 in, quoted second hand")
		}
		return res, err
	},
}

var twoCollar = rule{
	Definition: Definition{
		Name: "two-collar", Title: "Two-collar test: headstock alignment",
		Quantities: []Input{
			{Name: "near", Title: "collar by the chuck, diameter", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "far", Title: "outer collar, diameter", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "spacing", Title: "length between the collars", Dimension: "length", Unit: "in", Metric: "mm"},
		},
		Formula: "error = (far - near) / 2 x 12 in / spacing; watch over 0.0008 in per 12 in, beyond over twice that",
		Source:  "geometry; Schlesinger, Testing Machine Tools, 0.0008 in per 12 in, quoted second hand; the bands from memory",
		Status:  Practice, Caution: turningCaution, Maker: "length",
	},
	bounds: map[string]bound{"near": {0.05, 40}, "far": {0.05, 40}, "spacing": {1, 120}}, makerUnit: "in",
	judge: func(m *measured) (Result, *Error) {
		apart := m.n("far") - m.n("near")
		if math.Abs(apart) > 0.02*m.n("near") {
			return Result{}, refuse("far", m.F("the collars differ by %s", m.fine(math.Abs(apart), "far")), m.T("cut both with one setting of the tool, and check the units"))
		}
		value := math.Abs(apart) / 2 * 12 / m.n("spacing")
		res := m.most(m.T("Over 12 in the axis is off by"), value, 0.0008, 0.0016, "near", "")
		switch {
		case more(m.n("far"), m.n("near")):
			res.Notes = append(res.Notes, m.T("The outer collar is larger: the axis leans away from the tool, the wrong way."))
		case more(m.n("near"), m.n("far")):
			res.Notes = append(res.Notes, m.T("The outer collar is smaller: the axis leans toward the tool."))
		}
		res.More = []Figure{m.figure(m.T("difference on diameter"), math.Abs(apart), "near"),
			{Title: m.T("over 300 mm"), Value: value / 12 * 300, Unit: "mm"}} // in per in is mm per mm
		return res, nil
	},
}

var bedTwist = rule{
	Definition: Definition{
		Name: "bed-twist", Title: "What a twisted bed does to the work",
		Quantities: []Input{
			{Name: "twist", Title: "one way higher than the other", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "width", Title: "width across the ways", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "centre", Title: "centre height above the ways", Dimension: "length", Unit: "in", Metric: "mm"},
		},
		Formula: "tool shift on radius = twist x centre / width; on diameter twice that",
		Source:  "geometry",
		Status:  Physics, Caution: turningCaution,
	},
	bounds: map[string]bound{"twist": {0, 0.5}, "width": {1, 100}, "centre": {1, 100}},
	judge: func(m *measured) (Result, *Error) {
		shift := m.n("twist") * m.n("centre") / m.n("width")
		res := Result{Finding: Computed, More: []Figure{m.figure(m.T("on diameter"), 2*shift, "twist")}}
		res.Value, res.Unit = m.to(shift, "twist")
		res.Text = m.F("The tool shifts by %s on radius, %s on diameter.", m.fine(shift, "twist"), m.fine(2*shift, "twist"))
		return res, nil
	},
}

var tailstockOffset = rule{
	Definition: Definition{
		Name: "tailstock-offset", Title: "Tailstock offset from a turned taper",
		Quantities: []Input{
			{Name: "difference", Title: "difference of the two diameters", Dimension: "length", Unit: "in", Metric: "mm"},
		},
		Formula: "offset = difference / 2, the bar turned between centres over its whole length",
		Source:  "geometry",
		Status:  Physics, Caution: turningCaution,
	},
	bounds: map[string]bound{"difference": {0, 2}},
	judge: func(m *measured) (Result, *Error) {
		off := m.n("difference") / 2
		res := Result{Finding: Computed, Text: m.F("The tailstock is off by %s; it can be set.", m.fine(off, "difference"))}
		res.Value, res.Unit = m.to(off, "difference")
		return res, nil
	},
}
