package depreciation

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// M15 to M17: the six-tenths rule; 8.0 to 12.1 million for twice the capacity is
// a published worked example (Grist Project Management, Economy of scale).
func TestCapacity(t *testing.T) {
	v, err := CostToCapacity(200_000, 400_000, 0.6)
	near(t, "M15", 8_000_000*must(t, v, err), 12_125_733, 1e-6)
	v, err = CostToCapacity(10, 7.5, 0.6)
	near(t, "M16", 5200*must(t, v, err), 4375.63, 1e-5)
	v, err = ExponentBetween(200_000, 8.0, 400_000, 12.1)
	near(t, "M17", must(t, v, err), .5969, 1e-4)
}

// The exponent of two points leads from one to the other, and scaling there and
// back changes nothing.
func TestCapacityThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q1, times := rapid.Float64Range(0.1, 1e4).Draw(t, "q1"), rapid.Float64Range(1.02, 20).Draw(t, "times")
		n := rapid.Float64Range(0, 2).Draw(t, "n")
		if rapid.Bool().Draw(t, "smaller") {
			times = 1 / times
		}
		there, err := CostToCapacity(q1, q1*times, n)
		back, err2 := CostToCapacity(q1*times, q1, n)
		if got := must(t, there, err) * must(t, back, err2); math.Abs(got-1) > 1e-12 {
			t.Fatalf("there and back makes %v, want 1", got)
		}
		found, err := ExponentBetween(q1, 500, q1*times, 500*there)
		if math.Abs(must(t, found, err)-n) > 1e-10 {
			t.Fatalf("exponent %v found, %v was used", found, n)
		}
	})
}
