package appraisal_test

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"asfound/rubrics"
	"asfound/rubrics/appraisal"
)

// files are the appraisals of testdata, and random changes of them.
func files(t *testing.T, random int) (_ *appraisal.Judge, all []*appraisal.File) {
	t.Helper()
	kinds, err := rubrics.All()
	if err != nil {
		t.Fatal(err)
	}
	parts, err := rubrics.Parts()
	if err != nil {
		t.Fatal(err)
	}
	names, err := filepath.Glob("../../testdata/*/*.json")
	if err != nil {
		t.Fatal(err)
	}
	read := func(src []byte) *appraisal.File {
		d, err := appraisal.Decode(src)
		if err != nil {
			t.Fatal(err)
		}
		return &d.File
	}
	var sources [][]byte
	for _, name := range names {
		if in := filepath.Base(filepath.Dir(name)); in != "appraisals" && in != "demo" {
			continue
		}
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		sources, all = append(sources, src), append(all, read(src))
	}
	if len(all) < 8 {
		t.Fatalf("only %d appraisals", len(all))
	}
	luck := rand.New(rand.NewPCG(1, 2))
	for i := range random {
		f := read(sources[i%len(sources)])
		if f.Findings == nil {
			f.Findings = map[string]appraisal.Finding{}
		}
		for _, r := range kinds {
			if r.ID != f.Rubric.ID {
				continue
			}
			for _, s := range r.Sections {
				for _, c := range s.Checks {
					if luck.IntN(3) > 0 {
						g := min(luck.IntN(7), 4)
						f.Findings[c.ID] = appraisal.Finding{Grade: &g}
					}
				}
			}
		}
		f.Comparables = []appraisal.Comparable{{ID: "a", Price: appraisal.Money(1000_00 + luck.IntN(9000_00)), Basis: "sold"}, {ID: "b", Price: appraisal.Money(1000_00 + luck.IntN(9000_00)), Basis: "asked"}}
		f.Shop.Overrun.SD = luck.IntN(60_00)
		all = append(all, f)
	}
	return appraisal.NewJudge(kinds, parts), all
}

// The prices are told in steps above the error of drawing, of the series 1, 2, 5.
func TestStepIsAboveTheError(t *testing.T) {
	t.Parallel()
	judge, all := files(t, 12)
	coarse := 0
	for i, f := range all {
		r, err := judge.Of(f, appraisal.Ask{})
		if err != nil {
			t.Fatal(err)
		}
		o := r.Offer
		if !o.Known {
			if o.Step != 0 || o.Error != 0 || len(r.Swings) != 0 {
				t.Errorf("appraisal %d: no offer, and yet step %d, error %d, %d swings", i, o.Step, o.Error, len(r.Swings))
			}
			continue
		}
		if o.Error <= 0 || o.Error >= o.Step {
			t.Errorf("appraisal %d: error %d, step %d", i, o.Error, o.Step)
		}
		for _, p := range []appraisal.PricePoint{o.Opening, o.Fair, o.WalkAway} {
			if p.Price%o.Step != 0 || p.None != (p.Price == 0) {
				t.Errorf("appraisal %d: price %d off the step %d", i, p.Price, o.Step)
			}
		}
		lead := o.Step
		for lead%10 == 0 {
			lead /= 10
		}
		if lead != 1 && lead != 2 && lead != 5 || float64(o.Step) < 0.004*float64(r.Worth.InPlace)-1 {
			t.Errorf("appraisal %d: step %d for a worth of %d", i, o.Step, r.Worth.InPlace)
		}
		if float64(o.Step) > 5*math.Max(0.004*float64(r.Worth.InPlace), 1_00) {
			coarse++ // the error of drawing asked for it
		}
	}
	t.Logf("%d of %d prices are told more coarsely because of the drawing", coarse, len(all))
}

// How far the drawing is off in truth, against twenty drawings with other luck,
// fits what is printed: in units of the printed error it follows Student's t of 9
// degrees of freedom, beyond 2.262 one time in twenty.
func TestErrorOfDrawingIsTheTrueOne(t *testing.T) {
	t.Parallel()
	const turns = 20
	judge, all := files(t, 3)
	beyond, squares, n := 0, 0.0, 0.0
	for i, f := range all {
		var fair, drawing [turns + 1]float64
		mean := 0.0
		known := true
		for turn := range fair {
			fair[turn], drawing[turn], known = judge.Fair(t, f, uint64(turn))
			if !known {
				break
			}
			if turn > 0 {
				mean += fair[turn] / turns
			}
		}
		if !known {
			continue
		}
		own := (fair[0] - mean) / drawing[0]
		if math.Abs(own) > 4.8 {
			t.Errorf("appraisal %d: the fair offer is off by %.0f, the error told is %.0f", i, fair[0]-mean, drawing[0])
		}
		for turn := range fair {
			z := (fair[turn] - mean) / drawing[turn]
			if squares += z * z; math.Abs(z) > 2.262 {
				beyond++
			}
			n++
		}
	}
	part, rms := float64(beyond)/n, math.Sqrt(squares/n)
	t.Logf("%.0f drawings: %.1f %% beyond 2.262 errors (5 expected), root mean square %.2f (%.2f expected)", n, 100*part, rms, math.Sqrt(9.0/7))
	if part < 0.005 || part > 0.09 || rms > 1.35 || rms < 0.8 {
		t.Error("the error told is not the true one")
	}
}

// What the draws come to on average is what the classes, points and extras of real
// rubrics say it must.
func TestMeanOfRealAppraisals(t *testing.T) {
	t.Parallel()
	judge, all := files(t, 5)
	for i, f := range all {
		if drawn, drawing, expected := judge.Mean(t, f); math.Abs(drawn-expected) > 4*drawing {
			t.Errorf("appraisal %d: drawn %.0f within %.0f, expected %.0f", i, drawn, drawing, expected)
		}
	}
}

// Plans of real rubrics: the same whenever asked, within the time, and worth what
// the draws say. Answers too rare are not followed further, so a long plan is
// told a little low, never high.
func TestPlansOfRealAppraisals(t *testing.T) {
	t.Parallel()
	judge, all := files(t, 1)
	told, drawn := 0.0, 0.0
	for i, f := range all {
		for _, minutes := range []float64{1, 15, 45, 240} {
			a, err := judge.Of(f, appraisal.Ask{Minutes: minutes})
			if err != nil {
				t.Fatal(err)
			}
			b, _ := judge.Of(f, appraisal.Ask{Minutes: minutes})
			one, err := json.Marshal(a.Plan)
			if err != nil {
				t.Fatal(err)
			}
			two, _ := json.Marshal(b.Plan)
			if string(one) != string(two) {
				t.Fatalf("appraisal %d, %g minutes: two runs differ", i, minutes)
			}
			if a.Plan != nil && (a.Plan.Used > minutes || a.Plan.Gain < 0 || a.Plan.Sentence == "") {
				t.Errorf("appraisal %d: %+v", i, a.Plan)
			}
			for _, above := range []float64{-500_00, 0, 500_00} {
				plan, exact, error := judge.PlanGain(t, f, minutes, above)
				if plan > exact+4*error+1 || plan < 0.85*exact-4*error-1 {
					t.Errorf("appraisal %d, %g minutes, %g above the mean: a gain of %.0f is told, the draws give %.0f within %.0f", i, minutes, above, plan, exact, error)
				}
				if minutes < 60 {
					told, drawn = told+plan, drawn+exact
				}
			}
		}
	}
	t.Logf("plans of up to 45 minutes tell %.3f of what they are worth", told/drawn)
}
