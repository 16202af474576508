package pdf

// cellOf is what stands side by side with others in a row: lines, and where.
type cellOf struct {
	lines []line
	style style
	x, w  float64
	right bool
	part  int
}

// rowLook is how the strips of a row are drawn around their text.
type rowLook struct {
	above, below float64 // space within the row
	rule         func(last bool, height float64) []ink
	most         float64 // the height from which a row is broken into several strips
}

// row sets cells side by side. A row is one strip unless it is higher than most.
func (s *sheet) row(cells []cellOf, look rowLook) []strip {
	lead, lines := 0.0, 1
	for _, c := range cells {
		lead = max(lead, c.style.lead)
		lines = max(lines, len(c.lines))
	}
	each := lines
	if float64(lines)*lead+look.above+look.below > look.most {
		each = max(1, int((look.most-look.above-look.below)/lead))
	}
	var out []strip
	for from := 0; from < lines; from += each {
		to := min(from+each, lines)
		p := strip{height: float64(to-from) * lead}
		y := 0.0
		if from == 0 {
			y = look.above
			p.height += look.above
		}
		if to == lines {
			p.height += look.below
		}
		for _, c := range cells {
			for i := from; i < min(to, len(c.lines)); i++ {
				p.inks = append(p.inks, s.written(c.lines[i], c.style, c.x, c.w, c.right, c.part, y+float64(i-from)*lead)...)
			}
		}
		if look.rule != nil {
			p.inks = append(look.rule(to == lines, p.height), p.inks...)
		}
		out = append(out, p)
	}
	return out
}
