package appraisal

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func homePoint(t failer, res *Result, id string) HomePoint {
	for _, p := range res.Home.Points {
		if p.ID == id {
			return p
		}
	}
	t.Fatalf("no point %s in %+v", id, res.Home.Points)
	return HomePoint{}
}

// lathe is the worked example of the field references: 4,200 lb, 8 ft long.
func lathe(r *Rubric) {
	r.Body.Weight, r.Body.Length = Span{4200, 4200, 4200}, Span{96, 96, 96}
	r.Body.Pieces[0].Length = 96
}

// plates is a truck and trailer that do.
func plates(h *Haulage) {
	h.Truck = &Truck{Rated: told2("9900 lb"), Empty: told2("5100 lb"), People: told2("350 lb"), Tow: told2("9000 lb")}
	h.Trailer = &Trailer{Rated: told2("9990 lb"), Empty: told2("2200 lb"), Deck: told2("16 ft"), Tongue: told2("250 lb"), Axle: told2("12 ft")}
}

// What must be right on the road, by the rows of the field references: TR01 to TR09
// by 49 CFR 393.102 to 393.110, TR13 by a trailer maker's handbook, TR14 and TR15 by
// statics and definition.
func TestHomePoints(t *testing.T) {
	for _, c := range []struct {
		row, point, finding string
		rubric              func(r *Rubric)
		haul                func(f *File, h *Haulage)
		value               float64
		says, missing       string
	}{
		{"TR01", "tie-downs", Fits, lathe, func(f *File, h *Haulage) { h.TieDowns = map[string]int{"chain 3/8 grade 43": 4} }, 4, "Four tie-downs in all", ""},
		{"TR03", "tie-downs", WithWork, lathe, func(f *File, h *Haulage) { h.TieDowns = map[string]int{"webbing 2 in": 2} }, 2, "To be bought or borrowed", ""},
		{"TR04", "tie-downs", NotKnown, func(r *Rubric) {
			r.Body.Weight, r.Body.Pieces[0].Length, r.Body.Pieces[0].TopHeavy = Span{1000, 1100, 1100}, 60, false
		}, func(f *File, h *Haulage) {}, 1, "One tie-down in all", "haul.tie_downs"},
		{"TR05", "tie-downs", NotKnown, func(r *Rubric) {
			r.Body.Weight, r.Body.Pieces[0].Length, r.Body.Pieces[0].TopHeavy = Span{1500, 1500, 1500}, 48, false
		}, func(f *File, h *Haulage) {}, 2, "Two tie-downs in all", ""},
		{"TR06", "tie-downs", NotKnown, func(r *Rubric) { r.Body.Pieces[0].Length, r.Body.Pieces[0].TopHeavy = 144, false }, func(f *File, h *Haulage) {}, 3, "Three tie-downs in all", ""},
		{"TR09", "tie-downs", WithWork, lathe, func(f *File, h *Haulage) { h.TieDowns = map[string]int{"chain 3/8 unmarked": 1} }, 2, "To be bought", ""},

		{"TR13", "tongue", NotKnown, lathe, func(f *File, h *Haulage) { plates(h); h.Trailer.Axle = nil }, 0, "640 lb to 960 lb", "haul.trailer.axle"},
		// By hand: (640 - 250) x 144 / 4,200 and (960 - 250) x 144 / 4,200; the worked
		// example of TR14 sets the load at 18 in and gets 775 lb, 12.1 %.
		{"TR14", "tongue", Fits, lathe, func(f *File, h *Haulage) { plates(h) }, 12.5, "13.4 in to 24.3 in ahead of the axle", ""},
		{"TR15", "payload", Fits, lathe, func(f *File, h *Haulage) { plates(h); h.Truck.Rated = told2("7000 lb") }, 750, "payload is left", ""},
		{"TR15 overloaded", "payload", WithWork, lathe, func(f *File, h *Haulage) { plates(h); h.Truck.Rated = told2("6000 lb") }, -250, "overloaded", ""},
		{"trailer too light", "trailer", WithWork, lathe, func(f *File, h *Haulage) { plates(h); h.Trailer.Rated = told2("5000 lb") }, 4200, "more than the payload", ""},
		{"tow rating", "trailer", WithWork, lathe, func(f *File, h *Haulage) { plates(h); h.Truck.Tow = told2("5000 lb") }, 5000, "may tow 5,000 lb", ""},
		{"deck too short", "deck", WithWork, lathe, func(f *File, h *Haulage) { plates(h); h.Trailer.Deck = told2("7 ft") }, 84, "on a deck of 7 ft", ""},
		{"own crane", "lifting", Fits, lathe, func(f *File, h *Haulage) { h.Lifting = told2("5000 lb") }, 5000, "may lift 5,000 lb", ""},
		{"own crane too weak", "lifting", WithWork, lathe, func(f *File, h *Haulage) { h.Lifting = told2("2000 lb") }, 2000, "", ""},
		{"nothing told", "payload", NotKnown, lathe, func(f *File, h *Haulage) {}, 0, "", "haul.truck.people"},
		{"no crane told", "lifting", NotKnown, lathe, func(f *File, h *Haulage) {}, 0, "", "haul.lifting"},
	} {
		t.Run(c.row, func(t *testing.T) {
			res := inShop(t, shopRubric(c.rubric), func(f *File) {
				f.Shop.Haulage = &Haulage{}
				c.haul(f, f.Shop.Haulage)
			})
			p := homePoint(t, res, c.point)
			if p.Finding != c.finding || !strings.Contains(p.Text, c.says) {
				t.Errorf("%s, want %s saying %q: %s", p.Finding, c.finding, c.says, p.Text)
			}
			if c.value != 0 && (p.Limit == nil || math.Abs(p.Limit.Value-c.value) > 0.005*math.Abs(c.value)) {
				t.Errorf("limit %+v, want %g", p.Limit, c.value)
			}
			if got := figureOf(p.Limit, "working load limits count for"); c.row == "TR01" && got != 10_800 {
				t.Errorf("the tie-downs count for %g, want 10,800", got)
			}
			if c.missing != "" && !contains(p.Missing, c.missing) {
				t.Errorf("missing %v, want %s", p.Missing, c.missing)
			}
			if text, _ := json.Marshal(res.Home); strings.Contains(strings.ToLower(string(text)), "safe") {
				t.Errorf("says safe: %s", text)
			}
		})
	}
}

// The way home costs what is hired and the own distance, once it is told; before
// that the rubric's figures stay, and the user's own cost always wins.
func TestHaulCosts(t *testing.T) {
	r := shopRubric(lathe)
	line := func(id string, edit func(f *File, h *Haulage)) Line {
		return landingLine(t, inShop(t, r, func(f *File) {
			f.Shop.Haulage = &Haulage{}
			edit(f, f.Shop.Haulage)
		}), id)
	}
	for _, c := range []struct {
		name, line  string
		edit        func(f *File, h *Haulage)
		likely      Money
		parts, says string
	}{
		{"nothing told", "drive", func(f *File, h *Haulage) {}, 200_00 + 200_00, "", ""},
		{"own cost of the distance alone", "drive", func(f *File, h *Haulage) { h.PerDistance = 1_00 }, 200_00 + 100_00, "", "own cost of the distance"},
		{"own truck and trailer do", "drive", func(f *File, h *Haulage) { plates(h); h.PerDistance = 1_00 }, 100_00, "", "own truck and trailer"},
		{"own, the rubric's distance", "drive", func(f *File, h *Haulage) { plates(h) }, 200_00, "", ""},
		{"trailer hired", "drive", func(f *File, h *Haulage) {
			plates(h)
			h.PerDistance, h.Trailer.Deck = 1_00, told2("7 ft")
		}, 120_00, partTrailer, "hired for a day"},
		{"truck hired: the rubric's distance again", "drive", func(f *File, h *Haulage) {
			plates(h)
			h.PerDistance, h.Truck.Tow = 1_00, told2("5000 lb")
		}, 220_00, partTruck, "hired for a day"},
		{"kilometres", "drive", func(f *File, h *Haulage) {
			plates(h)
			h.PerDistance, f.Shop.Units, f.Listing.Distance = 1_00, "metric", told2("80 km")
		}, 160_00, "", ""},
		{"own figure", "drive", func(f *File, h *Haulage) {
			plates(h)
			f.Landing = map[string]LandingChoice{"drive": {Cost: &Range{5_00, 6_00, 7_00}}}
		}, 6_00, "", ""},
		{"own crane", "crane", func(f *File, h *Haulage) { h.Lifting = told2("5000 lb") }, 2 * 35_00, "", "hours are yours"},
		{"rigger and skates", "crane", func(f *File, h *Haulage) { h.Lifting = told2("1000 lb") }, 2*20_00 + 2*120_00, partSkates, "rigger"},
		{"chains enough", "chains", func(f *File, h *Haulage) { h.TieDowns = map[string]int{"chain 3/8 grade 43": 4} }, 0, "", "Your own"},
		{"straps lacking", "chains", func(f *File, h *Haulage) { h.TieDowns = map[string]int{"webbing 2 in": 2} }, 2*20_00 + 4*20_00, partProtector, "2 more"},
		{"hired in a dear region", "chains", func(f *File, h *Haulage) {
			h.TieDowns, f.Shop.Region = map[string]int{"webbing 2 in": 2}, 150_00
		}, (2*20_00 + 4*20_00) * 3 / 2, partProtector, ""},
		{"own price in a dear region", "chains", func(f *File, h *Haulage) {
			h.TieDowns, f.Shop.Region = map[string]int{"chain 3/8 grade 43": 3}, 150_00
			f.Prices = map[string]Range{partStrap: {1_00, 1_00, 1_00}, partProtector: {0, 0, 0}}
		}, 1_00, partStrap, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			l := line(c.line, c.edit)
			if l.Cost.Likely != c.likely || !strings.Contains(l.Says, c.says) {
				t.Errorf("likely %s, want %s; says %q, want %q: %+v", exact(l.Cost.Likely), exact(c.likely), l.Says, c.says, l)
			}
			text, _ := json.Marshal(l.Parts)
			if c.parts == "" && !l.Own && len(l.Parts) > 0 || !strings.Contains(string(text), c.parts) {
				t.Errorf("parts %s, want %q", text, c.parts)
			}
		})
	}
}

// A part that the book lacks must not make hiring cost nothing.
func TestHaulWithoutBook(t *testing.T) {
	f := testFile()
	f.Shop.Haulage = &Haulage{Lifting: told2("500 lb")}
	res, err := NewJudge([]Rubric{shopRubric(nil)}, nil).Of(f, Ask{})
	if err != nil {
		t.Fatal(err)
	}
	if l := landingLine(t, res, "crane"); l.Cost.Likely != 200_00+2*120_00 || l.Says != "" {
		t.Errorf("the rubric's own figure is gone: %+v", l)
	}
}

// Region leaves alone what is the user's own, his hours and his machine.
func TestRegion(t *testing.T) {
	r := testRubric()
	cost := func(edit func(f *File)) Line {
		res := inShop(t, r, func(f *File) {
			f.Findings = map[string]Finding{"lock": grade(1)}
			edit(f)
		})
		for _, l := range res.Estimate.Lines {
			if l.ID == "fix" {
				return l
			}
		}
		t.Fatal("no line")
		return Line{}
	}
	for _, c := range []struct {
		name   string
		edit   func(f *File)
		likely Money // two parts at 40, two own hours at 35; or three hours of a specialist at 115
	}{
		{"no region", func(f *File) {}, 80_00 + 70_00},
		{"example parts", func(f *File) { f.Shop.Region = 150_00 }, 120_00 + 70_00},
		{"own price", func(f *File) {
			f.Shop.Region, f.Prices = 150_00, map[string]Range{"part": {40_00, 40_00, 40_00}}
		}, 80_00 + 70_00},
		{"own part", func(f *File) {
			f.Shop.Region, f.Parts = 150_00, []Part{{ID: "part", Title: "Own", Unit: "each", Price: Range{40_00, 40_00, 40_00}}}
		}, 80_00 + 70_00},
		{"hired, rate set", func(f *File) { f.Shop.Region, f.Ways = 150_00, map[string]string{"fix": "hire"} }, 345_00},
		{"hired, no rate set", func(f *File) {
			f.Shop.Region, f.Ways, f.Shop.Rates = 150_00, map[string]string{"fix": "hire"}, map[string]Money{}
		}, 517_50},
		{"own hours, no rate set", func(f *File) { f.Shop.Region, f.Shop.Rates = 50_00, map[string]Money{} }, 40_00 + 70_00},
	} {
		if l := cost(c.edit); l.Cost.Likely != c.likely {
			t.Errorf("%s: %s, want %s", c.name, exact(l.Cost.Likely), exact(c.likely))
		}
	}
}

// Whatever is told of truck, trailer and gear: no panic, no figure that is not one,
// and a stronger one never turns a point that fits.
func TestHomeProperties(t *testing.T) {
	findings := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		r := shopRubric(rapid.SampledFrom([]func(r *Rubric){nil, lathe, func(r *Rubric) {
			p := r.Body.Pieces[0]
			p.Share, p.Count, p.Length, p.TopHeavy = 0.3, 2, 144, false
			r.Body.Pieces = append([]Piece{p}, Piece{ID: "arm", Title: "Arm", Count: 4, Share: 0.05, Length: 48, Width: 10, Height: 10, Handling: "Carry it.", When: map[string][]string{"phase": {"one"}}})
		}, func(r *Rubric) { r.Body.Pieces[0].When = map[string][]string{"phase": {"one"}} }}).Draw(t, "rubric"))
		f := testFile()
		f.Shop.Units = rapid.SampledFrom([]string{"inch", "metric"}).Draw(t, "units")
		f.Facts = map[string]string{"phase": rapid.SampledFrom([]string{"one", "three", "?"}).Draw(t, "phase")}
		anyPlate(t, &f.Listing)
		maybe := func(name, unit string, low, high float64) *Quantity {
			if rapid.Bool().Draw(t, "no "+name) {
				return nil
			}
			return &Quantity{math.Round(rapid.Float64Range(low, high).Draw(t, name)), unit}
		}
		h := &Haulage{Lifting: maybe("lifting", "lb", 100, 8000), PerDistance: Money(rapid.IntRange(0, 300).Draw(t, "per distance"))}
		if rapid.Bool().Draw(t, "truck") {
			h.Truck = &Truck{Rated: maybe("rated", "lb", 6000, 14000), Empty: maybe("empty", "kg", 1500, 2700), People: maybe("people", "lb", 100, 600), Tow: maybe("tow", "lb", 2000, 14000)}
		}
		if rapid.Bool().Draw(t, "trailer") {
			h.Trailer = &Trailer{Rated: maybe("trailer rated", "lb", 3500, 14000), Empty: maybe("trailer empty", "lb", 800, 3400), Deck: maybe("deck", "ft", 6, 24), Tongue: maybe("tongue", "lb", 50, 500), Axle: maybe("axle", "ft", 6, 18)}
		}
		if rapid.Bool().Draw(t, "ties") {
			h.TieDowns = map[string]int{}
			for _, kind := range []string{"chain 3/8 grade 43", "webbing 2 in", "chain 1/4 unmarked"} {
				h.TieDowns[kind] = rapid.IntRange(0, 6).Draw(t, kind)
			}
		}
		f.Shop.Haulage = h
		if err := f.check(); err != nil {
			t.Fatalf("%v", err)
		}
		run := func(f *File) *Home { return newRide(newHolding(&r, f)).home() }
		now := run(f)
		if text, err := json.Marshal(now); err != nil || strings.Contains(string(text), "NaN") || strings.Contains(string(text), "Inf") {
			t.Fatalf("%v: %s", err, text)
		}
		byID := map[string]HomePoint{}
		for _, p := range now.Points {
			byID[p.ID] = p
			findings[p.Finding]++
			if p.Text == "" {
				t.Fatalf("a point says nothing: %+v", p)
			}
		}
		stronger := *h
		if h.Lifting != nil {
			stronger.Lifting = &Quantity{h.Lifting.N + 1000, "lb"}
		}
		if h.Truck != nil {
			truck := *h.Truck
			if truck.Tow != nil {
				truck.Tow = &Quantity{truck.Tow.N + 1000, "lb"}
			}
			if truck.Rated != nil {
				truck.Rated = &Quantity{truck.Rated.N + 1000, "lb"}
			}
			stronger.Truck = &truck
		}
		if h.TieDowns != nil {
			stronger.TieDowns = map[string]int{"chain 3/8 grade 43": h.TieDowns["chain 3/8 grade 43"] + 4, "webbing 2 in": h.TieDowns["webbing 2 in"], "chain 1/4 unmarked": h.TieDowns["chain 1/4 unmarked"]}
		}
		g := *f
		g.Shop.Haulage = &stronger
		for _, p := range run(&g).Points {
			was := byID[p.ID]
			if was.Finding == Fits && p.Finding != Fits {
				t.Fatalf("with stronger gear %s went from %s to %s:\n%s\n%s", p.ID, was.Finding, p.Finding, was.Text, p.Text)
			}
		}
	})
	for _, want := range []string{Fits, WithWork, NotKnown} {
		if findings[want] == 0 {
			t.Errorf("%s never came up: the property was not tested there", want)
		}
	}
}

// Sizes that cannot be are refused by field, with what would be right.
func TestShopRefusals(t *testing.T) {
	for _, c := range []struct {
		field, says string
		edit        func(f *File, s *Site, h *Haulage)
	}{
		{"listing.weight", "1 lb to 500,000 lb", func(f *File, s *Site, h *Haulage) { f.Listing.Weight = told2("-5 lb") }},
		{"listing.weight.unit", "one of lb, kg", func(f *File, s *Site, h *Haulage) { f.Listing.Weight = told2("5 hp") }},
		{"listing.phases", "1 or 3", func(f *File, s *Site, h *Haulage) { f.Listing.Phases = 2 }},
		{"listing.voltage", "V", func(f *File, s *Site, h *Haulage) { f.Listing.Voltage = told2("0 V") }},
		{"shop.site.ceiling", "4 ft to 100 ft", func(f *File, s *Site, h *Haulage) { s.Ceiling = told2("12 in") }},
		{"shop.site.ceiling.unit", "units", func(f *File, s *Site, h *Haulage) { s.Ceiling = told2("12 furlong") }},
		{"shop.site.floor", "concrete", func(f *File, s *Site, h *Haulage) { s.Floor = "sand" }},
		{"shop.site.slab", "0.5 in to 60 in", func(f *File, s *Site, h *Haulage) { s.Slab = told2("400 ft") }},
		{"shop.site.phases", "1 or 3", func(f *File, s *Site, h *Haulage) { s.Phases = 7 }},
		{"shop.site.vehicle.front", "10 to 90 %", func(f *File, s *Site, h *Haulage) { s.Vehicle = &Vehicle{Front: 99_00} }},
		{"shop.site.vehicle.height", "24 in to 240 in", func(f *File, s *Site, h *Haulage) { s.Vehicle = &Vehicle{Height: told2("900 in")} }},
		{"shop.haulage.per_distance", "0 to 1,000", func(f *File, s *Site, h *Haulage) { h.PerDistance = -1 }},
		{"shop.haulage.truck.empty", "less than the rated weight", func(f *File, s *Site, h *Haulage) {
			h.Truck = &Truck{Rated: told2("5000 lb"), Empty: told2("6000 lb")}
		}},
		{"shop.haulage.trailer.empty", "less than the rated weight", func(f *File, s *Site, h *Haulage) {
			h.Trailer = &Trailer{Rated: told2("5000 lb"), Empty: told2("6000 lb")}
		}},
		{"shop.haulage.tie_downs", "one of chain 1/4", func(f *File, s *Site, h *Haulage) { h.TieDowns = map[string]int{"string": 4} }},
		{"shop.haulage.tie_downs", "0 to 100", func(f *File, s *Site, h *Haulage) { h.TieDowns = map[string]int{"webbing 2 in": 1000} }},
		{"shop.region", "25 to 400 %", func(f *File, s *Site, h *Haulage) { f.Shop.Region = 24_99 }},
		{"shop.region", "25 to 400 %", func(f *File, s *Site, h *Haulage) { f.Shop.Region = 400_01 }},
		{"shop.site.generator", "kVA", func(f *File, s *Site, h *Haulage) { s.Generator = &Quantity{math.NaN(), "kW"} }},
	} {
		f := testFile()
		f.Shop.Site, f.Shop.Haulage = &Site{}, &Haulage{}
		c.edit(f, f.Shop.Site, f.Shop.Haulage)
		err := f.check()
		if err == nil || !strings.HasPrefix(err.Error(), c.field) {
			t.Errorf("%v, want it to name %s", err, c.field)
			continue
		}
		if e, ok := err.(*Error); !ok || e.Right == "" || c.field != "shop.site.generator" && c.says != "units" && !strings.Contains(err.Error(), c.says) {
			t.Errorf("%v, want it to say %q", err, c.says)
		}
	}
}
