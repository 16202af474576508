package limit

import "strings"

// Parts of the price book that a repair costs.
const (
	chaserPart = "thread-chaser"
	nextPart   = "tap-next-size"
	insertPart = "thread-insert-kit"
)

// repairs are the ways to put a thread right, least first: chase it, tap the hole
// to the next size, or set an insert. All keep the hole but the second its size.
func (m *measured) repairs(s *standardThread, hole bool) []Figure {
	chase := m.F("run a %s die over the bolt, if less than a quarter of its thread is gone; else a new bolt of marked grade", s.name)
	if hole {
		chase = m.F("run a %s tap through the hole, if less than a quarter of its thread is gone", s.name)
	}
	out := []Figure{{Title: m.T("repair: chase"), Short: m.T("chase"), Text: chase, Part: chaserPart}}
	if next := nextSize(s); next != nil {
		drill, u := next.drill, "mm"
		if next.inch {
			u = "in"
		}
		with := m.show(drill, 3) + " " + u
		if next.drilled != "" {
			with = next.drilled + " (" + with + ")"
		}
		out = append(out, Figure{Title: m.T("repair: next size, drill"), Short: m.T("next size, drill"), Value: drill, Unit: u, Part: nextPart,
			Text: m.F("drill %s, tap %s, where the metal around is left thick enough and the bolt may be larger", with, next.name)})
	}
	d, pitch, u := s.diameter, s.pitch, "mm"
	if s.inch {
		pitch, u = 1/s.pitch, "in"
	}
	tapped, bore := insertHole(d, pitch)
	text := m.F("bore at least %s %s", m.show(bore, 4), u)
	if s.insert != "" {
		text = m.F("drill %s, bore at least %s %s", m.Label(s.insert), m.show(bore, 4), u)
	}
	return append(out, Figure{Title: m.T("repair: insert, bore"), Short: m.T("insert, bore"), Value: bore, Unit: u, Part: insertPart,
		Text: m.F("%s, tap to %s %s with the insert's own tap (from memory); keeps the %s bolt", text, m.show(tapped, 4), u, s.name)})
}

// series tells coarse from fine of one system. Coarse metric rows stand first.
func (s *standardThread) series() string {
	if s.inch {
		return s.name[strings.LastIndex(s.name, " ")+1:]
	}
	for i := range threads {
		if !threads[i].inch && threads[i].diameter == s.diameter {
			if &threads[i] == s {
				return "coarse"
			}
			break
		}
	}
	return "fine"
}

// oldThread is the share of the old pitch by which a drill may miss the old major
// diameter: what is left of the old thread then does no harm (judgement).
const oldThread = 0.15

// nextSize is the smallest thread of the series whose tap drill clears the old
// thread, nil beyond the table.
func nextSize(s *standardThread) *standardThread {
	pitch := s.pitch
	if s.inch {
		pitch = 1 / s.pitch
	}
	var best *standardThread
	for i := range threads {
		t := &threads[i]
		if t.inch != s.inch || t.series() != s.series() || more(s.diameter-float64(oldThread*pitch), t.drill) {
			continue
		}
		if best == nil || t.drill < best.drill {
			best = t
		}
	}
	return best
}
