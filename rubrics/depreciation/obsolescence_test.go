package depreciation

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// M12, M13, M14: the American Society of Appraisers' text, from memory; the
// figures follow from its rules.
func TestObsolescence(t *testing.T) {
	v, err := DepreciatedCost(9000, .40, 0, 0)
	near(t, "M12", must(t, v, err), 5400, 1e-9)
	v, err = DepreciatedCost(9000, .40, .10, .05)
	near(t, "M13", must(t, v, err), 4617, 1e-9)
	v, err = DepreciatedCost(5400, 0, .10, .05)
	near(t, "M13 from 5,400", must(t, v, err), 4617, 1e-9)
	v, err = Inutility(80, 100, .7)
	near(t, "M14", must(t, v, err), .1446, 4e-4) // printed to four figures
}

// Shares taken one after the other may be taken in any order, and each takes less
// than if they were summed.
func TestDepreciatedCostInAnyOrder(t *testing.T) {
	share := rapid.Float64Range(0, 1)
	rapid.Check(t, func(t *rapid.T) {
		p, f, e := share.Draw(t, "p"), share.Draw(t, "f"), share.Draw(t, "e")
		v, err := DepreciatedCost(1000, p, f, e)
		w, err2 := DepreciatedCost(1000, e, p, f)
		must(t, v, err)
		must(t, w, err2)
		if math.Abs(v-w) > 1e-9 {
			t.Fatalf("%v in one order, %v in another", v, w)
		}
		if v < 1000*(1-p-f-e)-1e-9 || v > 1000*(1-max(p, f, e))+1e-9 {
			t.Fatalf("%v lies outside what the shares allow", v)
		}
	})
}

// Nothing is lost at full use, all at none, and more the less it is used.
func TestInutilityFallsWithUse(t *testing.T) {
	for _, c := range []struct{ actual, want float64 }{{100, 0}, {0, 1}} {
		if got, err := Inutility(c.actual, 100, .6); err != nil || got != c.want {
			t.Errorf("%v of 100: %v, %v; want %v", c.actual, got, err, c.want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Float64Range(0.1, 2).Draw(t, "n")
		a, b := rapid.Float64Range(0, 100).Draw(t, "a"), rapid.Float64Range(0, 100).Draw(t, "b")
		less, err := Inutility(min(a, b), 100, n)
		more, err2 := Inutility(max(a, b), 100, n)
		if must(t, less, err) < must(t, more, err2)-1e-12 {
			t.Fatalf("%v used loses %v, %v used loses %v", min(a, b), less, max(a, b), more)
		}
	})
}
