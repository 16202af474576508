package limit

import (
	"math"
	"sort"
)

var thread = rule{
	Definition: Definition{
		Name: "thread", Title: "Which thread is this",
		Quantities: []Input{
			{Name: "diameter", Title: "measured diameter: outside of a bolt, bore of a nut", Dimension: "length", Unit: "in", Metric: "mm"},
			{Name: "pitch", Title: "pitch", Dimension: "length", Unit: "mm", Metric: "mm", Optional: true, Either: "pitch"},
			{Name: "tpi", Title: "threads per inch", Dimension: "threads", Unit: "tpi", Metric: "tpi", Optional: true, Either: "pitch"},
			{Name: "fit", Title: "external (bolt) or internal (nut)", Dimension: "word", Words: []string{"external", "internal"}, Optional: true, Default: "external"},
		},
		Formula: "nearest row by diameter and pitch (pitch = 25.4 / tpi mm; major = bore + 1.0825 pitch); mistaken for: major within 1.0 mm and pitch within 25 %; " +
			"turns until a quarter pitch out = P_inch / (4 |P_inch - P_metric|); tap drill at 75 % = major - 0.75 x 1.299 pitch; " +
			"next size: its tap drill clears the old thread; insert: bore D + 0.2165 P, tap to D + 1.299 P",
		Source: "ASME B1.1 and ISO 261 sizes, read in the hole table of the FreeCAD sources and in published tap-drill charts; the pair rule is geometry and judgement; inserts from memory",
		Status: Reprint,
		Caution: "A bolt that runs in is not proof of the right thread: the near pairs hold little and pull out under load. " +
			"Check with a gauge over the full length, and never reuse a mixed bolt where it carries a lift arm, anchor or press pin; a repaired thread there is the maker's to allow.",
	},
	bounds: map[string]bound{"diameter": {0.02, 10}, "pitch": {0.1, 20}, "tpi": {1, 120}},
	judge:  judgeThread,
}

// fitting are how far a measured thread may lie from a row: pitch, and diameter
// of a bolt or of a nut's bore, whose tolerance is wider.
const (
	pitchReach = 0.03
	boltReach  = 0.04
	boreReach  = 0.06
)

// match is a row and how far a reading is from it, in shares of its diameter and
// of its pitch.
type match struct {
	row         *standardThread
	wide, apart float64
	score       float64
}

func judgeThread(m *measured) (Result, *Error) {
	var pitch float64 // mm
	switch {
	case m.has("pitch") && m.has("tpi"):
		return Result{}, refuse("pitch", m.T("pitch and threads per inch were both given"), m.T("give one of them"))
	case m.has("pitch"):
		pitch = m.n("pitch")
	case m.has("tpi"):
		pitch = 25.4 / m.n("tpi")
	default:
		return Result{}, refuse("pitch", m.T("neither pitch nor threads per inch is given"), m.T("measure over ten threads, or use a thread gauge"))
	}
	major := float64(m.n("diameter") * 25.4)
	if pitch > major/2 {
		return Result{}, refuse("pitch", m.F("a pitch of %s mm is too coarse for %s", m.show(pitch, 3), m.in(m.n("diameter"), "diameter")), m.T("check both units"))
	}
	reach := boltReach
	if m.words["fit"] == "internal" {
		major += float64(1.0825 * pitch)
		reach = boreReach
	}
	found := matches(major, pitch, reach)
	if len(found) == 0 {
		value, u := m.to(m.n("diameter"), "diameter")
		res := Result{Value: value, Unit: u, Finding: Computed,
			Text:  m.F("No thread of the table (UNC and UNF #10 to 1 in, metric M4 to M24) fits %s with a pitch of %s mm.", m.in(m.n("diameter"), "diameter"), m.show(pitch, 3)),
			Notes: []string{m.T("It may be beyond the table, worn, a pipe thread, or of another standard: try it against a gauge.")},
		}
		res.add("nearest", m.nearest(major, pitch))
		return res, nil
	}
	best := found[0].row
	res := Result{Finding: Computed}
	res.Value, res.Unit = m.to(best.majorMM()/25.4, "diameter")
	res.Text = m.F("The nearest standard thread is %s: major diameter %s, pitch %s mm.", best.name, m.in(best.majorMM()/25.4, "diameter"), m.show(best.pitchMM(), 3))
	hole := m.words["fit"] == "internal"
	res.add("nearest", m.nearest(major, pitch))
	res.add("", m.drills(best))
	res.add("mistaken", m.mistaken(best))
	into := "forced-into"
	if hole {
		into = "forced-in"
	}
	res.add(into, m.forced(best, hole))
	res.add("repair", m.repairs(best, hole))
	for _, other := range found[1:] {
		res.Notes = append(res.Notes, m.F("It also fits %s: count the threads over a longer length, and measure where it is least worn.", other.row.name))
	}
	return res, nil
}

// matches gives the rows within reach, nearest first.
func matches(major, pitch, reach float64) []match {
	var out []match
	for _, x := range ranked(major, pitch) {
		if x.wide <= reach && x.apart <= pitchReach {
			out = append(out, x)
		}
	}
	return out
}

// ranked gives all rows, nearest first, each error in shares of its reach: pitch
// counts more, since wear changes a diameter and not a pitch.
func ranked(major, pitch float64) []match {
	out := make([]match, len(threads))
	for i := range threads {
		row := &threads[i]
		d := math.Abs(major-row.majorMM()) / row.majorMM()
		p := math.Abs(pitch-row.pitchMM()) / row.pitchMM()
		out[i] = match{row, d, p, float64(d/boltReach) + float64(p/pitchReach)}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].score < out[j].score })
	return out
}

// nearest names the three nearest threads and how far off each is.
func (m *measured) nearest(major, pitch float64) []Figure {
	var out []Figure
	for _, x := range ranked(major, pitch)[:3] {
		out = append(out, Figure{Title: m.F("nearest: %s", x.row.name), Short: x.row.name, Value: x.apart * 100, Unit: "%",
			Text: m.F("diameter %s %% off, pitch %s %% off", m.show(x.wide*100, 1), m.show(x.apart*100, 1))})
	}
	return out
}

// drills are the tap drill with its share of full thread, (D - d) / (1.299 P),
// and the drill that a 75 % thread would take.
func (m *measured) drills(s *standardThread) []Figure {
	pitch, u := s.pitch, "mm"
	if s.inch {
		pitch, u = 1/s.pitch, "in"
	}
	share := (s.diameter - s.drill) / (1.299 * pitch) * 100
	text := m.F("%s %% of full thread", m.show(share, 1))
	if s.drilled != "" {
		text = m.F("drill %s, %s", s.drilled, text)
	} else {
		text = m.F("drill %s mm, %s", m.show(s.drill, 2), text)
	}
	return []Figure{
		{Title: m.T("pitch"), Value: s.pitchMM(), Unit: "mm"},
		{Title: m.T("threads per inch"), Value: 25.4 / s.pitchMM(), Unit: "tpi"},
		{Title: m.T("tap drill"), Value: s.drill, Unit: u, Text: text},
		{Title: m.T("drill for 75 % thread"), Value: s.diameter - float64(float64(0.75*1.299)*pitch), Unit: u},
	}
}

// pair holds an inch and a metric thread that are taken for one another.
type pair struct {
	inch, metric *standardThread
	apart        float64 // of the major diameters, mm
	gap          float64 // of the pitches, percent of the inch one
	turns        float64 // until a quarter pitch out
}

// compare pairs two threads of different systems; ok tells whether they are near
// enough to be mistaken.
func compare(a, b *standardThread) (p pair, ok bool) {
	if a.inch == b.inch {
		return pair{}, false
	}
	p = pair{inch: a, metric: b}
	if b.inch {
		p = pair{inch: b, metric: a}
	}
	p.apart = math.Abs(p.inch.majorMM() - p.metric.majorMM())
	off := math.Abs(p.inch.pitchMM() - p.metric.pitchMM())
	p.gap = off / p.inch.pitchMM() * 100
	if off == 0 {
		p.turns = 1000 // no such pair is in the table
	} else {
		p.turns = p.inch.pitchMM() / (4 * off)
	}
	return p, !more(p.apart, 1) && !more(p.gap, 25)
}

// loose tells whether the smaller, as a bolt, runs into the larger and holds
// little; otherwise it binds.
func (p pair) loose() bool { return !more(p.gap, 6) }

// taken says what comes of a bolt of one thread in a hole of the other.
func (m *measured) taken(p pair) string {
	bolt, nut := p.inch, p.metric
	if p.metric.majorMM() < p.inch.majorMM() {
		bolt, nut = p.metric, p.inch
	}
	s := m.F("%s mm apart in diameter, pitch %s %% apart, a quarter pitch out after %s turns", m.show(p.apart, 3), m.show(p.gap, 1), m.show(p.turns, 1))
	if p.loose() {
		return m.F("%s: a %s bolt runs into a %s hole, loose, and holds little", s, bolt.name, nut.name)
	}
	return m.F("%s: a %s bolt starts in a %s hole, then binds and strips", s, bolt.name, nut.name)
}

// mistaken lists what the thread is taken for, nearest diameter first.
func (m *measured) mistaken(s *standardThread) []Figure {
	var near []pair
	for i := range threads {
		if p, ok := compare(s, &threads[i]); ok {
			near = append(near, p)
		}
	}
	sort.SliceStable(near, func(i, j int) bool { return near[i].apart < near[j].apart })
	out := make([]Figure, 0, len(near))
	for _, p := range near {
		other := p.metric
		if !s.inch {
			other = p.inch
		}
		out = append(out, Figure{Title: m.F("mistaken for %s", other.name), Short: other.name, Value: p.gap, Unit: "%", Text: m.taken(p)})
	}
	return out
}
