// Package sales values one thing by what others like it brought: rates of
// adjustment from the sales themselves where they tell, from stated priors where
// they do not, then the middle of the adjusted prices, those most alike counting
// most. It knows numbers and labels only, not what they mean, so the same code
// serves the app and the backtest. It is pure and does no I/O.
package sales

// Attribute is a number by which prices are adjusted, such as age.
type Attribute struct {
	ID string
	// Rate is the change of the log price per unit expected before any sale is
	// seen, and RateSD how sure that is; 0 and 0 only compare and never adjust.
	Rate, RateSD float64
	// Width is a difference at which a sale counts clearly less (e^-1/2); above 0.
	Width float64
}

// Label is a word by which prices differ, such as the maker.
type Label struct {
	ID string
	// SD is the spread of the log premium of one word against another.
	SD float64
	// Unlike is what a sale with another word counts, 0 to 1.
	Unlike float64
}

// Form is what a market is told about its sales.
type Form struct {
	Attributes []Attribute
	Labels     []Label
	// Together adds a premium of this spread for each combination of all labels;
	// 0 leaves it out.
	Together float64
	// Spread is the log spread expected before any sale is seen, counted as Count
	// sales more.
	Spread, Count float64
	// Neighbours bounds how many of the most alike sales are adjusted; 0 takes
	// the default.
	Neighbours int
}

// Sale is one price, or the thing to be valued (whose Log and Weight are unused).
type Sale struct {
	Log     float64   // natural logarithm of the price
	Numbers []float64 // by attribute; NaN unknown
	Labels  []string  // by label; "" unknown
	Weight  float64   // how often it counts: 1, or less for one of several copies
}

// Rate is what a market came to think of an attribute.
type Rate struct {
	Mean, SD float64
	// FromData is the share of the certainty that the sales brought, 0 to 1.
	FromData float64
}

// Row is one sale adjusted to the thing valued.
type Row struct {
	Sale    int       // index into the sales given
	Factors []float64 // on the log scale, by attribute, then by label
	Log     float64   // adjusted log price
	Weight  float64   // share of the whole, sums to 1 over the rows
	// Trust is what is left of its weight for standing apart from the others: 1
	// in the middle, less for an outlier.
	Trust float64
}

// Prediction is the log price of the thing valued.
type Prediction struct {
	Mean float64
	// SD is so that Mean +/- 1.2816 SD covers 80 %.
	SD    float64
	Shape *Shape
	Rows  []Row
	// Scatter is the log spread of the adjusted prices themselves.
	Scatter float64
}

// DefaultSpread and DefaultCount are what is expected of the spread before any sale
// is seen (judgement).
const (
	DefaultSpread = 0.25
	DefaultCount  = 4
)

const (
	tightest       = 0.02 // no next price is surer than this, on the log scale (judgement)
	passes         = 12   // of reweighting; it settles in fewer
	maxColumns     = 160  // rare labels beyond are not told apart
	defaultAlike   = 300  // neighbours
	shared         = 0.2  // weight spread evenly over all neighbours
	unknownCounts  = 0.7  // likeness left where a number or word is not known
	leftOut        = 100  // at most, to learn the shape of errors
	calibrateAfter = 40.0 // sales at which their own errors count half in the shape
)
