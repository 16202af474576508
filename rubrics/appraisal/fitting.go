package appraisal

import "asfound/rubrics/limit"

// Findings of a point of fit or of the way home.
const (
	Fits     = "fits"
	WithWork = "with-work"
	DoesNot  = "does-not"
	NotKnown = "not-known"
)

// Fit holds the listing against the buyer's shop.
type Fit struct {
	// Finding: fits, with-work, does-not or not-known; the worst of the points.
	Finding  string     `json:"finding"`
	Sentence string     `json:"sentence"`
	Points   []FitPoint `json:"points"`
	Cautions []string   `json:"cautions"`
}

// FitPoint is one thing the shop and the equipment must agree on.
type FitPoint struct {
	ID      string `json:"id"` // ceiling, door, slab, floor, circuit, converter, transformer, generator, air, arms
	Title   string `json:"title"`
	Finding string `json:"finding"`
	Text    string `json:"text"`
	// Landing is the landing line this point brings, "" for none.
	Landing string `json:"landing,omitempty"`
	// Limit is the figure behind it with its source.
	Limit *limit.Result `json:"limit,omitempty"`
	// Missing lists fields that would settle it: site.ceiling, listing.height.
	Missing []string `json:"missing,omitempty"`
}

// Home is the plan for getting it home.
type Home struct {
	// Finding: the worst of the points, as of Fit.
	Finding  string      `json:"finding"`
	Sentence string      `json:"sentence"`
	Weight   Span        `json:"weight"` // lb
	Told     bool        `json:"told"`   // the listing tells the weight; false: the kind's usual one
	Pieces   []HomePiece `json:"pieces"`
	// Points: payload, trailer, tongue, deck, tie-downs, lifting.
	Points   []HomePoint `json:"points"`
	Gear     []HomeGear  `json:"gear"`
	Steps    []string    `json:"steps"` // in order, each a sentence
	Cautions []string    `json:"cautions"`
}

// HomePiece is one kind of piece with its weight.
type HomePiece struct {
	ID       string `json:"id"`
	Title    string `json:"title"`
	Count    int    `json:"count"`
	Weight   Span   `json:"weight"` // lb, of one
	Size     string `json:"size"`   // weight and size of one in the shop's units, in words
	TopHeavy bool   `json:"top_heavy,omitempty"`
	Handling string `json:"handling"`
}

// HomePoint is one thing that must be right on the road.
type HomePoint struct {
	ID      string        `json:"id"`
	Title   string        `json:"title"`
	Finding string        `json:"finding"` // fits, with-work (hire it), does-not, not-known
	Text    string        `json:"text"`
	Limit   *limit.Result `json:"limit,omitempty"`
	Landing string        `json:"landing,omitempty"`
	Missing []string      `json:"missing,omitempty"`
}

// HomeGear is what to take along, and whose it is.
type HomeGear struct {
	Title string `json:"title"`
	Count int    `json:"count"`
	Own   bool   `json:"own"`
	Part  string `json:"part,omitempty"` // of the price book, where it is bought or hired
}
