package appraisal

import (
	"math"
	"slices"
	"sort"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// checkPlan holds what is true of every plan: it keeps to the time, names no held
// point, stands in walking order, and leaves no danger point out that would fit
// in place of others.
func checkPlan(t interface{ Fatalf(string, ...any) }, m *model, p *Plan) (chosen []int) {
	used, at := 0.0, -1
	taken := map[string]bool{}
	for _, x := range p.Points {
		i := slices.IndexFunc(m.suspects, func(s suspect) bool { return s.j.check.ID == x.Check })
		if i <= at {
			t.Fatalf("%s stands out of the walking order", x.Check)
		}
		if m.suspects[i].j.held != "" {
			t.Fatalf("%s is held and yet planned", x.Check)
		}
		at, used = i, used+x.Minutes
		taken[x.Check] = true
		chosen = append(chosen, i)
	}
	if round2(used) != p.Used || p.Used > p.Minutes {
		t.Fatalf("the points take %v, the plan says %v of %v", used, p.Used, p.Minutes)
	}
	dangerUsed := 0.0
	for _, i := range chosen {
		if c := m.suspects[i].j.check; c.Hazard == "danger" {
			dangerUsed += c.Minutes
		}
	}
	for i := range m.suspects {
		c := m.suspects[i].j.check
		if taken[c.ID] || m.suspects[i].j.held != "" {
			continue
		}
		if round2(used+c.Minutes) <= p.Minutes {
			t.Fatalf("%s would still fit: %+v", c.ID, p)
		}
		if c.Hazard == "danger" && round2(dangerUsed+c.Minutes) <= p.Minutes {
			t.Fatalf("%s, a danger point, gave way to others: %+v", c.ID, p)
		}
	}
	return chosen
}

// The greedy plan against all plans that keep its rules, on small cases, the
// values by going through every state. Of each case: the gain told is right, and
// no other plan with the same danger points gains more than a little more.
func TestPlanAgainstAllPlans(t *testing.T) {
	var ratios []float64
	rapid.Check(t, func(t *rapid.T) {
		m := small(t)
		all := states(m)
		price := priceFor(t, all)
		j := m.draw()
		defer j.release()
		minutes := float64(rapid.IntRange(1, 200).Draw(t, "minutes")) / 10
		p := plan(m, newOutlook(m, j), price, minutes)
		chosen := checkPlan(t, m, p)
		gain := worthOfKnowing(m, all, chosen, price)
		// Answers rarer than rare are not split: at most that much is lost of each.
		if float64(p.Gain) > gain+1 || float64(p.Gain) < gain-1-0.002*m.taxed()*4000_00 {
			t.Fatalf("gain %d, all states give %.2f", p.Gain, gain)
		}
		best := 0.0
		for set := range 1 << len(m.suspects) {
			var asked []int
			time, fits := 0.0, true
			for i := range m.suspects {
				in := set>>i&1 == 1
				if in {
					asked = append(asked, i)
					time += m.suspects[i].j.check.Minutes
				}
				if m.suspects[i].j.check.Hazard == "danger" && in != slices.Contains(chosen, i) {
					fits = false
				}
			}
			if fits && round2(time) <= minutes {
				best = max(best, worthOfKnowing(m, all, asked, price))
			}
		}
		if gain > best+1e-6*math.Abs(price) {
			t.Fatalf("the plan gains %v, the best of all plans only %v", gain, best)
		}
		if best > 100 {
			ratios = append(ratios, gain/best)
		}
	})
	if len(ratios) == 0 {
		t.Fatal("no plan was worth anything")
	}
	sort.Float64s(ratios)
	worst, tenth, mean := ratios[0], ratios[len(ratios)/10], average(ratios)
	t.Logf("%d plans worth anything: on average %.3f of the best, a tenth below %.3f, the worst %.3f", len(ratios), mean, tenth, worst)
	if mean < 0.9 {
		t.Errorf("greedy plans reach only %.3f of the best on average", mean)
	}
}

func TestPlanInWords(t *testing.T) {
	ask := func(minutes float64, edit func(f *File)) *Result {
		f := testFile()
		edit(f)
		r, err := testJudge().Of(f, Ask{Minutes: minutes})
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	nothing := func(*File) {}
	all := func(f *File) {
		f.Findings = map[string]Finding{}
		for _, id := range []string{"weld", "lock", "rope", "hose", "paint", "only"} {
			f.Findings[id] = grade(3)
		}
	}
	for _, c := range []struct {
		name    string
		minutes float64
		edit    func(f *File)
		says    []string
		points  int
	}{
		{"all danger points", 16, nothing, []string{"In 16 minutes: 3 points, 15 minutes, the 3 danger points among them."}, 3},
		{"not all fit", 10, nothing, []string{"In 10 minutes: 2 points, 10 minutes, 2 danger points among them. One point where failure can kill stays open."}, 2},
		{"none fits", 4, nothing, []string{"In 4 minutes no point can be checked: the shortest takes 5 minutes.", "Three points where failure can kill stay open."}, 0},
		{"one minute", 1, nothing, []string{"In 1 minute no point"}, 0},
		{"nothing open", 15, all, []string{"No point is left whose answer could change the price."}, 0},
		{"scrap", 15, func(f *File) { f.Findings = map[string]Finding{"weld": grade(0)} }, []string{"No point is left"}, 0},
		{"far too dear", 30, func(f *File) { *f.Listing.Asking = 900_000_00 }, []string{"At this price they do not change whether to buy."}, 6},
	} {
		r := ask(c.minutes, c.edit)
		if r.Plan == nil {
			t.Fatalf("%s: no plan", c.name)
		}
		for _, says := range c.says {
			if !strings.Contains(r.Plan.Sentence, says) {
				t.Errorf("%s: %q, want %q in it", c.name, r.Plan.Sentence, says)
			}
		}
		if len(r.Plan.Points) != c.points {
			t.Errorf("%s: %d points, want %d", c.name, len(r.Plan.Points), c.points)
		}
	}
	if r := ask(0, nothing); r.Plan != nil {
		t.Error("a plan nobody asked for")
	}
	if r := ask(15, func(f *File) { f.Comparables = nil }); r.Plan != nil || len(r.Swings) != 0 {
		t.Error("a plan or swings without a worth")
	}
}

// Held points stay out of the plan.
func TestPlanLeavesHeldPointsOut(t *testing.T) {
	r := testRubric()
	late := r.Sections[0].Checks[1]
	late.ID = "load"
	r.Sections = append(r.Sections, Section{ID: "load", Title: "Load", State: "loaded", Checks: []Check{late}})
	m := newModel(t, &r, []Part{{ID: "part"}}, testFile())
	j := m.draw()
	defer j.release()
	p := plan(m, newOutlook(m, j), 1000_00, 600)
	if checkPlan(t, m, p); len(p.Points) != 6 || !strings.Contains(p.Sentence, "One point where failure can kill stays open.") {
		t.Errorf("%d points: %s", len(p.Points), p.Sentence)
	}
	for i := range m.suspects {
		m.suspects[i].j.held = "held"
	}
	if p = plan(m, newOutlook(m, j), 1000_00, 600); len(p.Points) != 0 || !strings.Contains(p.Sentence, "must not be run or loaded") {
		t.Errorf("all are held: %q", p.Sentence)
	}
}

func TestPlanRefusesNonsense(t *testing.T) {
	for _, minutes := range []float64{-1, math.NaN(), math.Inf(1), 1441} {
		_, err := testJudge().Of(testFile(), Ask{Minutes: minutes})
		if e, ok := err.(*Error); !ok || e.Field != "minutes" || e.Right == "" {
			t.Errorf("%v minutes: %v", minutes, err)
		}
	}
}
