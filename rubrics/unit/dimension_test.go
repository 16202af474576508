package unit

import (
	"math"
	"strings"
	"testing"
)

// The dimensions that are measured in a shop, each with the unit of an inch shop
// and of a metric one, and 1 of the first in the second as NIST SP 811 (2008),
// Appendix B.8, prints it; the milliampere is the SI prefix.
var measuredIn = []struct {
	dimension, inch, metric string
	factor, digits          float64
}{
	{"length", "in", "mm", 25.4, 0},
	{"length", "ft", "m", 0.3048, 0},
	{"mass", "lb", "kg", 0.4535924, 1e-7},
	{"mass", "short ton", "t", 0.9071847, 1e-7},
	{"pressure", "psi", "bar", 0.06894757, 1e-7},
	{"pressure", "psi", "MPa", 0.006894757, 1e-7},
	{"force", "lbf", "kN", 0.004448222, 2e-7},
	{"torque", "lbf ft", "N m", 1.355818, 5e-7},
	{"torque", "lbf in", "N m", 0.1129848, 5e-7},
	{"flow", "gpm", "L/min", 3.785412, 1.5e-7}, // the gallon; both are a minute's
	{"flow", "cfm", "L/min", 28.31685, 2e-7},
	{"speed", "ft/min", "m/s", 0.00508, 0},
	{"speed", "in/s", "mm/s", 25.4, 0},
	{"speed", "mph", "km/h", 1.609344, 0},
	{"volume", "gal", "L", 3.785412, 1.5e-7},
	{"volume", "qt", "L", 0.9463529, 1e-7},
	{"volume", "in3", "mL", 16.38706, 4e-7},
	{"current", "A", "mA", 1000, 0},
	{"temperature", "F", "C", 0, 0}, // by its formula, below
}

// Every dimension understands every way of writing, in both units, with the unit
// written and with the unit of the shop assumed.
func TestEntryByDimension(t *testing.T) {
	entries := []struct {
		text string
		n    float64
	}{
		{"3/8", 0.375}, {"1 1/2", 1.5}, {"1-1/2", 1.5}, {"½", 0.5}, {"9.5", 9.5}, {"0,35", 0.35}, {"0,350", 0.35},
		{"3 000", 3000}, {"3\u00a0000", 3000}, {"3 000,5", 3000.5}, {"1.234,5", 1234.5}, {"1,234.5", 1234.5}, {".5", 0.5}, {"12", 12},
	}
	seen := map[string]bool{}
	for _, m := range measuredIn {
		seen[m.dimension] = true
		for _, u := range []string{m.inch, m.metric} {
			for _, e := range entries {
				for _, text := range []string{e.text + " " + u, e.text + u} {
					v, err := Parse(text, m.dimension)
					if err != nil || v.N != e.n || v.Unit != u {
						t.Errorf("Parse(%q, %s) = %v %q, %v", text, m.dimension, v.N, v.Unit, err)
					}
				}
				v, err := ParseDefault(e.text, m.dimension, u)
				if metricLength[u] && strings.ContainsAny(e.text, "/½") {
					if err == nil {
						t.Errorf("%q was taken for a fraction of %s", e.text, u)
					}
					continue
				}
				if err != nil || v.N != e.n || v.Unit != u {
					t.Errorf("ParseDefault(%q, %s, %s) = %v %q, %v", e.text, m.dimension, u, v.N, v.Unit, err)
				}
			}
		}
		if _, err := Parse("3/8", m.dimension); err == nil || !strings.Contains(err.Error(), "the unit is missing") {
			t.Errorf("3/8 without a unit as %s: %v", m.dimension, err)
		}
		for _, wrong := range measuredIn {
			if familyOf(m.dimension).find(wrong.inch) != nil {
				continue // "lb" is a force too
			}
			if _, err := Parse("3 "+wrong.inch, m.dimension); err == nil || !strings.Contains(err.Error(), "not of "+m.dimension) {
				t.Errorf("3 %s as %s: %v, want it to name both", wrong.inch, m.dimension, err)
			}
		}
	}
	for _, d := range []string{"length", "mass", "pressure", "force", "torque", "flow", "speed", "volume", "current", "temperature"} {
		if !seen[d] {
			t.Errorf("%s is not among them", d)
		}
	}
}

// Inch to metric as printed, and back by the reciprocal.
func TestDimensionsAgainstSP811(t *testing.T) {
	for _, m := range measuredIn {
		if m.dimension == "temperature" {
			continue
		}
		tol := max(m.digits, 4e-16)
		there, err := Convert(1, m.inch, m.metric)
		if err != nil || math.Abs(there-m.factor) > tol*m.factor {
			t.Errorf("1 %s = %v %s (%v), SP 811 has %v", m.inch, there, m.metric, err, m.factor)
		}
		back, err := Convert(1, m.metric, m.inch)
		if err != nil || math.Abs(back*m.factor-1) > tol+4e-16 {
			t.Errorf("1 %s = %v %s (%v), SP 811 has 1/%v", m.metric, back, m.inch, err, m.factor)
		}
	}
	// SP 811, B.8: t/C = (t/F - 32) / 1.8, T/K = t/C + 273.15.
	for _, c := range []struct{ f, c, k float64 }{{32, 0, 273.15}, {212, 100, 373.15}, {-40, -40, 233.15}, {68, 20, 293.15}, {170, 230.0 / 3, 273.15 + 230.0/3}} {
		for unit, want := range map[string]float64{"C": c.c, "K": c.k} {
			got, err := Convert(c.f, "F", unit)
			if err != nil || math.Abs(got-want) > 1e-12*max(1, math.Abs(want)) {
				t.Errorf("%v F = %v %s (%v), want %v", c.f, got, unit, err, want)
			}
			if back, err := Convert(want, unit, "F"); err != nil || math.Abs(back-c.f) > 1e-12*max(1, math.Abs(c.f)) {
				t.Errorf("%v %s = %v F (%v), want %v", want, unit, back, err, c.f)
			}
		}
	}
}
