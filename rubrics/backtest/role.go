package backtest

import (
	"errors"
	"fmt"
	"slices"
	"sort"
	"strings"

	"asfound/rubrics/table"
)

// Role is what a column is taken as.
type Role string

const (
	Price   Role = "price"
	Number  Role = "number" // the log price changes with it in a line
	Log     Role = "log"    // the log price changes with its logarithm
	Label   Role = "label"  // a word, by which prices differ
	Ignored Role = "ignored"
)

// Column is a column and what it was taken as.
type Column struct {
	Name string `json:"name"`
	Role Role   `json:"role"`
	Why  string `json:"why"`
	// Unknown is how many usable rows have no usable value.
	Unknown int `json:"unknown"`

	date, dayFirst bool
	place          int // in the table
}

// priceNames are names of a column of prices, the likeliest first. Whole names
// only: year sold is no price.
var priceNames = []string{
	"sale price", "sold price", "selling price", "price sold", "sold for", "hammer price", "price paid", "price",
	"sold", "paid", "amount", "asking price", "asked price", "price asked", "asking", "value",
}

// known are words in names of columns that tell what they hold; the first role
// that fits is taken.
var known = []struct {
	role  Role
	words []string
}{
	{Number, strings.Fields("mileage miles km kilometers kilometres odometer hours hrs age year years made built date month")},
	{Log, strings.Fields("capacity area size power rating tonnage swing stroke length height width weight kw hp volume")},
	{Label, strings.Fields("maker make manufacturer brand model condition cond kind type category basis place region city neighborhood neighbourhood phase fuel color colour")},
	{Ignored, strings.Fields("id ref lot url link title description note notes serial vin seller phone")},
}

const (
	fewWords = 12  // distinct values that are labels for certain
	crowded  = 0.1 // distinct words a row from which on a text is no label
)

// content is what the cells of a column hold.
type content struct {
	filled, numbers, positive, dates int
	distinct                         map[string]bool
	order                            table.Order
}

func contentOf(t *table.Table, place int) content {
	c := content{distinct: map[string]bool{}}
	cells := make([]string, len(t.Rows))
	for i, row := range t.Rows {
		cells[i] = row[place]
	}
	c.order = table.OrderOf(cells)
	for _, cell := range cells {
		w := word(cell)
		if w == "" {
			continue
		}
		c.filled++
		c.distinct[w] = true
		if x, err := table.Number(cell, t.DecimalComma); err == nil {
			c.numbers++
			if x > 0 {
				c.positive++
			}
		} else if _, err := table.Date(cell, false); err == nil {
			c.dates++
		} else if _, err := table.Date(cell, true); err == nil {
			c.dates++
		}
	}
	return c
}

// most tells whether more than half of what is filled in is so.
func (c *content) most(n int) bool { return 2*n > c.filled }

// word is a label as labels are compared.
func word(cell string) string { return strings.ToLower(strings.Join(strings.Fields(cell), " ")) }

// roles settles what each column is taken as: what was asked, else what its name
// says, else what its cells look like.
func roles(t *table.Table, asked map[string]Role) ([]Column, error) {
	given := make([]Role, len(t.Columns))
	names := make([]string, 0, len(asked))
	for name := range asked {
		names = append(names, name)
	}
	sort.Strings(names)
	for _, name := range names {
		k, err := find(t, name)
		if err != nil {
			return nil, err
		}
		if given[k] != "" && given[k] != asked[name] {
			return nil, fmt.Errorf("%q is taken as %s and as %s: give it one of them", t.Columns[k], given[k], asked[name])
		}
		given[k] = asked[name]
	}
	contents := make([]content, len(t.Columns))
	for k := range contents {
		contents[k] = contentOf(t, k)
	}
	price, err := priceColumn(t, given, contents)
	if err != nil {
		return nil, err
	}
	out := make([]Column, len(t.Columns))
	for k, name := range t.Columns {
		c, in := Column{Name: name, place: k}, &contents[k]
		switch {
		case k == price && given[k] == Price:
			c.Role, c.Why = Price, "as asked"
		case k == price:
			c.Role, c.Why = Price, "by its name"
		case given[k] != "":
			c.Role, c.Why = given[k], "as asked"
		default:
			c.Role, c.Why = guess(name, in)
		}
		if c.Role == Number || c.Role == Log {
			c.date = c.Role == Number && in.dates > in.numbers
			c.dayFirst = in.order.Day > in.order.Month
			if !c.date && in.numbers == 0 {
				return nil, fmt.Errorf("%q has no number in it, and so cannot be taken as %s: take it as a label, or ignore it", name, c.Role)
			}
			if c.Role == Log && in.positive == 0 {
				return nil, fmt.Errorf("%q has no number above 0 in it, and so no logarithm: take it as a number", name)
			}
		}
		out[k] = c
	}
	return out, nil
}

// find looks a column up by its name, or by what is the same but for case and
// marks.
func find(t *table.Table, name string) (int, error) {
	for k, c := range t.Columns {
		if c == name {
			return k, nil
		}
	}
	found := -1
	for k, c := range t.Columns {
		if f := table.Fold(c); f != "" && f == table.Fold(name) {
			if found >= 0 {
				return 0, fmt.Errorf("%q can be %q and %q: write it as it stands", name, t.Columns[found], c)
			}
			found = k
		}
	}
	if found < 0 {
		return 0, fmt.Errorf("there is no column %q: there are %s", name, list(t.Columns))
	}
	return found, nil
}

func list(names []string) string {
	const most = 20
	if len(names) > most {
		return strings.Join(names[:most], ", ") + fmt.Sprintf(" and %d more", len(names)-most)
	}
	return strings.Join(names, ", ")
}

// priceColumn is the one asked for, else the one whose name is likeliest.
func priceColumn(t *table.Table, given []Role, contents []content) (int, error) {
	price, best := -1, len(priceNames)
	for k, name := range t.Columns {
		if given[k] == Price {
			if price >= 0 && best < 0 {
				return 0, fmt.Errorf("%q and %q are both taken as the price: give one", t.Columns[price], name)
			}
			price, best = k, -1
		}
		if given[k] != "" || best < 0 {
			continue
		}
		for rank, p := range priceNames[:best] {
			// A column called sold or value may hold something else.
			if plainName(name) == p && (strings.Contains(p, "price") || contents[k].most(contents[k].positive)) {
				price, best = k, rank
			}
		}
	}
	if price < 0 {
		return 0, errors.New("no column is called price, sale price, sold or amount and holds numbers: say which one is the price; there are " + list(t.Columns))
	}
	return price, nil
}

// plainName is a name without a currency: "Price (EUR)" is a price.
func plainName(name string) string {
	words := strings.Fields(table.Fold(name))
	if table.Currency(name) != "" && len(words) > 1 && len(words[len(words)-1]) <= 4 {
		words = words[:len(words)-1]
	}
	return strings.Join(words, " ")
}

func guess(name string, c *content) (Role, string) {
	switch {
	case c.filled == 0:
		return Ignored, "it is empty"
	case len(c.distinct) == 1:
		return Ignored, "it is the same in every row"
	}
	words := strings.Fields(table.Fold(name))
	for _, k := range known {
		if !slices.ContainsFunc(k.words, func(w string) bool { return slices.Contains(words, w) }) {
			continue
		}
		switch {
		case k.role == Log && c.most(c.positive), k.role == Label && !c.perRow(), k.role == Ignored:
			return k.role, "by its name"
		case (k.role == Log || k.role == Number) && c.most(c.numbers):
			return Number, "by its name"
		}
	}
	n := len(c.distinct)
	switch {
	case c.most(c.dates):
		return Number, "dates, in years"
	case n <= fewWords:
		return Label, fmt.Sprintf("%d different values", n)
	case c.most(c.numbers):
		return Number, "numbers"
	case float64(n) <= crowded*float64(c.filled):
		return Label, fmt.Sprintf("%d different words", n)
	}
	return Ignored, fmt.Sprintf("text, with %d different values", n)
}

// perRow tells of a column that differs in nearly every row and so groups nothing.
func (c *content) perRow() bool { return 2*len(c.distinct) > c.filled && len(c.distinct) > fewWords }
