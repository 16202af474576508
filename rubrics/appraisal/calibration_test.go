package appraisal_test

import (
	"math"
	"slices"
	"testing"

	"asfound/rubrics/appraisal"
)

// truths is how many times the points not seen and all costs are drawn for one
// machine and one judgement of it.
const truths = 10

// coverage is how often the truth lay in the central 50, 80 and 90 % of the draws,
// with the standard error of each.
type coverage struct{ share, err [3]float64 }

var central = [3]float64{0.5, 0.8, 0.9}

// covered simulates n machines of which half was looked at. Machines whose seen
// half already rules repair out are left aside: nothing of them is hidden.
func (s *simulation) covered(t *testing.T, w world, n int) coverage {
	var sum, squares [3]float64
	for done := 0; done < n; {
		m := s.machine(w)
		if m.ruled() {
			continue
		}
		done++
		draws := appraisal.RepairAndHidden(s.judge, m.file)
		if done <= 3 {
			s.sameAsJudged(t, &m, draws)
		}
		var inside [3]float64
		for range truths {
			u := s.place(draws, s.truth(t, w, &m))
			for k, c := range central {
				if math.Abs(u-0.5) <= c/2 {
					inside[k] += 1. / truths
				}
			}
		}
		for k, x := range inside {
			sum[k] += x
			squares[k] += x * x
		}
	}
	var out coverage
	for k := range sum {
		mean := sum[k] / float64(n)
		out.share[k] = mean
		out.err[k] = math.Sqrt((squares[k]/float64(n) - mean*mean) / float64(n-1))
	}
	t.Logf("%-32s n %4d: 50 %%: %4.1f  80 %%: %4.1f  90 %%: %4.1f  (standard errors %.1f, %.1f, %.1f)", w.name, n,
		100*out.share[0], 100*out.share[1], 100*out.share[2], 100*out.err[0], 100*out.err[1], 100*out.err[2])
	return out
}

// place is the share of the draws below the truth. Where both cost exactly the
// same (nothing was bad at all), it lies anywhere among the equal ones.
func (s *simulation) place(draws []float64, truth float64) float64 {
	below, equal := 0, 0
	for _, d := range draws {
		switch {
		case math.Abs(d-truth) < 1e-6:
			equal++
		case d < truth:
			below++
		}
	}
	return (float64(below) + s.rng.Float64()*float64(equal)) / float64(len(draws))
}

// sameAsJudged: the draws looked at here are those the judgement was made from.
func (s *simulation) sameAsJudged(t *testing.T, m *machine, draws []float64) {
	r, err := s.judge.Of(m.file, appraisal.Ask{})
	if err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	for _, d := range draws {
		sum += d
	}
	if mean := sum / float64(len(draws)); math.Abs(mean-float64(r.Estimate.Mean+r.Hidden.Mean)) > 1.01 {
		t.Fatalf("the draws have the mean %.1f, the judgement says %d and %d", mean, r.Estimate.Mean, r.Hidden.Mean)
	}
}

// TestCalibration: where machines are as the rubric says, what it costs to put
// them right lies in the central 50, 80 and 90 % of the draws just so often, to
// three standard errors. Where the rubric is wrong by a factor of 1.5 in its
// chances or in its classes, or the points of a section share one cause, the 80 %
// are still kept to 5 points. And the simulation can tell: a rubric wrong by a
// factor of 4 is found out.
func TestCalibration(t *testing.T) {
	even := [3]float64{1, 1, 1}
	for i, c := range []struct {
		world
		kind string
	}{
		{world{"as told", 1, even, 0}, "exact"},
		{world{"bad 1.5 times as often", 1.5, even, 0}, "near"},
		{world{"bad 1.5 times as seldom", 1 / 1.5, even, 0}, "near"},
		{world{"neglected at 1.5 times the odds", 1, [3]float64{1, 1, 1.5}, 0}, "near"},
		{world{"well kept at 1.5 times the odds", 1, [3]float64{1.5, 1, 1}, 0}, "near"},
		{world{"half of a section from one cause", 1, even, 0.5}, "near"},
		{world{"bad 4 times as often", 4, even, 0}, "far"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			n := machines
			if testing.Short() {
				n = 60
			}
			if c.kind == "far" {
				n /= 2
			}
			got := newSimulation(t, "two-post-lift", uint64(i)+1).covered(t, c.world, n)
			off := math.Abs(got.share[1] - central[1])
			switch c.kind {
			case "exact":
				for k, p := range central {
					if math.Abs(got.share[k]-p) > 3*got.err[k] {
						t.Errorf("%.0f %% of the draws hold %.1f %% of the truths", 100*p, 100*got.share[k])
					}
				}
			case "near":
				limit := 0.05
				if n < 400 {
					limit += 2 * got.err[1] // too few machines to be strict
				}
				if off > limit {
					t.Errorf("80 %% of the draws hold %.1f %% of the truths", 100*got.share[1])
				}
			case "far":
				if off < 0.05 {
					t.Errorf("80 %% of the draws hold %.1f %% of the truths: the simulation finds nothing out", 100*got.share[1])
				}
			}
			if slices.Max(got.err[:]) > 0.06 {
				t.Errorf("the standard errors %v are too large to say anything", got.err)
			}
		})
	}
}
