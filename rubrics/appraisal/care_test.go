package appraisal

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func tilted(after float64, odds [3]float64) *Judge {
	r := testRubric()
	r.Care.Prior["auction"] = [3]float64{.2, .45, .35}
	r.Care.Older = &Older{After: after, Odds: odds}
	return NewJudge([]Rubric{r}, []Part{{ID: "part", Title: "Part", Unit: "each", Price: Range{20_00, 40_00, 90_00}}})
}

// Priors by hand: by seller, tilted only past the age, replaced by one's own.
func TestPrior(t *testing.T) {
	judge := tilted(15, [3]float64{.7, 1, 1.4})
	for _, c := range []struct {
		name, seller string
		made         int
		own          *CareBelief
		want         [3]int
		from         string
	}{
		{"private", "private", 2014, nil, [3]int{3000, 5000, 2000}, "for a private seller, from the rubric (judgement)"},
		{"auction", "auction", 2014, nil, [3]int{2000, 4500, 3500}, "for an auction, from the rubric (judgement)"},
		{"a seller the rubric does not know", "dealer", 2014, nil, [3]int{3000, 5000, 2000}, "for a private seller (of a dealer the rubric says nothing), from the rubric (judgement)"},
		{"seller not told", "", 2014, nil, [3]int{3000, 5000, 2000}, "for a private seller (it is not told who sells), from the rubric (judgement)"},
		{"just at the age", "private", 2011, nil, [3]int{3000, 5000, 2000}, "for a private seller, from the rubric (judgement)"},
		// .21, .5, .28 of .99
		{"past the age", "private", 2010, nil, [3]int{2121, 5051, 2828}, "for a private seller, from the rubric (judgement), tilted towards neglect because it is 16 years old"},
		// .14, .45, .49 of 1.08
		{"past the age, auction", "auction", 2005, nil, [3]int{1296, 4167, 4537}, "for an auction, from the rubric (judgement), tilted towards neglect because it is 21 years old"},
		{"year not known", "private", 0, nil, [3]int{3000, 5000, 2000}, "for a private seller, from the rubric (judgement)"},
		{"year to come", "private", 2040, nil, [3]int{3000, 5000, 2000}, "for a private seller, from the rubric (judgement)"},
		{"own belief", "auction", 1990, &CareBelief{Well: 70_00, Ordinary: 20_00, Neglected: 10_00}, [3]int{7000, 2000, 1000}, "your own belief before looking, in place of the rubric's"},
	} {
		f := testFile()
		f.Listing.Seller, f.Listing.Made, f.Care = c.seller, c.made, c.own
		r, err := judge.Of(f, Ask{})
		if err != nil {
			t.Fatal(err)
		}
		if r.Hidden.Prior != c.want || r.Hidden.Care != c.want || r.Hidden.From != c.from {
			t.Errorf("%s: prior %v, care %v, from %q, want %v, %q", c.name, r.Hidden.Prior, r.Hidden.Care, r.Hidden.From, c.want, c.from)
		}
	}
}

func TestRefusesBeliefs(t *testing.T) {
	for _, c := range []struct {
		belief      CareBelief
		field, says string
	}{
		{CareBelief{3000, 5000, 2000}, "", ""},
		{CareBelief{9800, 100, 100}, "", ""},
		{CareBelief{3000, 5000, 2001}, "care", "they sum to 100.01 %: well kept, ordinary and neglected sum to 100 %"},
		{CareBelief{3000, 5000, 1000}, "care", "they sum to 90 %"},
		{CareBelief{}, "care.well", "0 % leaves no room: at least 1 %"},
		{CareBelief{10000, 0, 0}, "care.ordinary", "0 % leaves no room"},
		{CareBelief{5000, 4950, 50}, "care.neglected", "0.50 % leaves no room: at least 1 % (100), since what is ruled out beforehand no finding can bring back"},
		{CareBelief{-1, 5000, 5001}, "care.well", "-1 is no probability: 1 to 98 %"},
		{CareBelief{5000, 10001, -5001}, "care.ordinary", "10001 is no probability"},
		{CareBelief{1 << 62, 1 << 62, 10000}, "care.well", "is no probability"},
	} {
		f := testFile()
		f.Care = &c.belief
		_, err := testJudge().Of(f, Ask{})
		if c.says == "" {
			if err != nil {
				t.Errorf("%+v: %v", c.belief, err)
			}
			continue
		}
		e, ok := err.(*Error)
		if !ok || e.Field != c.field || !strings.Contains(e.Error(), c.says) {
			t.Errorf("%+v: %v, want %s: ...%s", c.belief, err, c.field, c.says)
		}
	}
}

// However the rubric orders its checks, and whatever is found: the classes are
// probabilities, a bad finding never makes neglect less likely, a sound one never
// more, and each open point lies between its chances in the best and worst class.
func TestCareProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := testRubric()
		n := rapid.IntRange(1, 60).Draw(t, "checks")
		walked := make([]judged, n)
		for i := range walked {
			well := rapid.Float64Range(1e-6, .9).Draw(t, "well")
			ordinary := rapid.Float64Range(well, .95).Draw(t, "ordinary")
			neglected := rapid.Float64Range(ordinary, 1-1e-6).Draw(t, "neglected")
			walked[i] = judged{check: &Check{ID: "x", Bad: &[3]float64{well, ordinary, neglected}}, applies: true}
			if g := rapid.IntRange(-1, 4).Draw(t, "grade"); g >= 0 {
				walked[i].grade = &g
			}
		}
		f := testFile()
		c := learn(&r, f, walked)
		sum := 0.0
		for _, p := range c.post {
			if !(p >= 0 && p <= 1) {
				t.Fatalf("care %v", c.post)
			}
			sum += p
		}
		if math.Abs(sum-1) > 1e-12 {
			t.Fatalf("care sums to %v", sum)
		}
		if whole := parts(c.post); whole[0]+whole[1]+whole[2] != 10_000 || min(whole[0], whole[1], whole[2]) < 0 {
			t.Fatalf("%v is written as %v", c.post, whole)
		}
		for i := range walked {
			if j := &walked[i]; j.open() && (j.chance < j.check.Bad[0]-1e-12 || j.chance > j.check.Bad[2]+1e-12) {
				t.Fatalf("chance %v of %v", j.chance, *j.check.Bad)
			}
		}
		turned := slices.Clone(walked)
		slices.Reverse(turned)
		for k, p := range learn(&r, f, turned).post {
			if math.Abs(p-c.post[k]) > 1e-9 {
				t.Fatalf("the order of checks counts: %v, turned %v", c.post, p)
			}
		}
		bad, sound := 1, 3
		more := judged{check: &Check{ID: "y"}, applies: true, grade: &bad}
		if worse := learn(&r, f, append(slices.Clone(walked), more)); worse.post[2] < c.post[2]-1e-12 {
			t.Fatalf("one more bad point took neglect from %v to %v", c.post[2], worse.post[2])
		}
		more.grade = &sound
		if better := learn(&r, f, append(slices.Clone(walked), more)); better.post[2] > c.post[2]+1e-12 {
			t.Fatalf("one more sound point took neglect from %v to %v", c.post[2], better.post[2])
		}
	})
}

// The sentence by how many points were seen and how many of them were bad.
func TestHiddenSentence(t *testing.T) {
	points := func(bad, seen, open int) []judged {
		var out []judged
		one, three := 1, 3
		for i := range seen {
			g := &three
			if i < bad {
				g = &one
			}
			out = append(out, judged{check: &Check{}, applies: true, grade: g})
		}
		for range open {
			out = append(out, judged{check: &Check{}, applies: true, chance: .38})
		}
		return append(out, judged{check: &Check{}, grade: &one}, judged{check: &Check{}}) // which do not apply
	}
	seller, own, old := start{seller: "a dealer"}, start{own: true}, start{seller: "a dealer", age: 21}
	for _, c := range []struct {
		bad, seen, open int
		from            start
		want            string
	}{
		{4, 9, 12, seller, "Four of the nine points you could see were bad, so the twelve you could not are priced at 38 % bad on average: 1,240."},
		{1, 9, 1, seller, "One of the nine points you could see was bad, so the one you could not is priced at 38 % bad: 1,240."},
		{0, 9, 14, seller, "None of the nine points you could see was bad, so the 14 you could not are priced at 38 % bad on average: 1,240."},
		{9, 9, 2, seller, "All nine points you could see were bad, so the two you could not are priced at 38 % bad on average: 1,240."},
		{2, 2, 2, seller, "Both points you could see were bad, so the two you could not are priced at 38 % bad on average: 1,240."},
		{1, 1, 3, seller, "The one point you could see was bad, so the three you could not are priced at 38 % bad on average: 1,240."},
		{0, 1, 3, seller, "The one point you could see was not bad, so the three you could not are priced at 38 % bad on average: 1,240."},
		{0, 0, 21, seller, "Nothing was checked yet. By the kind of seller alone, the 21 points are priced at 38 % bad on average: 1,240."},
		{0, 0, 1, own, "Nothing was checked yet. By your own belief alone, the one point is priced at 38 % bad: 1,240."},
		{0, 0, 21, old, "Nothing was checked yet. By the kind of seller and its 21 years alone, the 21 points are priced at 38 % bad on average: 1,240."},
		{4, 9, 12, own, "Four of the nine points you could see were bad, so the twelve you could not are priced at 38 % bad on average: 1,240. It starts from your own belief, not from the kind of seller."},
		{4, 9, 12, old, "Four of the nine points you could see were bad, so the twelve you could not are priced at 38 % bad on average: 1,240. It starts from the kind of seller, tilted towards neglect because it is 21 years old."},
		{2, 9, 0, seller, "Every point was checked: nothing is allowed for what was not."},
	} {
		got := hiddenSentence(points(c.bad, c.seen, c.open), care{start: c.from}, 1240_00)
		if got = strings.ReplaceAll(got, "\u00a0", " "); got != c.want {
			t.Errorf("%d bad of %d, %d open:\n got %s\nwant %s", c.bad, c.seen, c.open, got, c.want)
		}
	}
}
