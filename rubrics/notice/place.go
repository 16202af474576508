package notice

import (
	"strings"

	"asfound/rubrics/say"
)

// states are the postal codes of the United States and Canada's provinces.
var states = set("al", "ak", "az", "ar", "ca", "co", "ct", "de", "fl", "ga", "hi", "id", "il", "in", "ia", "ks", "ky", "la", "me", "md", "ma", "mi", "mn", "ms", "mo", "mt", "ne", "nv", "nh", "nj", "nm", "ny", "nc", "nd", "oh", "ok", "or", "pa", "ri", "sc", "sd", "tn", "tx", "ut", "vt", "va", "wa", "wv", "wi", "wy", "dc",
	"on", "qc", "bc", "ab", "mb", "sk", "ns", "nb", "nl", "pe")

var stateNames = set("alabama", "alaska", "arizona", "arkansas", "california", "colorado", "connecticut", "delaware", "florida", "georgia", "hawaii", "idaho", "illinois", "indiana", "iowa", "kansas", "kentucky", "louisiana", "maine", "maryland", "massachusetts", "michigan", "minnesota", "mississippi", "missouri", "montana", "nebraska", "nevada", "hampshire", "jersey", "mexico", "york", "carolina", "dakota", "ohio", "oklahoma", "oregon", "pennsylvania", "tennessee", "texas", "utah", "vermont", "virginia", "washington", "wisconsin", "wyoming", "ontario", "quebec", "alberta", "manitoba", "saskatchewan")

// stateAt tells whether token i ends a state.
func (r *reading) stateAt(i int) bool {
	if i < 0 || i >= len(r.tokens) || r.tokens[i].kind != word {
		return false
	}
	t := &r.tokens[i]
	return len(t.text) == 2 && capitals(t.text) && states[t.fold] || stateNames[t.fold] && isCapital(t.text)
}

// stateCloses tells whether nothing but a postal code or the end of a thought
// follows the state at token i: in capitals, IN and OR are words.
func (r *reading) stateCloses(i int) bool {
	return i+1 == len(r.tokens) || r.tokens[i+1].line != r.tokens[i].line || r.tokens[i+1].kind != word
}

func isCapital(s string) bool {
	return s != strings.ToLower(s)
}

var (
	// placeWords come before a place by themselves.
	placeWords = set("location", "located", "standort", "ubicacion", "lieu")
	// inWords are the small words between them and the place.
	inWords = set("in", "at", "near", "outside", "by", "from", "around", "of", "is", "bei")
	// joining words may stand inside a place.
	joining    = set("of", "the", "on", "am", "an", "der", "de", "la", "le", "north", "south", "east", "west", "northern", "southern", "eastern", "western", "central", "upstate", "northeast", "northwest", "southeast", "southwest")
	directions = set("north", "south", "east", "west", "northern", "southern", "eastern", "western", "central", "upstate", "northeast", "northwest", "southeast", "southwest", "just", "near")
	// pickupWords with "in" say where it stands too.
	pickupWords = set("pickup", "pick", "up", "picked", "sits", "stands", "seen", "here", "shop", "warehouse", "sale", "abholung", "abholbar", "abzuholen", "haul", "load")
	// noPlace are capitalised words that are none.
	noPlace = set("i", "we", "it", "the", "a", "my", "our", "must", "cash", "call", "text", "no", "good", "great", "works", "you", "usa", "description", "condition", "price", "storage", "barn", "garage", "person", "excellent", "working", "very", "used", "stock", "full", "operation", "production", "service")
)

// longestPlace is how many words a place may have.
const longestPlace = 6

// places proposes where it stands.
func (r *reading) places() {
	for i := range r.tokens {
		t := &r.tokens[i]
		if t.kind != word {
			continue
		}
		switch {
		case placeWords[t.fold]:
			k := i + 1
			for n := 0; n < 3 && k < len(r.tokens) && (r.is(k, ":", "-", "=") || inWords[r.tokens[k].fold]); n++ {
				k++
			}
			r.placeFrom(k, Plain, r.ask.Voice.F("\u201c%s\u201d stands before it", t.text))
		case (t.fold == "in" || t.fold == "at" || t.fold == "near") && i > 0 && pickupWords[r.tokens[i-1].fold] && r.tokens[i-1].line == t.line,
			t.fold == "in" && r.is(i-1, "only") && i > 1 && pickupWords[r.tokens[i-2].fold]:
			r.placeFrom(i+1, Likely, say.Key("where to fetch it stands before it"))
		case t.fold == "in" && i+1 < len(r.tokens) && isCapital(r.tokens[i+1].text) && r.tokens[i+1].line == t.line:
			if k := r.stateWithin(i + 1); k > 0 {
				r.placeFrom(i+1, Likely, say.Key("a state follows it"))
			}
		case len(t.text) == 2 && r.stateAt(i):
			r.townBefore(i)
		}
	}
	r.bracketed()
}

// stateWithin is the token in which a place from token i on ends with a state, 0
// for none.
func (r *reading) stateWithin(i int) int {
	for k := i + 1; k < len(r.tokens) && k <= i+4 && r.tokens[k].line == r.tokens[i].line; k++ {
		switch {
		case r.stateAt(k) && r.stateCloses(k):
			return k
		case r.tokens[k].kind == word && isCapital(r.tokens[k].text), r.is(k, ",", "."):
		default:
			return 0
		}
	}
	return 0
}

// townBefore reads the town before the two letters of a state at token i: with a
// comma between, or a postal code behind.
func (r *reading) townBefore(i int) {
	k := i - 1
	comma := r.is(k, ",")
	if comma {
		k--
	}
	if !r.stateCloses(i) || !comma && !(r.number(i+1) && len(r.tokens[i+1].text) == 5) || !r.townWord(k, i) {
		return
	}
	from := k
	for n := 0; n < 2; n++ {
		switch {
		case r.townWord(from-1, i):
			from--
		case r.is(from-1, ".") && r.is(from-2, "st", "ste", "mt", "ft"):
			from -= 2
		}
	}
	r.place(from, i, Likely, say.Key("a state follows it"))
}

func (r *reading) townWord(k, i int) bool {
	if k < 0 {
		return false
	}
	t := &r.tokens[k]
	return t.kind == word && t.line == r.tokens[i].line && isCapital(t.text) && !noPlace[t.fold] && !inWords[t.fold] && !placeWords[t.fold]
}

// bracketed reads the place that stands in brackets at the end of the heading.
func (r *reading) bracketed() {
	last := -1
	for i := range r.tokens {
		if r.tokens[i].line > 0 {
			break
		}
		last = i
	}
	if !r.is(last, ")") {
		return
	}
	for k := last - 1; k >= max(0, last-longestPlace); k-- {
		switch t := &r.tokens[k]; {
		case t.text == "(" && k+1 < last:
			r.place(k+1, last-1, Doubtful, say.Key("it stands in brackets in the heading"))
			return
		case t.kind == word && isCapital(t.text) && !noPlace[t.fold], t.text == ",":
		default:
			return
		}
	}
}

// placeFrom reads a place that begins with token i, where there is one.
func (r *reading) placeFrom(i int, sure, because string) {
	if i >= len(r.tokens) {
		return
	}
	from, k, capital := i, i, false
	if r.number(i) && len(r.tokens[i].text) == 5 { // a postal code before the town
		from, k = i+1, i+1
	}
	last := -1
	for n := 0; n < longestPlace && k < len(r.tokens) && r.tokens[k].line == r.tokens[i].line; n++ {
		t := &r.tokens[k]
		switch {
		case t.kind == word && isCapital(t.text) && !noPlace[t.fold]:
			capital, last = true, k
		case t.kind == word && joining[t.fold] && (k > from || directions[t.fold]):
		case t.text == "," && capital && r.stateAt(k+1):
		case t.kind == mark && (t.text == "-" || t.text == "." || t.text == "'") && t.glued && r.glued(k+1),
			t.text == "." && r.is(k-1, "st", "ste", "mt", "ft"):
		default:
			n = longestPlace
			continue
		}
		k++
		if capital && t.kind == word && r.stateAt(k-1) {
			break
		}
	}
	if last >= from && capital {
		r.place(from, last, sure, because)
	}
}

func (r *reading) place(from, last int, sure, because string) {
	text := strings.Join(strings.Fields(r.text[r.tokens[from].start:r.tokens[last].end]), " ")
	if len(text) < 3 || len(text) > 80 || r.tokens[from].start < r.placed {
		return
	}
	r.placed = r.tokens[last].end
	r.propose(from, last, Proposal{Field: "place", Text: text, Sure: sure, Because: because})
}
