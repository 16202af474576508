package appraisal

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// Ordering by cells is sorting, whatever the numbers.
func TestCellsOrderAsSorting(t *testing.T) {
	var c cellsOf
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.SliceOfN(rapid.OneOf(rapid.Float64Range(-1e9, 1e9), rapid.Float64Range(0, 1), rapid.Just(0.0), rapid.Float64Range(-1e-300, 1e-300)), 1, 300).Draw(t, "x")
		want, sorted, room := slices.Sorted(slices.Values(x)), make([]float64, len(x)), make([]float64, len(x)+3)
		c.order(x, sorted)
		for i := range want {
			if sorted[i] != want[i] {
				t.Fatalf("place %d has %v, sorting gives %v", i, sorted[i], want[i])
			}
			if got := c.nth(x, i, room); got != want[i] {
				t.Fatalf("number %d is %v, sorting gives %v", i, got, want[i])
			}
		}
	})
}
