package limit

import (
	"math"

	"asfound/rubrics/say"
)

const cncCaution = "The maker's acceptance sheet comes first. The seller runs it, door shut; nobody reaches in while drives are live."

var targets = [5]string{"1", "2", "3", "4", "5"}

func targetInputs() []Input {
	var out []Input
	for _, way := range []string{"up", "down"} {
		for _, n := range targets {
			out = append(out, Input{Name: way + "-" + n, Title: "mean deviation at target " + n + ", going " + way, Dimension: "length", Unit: "in", Metric: "um"})
		}
	}
	return append(out, Input{Name: "scatter", Title: "standard deviation of the runs", Dimension: "length", Unit: "in", Metric: "um"})
}

func targetBounds() map[string]bound {
	out := map[string]bound{"scatter": {0, 0.05}}
	for _, n := range targets {
		out["up-"+n], out["down-"+n] = bound{-0.2, 0.2}, bound{-0.2, 0.2}
	}
	return out
}

// newPositioning is A of a new machining centre in mm, over 500 to 800 mm.
const newPositioning = 0.020

var positioning = rule{
	Definition: Definition{
		Name: "positioning", Title: "Machining centre: positioning of an axis",
		Quantities: targetInputs(),
		Formula: "A = max(mean + 2 s) - min(mean - 2 s); reversal B = max |up - down|; repeatability R = max(4 s + |up - down|); " +
			"watch over 0.020 mm, beyond over twice that",
		Source: "method of ISO 230-2, formulas from memory (it sets no limits); the figure from memory, of new machines over 500 to 800 mm",
		Status: Memory, Caution: cncCaution, Maker: "length",
	},
	bounds: targetBounds(), makerUnit: "in",
	judge: func(m *measured) (Result, *Error) {
		s := m.n("scatter")
		low, high, reversal := m.n("up-1"), m.n("up-1"), 0.0
		for _, n := range targets {
			up, down := m.n("up-"+n), m.n("down-"+n)
			low, high = math.Min(low, math.Min(up, down)), math.Max(high, math.Max(up, down))
			reversal = math.Max(reversal, math.Abs(up-down))
		}
		a := high - low + float64(4*s)
		res := m.most(m.T("Positioning A is"), a, newPositioning/25.4, 2*newPositioning/25.4, "up-1", "")
		res.More = []Figure{m.figure(m.T("reversal B"), reversal, "up-1"), m.figure(m.T("repeatability both ways R"), float64(4*s)+reversal, "up-1")}
		return res, nil
	},
}

var circularity = rule{
	Definition: Definition{
		Name: "circularity", Title: "Machining centre: circularity by ballbar",
		Quantities: []Input{
			{Name: "largest", Title: "largest radius, both ways round", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "smallest", Title: "smallest radius", Dimension: "length", Unit: "in", Metric: "mm"},
		},
		Formula: "largest - smallest radius; watch over 0.010 mm, beyond over 0.020 mm, poor over 0.050 mm",
		Source:  "method of ISO 230-4; the bands from memory",
		Status:  Memory, Caution: cncCaution, Maker: "length",
	},
	bounds: map[string]bound{"largest": {0.5, 60}, "smallest": {0.5, 60}}, makerUnit: "in",
	judge: func(m *measured) (Result, *Error) {
		out := m.n("largest") - m.n("smallest")
		switch {
		case out < 0:
			return Result{}, refuse("smallest", m.T("the smallest radius is larger than the largest"), m.T("give them the other way round"))
		case out > 0.1:
			return Result{}, refuse("largest", m.F("the radii differ by %s", m.fine(out, "largest")), m.T("give both radii of one ballbar run, in one unit"))
		}
		res := m.most(m.T("It is out of round by"), out, 0.010/25.4, 0.020/25.4, "largest", m.T(": needs work"))
		if res.Finding == Beyond && res.Status != Own && more(out, 0.050/25.4) {
			res.Notes = []string{m.F("Over %s is poor.", m.fine(0.050/25.4, "largest"))}
		}
		return res, nil
	},
}

// pulls are the usual least and most drawbar forces in lbf.
var pulls = map[string][2]float64{"30": {900, 1300}, "40": {1500, 2200}}

var drawbarPull = rule{
	Definition: Definition{
		Name: "drawbar-pull", Title: "Drawbar pull of a taper spindle",
		Quantities: []Input{
			{Name: "taper", Title: "taper", Dimension: "word", Words: []string{"30", "40"}},
			{Name: "pull", Title: "pull measured", Dimension: "force", Unit: "lbf", Metric: "kN"},
			{Name: "book", Title: "pull by the maker's book", Dimension: "force", Unit: "lbf", Metric: "kN", Optional: true},
		},
		Formula: "beyond under 80 % of the book value, or of the usual least (30 taper 900 lbf, 40 taper 1,500 lbf); watch under the least",
		Source:  "common practice, from memory",
		Status:  Memory, Caution: cncCaution,
	},
	bounds: map[string]bound{"pull": {0, 20000}, "book": {100, 20000}},
	judge: func(m *measured) (Result, *Error) {
		pull, book, of := m.n("pull"), pulls[m.words["taper"]][0], say.Key("the usual least of %s")
		if m.has("book") {
			book, of = m.n("book"), say.Key("the book's %s")
		}
		share := pull / book * 100
		res := m.held(pull, 0.8*book, "pull")
		is := m.F("The drawbar pulls %s, %s %% of %s", m.in(pull, "pull"), m.show(share, 1), m.Pattern(of, m.in(book, "pull")))
		res.More = []Figure{{Title: m.T("share of it"), Value: share, Unit: "%"}}
		res.Text = is + "."
		switch {
		case more(80, share):
			res.Finding, res.Text = Beyond, m.F("%s: under 80 %%, a weak spring stack.", is)
		case more(100, share):
			res.Limit = m.held(pull, book, "pull").Limit
			res.Finding = Watch
		}
		return res, nil
	},
}
