package notice

import "asfound/rubrics/say"

var (
	hoursAfter  = set("away", "notice", "drive", "driving", "from", "ago", "of", "per", "a", "day", "week", "work", "labor", "open", "north", "south", "east", "west", "shop", "business")
	hoursBefore = set("within", "open", "business", "drive", "notice", "about", "in", "kw", "takes", "took", "office")
	awayAfter   = set("away", "from", "north", "south", "east", "west", "outside", "off", "northwest", "northeast", "southwest", "southeast", "entfernt", "to")
	odometer    = set("odometer", "mileage", "driven", "truck", "trailer", "engine", "transmission", "on")
	withinWords = set("within", "every", "per", "after")
	ranWords    = set("meter", "runs", "run", "shows", "with", "only", "has", "betriebsstunden")
)

// wayAt proposes the distance, unless the miles were driven.
func (r *reading) wayAt(f figure, u unitOf, at int) {
	if _, ok := r.before(f.first, 4, odometer); ok || f.thousands || r.is(at+1, "on") || r.is(at+1, "per", "/") || f.n > 20_000 {
		return
	}
	if _, ok := r.before(f.first, 2, withinWords); ok {
		return
	}
	sure, because := Doubtful, say.Key("it has a unit of distance")
	if _, ok := r.after(at, 2, awayAfter); ok {
		sure, because = Likely, say.Key("the words behind it speak of a distance")
	}
	r.amount("distance", f, u, at, sure, because)
}

// hoursAt proposes the hours run; few of them are an errand or a notice.
func (r *reading) hoursAt(f figure, at int) {
	_, behind := r.after(at, 1, hoursAfter)
	_, before := r.before(f.first, 1, hoursBefore)
	meter, metered := r.before(f.first, 3, ranWords)
	if behind || before && !metered || r.is(at+1, "/", "'") && r.glued(at+1) {
		return
	}
	if f.n > 1e6 || f.n <= 48 && !(metered && r.is(meter, "meter", "shows")) || r.is(f.first-1, "/", "-") && f.n <= 48 {
		return // an errand, a notice
	}
	sure := Plain
	if f.n < 100 {
		sure = Doubtful
	}
	for k, n := range r.readings(&f, hours) {
		because := say.Key("it has a unit of hours")
		if k > 0 {
			if n <= 48 {
				break
			}
			sure, because = Doubtful, say.Key("the mark in it may start the decimals")
		}
		r.propose(f.first, at, Proposal{Field: "hours", Number: &n, Sure: sure, Because: because})
	}
}

// meters reads "hour meter: 1532" and "hours 1532", where the unit stands before.
func (r *reading) meters() {
	for i := range r.tokens {
		if !r.is(i, "hours", "hrs", "meter", "betriebsstunden") || r.is(i, "meter") && !r.is(i-1, "hour", "hours") {
			continue
		}
		k := i + 1
		for n := 0; n < 3 && r.is(k, ":", "meter", "is", "at", "reads", "shows", "reading", "on", "="); n++ {
			k++
		}
		f, ok := r.figureAt(k)
		if !ok || r.tokens[k].priced || r.tokens[k].line != r.tokens[i].line || f.n < 10 || f.n > 1e6 || k == i+1 && !r.is(i, "meter", "betriebsstunden") {
			continue
		}
		if u, _, unit := r.unitBehind(f.last); unit && u.dimension != hours {
			continue
		}
		n := f.n
		r.propose(i, f.last, Proposal{Field: "hours", Number: &n, Sure: Likely, Because: say.Key("an hour meter is spoken of")})
	}
}
