package pdf

import (
	"strconv"
	"strings"

	"asfound/rubrics/document/form"
)

// sheet turns a document into strips; nothing of it knows the PDF format.
type sheet struct {
	width  float64 // of the text
	whole  float64 // height of the text on a page
	strips []strip
	spans  []span
	parts  structure
	inside int // the element being filled
	// under tells that a heading or the paper's beginning stands directly above.
	under bool
	gap   float64 // wanted above the next strip
	photo func(key string) (picture, bool)
	words string // said in place of a photo that is not there
}

func (s *sheet) put(list ...strip) {
	for _, p := range list {
		p.gap = max(p.gap, s.gap)
		s.gap = 0
		s.strips = append(s.strips, p)
	}
	s.under = false
}

func (s *sheet) within(role string, work func(n int)) {
	outer := s.inside
	s.inside = s.parts.add(outer, role)
	work(s.inside)
	s.inside = outer
}

const deepest = 12 // parts within parts; what is deeper stands flat

func (s *sheet) blocks(list []form.Block, depth int) {
	for i := range list {
		s.block(&list[i], depth)
	}
}

func (s *sheet) block(b *form.Block, depth int) {
	switch b.Kind {
	case "heading":
		s.heading(b.Text, b.Level)
	case "facts":
		s.facts(b.Facts)
	case "list":
		s.list(b.Items)
	case "table":
		if b.Table != nil {
			s.table(b.Table)
		}
	case "caution":
		s.caution(b)
	case "photos":
		s.photos(b.Photos)
	case "part":
		s.part(b, depth)
	default: // text, and whatever a later version adds: its words are not lost
		s.text(b)
	}
}

func (s *sheet) part(b *form.Block, depth int) {
	if depth >= deepest {
		s.blocks(b.Blocks, depth)
		return
	}
	from := len(s.strips)
	s.within("Sect", func(int) {
		if !s.under {
			s.gap = max(s.gap, 12)
		}
		s.put(strip{height: 5, keep: true, loose: true, inks: []ink{{kind: inkRule, y: 0.5, w: s.width, thick: 1, fill: black}}})
		s.under = true
		s.blocks(b.Blocks, depth+1)
	})
	if len(s.strips) > from {
		s.strips[len(s.strips)-1].keep = false
	}
	s.spans = append(s.spans, span{from, len(s.strips)})
	s.gap = max(s.gap, 8)
}

var headings = [3]style{{13, 17, true, black}, {11, 14, true, black}, {9.5, 13, true, black}}

func (s *sheet) heading(text string, level int) {
	level = min(max(level, 1), 3)
	st := headings[level-1]
	lines := wrap(text, st, s.width)
	if len(lines) == 0 {
		return
	}
	if !s.under {
		s.gap = max(s.gap, []float64{18, 12, 8}[level-1])
	}
	s.within("H"+strconv.Itoa(level), func(n int) {
		for i, l := range lines {
			p := strip{height: st.lead, keep: true, inks: s.written(l, st, 0, s.width, false, n, 0)}
			if i == len(lines)-1 {
				p.height += 2
			}
			s.put(p)
		}
	})
	s.under = true
}

// written is one line of text between x and x+w, its top at y: to the right where
// figures stand so or its paragraph runs from right to left.
func (s *sheet) written(l line, st style, x, w float64, right bool, part int, y float64) []ink {
	if right || l.toLeft {
		x += w - l.width
	}
	return []ink{{kind: inkText, x: x, y: y + st.lead - (st.lead-st.size)/2 - st.size*0.22, line: l, style: st, part: part}}
}

func (s *sheet) text(b *form.Block) {
	st := body
	switch b.Tone {
	case "small":
		st = small
	case "strong":
		st = strong
	}
	s.paragraph(b.Text, st, 0, "P")
}

// paragraph sets a text; its first two lines stay together, and its last two.
func (s *sheet) paragraph(text string, st style, indent float64, role string) {
	lines := wrap(text, st, s.width-indent)
	if len(lines) == 0 {
		return
	}
	introduces := s.under && len(lines) <= 3 // a heading's few words stay with what they lead to
	if !s.under {
		s.gap = max(s.gap, 5)
	}
	s.within(role, func(n int) {
		for i, l := range lines {
			keep := introduces || i == 0 && len(lines) > 1 || i == len(lines)-2
			s.put(strip{height: st.lead, keep: keep, inks: s.written(l, st, indent, s.width-indent, false, n, 0)})
		}
	})
}

func (s *sheet) list(items []string) {
	s.within("L", func(int) {
		for _, item := range items {
			lines := wrap(item, body, s.width-14)
			if len(lines) == 0 {
				continue
			}
			if !s.under {
				s.gap = max(s.gap, 3)
			}
			s.within("LI", func(n int) {
				mark := wrap("–", body, 14)[0]
				body1 := s.parts.add(n, "LBody")
				for i, l := range lines {
					x, at := 14.0, 2.0
					if l.toLeft {
						x, at = 0, s.width-2-mark.width
					}
					inks := s.written(l, body, x, s.width-14, false, body1, 0)
					if i == 0 {
						inks = append([]ink{{kind: inkText, x: at, y: inks[0].y, line: mark, style: body}}, inks...)
					}
					s.put(strip{height: body.lead, keep: i == 0 && len(lines) > 1 || i == len(lines)-2, inks: inks})
				}
			})
		}
	})
}

// title is the block at the head of the first page.
func (s *sheet) title(title, date string) {
	lines, day := wrap(title, titled, s.width), wrap(date, body, s.width)
	if len(lines)+len(day) == 0 {
		return
	}
	s.put(strip{height: 5, keep: true, inks: []ink{{kind: inkFill, w: s.width, h: 2.5, fill: black}}})
	s.within("H1", func(n int) {
		for _, l := range lines {
			s.put(strip{height: titled.lead, keep: true, inks: s.written(l, titled, 0, s.width, false, n, 0)})
		}
	})
	s.within("P", func(n int) {
		for _, l := range day {
			s.put(strip{height: body.lead, keep: true, inks: s.written(l, body, 0, s.width, false, n, 0)})
		}
	})
	s.put(strip{height: 4, inks: []ink{{kind: inkRule, y: 3, w: s.width, thick: 0.75, fill: black}}})
	s.gap = 6
}

// counted fills the pattern of page numbers: its first verb is the number, its
// second the count.
func counted(pattern string, number, count int) string {
	if strings.TrimSpace(pattern) == "" {
		pattern = "%s / %s"
	}
	for _, n := range []int{number, count} {
		at := -1
		for _, verb := range []string{"%s", "%d", "%v"} {
			if k := strings.Index(pattern, verb); k >= 0 && (at < 0 || k < at) {
				at = k
			}
		}
		if at < 0 {
			break
		}
		pattern = pattern[:at] + strconv.Itoa(n) + pattern[at+2:]
	}
	return pattern
}
