package pdf

// ink is one drawn thing of a strip; y counts downwards from the strip's top, all
// lengths are points.
type ink struct {
	kind       inkKind
	x, y, w, h float64
	line       line // text: x is its left end, y its baseline
	style      style
	thick      float64
	fill       colour
	points     []point // shape
	photo      string
	part       int // the element of the structure it belongs to; 0 is decoration
}

type inkKind int

const (
	inkText  inkKind = iota
	inkRule          // from x, y over w
	inkWall          // from x, y down h
	inkFill          // a filled rectangle
	inkFrame         // its outline
	inkShape         // a filled polygon
	inkPhoto
)

type point struct{ x, y float64 }

// strip is the least that is moved to another page: one line, one row of a table or
// of photos.
type strip struct {
	height float64
	gap    float64 // above it, dropped at the top of a page
	keep   bool    // stays with the next strip
	loose  bool    // divides from what is above: not drawn at the top of a page
	again  []strip // repeated where a page breaks before it
	inks   []ink
}

// span is a run of strips that belongs together: from, up to but without to.
type span struct{ from, to int }

// placed is a strip on a page; y is its top from the top of the page.
type placed struct {
	strip strip
	y     float64
}

// paginate lays strips on pages between top and bottom. Strips that keep stay with
// the next, spans on one page where they fit on one.
func paginate(strips []strip, spans []span, top, bottom float64) [][]placed {
	whole := bottom - top
	begins := map[int][]int{} // ends of the spans that begin at a strip, longest first
	for _, s := range spans {
		if s.to > s.from {
			begins[s.from] = append(begins[s.from], s.to)
		}
	}
	height := func(from, to int) float64 {
		total := 0.0
		for i := from; i < to && total <= whole; i++ {
			total += strips[i].height
			if i > from {
				total += strips[i].gap
			}
		}
		return total
	}
	// together is what has to fit on the page with strip i.
	together := func(i int) float64 {
		total := 0.0
		for at := i; at < len(strips) && total <= whole; at++ {
			gap := strips[at].gap
			if at == i {
				gap = 0
			}
			for _, end := range begins[at] {
				if all := height(at, end); total+gap+all <= whole {
					return total + gap + all
				}
			}
			total += gap + strips[at].height
			if !strips[at].keep {
				break
			}
		}
		return total
	}
	var pages [][]placed
	var page []placed
	y := top
	for i, s := range strips {
		if s.loose && len(page) == 0 {
			continue
		}
		need := together(i)
		if need > whole {
			need = s.height
		}
		if len(page) > 0 && y+s.gap+need > bottom+0.01 {
			pages = append(pages, page)
			page, y = nil, top
			for _, a := range s.again {
				page = append(page, placed{a, y})
				y += a.height
			}
			if s.loose {
				continue
			}
		}
		if len(page) > 0 && y > top && (len(s.again) == 0 || len(page) > len(s.again)) {
			y += s.gap
		}
		page = append(page, placed{s, y})
		y += s.height
	}
	return append(pages, page)
}
