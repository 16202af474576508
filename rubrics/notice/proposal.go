package notice

import (
	"cmp"
	"slices"
	"strings"
	"unicode/utf8"

	"asfound/rubrics/say"
)

// fields in the order they are proposed; facts come after them.
var fields = []string{"rubric", "title", "asking", "place", "distance", "made", "capacity", "hours", "voltage", "phases", "power", "current", "weight", "length", "width", "height", "seen"}

// mostOf is how many readings of one field are proposed.
const mostOf = 5

// heading proposes the first line as the title, and the first address of the web
// as where it was seen.
func (r *reading) heading() {
	last := -1
	for i := range r.tokens {
		if r.tokens[i].line > 0 {
			break
		}
		last = i
	}
	if last >= 0 && r.tokens[0].kind != web {
		line := r.text[r.tokens[0].start:r.tokens[last].end]
		if n := utf8.RuneCountInString(line); n >= 4 && n <= 120 && strings.ContainsFunc(line, func(c rune) bool { return c >= 'A' }) {
			r.propose(0, last, Proposal{Field: "title", Text: strings.Join(strings.Fields(line), " "), Sure: Likely, Because: say.Key("it is the first line")})
		}
	}
	for i := range r.tokens {
		if t := &r.tokens[i]; t.kind == web && len(t.text) <= 2000 {
			r.propose(i, i, Proposal{Field: "seen", Text: t.text, Sure: Likely, Because: say.Key("it is an address of the web")})
			return
		}
	}
}

// proposals orders what was found: by field, the surest first, each value once.
func (r *reading) proposals() []Proposal {
	all := r.found
	place := func(field string) int {
		if i := slices.Index(fields, field); i >= 0 {
			return i
		}
		return len(fields)
	}
	slices.SortStableFunc(all, func(a, b Proposal) int {
		return cmp.Or(cmp.Compare(place(a.Field), place(b.Field)), cmp.Compare(a.Field, b.Field), cmp.Compare(rank(a.Sure), rank(b.Sure)), cmp.Compare(a.Start, b.Start), cmp.Compare(a.End, b.End))
	})
	out := []Proposal{}
	begin, plain := 0, 0
	for i, p := range all {
		if i > 0 && p.Field != all[i-1].Field {
			begin, plain = len(out), 0
		}
		if len(out)-begin == mostOf || slices.ContainsFunc(out[begin:], func(o Proposal) bool { return o.says(&p) }) {
			continue
		}
		// Two values of a thing that has one: neither is certain.
		if p.Sure == Plain {
			if plain++; plain > 1 {
				p.Sure = Likely
				for k := begin; k < len(out); k++ {
					if out[k].Sure == Plain {
						out[k].Sure = Likely
					}
				}
			}
		}
		p.Words, p.Because = r.text[p.Start:p.End], r.ask.Voice.Label(p.Because)
		p.Before, p.After = r.about(p.Start, p.End)
		out = append(out, p)
	}
	return out
}

// says tells whether two proposals of a field have the same value.
func (p *Proposal) says(o *Proposal) bool {
	switch {
	case p.Cents != nil:
		return o.Cents != nil && *p.Cents == *o.Cents && p.Foreign == o.Foreign
	case p.Quantity != nil:
		return o.Quantity != nil && *p.Quantity == *o.Quantity
	case p.Number != nil:
		return o.Number != nil && *p.Number == *o.Number
	}
	return p.Text == o.Text && o.Cents == nil && o.Quantity == nil && o.Number == nil
}

// around is how many characters are shown on either side of the words.
const around = 30

// about gives what stands before and behind a piece of the text, in its line and
// cut at a blank where it can be.
func (r *reading) about(start, end int) (before, after string) {
	from := start
	for n := 0; from > 0 && n < around; n++ {
		c, size := utf8.DecodeLastRuneInString(r.text[:from])
		if c == '\n' || c == '\r' {
			break
		}
		from -= size
	}
	to := end
	for n := 0; to < len(r.text) && n < around; n++ {
		c, size := utf8.DecodeRuneInString(r.text[to:])
		if c == '\n' || c == '\r' {
			break
		}
		to += size
	}
	before, after = r.text[from:start], r.text[end:to]
	if i := strings.IndexByte(before, ' '); i >= 0 && from > 0 && len(before) >= around {
		before = "…" + before[i:]
	}
	if i := strings.LastIndexByte(after, ' '); i >= 0 && to < len(r.text) && len(after) >= around {
		after = after[:i] + " …"
	}
	return before, after
}
