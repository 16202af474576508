package pdf

import (
	"strings"

	"asfound/rubrics/document/form"
)

const (
	between  = 10.0 // photos of a row
	captions = 8    // lines of a caption that stand under their photo
)

// photos are laid in rows of three, of two where there are few, and a pair in a row
// of its own.
func (s *sheet) photos(list []form.Photo) {
	across := 3
	if len(list) == 2 || len(list) == 4 {
		across = 2
	}
	if len(list) > 0 && !s.under {
		s.gap = max(s.gap, 6)
	}
	s.within("Sect", func(int) {
		for i := 0; i < len(list); {
			n := 1
			if list[i].Pair && i+1 < len(list) {
				s.photoRow(list[i:i+2], 2, true)
				i += 2
				continue
			}
			for n < across && i+n < len(list) && !list[i+n].Pair {
				n++
			}
			s.photoRow(list[i:i+n], across, false)
			i += n
		}
	})
	s.gap = max(s.gap, 6)
}

func (s *sheet) photoRow(list []form.Photo, across int, pair bool) {
	w := (s.width - float64(across-1)*between) / float64(across)
	h := w * 3 / 4
	if across == 2 {
		h = w * 0.66
	}
	var inks []ink
	var under []cellOf
	for i, p := range list {
		x := float64(i) * (w + between)
		figure := s.parts.add(s.inside, "Figure")
		s.parts[figure].alt = strings.Join(clean(p.Caption), " ")
		inks = append(inks, ink{kind: inkFill, x: x, w: w, h: h, fill: tint})
		shown, ok := picture{}, false
		if !p.Missing && s.photo != nil {
			shown, ok = s.photo(p.Key)
		}
		if ok {
			k := min(w/float64(shown.width), h/float64(shown.height))
			pw, ph := float64(shown.width)*k, float64(shown.height)*k
			inks = append(inks, ink{kind: inkPhoto, x: x + (w-pw)/2, y: (h - ph) / 2, w: pw, h: ph, photo: p.Key, part: figure})
			inks = append(inks, ink{kind: inkFrame, x: x, w: w, h: h, thick: 0.5, fill: ruled})
		} else {
			inks = append(inks, s.absent(x, w, h, figure)...)
		}
		under = append(under, cellOf{lines: wrap(p.Caption, small, w), style: small, x: x, w: w, part: s.parts.add(s.inside, "Caption")})
	}
	if pair { // one frame around both
		inks = append(inks, ink{kind: inkFrame, x: -3, y: -3, w: s.width + 6, h: h + 6, thick: 1, fill: black})
	}
	// A caption that is a story goes on below, strip by strip.
	rest := make([]cellOf, len(under))
	longer := false
	for i := range under {
		rest[i] = under[i]
		rest[i].lines = nil
		if n := len(under[i].lines); n > captions {
			under[i].lines, rest[i].lines = under[i].lines[:captions], under[i].lines[captions:]
			longer = true
		}
	}
	first := s.row(under, rowLook{above: h + 4, below: 8, most: s.whole})
	for i := range first {
		if i == 0 {
			first[i].inks = append(inks, first[i].inks...)
		}
	}
	if pair {
		first[0].gap = 11
	}
	s.put(first...)
	if longer {
		s.put(s.row(rest, rowLook{below: 8, most: 10 * small.lead})...)
	}
}

// absent is the box of a photo that is not there, with the words.
func (s *sheet) absent(x, w, h float64, part int) []ink {
	out := []ink{{kind: inkFrame, x: x, w: w, h: h, thick: 0.75, fill: black}}
	for k := 1.0; k < 8; k++ { // ruled, so that nobody takes it for a pale photo
		out = append(out, ink{kind: inkRule, x: x + 4, y: h * k / 8, w: w - 8, thick: 0.3, fill: hair})
	}
	lines := wrap(s.words, small, w-20)
	if len(lines) > 4 {
		lines = lines[:4]
	}
	if len(lines) == 0 {
		return out
	}
	y := (h - float64(len(lines))*small.lead) / 2
	most := 0.0
	for _, l := range lines {
		most = max(most, l.width)
	}
	out = append(out, ink{kind: inkFill, x: x + (w-most)/2 - 4, y: y - 3, w: most + 8, h: float64(len(lines))*small.lead + 6, fill: white})
	for i, l := range lines {
		out = append(out, ink{kind: inkText, x: x + (w-l.width)/2, y: y + float64(i)*small.lead + 8, line: l, style: small, part: part})
	}
	return out
}
