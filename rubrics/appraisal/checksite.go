package appraisal

import (
	"fmt"
	"slices"
	"strings"

	"asfound/rubrics/limit"
	"asfound/rubrics/unit"
)

// A region's prices are held between a quarter and four times the examples.
const leastRegion, mostRegion = 25_00, 400_00

// bounds are the least and most a size can really be; what lies outside is a slip.
type bounds struct {
	dimension, unit string
	low, high       float64
}

var (
	machineWeight  = bounds{"mass", "lb", 1, 500_000}
	machineSize    = bounds{"length", "in", 1, 2400}
	motorPower     = bounds{"power", "hp", 0.01, 2000}
	supplyVoltage  = bounds{"voltage", "V", 6, 15_000}
	supplyCurrent  = bounds{"current", "A", 0.1, 5000}
	ceilingHeight  = bounds{"length", "in", 48, 1200}
	doorSize       = bounds{"length", "in", 12, 1200}
	floorSize      = bounds{"length", "in", 12, 12_000}
	slabThickness  = bounds{"length", "in", 0.5, 60}
	slabStrength   = bounds{"pressure", "psi", 100, 20_000}
	cableRun       = bounds{"length", "ft", 1, 5000}
	generatorSize  = bounds{"power", "kW", 0.1, 10_000}
	airFlow        = bounds{"flow", "cfm", 0.1, 10_000}
	airPressure    = bounds{"pressure", "psi", 1, 1000}
	vehicleWeight  = bounds{"mass", "lb", 100, 200_000}
	vehicleHeight  = bounds{"length", "in", 24, 240}
	wheelbase      = bounds{"length", "in", 24, 600}
	plateWeight    = bounds{"mass", "lb", 100, 200_000}
	lightWeight    = bounds{"mass", "lb", 1, 50_000}
	trailerLength  = bounds{"length", "in", 24, 1200}
	liftingWeight  = bounds{"mass", "lb", 50, 500_000}
	supplySystem   = bounds{"voltage", "V", 90, 1000}
	mostTieDowns   = 100
	mostPerTrip    = Money(1000_00)
	leastFront     = 10_00
	mostFront      = 90_00
	floorMaterials = []string{"concrete", "wood", "asphalt"}
)

// checkMeasure refuses a size of the wrong family, and one that cannot be real.
func checkMeasure(field string, q *Quantity, m bounds) error {
	if q == nil {
		return nil
	}
	if err := checkQuantity(field, q); err != nil {
		return err
	}
	x, err := unit.Convert(q.N, q.Unit, m.unit)
	if err != nil {
		return refuse(field+".unit", "one of "+strings.Join(unit.Units(m.dimension), ", "), "%.20q is no unit of %s", q.Unit, m.dimension)
	}
	if !(x >= m.low && x <= m.high) {
		return refuse(field, fmt.Sprintf("%s to %s", written(Quantity{m.low, m.unit}), written(Quantity{m.high, m.unit})), "%s cannot be", written(*q))
	}
	return nil
}

// sizeField is a field with its bounds.
type sizeField struct {
	field string
	q     *Quantity
	bounds
}

func checkMeasures(list []sizeField) error {
	for _, m := range list {
		if err := checkMeasure(m.field, m.q, m.bounds); err != nil {
			return err
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
	if err := checkMeasures([]sizeField{
		{"listing.weight", l.Weight, machineWeight}, {"listing.length", l.Length, machineSize}, {"listing.width", l.Width, machineSize},
		{"listing.height", l.Height, machineSize}, {"listing.power", l.Power, motorPower}, {"listing.voltage", l.Voltage, supplyVoltage},
		{"listing.current", l.Current, supplyCurrent},
	}); err != nil {
		return err
	}
	return checkPhases("listing.phases", l.Phases)
}

func (s *Site) check() error {
	if s == nil {
		return nil
	}
	if err := checkMeasures([]sizeField{
		{"shop.site.ceiling", s.Ceiling, ceilingHeight}, {"shop.site.door_width", s.DoorWidth, doorSize}, {"shop.site.door_height", s.DoorHeight, doorSize},
		{"shop.site.floor_length", s.FloorLength, floorSize}, {"shop.site.floor_width", s.FloorWidth, floorSize},
		{"shop.site.slab", s.Slab, slabThickness}, {"shop.site.slab_strength", s.SlabStrength, slabStrength},
		{"shop.site.voltage", s.Voltage, supplySystem}, {"shop.site.current", s.Current, supplyCurrent}, {"shop.site.circuit", s.Circuit, supplyCurrent},
		{"shop.site.run", s.Run, cableRun}, {"shop.site.generator", s.Generator, generatorSize},
		{"shop.site.air_flow", s.AirFlow, airFlow}, {"shop.site.air_pressure", s.AirPressure, airPressure},
	}); err != nil {
		return err
	}
	if s.Floor != "" && !slices.Contains(floorMaterials, s.Floor) {
		return refuse("shop.site.floor", fmt.Sprintf("one of %v", floorMaterials), "%.40q is no floor kept here", s.Floor)
	}
	if err := checkPhases("shop.site.phases", s.Phases); err != nil {
		return err
	}
	return s.Vehicle.check()
}

func (v *Vehicle) check() error {
	if v == nil {
		return nil
	}
	if v.Front != 0 && (v.Front < leastFront || v.Front > mostFront) {
		return refuse("shop.site.vehicle.front", "10 to 90 % (1000 to 9000), or nothing when not known", "%s of the weight on the front axle cannot be", basisPoints(v.Front))
	}
	if err := checkText("shop.site.vehicle.title", v.Title, 300); err != nil {
		return err
	}
	return checkMeasures([]sizeField{
		{"shop.site.vehicle.weight", v.Weight, vehicleWeight}, {"shop.site.vehicle.height", v.Height, vehicleHeight}, {"shop.site.vehicle.wheelbase", v.Wheelbase, wheelbase},
	})
}

func (h *Haulage) check() error {
	if h == nil {
		return nil
	}
	if h.PerDistance < 0 || h.PerDistance > mostPerTrip {
		return refuse("shop.haulage.per_distance", "0 to "+whole(mostPerTrip)+" a mile or kilometre", "%s is no cost of one", exact(h.PerDistance))
	}
	list := []sizeField{{"shop.haulage.lifting", h.Lifting, liftingWeight}}
	if t := h.Truck; t != nil {
		list = append(list, sizeField{"shop.haulage.truck.rated", t.Rated, plateWeight}, sizeField{"shop.haulage.truck.empty", t.Empty, plateWeight},
			sizeField{"shop.haulage.truck.people", t.People, lightWeight}, sizeField{"shop.haulage.truck.tow", t.Tow, plateWeight})
	}
	if t := h.Trailer; t != nil {
		list = append(list, sizeField{"shop.haulage.trailer.rated", t.Rated, plateWeight}, sizeField{"shop.haulage.trailer.empty", t.Empty, plateWeight},
			sizeField{"shop.haulage.trailer.deck", t.Deck, trailerLength}, sizeField{"shop.haulage.trailer.tongue", t.Tongue, lightWeight},
			sizeField{"shop.haulage.trailer.axle", t.Axle, trailerLength})
	}
	if err := checkMeasures(list); err != nil {
		return err
	}
	if t := h.Truck; t != nil && t.Rated != nil && t.Empty != nil && sizeIn(t.Empty, "lb") >= sizeIn(t.Rated, "lb") {
		return refuse("shop.haulage.truck.empty", "less than the rated weight on its plate, "+written(*t.Rated), "empty it cannot weigh %s", written(*t.Empty))
	}
	if t := h.Trailer; t != nil && t.Rated != nil && t.Empty != nil && sizeIn(t.Empty, "lb") >= sizeIn(t.Rated, "lb") {
		return refuse("shop.haulage.trailer.empty", "less than the rated weight on its plate, "+written(*t.Rated), "empty it cannot weigh %s", written(*t.Empty))
	}
	return h.checkTieDowns()
}

func (h *Haulage) checkTieDowns() error {
	kinds := TieDownKinds()
	for _, kind := range sortedKeys(h.TieDowns) {
		if !slices.Contains(kinds, kind) {
			return refuse("shop.haulage.tie_downs", "one of "+strings.Join(kinds, ", "), "%.40q is no kind of tie-down", kind)
		}
		if n := h.TieDowns[kind]; n < 0 || n > mostTieDowns {
			return refuse(step("shop.haulage.tie_downs", kind), fmt.Sprintf("0 to %d", mostTieDowns), "%d is no number of tie-downs", n)
		}
	}
	return nil
}

// TieDownKinds are the kinds of tie-down whose working load limit is known.
func TieDownKinds() []string {
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
}
