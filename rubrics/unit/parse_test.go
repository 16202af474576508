package unit

import (
	"errors"
	"math"
	"strings"
	"testing"
)

func TestParse(t *testing.T) {
	for _, c := range []struct {
		text, dimension string
		n               float64
		unit            string
	}{
		{"3/8 in", "length", 0.375, "in"},
		{"3/8in.", "length", 0.375, "in"},
		{"1 1/2 in", "length", 1.5, "in"},
		{`1-1/2"`, "length", 1.5, "in"},
		{"1½ in", "length", 1.5, "in"},
		{"½”", "length", 0.5, "in"},
		{"9.5 mm", "length", 9.5, "mm"},
		{"9.5MM", "length", 9.5, "mm"},
		{"0,35 mm", "length", 0.35, "mm"},
		{"0,350 mm", "length", 0.35, "mm"},
		{".375 in", "length", 0.375, "in"},
		{",375 in", "length", 0.375, "in"},
		{"1.234,5 mm", "length", 1234.5, "mm"},
		{"1,234.5 mm", "length", 1234.5, "mm"},
		{"1.234 in", "length", 1.234, "in"},
		{"1 234,5 mm", "length", 1234.5, "mm"},
		{"6 ft 2 in", "length", 74, "in"},
		{`6'-2 1/2"`, "length", 74.5, "in"},
		{`-6' 2"`, "length", -74, "in"},
		{"6.5 ft", "length", 6.5, "ft"},
		{"3 000 psi", "pressure", 3000, "psi"},
		{"3\u00a0000 psi", "pressure", 3000, "psi"},
		{"3,000 psi", "pressure", 3000, "psi"},
		{"12,345,678 psi", "pressure", 12345678, "psi"},
		{"170 bar", "pressure", 170, "bar"},
		{"20 short tons", "force", 20, "short ton"},
		{"20 tons", "force", 20, "short ton"},
		{"20 t", "force", 20, "tf"},
		{"20 tons", "mass", 20, "short ton"},
		{"20 t", "mass", 20, "t"},
		{"9,000 lbs", "mass", 9000, "lb"},
		{"50,000 lb", "force", 50000, "lbf"},
		{"2.5 gpm", "flow", 2.5, "gpm"},
		{"9.5 l / min", "flow", 9.5, "L/min"},
		{"1-1/2 hp", "power", 1.5, "hp"},
		{"1.1 kW", "power", 1.1, "kW"},
		{"20 ft/min", "speed", 20, "ft/min"},
		{"13 tpi", "threads", 13, "tpi"},
		{"85 ft-lb", "torque", 85, "lbf ft"},
		{"115 N·m", "torque", 115, "N m"},
		{"12 sq. in", "area", 12, "in2"},
		{"12 in²", "area", 12, "in2"},
		{"1 min 15 s", "time", 75, "s"},
		{"58 %", "share", 58, "%"},
		{"6", "number", 6, ""},
		{"-40 °F", "temperature", -40, "F"},
		{"2.5e-3 in", "length", 0.0025, "in"},
	} {
		v, err := Parse(c.text, c.dimension)
		if err != nil {
			t.Errorf("Parse(%q, %s): %v", c.text, c.dimension, err)
			continue
		}
		if v.N != c.n || v.Unit != c.unit { // exact: decimal entries and short fractions
			t.Errorf("Parse(%q, %s) = %v %q, want %v %q", c.text, c.dimension, v.N, v.Unit, c.n, c.unit)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for _, c := range []struct{ text, dimension, says string }{
		{"", "length", "nothing was entered"},
		{"   ", "length", "nothing was entered"},
		{"-", "length", "no number"},
		{"in", "length", "no number"},
		{"3/8", "length", "the unit is missing: units of length are in, ft, mm"},
		{"0,35", "length", "the unit is missing"},
		{"3 psi", "length", `"psi" is a unit of pressure, not of length`},
		{"3 furlongs", "length", "not known"},
		{"9,525 mm", "length", "two ways: write 9525 or 9.525"},
		{"1,375 in", "length", "two ways"},
		{"12,000", "number", "two ways"},
		{"1e309 mm", "length", "too large"},
		{"1e20 mm", "length", "too large"},
		{"12345678901234567890 mm", "length", "too large"},
		{"0.12345678901234567890 mm", "length", "digits"},
		{"NaN mm", "length", "no number"},
		{"Inf mm", "length", "no number"},
		{"1/0 in", "length", "divides by zero"},
		{"1 5/4 in", "length", "mixed number"},
		{"1/2/3 in", "length", "not a fraction"},
		{"1//2 in", "length", "not known"},
		{"1,23,456 psi", "pressure", "not a number"},
		{"1.2.3 mm", "length", "not a number"},
		{"1,234.567,8 mm", "length", "not a number"},
		{"12 34 mm", "length", "not a number"},
		{"--3 mm", "length", "not a number"},
		{"6 ft 14 in", "length", "does not add up"},
		{"6.5 ft 2 in", "length", "does not add up"},
		{"6 ft 2", "length", "the unit is missing"},
		{"2 in 6 ft", "length", "more than one number"},
		{"3 in 4 in 5 in 6 in 7 in", "length", "more than one number"},
		{strings.Repeat("1", 200) + " in", "length", "too long"},
		{"\xff in", "length", "not text"},
		{"3 in", "girth", "not known"},
		{"3 in", "number", "is a unit of length, not of number: a plain number"},
	} {
		v, err := Parse(c.text, c.dimension)
		var typed *Error
		if err == nil || !errors.As(err, &typed) || !strings.Contains(err.Error(), c.says) {
			t.Errorf("Parse(%q, %s) = %v, %v; want an error saying %q", c.text, c.dimension, v, err, c.says)
		}
	}
}

func TestParseDefault(t *testing.T) {
	if v, err := ParseDefault("3/8", "length", "in"); err != nil || v != (Value{0.375, "in"}) {
		t.Errorf("got %v, %v", v, err)
	}
	if v, err := ParseDefault("9.5 mm", "length", "in"); err != nil || v != (Value{9.5, "mm"}) {
		t.Errorf("a written unit must win: got %v, %v", v, err)
	}
	if _, err := ParseDefault("3", "length", "psi"); err == nil {
		t.Error("psi was taken as a length")
	}
	if _, err := ParseDefault("6 ft 2", "length", "in"); err == nil {
		t.Error("the second number of two took the default unit")
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"3/8 in", `6'-2 1/2"`, "1.234,5 mm", "3 000 psi", "1e309 mm", "½ in", "20 short tons", "5 /in"} {
		for i := range Dimensions() {
			f.Add(s, i)
		}
	}
	f.Fuzz(func(t *testing.T, text string, i int) {
		d := Dimensions()[((i%len(families))+len(families))%len(families)]
		v, err := Parse(text, d)
		if err != nil {
			if !strings.Contains(err.Error(), ": ") {
				t.Fatalf("Parse(%q, %s): %q does not say what would be right", text, d, err)
			}
			return
		}
		if math.IsNaN(v.N) || math.Abs(v.N) > 61*maxSize {
			t.Fatalf("Parse(%q, %s) = %v", text, d, v.N)
		}
		// What is written back reads as the same value.
		if written := v.String(); len(written) <= maxText && math.Abs(v.N) <= maxSize {
			again, err := Parse(written, d)
			if err != nil || again != v {
				t.Fatalf("Parse(%q, %s) = %v, but its text %q reads %v, %v", text, d, v, written, again, err)
			}
		}
	})
}

// A bare fraction under a metric unit is an inch fraction in every shop: 3/8 mm
// would make a cable of a third of a millimetre.
func TestFractionUnderMetricUnitIsAsked(t *testing.T) {
	for _, text := range []string{"3/8", "1 1/2", "1-1/2", "⅜"} {
		if v, err := ParseDefault(text, "length", "mm"); err == nil || !strings.Contains(err.Error(), "write") {
			t.Errorf("%q under mm: %v, %v, want a question", text, v, err)
		}
		if _, err := ParseDefault(text, "length", "in"); err != nil {
			t.Errorf("%q under in: %v", text, err)
		}
		if v, err := ParseDefault(text+" in", "length", "mm"); err != nil || v.Unit != "in" {
			t.Errorf("%q in: %v, %v", text, v, err)
		}
	}
	if v, err := ParseDefault("9.5", "length", "mm"); err != nil || v.N != 9.5 {
		t.Errorf("9.5 under mm: %v, %v", v, err)
	}
}
