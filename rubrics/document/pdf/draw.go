package pdf

import (
	"bytes"
	"fmt"
	"unicode/utf16"

	"codeberg.org/go-pdf/fpdf"
)

// draw writes the pages by the PDF library. Every piece that belongs to an element
// of the structure is numbered within its page.
func (l *layout) draw() ([]byte, error) {
	f := fpdf.NewCustom(&fpdf.InitType{UnitStr: "pt", Size: fpdf.SizeType{Wd: l.w, Ht: l.h}})
	f.SetCatalogSort(true)
	f.SetAutoPageBreak(false, 0)
	f.SetMargins(0, 0, 0)
	f.SetProducer("", false)
	for _, face := range []*face{regular, bold} {
		f.AddUTF8FontFromBytes(face.family, face.weight, face.ttf)
	}
	d := drawing{Fpdf: f, l: l, known: map[string]bool{}}
	for i, page := range l.pages {
		f.AddPage()
		d.page, d.content, d.style, d.face = i+1, 0, style{}, nil
		d.inks(l.feet[i])
		for _, p := range page {
			d.inks(p)
		}
		d.mark(-1)
	}
	var out bytes.Buffer
	if err := f.Output(&out); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

type drawing struct {
	*fpdf.Fpdf
	l       *layout
	known   map[string]bool // photos
	page    int
	content int // pieces of content on this page
	open    int // the element whose content is open; -1 none
	opened  bool
	style   style
	face    *face
}

// mark opens the content of an element, and closes what was open.
func (d *drawing) mark(part int) {
	if d.opened && d.open == part {
		return
	}
	if d.opened {
		d.RawWriteStr("EMC")
		d.opened = false
	}
	switch {
	case part < 0:
		return
	case part == 0:
		d.RawWriteStr("/Artifact BMC")
	default:
		e := &d.l.parts[part]
		d.RawWriteStr(fmt.Sprintf("/%s <</MCID %d>> BDC", e.role, d.content))
		e.kids = append(e.kids, kid{page: d.page, content: d.content})
		d.content++
	}
	d.open, d.opened = part, true
}

func (d *drawing) inks(p placed) {
	for _, k := range p.strip.inks {
		d.mark(k.part)
		x, y := sideMargin+k.x, p.y+k.y
		switch k.kind {
		case inkText:
			d.text(k, x, y)
		case inkRule:
			d.stroke(k)
			d.Line(x, y, x+k.w, y)
		case inkWall:
			d.stroke(k)
			d.Line(x, y, x, y+k.h)
		case inkFrame:
			d.stroke(k)
			d.Rect(x, y, k.w, k.h, "D")
		case inkFill:
			d.SetFillColor(k.fill[0], k.fill[1], k.fill[2])
			d.Rect(x, y, k.w, k.h, "F")
		case inkShape:
			d.SetFillColor(k.fill[0], k.fill[1], k.fill[2])
			points := make([]fpdf.PointType, len(k.points))
			for i, q := range k.points {
				points[i] = fpdf.PointType{X: sideMargin + q.x, Y: p.y + q.y}
			}
			d.Polygon(points, "F")
		case inkPhoto:
			options := fpdf.ImageOptions{ImageType: "jpg"}
			if !d.known[k.photo] {
				d.known[k.photo] = true
				d.RegisterImageOptionsReader(k.photo, options, bytes.NewReader(d.l.pictures[k.photo].jpeg))
			}
			d.ImageOptions(k.photo, x, y, k.w, k.h, false, options, 0, "")
		}
	}
}

func (d *drawing) stroke(k ink) {
	d.SetDrawColor(k.fill[0], k.fill[1], k.fill[2])
	d.SetLineWidth(k.thick)
}

// text draws a line in runs of one face. What is drawn as a box says what it stands
// for to who copies or listens.
func (d *drawing) text(k ink, x, y float64) {
	d.SetTextColor(k.style.ink[0], k.style.ink[1], k.style.ink[2])
	all := k.line.letters
	for i := 0; i < len(all); {
		end := i + 1
		for all[i].typed == "" && end < len(all) && all[end].face == all[i].face && all[end].typed == "" {
			end++
		}
		run, width := make([]rune, 0, end-i), 0.0
		for _, l := range all[i:end] {
			run = append(run, l.drawn)
			width += l.width * k.style.size / 1000
		}
		if d.face != all[i].face || d.style.size != k.style.size {
			d.face, d.style = all[i].face, k.style
			d.SetFont(d.face.family, d.face.weight, k.style.size)
		}
		if all[i].typed != "" {
			d.RawWriteStr("/Span <</ActualText " + hexText(all[i].typed) + ">> BDC")
		}
		d.Text(x, y, string(run))
		if all[i].typed != "" {
			d.RawWriteStr("EMC")
		}
		x += width
		i = end
	}
}

// hexText is a text string of PDF: UTF-16, in hexadecimal digits.
func hexText(text string) string {
	out := []byte("<FEFF")
	for _, u := range utf16.Encode([]rune(text)) {
		out = fmt.Appendf(out, "%04X", u)
	}
	return string(append(out, '>'))
}
