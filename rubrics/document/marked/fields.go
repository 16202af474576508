package marked

import (
	"sort"
	"strings"
)

// field classifies one field of the file. First and other are the values it takes in
// the two files where a mark would not do; other is for private fields.
type field struct {
	standing     Standing
	first, other any
}

// anyKey stands for a key of a map that nothing knows.
const anyKey = "*"

// keysOf are the keys under which the maps of a file are filled.
func keysOf() map[string][]string {
	return map[string][]string{
		"facts": {anyKey}, "asked": {anyKey}, "ways": {anyKey}, "prices": {"lift-pad", anyKey}, "landing": {"transport", anyKey},
		"adjust": {anyKey}, "findings": {"pads", "cable-diameter", "cable-wires", "column-welds", anyKey},
		"findings.pads.measured": {anyKey}, "findings.pads.words": {anyKey},
		"findings.column-welds.measured": {anyKey}, "findings.column-welds.words": {anyKey},
		"findings.*.measured": {anyKey}, "findings.*.words": {anyKey},
		"findings.cable-diameter.measured": {"nominal", "measured"}, "findings.cable-diameter.words": {},
		"findings.cable-wires.measured": {"lay"}, "findings.cable-wires.words": {"where"},
		"shop.rates":   {"own", "machine", "electrician", "rigger", "welder", "specialist", "inspector"},
		"shop.weights": {"ahead", "odds"}, "shop.haulage.tie_downs": {"webbing 2 in"},
	}
}

// none leaves a field empty.
const none = empty(0)

type empty int

// hash of a photo is shown as the name of its copy.
const hash = "abcdefabcdefabcdefabcdefabcdefabcdefabcdefabcdefabcdefabcdefabcd"

// fields classifies every field of an appraisal file. A star stands for any key.
var fields = map[string]field{
	"format": {Works, "asfound-appraisal", nil}, "version": {Works, 1, nil},
	"rubric.id": {Works, "two-post-lift", nil}, "rubric.version": {Works, 977, nil},
	"date": {Shown, "2026-11-02", nil},

	"parts[].id": {Works, nil, nil}, "parts[].title": {Works, nil, nil}, "parts[].unit": {Works, nil, nil},
	"parts[].price.low": {Works, 7310411, nil}, "parts[].price.likely": {Works, 7310423, nil}, "parts[].price.high": {Works, 7310437, nil},

	"listing.title": {Private, nil, nil}, "listing.maker": {Shown, nil, nil}, "listing.model": {Shown, nil, nil}, "listing.serial": {Shown, nil, nil},
	"listing.made": {Shown, 2019, nil}, "listing.capacity.n": {Shown, 9000, nil}, "listing.capacity.unit": {Shown, "lb", nil},
	"listing.hours": {Private, 8311.0, 4117.0}, "listing.effective_age": {Private, 17.25, 3.5},
	"listing.weight.n": {Private, 1733.0, 2111.0}, "listing.weight.unit": {Private, "lb", "kg"},
	"listing.length.n": {Private, 131.0, 117.0}, "listing.length.unit": {Private, "in", "cm"},
	"listing.width.n": {Private, 133.0, 119.0}, "listing.width.unit": {Private, "in", "cm"},
	"listing.height.n": {Private, 137.0, 121.0}, "listing.height.unit": {Private, "in", "cm"},
	"listing.power.n": {Private, 2.75, 4.25}, "listing.power.unit": {Private, "hp", "kW"},
	"listing.voltage.n": {Private, 229.0, 0.407}, "listing.voltage.unit": {Private, "V", "kV"},
	"listing.phases": {Private, 1, 3}, "listing.current.n": {Private, 23.0, 19000.0}, "listing.current.unit": {Private, "A", "mA"},
	"listing.place": {Private, nil, nil}, "listing.distance.n": {Private, 46.5, 913.0}, "listing.distance.unit": {Private, "mi", "km"},
	"listing.asking": {Private, 2113300, 997700}, "listing.seller": {Private, "auction", "private"},
	"listing.seen": {Private, nil, nil}, "listing.text": {Private, nil, nil}, "listing.note": {Private, nil, nil},
	"listing.photos[].hash": {Private, strings.Repeat("1", 64), strings.Repeat("2", 64)}, "listing.photos[].at": {Private, nil, nil},
	"listing.photos[].marks[].id": {Private, "m1", "m2"}, "listing.photos[].marks[].kind": {Works, "scale", nil},
	"listing.photos[].marks[].from": {Private, [2]float64{0.125, 0.25}, [2]float64{0.375, 0.5}}, "listing.photos[].marks[].to": {Private, [2]float64{0.625, 0.75}, [2]float64{0.875, 0.9375}},
	"listing.photos[].marks[].label": {Private, nil, nil}, "listing.photos[].marks[].length.n": {Private, 2.5, 3.5}, "listing.photos[].marks[].length.unit": {Private, "in", "mm"},

	"facts.*": {Works, nil, nil}, "asked.*": {Private, nil, nil},

	"findings.*.grade": {Shown, 1, nil}, "findings.*.skipped": {Works, "", nil},
	"findings.column-welds.grade": {Shown, none, nil}, "findings.column-welds.skipped": {Shown, "no-access", nil},
	"findings.*.measured.*.n": {Works, 31.25, nil}, "findings.*.measured.*.unit": {Works, nil, nil}, "findings.*.words.*": {Works, nil, nil},
	"findings.cable-diameter.measured.nominal.n": {Shown, 0.375, nil}, "findings.cable-diameter.measured.nominal.unit": {Shown, "in", nil},
	"findings.cable-diameter.measured.measured.n": {Shown, 0.352, nil}, "findings.cable-diameter.measured.measured.unit": {Shown, "in", nil},
	"findings.cable-wires.measured.lay.n": {Shown, 7, nil}, "findings.cable-wires.measured.lay.unit": {Shown, "", nil}, "findings.cable-wires.words.where": {Shown, "running", nil},
	"findings.*.maker.n": {Shown, 0.36, nil}, "findings.*.maker.unit": {Shown, "in", nil}, "findings.cable-wires.maker.n": {Shown, 5, nil}, "findings.cable-wires.maker.unit": {Shown, "", nil},
	"findings.*.note": {Private, nil, nil}, "findings.*.photos[].hash": {Shown, hash, nil},
	// Of a photo's moment only the day is told.
	"findings.*.photos[].at": {Private, "2026-05-06T17:18:19Z", "2026-05-06T03:04:05+02:00"},
	// Marks are painted onto the copy of the picture; the paper's own text has none.
	"findings.*.photos[].marks[].id": {Private, "m1", "m2"}, "findings.*.photos[].marks[].kind": {Works, "scale", nil},
	"findings.*.photos[].marks[].from": {Private, [2]float64{0.125, 0.25}, [2]float64{0.375, 0.5}}, "findings.*.photos[].marks[].to": {Private, [2]float64{0.625, 0.75}, [2]float64{0.875, 0.9375}},
	"findings.*.photos[].marks[].label": {Private, nil, nil}, "findings.*.photos[].marks[].length.n": {Private, 2.5, 3.5}, "findings.*.photos[].marks[].length.unit": {Private, "in", "mm"},
	// A pair names two photos of its finding, of which the files have one.
	"findings.*.pairs": {Shown, none, nil},

	"ways.*":       {Works, nil, nil},
	"prices.*.low": {Shown, 811, nil}, "prices.*.likely": {Shown, 1413, nil}, "prices.*.high": {Shown, 3007, nil},
	"landing.*.off": {Private, true, false}, "landing.*.cost.low": {Private, 51511, 61611}, "landing.*.cost.likely": {Private, 52522, 62622}, "landing.*.cost.high": {Private, 53533, 63633},

	"comparables[].id": {Private, nil, nil}, "comparables[].title": {Private, nil, nil}, "comparables[].maker": {Private, nil, nil},
	"comparables[].price": {Private, 3171700, 4282800}, "comparables[].basis": {Private, "asked", "sold"}, "comparables[].date": {Private, "2026-03-04", "2025-06-07"},
	"comparables[].made": {Private, 2011, 2007}, "comparables[].capacity.n": {Private, 10111, 12111}, "comparables[].capacity.unit": {Private, "lb", "kg"},
	"comparables[].hours": {Private, 5113.0, 6229.0}, "comparables[].condition": {Private, "worn", "sound"}, "comparables[].complete": {Private, "bare", "complete"},
	"comparables[].place": {Private, nil, nil}, "comparables[].distance.n": {Private, 333.0, 444.0}, "comparables[].distance.unit": {Private, "mi", "km"},
	"comparables[].seen": {Private, nil, nil}, "comparables[].note": {Private, nil, nil}, "comparables[].off": {Private, false, true},
	"adjust.*.off": {Private, true, false},

	"new_price.price.low": {Private, 9110100, 8110100}, "new_price.price.likely": {Private, 9220200, 8220200}, "new_price.price.high": {Private, 9330300, 8330300},
	"new_price.capacity.n": {Private, 11000, 10500}, "new_price.capacity.unit": {Private, "lb", "kg"}, "new_price.seen": {Private, nil, nil},
	"new_price.index.series": {Private, nil, nil}, "new_price.index.then": {Private, 101.5, 103.5}, "new_price.index.now": {Private, 131.5, 133.5},
	"lost.functional": {Private, 1300, 700}, "lost.functional_why": {Private, nil, nil}, "lost.economic": {Private, 1700, 900}, "lost.economic_why": {Private, nil, nil},
	"lost.used": {Private, 31.0, 41.0}, "lost.rated": {Private, 61.0, 71.0},
	"care.well": {Private, 2000, 3000}, "care.ordinary": {Private, 5000, 4500}, "care.neglected": {Private, 3000, 2500},

	"shop.currency": {Shown, "CAD", nil}, "shop.units": {Private, "inch", "metric"}, "shop.rates.*": {Shown, 4100, nil},
	"shop.tax": {Private, 713, 917}, "shop.fees": {Private, 31313, 41414},
	"shop.odds.opening": {Private, 9111, 9333}, "shop.odds.fair": {Private, 7222, 7444}, "shop.odds.walk_away": {Private, 5111, 5777},
	"shop.overrun.mean": {Shown, 11300, nil}, "shop.overrun.sd": {Works, 2111, nil}, "shop.kept": {Private, 8111, 6333}, "shop.day": {Private, 3.25, 7.75},
	"shop.weights.*": {Private, 37, 53}, "shop.region": {Works, 13377, nil},

	"shop.site.ceiling.n": {Private, 11.0, 4.5}, "shop.site.ceiling.unit": {Private, "ft", "m"},
	"shop.site.door_width.n": {Private, 111.0, 3.5}, "shop.site.door_width.unit": {Private, "in", "m"},
	"shop.site.door_height.n": {Private, 117.0, 3.7}, "shop.site.door_height.unit": {Private, "in", "m"},
	"shop.site.floor_length.n": {Private, 27.0, 9.1}, "shop.site.floor_length.unit": {Private, "ft", "m"},
	"shop.site.floor_width.n": {Private, 23.0, 8.1}, "shop.site.floor_width.unit": {Private, "ft", "m"},
	"shop.site.floor": {Private, "concrete", "wood"}, "shop.site.slab.n": {Private, 4.75, 11.5}, "shop.site.slab.unit": {Private, "in", "cm"},
	"shop.site.slab_strength.n": {Private, 3111.0, 23.0}, "shop.site.slab_strength.unit": {Private, "psi", "MPa"},
	"shop.site.voltage.n": {Private, 231.0, 0.4}, "shop.site.voltage.unit": {Private, "V", "kV"}, "shop.site.phases": {Private, 1, 3},
	"shop.site.current.n": {Private, 57.0, 59000.0}, "shop.site.current.unit": {Private, "A", "mA"},
	"shop.site.circuit.n": {Private, 37.0, 39000.0}, "shop.site.circuit.unit": {Private, "A", "mA"},
	"shop.site.run.n": {Private, 77.0, 21.0}, "shop.site.run.unit": {Private, "ft", "m"},
	"shop.site.generator.n": {Private, 13.0, 15.0}, "shop.site.generator.unit": {Private, "kVA", "kW"},
	"shop.site.air_flow.n": {Private, 17.0, 519.0}, "shop.site.air_flow.unit": {Private, "cfm", "L/min"},
	"shop.site.air_pressure.n": {Private, 117.0, 7.3}, "shop.site.air_pressure.unit": {Private, "psi", "bar"},
	"shop.site.vehicle.title": {Private, nil, nil}, "shop.site.vehicle.weight.n": {Private, 7111.0, 3111.0}, "shop.site.vehicle.weight.unit": {Private, "lb", "kg"},
	"shop.site.vehicle.height.n": {Private, 83.0, 213.0}, "shop.site.vehicle.height.unit": {Private, "in", "cm"}, "shop.site.vehicle.front": {Private, 5511, 4733},

	"shop.haulage.truck.rated.n": {Private, 9711.0, 4311.0}, "shop.haulage.truck.rated.unit": {Private, "lb", "kg"},
	"shop.haulage.truck.empty.n": {Private, 6113.0, 2713.0}, "shop.haulage.truck.empty.unit": {Private, "lb", "kg"},
	"shop.haulage.truck.people.n": {Private, 413.0, 217.0}, "shop.haulage.truck.people.unit": {Private, "lb", "kg"},
	"shop.haulage.truck.tow.n": {Private, 8713.0, 3917.0}, "shop.haulage.truck.tow.unit": {Private, "lb", "kg"},
	"shop.haulage.trailer.rated.n": {Private, 7013.0, 3317.0}, "shop.haulage.trailer.rated.unit": {Private, "lb", "kg"},
	"shop.haulage.trailer.empty.n": {Private, 2013.0, 917.0}, "shop.haulage.trailer.empty.unit": {Private, "lb", "kg"},
	"shop.haulage.trailer.deck.n": {Private, 17.0, 5.3}, "shop.haulage.trailer.deck.unit": {Private, "ft", "m"},
	"shop.haulage.trailer.tongue.n": {Private, 213.0, 97.0}, "shop.haulage.trailer.tongue.unit": {Private, "lb", "kg"},
	"shop.haulage.trailer.axle.n": {Private, 13.0, 4.1}, "shop.haulage.trailer.axle.unit": {Private, "ft", "m"},
	"shop.haulage.per_distance": {Private, 77, 99}, "shop.haulage.lifting.n": {Private, 4013.0, 1817.0}, "shop.haulage.lifting.unit": {Private, "lb", "kg"},
	"shop.haulage.tie_downs.*": {Private, 7, 11},
}

// rubricTexts classifies the texts of a rubric that an appraisal brings along. What
// tells how to inspect, what to ask and what it costs to move is the buyer's.
var rubricTexts = map[string]Standing{
	"made_with.body.pieces[].title": Private, "made_with.body.pieces[].handling": Private, "made_with.remedies[].ways[].make.cuts[].title": Private,
	"made_with.visit.bring": Private, "made_with.visit.questions[].ask": Private, "made_with.visit.questions[].why": Private, "made_with.visit.wear": Private,
	"made_with.kind": Shown, "made_with.about": Private, "made_with.cautions": Private, "made_with.capacity.title": Shown,
	"made_with.facts[].ask": Private, "made_with.facts[].options[].title": Private, "made_with.landing[].title": Private,
	"made_with.preparations[].title": Shown, "made_with.preparations[].caution": Shown,
	"made_with.remedies[].title": Shown, "made_with.remedies[].ways[].title": Shown, "made_with.remedies[].ways[].caution": Shown,
	"made_with.sections[].title": Shown, "made_with.sections[].caution": Private, "made_with.sections[].checks[].title": Shown,
	"made_with.sections[].checks[].instrument": Private, "made_with.sections[].checks[].how": Private, "made_with.sections[].checks[].caution": Private,
	"made_with.sections[].checks[].grades.as_new": Shown, "made_with.sections[].checks[].grades.sound": Shown, "made_with.sections[].checks[].grades.worn": Shown,
	"made_with.sections[].checks[].grades.bad": Shown, "made_with.sections[].checks[].grades.failed": Shown,
}

// classified finds a field by its path: as it stands, or with stars for its keys.
func classified(path string) (*field, string) {
	if f, ok := fields[path]; ok {
		return &f, path
	}
	for _, p := range paths(fields) {
		if alike(p, path) {
			f := fields[p]
			return &f, p
		}
	}
	return nil, ""
}

// alike holds a path with stars against another.
func alike(pattern, path string) bool {
	a, b := strings.Split(pattern, "."), strings.Split(path, ".")
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] && a[i] != anyKey {
			return false
		}
	}
	return true
}

func paths[T any](m map[string]T) []string {
	out := make([]string, 0, len(m))
	for p := range m {
		out = append(out, p)
	}
	sort.Strings(out)
	return out
}
