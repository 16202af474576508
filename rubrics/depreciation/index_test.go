package depreciation

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// M67: rule of the US Bureau of Labor Statistics' guide to price adjustment (from
// memory); the figure follows from it. The difference in points would give 27,306.
func TestTrended(t *testing.T) {
	v, err := Trended(18_000, 210.7, 262.4)
	near(t, "M67", must(t, v, err), 22_416.71, 1e-6)
	rapid.Check(t, func(t *rapid.T) {
		cost, index := rapid.Float64Range(1, 1e9).Draw(t, "cost"), rapid.Float64Range(1, 1000)
		then, now := index.Draw(t, "then"), index.Draw(t, "now")
		there, err := Trended(cost, then, now)
		back, err2 := Trended(must(t, there, err), now, then)
		if math.Abs(must(t, back, err2)/cost-1) > 1e-12 {
			t.Fatalf("%v there and %v back", there, back)
		}
	})
}
