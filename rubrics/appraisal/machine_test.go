package appraisal_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"asfound/rubrics"
	"asfound/rubrics/appraisal"
)

// world is how equipment truly is in a simulation, against what the rubric says.
type world struct {
	name  string
	bad   float64    // times the probability of a bad point
	class [3]float64 // times the odds of each class of keeping
	alike float64    // share of the points that share the luck of their section
}

// simulation draws machines of one kind, with chances, costs and sums of its own.
type simulation struct {
	rubric appraisal.Rubric
	parts  map[string]appraisal.Part
	judge  *appraisal.Judge
	shop   appraisal.Shop
	rng    *rand.Rand
}

func newSimulation(t *testing.T, kind string, seed uint64) *simulation {
	t.Helper()
	all, err := rubrics.All()
	if err != nil {
		t.Fatal(err)
	}
	parts, err := rubrics.Parts()
	if err != nil {
		t.Fatal(err)
	}
	s := &simulation{
		judge: appraisal.NewJudge(all, parts), shop: appraisal.DefaultShop(),
		parts: map[string]appraisal.Part{}, rng: rand.New(rand.NewPCG(seed, 0)),
	}
	for _, p := range parts {
		s.parts[p.ID] = p
	}
	for _, r := range all {
		if r.ID == kind {
			s.rubric = r
		}
	}
	return s
}

// point is one check of a machine that applies to it.
type point struct {
	check *appraisal.Check
	p     float64 // of being bad
	group float64 // the luck of its section
	seen  bool
}

// machine is one piece of equipment, with its file as far as it was looked at.
type machine struct {
	file   *appraisal.File
	points []point
}

func (s *simulation) machine(w world) machine {
	f := &appraisal.File{
		Format: appraisal.FileFormat, Version: 1, Rubric: appraisal.RubricRef{ID: s.rubric.ID, Version: s.rubric.Version},
		Date: "2026-03-31", Shop: s.shop, Facts: map[string]string{}, Findings: map[string]appraisal.Finding{},
	}
	for _, fact := range s.rubric.Facts {
		f.Facts[fact.ID] = fact.Options[s.rng.IntN(len(fact.Options))].ID
	}
	f.Listing.Seller = appraisal.Sellers[s.rng.IntN(len(appraisal.Sellers))].ID
	age := s.rng.IntN(31)
	if age > 0 { // else its year is not known
		f.Listing.Made = 2026 - age
	}
	m := machine{file: f}
	class := s.class(w, f.Listing.Seller, float64(age))
	for i := range s.rubric.Sections {
		group := s.rng.Float64()
		checks := s.rubric.Sections[i].Checks
		for k := range checks {
			c := &checks[k]
			if !fits(c, f.Facts) {
				continue
			}
			bad := s.rubric.Care.Bad
			if c.Bad != nil {
				bad = *c.Bad
			}
			pt := point{check: c, p: min(bad[class]*w.bad, 0.98), group: group, seen: s.rng.Float64() < 0.5}
			if pt.seen {
				grade := s.grade(w, &pt)
				f.Findings[c.ID] = appraisal.Finding{Grade: &grade}
			}
			m.points = append(m.points, pt)
		}
	}
	return m
}

// class draws how it was kept.
func (s *simulation) class(w world, seller string, age float64) int {
	odds, total := s.rubric.Care.Prior[seller], 0.0
	for k := range odds {
		if old := s.rubric.Care.Older; old != nil && age > old.After {
			odds[k] *= old.Odds[k]
		}
		odds[k] *= w.class[k]
		total += odds[k]
	}
	u := s.rng.Float64() * total
	switch {
	case u < odds[0]:
		return 0
	case u < odds[0]+odds[1]:
		return 1
	}
	return 2
}

func fits(c *appraisal.Check, facts map[string]string) bool {
	for fact, options := range c.When {
		found := false
		for _, o := range options {
			found = found || o == facts[fact]
		}
		if !found {
			return false
		}
	}
	return true
}

// grade draws how a point truly is: sound, bad or failed.
func (s *simulation) grade(w world, pt *point) int {
	u := s.rng.Float64()
	if s.rng.Float64() < w.alike {
		u = pt.group
	}
	switch {
	case u >= pt.p:
		return 3
	case s.rng.Float64() < s.rubric.Care.Failed:
		return 0
	}
	return 1
}

// remedy is the first that is named for a grade or, failing that, the others.
func remedy(c *appraisal.Check, grade int) string {
	r := c.Remedies
	words := map[int][]string{1: {r.Bad, r.Failed, r.Worn}, 0: {r.Failed, r.Bad, r.Worn}}[grade]
	for _, w := range words {
		if w != "" {
			return w
		}
	}
	return ""
}

// ruled tells whether what was seen already rules repair out.
func (m *machine) ruled() bool {
	for _, pt := range m.points {
		if pt.seen && remedy(pt.check, *m.file.Findings[pt.check.ID].Grade) == "scrap" {
			return true
		}
	}
	return false
}

// truth draws the points not seen, and what putting all of it right costs: every
// remedy and preparation once, times the overrun; hauled away if it is scrap.
func (s *simulation) truth(t *testing.T, w world, m *machine) float64 {
	remedies, preparations := map[string]appraisal.Remedy{}, map[string]appraisal.Preparation{}
	for _, r := range s.rubric.Remedies {
		remedies[r.ID] = r
	}
	for _, p := range s.rubric.Preparations {
		preparations[p.ID] = p
	}
	cost, scrap, done := 0.0, false, map[string]bool{}
	var prepare func(id string)
	prepare = func(id string) {
		if p := preparations[id]; !done["before "+id] {
			done["before "+id] = true
			for _, n := range p.Needs {
				prepare(n)
			}
			cost += s.pert(s.price(p.Parts, p.Hours, p.Rate))
		}
	}
	for i := range m.points {
		pt := &m.points[i]
		grade := 0
		if pt.seen {
			grade = *m.file.Findings[pt.check.ID].Grade
		} else {
			grade = s.grade(w, pt)
		}
		id := remedy(pt.check, grade)
		if id == "scrap" {
			scrap = true
		}
		if id == "" || id == "scrap" || done[id] {
			continue
		}
		done[id] = true
		way := remedies[id].Ways[0]
		if way.Make != nil {
			t.Fatalf("%s is made in the shop, which is not simulated", id)
		}
		for _, p := range way.Preparations {
			prepare(p)
		}
		cost += s.pert(s.price(way.Parts, way.Hours, way.Rate))
	}
	mean, sd := float64(s.shop.Overrun.Mean)/1e4, float64(s.shop.Overrun.SD)/1e4
	variance := math.Log1p(sd * sd / mean / mean)
	cost *= math.Exp(math.Log(mean) - variance/2 + math.Sqrt(variance)*s.rng.NormFloat64())
	if scrap {
		haul := s.rubric.Scrap.Haul
		cost += s.pert([3]float64{float64(haul.Low), float64(haul.Likely), float64(haul.High)})
	}
	return cost
}

// price is the three-point cost of parts and hours, in cents.
func (s *simulation) price(uses []appraisal.PartUse, h appraisal.Hours, trade string) [3]float64 {
	rate := float64(s.shop.Rates[trade])
	out := [3]float64{h.Low * rate, h.Likely * rate, h.High * rate}
	for _, u := range uses {
		p := s.parts[u.Part].Price
		for k, m := range []appraisal.Money{p.Low, p.Likely, p.High} {
			out[k] += u.Quantity * float64(m)
		}
	}
	return out
}

// pert draws from the beta distribution of mean (a+4m+b)/6 and standard deviation
// (b-a)/6, by gonum.
func (s *simulation) pert(r [3]float64) float64 {
	width := r[2] - r[0]
	if width <= 0 {
		return r[0]
	}
	mean := (4*(r[1]-r[0]) + width) / 6 / width
	nu := 36*mean*(1-mean) - 1
	return r[0] + width*distuv.Beta{Alpha: mean * nu, Beta: (1 - mean) * nu, Src: s.rng}.Rand()
}
