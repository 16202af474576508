package limit

import (
	"fmt"
	"math"
	"regexp"
	"sort"
	"strings"
	"testing"

	"asfound/rubrics/unit"

	"pgregory.net/rapid"
)

var safe = regexp.MustCompile(`(?i)\bsafe(ly)?\b`)

func TestDefinitions(t *testing.T) {
	all := All()
	if !sort.SliceIsSorted(all, func(i, j int) bool { return all[i].Name < all[j].Name }) {
		t.Error("not sorted by name")
	}
	slug := regexp.MustCompile(`^[a-z]+(-[a-z0-9]+)*$`)
	standing := map[Status]bool{Published: true, Reprint: true, Practice: true, Memory: true, Physics: true}
	seen := map[string]bool{}
	for _, d := range all {
		if d.Title == "" || d.Source == "" || d.Formula == "" || d.Caution == "" || !standing[d.Status] || !slug.MatchString(d.Name) || seen[d.Name] {
			t.Errorf("%q lacks title, source, formula, caution or standing, or its name is wrong or taken", d.Name)
		}
		seen[d.Name] = true
		if safe.MatchString(d.Title + d.Formula + d.Caution) {
			t.Errorf("%s says safe", d.Name)
		}
		if d.Maker != "" && unit.Units(d.Maker) == nil {
			t.Errorf("%s: maker's limit of dimension %q", d.Name, d.Maker)
		}
		for _, q := range d.Quantities {
			if q.Title == "" || !slug.MatchString(q.Name) || (q.Name == makerKey && d.Maker != "") {
				t.Errorf("%s: quantity %q", d.Name, q.Name)
			}
			if q.Dimension == "word" {
				if len(q.Words) < 2 || (q.Titles != nil && len(q.Titles) != len(q.Words)) {
					t.Errorf("%s: %s has no choice of words, or not a title for each", d.Name, q.Name)
				}
				continue
			}
			for _, u := range []string{q.Unit, q.Metric} {
				if _, err := unit.Parse("1 "+u, q.Dimension); err != nil {
					t.Errorf("%s: %s in %q: %v", d.Name, q.Name, u, err)
				}
			}
			if q.Unit == "" && q.Dimension != "number" {
				t.Errorf("%s: %s has no unit", d.Name, q.Name)
			}
		}
	}
	for i := range rules {
		r := &rules[i]
		for name := range r.bounds {
			known := name == "teeth" || name == "length" || name == "rod" // bounds shared by several
			for _, q := range r.Quantities {
				known = known || q.Name == name
			}
			if !known {
				t.Errorf("%s bounds %q, which it does not take", r.Name, name)
			}
		}
		if (r.Maker != "") != (r.makerUnit != "" || r.Maker == "number") {
			t.Errorf("%s: the maker's limit has no unit", r.Name)
		}
	}
	all[0].Quantities[0].Name = "changed"
	if All()[0].Quantities[0].Name == "changed" {
		t.Error("All hands out the registry itself")
	}
}

func TestUnknownLimit(t *testing.T) {
	if _, err := Compute("rope-colour", nil); err == nil || !strings.Contains(err.Error(), "it is one of air-leak, anchor-") {
		t.Error(err)
	}
	refuses(t, "press-set", []refusal{{"", "growth", "missing"}, {"growth=1e309 in", "growth", "too large"}, {"growth=NaN in", "growth", "no number"}})
	refuses(t, "pump-power", []refusal{{"flow=1 gpm; pressure=100 psi; maker=3 hp", "maker", "no such quantity"}})
}

// likely draws values that the limit accepts more often than not.
func likely(t *rapid.T, d *Definition) map[string]string {
	out := map[string]string{}
	number := func(low, high float64, label string) float64 {
		return math.Round(rapid.Float64Range(low, high).Draw(t, label)*1e4) / 1e4
	}
	ranges := map[string][2]float64{
		"length": {0.3, 12}, "mass": {500, 12000}, "pressure": {100, 4000}, "force": {10, 60}, "flow": {1, 10},
		"speed": {10, 30}, "voltage": {100, 480}, "power": {0.5, 30}, "time": {1, 90}, "threads": {8, 32}, "share": {1, 95},
		"current": {1, 60}, "volume": {10, 200}, "area": {0.05, 2000}, "angle": {0, 120},
	}
	for _, q := range d.Quantities {
		if q.Optional && rapid.Bool().Draw(t, "leave out "+q.Name) {
			continue
		}
		switch q.Dimension {
		case "word":
			out[q.Name] = rapid.SampledFrom(q.Words).Draw(t, q.Name)
		case "number":
			out[q.Name] = fmt.Sprint(rapid.IntRange(0, 14).Draw(t, q.Name))
		default:
			r := ranges[q.Dimension]
			u := rapid.SampledFrom([]string{q.Unit, q.Unit, q.Unit, q.Metric}).Draw(t, "unit")
			out[q.Name] = fmt.Sprint(number(r[0], r[1], q.Name)) + " " + u
		}
	}
	tie := func(name string, of float64, low, high float64) {
		out[name] = fmt.Sprint(of*number(low, high, name)) + " in"
	}
	switch d.Name {
	case "rope-diameter":
		nominal := number(0.2, 1, "nominal")
		out["nominal"] = fmt.Sprint(nominal) + " in"
		tie("measured", nominal, 0.6, 1.2)
	case "leaf-chain", "roller-chain":
		n := rapid.IntRange(4, 30).Draw(t, "pitches")
		out["pitch"], out["pitches"] = "1 in", fmt.Sprint(n)
		tie("measured", float64(n), 0.992, 1.06)
	case "motor-current", "motor-supply":
		out["power"] = fmt.Sprint(rapid.SampledFrom(motors).Draw(t, "row").hp) + " hp"
		out["voltage"] = rapid.SampledFrom([]string{"115 V", "208 V", "230 V"}).Draw(t, "voltage")
	case "thread":
		row := rapid.SampledFrom(threads).Draw(t, "row")
		out["diameter"], out["pitch"] = fmt.Sprint(row.majorMM())+" mm", fmt.Sprint(row.pitchMM())+" mm"
		delete(out, "tpi")
	case "rope-baseline":
		baseline := number(0.2, 1, "baseline")
		out["baseline"] = fmt.Sprint(baseline) + " in"
		tie("measured", baseline, 0.6, 1.2)
	case "rope-share":
		out["wires"], out["strand-wires"] = "114", "19"
	case "hoist-chain":
		out["length"] = "10 in"
		tie("measured", 10, 0.992, 1.06)
	case "link-size":
		row := rapid.SampledFrom(linkTable).Draw(t, "row")
		out["chain"] = row.size
		tie("measured", row.nominal/64, 0.7, 1)
	case "lift-standard":
		out["made"] = fmt.Sprint(rapid.IntRange(1960, 2025).Draw(t, "made"))
	case "press-distance":
		if out["device"] == "full-revolution" {
			delete(out, "stop")
		} else {
			delete(out, "rpm")
			delete(out, "points")
		}
	case "grinder-gap":
		tie("gap", 1, 0, 0.4)
	case "anchor-breakout", "anchor-group":
		out["strength"] = "3000 psi"
		delete(out, "kc")
	case "lift-time":
		out["stroke"], out["bore"] = "36 in", "2.5 in"
	}
	likelyMachine(t, d.Name, out)
	if d.Maker != "" && rapid.Bool().Draw(t, "maker") {
		r := ranges[d.Maker]
		if d.Maker == "number" {
			out[makerKey] = fmt.Sprint(rapid.IntRange(1, 12).Draw(t, makerKey))
		} else {
			out[makerKey] = fmt.Sprint(number(r[0], r[1], makerKey)/3) + " " + unit.Units(d.Maker)[0]
		}
	}
	return out
}

// Whatever goes in: an error of our shape, or a finite result that carries its
// source and never clears anything by practice or memory alone.
func TestPracticeNeverClears(t *testing.T) {
	accepted := map[string]int{}
	for _, d := range All() {
		t.Run(d.Name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				given := likely(t, &d)
				res, err := Compute(d.Name, given)
				if err != nil {
					if e, ok := err.(*Error); !ok || e.What == "" || e.Right == "" {
						t.Fatalf("%v: %v", given, err)
					}
					return
				}
				accepted[d.Name]++
				sound(t, given, res)
				_, maker := given[makerKey]
				founded := d.Status != Practice && d.Status != Memory
				if res.Finding == Within && !maker && !founded {
					t.Fatalf("%v: %s is %s and gave %s", given, d.Name, d.Status, res.Finding)
				}
			})
		})
	}
	for _, d := range All() {
		if accepted[d.Name] == 0 {
			t.Errorf("%s was never computed: the property was not tested", d.Name)
		}
	}
}

type failer interface {
	Fatalf(string, ...any)
}

// sound checks what must hold of every result.
func sound(t failer, given map[string]string, res Result) {
	if (res.Status == Practice || res.Status == Memory) && (res.Finding == Within || !strings.Contains(res.Text, "can only warn")) {
		t.Fatalf("%v: a figure %s gave %s: %s", given, res.Status, res.Finding, res.Text)
	}
	if res.Text == "" || res.Source == "" || res.Formula == "" || res.Status == "" || res.Caution == "" || !strings.HasSuffix(res.Text, ".") {
		t.Fatalf("%v: incomplete: %+v", given, res)
	}
	if safe.MatchString(res.Text + strings.Join(res.Notes, " ") + res.Caution) {
		t.Fatalf("%v: says safe: %+v", given, res)
	}
	values := []float64{res.Value}
	if res.Limit != nil {
		values = append(values, *res.Limit)
	}
	for _, f := range res.More {
		values = append(values, f.Value)
		if (f.Group == "") != (f.Short == "") || !strings.HasSuffix(f.Title, f.Short) {
			t.Fatalf("%v: %q of the group %q is %q in short", given, f.Title, f.Group, f.Short)
		}
	}
	for _, v := range values {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			t.Fatalf("%v: not finite: %+v", given, res)
		}
	}
	if (res.Finding == Within || res.Finding == Watch || res.Finding == Beyond) && res.Limit == nil {
		t.Fatalf("%v: held against no limit: %+v", given, res)
	}
}

// The given values come as one text, "name=value" by semicolons.
func FuzzCompute(f *testing.F) {
	for _, s := range []string{
		"nominal=3/8 in; measured=0.352 in", "where=running; lay=6; strand=2", "pitch=1 in; pitches=12; measured=12.36 in; maker=3 %",
		"drop=0 in; time=1 min; bore=1e15 in", "bore=2.5 in; cylinders=2; stroke=36 in; flow=2.5 gpm; time=55 s",
		"power=5 hp; voltage=230 V; phases=1; length=80 ft; wire=10", "diameter=12 mm; pitch=1.75 mm", "rated=20 tons; opens=26 tons",
		"weight=4,200 lb; length=8 ft; blocked=no; wll=2000 lb; count=2", "mawp=150 psi; reached=165 psi", "length=5.5 in; protrusion=2.5 in",
		"wires=114; broken=3; strand-wires=19; strand=3", "outer=101-120; short=4; long=10; lay=lang; drum=multi", "baseline=0.5 in; measured=0.469 in",
		"breaking=14,400 lb; load=2,880 lb", "chain=3/8; measured=0.29 in", "kind=hand; length=75 mm; measured=77.3 mm; maker=77.3 mm",
		"depth=3.5 in; share=8 %", "equipment=jack; months=7", "maker=yes; model=yes; serial=no; capacity=yes", "made=2010",
		"device=full-revolution; rpm=120; points=14; distance=18 in", "distance=6 in; opening=3/4 in", "press=hydraulic", "rated=7,000 psi",
		"flow=35.25 gpm; rpm=1750", "where=work-rest; gap=0.14 in", "diameter=8 in; rpm=3450; marked=3000", "open=95 deg; start=60 deg",
		"mawp=150 psi; set=175 psi", "between=valve", "height=6 ft; opening=5/8 in", "height=5 ft; guarded=no", "chance=will; harm=property",
		"severity=3; probability=E", "depth=5.75 in; strength=4,000 psi; kc=21; edge=8 in; area=1532.16 in2; weight=light",
		"check=axis-vertical; measured=0.5 thou; over=12 in; class=toolroom", "near=1.5004 in; far=1.5012 in; spacing=6 in", "machine=cnc; middle=10 um; end=-1 um",
		"up-1=2 um; up-2=3 um; up-3=5 um; up-4=4 um; up-5=6 um; down-1=-1 um; down-2=0 um; down-3=1 um; down-4=1 um; down-5=2 um; scatter=0.5 um",
		"power=5 hp; voltage=230 V; phases=3; code=V; kva=20 kVA", "volume=80 gal; from=0 psi; to=175 psi; time=189 s; rated=40 cfm",
		"pressure=200 psi; radius=12 in; stress=20000 psi; joint=0.70; measured=0.150 in", "load=2400 lb; legs=2; angle=53 deg",
		"weight=3800 lb; pads=6; pad-area=16 in2; footprint=21 ft2; floor=wood", "weight=6000 lb; offset=52 in; wheelbase=130 in; arms=4",
	} {
		for i := range rules {
			f.Add(i, s)
		}
	}
	f.Fuzz(func(t *testing.T, i int, s string) {
		name := rules[((i%len(rules))+len(rules))%len(rules)].Name
		values := given(s).values()
		res, err := Compute(name, values)
		if err != nil {
			if e, ok := err.(*Error); !ok || e.What == "" || e.Right == "" {
				t.Fatalf("%s %v: %v", name, values, err)
			}
			return
		}
		sound(t, values, res)
	})
}
