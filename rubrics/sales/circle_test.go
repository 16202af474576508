package sales

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestGreatest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		values := rapid.SliceOfN(rapid.OneOf(rapid.Float64Range(0, 1), rapid.SampledFrom([]float64{-1, 0, 0.5})), 1, 40).Draw(t, "values")
		k := rapid.IntRange(1, len(values)).Draw(t, "k")
		sorted := slices.Sorted(slices.Values(values))
		want := sorted[len(sorted)-k]
		if got := greatest(slices.Clone(values), k); got != want {
			t.Fatalf("%v, want %v", got, want)
		}
	})
}

// The circle holds the most alike, and of the others none.
func TestCircleDrawsTheMostAlike(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		form, sales, thing := plainMarket(t, 2, 20)
		form.Neighbours = rapid.IntRange(1, 22).Draw(t, "neighbours")
		m := Fit(form, sales)
		coded := m.code(&thing)
		out := rapid.IntRange(nobody, len(sales)-1).Draw(t, "out")
		c := m.newCircle()
		c.draw(&coded, out)
		rest := len(sales)
		if out != nobody {
			rest--
		}
		if want := min(rest, form.Neighbours); len(c.near) != want || c.count != float64(want) {
			t.Fatalf("%d drawn, want %d", len(c.near), want)
		}
		least := slices.Min(c.likeness)
		for i := range sales {
			x := m.likeness(&coded, &m.coded[i])
			if in := slices.Contains(c.near, i); i == out && in || i != out && (in && x < least || !in && x > least) {
				t.Fatalf("sale %d with a likeness of %v is in: %v; the least is %v", i, x, in, least)
			}
		}
		if !slices.IsSorted(c.residual) {
			t.Fatalf("not by residual: %v", c.residual)
		}
	})
}
