package appraisal

import (
	"slices"
	"strings"
	"sync"

	"asfound/rubrics/limit"
	"asfound/rubrics/say"
	"asfound/rubrics/unit"
)

// A region's prices are held between a quarter and four times the examples.
const leastRegion, mostRegion = 25_00, 400_00

// Measure is a size of the listing or the shop that is entered as a number with
// its unit: what outside Low to High, in Unit, is taken for a slip.
type Measure struct {
	// Field is listing.NAME, site.NAME or haul.NAME, as Missing names it.
	Field     string  `json:"field"`
	Dimension string  `json:"dimension"` // of package unit
	Unit      string  `json:"unit"`      // offered first in an inch shop
	Metric    string  `json:"metric"`    // offered first in a metric shop
	Low       float64 `json:"low"`       // in Unit
	High      float64 `json:"high"`
}

// Measures are all such sizes, in the order they are asked for. The bounds are
// judgement: wider than any workshop.
var Measures = []Measure{
	{"listing.weight", "mass", "lb", "kg", 1, 500_000},
	{"listing.length", "length", "in", "mm", 1, 2400},
	{"listing.width", "length", "in", "mm", 1, 2400},
	{"listing.height", "length", "in", "mm", 1, 2400},
	{"listing.power", "power", "hp", "kW", 0.01, 2000},
	{"listing.voltage", "voltage", "V", "V", 6, 15_000},
	{"listing.current", "current", "A", "A", 0.1, 5000},
	{"site.ceiling", "length", "ft", "m", 4, 100},
	{"site.door_width", "length", "in", "mm", 12, 1200},
	{"site.door_height", "length", "in", "mm", 12, 1200},
	{"site.floor_length", "length", "ft", "m", 1, 1000},
	{"site.floor_width", "length", "ft", "m", 1, 1000},
	{"site.slab", "length", "in", "mm", 0.5, 60},
	{"site.slab_strength", "pressure", "psi", "MPa", 100, 20_000},
	{"site.voltage", "voltage", "V", "V", 90, 1000},
	{"site.current", "current", "A", "A", 0.1, 5000},
	{"site.circuit", "current", "A", "A", 0.1, 5000},
	{"site.run", "length", "ft", "m", 1, 5000},
	{"site.generator", "power", "kVA", "kVA", 0.1, 10_000},
	{"site.air_flow", "flow", "cfm", "L/min", 0.1, 10_000},
	{"site.air_pressure", "pressure", "psi", "bar", 1, 1000},
	{"site.vehicle.weight", "mass", "lb", "kg", 100, 200_000},
	{"site.vehicle.height", "length", "in", "mm", 24, 240},
	{"haul.truck.rated", "mass", "lb", "kg", 100, 200_000},
	{"haul.truck.empty", "mass", "lb", "kg", 100, 200_000},
	{"haul.truck.people", "mass", "lb", "kg", 1, 20_000},
	{"haul.truck.tow", "mass", "lb", "kg", 100, 200_000},
	{"haul.trailer.rated", "mass", "lb", "kg", 100, 200_000},
	{"haul.trailer.empty", "mass", "lb", "kg", 50, 100_000},
	{"haul.trailer.deck", "length", "ft", "m", 2, 100},
	{"haul.trailer.tongue", "mass", "lb", "kg", 1, 20_000},
	{"haul.trailer.axle", "length", "ft", "m", 2, 100},
	{"haul.lifting", "mass", "lb", "kg", 50, 500_000},
}

// Floors a shop may have, with what is shown.
var Floors = []Choice{{"concrete", "Concrete"}, {"wood", "Wood"}, {"asphalt", "Asphalt"}}

const (
	mostTieDowns          = 100
	mostPerDistance Money = 1000_00
	leastFront            = 10_00
	mostFront             = 90_00
)

// checkMeasure refuses a size of the wrong family, and one that cannot be real.
func checkMeasure(field string, q *Quantity, m *Measure) error {
	if q == nil {
		return nil
	}
	if err := checkQuantity(field, q); err != nil {
		return err
	}
	x, err := unit.Convert(q.N, q.Unit, m.Unit)
	if err != nil {
		return refuse(field+".unit", say.Later("one of %s", strings.Join(unit.Units(m.Dimension), ", ")), "%.20q is no unit of %s", q.Unit, say.ByKey(m.Dimension))
	}
	if !(x >= m.Low && x <= m.High) {
		return refuse(field, say.Later("%s to %s", Quantity{m.Low, m.Unit}, Quantity{m.High, m.Unit}), "%s cannot be", *q)
	}
	return nil
}

// places of the measures in a file, by how their fields begin.
var placesOf = map[string]string{"listing": "listing", "site": "shop.site", "haul": "shop.haulage"}

// checkMeasures checks the told ones whose fields begin with a word.
func checkMeasures(word string, told map[string]*Quantity) error {
	for i := range Measures {
		m := &Measures[i]
		if head, rest, _ := strings.Cut(m.Field, "."); head == word {
			if err := checkMeasure(placesOf[word]+"."+rest, told[rest], m); err != nil {
				return err
			}
		}
	}
	return nil
}

func checkPhases(field string, n int) error {
	if n != 0 && n != 1 && n != 3 {
		return refuse(field, "1 or 3, or nothing when not known", "%d is no number of phases", n)
	}
	return nil
}

// checkPlate refuses sizes and supplies of the listing that cannot be.
func (l *Listing) checkPlate() error {
	if err := checkMeasures("listing", map[string]*Quantity{
		"weight": l.Weight, "length": l.Length, "width": l.Width, "height": l.Height, "power": l.Power, "voltage": l.Voltage, "current": l.Current,
	}); err != nil {
		return err
	}
	return checkPhases("listing.phases", l.Phases)
}

func (s *Site) check() error {
	if s == nil {
		return nil
	}
	told := map[string]*Quantity{
		"ceiling": s.Ceiling, "door_width": s.DoorWidth, "door_height": s.DoorHeight, "floor_length": s.FloorLength, "floor_width": s.FloorWidth,
		"slab": s.Slab, "slab_strength": s.SlabStrength, "voltage": s.Voltage, "current": s.Current, "circuit": s.Circuit, "run": s.Run,
		"generator": s.Generator, "air_flow": s.AirFlow, "air_pressure": s.AirPressure,
	}
	if v := s.Vehicle; v != nil {
		told["vehicle.weight"], told["vehicle.height"] = v.Weight, v.Height
	}
	if err := checkMeasures("site", told); err != nil {
		return err
	}
	if err := oneOf("shop.site.floor", s.Floor, Floors); err != nil {
		return err
	}
	if err := checkPhases("shop.site.phases", s.Phases); err != nil {
		return err
	}
	v := s.Vehicle
	if v == nil {
		return nil
	}
	if v.Front != 0 && (v.Front < leastFront || v.Front > mostFront) {
		return refuse("shop.site.vehicle.front", "10 to 90 % (1000 to 9000), or nothing when not known", "%s of the weight on the front axle cannot be", basisPoints(v.Front))
	}
	return checkText("shop.site.vehicle.title", v.Title, 300)
}

func (h *Haulage) check() error {
	if h == nil {
		return nil
	}
	if h.PerDistance < 0 || h.PerDistance > mostPerDistance {
		return refuse("shop.haulage.per_distance", say.Later("0 to %s a mile or kilometre", exactly(mostPerDistance)), "%s is no cost of one", exactly(h.PerDistance))
	}
	told := map[string]*Quantity{"lifting": h.Lifting}
	t, r := h.Truck, h.Trailer
	if t != nil {
		told["truck.rated"], told["truck.empty"], told["truck.people"], told["truck.tow"] = t.Rated, t.Empty, t.People, t.Tow
	}
	if r != nil {
		told["trailer.rated"], told["trailer.empty"], told["trailer.deck"], told["trailer.tongue"], told["trailer.axle"] = r.Rated, r.Empty, r.Deck, r.Tongue, r.Axle
	}
	if err := checkMeasures("haul", told); err != nil {
		return err
	}
	if t != nil && t.Rated != nil && t.Empty != nil && sizeIn(t.Empty, "lb") >= sizeIn(t.Rated, "lb") {
		return refuse("shop.haulage.truck.empty", say.Later("less than the rated weight on its plate, %s", *t.Rated), "empty it cannot weigh %s", *t.Empty)
	}
	if r != nil && r.Rated != nil && r.Empty != nil && sizeIn(r.Empty, "lb") >= sizeIn(r.Rated, "lb") {
		return refuse("shop.haulage.trailer.empty", say.Later("less than the rated weight on its plate, %s", *r.Rated), "empty it cannot weigh %s", *r.Empty)
	}
	return h.checkTieDowns()
}

func (h *Haulage) checkTieDowns() error {
	kinds := TieDownKinds()
	for _, kind := range sortedKeys(h.TieDowns) {
		if !slices.Contains(kinds, kind) {
			return refuse("shop.haulage.tie_downs", say.Later("one of %s", strings.Join(kinds, ", ")), "%.40q is no kind of tie-down", kind)
		}
		if n := h.TieDowns[kind]; n < 0 || n > mostTieDowns {
			return refuse(step("shop.haulage.tie_downs", kind), say.Later("0 to %d", mostTieDowns), "%d is no number of tie-downs", n)
		}
	}
	return nil
}

// TieDownKinds are the kinds of tie-down whose working load limit is known.
var TieDownKinds = sync.OnceValue(func() []string {
	for _, d := range limit.All() {
		if d.Name == "tie-down-rating" {
			for _, q := range d.Quantities {
				if q.Name == "kind" {
					return q.Words
				}
			}
		}
	}
	return nil
})

// CheckShop refuses settings whose figures make no sense, with an *Error that names
// the field: what a screen asks before it keeps one of them.
func CheckShop(s Shop) error {
	f := File{Shop: s}
	return f.checkShop()
}

// CheckListing does so for what is told of a listing.
func CheckListing(l Listing) error {
	f := File{Listing: l}
	return f.checkListing()
}
