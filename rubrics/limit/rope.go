package limit

import "asfound/rubrics/say"

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
		return judgeLoss(m, "nominal", 5, 10, fromNominal)
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
		return judgeLoss(m, "baseline", 6, 3, fromBaseline)
	},
}

// lossWords are what is said of the loss of diameter from a figure.
type lossWords struct{ misfit, under, over, strange, out string }

var fromNominal = lossWords{
	say.Key("%s does not fit a rope of nominal %s"),
	say.Key("The rope is %s %% under its nominal diameter, not more than the %s %% of the crane rule."),
	say.Key("The rope is %s %% over its nominal diameter, so no loss was measured."),
	say.Key("The rope is %s %% over its nominal diameter, which no rope is: its loss is not known. Make sure of the nominal diameter and measure again."),
	say.Key("The rope is %s %% under its nominal diameter, more than the %s %% at which the crane rule takes it out of use (Category II)."),
}

var fromBaseline = lossWords{
	say.Key("%s does not fit a rope of baseline %s"),
	say.Key("The rope is %s %% under its baseline diameter, not more than the %s %% of the mine rule."),
	say.Key("The rope is %s %% over its baseline diameter, so no loss was measured."),
	say.Key("The rope is %s %% over its baseline diameter, which no rope is: its loss is not known. Make sure of the baseline diameter and measure again."),
	say.Key("The rope is %s %% under its baseline diameter, more than the %s %% at which the mine rule takes it out of use."),
}

// judgeLoss holds the loss of diameter from the named quantity against a limit, both
// in percent. A new rope is made up to a few percent over nominal; none grows over its
// own baseline. Over most, the loss of a worn rope does not show.
func judgeLoss(m *measured, from string, limit, most float64, say lossWords) (Result, *Error) {
	full, d := m.n(from), m.n("measured")
	if d >= 1.5*full || d <= 0.5*full {
		return Result{}, refuse("measured", m.Pattern(say.misfit, m.in(d, "measured"), m.in(full, from)),
			m.T("measure across the crowns of opposite strands and check both units"))
	}
	loss := (full - d) / full * 100
	res := Result{Value: loss, Unit: "%", Limit: ptr(limit), Finding: Within}
	res.Text = m.Pattern(say.under, m.show(loss, 2), m.show(limit, 0))
	if loss < 0 {
		res.Text = m.Pattern(say.over, m.show(-loss, 2))
		if more(-loss, most) {
			res.Finding, res.Text = Watch, m.Pattern(say.strange, m.show(-loss, 2))
		}
	}
	if more(loss, limit) {
		res.Finding, res.Text = Beyond, m.Pattern(say.out, m.show(loss, 2), m.show(limit, 0))
	}
	if maker, ok := m.maker("in"); ok {
		if maker > full*1.05 {
			return Result{}, refuse(makerKey, m.T("the maker's least diameter is larger than the rope"), m.T("give the diameter at which the rope is replaced"))
		}
		m.own(&res, (full-maker)/full*100)
		res.Text = m.F("The rope measures %s, not under the maker's least diameter of %s.", m.in(d, "measured"), m.in(maker, makerKey))
		if more(maker, d) {
			res.Finding = Beyond
			res.Text = m.F("The rope measures %s, under the maker's least diameter of %s.", m.in(d, "measured"), m.in(maker, makerKey))
		}
	}
	res.More = []Figure{m.figure(m.F("diameter at %s %% loss", m.show(limit, 0)), (100-limit)/100*full, from)}
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
		limit, whose := m.n("breaking")/5, m.T("a fifth of its breaking force")
		res := Result{Finding: Computed}
		if maker, ok := m.maker("lbf"); ok {
			if maker > m.n("breaking") {
				return Result{}, refuse(makerKey, m.T("the maker's working load is more than the breaking force"), m.T("give the working load"))
			}
			m.own(&res, maker)
			limit, whose = maker, m.T("the maker's working load")
		}
		if !m.has("load") {
			res.Finding, res.Limit = Computed, nil
			res.Value, res.Unit = m.to(limit, "breaking")
			res.Text = m.F("This rope may carry at most %s, %s.", m.in(limit, "breaking"), whose)
			return res, nil
		}
		m.hold(&res, m.n("load"), limit, "load")
		carries := m.F("The rope carries %s", m.in(m.n("load"), "load"))
		res.Finding, res.Text = Within, m.F("%s, not more than %s, %s.", carries, m.in(limit, "load"), whose)
		if more(m.n("load"), limit) {
			res.Finding, res.Text = Beyond, m.F("%s, more than %s, %s.", carries, m.in(limit, "load"), whose)
		}
		return res, nil
	},
}

// own makes a result one of the maker's limit instead of the published one; the
// caller sets Beyond and the text.
func (m *measured) own(res *Result, limit float64) {
	res.Limit, res.Finding, res.Source, res.Status = ptr(limit), Within, m.T("the maker's own limit, as entered"), Own
	res.Formula = m.T("held against the maker's own limit")
	res.Notes = nil
}
