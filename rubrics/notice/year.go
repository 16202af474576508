package notice

import (
	"strconv"

	"asfound/rubrics/say"
)

var (
	yearCue = set("year", "yr", "made", "built", "build", "mfg", "mfd", "manufactured", "manufacture", "mfr", "production", "produced", "vintage", "circa", "baujahr", "bj", "jahr", "annee", "ano", "fabrique", "fabricado", "ca")
	// yearOther are years of other things that happened.
	yearOther = set("posted", "updated", "since", "est", "established", "serviced", "service", "inspected", "inspection", "rebuilt", "rebuild", "replaced", "overhauled", "repainted", "painted", "certified", "tested", "copyright", "until", "expires", "moved", "refurbished", "rewired", "retired", "closing", "closed", "new", "started")
	// yearBought is close to the year made, not that.
	yearBought = set("bought", "purchased", "installed", "acquired", "delivered", "owned", "got", "had", "from")
	yearAfter  = set("model", "vintage", "build", "year", "baujahr", "make")
)

// longestHead is how far a heading goes where the whole text is one line.
const longestHead = 80

// latest is the last year in which a thing on sale can have been made.
func (r *reading) latest() int {
	if len(r.ask.Date) >= 4 {
		if y := yearOf(r.ask.Date[:4]); y != 0 {
			return y + 1
		}
	}
	return 2100
}

// years proposes the year made.
func (r *reading) years() {
	for i := range r.tokens {
		t := &r.tokens[i]
		if t.kind != number || t.taken && !t.dated {
			continue
		}
		y := yearOf(t.text)
		if y == 0 {
			y = r.shortYear(i)
		}
		if y == 0 || y > r.latest() {
			continue
		}
		if sure, because := r.yearAt(i); sure != "" {
			n, from := float64(y), i
			if len(t.text) == 2 {
				from = i - 1
			}
			r.propose(from, i, Proposal{Field: "made", Number: &n, Sure: sure, Because: because})
		}
	}
}

// shortYear completes '98, as POSIX's %y does: 69 to 99 are of the last century.
func (r *reading) shortYear(i int) int {
	t := &r.tokens[i]
	if len(t.text) != 2 || !t.glued || !r.is(i-1, "'", "’", "‘") || r.glued(i-1) || r.glued(i+1) && !r.is(i+1, ",", ".", ")", "-") {
		return 0
	}
	n, err := strconv.Atoi(t.text)
	switch {
	case err != nil:
		return 0
	case n >= 69:
		return 1900 + n
	}
	return 2000 + n
}

// yearAt tells how sure token i is the year made, "" for not at all.
func (r *reading) yearAt(i int) (sure, because string) {
	t := &r.tokens[i]
	if r.is(i-1, "$", "€", "£") || r.is(i+1, "$", "€", "£") && r.glued(i+1) {
		return "", ""
	}
	cue, cued := r.before(i, 4, yearCue)
	elsewhere, happened := r.before(i, 4, yearOther)
	if cued && !(happened && elsewhere > cue) && !r.is(cue+1, "old", "warranty") {
		return Plain, r.ask.Voice.F("\u201c%s\u201d stands before it", r.tokens[cue].text)
	}
	if t.dated || t.priced || happened {
		return "", ""
	}
	if u, _, ok := r.unitBehind(i); ok && !(u.dimension == other && r.is(i+1, "post", "stage", "speed", "axis")) {
		return "", ""
	}
	if r.is(i+1, "-", "/") && r.number(i+2) || r.is(i-1, "-", "/") && r.number(i-2) {
		return "", ""
	}
	if at, ok := r.after(i, 1, yearAfter); ok {
		return Plain, r.ask.Voice.F("\u201c%s\u201d stands behind it", r.tokens[at].text)
	}
	if at, ok := r.before(i, 3, yearBought); ok {
		return Doubtful, r.ask.Voice.F("\u201c%s\u201d stands before it: the year made may be another", r.tokens[at].text)
	}
	if t.first || t.line == 0 && t.start < longestHead || len(t.text) == 2 {
		return Likely, say.Key("it can be a year, where listings have it")
	}
	return Doubtful, say.Key("it can be a year")
}
