package appraisal

import (
	"math"
	"strconv"
	"strings"

	"asfound/rubrics/say"
)

// Money is an amount in cents of the shop's currency.
type Money int64

// maxMoney bounds every amount: one billion currency units.
const maxMoney Money = 1_000_000_000_00

// ParseMoney reads a plain decimal amount such as "180" or "12.50".
func ParseMoney(s string) (Money, error) {
	s = strings.TrimSpace(s)
	whole, frac, dot := strings.Cut(s, ".")
	if dot && (len(frac) == 0 || len(frac) > 2) {
		return 0, say.Errorf("%q is not an amount: write it like 180 or 12.50", s)
	}
	for len(frac) < 2 {
		frac += "0"
	}
	n, err := strconv.ParseInt(whole+frac, 10, 64)
	if err != nil || strings.HasPrefix(s, "+") || strings.TrimPrefix(whole, "-") == "" {
		return 0, say.Errorf("%q is not an amount: write it like 180 or 12.50", s)
	}
	if m := Money(n); m > maxMoney || m < -maxMoney {
		return 0, say.Errorf("%q is too large: at most 1000000000", s)
	}
	return Money(n), nil
}

// UnmarshalYAML lets rubric files write amounts in currency units.
func (m *Money) UnmarshalYAML(b []byte) error {
	v, err := ParseMoney(string(b))
	if err != nil {
		return err
	}
	*m = v
	return nil
}

// reach is the largest amount that a sum may come to: JSON readers that keep
// numbers as doubles have every cent up to it.
const reach = 9e15

// cents rounds a computed amount once, at the border of the engine.
func cents(x float64) Money { return Money(math.Floor(min(max(x, -reach), reach) + 0.5)) }

// Range is a three-point amount: at least, most likely, at most.
type Range struct {
	Low    Money `json:"low" yaml:"low" validate:"gte=0"`
	Likely Money `json:"likely" yaml:"likely" validate:"gtefield=Low"`
	High   Money `json:"high" yaml:"high" validate:"gtefield=Likely,lte=100000000000"` // maxMoney
}

// Hours is a three-point working time in hours.
type Hours struct {
	Low    float64 `json:"low" yaml:"low" validate:"gte=0,lte=2000"`
	Likely float64 `json:"likely" yaml:"likely" validate:"gtefield=Low"`
	High   float64 `json:"high" yaml:"high" validate:"gtefield=Likely,lte=2000"`
}

// Quantity is a number with its unit, kept together as entered.
type Quantity struct {
	N    float64 `json:"n"`
	Unit string  `json:"unit"`
}
