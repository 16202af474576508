// Package limit holds the measured limits: published figures that a measured
// value is held against. Each is a small pure function with its formula, units,
// source and the standing of the figure. The package does no I/O.
package limit

// Status says how well a figure is founded; it is shown to the user.
type Status string

const (
	Published Status = "published"       // read in the source or a public mirror of it
	Reprint   Status = "seen in reprint" // read in a reprint of a paid standard
	Practice  Status = "common practice" // trade custom, no standard behind it
	Memory    Status = "from memory"     // recalled, not looked up
	// Own is a figure the user entered from the maker's manual or plate.
	Own     Status = "maker's own figure"
	Physics Status = "definition" // arithmetic or geometry; nothing to look up
)

// Finding is what holding the value against the limit gives.
type Finding string

const (
	Within   Finding = "within limit"
	Watch    Finding = "watch"
	Beyond   Finding = "beyond limit"
	Computed Finding = "computed" // a figure, no limit to hold it against
)

// Definition describes one limit to people and programs.
type Definition struct {
	Name  string `json:"name"`
	Title string `json:"title" say:"yes"`
	// Called are other words under which a shop looks for it; All sets them.
	Called     []string `json:"called,omitempty" say:"yes"`
	Subject    string   `json:"subject"` // id of the Subject it stands under; All sets it
	Quantities []Input  `json:"quantities"`
	Formula    string   `json:"formula" say:"yes"`
	Source     string   `json:"source" say:"yes"` // document, clause, year
	Status     Status   `json:"status"`
	Caution    string   `json:"caution,omitempty" say:"yes"`
	// MakerUnit is the dimension of the maker's own limit, where one may replace
	// the published figure.
	Maker string `json:"maker,omitempty"`
}

// Input is one quantity a limit takes.
type Input struct {
	Name      string   `json:"name"`
	Title     string   `json:"title" say:"yes"`
	Dimension string   `json:"dimension"`                  // of package unit; "word" for a choice, "number" for a count
	Unit      string   `json:"unit,omitempty"`             // assumed in inch mode when the entry has none (screens only)
	Metric    string   `json:"metric,omitempty"`           // likewise in metric mode
	Words     []string `json:"words,omitempty"`            // allowed words
	Titles    []string `json:"titles,omitempty" say:"yes"` // of the words, where these do not speak for themselves
	Optional  bool     `json:"optional,omitempty"`
	Default   string   `json:"default,omitempty"`
	// Either names a group of optional quantities of which one at least is needed.
	Either string `json:"either,omitempty"`
}

// Result is a limit computed. Value and Limit are in Unit. Limit is nil where
// there is nothing to hold the value against.
type Result struct {
	Name    string   `json:"name"`
	Value   float64  `json:"value"`
	Unit    string   `json:"unit"`
	Limit   *float64 `json:"limit"`
	Finding Finding  `json:"finding"`
	Text    string   `json:"text"` // one plain sentence
	Formula string   `json:"formula"`
	Source  string   `json:"source"`
	Status  Status   `json:"status"`
	Notes   []string `json:"notes,omitempty"`
	Caution string   `json:"caution,omitempty"`
	// More holds further figures ("tap drill", "breaker"), each a value with a unit.
	More []Figure `json:"more,omitempty"`
}

// Figure is a further named value. Part is the id of the price book's part that
// it costs, where it costs one. Group is the beginning of the title that several
// figures share ("nearest"), where they are read together.
type Figure struct {
	Group string  `json:"group,omitempty"`
	Title string  `json:"title"`
	Value float64 `json:"value,omitempty"`
	Unit  string  `json:"unit,omitempty"`
	Text  string  `json:"text,omitempty"`
	Part  string  `json:"part,omitempty"`
}

// add appends figures that are read together under the words their titles begin with.
func (r *Result) add(group string, figures []Figure) {
	for _, f := range figures {
		f.Group = group
		r.More = append(r.More, f)
	}
}
