package appraisal

import (
	"fmt"

	"asfound/rubrics/limit"
)

// tongueShare is the part of the loaded trailer on the tongue that is planned
// for: the middle of the 10 to 15 % a trailer maker's handbook asks for.
const tongueShare = 0.125

const byPlates = "the plates of truck and trailer, as told"

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
		says = " Reckoned with 12.5 % of the loaded trailer on the tongue."
	}
	if len(fields) > 0 {
		return []trial{missed("What the truck may weigh by its door plate, what it weighs empty, and what people and tools weigh, tell what is left for the load.", fields...)}
	}
	t := w.span(&burden, func(at Quantity) trial {
		return try("truck-payload", map[string]string{
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
			text: fmt.Sprintf("The truck alone is not enough, or that is not known: a trailer that may carry %s.", w.usual(load))}}
	}
	fields := missing(map[string]*Quantity{"haul.trailer.empty": trailer.Empty, "haul.trailer.rated": trailer.Rated})
	if len(fields) > 0 {
		w.trailer = open
		return []trial{missed("What the trailer may weigh by its plate, and what it weighs empty, tell what it may carry.", fields...)}
	}
	carried := w.span(load, func(at Quantity) trial {
		return try("trailer-payload", map[string]string{"rated": quantityText(*trailer.Rated), "empty": quantityText(*trailer.Empty), "load": quantityText(at)})
	})
	pulled := w.pulled(truck.Tow, w.laden(trailer.Empty))
	w.trailer, w.tow = carried.standing, pulled.standing
	return []trial{carried, pulled}
}

// pulled holds the loaded trailer against what the truck may tow.
func (w *ride) pulled(tow *Quantity, laden sized) trial {
	if tow == nil {
		return missed("What may the truck tow, by its manual and by its hitch?", "haul.truck.tow")
	}
	status, source := limit.Physics, byPlates
	if laden.told == nil {
		status, source = limit.Practice, byUsual
	}
	return w.span(&laden, func(at Quantity) trial {
		text := fmt.Sprintf("The loaded trailer weighs %s; the truck may tow %s.", w.say(sizeIn(&at, "lb"), "lb"), written(*tow))
		return w.against("tow-rating", text, figure{sizeIn(tow, "lb"), sizeIn(&at, "lb"), "lb", status, source})
	})
}

// tongue says where the middle of the load belongs. By the lever rule the tongue
// carries its empty weight and, of the load, the part d / A: d how far the load's
// middle lies ahead of the axle, A from coupler to axle.
func (w *ride) tongue() trial {
	_, trailer := w.plates()
	if trailer.Empty == nil {
		return missed("The weight of the empty trailer is needed for it.", "haul.trailer.empty")
	}
	laden, load := w.laden(trailer.Empty).span.Likely, w.machine.weight.span.Likely
	t := try("tongue-weight", map[string]string{
		"trailer": quantityText(w.in(laden, "lb")), "tongue": quantityText(w.in(float64(laden*tongueShare), "lb")),
	})
	t.text = fmt.Sprintf("The loaded trailer of %s wants %s to %s on the tongue, 10 to 15 %% of it (common practice; a trailer's own manual comes first).",
		w.say(laden, "lb"), w.say(float64(laden*0.10), "lb"), w.say(float64(laden*0.15), "lb"))
	fields := missing(map[string]*Quantity{"haul.trailer.axle": trailer.Axle, "haul.trailer.tongue": trailer.Tongue})
	if len(fields) > 0 {
		// The share it was reckoned with is planned, not weighed.
		t.standing, t.missing, t.limit = open, fields, nil
		t.text += " The tongue weight empty, and the length from coupler to axle, would tell where the load belongs."
		return t
	}
	axle, empty := sizeIn(trailer.Axle, "in"), sizeIn(trailer.Tongue, "lb")
	ahead := func(share float64) float64 { return float64((float64(laden*share) - empty) * axle / load) }
	near, far := ahead(0.10), ahead(0.15)
	if far <= 0 {
		t.standing = open
		t.text += " The empty tongue alone is heavier than that: weigh it again."
		return t
	}
	t.text += fmt.Sprintf(" Set the middle of the load %s to %s ahead of the axle, then weigh the tongue.", w.say(max(near, 0), "in"), w.say(far, "in"))
	return t
}

// deck holds the longest piece against the deck.
func (w *ride) deck() trial {
	_, trailer := w.plates()
	p := w.longest()
	if p == nil {
		return missed("No piece of it applies to what was told about it.")
	}
	if trailer.Deck == nil {
		return missed(fmt.Sprintf("The longest piece, %s, has %s. How long is the deck?", lowerFirst(p.Title), w.usual(&p.length)), "haul.trailer.deck")
	}
	status, source := p.length.founded()
	return w.span(&p.length, func(at Quantity) trial {
		text := fmt.Sprintf("The longest piece, %s, has %s on a deck of %s.", lowerFirst(p.Title), written(at), written(*trailer.Deck))
		return w.against("deck", text, figure{sizeIn(trailer.Deck, "in"), sizeIn(&at, "in"), "in", status, source})
	})
}
