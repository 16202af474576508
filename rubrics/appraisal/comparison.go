package appraisal

// Comparison is several listings side by side, drawn with the same random
// numbers, so that differences are differences of the equipment.
type Comparison struct {
	Currency string `json:"currency"`
	Sides    []Side `json:"sides"` // in the order given
	// Better[a][b] is the probability that a brings more than b, each at its price;
	// equal draws count half. nil where one of them cannot be priced or a is b.
	Better [][]*float64 `json:"better"`
	// Overtake[a][b] is the price of a at which it is as likely as not better than
	// b at its price; negative where not even a gift would do. nil where b cannot be
	// priced, the worth of a is not known, or a is b: a needs no price of its own.
	Overtake [][]*Money `json:"overtake"`
	// Order are indexes into Sides, best first: gates first, then the weighted sum.
	Order    []int       `json:"order"`
	Criteria []Criterion `json:"criteria"`
	// Moves tell how far a weight must move to change the winner, nearest first.
	Moves     []Move   `json:"moves"`
	Sentences []string `json:"sentences" say:"yes"`
}

// Side is one listing in a comparison.
type Side struct {
	Letter   string      `json:"letter"` // A, B, C in the order given: how sentences speak of it
	Title    string      `json:"title"`  // told apart from the others by a number, where it must be
	Verdict  Verdict     `json:"verdict"`
	Safety   Score       `json:"safety"`
	State    Score       `json:"condition"`
	Price    *Money      `json:"price"` // asked, or asked about
	Odds     *float64    `json:"odds"`
	Ahead    *Money      `json:"ahead"`      // mean
	AheadLow *Money      `json:"ahead_low"`  // 10 %
	AheadTop *Money      `json:"ahead_high"` // 90 %
	AllIn    *AllIn      `json:"all_in"`
	Opening  *PricePoint `json:"opening"`
	Fair     *PricePoint `json:"fair"`
	WalkAway *PricePoint `json:"walk_away"`
	// Hours of work until it is in service, most likely.
	Hours float64 `json:"hours"`
	// Days until it is in service; nil where a finding cannot be put right.
	Days     *Days     `json:"days"`
	Distance *Quantity `json:"distance"`
	Hides    Money     `json:"hides"` // allowance for what was not checked
	// Open is how many points that apply were not checked, Dearest the two of them
	// that the allowance counts most for, dearest first.
	Open    int     `json:"open"`
	Dearest []Doubt `json:"dearest"`
	// Rubric it was judged by.
	Rubric RubricRef `json:"rubric"`
	// Gate is the code of a verdict that no weight makes up for, or "".
	Gate string `json:"gate"`
	// Score is the weighted sum on fixed scales, 0 to 100; nil where no criterion
	// that counts is known. Parts are its criteria, in order, 0 worst to 1 best; nil
	// where it is not known, which counts as 0.5.
	Score   *float64   `json:"score"`
	Parts   []*float64 `json:"parts"`
	Missing string     `json:"missing,omitempty" say:"yes"`
}

// Days are working days from the handshake until it is in service, as a span.
type Days struct {
	Low    int      `json:"low"`
	Likely int      `json:"likely"`
	High   int      `json:"high"`
	Steps  []string `json:"steps" say:"yes"` // the derivation, in words
}

// Criterion is one thing by which listings are ranked, on a fixed scale, so that
// a listing more or less never turns the order of the others round.
type Criterion struct {
	ID     string `json:"id"`
	Title  string `json:"title" say:"yes"`
	Scale  string `json:"scale" say:"yes"` // what is worst and best, in words
	Weight int    `json:"weight"`
}

// Move is the nearest change of one weight that gives another winner.
type Move struct {
	Criterion string `json:"criterion"`
	From      int    `json:"from"`
	To        int    `json:"to"`
	Winner    int    `json:"winner"` // index into Sides
	Sentence  string `json:"sentence" say:"yes"`
}
