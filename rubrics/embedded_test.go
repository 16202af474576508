package rubrics

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/limit"
)

func load(t *testing.T) []appraisal.Rubric {
	t.Helper()
	all, err := All()
	if err != nil {
		t.Fatal(err)
	}
	return all
}

func checksOf(r *appraisal.Rubric) (out []*appraisal.Check) {
	for s := range r.Sections {
		for k := range r.Sections[s].Checks {
			out = append(out, &r.Sections[s].Checks[k])
		}
	}
	return out
}

// hardest is the school grade up to which a rubric may be read: texts are for
// somebody in gloves, with the other eye on the machine.
const hardest = 4.0

func TestFloors(t *testing.T) {
	floors := map[string]struct{ checks, danger, limits int }{
		"two-post-lift":          {45, 25, 8},
		"h-frame-press":          {26, 14, 3},
		"four-post-lift":         {45, 25, 8},
		"scissor-lift":           {38, 18, 7},
		"cnc-machining-centre":   {45, 10, 7},
		"surface-grinder":        {34, 7, 4},
		"drill-press":            {24, 3, 2},
		"band-saw":               {30, 5, 2},
		"air-compressor":         {36, 11, 4},
		"engine-lathe":           {50, 6, 11},
		"knee-mill":              {45, 4, 8},
		"mechanical-power-press": {45, 20, 7},
		"welder":                 {29, 5, 2},
		"bench-grinder":          {25, 8, 4},
		"phase-converter":        {26, 6, 6},
	}
	seen := 0
	for _, r := range load(t) {
		floor, ok := floors[r.ID]
		if !ok {
			t.Errorf("%s has no floor yet", r.ID)
			continue
		}
		seen++
		rep := Describe(&r, nil)
		if rep.Checks < floor.checks || rep.Danger < floor.danger || rep.Limits < floor.limits {
			t.Errorf("%s has %d checks, %d danger, %d limits, want at least %+v", r.ID, rep.Checks, rep.Danger, rep.Limits, floor)
		}
		if rep.Grade > hardest {
			t.Errorf("%s is read in school grade %g, want at most %g", r.ID, rep.Grade, hardest)
		}
		if r.Body == nil || r.Needs == nil || r.Visit == nil || len(r.Visit.Questions) < 8 || len(r.Facts) < 4 {
			t.Errorf("%s lacks size, needs, eight questions or four facts", r.ID)
		}
		for _, s := range rep.Sections {
			if s.Safety+s.Condition == 0 || s.Minutes < 1 {
				t.Errorf("%s %s weighs nothing or takes no time", r.ID, s.ID)
			}
		}
	}
	if seen != len(floors) {
		t.Errorf("%d of %d rubrics found", seen, len(floors))
	}
}

// Nothing bad or failed is left without an answer, nothing written is left unused.
func TestEveryFindingLeadsOn(t *testing.T) {
	for _, r := range load(t) {
		src, err := files.ReadFile(r.ID + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		rep, err := Check(r.ID+".yaml", src)
		if err != nil {
			t.Fatal(err)
		}
		for _, open := range rep.WithoutRemedy {
			if !strings.HasSuffix(open, ": worn") {
				t.Errorf("%s: %s leads to no remedy and not to scrap", r.ID, open)
			}
		}
		if len(rep.WithoutPrice)+len(rep.Unused) > 0 {
			t.Errorf("%s: without price %v, unused %v", r.ID, rep.WithoutPrice, rep.Unused)
		}
		for _, c := range checksOf(&r) {
			if c.Hazard == "danger" && (c.Grades.Failed == "" || c.Caution == "") {
				t.Errorf("%s %s: a danger check says what failed looks like and how to keep out of it", r.ID, c.ID)
			}
		}
	}
}

// Every limit that a check names computes, and its grade can be proposed.
func TestLimitsCompute(t *testing.T) {
	sample := map[string]map[string]string{
		"rope-wires":          {"lay": "2", "strand": "1", "broken-strand": "0"},
		"rope-diameter":       {"nominal": "3/8 in", "measured": "0.352 in"},
		"leaf-chain":          {"pitch": "1 in", "pitches": "12", "measured": "12.1 in"},
		"descent-speed":       {"travel": "72 in", "time": "20 s"},
		"leak-down":           {"drop": "0.1 in", "time": "10 min"},
		"lift-time":           {"bore": "2.5 in", "cylinders": "2", "stroke": "70 in", "flow": "2.1 gpm", "time": "90 s"},
		"anchor-embedment":    {"length": "5 1/2 in", "protrusion": "1 in", "plate": "3/4 in"},
		"inspection-interval": {"months": "13"},
		"slab":                {"thickness": "4 1/2 in", "strength": "3000 psi"},
		"rating-plate":        {"maker": "yes", "model": "yes", "serial": "no", "capacity": "yes"},
		"lift-standard":       {"made": "2010"},
		"press-force":         {"bore": "2 1/2 in", "pressure": "8000 psi", "rated": "20 short ton"},
		"press-relief":        {"rated": "20 short ton", "opens": "22 short ton"},
		"drawbar-pull":        {"taper": "40", "pull": "1700 lbf", "book": "1950 lbf"},
		"mill-geometry":       {"measured": "0.001 in", "over": "12 in"},
		"backlash":            {"middle": "0.0006 in", "end": "0.0003 in"},
		"tram":                {"reading": "0.0005 in", "sweep": "10 in"},
		"circularity":         {"largest": "2.0003 in", "smallest": "1.9999 in"},
		"receiver-pressure":   {"mawp": "150 psi", "reached": "135 psi"},
		"receiver-valve":      {"between": "none"},
		"relief-setting":      {"mawp": "150 psi", "set": "150 psi"},
		"belt-guard":          {"height": "2 ft", "guarded": "yes"},
		"lathe-geometry":      {"measured": "0.0003 in", "over": "12 in"},
		"way-wear":            {"depth": "0.004 in", "radius": "0.5 in"},
		"two-collar":          {"near": "1.5004 in", "far": "1.5012 in", "spacing": "6 in"},
		"press-rule":          {"press": "mechanical"},
		"press-distance":      {"stop": "0.25 s", "rpm": "90", "points": "14", "distance": "24 in"},
		"guard-opening":       {"distance": "6 in", "opening": "3/4 in"},
		"clamp-current":       {"measured": "6 A", "plate": "14 A"},
		"wheel-speed":         {"diameter": "7 in", "rpm": "3450", "marked": "3600"},
		"drill-running":       {"runout": "0.002 in", "over": "3 in"},
		"chuck-top":           {"left": "0.12 in"},
		"block-flatness":      {"corner-1": "1.0000 in", "corner-2": "1.0001 in", "corner-3": "1.0001 in", "corner-4": "1.0000 in"},
		"grinder-gap":         {"gap": "1/8 in"},
		"wheel-exposure":      {"open": "85 deg", "start": "60 deg"},
		"receiver-wall":       {"pressure": "175 psi", "radius": "12 in", "stress": "20000 psi", "joint": "0.70", "measured": "0.17 in"},
		"pump-up":             {"volume": "80 gal", "from": "20 psi", "to": "80 psi", "time": "155 s", "rated": "17 cfm"},
		"tank-leak":           {"drop": "1 psi", "time": "10 min"},
		"gauge-error":         {"reading": "121 psi", "reference": "120 psi"},
		"welder-output":       {"dial": "150 A", "measured": "146 A"},
		"rotary-size":         {"machine": "5 hp", "converter": "10 hp", "start": "normal"},
		"rotary-supply":       {"current": "15.2 A", "kind": "fixed"},
		"leg-balance":         {"leg-1": "240 V", "leg-2": "236 V", "leg-3": "244 V"},
		"transformer":         {"voltage": "460 V", "current": "7.6 A", "kva": "9 kVA"},
	}
	used := map[string]bool{}
	for _, r := range load(t) {
		for _, c := range checksOf(&r) {
			if c.Limit == nil {
				continue
			}
			given := map[string]string{}
			for q, v := range c.Limit.Fixed {
				given[q] = v
			}
			for _, q := range c.Limit.Ask {
				v, ok := sample[c.Limit.Name][q]
				if !ok {
					t.Errorf("%s %s asks for %s, the test has no sample of it", r.ID, c.ID, q)
				}
				given[q] = v
			}
			if _, err := limit.Compute(c.Limit.Name, given); err != nil {
				t.Errorf("%s %s: %v", r.ID, c.ID, err)
			}
			used[c.Limit.Name] = true
		}
	}
	for name := range sample {
		if !used[name] {
			t.Errorf("no check measures %s", name)
		}
	}
}

// What runs or carries a load is shown by the seller only where the thing stands;
// where it can't be, a danger check takes its place, so that nothing reads as proven.
func TestNotShownIsNotProven(t *testing.T) {
	stand := map[string][3]string{
		"two-post-lift":          {"standing", "taken-down", "never-shown-running"},
		"four-post-lift":         {"standing", "taken-down", "never-shown-running"},
		"scissor-lift":           {"standing", "disconnected", "never-shown-running"},
		"h-frame-press":          {"shown", "laid-down", "never-shown-working"},
		"cnc-machining-centre":   {"shown", "not-connected", "never-shown-running"},
		"surface-grinder":        {"shown", "not-connected", "never-shown-running"},
		"drill-press":            {"shown", "not-connected", "never-shown-running"},
		"band-saw":               {"shown", "not-connected", "never-shown-running"},
		"air-compressor":         {"shown", "not-connected", "never-shown-running"},
		"engine-lathe":           {"shown", "cold", "never-shown-running"},
		"knee-mill":              {"shown", "cold", "never-shown-running"},
		"mechanical-power-press": {"shown", "cold", "never-shown-running"},
		"welder":                 {"shown", "not-connected", "never-shown-running"},
		"bench-grinder":          {"shown", "not-connected", "never-shown-running"},
		"phase-converter":        {"shown", "not-connected", "never-shown-running"},
	}
	for _, r := range load(t) {
		want, ok := stand[r.ID]
		if !ok {
			continue
		}
		found := false
		for _, c := range checksOf(&r) {
			if c.ID == want[2] {
				found = c.Hazard == "danger" && slices.Equal(c.When[want[0]], []string{want[1]})
			}
		}
		if !found {
			t.Errorf("%s: no danger check for one that is %s", r.ID, want[1])
		}
		for _, s := range r.Sections {
			for _, c := range s.Checks {
				if s.State == "loaded" && slices.Contains(c.When[want[0]], want[1]) || s.State == "loaded" && len(c.When[want[0]]) == 0 {
					t.Errorf("%s %s is asked of one that is %s", r.ID, c.ID, want[1])
				}
			}
		}
	}
}

func TestMakeWays(t *testing.T) {
	for _, r := range load(t) {
		n := 0
		for _, rem := range r.Remedies {
			for _, w := range rem.Ways {
				if w.Make == nil {
					continue
				}
				n++
				m := appraisal.MachiningMinutes(*w.Make)
				if m < 20 || m > 400 {
					t.Errorf("%s %s %s takes %.0f minutes of machining: out of any likely range", r.ID, rem.ID, w.ID, m)
				}
			}
		}
		if n < 3 {
			t.Errorf("%s has %d ways of making, want at least 3", r.ID, n)
		}
	}
}

func TestPricesAreUsedAndDated(t *testing.T) {
	book, err := PriceBook()
	if err != nil {
		t.Fatal(err)
	}
	if dated, err := PartsDated(); err != nil || dated != book.Dated {
		t.Errorf("dated %q, %v", dated, err)
	}
	used := map[string]bool{}
	all := load(t)
	b, err := json.Marshal(all)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range book.Parts {
		used[p.ID] = strings.Contains(string(b), `"part":"`+p.ID+`"`) || slices.Contains(appraisal.HomeParts, p.ID)
	}
	for _, id := range appraisal.HomeParts {
		if !used[id] {
			t.Errorf("%s is named by the way home and stands in no price book", id)
		}
	}
	for _, id := range threadParts(t) {
		if _, ok := used[id]; !ok {
			t.Errorf("the limit thread names the part %s, which is not priced", id)
		}
		used[id] = true
	}
	for id, ok := range used {
		if !ok {
			t.Errorf("%s is priced and never used", id)
		}
	}
}

// threadParts are the parts that the repairs of a thread name.
func threadParts(t *testing.T) (out []string) {
	t.Helper()
	res, err := limit.Compute("thread", map[string]string{"diameter": "1/2 in", "tpi": "13 tpi"})
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range res.More {
		if f.Part != "" {
			out = append(out, f.Part)
		}
	}
	if len(out) == 0 {
		t.Error("no repair of a thread names a part")
	}
	return out
}

func TestReportText(t *testing.T) {
	rep := Describe(&appraisal.Rubric{
		ID: "x", Kind: "X", Version: 1,
		Remedies:     []appraisal.Remedy{{ID: "free", Ways: []appraisal.Way{{ID: "gift"}}}},
		Preparations: []appraisal.Preparation{{ID: "idle"}},
		Sections: []appraisal.Section{{ID: "s", Title: "S", State: "power-off", Checks: []appraisal.Check{
			{ID: "a", Hazard: "danger", Minutes: 2, Weight: appraisal.Weight{Safety: 5, Condition: 1}, Grades: appraisal.Grades{Sound: "s", Bad: "b", Failed: "f"}},
		}}},
	}, nil)
	text := rep.String()
	for _, want := range []string{"1 checks, 1 of them danger, 0 measured, 2 minutes", "safety   5, condition   1", "without remedy: a: bad, a: failed", "without price: free: gift", "unused: free, idle"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing in\n%s", want, text)
		}
	}
}

func BenchmarkDecode(b *testing.B) {
	src, err := files.ReadFile("two-post-lift.yaml")
	if err != nil {
		b.Fatal(err)
	}
	o, err := embedded()
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := Decode("two-post-lift.yaml", src, o); err != nil {
			b.Fatal(err)
		}
	}
}
