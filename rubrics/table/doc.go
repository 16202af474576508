// Package table reads a table that a person saved from a spreadsheet as text:
// its encoding, the separator, quoted cells, the names of the columns, and the
// numbers and dates in them as people write them in several countries. It knows
// nothing of what the columns mean, does no I/O, and computes no formula: a cell
// is text until somebody asks for a number.
//
// # How numbers are read
//
// A currency, a sign, brackets or a trailing minus of bookkeeping may stand about
// the digits. Point, comma, space and apostrophe are read so:
//
//   - point and comma both present: the last is the decimal mark, the other
//     groups by threes;
//   - one of them repeated, spaces and apostrophes: they group by threes;
//   - one alone, with one to three digits before it, the first no zero, and
//     exactly three after it, could be either: "1,234". The caller's decimalComma
//     decides, as DecimalComma finds it from the other cells. Where that would
//     make "9,000" a nine, the number is refused;
//   - one alone otherwise: it is the decimal mark.
//
// # How dates are read
//
// The year first (2025-12-31) and names of months can be read in one way only.
// Dates with points have the day first, as in the countries that write them.
// With strokes or dashes the caller's dayFirst decides, as OrderOf finds it; a
// part above 12 decides for itself. Years of two digits are POSIX's: 69 to 99
// are of the last century. A month alone stands for its first day, a year alone
// for its middle, the 1st of July.
package table
