package limit

import "asfound/rubrics/say"

const loadChainCaution = "The hoist or sling maker's figure overrides. Look at every link: a nick, bend, twist, weld spatter or heat mark takes a chain out too. " +
	"A chain that cannot be seen link by link is not assessed."

// linkRow is one row of the table of least link sizes, in 64ths of an inch.
type linkRow struct {
	size           string
	nominal, least float64
}

// linkTable is Table N-184-1 of 29 CFR 1910.184, read in the Michigan mirror;
// its row of 1 3/4 in was cut off there.
var linkTable = []linkRow{
	{"1/4", 16, 13}, {"3/8", 24, 19}, {"1/2", 32, 25}, {"5/8", 40, 31}, {"3/4", 48, 38}, {"7/8", 56, 45},
	{"1", 64, 52}, {"1-1/8", 72, 58}, {"1-1/4", 80, 64}, {"1-3/8", 88, 70}, {"1-1/2", 96, 76},
}

var linkSizes = func() []string {
	out := make([]string, len(linkTable))
	for i := range linkTable {
		out[i] = linkTable[i].size
	}
	return out
}()

var linkSize = rule{
	Definition: Definition{
		Name: "link-size", Title: "Welded chain: size of a worn link",
		Quantities: []Input{
			{Name: "chain", Title: "chain size in inches", Dimension: "word", Words: linkSizes},
			{Name: "measured", Title: "least thickness of any link", Dimension: "length", Unit: "in", Metric: "mm"},
		},
		Formula: "beyond under the least size of the table, about 80 % of the chain size",
		Source:  "29 CFR 1910.184 Table N-184-1, read in the Michigan mirror, R 408.14923 Table 1",
		Status:  Published, Caution: loadChainCaution, Maker: "length",
	},
	bounds:    map[string]bound{"measured": {0.05, 3}},
	makerUnit: "in",
	judge: func(m *measured) (Result, *Error) {
		var row linkRow
		for _, r := range linkTable {
			if r.size == m.words["chain"] {
				row = r
			}
		}
		d, full := m.n("measured"), row.nominal/64
		if d < 0.5*full || d > 1.2*full {
			return Result{}, refuse("measured", m.F("%s does not fit a chain of %s in", m.in(d, "measured"), row.size), m.T("measure the thickness of the link's steel and check the unit"))
		}
		limit, whose := row.least/64, say.Key("the least size of the table, %s")
		res := Result{Finding: Within}
		if maker, ok := m.maker("in"); ok {
			m.own(&res, maker)
			limit, whose = maker, say.Key("the maker's %s")
		}
		m.hold(&res, d, limit, "measured")
		is := m.F("The thinnest link measures %s", m.in(d, "measured"))
		least := m.Pattern(whose, m.in(limit, "measured"))
		res.Text = m.F("%s, not under %s.", is, least)
		if more(limit, d) {
			res.Finding, res.Text = Beyond, m.F("%s, under %s: the chain is out.", is, least)
		}
		return res, nil
	},
}

var hoistChain = rule{
	Definition: Definition{
		Name: "hoist-chain", Title: "Hoist load chain: elongation",
		Quantities: []Input{
			{Name: "kind", Title: "kind of hoist", Dimension: "word", Words: []string{"powered", "hand"}},
			{Name: "length", Title: "length of those links when new", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "measured", Title: "length measured over them", Dimension: "length", Unit: "in", Metric: "mm"},
		},
		Formula: "elongation % = (measured / length - 1) x 100; beyond at 1.5 % powered, 2.5 % by hand",
		Source:  "trade custom after ASME B30.16, from memory; the maker's table decides",
		Status:  Memory, Caution: loadChainCaution, Maker: "share",
	},
	bounds:    map[string]bound{"length": {0.5, 600}, "measured": {0.5, 700}},
	makerUnit: "%", makerAlso: [2]string{"length", "in"},
	judge: func(m *measured) (Result, *Error) {
		length := m.n("length")
		percent := (m.n("measured")/length - 1) * 100
		if percent < -1 || percent > 25 {
			return Result{}, refuse("measured", m.F("%s cannot be wear of %s", m.in(m.n("measured"), "measured"), m.in(length, "length")), m.T("measure the same links as the table and check both units"))
		}
		if err := makerStretch(m, length); err != nil {
			return Result{}, err
		}
		limit, whose := 2.5, "%s %%"
		if m.words["kind"] == "powered" {
			limit = 1.5
		}
		res := Result{}
		if maker, ok := m.maker("%"); ok {
			limit, whose = maker, say.Key("the maker's %s %%")
			m.own(&res, limit)
		} else if maker, ok := m.maker("in"); ok {
			limit, whose = (maker/length-1)*100, say.Key("the maker's %s %%")
			m.own(&res, limit)
		}
		res.Value, res.Unit, res.Limit, res.Finding = percent, "%", ptr(limit), Within
		longer := m.F("The chain is %s %% longer than new", m.show(percent, 2))
		if percent < 0 {
			longer = m.T("The chain is not longer than new")
		}
		at := m.Pattern(whose, m.show(limit, 2))
		res.Text = m.F("%s, under %s.", longer, at)
		if least(percent+100, limit+100) { // compared as lengths, which carry the rounding
			res.Finding, res.Text = Beyond, m.F("%s: at %s it is out.", longer, at)
		}
		res.More = []Figure{m.figure(m.T("length at the limit"), length*(100+limit)/100, "measured")}
		return res, nil
	},
}
