package appraisal

// Site is the buyer's own shop, as far as he has told it.
type Site struct {
	Ceiling      *Quantity `json:"ceiling,omitempty"` // clear height at the spot
	DoorWidth    *Quantity `json:"door_width,omitempty"`
	DoorHeight   *Quantity `json:"door_height,omitempty"`
	FloorLength  *Quantity `json:"floor_length,omitempty"` // free floor at the spot
	FloorWidth   *Quantity `json:"floor_width,omitempty"`
	Floor        string    `json:"floor,omitempty"` // concrete, wood, asphalt
	Slab         *Quantity `json:"slab,omitempty"`  // thickness of the concrete
	SlabStrength *Quantity `json:"slab_strength,omitempty"`
	Voltage      *Quantity `json:"voltage,omitempty"`
	Phases       int       `json:"phases,omitempty"` // 1, 3; 0 not told
	// Current free in the panel for one more machine.
	Current *Quantity `json:"current,omitempty"`
	// Circuit is the breaker of a circuit that ends at the spot already.
	Circuit *Quantity `json:"circuit,omitempty"`
	// Run is the one-way length of cable from the panel to the spot.
	Run         *Quantity `json:"run,omitempty"`
	Generator   *Quantity `json:"generator,omitempty"` // rated power, where a generator feeds the shop
	AirFlow     *Quantity `json:"air_flow,omitempty"`
	AirPressure *Quantity `json:"air_pressure,omitempty"`
	Vehicle     *Vehicle  `json:"vehicle,omitempty"`
}

// Vehicle is the heaviest or tallest one a lift is to carry.
type Vehicle struct {
	Title  string    `json:"title,omitempty"`
	Weight *Quantity `json:"weight,omitempty"`
	Height *Quantity `json:"height,omitempty"`
	// Front is the share of the weight on the front axle, basis points; 0 not told.
	Front int `json:"front,omitempty"`
}

// Haulage is what the buyer moves equipment with.
type Haulage struct {
	Truck   *Truck   `json:"truck,omitempty"`
	Trailer *Trailer `json:"trailer,omitempty"`
	// PerDistance is what a mile (or kilometre, by the shop's units) of his own truck costs.
	PerDistance Money `json:"per_distance,omitempty"`
	// Lifting is the rated load of an own forklift, crane or hoist.
	Lifting *Quantity `json:"lifting,omitempty"`
	// TieDowns of his own, by the kinds the limit tie-down-rating knows.
	TieDowns map[string]int `json:"tie_downs,omitempty"`
}

// Truck by its plates.
type Truck struct {
	Rated  *Quantity `json:"rated,omitempty"`  // GVWR
	Empty  *Quantity `json:"empty,omitempty"`  // curb weight
	People *Quantity `json:"people,omitempty"` // people and tools
	Tow    *Quantity `json:"tow,omitempty"`    // rated trailer weight
}

// Trailer by its plates and tape.
type Trailer struct {
	Rated  *Quantity `json:"rated,omitempty"` // GVWR
	Empty  *Quantity `json:"empty,omitempty"`
	Deck   *Quantity `json:"deck,omitempty"`   // length of the deck
	Tongue *Quantity `json:"tongue,omitempty"` // empty tongue weight
	// Axle is the distance from coupler to axle centre.
	Axle *Quantity `json:"axle,omitempty"`
}
