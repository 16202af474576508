package pdf

import "asfound/rubrics/document/form"

// facts are set as the fields of a drawing's title block: ruled, two to a row where
// they are short, the name small above its value.
func (s *sheet) facts(list []form.Fact) {
	half := s.width / 2
	type field struct {
		name, value []line
		wide        bool
	}
	var fields []field
	for _, f := range list {
		long := widthOf(f.Name, label) > half-10 || widthOf(f.Value, body) > half-10
		w := half - 10
		if long {
			w = s.width - 10
		}
		fd := field{wrap(f.Name, label, w), wrap(f.Value, body, w), long}
		if len(fd.name)+len(fd.value) > 0 {
			fields = append(fields, fd)
		}
	}
	if len(fields) == 0 {
		return
	}
	if !s.under {
		s.gap = max(s.gap, 6)
	}
	s.within("Table", func(int) {
		for i := 0; i < len(fields); {
			n := 1
			if !fields[i].wide && i+1 < len(fields) && !fields[i+1].wide {
				n = 2
			}
			s.within("TR", func(tr int) {
				var names, values []cellOf
				for k, f := range fields[i : i+n] {
					x, w := float64(k)*half+5, half-10
					if n == 1 {
						w = s.width - 10
					}
					names = append(names, cellOf{lines: f.name, style: label, x: x, w: w, part: s.parts.add(tr, "TH")})
					values = append(values, cellOf{lines: f.value, style: body, x: x, w: w, part: s.parts.add(tr, "TD")})
				}
				first, last := i == 0, i+n == len(fields)
				walls := func(bottom bool) func(bool, float64) []ink {
					return func(end bool, h float64) []ink {
						out := []ink{{kind: inkWall, x: 0, h: h, thick: 0.5, fill: ruled}, {kind: inkWall, x: s.width, h: h, thick: 0.5, fill: ruled}}
						if n == 2 {
							out = append(out, ink{kind: inkWall, x: half, h: h, thick: 0.5, fill: ruled})
						}
						if bottom && end {
							out = append(out, ink{kind: inkRule, y: h, w: s.width, thick: 0.5, fill: ruled})
						}
						return out
					}
				}
				above := s.row(names, rowLook{above: 2, rule: walls(false), most: s.whole / 4})
				if first {
					above[0].inks = append(above[0].inks, ink{kind: inkRule, w: s.width, thick: 0.5, fill: ruled})
				}
				for k := range above {
					above[k].keep = true
				}
				below := s.row(values, rowLook{below: 3, rule: walls(true), most: s.whole / 3})
				if len(below) == 1 && last && !first && len(s.strips) > 0 {
					s.strips[len(s.strips)-1].keep = true // no field alone on a page
				}
				s.put(append(above, below...)...)
			})
			i += n
		}
	})
	s.gap = max(s.gap, 6)
}

// widthOf is the width of the widest paragraph of a text on one line, in points.
func widthOf(text string, st style) float64 {
	most := 0.0
	for _, l := range wrap(text, st, 1e9) {
		most = max(most, l.width)
	}
	return most
}
