package limit

import (
	"math"
	"sort"
	"strings"

	"asfound/rubrics/say"
	"asfound/rubrics/unit"
)

const ownSource = "the maker's own limit, as entered"

// measured holds the values of one call: numbers in the Input.Unit of their
// quantity, the unit each was entered in, and words.
type measured struct {
	numbers map[string]float64
	entered map[string]string // unit as entered
	base    map[string]string // Input.Unit
	words   map[string]string
	voice   *say.Voice
}

const makerKey = "maker"

func (r *rule) measure(given map[string]string) (*measured, *Error) {
	if err := r.known(given); err != nil {
		return nil, err
	}
	m := &measured{numbers: map[string]float64{}, entered: map[string]string{}, base: map[string]string{}, words: map[string]string{}}
	for i := range r.Quantities {
		q := &r.Quantities[i]
		text := strings.TrimSpace(given[q.Name])
		if text == "" {
			text = q.Default
		}
		if text == "" {
			if q.Optional {
				continue
			}
			return nil, refuse(q.Name, "the "+q.Title+" is missing", "give it"+as(q))
		}
		if q.Dimension == "word" {
			word, err := choose(q, text)
			if err != nil {
				return nil, err
			}
			m.words[q.Name] = word
			continue
		}
		if err := m.take(q.Name, text, q.Dimension, q.Unit); err != nil {
			return nil, err
		}
		if err := r.check(q, m); err != nil {
			return nil, err
		}
	}
	if r.Maker == "" { // then "maker" may be a quantity of its own
		return m, nil
	}
	return m, r.takeMaker(m, strings.TrimSpace(given[makerKey]))
}

// known refuses quantities that the limit does not take.
func (r *rule) known(given map[string]string) *Error {
	names := make([]string, 0, len(r.Quantities)+1)
	for _, q := range r.Quantities {
		names = append(names, q.Name)
	}
	if r.Maker != "" {
		names = append(names, makerKey)
	}
	keys := make([]string, 0, len(given))
	for k := range given {
		keys = append(keys, k)
	}
	sort.Strings(keys)
next:
	for _, k := range keys {
		for _, n := range names {
			if k == n {
				continue next
			}
		}
		return refuse(plainName(k), r.Name+" takes no such quantity", "it takes "+strings.Join(names, ", "))
	}
	return nil
}

// plainName shows a name that is none of ours so that it fits into one line.
func plainName(s string) string {
	if len(s) > 40 || strings.ContainsFunc(s, func(r rune) bool { return r < ' ' || r > '~' }) {
		return quote(s)
	}
	return s
}

// take reads one number and keeps it in the given unit.
func (m *measured) take(name, text, dimension, in string) *Error {
	v, err := unit.Parse(text, dimension)
	if err != nil {
		return unreadable(name, err)
	}
	n, err := unit.Convert(v.N, v.Unit, in)
	if err != nil {
		return unreadable(name, err)
	}
	m.numbers[name], m.entered[name], m.base[name] = n, v.Unit, in
	return nil
}

func unreadable(name string, err error) *Error {
	if e, ok := err.(*unit.Error); ok {
		return refuse(name, e.What, e.Right)
	}
	return refuse(name, err.Error(), "write a number with its unit")
}

// check refuses a number that cannot be real.
func (r *rule) check(q *Input, m *measured) *Error {
	n := m.numbers[q.Name]
	b, bounded := r.bounds[q.Name]
	shown := m.in(n, q.Name)
	if q.Dimension == "number" && n != math.Trunc(n) {
		return refuse(q.Name, shown+" is not a whole number", "give the "+q.Title+" as a whole number")
	}
	if n < 0 && bounded && b.low == 0 {
		return refuse(q.Name, "the "+q.Title+" cannot be "+shown, "it must not be less than zero"+as(q))
	}
	if (n < 0 && b.low >= 0) || (n == 0 && (!bounded || b.low > 0)) {
		return refuse(q.Name, "the "+q.Title+" cannot be "+shown, "it must be more than zero"+as(q))
	}
	if bounded && (n < b.low || n > b.high) {
		return refuse(q.Name, "the "+q.Title+" cannot be "+shown,
			"it lies between "+m.in(b.low, q.Name)+" and "+m.in(b.high, q.Name)+"; check the number and its unit")
	}
	return nil
}

func (r *rule) takeMaker(m *measured, text string) *Error {
	if text == "" {
		return nil
	}
	err := m.take(makerKey, text, r.Maker, r.makerUnit)
	if err != nil && r.makerAlso[0] != "" {
		if m.take(makerKey, text, r.makerAlso[0], r.makerAlso[1]) == nil {
			err = nil
		}
	}
	if err != nil {
		return err
	}
	if m.numbers[makerKey] <= 0 {
		return refuse(makerKey, "the maker's limit cannot be "+m.in(m.numbers[makerKey], makerKey), "give it as the manual prints it, or leave it out")
	}
	return nil
}

// maker gives the maker's limit where one was entered in that unit.
func (m *measured) maker(in string) (float64, bool) {
	n, ok := m.numbers[makerKey]
	return n, ok && m.base[makerKey] == in
}

func (m *measured) n(name string) float64 { return m.numbers[name] }

func (m *measured) has(name string) bool {
	_, ok := m.numbers[name]
	return ok
}

// as ends a sentence with how to write the quantity.
func as(q *Input) string {
	switch {
	case q.Dimension == "word":
		return ", one of " + strings.Join(q.Words, ", ")
	case q.Unit == "":
		return " as a whole number"
	}
	return ", as a number with its unit (" + strings.Join(unit.Units(q.Dimension), ", ") + ")"
}

func choose(q *Input, text string) (string, *Error) {
	spoken := strings.ReplaceAll(strings.Join(strings.Fields(text), " "), "-", " ")
	for _, w := range q.Words {
		// A wire size may stand without "AWG", and "1-1/8" may be written "1 1/8".
		plain := strings.ReplaceAll(w, "-", " ")
		if strings.EqualFold(plain, spoken) || strings.EqualFold(strings.TrimSuffix(plain, " AWG"), spoken) {
			return w, nil
		}
	}
	return "", refuse(q.Name, quote(text)+" is not a choice for the "+q.Title, "it is one of "+strings.Join(q.Words, ", "))
}
