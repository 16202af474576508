package notice

import (
	"unicode/utf8"

	"asfound/rubrics/say"
)

// MaxText bounds a text in bytes; a listing of a page is a tenth of it.
const MaxText = 100_000

// How sure a reading is.
const (
	Plain    = "plain"    // the text says so
	Likely   = "likely"   // it is the usual meaning, not the only one
	Doubtful = "doubtful" // it could as well mean something else
)

// Ask is what is known beside the text.
type Ask struct {
	Currency string // ISO 4217, of the shop
	Units    string // inch or metric: what a ton is, and a plain size
	Date     string // YYYY-MM-DD or empty: nothing was made in a year after the next
	Kinds    []Kind
	Kind     string // the kind where it is known, else ""
	// Voice says why a reading is taken to mean what it does.
	Voice *say.Voice
}

// Kind is one kind of equipment and the words that a text may have for it.
type Kind struct {
	ID    string
	Title string
	Words []string
	Size  Size
	Facts []Fact
}

// Size is what the capacity of a kind is called, and its units.
type Size struct {
	Title string
	Unit  string
	Other []string
}

// Fact is a question about a kind, with its possible answers.
type Fact struct {
	ID      string
	Options []Option
}

// Option is one answer and the words that a text may have for it.
type Option struct {
	ID    string
	Title string
	Words []string
}

// Measured is a number with its unit.
type Measured struct {
	N    float64 `json:"n"`
	Unit string  `json:"unit"`
}

// Proposal is one thing that the text may tell. Exactly one of Cents, Quantity,
// Number and Text is set.
type Proposal struct {
	// Field is where it belongs: rubric, title, asking, made, capacity, voltage,
	// phases, power, current, weight, length, width, height, hours, distance, place,
	// seen, or fact/ and the id of a fact.
	Field    string    `json:"field"`
	Cents    *int64    `json:"cents,omitempty"`
	Quantity *Measured `json:"quantity,omitempty"`
	Number   *float64  `json:"number,omitempty"`
	Text     string    `json:"text,omitempty"` // also the id of a kind or an option
	// Title is what to show for an id.
	Title string `json:"title,omitempty"`
	// Foreign is the currency of a price that is not in the shop's.
	Foreign string `json:"foreign,omitempty"`
	Sure    string `json:"sure"`
	Because string `json:"because"`
	// Words is the piece of text it was read from, at the bytes Start to End, with
	// some of what stands about it.
	Start  int    `json:"start"`
	End    int    `json:"end"`
	Before string `json:"before"`
	Words  string `json:"words"`
	After  string `json:"after"`
}

// Error is a text that cannot be read: what is wrong, what would be right.
type Error struct {
	What  string
	Right string

	what, right say.Text
}

func (e *Error) Error() string { return e.What + ": " + e.Right }

// In says the error in a language.
func (e *Error) In(v *say.Voice) string { return e.what.In(v) + ": " + e.right.In(v) }

func refuse(what, right say.Text) *Error { return &Error{what.String(), right.String(), what, right} }

// Read proposes what a text tells, by field, within a field the surest first. The
// error is *Error.
func Read(text string, ask Ask) ([]Proposal, error) {
	switch {
	case len(text) > MaxText:
		return nil, refuse(say.Later("the text has %d bytes", len(text)), say.Later("at most 100,000: paste the listing alone"))
	case !utf8.ValidString(text):
		return nil, refuse(say.Later("the text is not UTF-8"), say.Later("copy it again as plain text"))
	}
	r := &reading{text: text, ask: ask, tokens: tokens(text)}
	r.take()
	r.kinds()
	r.facts()
	r.prices()
	r.quantities()
	r.meters()
	r.supply()
	r.years()
	r.places()
	r.heading()
	return r.proposals(), nil
}

// reading is the state of one reading.
type reading struct {
	text   string
	ask    Ask
	tokens []token
	kind   *Kind // told, or the one the text speaks of
	found  []Proposal
	placed int // where the last place ends
}

// propose adds a proposal read from the tokens first to last.
func (r *reading) propose(first, last int, p Proposal) {
	p.Start, p.End = r.tokens[first].start, r.tokens[last].end
	r.found = append(r.found, p)
}
