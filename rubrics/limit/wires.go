package limit

import (
	"strconv"

	"asfound/rubrics/say"
)

var ropeWires = rule{
	Definition: Definition{
		Name: "rope-wires", Title: "Wire rope: broken wires",
		Quantities: []Input{
			{Name: "where", Title: "kind of rope or place", Dimension: "word", Words: []string{"running", "standing", "end", "rotation-resistant"}},
			{Name: "lay", Title: "broken wires in one rope lay (rotation-resistant: in 6 diameters)", Dimension: "number"},
			{Name: "strand", Title: "most broken wires in one strand in one lay", Dimension: "number", Optional: true},
			{Name: "long", Title: "broken wires in 30 diameters (rotation-resistant)", Dimension: "number", Optional: true},
			{Name: "broken-strand", Title: "broken strands", Dimension: "number", Optional: true},
		},
		Formula: "beyond at: running 6 in a lay or 3 in one strand; rotation-resistant 2 in 6 diameters or 4 in 30; standing 3 in a lay; at an end 2; any broken strand",
		Source:  "29 CFR 1926.1413(a)(2)(ii)(A) and (a)(2)(iii) (2010), read in the California mirror, Title 8 s.5036",
		Status:  Published, Caution: ropeCaution, Maker: "number",
	},
	bounds:    map[string]bound{"lay": {0, 1000}, "strand": {0, 1000}, "long": {0, 5000}, "broken-strand": {0, 50}},
	makerUnit: "",
	judge:     judgeWires,
}

// ropeOut are the counts at which the rule takes a rope out of use: 6 and 3 for
// "six" and "three" of a running rope, but "more than two" and "more than one"
// of a standing one.
var ropeOut = map[string]float64{"running": 6, "rotation-resistant": 2, "standing": 3, "end": 2}

const (
	strandOut = 3
	longOut   = 4
)

func judgeWires(m *measured) (Result, *Error) {
	where, lay := m.words["where"], m.n("lay")
	turning := where == "rotation-resistant"
	switch {
	case m.has("strand") && m.n("strand") > lay:
		return Result{}, refuse("strand", m.T("more wires are broken in one strand than in the whole lay"), m.T("count both over the same lay"))
	case m.has("long") && !turning:
		return Result{}, refuse("long", m.T("30 diameters are counted on rotation-resistant rope alone"), m.T("leave it out"))
	case m.has("long") && m.n("long") < lay:
		return Result{}, refuse("long", m.T("fewer wires are broken in 30 diameters than in 6"), m.T("the longer length holds the shorter"))
	case m.n("broken-strand") > 0 && lay == 0:
		return Result{}, refuse("lay", m.T("a strand is broken, but no wire"), m.T("count the wires of the broken strand too"))
	}
	span := say.Key("%s in one rope lay")
	if turning {
		span = say.Key("%s in 6 rope diameters")
	}
	out := ropeOut[where]
	res := Result{Value: lay, Unit: m.T("wires"), Limit: ptr(out), Finding: Within}
	res.Notes = []string{m.T("The limit is the count at which the rope is out.")}
	counted := m.Pattern(span, m.wireCount(lay))
	limit := strconv.Itoa(int(out))
	res.Text = m.F("%s, fewer than the %s at which the crane rule takes the rope out of use.", counted, limit)
	if lay >= out {
		res.Finding = Beyond
		res.Text = m.F("%s: the crane rule takes this rope out of use at %s (Category II).", counted, limit)
	}
	if maker, ok := m.maker(""); ok {
		m.own(&res, maker)
		res.Text = m.F("%s, fewer than the maker's %s.", counted, m.show(maker, 0))
		if lay >= maker {
			res.Finding = Beyond
			res.Text = m.F("%s: the maker takes the rope out of use at %s.", counted, m.show(maker, 0))
		}
	} else if where == "running" && m.n("strand") >= strandOut {
		res.Finding, res.Value, res.Limit = Beyond, m.n("strand"), ptr(strandOut)
		res.Text = m.F("%s in one strand in one lay: the crane rule takes this rope out of use at 3 (Category II).", m.wireCount(m.n("strand")))
	} else if turning && m.n("long") >= longOut {
		res.Finding, res.Value, res.Limit = Beyond, m.n("long"), ptr(longOut)
		res.Text = m.F("%s in 30 rope diameters: the crane rule takes this rope out of use at 4 (Category II).", m.wireCount(m.n("long")))
	}
	if m.n("broken-strand") > 0 {
		res.Finding, res.Value, res.Unit, res.Limit = Beyond, m.n("broken-strand"), m.T("strands"), ptr(1)
		res.Source, res.Status, res.Formula = "", "", ""
		res.Text = m.T("A strand is broken: out of use until the rope is replaced (Category III).")
	}
	// A count left out that could itself take the rope out keeps it from passing.
	uncounted := ""
	switch {
	case where == "running" && !m.has("strand") && lay >= strandOut:
		uncounted = m.T("the worst strand was not counted apart, and 3 in one strand are out")
	case turning && !m.has("long") && lay > 0:
		uncounted = m.T("30 diameters were not counted, and 4 in them are out")
	}
	if uncounted != "" && res.Finding == Within && res.Status != Own {
		res.Finding, res.Text = Watch, m.F("%s; %s.", counted, uncounted)
	}
	if lay > 0 && res.Finding == Within {
		res.Notes = append(res.Notes, m.T("Broken wires come faster once they start: count again soon."))
	}
	return res, nil
}

func (m *measured) wireCount(n float64) string {
	if n == 1 {
		return m.T("1 broken wire")
	}
	return m.F("%s broken wires", m.show(n, 0))
}
