package appraisal

import (
	"math"
	"math/rand/v2"
	"slices"
	"sort"
	"strings"
	"testing"

	"asfound/rubrics/kernel"
)

// fairOf is the fair offer of a model, not rounded to a step.
func fairOf(m *model) float64 {
	j := m.draw()
	defer j.release()
	j.cells.order(j.breakEven, j.sorted)
	return share(j.sorted, below(m.file.Shop.Odds.Fair))
}

// fix holds one input of a model at a value, by the model's own data.
func fix(t *testing.T, m *model, id string, at float64) {
	t.Helper()
	fixed := func(tasks []task) {
		for i := range tasks {
			if l := tasks[i].line; l.Kind+":"+l.ID == id {
				tasks[i].pert = newPert(at, at, at)
			}
		}
	}
	switch id {
	case "worth":
		m.belief = belief{mu: kernel.Log(at)}
	case "overrun":
		m.file.Shop.Overrun = Overrun{Mean: int(math.Round(at * 10_000))}
	case "care":
		m.care.post = [3]float64{}
		m.care.post[int(at)] = 1
	case "hidden":
		m.suspects = nil
		l := finish(Line{ID: "hidden", Kind: "landing"})
		l.pert = newPert(at, at, at)
		m.landing = append(m.landing, l)
	default:
		m.tasks, m.landing = slices.Clone(m.tasks), slices.Clone(m.landing)
		fixed(m.tasks)
		fixed(m.landing)
	}
}

// Each swing against the fair offer of a model in which the input really is
// fixed, with all other draws the same.
func TestSwingsAgainstFixedInputs(t *testing.T) {
	for name, edit := range map[string]func(f *File){
		"half checked": func(f *File) { f.Findings = map[string]Finding{"lock": grade(1), "rope": grade(1)} },
		"with tax": func(f *File) {
			f.Findings = map[string]Finding{"hose": grade(1)}
			f.Shop.Tax, f.Shop.Fees = 19_00, 50_00
		},
		"nothing checked": func(*File) {},
		"scrap":           func(f *File) { f.Findings = map[string]Finding{"weld": grade(0)} },
	} {
		m := testModel(t, edit)
		j := m.draw()
		seen := 0
		for _, in := range slices.Concat(m.inputs(j)...) {
			for _, at := range []float64{in.low, in.high} {
				column := make([]float64, Draws)
				in.redraw(at, column)
				slices.Sort(column)
				got := share(column, below(m.file.Shop.Odds.Fair))
				again := testModel(t, edit)
				fix(t, again, in.id, at)
				within := 1.0
				if in.id == "overrun" {
					within = 1e-4 * (average(j.base) + 4*spread(j.base) + average(j.extra) + 4*spread(j.extra)) // the file holds 1/10,000
				}
				if want := fairOf(again); math.Abs(got-want) > within {
					t.Errorf("%s: %s at %v: %v, really fixed it is %v", name, in.id, at, got, want)
				}
			}
			seen++
		}
		if want := map[string]int{"half checked": 6, "with tax": 6, "nothing checked": 5, "scrap": 0}[name]; seen < want {
			t.Errorf("%s: only %d inputs", name, seen)
		}
		j.release()
	}
}

// What is not computed, since lines of a kind are taken by their width alone, is
// none of the five widest.
func TestSwingsAreTheWidest(t *testing.T) {
	t.Parallel()
	luck := rand.New(rand.NewPCG(3, 4))
	for range 25 {
		m := testModel(t, func(f *File) {
			f.Shop.Overrun.SD = luck.IntN(60_00)
			f.Shop.Odds.Fair = 50_00 + luck.IntN(40_00)
			f.Findings = map[string]Finding{}
			for _, id := range []string{"weld", "lock", "rope", "hose"} {
				if g := luck.IntN(7); g < 5 {
					f.Findings[id] = grade(g)
				}
			}
		})
		var amounts [][3]float64
		for range luck.IntN(15) {
			low := float64(luck.IntN(300_00))
			amounts = append(amounts, [3]float64{low, low + 50_00, low + 50_00 + float64(luck.IntN(500_00))})
		}
		if !m.scrap {
			m.tasks = append(m.tasks, lines(amounts...)...)
		}
		j := m.draw()
		var widths []float64
		column, at := make([]float64, Draws), place(below(m.file.Shop.Odds.Fair), Draws)
		for _, in := range slices.Concat(m.inputs(j)...) {
			var got [2]float64
			for k, v := range []float64{in.low, in.high} {
				in.redraw(v, column)
				got[k] = j.cells.nth(column, at, j.room)
			}
			widths = append(widths, math.Abs(got[1]-got[0]))
		}
		sort.Sort(sort.Reverse(sort.Float64Slice(widths)))
		kept := swings(m, j)
		for i, s := range kept {
			if float64(s.width()) < 0.97*widths[i]-2 {
				t.Errorf("swing %d (%s) is %d wide, the widest of all inputs %.0f", i, s.Input, s.width(), widths[i])
			}
		}
		if wide := min(mostSwings, len(widths)); len(kept) < wide && widths[len(kept)] > leastSwing+1 {
			t.Errorf("%d swings are kept, the next is %.0f wide", len(kept), widths[len(kept)])
		}
		j.release()
	}
}

func TestSwingsInWords(t *testing.T) {
	s := Swing{LowAt: "1,850", HighAt: "2,600", Low: 760_00, High: 1420_00}
	for _, c := range []struct {
		low, high Money
		want      string
	}{
		{760_00, 1420_00, "If a sound one is worth 1,850 instead of 2,600, the fair offer falls from 1,420 to 760."},
		{-5_00, 1420_00, "If a sound one is worth 1,850 instead of 2,600, the fair offer of 1,420 is gone: even as a gift it falls short by 5."},
		{-90_00, -20_00, "If a sound one is worth 1,850 instead of 2,600, even as a gift it falls short by 90 instead of 20."},
		{1420_00, 760_00, "If a sound one is worth 2,600 instead of 1,850, the fair offer falls from 1,420 to 760."},
	} {
		s.Low, s.High = c.low, c.high
		if got := s.sentence(voice{}, &input{says: worthSwing}, 1); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	s.Low, s.High = -90_00, -20_00
	if got := s.sentence(voice{}, &input{says: worthSwing}, 1.1); !strings.HasSuffix(got, "falls short by 99 instead of 22.") {
		t.Errorf("with tax: %q", got)
	}
	r := judgeEdited(t, func(f *File) { f.Findings = map[string]Finding{"lock": grade(1)} })
	if len(r.Swings) == 0 || len(r.Swings) > mostSwings {
		t.Fatalf("%d swings", len(r.Swings))
	}
	for i, s := range r.Swings {
		if s.LowAt == "" || s.HighAt == "" || !strings.HasSuffix(s.Sentence, ".") || (i > 0 && s.width() > r.Swings[i-1].width()) {
			t.Errorf("swing %d: %+v", i, s)
		}
	}
}
