package limit

import (
	"math"
	"sort"
	"strings"

	"asfound/rubrics/say"
	"asfound/rubrics/unit"
)

// measured holds the values of one call: numbers in the Input.Unit of their
// quantity, the unit each was entered in, and words; and the voice that says what
// comes of them.
type measured struct {
	*say.Voice
	numbers map[string]float64
	entered map[string]string // unit as entered
	base    map[string]string // Input.Unit
	words   map[string]string
}

const makerKey = "maker"

func (r *rule) measure(v *say.Voice, given map[string]string) (*measured, *Error) {
	if err := r.known(v, given); err != nil {
		return nil, err
	}
	m := &measured{Voice: v, numbers: map[string]float64{}, entered: map[string]string{}, base: map[string]string{}, words: map[string]string{}}
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
			return nil, refuse(q.Name, m.F("the %s is missing", m.Label(q.Title)), m.give(q))
		}
		if q.Dimension == "word" {
			word, err := m.choose(q, text)
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
func (r *rule) known(v *say.Voice, given map[string]string) *Error {
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
		return refuse(plainName(k), v.F("%s takes no such quantity", r.Name), v.F("it takes %s", strings.Join(names, ", ")))
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
		return m.unreadable(name, err)
	}
	n, err := unit.Convert(v.N, v.Unit, in)
	if err != nil {
		return m.unreadable(name, err)
	}
	m.numbers[name], m.entered[name], m.base[name] = n, v.Unit, in
	return nil
}

func (m *measured) unreadable(name string, err error) *Error {
	if e, ok := err.(*unit.Error); ok {
		what, right := e.Said()
		return refuse(name, what.In(m.Voice), right.In(m.Voice))
	}
	return refuse(name, m.Error(err), m.T("write a number with its unit"))
}

// check refuses a number that cannot be real.
func (r *rule) check(q *Input, m *measured) *Error {
	n := m.numbers[q.Name]
	b, bounded := r.bounds[q.Name]
	shown, title := m.in(n, q.Name), m.Label(q.Title)
	cannot := m.F("the %s cannot be %s", title, shown)
	if q.Dimension == "number" && n != math.Trunc(n) {
		return refuse(q.Name, m.F("%s is not a whole number", shown), m.F("give the %s as a whole number", title))
	}
	if n < 0 && bounded && b.low == 0 {
		return refuse(q.Name, cannot, m.F("it must not be less than zero%s", m.as(q)))
	}
	if (n < 0 && b.low >= 0) || (n == 0 && (!bounded || b.low > 0)) {
		return refuse(q.Name, cannot, m.F("it must be more than zero%s", m.as(q)))
	}
	if bounded && (n < b.low || n > b.high) {
		return refuse(q.Name, cannot,
			m.F("it lies between %s and %s; check the number and its unit", m.in(b.low, q.Name), m.in(b.high, q.Name)))
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
		return refuse(makerKey, m.F("the maker's limit cannot be %s", m.in(m.numbers[makerKey], makerKey)), m.T("give it as the manual prints it, or leave it out"))
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

// give asks for a quantity that is missing.
func (m *measured) give(q *Input) string {
	if q.Dimension == "word" {
		return m.F("give it, one of %s", strings.Join(q.Words, ", "))
	}
	return m.F("give it%s", m.as(q))
}

// as ends a sentence with how to write the number.
func (m *measured) as(q *Input) string {
	if q.Unit == "" {
		return m.T(" as a whole number")
	}
	return m.F(", as a number with its unit (%s)", strings.Join(unit.Units(q.Dimension), ", "))
}

func (m *measured) choose(q *Input, text string) (string, *Error) {
	spoken := strings.ReplaceAll(strings.Join(strings.Fields(text), " "), "-", " ")
	for _, w := range q.Words {
		// A wire size may stand without "AWG", and "1-1/8" may be written "1 1/8".
		plain := strings.ReplaceAll(w, "-", " ")
		if strings.EqualFold(plain, spoken) || strings.EqualFold(strings.TrimSuffix(plain, " AWG"), spoken) {
			return w, nil
		}
	}
	return "", refuse(q.Name, m.F("%s is not a choice for the %s", quote(text), m.Label(q.Title)), m.F("it is one of %s", strings.Join(q.Words, ", ")))
}
