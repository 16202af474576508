package limit

import "asfound/rubrics/say"

// machineRules are the limits of machine tools, their supply, air, the ride home
// and the shop.
var machineRules = []rule{
	latheGeometry, twoCollar, bedTwist, wayWear, tailstockOffset, backlash,
	tram, flyCut, millGeometry, drillRunning, blockFlatness, chuckTop,
	positioning, circularity, drawbarPull,
	motorStart, generatorSurge, clampCurrent, transformerSize, welderOutput,
	driveSize, rotarySupply, rotarySize, legBalance,
	threadStrength, threadEngagement, threadInsert,
	pumpUp, airLeak, tankLeak, leakShare, gaugeError, receiverWall,
	tieDownRating, truckPayload, trailerPayload, slingLeg, rollerPull,
	ceiling, floorLoad, doorWidth, doorHeight, axleLoad,
}

// held is a result that holds a value against a limit, both in the base unit of
// the named quantity and shown in the unit it was entered in.
func (m *measured) held(value, limit float64, name string) Result {
	res := Result{Finding: Within}
	res.Value, res.Unit = m.to(value, name)
	at, _ := m.to(limit, name)
	res.Limit = ptr(at)
	return res
}

// most holds a value against a figure from which on to watch and one that it must
// not pass, or against the maker's own for both. The sentence begins with is;
// advice ends it where the value is beyond.
func (m *measured) most(is string, value, watch, beyond float64, name, advice string) Result {
	maker, ok := m.maker(m.base[name])
	if ok {
		watch, beyond = maker, maker
	}
	res := m.held(value, watch, name)
	if ok {
		m.own(&res, *res.Limit)
	}
	shown, usual := m.fine(value, name), m.whose(ok, m.fine(watch, name))
	switch {
	case more(value, beyond):
		at, _ := m.to(beyond, name)
		res.Limit, res.Finding = ptr(at), Beyond
		res.Text = m.F("%s %s, more than %s%s.", is, shown, m.whose(ok, m.fine(beyond, name)), advice)
	case more(value, watch):
		res.Finding, res.Text = Watch, m.F("%s %s, more than %s.", is, shown, usual)
	default:
		res.Text = m.F("%s %s, not more than %s.", is, shown, usual)
	}
	return res
}

// whose tells a figure as the maker's or the usual one.
func (m *measured) whose(makers bool, figure string) string {
	if makers {
		return m.F("the maker's %s", figure)
	}
	return m.F("the usual %s", figure)
}

// percent holds a share in percent against the usual one or the maker's own.
func (m *measured) percent(is string, share, limit float64) Result {
	res := Result{Value: share, Unit: "%", Limit: ptr(limit), Finding: Within}
	of := say.Key("the usual %s %%")
	if maker, ok := m.maker("%"); ok {
		m.own(&res, maker)
		limit, of = maker, say.Key("the maker's %s %%")
	}
	whose := m.Pattern(of, m.show(limit, 1))
	res.Text = m.F("%s %s %%, not more than %s.", is, m.show(share, 1), whose)
	if more(share, limit) {
		res.Finding, res.Text = Beyond, m.F("%s %s %%, more than %s.", is, m.show(share, 1), whose)
	}
	return res
}

// fine writes a length as machine tools are measured: to 0.0001 mm or 0.00001 in.
func (m *measured) fine(n float64, name string) string {
	v, u := m.to(n, name)
	decimals := map[string]int{"mm": 4, "in": 5, "thou": 2}[u]
	if decimals == 0 {
		return m.in(n, name)
	}
	return m.show(v, decimals) + " " + u
}

// allowed is the figure of one geometric check in mm; over is the length in mm
// that it is for, 0 where it stands for itself.
type allowed struct {
	word  string
	mm    float64
	over  float64
	title string
	note  string
}

func words(checks []allowed) (words, titles []string) {
	for i := range checks {
		words, titles = append(words, checks[i].word), append(titles, checks[i].title)
	}
	return words, titles
}

func checkOf(checks []allowed, word string) *allowed {
	for i := range checks {
		if checks[i].word == word {
			return &checks[i]
		}
	}
	return &checks[0] // choose has refused every other word
}

// bands of a used machine in multiples of what a new one is allowed.
const (
	usable = 2
	worn   = 4
)

const bandFormula = "; up to twice that watch, more is beyond (bands of a used machine, from memory)"

// banded holds the measured length against what a new machine is allowed, scaled
// to the length of that figure, or against the maker's own as it stands.
func (m *measured) banded(a *allowed) (Result, *Error) {
	value := m.n("measured")
	if maker, ok := m.maker("in"); ok {
		return m.most(m.T("It measures"), value, maker, maker, "measured", ""), nil
	}
	short := false
	if a.over > 0 {
		if m.has("over") {
			length := m.n("over") * 25.4
			value *= a.over / length
			short = more(a.over/2, length)
		}
	} else if m.has("over") {
		return Result{}, refuse("over", m.T("the figure of this check stands for itself, not for a length"), m.T("leave it out"))
	}
	limit := a.mm / 25.4
	ratio := value / limit
	res := m.held(value, limit, "measured")
	res.More = []Figure{{Title: m.T("times the figure of a new one"), Value: ratio, Text: m.show(ratio, 2) + ", " + m.band(ratio)}}
	is := m.Label(a.title) + ": " + m.fine(value, "measured")
	if a.over > 0 {
		is = m.F("%s over %s mm", is, m.show(a.over, 0))
	}
	res.Text = m.F("%s, not more than the %s allowed of a new one.", is, m.fine(limit, "measured"))
	if more(ratio, 1) {
		res.Finding = Watch
		if more(ratio, usable) {
			res.Finding = Beyond
		}
		res.Text = m.F("%s, more than the %s allowed of a new one, %s times: %s.", is, m.fine(limit, "measured"), m.show(ratio, 2), m.band(ratio))
	}
	if a.note != "" {
		res.Notes = append(res.Notes, m.Label(a.note))
	}
	if short {
		res.Notes = append(res.Notes, m.T("Scaled up from a short length: so is the error of the reading."))
	}
	return res, nil
}

func (m *measured) band(ratio float64) string {
	switch {
	case !more(ratio, 1):
		return m.T("as new" + say.Apart + "band")
	case !more(ratio, usable):
		return m.T("usable")
	case !more(ratio, worn):
		return m.T("worn" + say.Apart + "band")
	}
	return m.T("poor")
}

func checkQuantities(checks []allowed, more ...Input) []Input {
	choices, titles := words(checks)
	return append([]Input{
		{Name: "check", Title: "which check", Dimension: "word", Words: choices, Titles: titles},
		{Name: "measured", Title: "measured error", Dimension: "length", Unit: "in", Metric: "mm"},
		{Name: "over", Title: "length it was measured over", Dimension: "length", Unit: "in", Metric: "mm", Optional: true},
	}, more...)
}

var checkBounds = map[string]bound{"measured": {0, 1}, "over": {0.2, 400}}
