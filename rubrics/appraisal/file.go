package appraisal

// FileVersion is the version of the appraisal file this engine writes.
const FileVersion = 1

// FileFormat marks an appraisal file.
const FileFormat = "asfound-appraisal"

// File is one appraisal with all that its judgement needs, so that the same
// file gives the same result anywhere.
type File struct {
	Format  string    `json:"format"`
	Version int       `json:"version"`
	Rubric  RubricRef `json:"rubric"`
	// MadeWith is the rubric itself, where it is an own one or another version than
	// the program carries: an appraisal is judged by what it was made with.
	MadeWith *Rubric `json:"made_with,omitempty"`
	// Parts are entries of the user's own in the price book.
	Parts []Part `json:"parts,omitempty"`
	// Date of the appraisal, YYYY-MM-DD: the engine has no clock.
	Date    string            `json:"date"`
	Listing Listing           `json:"listing"`
	Facts   map[string]string `json:"facts,omitempty"`
	// Asked holds the questions put to the seller, by id, with his answer; "" where
	// it is only ticked.
	Asked       map[string]string        `json:"asked,omitempty"`
	Findings    map[string]Finding       `json:"findings,omitempty"`
	Ways        map[string]string        `json:"ways,omitempty"`   // remedy id to way id
	Prices      map[string]Range         `json:"prices,omitempty"` // part id to own price
	Landing     map[string]LandingChoice `json:"landing,omitempty"`
	Comparables []Comparable             `json:"comparables,omitempty"`
	// Adjust switches single adjustments of the comparables off, by cause.
	Adjust   map[string]AdjustChoice `json:"adjust,omitempty"`
	NewPrice *NewPrice               `json:"new_price,omitempty"`
	// Lost is worth that age does not explain.
	Lost *Lost `json:"lost,omitempty"`
	// Care is the buyer's own belief, before looking, of how it was kept. It
	// replaces the rubric's.
	Care *CareBelief `json:"care,omitempty"`
	Shop Shop        `json:"shop"`
}

// RubricRef names the rubric an appraisal was made with.
type RubricRef struct {
	ID      string `json:"id"`
	Version int    `json:"version"`
}

// Listing is a piece of equipment offered for sale.
type Listing struct {
	Title    string    `json:"title"`
	Maker    string    `json:"maker,omitempty"`
	Model    string    `json:"model,omitempty"`
	Serial   string    `json:"serial,omitempty"`
	Made     int       `json:"made,omitempty"` // year of manufacture, 0 unknown
	Capacity *Quantity `json:"capacity,omitempty"`
	Hours    float64   `json:"hours,omitempty"` // run so far, 0 unknown
	// EffectiveAge in years, by condition and rebuilding, where it is not the age.
	EffectiveAge float64 `json:"effective_age,omitempty"`
	// Size and supply by its plate or the seller's word.
	Weight   *Quantity `json:"weight,omitempty"`
	Length   *Quantity `json:"length,omitempty"`
	Width    *Quantity `json:"width,omitempty"`
	Height   *Quantity `json:"height,omitempty"`
	Power    *Quantity `json:"power,omitempty"` // of the main motor
	Voltage  *Quantity `json:"voltage,omitempty"`
	Phases   int       `json:"phases,omitempty"` // 1, 3; 0 not told
	Current  *Quantity `json:"current,omitempty"`
	Place    string    `json:"place,omitempty"`
	Distance *Quantity `json:"distance,omitempty"` // one way, mi or km
	Asking   *Money    `json:"asking,omitempty"`
	Seller   string    `json:"seller,omitempty"` // private, dealer, auction, closing
	Seen     string    `json:"seen,omitempty"`   // where it was found
	Text     string    `json:"text,omitempty"`   // the listing's own text
	Note     string    `json:"note,omitempty"`
	Photos   []Photo   `json:"photos,omitempty"`
}

// Photo names a picture by its content.
type Photo struct {
	Hash string `json:"hash"` // SHA-256, lower-case hex
	At   string `json:"at,omitempty"`
	// Marks are drawn over the picture and are no part of it.
	Marks []PhotoMark `json:"marks,omitempty"`
}

// PhotoMark is one mark over a photo. Its ends are shares of the picture's width
// and height, from the upper left.
type PhotoMark struct {
	ID   string     `json:"id"`
	Kind string     `json:"kind"` // arrow, circle, text, scale, measure
	From [2]float64 `json:"from"`
	To   [2]float64 `json:"to"` // of an arrow its head, of a text its place
	// Label is the user's own words.
	Label string `json:"label,omitempty"`
	// Length is what the user knows a scale to be long. What is measured by it is
	// worked out and never kept.
	Length *Quantity `json:"length,omitempty"`
}

// PhotoPair is two photos of the same point, by hash.
type PhotoPair struct {
	Before string `json:"before"`
	After  string `json:"after"`
}

// Finding is what was found at one check.
type Finding struct {
	Grade    *int                `json:"grade,omitempty"`   // 4 as new .. 0 failed
	Skipped  string              `json:"skipped,omitempty"` // no-power, no-access, seller-declined, no-time, no-instrument
	Measured map[string]Quantity `json:"measured,omitempty"`
	// Words holds measured quantities that are words (such as where=running).
	Words map[string]string `json:"words,omitempty"`
	// Maker is the maker's own limit, which replaces the published one.
	Maker  *Quantity `json:"maker,omitempty"`
	Note   string    `json:"note,omitempty"`
	Photos []Photo   `json:"photos,omitempty"`
	// Pairs are photos of this finding that stand side by side.
	Pairs []PhotoPair `json:"pairs,omitempty"`
}

// LandingChoice is the user's own figure for a landing line, or off.
type LandingChoice struct {
	Off  bool   `json:"off,omitempty"`
	Cost *Range `json:"cost,omitempty"`
}

// Comparable is another sale or offer of the same kind.
type Comparable struct {
	ID        string    `json:"id"`
	Title     string    `json:"title"`
	Maker     string    `json:"maker,omitempty"`
	Price     Money     `json:"price"`
	Basis     string    `json:"basis"` // asked, sold
	Date      string    `json:"date,omitempty"`
	Made      int       `json:"made,omitempty"`
	Capacity  *Quantity `json:"capacity,omitempty"`
	Hours     float64   `json:"hours,omitempty"`
	Condition string    `json:"condition,omitempty"` // as_new, sound, worn, bad
	Complete  string    `json:"complete,omitempty"`  // complete, bare, missing
	Place     string    `json:"place,omitempty"`
	Distance  *Quantity `json:"distance,omitempty"`
	Seen      string    `json:"seen,omitempty"`
	Note      string    `json:"note,omitempty"`
	Off       bool      `json:"off,omitempty"`
}

// AdjustChoice is what the user wants of one adjustment.
type AdjustChoice struct {
	Off bool `json:"off,omitempty"`
}

// CareBelief is the probability of each class of keeping, basis points; they sum
// to 10,000, and none is below 100: what is ruled out beforehand, no finding
// could bring back.
type CareBelief struct {
	Well      int `json:"well"`
	Ordinary  int `json:"ordinary"`
	Neglected int `json:"neglected"`
}

// Lost is worth lost by more than age: functional (a better design, a missing
// feature, dear to run) and economic (nobody needs so many), in basis points,
// with the user's reasons.
type Lost struct {
	Functional    int    `json:"functional,omitempty"`
	FunctionalWhy string `json:"functional_why,omitempty"`
	Economic      int    `json:"economic,omitempty"`
	EconomicWhy   string `json:"economic_why,omitempty"`
	// Used and Rated output of such equipment, in one unit: economic loss by
	// inutility 1-(used/rated)^n, in place of Economic.
	Used  float64 `json:"used,omitempty"`
	Rated float64 `json:"rated,omitempty"`
}

// NewPrice is what the nearest equivalent costs new today.
type NewPrice struct {
	Price    Range     `json:"price"`
	Capacity *Quantity `json:"capacity,omitempty"`
	Seen     string    `json:"seen,omitempty"`
	// Index brings an older price to today's money.
	Index *Index `json:"index,omitempty"`
}

// Index is a published price index, at the time of the price and now.
type Index struct {
	Series string  `json:"series,omitempty"`
	Then   float64 `json:"then"`
	Now    float64 `json:"now"`
}

// Shop is the buyer's own settings.
type Shop struct {
	Currency string           `json:"currency"` // ISO 4217
	Units    string           `json:"units"`    // inch, metric
	Rates    map[string]Money `json:"rates"`    // an hour, by own, machine and trade
	Tax      int              `json:"tax"`      // basis points on the price
	Fees     Money            `json:"fees"`     // buyer's premium, transfer
	Odds     Odds             `json:"odds"`
	Overrun  Overrun          `json:"overrun"`
	// Kept is the part of staying installation work counted in worth in place,
	// basis points. All of it is the premise "fair market value, installed".
	Kept int `json:"kept"`
	// Weights of the criteria when listings are compared, by criterion; what is
	// not given has the default weight.
	Weights map[string]int `json:"weights,omitempty"`
	// Region multiplies the example prices and the price of hired work, basis
	// points; 0 is 10,000. Own prices and own rates stand as they are.
	Region int `json:"region,omitempty"`
	// Site is the shop the equipment is to stand in, Haulage what moves it there.
	Site    *Site    `json:"site,omitempty"`
	Haulage *Haulage `json:"haulage,omitempty"`
	// Day is how many hours of a working day the shop gives to bringing a bought
	// machine into service; 0 is the default.
	Day float64 `json:"day,omitempty"`
}

// Odds are the chances of coming out ahead behind the three prices, basis points.
type Odds struct {
	Opening  int `json:"opening"`
	Fair     int `json:"fair"`
	WalkAway int `json:"walk_away"`
}

// Overrun is the shared factor on all repair lines: mean and standard
// deviation, basis points.
type Overrun struct {
	Mean int `json:"mean"`
	SD   int `json:"sd"`
}
