package limit

const ropeCaution = "Guidance from crane rules, none of them written for vehicle lifts: the lift maker's limit overrides. " +
	"Rust that hides wires, or a rope not seen at sheave or end, is not assessed. Replace cables as a set with the maker's part; " +
	"a qualified lift inspector inspects before use."

var ropeDiameter = rule{
	Definition: Definition{
		Name: "rope-diameter", Title: "Wire rope: loss of diameter",
		Quantities: []Input{
			{Name: "nominal", Title: "nominal rope diameter", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "measured", Title: "measured rope diameter", Dimension: "length", Unit: "in", Metric: "mm"},
		},
		Formula: "loss % = (nominal - measured) / nominal x 100; beyond when more than 5 %",
		Source:  "29 CFR 1926.1413(a)(2)(ii)(B) (2010), Category II, read in the California mirror, Title 8 s.5036",
		Status:  Published, Caution: ropeCaution, Maker: "length",
	},
	bounds:    map[string]bound{"nominal": {0.03, 6}, "measured": {0.01, 10}},
	makerUnit: "in",
	judge: func(m *measured) (Result, *Error) {
		return judgeLoss(m, "nominal", "nominal", 5, "crane rule", " (Category II)")
	},
}

var ropeBaseline = rule{
	Definition: Definition{
		Name: "rope-baseline", Title: "Wire rope: loss of diameter since it was new",
		Quantities: []Input{
			{Name: "baseline", Title: "diameter written down when the rope was new", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "measured", Title: "measured rope diameter", Dimension: "length", Unit: "in", Metric: "mm"},
		},
		Formula: "loss % = (baseline - measured) / baseline x 100; beyond when more than 6 %",
		Source:  "30 CFR 56.19024(g), wire rope of mine hoists",
		Status:  Published, Caution: ropeCaution, Maker: "length",
	},
	bounds:    map[string]bound{"baseline": {0.03, 6}, "measured": {0.01, 10}},
	makerUnit: "in",
	judge: func(m *measured) (Result, *Error) {
		return judgeLoss(m, "baseline", "baseline", 6, "mine rule", "")
	},
}

// judgeLoss holds the loss of diameter from the named quantity, which was says in
// words, against a limit in percent.
func judgeLoss(m *measured, from, was string, limit float64, whose, category string) (Result, *Error) {
	full, d := m.n(from), m.n("measured")
	if d >= 1.5*full || d <= 0.5*full {
		return Result{}, refuse("measured", m.in(d, "measured")+" does not fit a rope of "+was+" "+m.in(full, from),
			"measure across the crowns of opposite strands and check both units")
	}
	loss := (full - d) / full * 100
	line := "the " + show(limit, 0) + " %"
	res := Result{Value: loss, Unit: "%", Limit: ptr(limit), Finding: Within}
	res.Text = "The rope is " + show(loss, 2) + " % under its " + was + " diameter, not more than " + line + " of the " + whose + "."
	if loss < 0 {
		res.Text = "The rope is " + show(-loss, 2) + " % over its " + was + " diameter, so no loss was measured."
		// A new rope is made up to a few percent over nominal; none grows over its own
		// baseline. Against a wrong diameter the loss of a worn rope does not show.
		if over := map[string]float64{"nominal": 10, "baseline": 3}[was]; more(-loss, over) {
			res.Finding = Watch
			res.Text = "The rope is " + show(-loss, 2) + " % over its " + was + " diameter, which no rope is: its loss is not known. Make sure of the " + was + " diameter and measure again."
		}
	}
	if more(loss, limit) {
		res.Finding = Beyond
		res.Text = "The rope is " + show(loss, 2) + " % under its " + was + " diameter, more than " + line + " at which the " + whose + " takes it out of use" + category + "."
	}
	if maker, ok := m.maker("in"); ok {
		if maker > full*1.05 {
			return Result{}, refuse(makerKey, "the maker's least diameter is larger than the rope", "give the diameter at which the rope is replaced")
		}
		own(&res, (full-maker)/full*100)
		res.Text = "The rope measures " + m.in(d, "measured") + ", not under the maker's least diameter of " + m.in(maker, makerKey) + "."
		if more(maker, d) {
			res.Finding = Beyond
			res.Text = "The rope measures " + m.in(d, "measured") + ", under the maker's least diameter of " + m.in(maker, makerKey) + "."
		}
	}
	res.More = []Figure{m.figure("diameter at "+show(limit, 0)+" % loss", (100-limit)/100*full, from)}
	return res, nil
}

var ropeLoad = rule{
	Definition: Definition{
		Name: "rope-load", Title: "Wire rope: working load",
		Quantities: []Input{
			{Name: "breaking", Title: "breaking force of the rope", Dimension: "force", Unit: "lbf", Metric: "kN"},
			{Name: "load", Title: "load on the rope", Dimension: "force", Unit: "lbf", Metric: "kN", Optional: true},
		},
		Formula: "working load = breaking / 5; beyond when the load is more",
		Source:  "Washington WAC 296-24-29401, general wire rope",
		Status:  Published, Maker: "force",
		Caution: "The breaking force comes from the rope's certificate or tag, never from its look. Worn rope, clips and bends hold less. " + ropeCaution,
	},
	bounds:    map[string]bound{"breaking": {10, 2e6}, "load": {0, 2e6}},
	makerUnit: "lbf",
	judge: func(m *measured) (Result, *Error) {
		limit, whose := m.n("breaking")/5, "a fifth of its breaking force"
		res := Result{Finding: Computed}
		if maker, ok := m.maker("lbf"); ok {
			if maker > m.n("breaking") {
				return Result{}, refuse(makerKey, "the maker's working load is more than the breaking force", "give the working load")
			}
			own(&res, maker)
			limit, whose = maker, "the maker's working load"
		}
		if !m.has("load") {
			res.Finding, res.Limit = Computed, nil
			res.Value, res.Unit = m.to(limit, "breaking")
			res.Text = "This rope may carry at most " + m.in(limit, "breaking") + ", " + whose + "."
			return res, nil
		}
		m.hold(&res, m.n("load"), limit, "load")
		carries := "The rope carries " + m.in(m.n("load"), "load")
		res.Finding, res.Text = Within, carries+", not more than "+m.in(limit, "load")+", "+whose+"."
		if more(m.n("load"), limit) {
			res.Finding, res.Text = Beyond, carries+", more than "+m.in(limit, "load")+", "+whose+"."
		}
		return res, nil
	},
}

// own makes a result one of the maker's limit instead of the published one; the
// caller sets Beyond and the text.
func own(res *Result, limit float64) {
	res.Limit, res.Finding, res.Source, res.Status = ptr(limit), Within, ownSource, Own
	res.Formula = "held against the maker's own limit"
	res.Notes = nil
}
