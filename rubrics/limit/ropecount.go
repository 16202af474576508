package limit

var ropeShare = rule{
	Definition: Definition{
		Name: "rope-share", Title: "Wire rope: share of broken wires",
		Quantities: []Input{
			{Name: "wires", Title: "wires in the whole rope, fillers left out", Dimension: "number"},
			{Name: "broken", Title: "broken wires in one rope lay", Dimension: "number"},
			{Name: "strand-wires", Title: "wires in one strand", Dimension: "number", Optional: true},
			{Name: "strand", Title: "broken wires in the worst strand", Dimension: "number", Optional: true},
		},
		Formula: "beyond when more than 5 % of all wires in one lay, or more than 15 % of the wires of one strand",
		Source:  "30 CFR 56.19024(a), wire rope of mine hoists",
		Status:  Published, Caution: ropeCaution, Maker: "number",
	},
	bounds: map[string]bound{"wires": {3, 1000}, "broken": {0, 1000}, "strand-wires": {1, 500}, "strand": {0, 500}},
	judge:  judgeShare,
}

func judgeShare(m *measured) (Result, *Error) {
	wires, broken := m.n("wires"), m.n("broken")
	switch {
	case broken > wires:
		return Result{}, refuse("broken", m.T("more wires are broken than the rope has"), m.T("count both again"))
	case m.has("strand-wires") && m.n("strand-wires") > wires:
		return Result{}, refuse("strand-wires", m.T("a strand has more wires than the whole rope"), m.T("a 6x19 rope has 114 wires, 19 in a strand"))
	case m.has("strand") && !m.has("strand-wires"):
		return Result{}, refuse("strand-wires", m.T("the wires in one strand are missing"), m.T("a 6x19 rope has 19"))
	case m.has("strand") && m.n("strand") > broken:
		return Result{}, refuse("strand", m.T("more wires are broken in one strand than in the whole lay"), m.T("count both over the same lay"))
	case m.has("strand") && m.n("strand") > m.n("strand-wires"):
		return Result{}, refuse("strand", m.T("more wires are broken than the strand has"), m.T("count both again"))
	}
	share := broken / wires * 100
	res := Result{Value: share, Unit: "%", Limit: ptr(5), Finding: Within}
	lay := m.F("%s of %s in one lay, %s %%", m.wireCount(broken), m.show(wires, 0), m.show(share, 2))
	res.Text = m.F("%s, not more than the 5 %% of the mine rule.", lay)
	if maker, ok := m.maker(""); ok {
		res.Value, res.Unit = broken, "wires"
		m.own(&res, maker)
		res.Text = m.F("%s in one lay, fewer than the maker's %s.", m.wireCount(broken), m.show(maker, 0))
		if broken >= maker {
			res.Finding = Beyond
			res.Text = m.F("%s in one lay: the maker takes the rope out of use at %s.", m.wireCount(broken), m.show(maker, 0))
		}
		return res, nil
	}
	res.Notes = []string{m.T("More than one wire broken in the valley between strands takes a regular-lay rope out too.")}
	strand := 0.0
	if m.has("strand") {
		strand = m.n("strand") / m.n("strand-wires") * 100
	}
	switch {
	case more(share, 5):
		res.Finding, res.Text = Beyond, m.F("%s, more than the 5 %% at which the mine rule takes the rope out of use.", lay)
	case more(strand, 15):
		res.Finding, res.Value, res.Limit = Beyond, strand, ptr(15)
		res.Text = m.F("%s of %s in one strand, %s %%: more than the 15 %% at which the mine rule takes the rope out of use.", m.wireCount(m.n("strand")), m.show(m.n("strand-wires"), 0), m.show(strand, 2))
	case !m.has("strand") && broken > 1: // one wire of a strand of seven is 14.3 %
		res.Finding, res.Text = Watch, m.F("%s, not more than 5 %%; but the worst strand was not counted apart, and more than 15 %% of one strand are out.", lay)
	}
	return res, nil
}

// ropeCounts are the counts at which ISO 4309:2010 discards a single-layer rope
// of class M1 to M4 by its load-bearing outer wires, over 6 and over 30
// diameters: the words of the limit in order. On a drum of many layers both lays
// count alike.
var ropeCounts = map[[3]string][2]float64{
	{"51-75", "regular", "single"}:   {3, 6},
	{"51-75", "lang", "single"}:      {2, 3},
	{"51-75", "regular", "multi"}:    {6, 12},
	{"51-75", "lang", "multi"}:       {6, 12},
	{"101-120", "regular", "single"}: {5, 10},
	{"101-120", "lang", "single"}:    {2, 5},
	{"101-120", "regular", "multi"}:  {10, 19},
	{"101-120", "lang", "multi"}:     {10, 19},
}

var ropeISO = rule{
	Definition: Definition{
		Name: "rope-iso", Title: "Wire rope: broken wires by outer wires and lay",
		Quantities: []Input{
			{Name: "outer", Title: "load-bearing outer wires (6x19: 114, but 6x19 Seale counts as 51-75)", Dimension: "word", Words: []string{"51-75", "101-120"}},
			{Name: "short", Title: "broken wires in 6 rope diameters", Dimension: "number"},
			{Name: "long", Title: "broken wires in 30 rope diameters", Dimension: "number"},
			{Name: "lay", Title: "lay of the rope", Dimension: "word", Words: []string{"regular", "lang"}, Optional: true, Default: "regular"},
			{Name: "drum", Title: "layers on the drum", Dimension: "word", Words: []string{"single", "multi"}, Optional: true, Default: "single"},
		},
		Formula: "beyond at 3 in 6 diameters or 6 in 30 (51-75 wires), 5 or 10 (101-120); Lang lay 2 or 3, 2 or 5; many layers 6 or 12, 10 or 19",
		Source:  "ISO 4309:2010, classes M1 to M4, read in a rope maker's reprint of its table",
		Status:  Reprint, Caution: ropeCaution, Maker: "number",
	},
	bounds: map[string]bound{"short": {0, 1000}, "long": {0, 5000}},
	judge: func(m *measured) (Result, *Error) {
		short, long := m.n("short"), m.n("long")
		if long < short {
			return Result{}, refuse("long", m.T("fewer wires are broken in 30 diameters than in 6"), m.T("the longer length holds the shorter"))
		}
		out := ropeCounts[[3]string{m.words["outer"], m.words["lay"], m.words["drum"]}]
		res := Result{Value: short, Unit: m.T("wires"), Limit: ptr(out[0]), Finding: Within}
		both := m.F("%s in 6 diameters and %s in 30", m.wireCount(short), m.show(long, 0))
		res.Text = m.F("%s, fewer than the %s and %s of the ISO table.", both, m.show(out[0], 0), m.show(out[1], 0))
		res.Notes = []string{m.T("A broken strand, or a wire broken in the valley between strands, takes the rope out too.")}
		maker, ok := m.maker("")
		switch {
		case ok:
			m.own(&res, maker)
			res.Text = m.F("%s in 6 diameters, fewer than the maker's %s.", m.wireCount(short), m.show(maker, 0))
			if short >= maker {
				res.Finding, res.Text = Beyond, m.F("%s in 6 diameters: the maker takes the rope out of use at %s.", m.wireCount(short), m.show(maker, 0))
			}
		case short >= out[0]:
			res.Finding, res.Text = Beyond, m.F("%s in 6 diameters: the ISO table discards the rope at %s.", m.wireCount(short), m.show(out[0], 0))
		case long >= out[1]:
			res.Finding, res.Value, res.Limit = Beyond, long, ptr(out[1])
			res.Text = m.F("%s in 30 diameters: the ISO table discards the rope at %s.", m.wireCount(long), m.show(out[1], 0))
		}
		return res, nil
	},
}
