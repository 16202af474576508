package depreciation

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/mathext"
	"pgregory.net/rapid"
)

// Winfrey, Iowa Engineering Experiment Station Bulletin 125 (1935): constants Y0
// from memory, M and the survivors (in percent, to two decimals) solved from them
// apart from this code.
func TestSurvivors(t *testing.T) {
	ages := [5]float64{.50, .75, 1, 1.25, 1.50}
	rows := []struct {
		id        string
		y0, m     float64
		survivors [5]float64
	}{
		{"S0", 7.0806, 0.806, [5]float64{82.99, 67.40, 50, 32.60, 17.01}},
		{"S1", 9.0803, 1.828, [5]float64{88.92, 71.85, 50, 28.15, 11.08}},
		{"S2", 11.9113, 3.700, [5]float64{94.55, 77.60, 50, 22.40, 5.45}},
		{"S3", 15.6105, 6.902, [5]float64{98.21, 83.99, 50, 16.01, 1.79}}, // M21 at 75 %
		{"S4", 22.3294, 14.912, [5]float64{99.87, 92.25, 50, 7.75, 0.13}},
	}
	if len(rows) != len(SurvivorCurves) {
		t.Errorf("%d curves, %d of them checked", len(SurvivorCurves), len(rows))
	}
	for i, r := range rows {
		c := SurvivorCurves[i]
		if c.ID != r.id || c.Y0 != r.y0 || math.Abs(c.M-r.m) > 5e-4 {
			t.Errorf("%s: have %v", r.id, c)
		}
		// All retirements make 100 %: the area under the curve, by gonum.
		area := quad.Fixed(func(x float64) float64 { return c.Y0 * math.Pow(1-x*x/100, c.M) }, -10, 10, 2000, nil, 0)
		near(t, r.id+" all retirements", area, 100, 1e-5)
		for k, age := range ages {
			v, err := Survivors(r.id, age)
			if got := 100 * must(t, v, err); math.Abs(got-r.survivors[k]) > 0.0051 {
				t.Errorf("%s at %v average lives: %v %%, want %v %%", r.id, age, got, r.survivors[k])
			}
		}
		if v, err := Survivors(r.id, 1); err != nil || v != 0.5 {
			t.Errorf("M22 %s: %v, %v; want one half exactly", r.id, v, err)
		}
	}
}

// Reference: gonum's incomplete beta and quadrature. The remaining life is the
// area under the survivors from that age on over the survivors at that age.
func TestSurvivorCurvesAgainstGonum(t *testing.T) {
	for _, c := range SurvivorCurves {
		survivors := func(t float64) float64 { return mathext.RegIncBeta(c.M+1, c.M+1, 1-t/2) }
		for age := 0.0; age < 2; age += 1.0 / 32 {
			v, err := Survivors(c.ID, age)
			near(t, c.ID+" survivors", must(t, v, err), survivors(age), 1e-11)
			want := 15 * quad.Fixed(survivors, age, 2, 200, nil, 0) / survivors(age)
			remaining, depreciation, err := RemainingLife(c.ID, 15, 15*age)
			near(t, c.ID+" remaining life", must(t, remaining, err), want, 1e-6)
			near(t, c.ID+" depreciation", depreciation, 15*age/(15*age+want), 1e-6)
		}
	}
}

// What every symmetric type owes: all at 0, none from twice the average life on,
// the two halves mirror each other, and no jump where the halves meet.
func TestSurvivorInvariants(t *testing.T) {
	for _, c := range SurvivorCurves {
		t.Run(c.ID, rapid.MakeCheck(func(t *rapid.T) {
			at := func(age float64) float64 {
				v, err := Survivors(c.ID, age)
				return must(t, v, err)
			}
			if at(0) != 1 || at(2) != 0 || at(rapid.Float64Range(2, 50).Draw(t, "late")) != 0 {
				t.Fatalf("%v at 0, %v at 2", at(0), at(2))
			}
			x := rapid.Float64Range(0, 1).Draw(t, "x")
			if sum := at(1-x) + at(1+x); math.Abs(sum-1) > 1e-13 {
				t.Fatalf("survivors at %v and %v make %v, want 1", 1-x, 1+x, sum)
			}
			a, b := rapid.Float64Range(0, 2).Draw(t, "a"), rapid.Float64Range(0, 2).Draw(t, "b")
			if at(max(a, b)) > at(min(a, b))+1e-14 {
				t.Fatalf("%v survive at %v, %v at %v", at(a), a, at(b), b)
			}
			// The density is Y0/10 at most, in average lives.
			if at(min(a, b))-at(max(a, b)) > c.Y0/10*math.Abs(a-b)+1e-13 {
				t.Fatalf("survivors jump between %v and %v", a, b)
			}
		}))
	}
}

// The older, the fewer years are left, and yet the later the end.
func TestRemainingLifeFallsAndItsEndRises(t *testing.T) {
	for _, c := range SurvivorCurves {
		t.Run(c.ID, rapid.MakeCheck(func(t *rapid.T) {
			average := rapid.Float64Range(1, 60).Draw(t, "average")
			age := rapid.Float64Range(0, 2.2)
			a, b := age.Draw(t, "a")*average, age.Draw(t, "b")*average
			young, old := min(a, b), max(a, b)
			left := func(age float64) (float64, float64) {
				r, d, err := RemainingLife(c.ID, average, age)
				return must(t, r, err), d
			}
			early, worn := left(young)
			late, wornMore := left(old)
			slack := 1e-12 * average
			if late > early+slack || late < 0 {
				t.Fatalf("%v years left at %v, %v at %v", early, young, late, old)
			}
			if old+late < young+early-slack {
				t.Fatalf("the end falls from %v to %v", young+early, old+late)
			}
			if wornMore < worn-1e-12 || worn < 0 || wornMore > 1 {
				t.Fatalf("depreciation %v at %v, %v at %v", worn, young, wornMore, old)
			}
			if old >= 2*average && (late != 0 || wornMore != 1) {
				t.Fatalf("at %v, past twice the average life of %v, %v years are left and %v is lost", old, average, late, wornMore)
			}
			if r, d := left(0); math.Abs(r-average) > slack || d != 0 {
				t.Fatalf("a new one has %v years left of %v, and lost %v", r, average, d)
			}
		}))
	}
}
