package notice

import (
	"strings"

	"asfound/rubrics/say"
)

var (
	tallCue = set("tall", "high", "height", "h", "hoch", "hohe")
	wideCue = set("wide", "width", "w", "breit", "breite")
	longCue = set("long", "length", "l", "deep", "depth", "d", "lang", "lange")
	// notOwn are sizes of other things than the machine as a whole.
	notOwn = set("ceiling", "ceilings", "door", "doors", "doorway", "lifting", "lifts", "rise", "raised", "stroke", "travel", "cable", "cables", "cord", "hose", "hoses", "between", "clearance", "runway", "runways", "arm", "arms",
		"bed", "table", "jaw", "vise", "chuck", "stock", "wire", "blade", "wheel", "throat", "swing", "center", "centers", "centres", "reach", "daylight", "opening", "trailer", "shop", "building", "bay", "pipe", "extension", "extensions", "bore", "spindle", "lead")
	partWords    = set("column", "columns", "post", "posts", "each", "beam", "frame", "ram", "tank", "motor")
	overallWords = set("overall", "total")
)

// lengthAt proposes a length for the side that the words about it name, or for the
// size of a kind that is told by a length; it gives the last token it took.
func (r *reading) lengthAt(f figure, u unitOf, at int) (last int) {
	u.name, f = r.feetInches(u.name, f, &at)
	field, cue := "", 0
	for _, c := range []struct {
		field string
		words map[string]bool
	}{{"height", tallCue}, {"width", wideCue}, {"length", longCue}} {
		k, ok := r.after(r.past(at, "overall", "total"), 1, c.words)
		if !ok {
			k = r.leadTo(f.first)
			ok = k >= 0 && r.tokens[k].kind == word && c.words[r.tokens[k].fold]
		}
		if ok && field == "" {
			field, cue = c.field, k
		}
	}
	if r.kindMeasures(unitOf{length, u.name}) && r.sizeWord(f, at) {
		r.size(f, unitOf{length, u.name}, at, Plain, say.Key("the words about it speak of the size of this kind"))
		return f.last
	}
	if field == "" {
		return f.last
	}
	sure, because := Likely, sideWords[field]
	_, overall := r.before(f.first, 3, overallWords)
	_, before := r.before(f.first, 3, notOwn)
	_, behind := r.after(max(at, cue), 2, notOwn)
	if !overall && (before || behind || r.is(cue-1, "lift")) {
		return f.last
	}
	if _, part := r.before(f.first, 3, partWords); part {
		sure, because = Doubtful, say.Key("it may be said of a part")
	}
	if r.is(cue, "h", "w", "l", "d") && !r.tokens[cue].glued && !r.is(cue+1, ":", "=") {
		sure = Doubtful
	}
	r.amount(field, f, unitOf{length, u.name}, at, sure, because)
	return f.last
}

// sideWords say why a length is that of a side.
var sideWords = map[string]string{
	"length": say.Key("the words about it speak of its length"),
	"width":  say.Key("the words about it speak of its width"),
	"height": say.Key("the words about it speak of its height"),
}

// past is token i, or the one behind it where that is one of the words.
func (r *reading) past(i int, words ...string) int {
	if r.is(i+1, words...) {
		return i + 1
	}
	return i
}

// leadTo is the token before a figure that names it: "height: about 145 in".
func (r *reading) leadTo(i int) int {
	k := i - 1
	for n := 0; n < 3 && r.is(k, ":", "=", "is", "about", "approx", "of", "."); n++ {
		k--
	}
	if k >= 0 && r.tokens[k].line != r.tokens[i].line {
		return -1
	}
	return k
}

// feetInches joins 11 ft 6 in and 11'6".
func (r *reading) feetInches(name string, f figure, at *int) (string, figure) {
	if name != "ft" || !r.number(*at+1) {
		return name, f
	}
	g, ok := r.figureAt(*at + 1)
	if !ok || g.n >= 12 {
		return name, f
	}
	u, last, ok := r.unitBehind(g.last)
	if ok && u.name != "in" || !ok && !r.glued(*at+1) {
		return name, f
	}
	*at = g.last
	if ok {
		*at = last
	}
	f.n, f.other, f.last = float64(f.n*12)+g.n, 0, g.last
	return "in", f
}

// sizeWord tells whether a word of the kind's size stands about a figure.
func (r *reading) sizeWord(f figure, at int) bool {
	words := map[string]bool{}
	for _, w := range strings.Fields(r.kind.Size.Title) {
		if w := plainWord(w); len(w) > 3 {
			words[w] = true
		}
	}
	for _, w := range strings.Fields(r.kind.Title) {
		w := plainWord(w)
		words[w] = words[w] || len(w) > 3
	}
	_, behind := r.after(at, 2, words)
	_, before := r.before(f.first, 2, words)
	return behind || before
}

// sizes reads 96 x 60 x 72 in as length, width and height, and 14x40 as the
// swing and bed of a kind that is told by a length.
func (r *reading) sizes(i int) (last int, ok bool) {
	var f [3]figure
	var name [3]string
	var label [3]string
	k, n := i, 0
	for ; n < 3; n++ {
		g, ok := r.figureAt(k)
		if !ok || g.thousands {
			break
		}
		f[n], last = g, g.last
		if u, at, ok := r.unitBehind(last); ok && u.dimension == length {
			name[n], last = u.name, at
			name[n], f[n] = r.feetInches(u.name, g, &last)
		}
		if r.is(last+1, "l", "w", "h", "d", "long", "wide", "high", "tall", "deep") {
			last++
			label[n] = r.tokens[last].fold
		}
		if !r.is(last+1, "x", "×", "by", "*") || n == 2 {
			n++
			break
		}
		k = last + 2
	}
	unit := ""
	for j := range n {
		if name[j] != "" {
			unit = name[j]
		}
	}
	for j := 0; j < n && n > 1; j++ { // the last unit holds for all that have none
		if name[j] == "" {
			name[j] = unit
		}
	}
	switch {
	case n == 3 && name[0] != "":
		r.three(f, name, label)
		return last, true
	case n >= 2 && r.kind != nil && measure(r.kind.Size.Unit) == length:
		r.pair(f[0], f[1], name[0])
		return last, true
	}
	return 0, false
}

// pair proposes the size of a kind that is named by two: the swing of 14 x 40, the
// table's length of 9 x 42.
func (r *reading) pair(a, b figure, unit string) {
	because := say.Key("of two sizes of such a kind this one is named first")
	if named(r.kind.Size.Title, "length") {
		because = say.Key("of two sizes of such a kind this is the length")
		if b.n > a.n {
			a = b
		}
	}
	if unit == "" {
		if unit = r.kind.Size.Unit; a.n >= 100 && unit == "in" {
			unit = "mm"
		}
	}
	r.size(a, unitOf{length, unit}, a.last, Likely, because)
}

// three proposes length, width and height, by their letters where they stand.
func (r *reading) three(f [3]figure, name, label [3]string) {
	fields := [3]string{"length", "width", "height"}
	sure, because := Doubtful, say.Key("of three sizes, length, width and height are the usual order")
	if label[0]+label[1]+label[2] != "" {
		sure, because = Likely, say.Key("a letter behind it says so")
		for j, l := range label {
			fields[j] = map[string]string{"h": "height", "high": "height", "tall": "height", "w": "width", "wide": "width", "l": "length", "long": "length", "d": "length", "deep": "length"}[l]
		}
	}
	for j := range f {
		if fields[j] != "" {
			r.amount(fields[j], f[j], unitOf{length, name[j]}, f[j].last, sure, because)
		}
	}
}
