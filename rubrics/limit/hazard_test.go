package limit

import (
	"fmt"
	"testing"
)

// ANSI Z535.4-2007, 4.14.1 to 4.14.4, read in a label maker's summary.
func TestSignalWord(t *testing.T) {
	is := func(word, colour, symbol string) map[string]string {
		return map[string]string{"signal word": word, "colour": colour, "alert symbol": symbol}
	}
	says(t, "signal-word", []saying{
		{"HZ01", "chance=will; harm=death-or-serious", is("DANGER", "red", "yes")},
		{"HZ02", "chance=could; harm=death-or-serious", is("WARNING", "orange", "yes")},
		{"HZ03", "chance=could; harm=minor-or-moderate", is("CAUTION", "yellow", "yes")},
		{"HZ03 will", "chance=will; harm=minor-or-moderate", is("CAUTION", "yellow", "yes")},
		{"HZ04", "chance=could; harm=property", is("NOTICE", "blue", "never")},
		{"HZ04 will", "chance=will; harm=property", is("NOTICE", "blue", "never")}, // DANGER is never for property alone
	})
	// The most severe word has the least value, so that the worst of several wins.
	check(t, "signal-word", 0, []row{
		{"HZ01", "chance=will; harm=death-or-serious", 1, "", Computed, nil},
		{"HZ02", "chance=could; harm=death-or-serious", 2, "", Computed, nil},
		{"HZ03", "chance=could; harm=minor-or-moderate", 3, "", Computed, nil},
		{"HZ04", "chance=could; harm=property", 4, "", Computed, nil},
	})
	refuses(t, "signal-word", []refusal{{"chance=may; harm=property", "chance", "one of will, could"}, {"chance=will", "harm", "missing"}})
}

// MIL-STD-882E Table III (public copy) and the values of MIL-STD-882D Table A-III
// (reprinted); its bands are from memory.
func TestRiskCell(t *testing.T) {
	says(t, "risk-cell", []saying{
		{"RM01", "severity=1; probability=C", map[string]string{"risk": "High", "cell": "1C"}},
		{"RM02", "severity=1; probability=D", map[string]string{"risk": "Serious"}},
		{"RM03", "severity=2; probability=C", map[string]string{"risk": "Serious"}},
		{"RM04 T2", "severity=3; probability=E", map[string]string{"risk": "Medium"}}, // a public copy has Low
		{"RM05", "severity=4; probability=C", map[string]string{"risk": "Low"}},
		{"RM06", "severity=1; probability=F", map[string]string{"risk": "Eliminated", "cell": "1F"}},
		{"small letter", "severity=1; probability=c", map[string]string{"cell": "1C"}},
	})
	check(t, "risk-cell", 0, []row{
		{"RM04 value", "severity=3; probability=E", 17, "", Computed, nil},
		{"RM07", "severity=2; probability=B", 5, "", Computed, nil},
	})
	// Every cell of Table III agrees with the band its 882D value falls into.
	bands := func(value float64) string {
		switch {
		case value <= 5:
			return "High"
		case value <= 9:
			return "Serious"
		case value <= 17:
			return "Medium"
		}
		return "Low"
	}
	seen := map[float64]bool{}
	for row, letter := range "ABCDE" {
		for severity := 1; severity <= 4; severity++ {
			cell := fmt.Sprintf("severity=%d; probability=%c", severity, letter)
			res := must(t, "risk-cell", given(cell))
			f, _ := further(res, "risk")
			if res.Value < 1 || res.Value > 20 || seen[res.Value] || f.Text != bands(res.Value) {
				t.Errorf("row %d, %s: %s with the value %v", row, cell, f.Text, res.Value)
			}
			seen[res.Value] = true
			want := Published
			if cell == "severity=3; probability=E" {
				want = Memory
			}
			if res.Status != want {
				t.Errorf("%s: %s, want %s", cell, res.Status, want)
			}
		}
	}
	for severity := 1; severity <= 4; severity++ {
		if f, _ := further(must(t, "risk-cell", given(fmt.Sprintf("severity=%d; probability=F", severity))), "risk"); f.Text != "Eliminated" {
			t.Errorf("%dF is %s", severity, f.Text)
		}
	}
	refuses(t, "risk-cell", []refusal{{"severity=5; probability=A", "severity", "one of 1, 2, 3, 4"}, {"severity=1; probability=G", "probability", "one of A"}})
}
