package appraisal

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// testRubric is a small invented rubric: three danger points, a shared remedy, a
// shared preparation, a scrap finding, and a check that a fact can rule out.
func testRubric() Rubric {
	grades := Grades{AsNew: "new", Sound: "sound", Worn: "worn", Bad: "bad", Failed: "failed"}
	check := func(id, hazard string, safety, condition int, remedies Remedies) Check {
		return Check{ID: id, Title: "Point " + id, Kind: "look", Hazard: hazard, Weight: Weight{safety, condition}, Minutes: 5, How: "look", Grades: grades, Remedies: remedies}
	}
	fix := Remedies{Worn: "fix", Bad: "fix", Failed: "fix"}
	only := check("only", "caution", 2, 2, fix)
	only.When = map[string][]string{"phase": {"three"}}
	return Rubric{
		ID: "test", Version: 2, Kind: "test", Capacity: Capacity{Title: "Capacity", Unit: "lb", Exponent: 0.6}, Life: Years{10, 20, 30}, Depreciation: Depreciation{Survivor: "S1", Inutility: 0.7},
		Scrap: Scrap{Value: Range{50_00, 100_00, 150_00}, Haul: Range{100_00, 200_00, 300_00}},
		Care:  Care{Prior: map[string][3]float64{"private": {.3, .5, .2}}, Bad: [3]float64{.03, .12, .4}, Failed: .25},
		Facts: []Fact{{ID: "phase", Ask: "?", Options: []Option{{ID: "one", Title: "1"}, {ID: "three", Title: "3"}}}},
		Landing: []Landing{
			{ID: "drive", Title: "Drive", PerDistance: 2_00},
			{ID: "anchors", Title: "Anchors", Cost: Range{50_00, 80_00, 120_00}, Stays: true},
		},
		Preparations: []Preparation{{ID: "drain", Title: "Drain", Hours: Hours{1, 1, 1}, Rate: "own"}},
		Remedies: []Remedy{
			{ID: "fix", Title: "Fix", Ways: []Way{
				{ID: "buy", Kind: "buy", Title: "Buy", Parts: []PartUse{{"part", 2}}, Hours: Hours{1, 2, 4}, Rate: "own", Preparations: []string{"drain"}},
				{ID: "hire", Kind: "hire", Title: "Hire", Hours: Hours{2, 3, 5}, Rate: "specialist"},
			}},
			{ID: "other", Title: "Other", Ways: []Way{{ID: "buy", Kind: "buy", Title: "Buy", Hours: Hours{2, 3, 6}, Rate: "own", Preparations: []string{"drain"}}}},
		},
		Sections: []Section{{ID: "s", Title: "S", State: "power-off", Checks: []Check{
			check("weld", "danger", 10, 0, Remedies{Failed: "scrap"}),
			check("lock", "danger", 8, 1, fix),
			check("rope", "danger", 8, 2, Remedies{Worn: "other", Bad: "other", Failed: "other"}),
			check("hose", "warning", 3, 3, fix),
			check("paint", "notice", 0, 4, Remedies{}),
			only,
		}}},
	}
}

func testJudge() *Judge {
	return NewJudge([]Rubric{testRubric()}, []Part{{ID: "part", Title: "Part", Unit: "each", Price: Range{20_00, 40_00, 90_00}}})
}

func testFile() *File {
	asking := Money(2400_00)
	return &File{
		Format: FileFormat, Version: 1, Rubric: RubricRef{"test", 2}, Date: "2026-03-31", Shop: DefaultShop(),
		Listing:     Listing{Title: "Invented", Made: 2014, Asking: &asking, Distance: &Quantity{50, "mi"}, Seller: "private"},
		Comparables: []Comparable{{ID: "a", Title: "A", Price: 4000_00, Basis: "asked", Made: 2014}, {ID: "b", Title: "B", Price: 3600_00, Basis: "sold", Made: 2014}},
	}
}

func grade(n int) Finding { return Finding{Grade: &n} }

// DESIGN's verdict table, row by row, and the gate of M57: no average buys it off.
func TestVerdictTable(t *testing.T) {
	all := func(g int) map[string]Finding {
		m := map[string]Finding{}
		for _, id := range []string{"weld", "lock", "rope", "hose", "paint", "only"} {
			m[id] = grade(g)
		}
		return m
	}
	for _, c := range []struct {
		name, check string
		finding     Finding
		want        string
	}{
		{"a danger check failed", "lock", grade(0), "do-not-use"},
		{"a danger check bad", "lock", grade(1), "repair-first"},
		{"a warning check failed", "hose", grade(0), "repair-first"},
		{"a danger check not checked", "lock", Finding{Skipped: "no-power"}, "not-proven"},
		{"a warning check bad", "hose", grade(1), "no-stop-found"},
		{"a notice check failed", "paint", grade(0), "no-stop-found"},
		{"nothing wrong", "paint", grade(4), "no-stop-found"},
	} {
		f := testFile()
		f.Findings = all(4)
		f.Findings[c.check] = c.finding
		r, err := testJudge().Of(f, Ask{})
		if err != nil {
			t.Fatal(err)
		}
		if r.Verdict.Code != c.want {
			t.Errorf("%s: %s, want %s", c.name, r.Verdict.Code, c.want)
		}
		if text, _ := json.Marshal(r.Verdict); strings.Contains(strings.ToLower(string(text)), "safe") {
			t.Errorf("%s: the verdict must never say safe: %s", c.name, text)
		}
	}
}

func TestScoresAndBands(t *testing.T) {
	f := testFile()
	f.Facts = map[string]string{"phase": "one"} // rules "only" out
	f.Findings = map[string]Finding{"weld": grade(4), "lock": grade(2)}
	r, err := testJudge().Of(f, Ask{})
	if err != nil {
		t.Fatal(err)
	}
	// By hand: weights 10, 8, 8, 3; 10*4/4 + 8*2/4 = 14 of 18 checked, of 29.
	s := r.Safety
	if *s.Value != 77.8 || s.Low != 48.3 || s.High != 86.2 || s.Coverage != 62.1 || s.Checked != 2 || s.Applies != 4 {
		t.Errorf("safety %+v (value %v)", s, *s.Value)
	}
	if r.Progress.Applies != 5 || r.Progress.Graded != 2 || r.Progress.MinutesLeft != 15 {
		t.Errorf("progress %+v", r.Progress)
	}
}

func TestPreparationsCountOnce(t *testing.T) {
	f := testFile()
	f.Findings = map[string]Finding{"lock": grade(1), "hose": grade(1), "rope": grade(2)}
	r, err := testJudge().Of(f, Ask{})
	if err != nil {
		t.Fatal(err)
	}
	kinds := map[string]int{}
	for _, l := range r.Estimate.Lines {
		kinds[l.Kind+":"+l.ID]++
	}
	want := map[string]int{"preparation:drain": 1, "remedy:fix": 1, "remedy:other": 1}
	if len(kinds) != len(want) {
		t.Fatalf("lines %v, want %v", kinds, want)
	}
	for k := range want {
		if kinds[k] != 1 {
			t.Errorf("%s stands %d times", k, kinds[k])
		}
	}
	if len(r.Estimate.Lines[1].Because) != 2 {
		t.Errorf("fix is needed by %v, want lock and hose", r.Estimate.Lines[1].Because)
	}
	f.Ways = map[string]string{"fix": "hire", "other": "buy"}
	if r, err = testJudge().Of(f, Ask{}); err != nil || r.Estimate.Lines[1].Way != "hire" {
		t.Errorf("way %q, %v", r.Estimate.Lines[1].Way, err)
	}
}

// The drawn repair sum against exact moments: with the shared factor F of mean m
// and sd s independent of the lines, mean = m*S and var = (m2+s2)(V+S2) - m2*S2.
func TestRepairMomentsAreExact(t *testing.T) {
	f := testFile()
	f.Findings = map[string]Finding{"lock": grade(1), "rope": grade(1)}
	r, err := testJudge().Of(f, Ask{})
	if err != nil {
		t.Fatal(err)
	}
	sum, variance := 0.0, 0.0
	for _, l := range r.Estimate.Lines {
		a, m, b := float64(l.Cost.Low), float64(l.Cost.Likely), float64(l.Cost.High)
		sum += (a + 4*m + b) / 6
		variance += (b - a) * (b - a) / 36
	}
	m, s := float64(f.Shop.Overrun.Mean)/1e4, float64(f.Shop.Overrun.SD)/1e4
	sd := math.Sqrt((m*m+s*s)*(variance+sum*sum) - m*m*sum*sum)
	near(t, "mean", float64(r.Estimate.Mean), m*sum, 0.005)
	near(t, "sd", float64(r.Estimate.SD), sd, 0.03)
}

// Bayes by hand for one bad and one sound finding at the default probabilities.
func TestCarePosterior(t *testing.T) {
	f := testFile()
	f.Findings = map[string]Finding{"lock": grade(1), "rope": grade(3)}
	r, err := testJudge().Of(f, Ask{})
	if err != nil {
		t.Fatal(err)
	}
	w := [3]float64{.3 * .03 * .97, .5 * .12 * .88, .2 * .4 * .6}
	total := w[0] + w[1] + w[2]
	for k := range w {
		if got, want := float64(r.Hidden.Care[k]), 1e4*w[k]/total; math.Abs(got-want) > 0.51 {
			t.Errorf("class %d: %v, want %.1f", k, got, want)
		}
	}
}

func TestScrapFindingIsNeverAFreeRepair(t *testing.T) {
	sound, cracked := testFile(), testFile()
	sound.Findings = map[string]Finding{"weld": grade(4), "lock": grade(4), "rope": grade(4), "hose": grade(4), "paint": grade(4), "only": grade(4)}
	cracked.Findings = map[string]Finding{"weld": grade(0), "lock": grade(4), "rope": grade(4), "hose": grade(4), "paint": grade(4), "only": grade(4)}
	a, err := testJudge().Of(sound, Ask{})
	if err != nil {
		t.Fatal(err)
	}
	b, err := testJudge().Of(cracked, Ask{})
	if err != nil {
		t.Fatal(err)
	}
	if !b.Offer.WalkAway.None {
		t.Errorf("scrap with a haul of 200 and 100 of material still has a price: %+v", b.Offer.WalkAway)
	}
	if a.Offer.WalkAway.None || a.Offer.WalkAway.Price < 1500_00 {
		t.Errorf("the sound one has no price: %+v", a.Offer.WalkAway)
	}
	if b.Estimate.Lines[0].Kind != "scrap" {
		t.Errorf("the estimate does not say scrap: %+v", b.Estimate.Lines)
	}
}

func TestWaterfallAddsUp(t *testing.T) {
	f := testFile()
	f.Findings = map[string]Finding{"lock": grade(1), "rope": grade(2)}
	f.Shop.Tax, f.Shop.Fees = 6_25, 75_00
	r, err := testJudge().Of(f, Ask{})
	if err != nil {
		t.Fatal(err)
	}
	total := Money(0)
	for i, s := range r.Offer.Waterfall {
		lines := Money(0)
		for _, l := range s.Lines {
			lines += l.Amount
		}
		if len(s.Lines) > 0 && i > 0 && lines != -s.Amount {
			t.Errorf("%s: its lines make %d, the step is %d", s.Cause, lines, s.Amount)
		}
		if s.Cause != "fair" {
			total += s.Amount
		}
		if s.Total != total && s.Cause != "fair" {
			t.Errorf("%s: running total %d, want %d", s.Cause, s.Total, total)
		}
	}
	if total != r.Offer.Fair.Price {
		t.Errorf("the steps lead to %d, the fair offer is %d", total, r.Offer.Fair.Price)
	}
	if o := r.Offer; o.Opening.Price > o.Fair.Price || o.Fair.Price > o.WalkAway.Price {
		t.Errorf("prices do not rise: %d %d %d", o.Opening.Price, o.Fair.Price, o.WalkAway.Price)
	}
}

func TestNextPutsDangerFirst(t *testing.T) {
	r, err := testJudge().Of(testFile(), Ask{})
	if err != nil {
		t.Fatal(err)
	}
	seenOther := false // held points are never a must, and stand last
	for _, n := range r.Next {
		seenOther = seenOther || !n.Must
		if n.Must && seenOther {
			t.Errorf("danger point %s stands behind others", n.Check)
		}
		if n.Gain < 0 {
			t.Errorf("%s: knowing more costs money: %d", n.Check, n.Gain)
		}
	}
	if len(r.Next) != 6 {
		t.Errorf("%d points, want all 6", len(r.Next))
	}
}

// Nothing is run once a danger point is bad or while one is unanswered, nothing loaded before all were checked.
func TestHeldChecks(t *testing.T) {
	rubric := testRubric()
	late := func(id string) Check {
		c := rubric.Sections[0].Checks[1]
		c.ID, c.Title = id, "Point "+id
		return c
	}
	rubric.Sections = append(rubric.Sections,
		Section{ID: "run", Title: "Run", State: "unloaded", Checks: []Check{late("run")}},
		Section{ID: "load", Title: "Load", State: "loaded", Checks: []Check{late("load")}})
	judge := NewJudge([]Rubric{rubric}, []Part{{ID: "part", Title: "Part", Unit: "each"}})
	for _, c := range []struct {
		name      string
		weld      Finding
		run, load string
	}{
		{"all sound", grade(3), "", ""},
		{"weld not checked", Finding{Skipped: "no-access"}, "", "was not checked"},
		{"weld not answered", Finding{}, "was not looked at", "was not checked"},
		{"weld bad", grade(1), "was found bad", "was found bad"},
	} {
		f := testFile()
		f.Findings = map[string]Finding{"weld": c.weld, "lock": grade(3), "rope": grade(3), "run": grade(3)}
		r, err := judge.Of(f, Ask{})
		if err != nil {
			t.Fatal(err)
		}
		held := map[string]string{}
		for _, x := range r.Checks {
			held[x.Check] = x.Held
		}
		for id, want := range map[string]string{"run": c.run, "load": c.load, "lock": ""} {
			if (held[id] == "") != (want == "") || !strings.Contains(held[id], want) {
				t.Errorf("%s: %s is held by %q, want %q", c.name, id, held[id], want)
			}
		}
		for _, n := range r.Next {
			if n.Held != "" && n.Must {
				t.Errorf("%s: %s is held and yet a must", c.name, n.Check)
			}
		}
	}
}

// Whatever is found, the result is finite JSON, scores stay in their bands and
// the same file gives the same bytes.
func TestAnyFindingsGiveAnHonestResult(t *testing.T) {
	t.Parallel()
	j := testJudge()
	rapid.Check(t, func(t *rapid.T) {
		f := testFile()
		f.Findings = map[string]Finding{}
		for _, id := range []string{"weld", "lock", "rope", "hose", "paint", "only", "gone"} {
			switch g := rapid.IntRange(-2, 4).Draw(t, id); {
			case g == -1:
				f.Findings[id] = Finding{Skipped: "no-access"}
			case g >= 0:
				f.Findings[id] = grade(g)
			}
		}
		if rapid.Bool().Draw(t, "no comparables") {
			f.Comparables = nil
		}
		asking := Money(rapid.Int64Range(0, int64(maxMoney)).Draw(t, "asking"))
		f.Listing.Asking = &asking
		a, err := j.Of(f, Ask{})
		if err != nil {
			t.Fatal(err)
		}
		one, err := json.Marshal(a)
		if err != nil {
			t.Fatal(err)
		}
		b, _ := j.Of(f, Ask{})
		two, _ := json.Marshal(b)
		if string(one) != string(two) {
			t.Fatal("two runs differ")
		}
		for _, s := range []Score{a.Safety, a.Condition} {
			if s.Value != nil && (*s.Value < s.Low || *s.Value > s.High) || s.Low < 0 || s.High > 100 {
				t.Fatalf("score out of its band: %+v", s)
			}
		}
	})
}

func TestRefusesNonsense(t *testing.T) {
	for name, c := range map[string]struct {
		spoil func(*File)
		field string
	}{
		"wrong format":       {func(f *File) { f.Format = "x" }, "format"},
		"newer version":      {func(f *File) { f.Version = 9 }, "version"},
		"unknown rubric":     {func(f *File) { f.Rubric.ID = "ship" }, "rubric.id"},
		"no date":            {func(f *File) { f.Date = "31.3." }, "date"},
		"grade 7":            {func(f *File) { f.Findings = map[string]Finding{"lock": grade(7)} }, "findings.lock.grade"},
		"unknown reason":     {func(f *File) { f.Findings = map[string]Finding{"lock": {Skipped: "lazy"}} }, "findings.lock.skipped"},
		"graded and skipped": {func(f *File) { x := grade(2); x.Skipped = "no-time"; f.Findings = map[string]Finding{"lock": x} }, "findings.lock"},
		"infinite measurement": {func(f *File) {
			f.Findings = map[string]Finding{"lock": {Measured: map[string]Quantity{"a": {math.Inf(1), "in"}}}}
		}, "findings.lock.measured.a"},
		"negative price":        {func(f *File) { f.Prices = map[string]Range{"part": {-1, 0, 0}} }, "prices.part"},
		"low over high":         {func(f *File) { f.Prices = map[string]Range{"part": {300, 200, 100}} }, "prices.part"},
		"negative asking":       {func(f *File) { m := Money(-5); f.Listing.Asking = &m }, "listing.asking"},
		"unknown currency":      {func(f *File) { f.Shop.Currency = "XYZ" }, "shop.currency"},
		"unknown units":         {func(f *File) { f.Shop.Units = "cubits" }, "shop.units"},
		"odds that rise":        {func(f *File) { f.Shop.Odds = Odds{5000, 7500, 9000} }, "shop.odds"},
		"distance in furlongs":  {func(f *File) { f.Listing.Distance = &Quantity{3, "furlong"} }, "listing.distance.unit"},
		"distance not a number": {func(f *File) { f.Listing.Distance = &Quantity{math.NaN(), "mi"} }, "listing.distance"},
		"comparable basis":      {func(f *File) { f.Comparables[1].Basis = "guessed" }, "comparables[1].basis"},
		"year 12":               {func(f *File) { f.Listing.Made = 12 }, "listing.made"},
		"seller unknown":        {func(f *File) { f.Listing.Seller = "friend" }, "listing.seller"},
		"photo without hash":    {func(f *File) { f.Listing.Photos = []Photo{{Hash: "../../etc"}} }, "listing.photos[0].hash"},
	} {
		f := testFile()
		c.spoil(f)
		_, err := testJudge().Of(f, Ask{})
		e, ok := err.(*Error)
		if !ok {
			t.Errorf("%s: got %v, want an *Error", name, err)
			continue
		}
		if e.Field != c.field || e.Right == "" {
			t.Errorf("%s: %v names %q, want %q and what would be right", name, e, e.Field, c.field)
		}
	}
}

// A comparable that cannot count is left out with the reason, and the rest stands.
func TestComparablesLeftOutSayWhy(t *testing.T) {
	f := testFile()
	f.Comparables[0].Date = "2030-01-01"
	f.Comparables = append(f.Comparables, Comparable{ID: "c", Basis: "sold"}, Comparable{ID: "d", Basis: "sold", Price: 1, Off: true})
	r, err := testJudge().Of(f, Ask{})
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []string{"after the appraisal", "", "no price", "left out"} {
		if row := r.Worth.Rows[i]; row.Used != (want == "") || !strings.Contains(row.Note, want) {
			t.Errorf("row %d: used %v, note %q, want %q", i, row.Used, row.Note, want)
		}
	}
}

// A scrap finding with no worth known costs its hauling, never less than nothing.
func TestScrapWithoutWorth(t *testing.T) {
	f := testFile()
	f.Comparables = nil
	f.Findings = map[string]Finding{"weld": grade(0)}
	r, err := testJudge().Of(f, Ask{})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "haul", float64(r.Estimate.Mean), 200_00, 0.02)
	for _, l := range r.Landing.Lines {
		if l.Stays && !l.Off {
			t.Errorf("%s is still bought for scrap", l.ID)
		}
	}
}

func TestOlderRubricKeepsFindings(t *testing.T) {
	f := testFile()
	f.Rubric.Version = 1
	f.Findings = map[string]Finding{"gone": grade(0), "lock": grade(4)}
	r, err := testJudge().Of(f, Ask{})
	if err != nil {
		t.Fatal(err)
	}
	notes := strings.Join(r.Notes, "\n")
	if !strings.Contains(notes, "version 1") || !strings.Contains(notes, `"gone"`) {
		t.Errorf("notes do not say it: %s", notes)
	}
}
