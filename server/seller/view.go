package seller

import (
	"slices"
	"strconv"
	"strings"

	"asfound/rubrics/document"
)

// view is the page as the template takes it.
type view struct {
	*Page
	Style     string
	Direction string
	Expiry    string
	Words     *words
	Items     []item
	// Loose is the fault of an answer whose line is not known.
	Loose string
}

// item is a block.
type item struct {
	document.Block
	Level  int // of HTML
	Signal string
	Groups []group
	Heads  []head
	Rows   []row
	Items  []item
	List   []string
	Form   *form
}

// group is a photo, or two side by side.
type group struct {
	Pair   bool
	Photos []picture
}

type picture struct {
	document.Photo
	Size
	Address string // "" where there is none
	Words   *words
}

type head struct {
	document.Column
	Class string
}

type row struct {
	Kind  string
	Group string // the heading within the table
	Span  int
	Cells []cell
}

type cell struct {
	Text, Head string
	Right      bool
}

// form is what stands under a part that may be answered.
type form struct {
	Line, Base string
	// About is the part's own heading, for those who cannot see where the form stands.
	About  string
	Labels *document.AnswerWords
	Words  *words
	Given  *Answer
	// GivenSays is the label of what was said.
	GivenSays string
	Says      string
	Word      string
	Sent      bool
	Fault     string
}

func (p *Page) view() view {
	v := view{Page: p, Style: "/s/" + StyleName, Direction: direction(p.Document.Language), Words: wordsOf(p.Document.Language)}
	if a := p.Document.Answers; a != nil && a.Expires != "" {
		v.Expiry = strings.Replace(a.Expires, "%s", voice(p.Document.Language).Date(p.Expires.Format("2006-01-02")), 1)
	}
	v.Items = p.items(p.Document.Blocks, v.Words, topLevel(p.Document.Blocks))
	if p.Fault != nil && !slices.Contains(p.Lines, p.Fault.Line) {
		v.Loose = p.says(p.Fault.What, v.Words)
	}
	return v
}

// topLevel is the highest level of heading there is, 1 to 3: it comes next to the title, so that none is skipped.
func topLevel(blocks []document.Block) int {
	top := 3
	for _, b := range blocks {
		switch b.Kind {
		case "heading":
			top = min(top, b.Level)
		case "part":
			top = min(top, topLevel(b.Blocks))
		}
	}
	return top
}

func (p *Page) items(blocks []document.Block, w *words, top int) []item {
	out := make([]item, 0, len(blocks))
	for _, b := range blocks {
		it := item{Block: b, Level: b.Level - top + 2, Signal: b.Word, List: b.Items}
		switch b.Kind {
		case "caution":
			if it.Signal == "" {
				it.Signal = w.signals[b.Signal]
			}
		case "table":
			it.Heads, it.Rows = tableOf(b.Table)
		case "photos":
			it.Groups = p.groups(b.Photos, w)
		case "part":
			it.Items = p.items(b.Blocks, w, top)
			if b.Answer && p.Document.Answers != nil && slices.Contains(p.Lines, b.ID) {
				it.Form = p.form(&b, w)
			}
		}
		out = append(out, it)
	}
	return out
}

func tableOf(t *document.Table) (heads []head, rows []row) {
	for _, c := range t.Columns {
		heads = append(heads, head{c, "c" + strconv.Itoa(c.Share)})
	}
	for _, r := range t.Rows {
		line := row{Kind: r.Kind, Span: len(t.Columns)}
		if r.Kind == "group" {
			line.Group = r.Cells[0]
		} else {
			for i, text := range r.Cells {
				line.Cells = append(line.Cells, cell{text, t.Columns[i].Title, t.Columns[i].Right})
			}
		}
		rows = append(rows, line)
	}
	return heads, rows
}

func (p *Page) groups(photos []document.Photo, w *words) (out []group) {
	paired := false
	for _, ph := range photos {
		pic := picture{Photo: ph, Words: w}
		if size, ok := p.Sizes[ph.Key]; ok && !ph.Missing {
			pic.Size, pic.Address = size, p.Base+"/photo/"+ph.Key
		}
		if paired {
			last := &out[len(out)-1]
			last.Photos = append(last.Photos, pic)
			paired = false
			continue
		}
		paired = ph.Pair
		out = append(out, group{Pair: paired, Photos: []picture{pic}})
	}
	return out
}

func (p *Page) form(b *document.Block, w *words) *form {
	f := &form{Line: b.ID, Base: p.Base, About: headingOf(b.Blocks), Labels: p.Document.Answers, Words: w, Sent: p.Sent == b.ID}
	if a, ok := p.Answers[b.ID]; ok {
		f.Given, f.Says, f.Word = &a, a.Says, a.Word
		f.GivenSays = map[string]string{"agree": f.Labels.Agree, "disagree": f.Labels.Disagree, "done": f.Labels.Done}[a.Says]
	}
	if p.Fault != nil && p.Fault.Line == b.ID {
		f.Says, f.Word, f.Fault, f.Sent = p.Fault.Says, p.Fault.Word, p.says(p.Fault.What, w), false
	}
	return f
}

func headingOf(blocks []document.Block) string {
	for _, b := range blocks {
		if b.Kind == "heading" {
			return b.Text
		}
	}
	return ""
}

// says is a fault in the document's words.
func (p *Page) says(what What, w *words) string {
	if a := p.Document.Answers; a != nil {
		switch what {
		case NoAnswer:
			return a.NoAnswer
		case TooLong:
			return a.TooLong
		case NoPhoto:
			return a.NoPhoto
		}
	}
	switch what {
	case TooMany:
		return w.TooMany
	case TooManyPhotos:
		return w.TooManyP
	case Busy:
		return w.Busy
	}
	return w.NotStored
}
