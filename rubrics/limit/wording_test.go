package limit

import (
	"strings"
	"testing"
	"unicode"
)

// What is refused is refused in one readable line, and no figure of it is
// rounded away.
func TestRefusalsRead(t *testing.T) {
	for _, c := range []struct{ name, nominal, odd, says string }{
		{"bounds in a large unit", "3 km", "", "it lies between 7.62e-07 km and 0.000152 km"},
		{"bounds in a usual unit", "9 in", "", "it lies between 0.03 in and 6 in"},
		{"a name that steers the terminal", "3/8 in", "\x1b[2J", `"\x1b[2J": rope-diameter takes no such quantity`},
		{"a name without end", "3/8 in", strings.Repeat("x", 5000), `xxx...": rope-diameter takes no such quantity`},
	} {
		given := map[string]string{"nominal": c.nominal, "measured": "0.3 in"}
		if c.odd != "" {
			given[c.odd] = "1 in"
		}
		_, err := Compute("rope-diameter", given)
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want %q", c.name, err, c.says)
			continue
		}
		if s := err.Error(); len(s) > 400 || strings.ContainsFunc(s, unicode.IsControl) {
			t.Errorf("%s: %.500q", c.name, s)
		}
	}
}

// Figures that are rounding and nothing else are still shown as 0.
func TestShow(t *testing.T) {
	for _, c := range []struct {
		x        float64
		decimals int
		want     string
	}{{0, 2, "0"}, {-1e-17, 4, "0"}, {1e-17, 4, "0"}, {0.0004, 2, "0.0004"}, {-0.0004, 2, "-0.0004"}, {0.125, 2, "0.12"}, {12345.6, 3, "12346"}} {
		if got := show(c.x, c.decimals); got != c.want {
			t.Errorf("show(%g, %d) = %s, want %s", c.x, c.decimals, got, c.want)
		}
	}
}
