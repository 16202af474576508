package appraisal

import (
	"errors"
	"math"
	"strings"

	"asfound/rubrics/say"
	"asfound/rubrics/table"
	"asfound/rubrics/unit"
)

func conditionWord(cell string) (string, error) {
	if id, ok := known(conditionSynonyms, cell); ok {
		return id, nil
	}
	return "", say.Errorf("%.40q is no condition known here: write %s", cell, either(Conditions))
}

func completeWord(cell string) (string, error) {
	if id, ok := known(completeSynonyms, cell); ok {
		return id, nil
	}
	return "", say.Errorf("%.40q is no completeness known here: write %s", cell, either(Completeness))
}

// either says "as new, sound or worn" of choices.
type either []Choice

func (e either) In(v *say.Voice) string {
	titles := make([]string, len(e))
	for i, c := range e {
		titles[i] = strings.ToLower(v.Label(c.Title))
	}
	return v.F("%s or %s", strings.Join(titles[:len(titles)-1], ", "), titles[len(titles)-1])
}

func (m *importing) basisWord(cell string) (string, error) {
	if id, ok := known(basisSynonyms, cell); ok {
		return id, nil
	}
	if id, ok := soldSynonyms[table.Fold(cell)]; ok && m.soldColumn {
		return id, nil
	}
	if m.basis == "sold" {
		return "", say.Errorf("%.40q says neither asked nor sold: taken as sold", cell)
	}
	return "", say.Errorf("%.40q says neither asked nor sold: taken as asked", cell)
}

func (m *importing) price(cell string) (Money, error) {
	price, err := moneyCell(cell, m.decimalComma, m.currency, false)
	if err != nil {
		return 0, err
	}
	if price == 0 {
		return 0, say.Errorf("%.40q is no price: write at least a cent", cell)
	}
	return price, nil
}

// moneyCell reads an amount in a currency, "" for any; 0 only where it may be so.
func moneyCell(cell string, decimalComma bool, in string, zero bool) (Money, error) {
	n, currency, err := table.Amount(cell, decimalComma)
	if err != nil {
		return 0, err
	}
	if err := twoWays(cell, decimalComma); err != nil { // nobody writes three decimals of a price
		return 0, err
	}
	if !table.Alike(currency, in) {
		return 0, say.Errorf("%.40q is in %s, the column in %s: convert it", cell, currency, in)
	}
	switch most := float64(maxMoney) / 100; {
	case zero && (n < 0 || n > most):
		return 0, say.Errorf("%.40q is no price: write 0 to 1,000,000,000", cell)
	case !zero && (n <= 0 || n > most):
		return 0, say.Errorf("%.40q is no price: write more than 0 and at most 1,000,000,000", cell)
	}
	return cents(float64(n * 100)), nil
}

// twoWays refuses a number whose three decimals could be thousands.
func twoWays(cell string, decimalComma bool) error {
	if !table.Doubtful(cell, decimalComma) {
		return nil
	}
	n, _ := table.Number(cell, decimalComma)
	thousands, _ := table.Number(cell, !decimalComma)
	return say.Errorf("%.40q could be %g or %g: write %g, or other than three decimals", cell, thousands, n, thousands)
}

// number reads a plain number as the table writes them.
func (m *importing) number(cell string) (float64, error) {
	n, currency, err := table.Amount(cell, m.decimalComma)
	if err == nil && !m.sure {
		err = twoWays(cell, m.decimalComma)
	}
	if err == nil && currency != "" {
		err = say.Errorf("%.40q is an amount of money: write the number alone", cell)
	}
	return n, err
}

// yearMade reads 2014, also as a number with a group mark or out of a date.
func yearMade(cell string, decimalComma bool) (int, error) {
	n, err := table.Number(cell, decimalComma)
	if err == nil && n == math.Floor(n) && n >= 1800 && n <= 2200 {
		return int(n), nil
	}
	if date, err := table.Date(cell, decimalComma); err == nil {
		return year(date), nil
	}
	return 0, say.Errorf("%.40q is no year of manufacture: write it like 2014", cell)
}

func (m *importing) hours(cell string) (float64, error) {
	n, after := parted(cell)
	if n == "" {
		n, after = cell, "" // number says what it is
	}
	if _, ok := hourWords[table.Fold(after)]; !ok && after != "" {
		return 0, say.Errorf("%.40q is no number of hours: write it like 1200", cell)
	}
	h, err := m.number(n)
	if err == nil && (h < 0 || h > maxHours) {
		err = say.Errorf("%.40q is no number of hours run: write 0 to 1,000,000", cell)
	}
	if err != nil {
		return 0, err
	}
	return h, nil
}

// parted splits a cell into the number it begins with and what follows.
func parted(cell string) (number, after string) {
	cell = strings.TrimSpace(cell)
	i := strings.IndexFunc(cell, func(c rune) bool {
		return !strings.ContainsRune("0123456789.,'’+-− \u00a0\u202f\u2009", c)
	})
	if i < 0 {
		i = len(cell)
	}
	number = strings.TrimSpace(cell[:i])
	if !strings.ContainsAny(number, "0123456789") {
		return "", cell
	}
	return number, strings.TrimSpace(cell[i:])
}

// size reads a capacity with its unit, or in the unit of plain numbers.
func (m *importing) size(cell string) (*Quantity, error) {
	q, err := m.quantity(cell, m.unit, m.sizeUnit)
	if errors.Is(err, errUnit) {
		return nil, say.Errorf("%.40q does not convert to %s: write it in %s", cell, m.rubric.Capacity.Unit, m.units())
	}
	if err != nil {
		return nil, err
	}
	if err := checkSize("", q); err != nil {
		return nil, say.Errorf("%.40q is no size: write more than 0 and at most 1000000000", cell)
	}
	return q, nil
}

// way reads a distance, one way.
func (m *importing) way(cell string, line int) (*Quantity, error) {
	q, err := m.quantity(cell, m.distanceUnit, wayUnit)
	if errors.Is(err, errUnit) {
		return nil, say.Errorf("%.40q is no distance: write it in mi or km", cell)
	}
	if err != nil {
		return nil, err
	}
	if !(q.N >= 0 && q.N <= 20_000) {
		return nil, say.Errorf("%.40q is no distance: write 0 to 20,000", cell)
	}
	if q.Unit == "" {
		m.unitless.add(line)
		return nil, nil
	}
	return q, nil
}

var errUnit = errors.New("another unit")

// quantity reads a number and its unit, which canon brings to its usual name or
// to nothing; a plain number is in the unit given.
func (m *importing) quantity(cell, plain string, canon func(string) string) (*Quantity, error) {
	number, name := parted(cell)
	if number == "" || name == "" {
		n, err := m.number(cell)
		if err != nil {
			return nil, err
		}
		return &Quantity{n, plain}, nil
	}
	u, err := canon(name), error(errUnit)
	if u != "" {
		var n float64
		if n, err = m.number(number); err == nil {
			return &Quantity{n, u}, nil
		}
	}
	if strings.ContainsAny(cell, ".,") {
		return nil, err
	}
	// Fractions and pairs (1-1/2 in, 6 ft 2 in), without a mark to doubt.
	for _, dimension := range unit.Dimensions() {
		if v, bad := unit.Parse(cell, dimension); bad == nil && v.Unit != "" {
			if u := canon(v.Unit); u != "" {
				return &Quantity{v.N, u}, nil
			}
		}
	}
	return nil, err
}

// sizeUnit gives the usual name of a unit in which the rubric's capacity can be
// written, or "".
func (m *importing) sizeUnit(name string) string {
	home := m.rubric.Capacity.Unit
	if name == home {
		return home
	}
	if u, met := m.sizes[name]; met {
		return u
	}
	found := ""
	for _, dimension := range unit.Dimensions() {
		if _, err := unit.Parse("1 "+home, dimension); err != nil || found != "" {
			continue
		}
		if v, err := unit.Parse("1 "+name, dimension); err == nil && v.N == 1 {
			found = v.Unit
		}
	}
	m.sizes[name] = found
	return found
}

// units lists the units that the rubric offers for its capacity.
func (m *importing) units() string {
	return strings.Join(append([]string{m.rubric.Capacity.Unit}, m.rubric.Capacity.Other...), ", ")
}

// wayUnit gives mi or km, or "".
func wayUnit(name string) string {
	if v, err := unit.Parse("1 "+name, "length"); err == nil && v.N == 1 && (v.Unit == "mi" || v.Unit == "km") {
		return v.Unit
	}
	return ""
}

// unitIn finds the unit in the name of a column; the last word that is one.
func unitIn(name string, canon func(string) string) string {
	words := strings.FieldsFunc(name, func(c rune) bool { return strings.ContainsRune(" ()[],;:_", c) })
	for i := len(words) - 1; i >= 0; i-- {
		if u := canon(words[i]); u != "" {
			return u
		}
	}
	return ""
}
