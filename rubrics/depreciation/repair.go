package depreciation

import "asfound/rubrics/kernel"

// MachinesSource says where the repair figures are from and how far they go.
const MachinesSource = "ASABE D497.7 (2011, R2020), repair and maintenance; coefficients from memory, not held against the printed standard"

// Machine is one kind of farm machinery with a repair curve. Life is in hours;
// Total is what repair and maintenance sum to over it, in percent of the list
// price, as the table prints it.
type Machine struct {
	ID          string
	Title       string
	RF1, RF2    float64
	Life, Total float64
}

// Machines are those of ASABE D497.7 (2011, R2020), table 3, from memory. No
// machine of a shop is among them. The standard warns that actual repairs vary
// widely, so what a curve gives is a middle with wide bounds.
var Machines = []Machine{
	{"tractor-2wd", "Two-wheel-drive and stationary tractor", 0.007, 2.0, 12_000, 100},
	{"tractor-4wd", "Four-wheel-drive and crawler tractor", 0.003, 2.0, 16_000, 80},
	{"moldboard-plow", "Moldboard plow", 0.29, 1.8, 2000, 100},
	{"chisel-plow", "Chisel plow", 0.28, 1.4, 2000, 75},
	{"tandem-disk", "Tandem disk", 0.18, 1.7, 2000, 60},
	{"row-crop-planter", "Row-crop planter", 0.32, 2.1, 1500, 75},
	{"combine", "Self-propelled combine", 0.04, 2.1, 3000, 40},
	{"mower", "Mower", 0.46, 1.7, 2000, 150},
	{"rectangular-baler", "Rectangular baler", 0.23, 1.8, 2000, 80},
	{"large-round-baler", "Large round baler", 0.43, 1.8, 1500, 90},
	{"forage-harvester", "Self-propelled forage harvester", 0.03, 2.0, 4000, 50},
	{"fertilizer-spreader", "Fertilizer spreader", 0.63, 1.3, 1200, 80},
	{"boom-sprayer", "Boom sprayer", 0.41, 1.3, 1500, 70},
	{"wagon", "Wagon", 0.19, 1.3, 3000, 80},
}

// FindMachine is the machine of that id.
func FindMachine(id string) (Machine, bool) {
	for _, m := range Machines {
		if m.ID == id {
			return m, true
		}
	}
	return Machine{}, false
}

// RepairCost is what repair and maintenance have summed to at that many hours,
// RF1 price (hours / 1000)^RF2, price being today's list price of a new one.
// Beyond the machine's Life the curve is only drawn on.
func RepairCost(m Machine, price, hours float64) (float64, error) {
	return RepairBetween(m, price, 0, hours)
}

// RepairBetween is what repair and maintenance come to from one reading of the
// hour meter to a later one.
func RepairBetween(m Machine, price, from, to float64) (float64, error) {
	err := first(
		between("list price", price, 0, mostPrice, ""),
		between("hours", from, 0, mostHours, " hours"),
		between("hours", to, 0, mostHours, " hours"),
	)
	if err != nil {
		return 0, err
	}
	if to < from {
		return 0, refuse("hours", "the earlier reading first", "the meter goes from %g back to %g", from, to)
	}
	return float64(m.repaired(to)*price) - float64(m.repaired(from)*price), nil
}

// repaired is the accumulated share of the list price.
func (m Machine) repaired(hours float64) float64 {
	if hours == 0 {
		return 0 // no logarithm of 0
	}
	return float64(m.RF1 * kernel.Pow(hours/1000, m.RF2))
}
