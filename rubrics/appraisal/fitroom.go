package appraisal

import (
	"asfound/rubrics/limit"
	"asfound/rubrics/say"
)

func (v voice) byTape() string { return v.T("your own tape, and the size told of the machine") }

func (v voice) byUsual() string {
	return v.T("the kind's usual size in the rubric: common practice, no source")
}

// founded is the standing of a comparison with a size: arithmetic where it is
// told, common practice where it is only the usual one.
func (v voice) founded(s *sized) (limit.Status, string) {
	if s.told != nil {
		return limit.Physics, v.byTape()
	}
	return limit.Practice, v.byUsual()
}

// ceiling asks for the machine's own height and, for a lift, for the vehicle on it.
func (h *holding) ceiling() (FitPoint, standing) {
	const id = "ceiling"
	title := h.T("Ceiling")
	room := h.site.Ceiling
	if room == nil {
		return settle(id, title, []trial{missed(h.T("How high is the ceiling at the spot, under beams, lamps and door tracks?"), "site.ceiling")}, "")
	}
	status, source := h.founded(&h.machine.height)
	trials := []trial{h.span(&h.machine.height, func(at Quantity) trial {
		text := h.F("It stands %s high beneath a ceiling of %s.", h.written(at), h.written(*room))
		return h.against("ceiling", text, figure{sizeIn(room, "in"), sizeIn(&at, "in"), "in", status, source})
	})}
	if h.needs.Rise > 0 {
		trials = append([]trial{h.raised(room)}, trials...)
	}
	return settle(id, title, trials, "")
}

// raised is the vehicle at the top of the lift.
func (h *holding) raised(room *Quantity) trial {
	v := h.site.Vehicle
	if v == nil || v.Height == nil {
		return missed(h.T("How tall is the tallest vehicle it is to raise?"), "site.vehicle.height")
	}
	return h.try("ceiling", map[string]string{
		"height": quantityText(*room), "vehicle": quantityText(*v.Height), "rise": quantityText(h.in(h.needs.Rise, "in")),
	})
}

// door asks whether the widest and the tallest piece go through, upright as they
// are moved; then all do.
func (h *holding) door() (FitPoint, standing) {
	const id = "door"
	title := h.T("Door")
	var missing []string
	if h.site.DoorWidth == nil {
		missing = append(missing, "site.door_width")
	}
	if h.site.DoorHeight == nil {
		missing = append(missing, "site.door_height")
	}
	if len(missing) > 0 {
		return settle(id, title, []trial{missed(h.T("How wide and high is the opening of the door, and of every door on the way?"), missing...)}, "")
	}
	var widest, tallest *moved
	load := h.pieces()
	for i := range load {
		p := &load[i]
		if widest == nil || p.across().span.High > widest.across().span.High {
			widest = p
		}
		if tallest == nil || p.height.span.High > tallest.height.span.High {
			tallest = p
		}
	}
	if widest == nil {
		return settle(id, title, []trial{missed(h.T("No piece of it applies to what was told about it."))}, "")
	}
	one := func(name, most string, door *Quantity, p *moved, s *sized) trial {
		t := h.span(s, func(at Quantity) trial {
			return h.try(name, map[string]string{"machine": quantityText(at), "door": quantityText(*door)})
		})
		if len(load) > 1 {
			t.text = h.Pattern(most, lowerFirst(p.Title), t.text)
		}
		return t
	}
	width := one("door-width", say.Key("Widest piece, %s: %s"), h.site.DoorWidth, widest, widest.across())
	height := one("door-height", say.Key("Tallest piece, %s: %s"), h.site.DoorHeight, tallest, &tallest.height)
	also := ""
	switch {
	case width.standing >= lacks:
		also = h.otherway(widest)
	case height.standing >= lacks:
		also = h.otherway(tallest)
	}
	return settle(id, title, []trial{width, height}, also)
}

// across is the side of a piece that goes through the width of a door: the
// shorter one of its footprint.
func (p *moved) across() *sized {
	if p.length.span.Likely < p.width.span.Likely {
		return &p.length
	}
	return &p.width
}

// otherway says what else may be tried with a piece that does not go through.
func (h *holding) otherway(p *moved) string {
	if p.TopHeavy {
		return h.F("It is top-heavy and is not tilted to get it through. Ask what comes off (table, head, guards, handles): %s", p.Handling)
	}
	door := [2]float64{sizeIn(h.site.DoorWidth, "in"), sizeIn(h.site.DoorHeight, "in")}
	a, b, c := p.length.span.Likely, p.width.span.Likely, p.height.span.Likely
	for _, face := range [][2]float64{{a, b}, {b, a}, {a, c}, {c, a}, {b, c}, {c, b}} {
		if face[0] < door[0] && face[1] < door[1] {
			return h.T("Laid on another side it may go through bare, where the maker allows it to be laid and its oil is out.")
		}
	}
	return h.F("Ask what comes off: %s", p.Handling)
}

// floor asks for room to stand and to work, and for what carries the weight.
func (h *holding) floor() (FitPoint, standing) {
	return settle("floor", h.T("Floor"), append(h.room(), h.bearing()), "")
}

// room is the free floor: the machine itself must fit, the usual room around it
// is advice.
func (h *holding) room() []trial {
	if h.site.FloorLength == nil || h.site.FloorWidth == nil {
		return []trial{missed(h.T("How long and wide is the free floor at the spot?"), missing(map[string]*Quantity{"site.floor_length": h.site.FloorLength, "site.floor_width": h.site.FloorWidth})...)}
	}
	long, short := sizeIn(h.site.FloorLength, "in"), sizeIn(h.site.FloorWidth, "in")
	m := &h.machine
	length, width := m.length, m.width
	if (long < short) != (length.span.Likely < width.span.Likely) { // turned on the spot
		length, width = width, length
	}
	fits := func(s *sized, have float64, told *Quantity) trial {
		status, source := h.founded(s)
		return h.span(s, func(at Quantity) trial {
			need := sizeIn(&at, "in")
			text := h.F("Its %s of %s stands on %s of free floor.", h.Label(s.text), h.written(at), h.written(*told))
			t := h.against("floor", text, figure{have, need, "in", status, source})
			if t.standing == lacks {
				t.standing = never
			}
			if around := (have - need) / 2; h.needs.Clear > 0 && t.standing == passes && around < h.needs.Clear {
				t.text += " " + h.F("That leaves %s on either side of it; %s to work around it is common practice, and you judge.", h.say(around, "in"), h.say(h.needs.Clear, "in"))
			}
			return t
		})
	}
	return []trial{fits(&length, long, h.site.FloorLength), fits(&width, short, h.site.FloorWidth)}
}

func missing(fields map[string]*Quantity) []string {
	var out []string
	for _, name := range sortedKeys(fields) {
		if fields[name] == nil {
			out = append(out, name)
		}
	}
	return out
}
