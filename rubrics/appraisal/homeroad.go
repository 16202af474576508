package appraisal

import (
	"asfound/rubrics/limit"
)

// tongueShare is the part of the loaded trailer on the tongue that is planned
// for: the middle of the 10 to 15 % a trailer maker's handbook asks for.
const tongueShare = 0.125

func (w *ride) byPlates() string { return w.T("the plates of truck and trailer, as told") }

// plates gives the truck or the trailer with nothing told in place of none.
func (w *ride) plates() (Truck, Trailer) {
	var truck Truck
	var trailer Trailer
	if w.haul.Truck != nil {
		truck = *w.haul.Truck
	}
	if w.haul.Trailer != nil {
		trailer = *w.haul.Trailer
	}
	return truck, trailer
}

// laden is the loaded trailer by the weight of the machine.
func (w *ride) laden(empty *Quantity) sized {
	return w.machine.weight.plus(sizeIn(empty, "lb"), 1)
}

// plus is (a size and something) times a share of it; it is told where the size is.
func (s sized) plus(add, share float64) sized {
	at := func(x float64) float64 { return float64((x + add) * share) }
	if s.of == nil {
		from := s
		s.of = &from
	}
	s.span = Span{at(s.span.Low), at(s.span.Likely), at(s.span.High)}
	if s.told != nil {
		s.told = &Quantity{round4(s.span.Likely), s.unit}
	}
	return s
}

// payload holds what rests on the truck against what its plate leaves: the tongue
// of the loaded trailer, or without one the whole load.
func (w *ride) payload() []trial {
	truck, trailer := w.plates()
	fields := missing(map[string]*Quantity{"haul.truck.empty": truck.Empty, "haul.truck.people": truck.People, "haul.truck.rated": truck.Rated})
	burden, says := w.machine.weight, ""
	if w.haul.Trailer != nil {
		if trailer.Empty == nil {
			fields = append(fields, "haul.trailer.empty")
		}
		burden = w.laden(trailer.Empty).plus(0, tongueShare)
		says = " " + w.F("Reckoned with %g %% of the loaded trailer on the tongue.", 100*tongueShare)
	}
	if len(fields) > 0 {
		return []trial{missed(w.T("What the truck may weigh by its door plate, what it weighs empty, and what people and tools weigh, tell what is left for the load."), fields...)}
	}
	t := w.span(&burden, func(at Quantity) trial {
		return w.try("truck-payload", map[string]string{
			"rated": quantityText(*truck.Rated), "empty": quantityText(*truck.Empty), "people": quantityText(*truck.People), "tongue": quantityText(at),
		})
	})
	t.text += says
	return []trial{t}
}

// towed holds the load against the trailer, and the loaded trailer against what
// the truck may tow.
func (w *ride) towed() []trial {
	truck, trailer := w.plates()
	load := &w.machine.weight
	if w.haul.Trailer == nil && w.haul.Truck != nil {
		w.trailer = w.truck
		if truck.Tow != nil && sizeIn(truck.Tow, "lb") < load.span.Low {
			w.tow = lacks // the load alone is more than it may tow
		}
		return []trial{{standing: w.truck, missing: []string{"haul.trailer.rated"},
			text: w.F("The truck alone is not enough, or that is not known: a trailer that may carry %s.", w.usual(load))}}
	}
	fields := missing(map[string]*Quantity{"haul.trailer.empty": trailer.Empty, "haul.trailer.rated": trailer.Rated})
	if len(fields) > 0 {
		w.trailer = open
		return []trial{missed(w.T("What the trailer may weigh by its plate, and what it weighs empty, tell what it may carry."), fields...)}
	}
	carried := w.span(load, func(at Quantity) trial {
		return w.try("trailer-payload", map[string]string{"rated": quantityText(*trailer.Rated), "empty": quantityText(*trailer.Empty), "load": quantityText(at)})
	})
	pulled := w.pulled(truck.Tow, w.laden(trailer.Empty))
	w.trailer, w.tow = carried.standing, pulled.standing
	return []trial{carried, pulled}
}

// pulled holds the loaded trailer against what the truck may tow.
func (w *ride) pulled(tow *Quantity, laden sized) trial {
	if tow == nil {
		return missed(w.T("What may the truck tow, by its manual and by its hitch?"), "haul.truck.tow")
	}
	status, source := limit.Physics, w.byPlates()
	if laden.told == nil {
		status, source = limit.Practice, w.byUsual()
	}
	return w.span(&laden, func(at Quantity) trial {
		text := w.F("The loaded trailer weighs %s; the truck may tow %s.", w.say(sizeIn(&at, "lb"), "lb"), w.written(*tow))
		return w.against("tow-rating", text, figure{sizeIn(tow, "lb"), sizeIn(&at, "lb"), "lb", status, source})
	})
}

// tongue says where the middle of the load belongs. By the lever rule the tongue
// carries its empty weight and, of the load, the part d / A: d how far the load's
// middle lies ahead of the axle, A from coupler to axle.
func (w *ride) tongue() trial {
	_, trailer := w.plates()
	if trailer.Empty == nil {
		return missed(w.T("The weight of the empty trailer is needed for it."), "haul.trailer.empty")
	}
	laden, load := w.laden(trailer.Empty).span.Likely, w.machine.weight.span.Likely
	t := w.try("tongue-weight", map[string]string{
		"trailer": quantityText(w.in(laden, "lb")), "tongue": quantityText(w.in(float64(laden*tongueShare), "lb")),
	})
	t.text = w.F("The loaded trailer of %s wants %s to %s on the tongue, 10 to 15 %% of it (common practice; a trailer's own manual comes first).",
		w.say(laden, "lb"), w.say(float64(laden*0.10), "lb"), w.say(float64(laden*0.15), "lb"))
	fields := missing(map[string]*Quantity{"haul.trailer.axle": trailer.Axle, "haul.trailer.tongue": trailer.Tongue})
	if len(fields) > 0 {
		// The share it was reckoned with is planned, not weighed.
		t.standing, t.missing, t.limit = open, fields, nil
		t.text += " " + w.T("The tongue weight empty, and the length from coupler to axle, would tell where the load belongs.")
		return t
	}
	axle, empty := sizeIn(trailer.Axle, "in"), sizeIn(trailer.Tongue, "lb")
	ahead := func(share float64) float64 { return float64((float64(laden*share) - empty) * axle / load) }
	near, far := ahead(0.10), ahead(0.15)
	if far <= 0 {
		t.standing = open
		t.text += " " + w.T("The empty tongue alone is heavier than that: weigh it again.")
		return t
	}
	t.text += " " + w.F("Set the middle of the load %s to %s ahead of the axle, then weigh the tongue.", w.say(max(near, 0), "in"), w.say(far, "in"))
	return t
}

// deck holds the longest piece against the deck.
func (w *ride) deck() trial {
	_, trailer := w.plates()
	p := w.longest()
	if p == nil {
		return missed(w.T("No piece of it applies to what was told about it."))
	}
	if trailer.Deck == nil {
		return missed(w.F("The longest piece, %s, has %s. How long is the deck?", lowerFirst(p.Title), w.usual(&p.length)), "haul.trailer.deck")
	}
	status, source := w.founded(&p.length)
	return w.span(&p.length, func(at Quantity) trial {
		text := w.F("The longest piece, %s, has %s on a deck of %s.", lowerFirst(p.Title), w.written(at), w.written(*trailer.Deck))
		return w.against("deck", text, figure{sizeIn(trailer.Deck, "in"), sizeIn(&at, "in"), "in", status, source})
	})
}
