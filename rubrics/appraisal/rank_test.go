package appraisal

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// M56: the weighted sum of the vehicle example (four criteria, the last a cost),
// max-normalised, cost as least over own. Source: rule, recomputed; the table is from
// a lecture on TOPSIS, its first row from memory. M51-M55 (AHP, TOPSIS) check nothing
// here: both turn the order of two round when a third comes in.
func TestWeightedSum(t *testing.T) {
	rows := [][]float64{{7, 9, 9, 8}, {8, 7, 8, 7}, {9, 6, 8, 9}, {6, 7, 8, 6}}
	most, least := []float64{9, 9, 9}, 6.0
	for i, want := range []float64{.9278, .8381, .7667, .8444} {
		r := rankable{}
		for c, x := range rows[i] {
			part := least / x
			if c < 3 {
				part = x / most[c]
			}
			r.parts = append(r.parts, int(math.Round(part*full)))
		}
		weights := []int{10, 40, 30, 20}
		// Half a unit of the table's fourth place, and of ours.
		if got := float64(r.sum(weights)) / float64(full*total(weights)); math.Abs(got-want) > 1e-4 {
			t.Errorf("M56 row %d: %.5f, want %.4f", i+1, got, want)
		}
	}
}

func drawListings(t *rapid.T) ([]rankable, []int) {
	n := rapid.IntRange(2, MostCompared).Draw(t, "listings")
	k := len(Criteria)
	listings := make([]rankable, n)
	// Few distinct values make ties common.
	part := rapid.OneOf(rapid.IntRange(0, full), rapid.SampledFrom([]int{notKnown, 0, full / 2, full}))
	for i := range listings {
		listings[i] = rankable{gated: rapid.IntRange(0, 3).Draw(t, "gated") == 0, parts: rapid.SliceOfN(part, k, k).Draw(t, "parts")}
	}
	weights := rapid.SliceOfN(rapid.IntRange(0, mostWeight), k, k).Filter(func(w []int) bool { return total(w) > 0 }).Draw(t, "weights")
	return listings, weights
}

// M57: no weights lift a listing that a verdict bars above one that none bars.
func TestNoWeightLiftsOverAGate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		listings, weights := drawListings(t)
		for c := range listings[0].parts { // all else at its best
			listings[0].gated, listings[0].parts[c] = true, full
		}
		behind := false
		for _, i := range rank(listings, weights) {
			if behind && !listings[i].gated {
				t.Fatalf("a barred listing stands before an open one: %v", rank(listings, weights))
			}
			behind = behind || listings[i].gated
		}
	})
}

// No rank reversal: a listing more or less never turns the others round.
func TestNoRankReversal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		listings, weights := drawListings(t)
		keep := rapid.SliceOfN(rapid.Bool(), len(listings), len(listings)).Draw(t, "keep")
		var some []rankable
		var want, was []int
		for i := range listings {
			if keep[i] {
				some, was = append(some, listings[i]), append(was, i)
			}
		}
		for _, i := range rank(listings, weights) {
			if keep[i] {
				want = append(want, i)
			}
		}
		var got []int
		for _, i := range rank(some, weights) {
			got = append(got, was[i])
		}
		if !slices.Equal(got, want) {
			t.Fatalf("alone they stand %v, among the others %v", got, want)
		}
	})
}

// Each move against trying every weight: it is the nearest that changes the leader,
// and where none is named none does.
func TestMovesAgainstTryingAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		listings, weights := drawListings(t)
		c := &Comparison{Criteria: weighed(nil), Sides: make([]Side, len(listings))}
		for k := range c.Criteria {
			c.Criteria[k].Weight = weights[k]
		}
		leader := rank(listings, weights)[0]
		named := map[string]Move{}
		last := 0
		for _, m := range c.moves(voice{}, listings) {
			if named[m.Criterion] = m; m.distance() < last {
				t.Fatalf("%v comes after one further off", m)
			}
			last = m.distance()
		}
		if listings[leader].gated {
			if len(named) > 0 {
				t.Fatalf("all are barred, yet %v", named)
			}
			return
		}
		for k, from := range weights {
			nearest := mostWeight + 1
			for w := 0; w <= mostWeight; w++ {
				moved := slices.Clone(weights)
				moved[k] = w
				if total(moved) > 0 && rank(listings, moved)[0] != leader {
					nearest = min(nearest, max(w-from, from-w))
				}
			}
			m, ok := named[c.Criteria[k].ID]
			switch {
			case !ok && nearest <= mostWeight:
				t.Fatalf("%s: a change by %d gives another leader, but none is named", c.Criteria[k].ID, nearest)
			case ok && (m.distance() != nearest || m.From != from):
				t.Fatalf("%s: from %d to %d, but %d is the nearest change", m.Criterion, m.From, m.To, nearest)
			case ok:
				moved := slices.Clone(weights)
				moved[k] = m.To
				if rank(listings, moved)[0] != m.Winner || m.Winner == leader || listings[m.Winner].gated {
					t.Fatalf("%s: at %d %d leads, not %d", m.Criterion, m.To, rank(listings, moved)[0], m.Winner)
				}
			}
		}
	})
}
