package appraisal

import "testing"

func TestParseMoney(t *testing.T) {
	for _, c := range []struct {
		in   string
		want Money
		bad  bool
	}{
		{"180", 18000, false}, {"12.50", 1250, false}, {" 0.5 ", 50, false}, {"-3", -300, false},
		{"", 0, true}, {"-", 0, true}, {"1.234", 0, true}, {"1e9", 0, true}, {"NaN", 0, true}, {"1,5", 0, true},
		{"12.", 0, true}, {"+4", 0, true}, {"99999999999999999999", 0, true}, {"1000000000.01", 0, true},
	} {
		got, err := ParseMoney(c.in)
		if (err != nil) != c.bad || got != c.want {
			t.Errorf("ParseMoney(%q) = %d, %v; want %d, error %v", c.in, got, err, c.want, c.bad)
		}
	}
}
