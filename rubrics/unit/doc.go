// Package unit reads lengths, masses, pressures and the like as people write
// them in a shop ("1-1/2\"", "0,35", "3 000 psi", "6 ft 2 in") and converts
// between units of one dimension. It does no I/O.
//
// # How numbers are read
//
// A fraction is "3/8" or, with a whole number before it, "1 3/8" or "1-3/8".
// Digits may be grouped in threes by spaces. Point and comma are read so:
//
//   - both present: the last one is the decimal mark, the other groups by threes
//     ("1.234,5" and "1,234.5" are the same number);
//   - one of them repeated: it groups by threes ("1,234,567");
//   - a single point is a decimal point ("1.234" is less than two);
//   - a single comma is a decimal comma, unless one to three digits without a
//     leading zero stand before it and exactly three after it. Then it groups
//     if the unit is one that US trade counts in thousands (psi, lb, gpm, ...),
//     and otherwise the entry is refused: "9,525 mm" could be either.
package unit

// Value is a number in the unit it was entered in. Feet and inches together are
// in inches; hours, minutes and seconds, or pounds and ounces, are likewise in
// the smaller unit.
type Value struct {
	N    float64
	Unit string // canonical name, "" for a plain number
}

// String writes the value so that Parse reads it back.
func (v Value) String() string {
	if v.Unit == "" {
		return plain(v.N)
	}
	return plain(v.N) + " " + v.Unit
}
