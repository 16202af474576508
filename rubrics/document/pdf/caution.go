package pdf

import "asfound/rubrics/document/form"

// signal is how a signal word is shown (ANSI Z535.4: the words with their colours,
// the safety alert symbol before all but notice). Word and shape stay where colour
// is lost.
type signal struct {
	fill, ink colour
	alert     bool
}

var signals = map[string]signal{
	"danger":  {colour{174, 17, 27}, white, true},
	"warning": {colour{245, 130, 32}, black, true},
	"caution": {colour{255, 209, 0}, black, true},
	"notice":  {colour{11, 79, 158}, white, false},
}

// caution is a panel with its signal word above the text.
func (s *sheet) caution(b *form.Block) {
	look, ok := signals[b.Signal]
	if !ok {
		look = signal{white, black, false}
	}
	st := style{10, 14, true, look.ink}
	word, lines := wrap(b.Word, st, s.width-54), wrap(b.Text, body, s.width-16)
	if len(word)+len(lines) == 0 {
		return
	}
	if !s.under {
		s.gap = max(s.gap, 8)
	}
	wall := func(h float64) []ink {
		return []ink{{kind: inkWall, h: h, thick: 1, fill: black}, {kind: inkWall, x: s.width, h: h, thick: 1, fill: black}}
	}
	s.within("Div", func(int) {
		s.within("P", func(n int) {
			for i, l := range word {
				p := strip{height: st.lead, keep: true, inks: []ink{{kind: inkFill, w: s.width, h: st.lead, fill: look.fill}}}
				y := 0.0
				if i == 0 {
					p.height, p.inks[0].h, y = st.lead+4, st.lead+4, 2
					p.inks = append(p.inks, ink{kind: inkRule, w: s.width, thick: 1, fill: black})
					if look.alert {
						at := 8.0
						if l.toLeft {
							at = s.width - 8 - 15
						}
						p.inks = append(p.inks, alert(at, 2.5, 13, look)...)
					}
				}
				if i == len(word)-1 {
					p.inks = append(p.inks, ink{kind: inkRule, y: p.height, w: s.width, thick: 1, fill: black})
				}
				x := 8.0
				if look.alert { // room for the symbol, on whichever side the word begins
					x = 27
				}
				p.inks = append(append(p.inks, wall(p.height)...), s.written(l, st, x, s.width-2*x, false, n, y)...)
				s.put(p)
			}
		})
		s.within("P", func(n int) {
			for i, l := range lines {
				p := strip{height: body.lead, keep: i == 0 && len(lines) > 1 || i == len(lines)-2}
				y := 0.0
				if i == 0 {
					p.height, y = p.height+3, 3
					if len(word) == 0 {
						p.inks = append(p.inks, ink{kind: inkRule, w: s.width, thick: 1, fill: black})
					}
				}
				if i == len(lines)-1 {
					p.height += 4
				}
				p.inks = append(append(p.inks, wall(p.height)...), s.written(l, body, 8, s.width-16, false, n, y)...)
				if i == len(lines)-1 {
					p.inks = append(p.inks, ink{kind: inkRule, y: p.height, w: s.width, thick: 1, fill: black})
				}
				s.put(p)
			}
		})
	})
	s.strips[len(s.strips)-1].keep = false
	s.gap = max(s.gap, 8)
}

// alert is the safety alert symbol, a triangle with an exclamation mark, h high.
func alert(x, y, h float64, look signal) []ink {
	inside := look.fill
	w := h * 1.15
	middle := x + w/2
	return []ink{
		{kind: inkShape, fill: look.ink, points: []point{{middle, y}, {x + w, y + h}, {x, y + h}}},
		{kind: inkShape, fill: inside, points: []point{{middle - 1, y + h*0.35}, {middle + 1, y + h*0.35}, {middle + 0.6, y + h*0.7}, {middle - 0.6, y + h*0.7}}},
		{kind: inkFill, x: middle - 0.9, y: y + h*0.77, w: 1.8, h: 1.8, fill: inside},
	}
}
