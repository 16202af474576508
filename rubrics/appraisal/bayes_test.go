package appraisal

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The very function that updates the classes of keeping, on textbook cases.
func TestBayesAgainstTextbooks(t *testing.T) {
	t.Run("M48", func(t *testing.T) {
		// Play-tennis table of 14 days, (sunny, cool, high humidity, windy):
		// classes yes, no. The counts were read in a public copy of the table.
		w := weigh([]float64{9. / 14, 5. / 14})
		for _, seen := range [][]float64{{2. / 9, 3. / 5}, {3. / 9, 1. / 5}, {3. / 9, 4. / 5}, {3. / 9, 3. / 5}} {
			w.see(seen)
		}
		near(t, "yes before dividing", math.Exp(w[0]), 0.00529101, 1e-6)
		near(t, "no before dividing", math.Exp(w[1]), 0.02057143, 1e-6)
		near(t, "P(no)", w.shares()[1], 0.795417, 1e-6)
	})
	t.Run("M49", func(t *testing.T) {
		// Prior 1 %, sensitivity 80 %, false positives 9.6 % (Eddy 1982,
		// Gigerenzer; from memory), one positive and a second.
		w := weigh([]float64{.01, .99})
		for _, want := range []float64{0.0776398, 0.4122691} {
			w.see([]float64{.8, .096})
			near(t, "P(defect)", w.shares()[0], want, 1e-6)
		}
	})
}

// Whatever the evidence: shares are probabilities that sum to 1, do not mind the
// order of findings, and are those of the plain product where it does not vanish.
func TestBayesProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		open := rapid.Float64Range(1e-6, 1-1e-6)
		n := rapid.IntRange(2, 6).Draw(t, "classes")
		row := func(label string) []float64 { return rapid.SliceOfN(open, n, n).Draw(t, label) }
		prior := row("prior")
		findings := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) []float64 {
			return rapid.SliceOfN(open, n, n).Draw(t, "likelihood")
		}), 0, 400).Draw(t, "findings")
		one, two := weigh(prior), weigh(prior)
		plain := append([]float64(nil), prior...)
		for i, l := range findings {
			one.see(l)
			two.see(findings[len(findings)-1-i])
			for k := range plain {
				plain[k] *= l[k]
			}
		}
		a, b := one.shares(), two.shares()
		sum, total := 0.0, 0.0
		for k := range a {
			if !(a[k] >= 0 && a[k] <= 1) {
				t.Fatalf("share %d is %v", k, a[k])
			}
			if math.Abs(a[k]-b[k]) > 1e-9 {
				t.Fatalf("the order of the findings counts: %v and %v", a, b)
			}
			sum += a[k]
			total += plain[k]
		}
		if math.Abs(sum-1) > 1e-12 {
			t.Fatalf("the shares sum to %v", sum)
		}
		for k := range a {
			if total > 1e-250 && math.Abs(a[k]-plain[k]/total) > 1e-9 {
				t.Fatalf("share %d is %v, the plain product gives %v", k, a[k], plain[k]/total)
			}
		}
	})
}

// More findings than any rubric has: the plain product would vanish.
func TestBayesDoesNotVanish(t *testing.T) {
	w := weigh([]float64{.3, .5, .2})
	for range 5000 {
		w.see([]float64{.03, .1, .3})
		w.see([]float64{.97, .9, .7})
	}
	got := w.shares()
	if got[2] != 1 || got[0] < 0 || got[1] < 0 {
		t.Errorf("shares %v, want all in the last class", got)
	}
}
