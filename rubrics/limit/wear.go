package limit

import "math"

var wayWear = rule{
	Definition: Definition{
		Name: "way-wear", Title: "Worn ways and the diameter they turn",
		Quantities: []Input{
			{Name: "depth", Title: "depth of the wear", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "radius", Title: "radius of the work", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "plane", Title: "plane of the wear", Dimension: "word", Words: []string{"vertical", "horizontal"}},
		},
		Formula: "error on diameter: vertical 2 (sqrt(radius^2 + depth^2) - radius), horizontal 2 depth; watch over 0.005 in deep, beyond over 0.010 in",
		Source:  "geometry; the bands of depth are common practice, from memory",
		Status:  Memory, Caution: turningCaution, Maker: "length",
	},
	bounds: map[string]bound{"depth": {0, 0.5}, "radius": {0.02, 100}}, makerUnit: "in",
	judge: func(m *measured) (Result, *Error) {
		grown := func(depth float64) float64 {
			if m.words["plane"] == "horizontal" {
				return 2 * depth
			}
			r := m.n("radius")
			return 2 * (math.Sqrt(float64(r*r)+float64(depth*depth)) - r)
		}
		depth := m.n("depth")
		limit, beyond := 0.005, 0.010
		maker, ok := m.maker("in")
		if ok {
			limit, beyond = maker, maker
		}
		// Wear and error grow together, so the limit is the error at the band's depth.
		res := m.held(grown(depth), grown(limit), "depth")
		if ok {
			m.own(&res, *res.Limit)
		}
		is := m.F("Wear of %s turns %s wrong on diameter", m.fine(depth, "depth"), m.fine(grown(depth), "depth"))
		switch {
		case more(depth, beyond):
			res.Limit = m.held(0, grown(beyond), "depth").Limit
			res.Finding, res.Text = Beyond, m.F("%s, deeper than %s: regrind.", is, m.whose(ok, m.fine(beyond, "depth")))
		case more(depth, limit):
			res.Finding, res.Text = Watch, m.F("%s, deeper than %s of general work.", is, m.whose(ok, m.fine(limit, "depth")))
		case ok:
			res.Text = m.F("%s, not deeper than the maker's %s.", is, m.fine(limit, "depth"))
		default:
			return Result{Value: res.Value, Unit: res.Unit, Finding: Computed, Status: Physics, Text: is + "."}, nil
		}
		return res, nil
	},
}

// slackOf are the backlash figures in inches: good up to the first, watch to the
// second.
var slackOf = map[string][2]float64{"mill": {0.008, 0.015}, "lathe-cross": {0.015, 0.030}, "cnc": {0.0004, 0.001}}

const screwWorn = 0.003 // in, middle less end

var backlash = rule{
	Definition: Definition{
		Name: "backlash", Title: "Backlash of a screw",
		Quantities: []Input{
			{Name: "machine", Title: "kind of slide", Dimension: "word", Words: []string{"mill", "lathe-cross", "cnc"}},
			{Name: "middle", Title: "backlash at mid travel", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "end", Title: "backlash at the end of travel", Dimension: "length", Unit: "in", Metric: "mm", Optional: true},
		},
		Formula: "watch / beyond over: mill 0.008 / 0.015 in, lathe cross slide 0.015 / 0.030, CNC 0.0004 / 0.001; watch where middle - end is over 0.003 in",
		Source:  "common practice, from memory; a mill maker's manual calls 0.005 in a good compromise",
		Status:  Memory, Caution: turningCaution, Maker: "length",
	},
	bounds: map[string]bound{"middle": {0, 0.5}, "end": {0, 0.5}}, makerUnit: "in",
	judge: func(m *measured) (Result, *Error) {
		middle := m.n("middle")
		bands := slackOf[m.words["machine"]]
		res := m.most(m.T("Backlash is"), middle, bands[0], bands[1], "middle", m.T(": adjust or replace the nut"))
		if !m.has("end") {
			res.Notes = append(res.Notes, m.T("Measure at the ends too: more in the middle means the screw itself is worn."))
			return res, nil
		}
		apart := middle - m.n("end")
		if more(apart, screwWorn) {
			res.Notes = append(res.Notes, m.F("Common practice: over %s more in the middle, the screw itself is worn there, and a new nut will not cure it.", m.fine(screwWorn, "middle")))
			if res.Finding == Within {
				// Practice warns even where the maker's figure is kept.
				res = m.held(apart, screwWorn, "middle")
				res.Finding = Watch
				res.Text = m.F("Backlash is %s more in the middle than at the end: the screw is worn there.", m.fine(apart, "middle"))
			}
		}
		res.More = append(res.More, m.figure(m.T("middle less end"), apart, "middle"))
		return res, nil
	},
}
