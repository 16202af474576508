package unit

import (
	"math"
	"testing"
)

// Factors as printed in NIST SP 811 (2008), Appendix B.8, to the digits given
// there; exact ones (bold there) to the last digit of a float64.
func TestConvertAgainstSP811(t *testing.T) {
	for _, c := range []struct {
		from, to string
		factor   float64
		digits   float64 // relative tolerance
	}{
		{"in", "mm", 25.4, 0},
		{"ft", "m", 0.3048, 0},
		{"yd", "m", 0.9144, 0},
		{"mi", "km", 1.609344, 0},
		{"lb", "kg", 0.45359237, 0},
		{"oz", "g", 28.34952, 2e-7},
		{"short ton", "kg", 907.1847, 5e-8},
		{"long ton", "kg", 1016.047, 5e-7},
		{"t", "kg", 1000, 0},
		{"lbf", "N", 4.4482216152605, 0},
		{"kgf", "N", 9.80665, 0},
		{"short ton", "lbf", 2000, 0},
		{"psi", "kPa", 6.894757, 5e-8},
		{"bar", "kPa", 100, 0},
		{"atm", "kPa", 101.325, 0},
		{"kgf/cm2", "kPa", 98.0665, 0},
		{"inHg", "kPa", 3.386389, 0},
		{"lbf ft", "N m", 1.355818, 5e-7},
		{"lbf in", "N m", 0.1129848, 5e-7},
		{"gal", "L", 3.785412, 1.5e-7},
		{"gal", "in3", 231, 0}, // the definition of the US gallon
		{"in3", "mL", 16.38706, 4e-7},
		{"ft3", "L", 28.31685, 2e-7},
		{"gpm", "L/min", 3.785412, 1.5e-7},
		{"cfm", "L/s", 0.4719474, 1e-6},
		{"hp", "W", 745.6999, 4e-8},
		{"PS", "W", 735.4988, 2e-6},
		{"ft/min", "m/s", 0.00508, 0},
		{"mph", "km/h", 1.609344, 0},
		{"in2", "mm2", 645.16, 0},
		{"ft2", "m2", 0.09290304, 0},
		{"deg", "rad", 0.01745329, 2e-7},
		{"h", "s", 3600, 0},
	} {
		got, err := Convert(1, c.from, c.to)
		if err != nil {
			t.Errorf("%s to %s: %v", c.from, c.to, err)
			continue
		}
		if tol := max(c.digits, 4e-16) * c.factor; math.Abs(got-c.factor) > tol {
			t.Errorf("1 %s = %v %s, SP 811 has %v", c.from, got, c.to, c.factor)
		}
	}
}

func TestConvertValues(t *testing.T) {
	for _, c := range []struct {
		n        float64
		from, to string
		want     float64
	}{
		{0.375, "in", "mm", 9.525},
		{9.525, "mm", "in", 0.375},
		{15.875, "mm", "in", 0.625},
		{212, "F", "C", 100},
		{-40, "F", "C", -40},
		{32, "F", "K", 273.15},
		{20, "ft/min", "m/s", 0.1016}, // LF03
	} {
		if got, err := Convert(c.n, c.from, c.to); err != nil || math.Abs(got-c.want) > 1e-12*math.Abs(c.want) {
			t.Errorf("%v %s = %v %s (%v), want %v", c.n, c.from, got, c.to, err, c.want)
		}
	}
}

func TestConvertRefuses(t *testing.T) {
	for _, c := range []struct {
		n        float64
		from, to string
	}{{1, "psi", "in"}, {1, "furlong", "in"}, {1, "in", "furlong"}, {math.NaN(), "in", "mm"}, {math.Inf(1), "in", "mm"}, {1e308, "km", "um"}} {
		if got, err := Convert(c.n, c.from, c.to); err == nil {
			t.Errorf("Convert(%v, %s, %s) = %v, want an error", c.n, c.from, c.to, got)
		}
	}
}

// Every unit converts to every other of its dimension and back.
func TestConvertRoundTrip(t *testing.T) {
	for _, f := range families {
		for _, a := range f.units {
			for _, b := range f.units {
				there := convert(7.3, &a, &b)
				if back := convert(there, &b, &a); math.Abs(back-7.3) > 1e-12 {
					t.Errorf("7.3 %s = %v %s = %v %s", a.name, there, b.name, back, a.name)
				}
			}
		}
	}
}

// Names and aliases must be distinct within a dimension, and aliases must stand
// in the table as spelling writes them, or they would never be found.
func TestTable(t *testing.T) {
	for _, f := range families {
		seen := map[string]string{}
		for _, u := range f.units {
			for _, a := range append([]string{u.name}, u.alias...) {
				key := spelling(a)
				if other, ok := seen[key]; ok && other != u.name {
					t.Errorf("%s: %q means %s and %s", f.dimension, a, other, u.name)
				}
				seen[key] = u.name
			}
			for _, a := range u.alias {
				if a != spelling(a) {
					t.Errorf("%s: alias %q is never found: spelled %q", f.dimension, a, spelling(a))
				}
			}
		}
		if _, err := Parse(f.example[:indexOr(f.example)], f.dimension); err != nil {
			t.Errorf("the example of %s does not parse: %v", f.dimension, err)
		}
	}
}

func indexOr(s string) int {
	for i := range s {
		if i+4 <= len(s) && s[i:i+4] == " or " {
			return i
		}
	}
	return len(s)
}
