package appraisal

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"asfound/rubrics/limit"

	"pgregory.net/rapid"
)

func told2(text string) *Quantity {
	var q Quantity
	n, u, _ := strings.Cut(text, " ")
	if _, err := fmt.Sscan(n, &q.N); err != nil {
		panic(err)
	}
	q.Unit = u
	return &q
}

// shopRubric is the test rubric with a size, needs and lines that follow the shop.
func shopRubric(edit func(r *Rubric)) Rubric {
	r := testRubric()
	one := Range{100_00, 200_00, 400_00}
	r.Body = &Body{
		Weight: Span{3000, 3800, 4500}, Length: Span{80, 84, 96}, Width: Span{34, 36, 40}, Height: Span{60, 66, 72}, Power: Span{2, 3, 5},
		Pieces: []Piece{{ID: "whole", Title: "Machine", Count: 1, Share: 1, Length: 84, Width: 36, Height: 66, TopHeavy: true, Handling: "Lift by the bed, head down on blocks."}},
	}
	r.Needs = &Needs{Slab: &SlabNeed{4, 3000}, Clear: 36, Start: "normal", Pads: 6, PadArea: 16}
	r.Landing = []Landing{
		{ID: "drive", Title: "Drive", Cost: one, PerDistance: 2_00, Haul: "transport"},
		{ID: "crane", Title: "Rigger", Cost: one, Hours: Hours{1, 2, 3}, Rate: "rigger", Haul: "loading"},
		{ID: "chains", Title: "Chains", Cost: one, Haul: "tie-downs"},
		{ID: "pit", Title: "Higher roof", Cost: one, Fit: "ceiling"},
		{ID: "strip", Title: "Strip it for the door", Cost: one, Fit: "door"},
		{ID: "concrete", Title: "Slab", Cost: one, Stays: true, Fit: "slab", Assumed: true},
		{ID: "planks", Title: "Spread the load", Cost: one, Fit: "floor"},
		{ID: "wire", Title: "Circuit", Cost: one, Stays: true, Fit: "circuit", Assumed: true},
		{ID: "phases", Title: "Converter", Cost: one, Stays: true, Fit: "converter"},
		{ID: "step-up", Title: "Transformer", Cost: one, Stays: true, Fit: "transformer"},
		{ID: "air", Title: "Air line", Cost: one, Stays: true, Fit: "air"},
	}
	if edit != nil {
		edit(&r)
	}
	return r
}

var homeBook = func() []Part {
	out := []Part{{ID: "part", Title: "Part", Unit: "each", Price: Range{20_00, 40_00, 90_00}}}
	for _, id := range HomeParts {
		out = append(out, Part{ID: id, Title: id, Unit: "each", Price: Range{10_00, 20_00, 40_00}})
	}
	return out
}()

// inShop judges the test file in a shop.
func inShop(t failer, r Rubric, edit func(f *File)) *Result {
	f := testFile()
	edit(f)
	res, err := NewJudge([]Rubric{r}, homeBook).Of(f, Ask{})
	if err != nil {
		t.Fatalf("%v", err)
	}
	return res
}

type failer interface {
	Fatalf(string, ...any)
}

func fitPoint(t failer, res *Result, id string) FitPoint {
	for _, p := range res.Fit.Points {
		if p.ID == id {
			return p
		}
	}
	t.Fatalf("no point %s in %+v", id, res.Fit.Points)
	return FitPoint{}
}

func landingLine(t failer, res *Result, id string) Line {
	for _, l := range res.Landing.Lines {
		if l.ID == id {
			return l
		}
	}
	t.Fatalf("no line %s", id)
	return Line{}
}

func lift(r *Rubric) {
	r.Needs.Rise, r.Needs.Arms = 72, 4
	r.Body.Height = Span{100, 110, 120}
}

// What the shop and the equipment must agree on, by the rows of the field
// references: SH by trade practice and published examples of lift dealers, EL by
// NFPA 70 tables and worked examples, as package limit holds them.
func TestFitPoints(t *testing.T) {
	for _, c := range []struct {
		row, point, finding string
		rubric              func(r *Rubric)
		file                func(f *File, s *Site)
		value               float64 // of the limit behind it; 0 is not looked at
		says                string
		missing             string
	}{
		{"SH04 enough", "ceiling", Fits, lift, func(f *File, s *Site) {
			s.Ceiling, s.Vehicle = told2("148 in"), &Vehicle{Height: told2("72 in")}
		}, 148, "148 in is needed", ""},
		{"SH04 too low", "ceiling", WithWork, lift, func(f *File, s *Site) {
			s.Ceiling, s.Vehicle = told2("143 in"), &Vehicle{Height: told2("72 in")}
		}, 143, "it does not fit", ""},
		{"vehicle not told", "ceiling", NotKnown, lift, func(f *File, s *Site) { s.Ceiling = told2("148 in") }, 0, "tallest vehicle", "site.vehicle.height"},
		{"machine taller", "ceiling", WithWork, lift, func(f *File, s *Site) {
			s.Ceiling, s.Vehicle, f.Listing.Height = told2("148 in"), &Vehicle{Height: told2("60 in")}, told2("12.5 ft")
		}, 148, "12.5 ft high beneath a ceiling of 148 in", ""},
		{"usual height between", "ceiling", NotKnown, nil, func(f *File, s *Site) { s.Ceiling = told2("66 in") }, 0, "common practice", "listing.height"},
		{"usual height below", "ceiling", Fits, nil, func(f *File, s *Site) { s.Ceiling = told2("80 in") }, 0, "common practice", ""},
		{"ceiling not told", "ceiling", NotKnown, nil, func(f *File, s *Site) {}, 0, "", "site.ceiling"},

		{"SH07", "door", WithWork, nil, func(f *File, s *Site) {
			s.DoorWidth, s.DoorHeight, f.Listing.Width = told2("36 in"), told2("84 in"), told2("38 in")
		}, 36, "not tilted", ""},
		{"SH07 wide enough", "door", Fits, nil, func(f *File, s *Site) {
			s.DoorWidth, s.DoorHeight, f.Listing.Width = told2("42 in"), told2("84 in"), told2("38 in")
		}, 42, "from memory", ""},
		{"door not told", "door", NotKnown, nil, func(f *File, s *Site) { s.DoorWidth = told2("36 in") }, 0, "", "site.door_height"},

		{"SH05", "floor", Fits, nil, func(f *File, s *Site) {
			s.Floor, s.FloorLength, s.FloorWidth, f.Listing.Weight = "concrete", told2("20 ft"), told2("20 ft"), told2("3800 lb")
		}, 0, "", ""},
		{"SH06", "floor", WithWork, func(r *Rubric) { r.Body.Length, r.Body.Width = Span{84, 84, 84}, Span{36, 36, 36} }, func(f *File, s *Site) {
			s.Floor, s.FloorLength, s.FloorWidth, f.Listing.Weight = "wood", told2("20 ft"), told2("20 ft"), told2("3800 lb")
		}, 181, "wood", ""},
		{"no room", "floor", DoesNot, nil, func(f *File, s *Site) {
			s.Floor, s.FloorLength, s.FloorWidth = "concrete", told2("6 ft"), told2("6 ft")
		}, 0, "free floor", ""},
		{"little room to work", "floor", Fits, nil, func(f *File, s *Site) {
			s.Floor, s.FloorLength, s.FloorWidth = "concrete", told2("9 ft"), told2("5 ft")
		}, 0, "36 in to work around it is common practice", ""},

		{"slab of a lift", "slab", NotKnown, lift, func(f *File, s *Site) { s.Slab, s.SlabStrength = told2("6 in"), told2("4000 psi") }, 0, "manual", ""},
		{"slab of a lift a little thin", "slab", NotKnown, func(r *Rubric) { lift(r); r.Needs.Slab.Thickness = 4.25 }, func(f *File, s *Site) { s.Slab = told2("4 in") }, 4, "4.25 in", "site.slab_strength"},
		{"thin slab of a lift", "slab", WithWork, lift, func(f *File, s *Site) { s.Slab = told2("3 in") }, 3, "manual", ""},
		{"slab of a machine", "slab", Fits, nil, func(f *File, s *Site) { s.Slab = told2("6 in") }, 6, "common practice", ""},
		{"weak concrete", "slab", WithWork, nil, func(f *File, s *Site) { s.Slab, s.SlabStrength = told2("6 in"), told2("2500 psi") }, 2500, "3,000 psi", ""},
		{"wood is no slab", "slab", DoesNot, lift, func(f *File, s *Site) { s.Floor = "wood" }, 0, "no slab", ""},

		{"SH01", "arms", DoesNot, lift, func(f *File, s *Site) {
			f.Listing.Capacity, s.Vehicle = told2("10000 lb"), &Vehicle{Weight: told2("9000 lb"), Front: 33_33}
		}, 3000, "more than 2500 lb", ""},
		{"SH03", "arms", Fits, lift, func(f *File, s *Site) {
			f.Listing.Capacity, s.Vehicle = told2("9000 lb"), &Vehicle{Weight: told2("5200 lb"), Front: 58_00}
		}, 1508, "common practice", ""},
		{"axles not told", "arms", NotKnown, lift, func(f *File, s *Site) {
			f.Listing.Capacity, s.Vehicle = told2("9000 lb"), &Vehicle{Weight: told2("5200 lb")}
		}, 0, "", "site.vehicle.front"},

		{"EL05", "circuit", Fits, nil, func(f *File, s *Site) {
			f.Listing.Power, f.Listing.Voltage, f.Listing.Phases = told2("7.5 hp"), told2("230 V"), 3
			s.Voltage, s.Phases, s.Current, s.Circuit = told2("230 V"), 3, told2("60 A"), told2("60 A")
		}, 27.5, "10 AWG at 60 degC", ""},
		{"EL08", "circuit", WithWork, nil, func(f *File, s *Site) {
			f.Listing.Power, f.Listing.Voltage, f.Listing.Phases = told2("5 hp"), told2("230 V"), 3
			s.Voltage, s.Phases, s.Current = told2("230 V"), 3, told2("60 A")
		}, 19, "breaker at most 40 A", ""},
		{"EL07 panel too small", "circuit", DoesNot, nil, func(f *File, s *Site) {
			f.Listing.Power, f.Listing.Voltage, f.Listing.Phases = told2("5 hp"), told2("230 V"), 1
			s.Voltage, s.Phases, s.Current = told2("240 V"), 1, told2("30 A")
		}, 35, "electrician and the utility", ""},
		{"EL08 breaker there too large", "circuit", WithWork, nil, func(f *File, s *Site) {
			f.Listing.Power, f.Listing.Voltage, f.Listing.Phases = told2("5 hp"), told2("230 V"), 3
			s.Voltage, s.Phases, s.Current, s.Circuit = told2("230 V"), 3, told2("60 A"), told2("60 A")
		}, 19, "larger than the 40 A", ""},
		{"EL13 long run", "circuit", WithWork, nil, func(f *File, s *Site) {
			f.Listing.Power, f.Listing.Voltage, f.Listing.Phases = told2("5 hp"), told2("230 V"), 3
			s.Voltage, s.Phases, s.Current, s.Run = told2("230 V"), 3, told2("60 A"), told2("200 ft")
		}, 4.53, "thicker wire", ""},
		{"EL21", "circuit", WithWork, nil, func(f *File, s *Site) {
			f.Listing.Power, f.Listing.Voltage, f.Listing.Phases = told2("5 hp"), told2("230 V"), 3
			s.Voltage, s.Phases, s.Current = told2("230 V"), 1, told2("60 A")
		}, 38, "Through a converter", ""},
		{"EL20 enough for a drive alone", "circuit", WithWork, nil, func(f *File, s *Site) {
			f.Listing.Power, f.Listing.Voltage, f.Listing.Phases = told2("5 hp"), told2("230 V"), 3
			s.Voltage, s.Phases, s.Current = told2("230 V"), 1, told2("35 A")
		}, 38, "Through a converter", ""},
		{"EL20 not even for a drive", "circuit", DoesNot, nil, func(f *File, s *Site) {
			f.Listing.Power, f.Listing.Voltage, f.Listing.Phases = told2("5 hp"), told2("230 V"), 3
			s.Voltage, s.Phases, s.Current = told2("230 V"), 1, told2("32 A")
		}, 38, "The panel has 32 A free", ""},
		{"no motor, by the plate", "circuit", WithWork, func(r *Rubric) { r.Body.Power = Span{} }, func(f *File, s *Site) {
			f.Listing.Voltage, f.Listing.Phases, f.Listing.Current = told2("230 V"), 1, told2("40 A")
			s.Voltage, s.Phases, s.Current = told2("240 V"), 1, told2("60 A")
		}, 50, "By the plate's 40 A", ""},
		{"no motor, no plate", "circuit", NotKnown, func(r *Rubric) { r.Body.Power = Span{} }, func(f *File, s *Site) {
			f.Listing.Voltage, f.Listing.Phases = told2("230 V"), 1
			s.Voltage, s.Phases = told2("240 V"), 1
		}, 0, "current on its plate", "listing.current"},
		{"several motors by the plate", "circuit", WithWork, nil, func(f *File, s *Site) {
			f.Listing.Power, f.Listing.Voltage, f.Listing.Phases, f.Listing.Current = told2("5 hp"), told2("230 V"), 3, told2("40 A")
			s.Voltage, s.Phases, s.Current = told2("230 V"), 3, told2("100 A")
		}, 50, "from memory", ""},
		{"between rows of the table", "circuit", NotKnown, nil, func(f *File, s *Site) {
			f.Listing.Power, f.Listing.Voltage, f.Listing.Phases = told2("4 hp"), told2("230 V"), 3
			s.Voltage, s.Phases, s.Current = told2("230 V"), 3, told2("100 A")
		}, 0, "between the rows", "listing.current"},
		{"power not told", "circuit", NotKnown, nil, func(f *File, s *Site) {
			f.Listing.Voltage, f.Listing.Phases = told2("230 V"), 1
			s.Voltage, s.Phases, s.Current = told2("230 V"), 1, told2("20 A")
		}, 0, "usual ones of the kind", "listing.power"},

		{"EL19", "converter", WithWork, nil, func(f *File, s *Site) {
			f.Listing.Power, f.Listing.Voltage, f.Listing.Phases = told2("5 hp"), told2("230 V"), 3
			s.Voltage, s.Phases = told2("230 V"), 1
		}, 30.4, "rotary converter of 7.5 hp", ""},
		{"by a fact", "converter", WithWork, func(r *Rubric) { r.Facts[0].Options[1].ID = "three-phase" }, func(f *File, s *Site) {
			f.Facts = map[string]string{"phase": "three-phase"}
			s.Phases = 1
		}, 0, "three-phase machine", ""},
		{"three-phase shop", "converter", Fits, nil, func(f *File, s *Site) { f.Listing.Phases, s.Phases = 3, 3 }, 0, "no converter", ""},
		{"phases not told", "converter", NotKnown, nil, func(f *File, s *Site) { s.Phases = 1 }, 0, "", "listing.phases"},

		{"EL22", "transformer", WithWork, nil, func(f *File, s *Site) {
			f.Listing.Power, f.Listing.Voltage, f.Listing.Phases = told2("5 hp"), told2("460 V"), 3
			s.Voltage, s.Phases = told2("230 V"), 3
		}, 7.57, "7.57 kVA", ""},
		{"one voltage", "transformer", Fits, nil, func(f *File, s *Site) { f.Listing.Voltage, s.Voltage = told2("230 V"), told2("240 V") }, 0, "no transformer", ""},

		{"EL17", "generator", Fits, nil, func(f *File, s *Site) {
			f.Listing.Power, f.Listing.Voltage, f.Listing.Phases, s.Generator = told2("5 hp"), told2("230 V"), 3, told2("20 kW")
		}, 20, "19.6 kVA", ""},
		{"EL17 too small", "generator", DoesNot, nil, func(f *File, s *Site) {
			f.Listing.Power, f.Listing.Voltage, f.Listing.Phases, s.Generator = told2("5 hp"), told2("230 V"), 3, told2("12 kW")
		}, 12, "too little", ""},

		{"air", "air", WithWork, func(r *Rubric) { r.Needs.Air = &AirNeed{90, 6} }, func(f *File, s *Site) {
			s.AirFlow, s.AirPressure = told2("4 cfm"), told2("120 psi")
		}, 4, "usually asks for 6 cfm", ""},
	} {
		t.Run(c.row, func(t *testing.T) {
			res := inShop(t, shopRubric(c.rubric), func(f *File) {
				f.Shop.Site = &Site{}
				c.file(f, f.Shop.Site)
			})
			p := fitPoint(t, res, c.point)
			if p.Finding != c.finding || !strings.Contains(p.Text, c.says) {
				t.Errorf("%s, want %s saying %q: %s", p.Finding, c.finding, c.says, p.Text)
			}
			if c.value != 0 && (p.Limit == nil || math.Abs(p.Limit.Value-c.value) > 0.005*c.value) {
				t.Errorf("limit %+v, want %g", p.Limit, c.value)
			}
			if c.missing != "" && !contains(p.Missing, c.missing) {
				t.Errorf("missing %v, want %s", p.Missing, c.missing)
			}
			if c.finding == WithWork && p.Landing == "" {
				t.Error("with work, and no landing line named")
			}
			if text, _ := json.Marshal(res.Fit); strings.Contains(strings.ToLower(string(text)), "safe") {
				t.Errorf("says safe: %s", text)
			}
		})
	}
}

// Without a size of the kind there is nothing to hold against a shop.
func TestNoBodyNoFit(t *testing.T) {
	res, err := testJudge().Of(testFile(), Ask{})
	if err != nil || res.Fit != nil || res.Home != nil {
		t.Errorf("%v: %+v, %+v", err, res.Fit, res.Home)
	}
}

// A line follows its point: left out where it fits, counted where it needs work,
// and as the rubric assumes where it is not known; the user's own choice wins.
func TestLandingFollowsFit(t *testing.T) {
	r := shopRubric(nil)
	three := func(f *File) {
		f.Listing.Power, f.Listing.Voltage, f.Listing.Phases = told2("5 hp"), told2("230 V"), 3
		f.Shop.Site = &Site{Voltage: told2("230 V"), Phases: 1, Current: told2("60 A")}
	}
	before := inShop(t, r, func(f *File) {})
	if landingLine(t, before, "wire").Off || !landingLine(t, before, "phases").Off {
		t.Error("where nothing is told the lines are not as the rubric assumes")
	}
	with := inShop(t, r, three)
	if l := landingLine(t, with, "phases"); l.Off || l.Mean == 0 || !strings.Contains(l.Says, "fit with your shop") {
		t.Errorf("the converter does not count: %+v", l)
	}
	if with.Landing.Mean <= before.Landing.Mean {
		t.Error("the landing is not dearer by the converter")
	}
	steps := fmt.Sprint(with.Why["landing"].Steps, with.Why["line:phases"].Steps)
	if !strings.Contains(steps, "the three-phase supply needs work") || !strings.Contains(steps, "by the fit with your shop the voltage needs nothing") {
		t.Errorf("the derivation does not say why: %s", steps)
	}
	own := inShop(t, r, func(f *File) {
		three(f)
		f.Landing = map[string]LandingChoice{"phases": {Off: true}, "step-up": {Cost: &Range{1_00, 2_00, 3_00}}}
	})
	if l := landingLine(t, own, "phases"); !l.Off || !strings.Contains(l.Says, "Your own choice") {
		t.Errorf("the own choice does not win: %+v", l)
	}
	if l := landingLine(t, own, "step-up"); l.Off || !l.Own || l.Cost.Likely != 2_00 {
		t.Errorf("the own cost does not win: %+v", l)
	}
}

// anySite draws a shop with some of it told.
func anySite(t *rapid.T) *Site {
	maybe := func(name, unit string, low, high float64) *Quantity {
		if rapid.Bool().Draw(t, "no "+name) {
			return nil
		}
		return &Quantity{math.Round(rapid.Float64Range(low, high).Draw(t, name)*10) / 10, unit}
	}
	s := &Site{
		Ceiling: maybe("ceiling", "in", 50, 200), DoorWidth: maybe("door width", "in", 20, 150), DoorHeight: maybe("door height", "in", 40, 150),
		FloorLength: maybe("floor length", "ft", 4, 40), FloorWidth: maybe("floor width", "ft", 4, 40), Floor: rapid.SampledFrom([]string{"", "concrete", "wood", "asphalt"}).Draw(t, "floor"),
		Slab: maybe("slab", "in", 1, 10), SlabStrength: maybe("strength", "psi", 1000, 6000), Voltage: rapid.SampledFrom([]*Quantity{nil, told2("120 V"), told2("208 V"), told2("240 V"), told2("480 V")}).Draw(t, "voltage"),
		Phases: rapid.SampledFrom([]int{0, 1, 3}).Draw(t, "phases"), Current: maybe("current", "A", 5, 120), Circuit: maybe("circuit", "A", 15, 100), Run: maybe("run", "ft", 5, 300),
		Generator: maybe("generator", "kW", 2, 60), AirFlow: maybe("flow", "cfm", 1, 30), AirPressure: maybe("air", "psi", 50, 200),
	}
	if rapid.Bool().Draw(t, "vehicle") {
		s.Vehicle = &Vehicle{Weight: maybe("vehicle weight", "lb", 2000, 12000), Height: maybe("vehicle height", "in", 50, 110), Front: rapid.SampledFrom([]int{0, 40_00, 60_00}).Draw(t, "front")}
	}
	return s
}

func anyPlate(t *rapid.T, l *Listing) {
	some := func(list ...*Quantity) *Quantity { return rapid.SampledFrom(append(list, nil)).Draw(t, "plate") }
	l.Power, l.Voltage = some(told2("2 hp"), told2("5 hp"), told2("4 hp"), told2("2.2 kW")), some(told2("115 V"), told2("230 V"), told2("460 V"), told2("400 V"))
	l.Phases, l.Current = rapid.SampledFrom([]int{0, 1, 3}).Draw(t, "its phases"), some(told2("9 A"), told2("50 A"))
	l.Weight, l.Width, l.Height = some(told2("900 lb"), told2("4200 lb")), some(told2("30 in"), told2("48 in")), some(told2("50 in"), told2("110 in"))
	l.Capacity = some(told2("7000 lb"), told2("12000 lb"))
}

var shopRubrics = []func(r *Rubric){nil, lift, func(r *Rubric) { r.Needs.Air = &AirNeed{90, 6} }, func(r *Rubric) { r.Needs = nil }, func(r *Rubric) { r.Landing = r.Landing[:1] }}

// Whatever is told: more of what a shop has never turns a point that fits into one
// that does not, a figure of practice or memory never passes without saying so,
// and what needs a person says who decides.
func TestFitProperties(t *testing.T) {
	findings := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		r := shopRubric(rapid.SampledFrom(shopRubrics).Draw(t, "rubric"))
		f := testFile()
		f.Shop.Units = rapid.SampledFrom([]string{"inch", "metric"}).Draw(t, "units")
		f.Shop.Site = anySite(t)
		anyPlate(t, &f.Listing)
		switch rapid.IntRange(0, 3).Draw(t, "supply") { // agreeing supplies are rare by chance
		case 0:
			f.Listing.Power, f.Listing.Voltage, f.Listing.Phases, f.Listing.Current = told2("5 hp"), told2("230 V"), 3, nil
			f.Shop.Site.Voltage, f.Shop.Site.Phases, f.Shop.Site.Current = told2("240 V"), rapid.SampledFrom([]int{1, 3}).Draw(t, "feed"), told2("60 A")
			f.Shop.Site.Circuit = rapid.SampledFrom([]*Quantity{nil, told2("20 A"), told2("30 A"), told2("50 A")}).Draw(t, "breaker")
		case 1:
			f.Shop.Site.Vehicle = &Vehicle{Weight: told2("6000 lb"), Height: told2("70 in"), Front: 55_00}
			f.Listing.Capacity = rapid.SampledFrom([]*Quantity{told2("5000 lb"), told2("10000 lb")}).Draw(t, "rating")
		}
		if err := f.check(); err != nil {
			t.Fatalf("%v", err)
		}
		now := newHolding(&r, f).fit()
		worst := Fits
		for _, p := range now.Points {
			findings[p.Finding]++
			if p.Text == "" || p.Title == "" {
				t.Fatalf("a point says nothing: %+v", p)
			}
			if severity[p.Finding] > severity[worst] {
				worst = p.Finding
			}
			if p.Finding == Fits && p.Limit != nil && (p.Limit.Status == limit.Practice || p.Limit.Status == limit.Memory) && !strings.Contains(p.Text, string(p.Limit.Status)) {
				t.Fatalf("%s passes by a figure of %s and does not say so: %s", p.ID, p.Limit.Status, p.Text)
			}
			electrical := map[string]bool{"circuit": true, "converter": true, "transformer": true, "generator": true}[p.ID]
			if electrical && !strings.Contains(p.Text, electrician) {
				t.Fatalf("%s does not name the electrician: %s", p.ID, p.Text)
			}
			if p.ID == "slab" && p.Finding == Fits && r.Needs.Rise > 0 {
				t.Fatalf("a slab passes for a lift: %s", p.Text)
			}
		}
		if now.Finding != worst {
			t.Fatalf("finding %s, the worst point is %s", now.Finding, worst)
		}
		s := *f.Shop.Site
		grow := func(q *Quantity) *Quantity {
			if q == nil {
				return nil
			}
			return &Quantity{q.N + math.Round(rapid.Float64Range(0, 40).Draw(t, "more")), q.Unit}
		}
		s.Ceiling, s.DoorWidth, s.DoorHeight, s.FloorLength, s.FloorWidth = grow(s.Ceiling), grow(s.DoorWidth), grow(s.DoorHeight), grow(s.FloorLength), grow(s.FloorWidth)
		s.Slab, s.SlabStrength, s.Current, s.Generator, s.AirFlow, s.AirPressure = grow(s.Slab), grow(s.SlabStrength), grow(s.Current), grow(s.Generator), grow(s.AirFlow), grow(s.AirPressure)
		g := *f
		g.Shop.Site = &s
		more := newHolding(&r, &g).fit()
		for i, p := range more.Points {
			was := now.Points[i].Finding
			if p.Finding != was && (was == Fits || p.Finding == DoesNot) {
				t.Fatalf("with more of everything %s went from %s to %s:\n%s\n%s", p.ID, was, p.Finding, now.Points[i].Text, p.Text)
			}
		}
	})
	for _, want := range []string{Fits, WithWork, DoesNot, NotKnown} {
		if findings[want] == 0 {
			t.Errorf("%s never came up: the property was not tested there", want)
		}
	}
}
