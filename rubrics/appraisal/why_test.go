package appraisal

import (
	"strings"
	"testing"
)

// Every figure that is shown opens onto its derivation, every step that rests on
// a figure finds it, and going down always ends.
func TestEveryFigureHasItsDerivation(t *testing.T) {
	f := testFile()
	f.NewPrice = &NewPrice{Price: Range{7000_00, 8000_00, 9000_00}}
	r, err := testJudge().Of(f, Ask{})
	if err != nil {
		t.Fatal(err)
	}
	want := []string{"verdict", "safety", "condition", "coverage", "repair", "landing", "care", "hidden", "worth", "sales", "cost", "in_place", "opening", "fair", "walk_away", "odds", "all_in", "ahead"}
	for _, l := range append(r.Estimate.Lines, r.Landing.Lines...) {
		if !l.Off {
			want = append(want, "line:"+l.ID)
		}
	}
	for _, id := range want {
		if w := r.Why[id]; w.Title == "" || w.Figure == "" || len(w.Steps) == 0 {
			t.Errorf("%s: %+v has no derivation", id, w)
		}
	}
	var down func(id string, above []string)
	down = func(id string, above []string) {
		for _, a := range above {
			if a == id {
				t.Fatalf("%v goes round to %s", above, id)
			}
		}
		for _, s := range r.Why[id].Steps {
			if s.Text == "" || strings.Contains(s.Text, "%!") || strings.Contains(s.Text, "NaN") {
				t.Errorf("%s: %q", id, s.Text)
			}
			if s.Of == "" {
				continue
			}
			if _, ok := r.Why[s.Of]; !ok {
				t.Errorf("%s rests on %s, which has no derivation", id, s.Of)
			}
			down(s.Of, append(above, id))
		}
	}
	for id := range r.Why {
		down(id, nil)
	}
}

// What a derivation adds up to is the figure it explains.
func TestAllInDerivationAddsUp(t *testing.T) {
	r, err := testJudge().Of(testFile(), Ask{})
	if err != nil {
		t.Fatal(err)
	}
	a := r.Offer.AllIn
	if got := r.Why["all_in"].Figure; got != whole(a.Price+a.Tax+a.Fees+a.Landing+a.Repair+a.Hidden) {
		t.Errorf("all-in says %s for %+v", got, a)
	}
	if got := r.Why["ahead"].Figure; got != whole(r.Worth.InPlace-a.Total) {
		t.Errorf("ahead says %s, want worth in place %d less all-in %d", got, r.Worth.InPlace, a.Total)
	}
}
