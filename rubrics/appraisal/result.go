package appraisal

import "asfound/rubrics/limit"

// Result is the whole judgement of one appraisal. It is never stored as truth:
// the same File gives the same bytes again.
type Result struct {
	Rubric   RubricRef `json:"rubric"`
	Currency string    `json:"currency"`
	// Notes are things the reader must know: an older rubric, findings that no
	// longer have a check, contradictions.
	Notes     []string      `json:"notes"`
	Verdict   Verdict       `json:"verdict"`
	Safety    Score         `json:"safety"`
	Condition Score         `json:"condition"`
	Progress  Progress      `json:"progress"`
	Checks    []CheckResult `json:"checks"`
	Estimate  Estimate      `json:"estimate"`
	Hidden    Hidden        `json:"hidden"`
	Landing   Estimate      `json:"landing"`
	Worth     Worth         `json:"worth"`
	Offer     Offer         `json:"offer"`
	Next      []Next        `json:"next"`
	// Fit holds it against the buyer's shop, Home is the plan for getting it there;
	// nil where the rubric does not tell the kind's size.
	Fit  *Fit  `json:"fit"`
	Home *Home `json:"home"`
	// Plan is what to do in the minutes asked about.
	Plan *Plan `json:"plan"`
	// Swings are the inputs that move the fair offer most, largest first.
	Swings []Swing `json:"swings"`
	// Why holds the derivation of every figure shown, by its id.
	Why map[string]Derivation `json:"why"`
}

// Verdict is what the findings allow; it never says safe.
type Verdict struct {
	// Code: do-not-use, repair-first, not-proven, no-stop-found.
	Code     string   `json:"code"`
	Title    string   `json:"title"`
	Sentence string   `json:"sentence"`
	Hazard   string   `json:"hazard"` // signal word of the most severe point
	Points   []Point  `json:"points"` // the checks behind it
	Always   []string `json:"always"` // said with every verdict
}

// Point names a check in a sentence.
type Point struct {
	Check  string `json:"check"`
	Title  string `json:"title"`
	Hazard string `json:"hazard"`
	Grade  *int   `json:"grade"`
}

// Score is 100*sum(w*g/4)/sum(w) over what was checked, with the band it could
// still move in: all unchecked at 0, all at 4. Tenths, rounded once.
type Score struct {
	Value    *float64 `json:"value"` // nil: nothing checked
	Low      float64  `json:"low"`
	High     float64  `json:"high"`
	Coverage float64  `json:"coverage"` // 0 to 100
	Checked  int      `json:"checked"`
	Applies  int      `json:"applies"`
}

// Progress of the walkaround.
type Progress struct {
	Applies     int     `json:"applies"`
	Graded      int     `json:"graded"`
	Skipped     int     `json:"skipped"`
	Open        int     `json:"open"`
	MinutesLeft float64 `json:"minutes_left"`
}

// CheckResult is a check as the walkaround shows it.
type CheckResult struct {
	Check   string        `json:"check"`
	Applies bool          `json:"applies"`
	Grade   *int          `json:"grade"` // after the limit, if one was measured
	Skipped string        `json:"skipped,omitempty"`
	Limit   *limit.Result `json:"limit,omitempty"`
	// Problem says why a measured value could not be judged.
	Problem string `json:"problem,omitempty"`
	Remedy  string `json:"remedy,omitempty"`
	// Held says why the check is not to be tried now: a danger point found before
	// stands against running or loading it.
	Held string `json:"held,omitempty"`
	// Chance that an unchecked point is bad, 0 to 1.
	Chance float64 `json:"chance,omitempty"`
}

// Estimate is a sum of lines with its spread.
type Estimate struct {
	Lines  []Line `json:"lines"`
	Mean   Money  `json:"mean"`
	SD     Money  `json:"sd"`
	Low    Money  `json:"low"`    // 10 % of the draws lie below
	Median Money  `json:"median"` // half
	High   Money  `json:"high"`   // 90 %
	Hours  Hours  `json:"hours"`
}

// Line is one remedy, preparation or landing cost.
type Line struct {
	ID    string `json:"id"`
	Kind  string `json:"kind"` // remedy, preparation, landing, scrap
	Title string `json:"title"`
	// Because lists the checks (or, for a preparation, the remedies) that need it.
	Because []string    `json:"because"`
	Way     string      `json:"way,omitempty"`
	Ways    []WayChoice `json:"ways,omitempty"`
	Parts   []PartLine  `json:"parts,omitempty"`
	Hours   Hours       `json:"hours"`
	Rate    string      `json:"rate,omitempty"`
	PerHour Money       `json:"per_hour,omitempty"`
	Minutes float64     `json:"minutes,omitempty"` // machining, of a make way
	Cost    Range       `json:"cost"`
	Mean    Money       `json:"mean"`
	SD      Money       `json:"sd"`
	Caution string      `json:"caution,omitempty"`
	Stays   bool        `json:"stays,omitempty"`
	Own     bool        `json:"own,omitempty"` // the user's own figure
	Off     bool        `json:"off,omitempty"` // left out by the user, or by the fit with the shop
	// Says tells why the fit with the shop or the way home counts the line so.
	Says string `json:"says,omitempty"`
}

// WayChoice is a way offered for a remedy, with what it would cost alone.
type WayChoice struct {
	ID    string `json:"id"`
	Kind  string `json:"kind"`
	Title string `json:"title"`
	Mean  Money  `json:"mean"`
	Hours Hours  `json:"hours"`
}

// PartLine is a part of a line at its price.
type PartLine struct {
	Part     string  `json:"part"`
	Title    string  `json:"title"`
	Unit     string  `json:"unit"`
	Quantity float64 `json:"quantity"`
	Price    Range   `json:"price"`
	Own      bool    `json:"own"` // false: the example price
}

// Hidden is the allowance for what was not checked.
type Hidden struct {
	// Care is the probability of well kept, ordinary, neglected, in 1/10,000.
	Care  [3]int `json:"care"`
	Prior [3]int `json:"prior"`
	// From says where the prior came from, in words.
	From     string  `json:"from"`
	Points   []Doubt `json:"points"`
	Mean     Money   `json:"mean"`
	High     Money   `json:"high"` // 90 %
	Sentence string  `json:"sentence"`
}

// Doubt is one unchecked point in money.
type Doubt struct {
	Check  string  `json:"check"`
	Title  string  `json:"title"`
	Chance float64 `json:"chance"` // 0 to 1, four places
	Remedy string  `json:"remedy"` // remedy id, "scrap" or ""
	Mean   Money   `json:"mean"`   // expected cost
}

// Worth is what the same equipment would bring sound and complete.
type Worth struct {
	Known bool `json:"known"`
	// Missing says what is needed when Known is false.
	Missing  string    `json:"missing,omitempty"`
	Centre   Money     `json:"centre"`
	Low      Money     `json:"low"`  // 10 %
	High     Money     `json:"high"` // 90 %
	LogSD    float64   `json:"log_sd"`
	InPlace  Money     `json:"in_place"` // centre plus what stays of landing
	Widened  bool      `json:"widened"`
	Sentence string    `json:"sentence"`
	Sales    *Approach `json:"sales,omitempty"`
	Cost     *Approach `json:"cost,omitempty"`
	// Rates are the adjustments of the comparables, with where each comes from.
	Rates []AdjustRate    `json:"rates"`
	Rows  []ComparableRow `json:"rows"`
}

// AdjustRate is one kind of adjustment of the comparables.
type AdjustRate struct {
	Cause string `json:"cause"` // asked, time, age, hours, capacity, condition, complete, maker
	Title string `json:"title"`
	Off   bool   `json:"off"`
	// Says is the rate in words: what a difference does to the price.
	Says string `json:"says"`
	// FromData is the share of the certainty that the comparables brought, 0 to 1;
	// the rest is the stated prior.
	FromData float64 `json:"from_data"`
	// Used tells whether any comparable needed it.
	Used bool `json:"used"`
}

// Approach is one of the two ways to worth.
type Approach struct {
	Centre Money   `json:"centre"`
	Low    Money   `json:"low"`  // 10 %
	High   Money   `json:"high"` // 90 %
	LogSD  float64 `json:"log_sd"`
	Weight float64 `json:"weight"` // share in the reconciled centre
	// Count of comparables used, copies once; 0 for the cost approach.
	Count int      `json:"count"`
	Steps []string `json:"steps"` // the derivation, in words
}

// ComparableRow shows one comparable adjusted to the listing.
type ComparableRow struct {
	ID          string       `json:"id"`
	Title       string       `json:"title"`
	Price       Money        `json:"price"`
	Adjusted    Money        `json:"adjusted"`
	Weight      float64      `json:"weight"` // share of all comparables, 0 to 1
	Used        bool         `json:"used"`
	Adjustments []Adjustment `json:"adjustments"`
	// Outlier is set where it stands so far apart that it lost weight.
	Outlier bool `json:"outlier,omitempty"`
	// Same is the id of the comparable it repeats; the copies count once together.
	Same string `json:"same,omitempty"`
	Note string `json:"note,omitempty"`
}

// Adjustment is one factor on a comparable's price.
type Adjustment struct {
	Cause  string  `json:"cause"`
	Title  string  `json:"title"`
	Factor float64 `json:"factor"`
}

// Offer is what to pay.
type Offer struct {
	Known bool `json:"known"`
	// Missing says what is needed when Known is false.
	Missing  string       `json:"missing,omitempty"`
	Curve    []CurvePoint `json:"curve"`
	Opening  PricePoint   `json:"opening"`
	Fair     PricePoint   `json:"fair"`
	WalkAway PricePoint   `json:"walk_away"`
	// At is the asking price (or the price asked about) on the curve.
	At        *PricePoint `json:"at"`
	AllIn     *AllIn      `json:"all_in"` // at that price
	Ahead     *Money      `json:"ahead"`  // mean of coming out ahead at that price
	Waterfall []Step      `json:"waterfall"`
	Sentences []string    `json:"sentences"`
	// Step is what the three prices are rounded down to, and Error how far the
	// drawing may have moved the fair offer (one standard error); Error is below Step.
	Step  Money `json:"step"`
	Error Money `json:"error"`
}

// CurvePoint is the chance of coming out ahead at a price.
type CurvePoint struct {
	Price Money   `json:"price"`
	Odds  float64 `json:"odds"` // 0 to 1
}

// PricePoint is a named point of the curve. Price 0 means: not even as a gift
// at these odds.
type PricePoint struct {
	Price Money   `json:"price"`
	Odds  float64 `json:"odds"`
	None  bool    `json:"none"`
}

// AllIn is price plus everything until the equipment works, means.
type AllIn struct {
	Price   Money `json:"price"`
	Tax     Money `json:"tax"`
	Fees    Money `json:"fees"`
	Landing Money `json:"landing"`
	Repair  Money `json:"repair"`
	Hidden  Money `json:"hidden"`
	Total   Money `json:"total"`
}

// Step is one cause in the waterfall from worth to the fair offer.
type Step struct {
	Cause  string     `json:"cause"`
	Title  string     `json:"title"`
	Amount Money      `json:"amount"` // signed; the first and last are totals
	Total  Money      `json:"total"`  // running
	Lines  []StepLine `json:"lines"`
}

// StepLine is what a step opens onto.
type StepLine struct {
	Title  string `json:"title"`
	Amount Money  `json:"amount"`
}

// Next is an unchecked point worth doing.
type Next struct {
	Check   string  `json:"check"`
	Title   string  `json:"title"`
	Hazard  string  `json:"hazard"`
	Minutes float64 `json:"minutes"`
	Gain    Money   `json:"gain"` // expected value of sample information
	PerMin  Money   `json:"per_minute"`
	Must    bool    `json:"must"` // a danger check: first whatever it is worth
	// Held says why it is not to be tried now; such points come last.
	Held string `json:"held,omitempty"`

	answers answered
}

// Plan is a short list that fits into the time left, in walking order.
type Plan struct {
	Minutes  float64     `json:"minutes"` // asked about
	Used     float64     `json:"used"`
	Points   []PlanPoint `json:"points"`
	Gain     Money       `json:"gain"` // of knowing them all before deciding
	Sentence string      `json:"sentence"`
}

// PlanPoint is one check of a plan.
type PlanPoint struct {
	Check   string  `json:"check"`
	Title   string  `json:"title"`
	Hazard  string  `json:"hazard"`
	Minutes float64 `json:"minutes"`
	Must    bool    `json:"must"`
}

// Swing is what the fair offer would be if one input were known to lie low or
// high (its 10 % and 90 %), all else as uncertain as before.
type Swing struct {
	Input string `json:"input"`
	Title string `json:"title"`
	// Low and High are fair offers, at the input's low and high value; negative
	// where even a gift would not do.
	Low    Money  `json:"low"`
	High   Money  `json:"high"`
	LowAt  string `json:"low_at"` // the input's values, in words
	HighAt string `json:"high_at"`
	// Sentence says it in words.
	Sentence string `json:"sentence"`
}

// Derivation tells how a figure came about, down to the inputs.
type Derivation struct {
	Title  string           `json:"title"`
	Figure string           `json:"figure"` // as shown
	Steps  []DerivationStep `json:"steps"`
}

// DerivationStep is one sentence of a derivation.
type DerivationStep struct {
	Text string `json:"text"`
	// Of is the id of the figure it rests on, which has a derivation of its own.
	Of string `json:"of,omitempty"`
}
