package appraisal

import "asfound/rubrics/say"

// moved is a piece of the machine with its sizes on the way home.
type moved struct {
	*Piece
	weight, length, width, height sized
}

// whole is the share of the weight from which a piece counts as the machine
// itself, so that the listing's own sizes are those of the piece.
const wholeShare = 0.95

// ofPiece are sizes of a piece by those of the machine.
var ofPiece = map[string]string{
	"length": say.Key("length of the piece"), "width": say.Key("width of the piece"), "height": say.Key("height of the piece"),
}

// pieces are those that apply, heaviest first as the rubric lists them.
func (h *holding) pieces() []moved {
	var out []moved
	m := &h.machine
	for i := range h.rubric.Body.Pieces {
		p := &h.rubric.Body.Pieces[i]
		if !meets(p.When, h.facts) {
			continue
		}
		one := moved{Piece: p, weight: m.weight}
		s := m.weight.span
		one.weight.told = nil
		if p.Share == 1 {
			one.weight.told = m.weight.told
		} else {
			one.weight.text = say.Key("weight of the piece")
		}
		one.weight.span = Span{float64(s.Low * p.Share), float64(s.Likely * p.Share), float64(s.High * p.Share)}
		take := func(of *sized, usual float64) sized {
			if of.told != nil && p.Count == 1 && p.Share >= wholeShare {
				return *of
			}
			s := sized{span: Span{usual, usual, usual}, unit: "in", field: of.field, text: of.text}
			if p.Share < wholeShare {
				s.text = ofPiece[s.text]
			}
			return s
		}
		one.length, one.width, one.height = take(&m.length, p.Length), take(&m.width, p.Width), take(&m.height, p.Height)
		out = append(out, one)
	}
	return out
}

// shown is a piece as the plan lists it.
func (h *holding) shown(p *moved) HomePiece {
	weight, told := h.say(p.weight.span.Likely, "lb"), h.machine.weight.told != nil && p.Share == 1
	switch {
	case told && p.Count > 1:
		weight = h.F("%s each", weight)
	case p.Count > 1:
		weight = h.F("about %s each", weight)
	case !told:
		weight = h.F("about %s", weight)
	}
	size := weight + ", " + h.say(p.length.span.Likely, "in") + " x " + h.say(p.width.span.Likely, "in") + " x " + h.say(p.height.span.Likely, "in")
	w := p.weight.span
	return HomePiece{
		ID: p.ID, Title: p.Title, Count: p.Count, Weight: Span{tenths(w.Low), tenths(w.Likely), tenths(w.High)},
		Size: size, TopHeavy: p.TopHeavy, Handling: p.Handling,
	}
}
