package pdf

import (
	"strings"

	"asfound/rubrics/document/form"
)

// layout is a document laid on pages: every line, rule and photo has its place.
type layout struct {
	w, h     float64
	title    string
	language string
	pages    [][]placed
	feet     []placed // head and foot of each page
	parts    structure
	pictures map[string]picture
}

func layOut(doc form.Document, w, h float64, photos func(string) []byte) *layout {
	l := &layout{w: w, h: h, title: strings.Join(clean(doc.Title), " "), language: languageOf(doc.Language), pictures: map[string]picture{}}
	s := &sheet{width: w - 2*sideMargin, words: doc.Absent, parts: structure{{role: "Document", parent: -1}}}
	asked := map[string]bool{}
	s.photo = func(key string) (picture, bool) {
		if !asked[key] {
			asked[key] = true
			if photos != nil {
				if p, ok := readJPEG(photos(key)); ok {
					l.pictures[key] = p
				}
			}
		}
		p, ok := l.pictures[key]
		return p, ok
	}
	foot := wrap(doc.Foot, small, s.width-90)
	if len(foot) > 6 {
		foot = foot[:6]
	}
	bottom := h - footMargin - max(1, float64(len(foot)))*small.lead - 10
	top := topMargin
	running := wrap(doc.Title, small, s.width-120)
	s.whole = bottom - top - 20
	s.under = true
	s.title(doc.Title, doc.Date)
	s.under = true
	s.blocks(doc.Blocks, 0)
	pages := paginate(s.strips, s.spans, top, bottom)
	if len(pages) > 1 && len(running) > 0 {
		// A page alone tells what it belongs to. The first needs no head, but has the
		// same room, so that a page more or less moves nothing.
		pages = paginate(s.strips, s.spans, top+20, bottom)
		for i := range pages[0] {
			pages[0][i].y -= 20
		}
	}
	l.pages, l.parts = pages, s.parts
	for i := range pages {
		f := strip{}
		if i > 0 && len(running) > 0 {
			title := running[0]
			f.inks = append(f.inks, s.written(title, small, 0, s.width, false, 0, top-2)...)
			f.inks = append(f.inks, ink{kind: inkRule, y: top + 12, w: s.width, thick: 0.5, fill: ruled})
		}
		f.inks = append(f.inks, ink{kind: inkRule, y: bottom + 7, w: s.width, thick: 0.75, fill: black})
		for k, line := range foot {
			f.inks = append(f.inks, s.written(line, small, 0, s.width-90, false, 0, bottom+10+float64(k)*small.lead)...)
		}
		if number := wrap(counted(doc.Page, i+1, len(pages)), small, s.width); len(number) > 0 {
			f.inks = append(f.inks, s.written(number[0], small, 0, s.width, true, 0, bottom+10)...)
		}
		l.feet = append(l.feet, placed{strip: f})
	}
	return l
}

// languageOf is a language tag in the letters such tags may have (BCP 47).
func languageOf(tag string) string {
	if len(tag) > 35 {
		return ""
	}
	for _, r := range tag {
		if !(r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-') {
			return ""
		}
	}
	return tag
}
