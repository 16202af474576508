package appraisal_test

import (
	"errors"
	"reflect"
	"strings"
	"testing"

	"asfound/rubrics"
	"asfound/rubrics/appraisal"
)

// visitRubric is a small kind with every state of a walkaround.
func visitRubric() appraisal.Rubric {
	check := func(id, kind, hazard string, safety int, minutes float64, instrument ...string) appraisal.Check {
		return appraisal.Check{
			ID: id, Title: "Point " + id, Kind: kind, Hazard: hazard, Minutes: minutes, Instrument: instrument,
			Weight: appraisal.Weight{Safety: safety, Condition: 1}, Grades: appraisal.Grades{Sound: "s", Failed: "f"},
		}
	}
	when := func(c appraisal.Check, fact, option string) appraisal.Check {
		c.When = map[string][]string{fact: {option}}
		return c
	}
	return appraisal.Rubric{
		ID: "small", Version: 1, Kind: "Small machine", Cautions: []string{"Stand clear."},
		Capacity: appraisal.Capacity{Title: "Rated load", Unit: "lb"},
		Facts: []appraisal.Fact{
			{ID: "standing", Ask: "Does it stand, connected?", Options: []appraisal.Option{{ID: "connected", Title: "Connected"}, {ID: "taken-down", Title: "Taken down"}}},
			{ID: "drive", Ask: "Which drive?", Options: []appraisal.Option{{ID: "belt", Title: "Belt"}, {ID: "gear", Title: "Gears"}}},
		},
		Visit: &appraisal.Visit{
			Questions: []appraisal.Question{
				{ID: "size", Ask: "What load is on its plate?", Answers: []string{"capacity"}},
				{ID: "supply", Ask: "What voltage, and one phase or three?", Why: "A converter costs.", Answers: []string{"voltage", "phases"}},
				{ID: "stands", Ask: "Is it still connected?", Answers: []string{"fact/standing"}},
				{ID: "belt-age", Ask: "How old is the belt?", When: map[string][]string{"drive": {"belt"}}},
				{ID: "why", Ask: "Why do you sell it?"},
			},
			Wear: []string{"safety glasses"}, Bring: []string{"printed manual"},
		},
		Sections: []appraisal.Section{
			{ID: "papers", Title: "Papers", State: "documents", Checks: []appraisal.Check{check("plate", "read", "warning", 10, 2, "camera")}},
			{ID: "cold", Title: "Power off", State: "power-off", Checks: []appraisal.Check{
				check("cracks", "look", "danger", 20, 5), check("wear", "measure", "caution", 10, 6, "Caliper", "lamp"),
				when(check("belt", "look", "notice", 0, 3, "lamp", "LAMP"), "drive", "belt"),
			}},
			{ID: "empty", Title: "Running empty", State: "unloaded", Checks: []appraisal.Check{when(check("stop", "run", "danger", 30, 4, "stopwatch"), "standing", "connected")}},
			{ID: "full", Title: "Under load", State: "loaded", Checks: []appraisal.Check{when(check("drift", "measure", "danger", 30, 10, "caliper"), "standing", "connected")}},
		},
	}
}

func visitFile() *appraisal.File {
	return &appraisal.File{
		Format: appraisal.FileFormat, Version: 1, Rubric: appraisal.RubricRef{ID: "small", Version: 1}, Date: "2026-03-31",
		Shop: appraisal.DefaultShop(), Facts: map[string]string{}, Findings: map[string]appraisal.Finding{}, Asked: map[string]string{},
	}
}

func visit(t *testing.T, f *appraisal.File) *appraisal.VisitPlan {
	t.Helper()
	p, err := appraisal.NewJudge([]appraisal.Rubric{visitRubric()}, nil).Visit(f)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func checkIDs(n appraisal.VisitNeed) string {
	var ids []string
	for _, c := range n.Checks {
		ids = append(ids, c.ID)
	}
	return strings.Join(ids, " ")
}

func need(t *testing.T, all []appraisal.VisitNeed, id string) appraisal.VisitNeed {
	t.Helper()
	for _, n := range all {
		if n.ID == id {
			return n
		}
	}
	t.Fatalf("no %s among %+v", id, all)
	return appraisal.VisitNeed{}
}

func TestVisitAsksOnlyWhatIsOpen(t *testing.T) {
	f := visitFile()
	f.Listing.Title = "Lift by the\nold mill"
	f.Listing.Voltage = &appraisal.Quantity{N: 230, Unit: "V"}
	want := "Hello, I am interested in your listing “Lift by the old mill”. Before I drive over, could you tell me these things? Short answers are fine.\n\n" +
		"1. What load is on its plate?\n2. What voltage, and one phase or three?\n3. Is it still connected?\n4. How old is the belt?\n5. Why do you sell it?\n\nThank you."
	if got := visit(t, f).Message; got != want {
		t.Errorf("%q\nwant %q", got, want)
	}
	f.Listing.Phases = 3
	f.Listing.Capacity = &appraisal.Quantity{N: 9000, Unit: "lb"}
	f.Facts = map[string]string{"standing": "taken-down", "drive": "gear"}
	p := visit(t, f)
	var told []string
	for _, q := range p.Questions {
		told = append(told, q.ID+"="+q.Told)
	}
	if got := strings.Join(told, ", "); got != "size=Rated load: 9000 lb, supply=Voltage: 230 V; Phases: 3, stands=Taken down, why=" {
		t.Error(got)
	}
	if !strings.Contains(p.Message, "could you tell me this?") || !strings.Contains(p.Message, "\n1. Why do you sell it?\n") || strings.Contains(p.Message, "2.") {
		t.Error(p.Message)
	}
	f.Asked["why"] = "" // ticked, without an answer
	if p = visit(t, f); p.Message != "" || !p.Questions[3].Asked {
		t.Errorf("%q, %+v", p.Message, p.Questions[3])
	}
	f.Asked["why"] = "moving away"
	if p = visit(t, f); p.Questions[3].Answer != "moving away" {
		t.Errorf("%+v", p.Questions[3])
	}
	// An answer that the rubric does not offer tells nothing, and hides nothing.
	f.Facts = map[string]string{"standing": "on-the-moon"}
	if p = visit(t, f); !strings.Contains(p.Message, "Is it still connected?") || !strings.Contains(p.Message, "How old is the belt?") {
		t.Error(p.Message)
	}
}

func TestVisitInstrumentsAndTime(t *testing.T) {
	p := visit(t, visitFile())
	var got []string
	for _, n := range p.Instruments {
		got = append(got, n.Title+": "+checkIDs(n))
	}
	// Caliper and lamp are needed twice each, one check naming the lamp twice.
	if want := []string{"Caliper: wear drift", "lamp: wear belt", "camera: plate", "stopwatch: stop"}; !reflect.DeepEqual(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	caliper := p.Instruments[0]
	if caliper.Minutes != 16 || caliper.Safety != 40_00 {
		t.Errorf("the calliper: %+v", caliper)
	}
	if want := "Without it two checks are lost: 40\u00a0% of the safety weight. Not proven stays where failure can kill: “Point drift”."; caliper.Sentence != want {
		t.Errorf("%q", caliper.Sentence)
	}
	if p.Minutes != 30 || len(p.Sections) != 4 || p.Sections[1].Minutes != 14 || p.Sections[1].Checks != 3 || p.Sections[1].State != "power-off" {
		t.Errorf("%v minutes, %+v", p.Minutes, p.Sections)
	}
	if want := "Ask 5 questions, bring 4 instruments, allow about 30 minutes at the machine."; p.Sentence != want {
		t.Errorf("%q", p.Sentence)
	}
	grade := 3
	f := visitFile()
	f.Findings["wear"] = appraisal.Finding{Grade: &grade}
	f.Findings["plate"] = appraisal.Finding{Skipped: "no-time"} // still open
	p = visit(t, f)
	if p.Minutes != 24 || checkIDs(need(t, p.Instruments, "caliper")) != "drift" || checkIDs(need(t, p.Instruments, "camera")) != "plate" {
		t.Errorf("%v minutes, %+v", p.Minutes, p.Instruments)
	}
	if !reflect.DeepEqual(p.Wear, []string{"safety glasses"}) || !reflect.DeepEqual(p.Bring, []string{"printed manual"}) || !reflect.DeepEqual(p.Cautions, []string{"Stand clear."}) {
		t.Errorf("%+v", p)
	}
}

func TestVisitWithout(t *testing.T) {
	p := visit(t, visitFile())
	power, load, access := need(t, p.Without, "power"), need(t, p.Without, "load"), need(t, p.Without, "access")
	if checkIDs(power) != "stop drift" || power.Safety != 60_00 || power.Certain {
		t.Errorf("%+v", power)
	}
	if checkIDs(load) != "drift" || load.Safety != 30_00 {
		t.Errorf("%+v", load)
	}
	if checkIDs(access) != "wear belt stop drift" || access.Safety != 70_00 {
		t.Errorf("%+v", access)
	}
	if want := "Where it cannot be run, two checks are lost: 60\u00a0% of the safety weight. Not proven stays where failure can kill: “Point stop”, “Point drift”."; power.Sentence != want {
		t.Errorf("%q", power.Sentence)
	}
	// One that was taken down is not asked to run: that is told, not forgotten.
	f := visitFile()
	f.Facts["standing"] = "taken-down"
	f.Facts["drive"] = "gear"
	p = visit(t, f)
	power = need(t, p.Without, "power")
	if !power.Certain || checkIDs(power) != "stop drift" || power.Safety != 0 {
		t.Errorf("%+v", power)
	}
	if want := "Does it stand, connected? Taken down. So two points are not asked at all, and none of it is proven by this visit: “Point stop”, “Point drift”."; power.Sentence != want {
		t.Errorf("%q", power.Sentence)
	}
	if p.Minutes != 13 || checkIDs(need(t, p.Without, "access")) != "wear" {
		t.Errorf("%v minutes, %+v", p.Minutes, p.Without)
	}
	// What was checked is not lost.
	f = visitFile()
	for _, id := range []string{"stop", "drift", "plate", "cracks", "wear", "belt"} {
		grade := 3
		f.Findings[id] = appraisal.Finding{Grade: &grade}
	}
	p = visit(t, f)
	if len(p.Without) != 0 || len(p.Instruments) != 0 || p.Minutes != 0 || p.Sentence != "Every point that applies has a grade already." {
		t.Errorf("%+v", p)
	}
}

func TestVisitRefuses(t *testing.T) {
	judge := appraisal.NewJudge([]appraisal.Rubric{visitRubric()}, nil)
	f := visitFile()
	f.Rubric.ID = "large"
	var e *appraisal.Error
	if _, err := judge.Visit(f); !errors.As(err, &e) || e.Field != "rubric.id" {
		t.Error(err)
	}
	f = visitFile()
	f.Asked["why"] = strings.Repeat("x", 2001)
	if _, err := judge.Visit(f); !errors.As(err, &e) || e.Field != "asked.why" {
		t.Error(err)
	}
}

// TestVisitOfEveryKind: whatever a rubric names, its plan adds up.
func TestVisitOfEveryKind(t *testing.T) {
	all, err := rubrics.All()
	if err != nil {
		t.Fatal(err)
	}
	judge := appraisal.NewJudge(all, nil)
	for i := range all {
		r := &all[i]
		f := visitFile()
		f.Rubric = appraisal.RubricRef{ID: r.ID, Version: r.Version}
		p, err := judge.Visit(f)
		if err != nil {
			t.Fatal(err)
		}
		minutes, checks := 0.0, 0
		for _, s := range p.Sections {
			minutes, checks = minutes+s.Minutes, checks+s.Checks
		}
		all := 0
		for _, s := range r.Sections {
			all += len(s.Checks) // nothing is told, so every check is shown
		}
		if diff := minutes - p.Minutes; diff > 0.001 || diff < -0.001 || checks != all {
			t.Errorf("%s: %v minutes of %v, %d checks of %d", r.ID, minutes, p.Minutes, checks, all)
		}
		for _, n := range append(p.Instruments, p.Without...) {
			if n.Sentence == "" || len(n.Checks) == 0 || n.Safety < 0 || n.Safety > 100_00 {
				t.Errorf("%s: %+v", r.ID, n)
			}
		}
		if len(p.Without) != 3 {
			t.Errorf("%s: %d of power, load and access", r.ID, len(p.Without))
		}
		if r.Visit != nil && (len(p.Questions) != len(r.Visit.Questions) || p.Message == "") {
			t.Errorf("%s: %d questions, %q", r.ID, len(p.Questions), p.Message)
		}
	}
}
