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
		return Result{}, refuse("pitch", "pitch and threads per inch were both given", "give one of them")
	case m.has("pitch"):
		pitch = m.n("pitch")
	case m.has("tpi"):
		pitch = 25.4 / m.n("tpi")
	default:
		return Result{}, refuse("pitch", "neither pitch nor threads per inch is given", "measure over ten threads, or use a thread gauge")
	}
	major := float64(m.n("diameter") * 25.4)
	if pitch > major/2 {
		return Result{}, refuse("pitch", "a pitch of "+show(pitch, 3)+" mm is too coarse for "+m.in(m.n("diameter"), "diameter"), "check both units")
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
			Text:  "No thread of the table (UNC and UNF #10 to 1 in, metric M4 to M24) fits " + m.in(m.n("diameter"), "diameter") + " with a pitch of " + show(pitch, 3) + " mm.",
			Notes: []string{"It may be beyond the table, worn, a pipe thread, or of another standard: try it against a gauge."},
		}
		res.add("nearest", nearest(major, pitch))
		return res, nil
	}
	best := found[0].row
	res := Result{Finding: Computed}
	res.Value, res.Unit = m.to(best.majorMM()/25.4, "diameter")
	res.Text = "The nearest standard thread is " + best.name + ": major diameter " + m.in(best.majorMM()/25.4, "diameter") + ", pitch " + show(best.pitchMM(), 3) + " mm."
	hole := m.words["fit"] == "internal"
	res.add("nearest", nearest(major, pitch))
	res.add("", drills(best))
	res.add("mistaken for", mistaken(best))
	into := "probably forced into"
	if hole {
		into = "probably forced in"
	}
	res.add(into, forced(best, hole))
	res.add("repair", repairs(best, hole))
	for _, other := range found[1:] {
		res.Notes = append(res.Notes, "It also fits "+other.row.name+": count the threads over a longer length, and measure where it is least worn.")
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
func nearest(major, pitch float64) []Figure {
	var out []Figure
	for _, x := range ranked(major, pitch)[:3] {
		out = append(out, Figure{Title: "nearest: " + x.row.name, Value: x.apart * 100, Unit: "%",
			Text: "diameter " + show(x.wide*100, 1) + " % off, pitch " + show(x.apart*100, 1) + " % off"})
	}
	return out
}

// drills are the tap drill with its share of full thread, (D - d) / (1.299 P),
// and the drill that a 75 % thread would take.
func drills(s *standardThread) []Figure {
	pitch, u := s.pitch, "mm"
	if s.inch {
		pitch, u = 1/s.pitch, "in"
	}
	share := (s.diameter - s.drill) / (1.299 * pitch) * 100
	text := show(share, 1) + " % of full thread"
	if s.drilled != "" {
		text = "drill " + s.drilled + ", " + text
	} else {
		text = "drill " + show(s.drill, 2) + " mm, " + text
	}
	return []Figure{
		{Title: "pitch", Value: s.pitchMM(), Unit: "mm"},
		{Title: "threads per inch", Value: 25.4 / s.pitchMM(), Unit: "tpi"},
		{Title: "tap drill", Value: s.drill, Unit: u, Text: text},
		{Title: "drill for 75 % thread", Value: s.diameter - float64(float64(0.75*1.299)*pitch), Unit: u},
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

func (p pair) says() string {
	bolt, nut := p.inch, p.metric
	if p.metric.majorMM() < p.inch.majorMM() {
		bolt, nut = p.metric, p.inch
	}
	s := show(p.apart, 3) + " mm apart in diameter, pitch " + show(p.gap, 1) + " % apart, a quarter pitch out after " + show(p.turns, 1) + " turns: "
	if p.loose() {
		return s + "a " + bolt.name + " bolt runs into a " + nut.name + " hole, loose, and holds little"
	}
	return s + "a " + bolt.name + " bolt starts in a " + nut.name + " hole, then binds and strips"
}

// mistaken lists what the thread is taken for, nearest diameter first.
func mistaken(s *standardThread) []Figure {
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
		out = append(out, Figure{Title: "mistaken for " + other.name, Value: p.gap, Unit: "%", Text: p.says()})
	}
	return out
}
