package depreciation

import (
	"testing"

	"pgregory.net/rapid"
)

// M12: age-life, the rule of the American Society of Appraisers' text (from memory).
func TestAgeLife(t *testing.T) {
	d, err := AgeLife(6, 15)
	near(t, "M12", must(t, d, err), 0.40, 1e-12)
	near(t, "M12 left of 9,000", 9000*(1-d), 5400, 1e-9)
	if d, err := AgeLife(40, 15); err != nil || d != 1 {
		t.Errorf("%v, %v: depreciation beyond life must stop at 1", d, err)
	}
}

// The same rule: total life is effective age and remaining life, so both ways
// round the whole comes out.
func TestEffectiveAge(t *testing.T) {
	e, err := EffectiveAge(15, 9)
	near(t, "M12 from remaining life", must(t, e, err), 6, 1e-12)
	rapid.Check(t, func(t *rapid.T) {
		life := rapid.Float64Range(0.5, 100).Draw(t, "life")
		remaining := life * rapid.Float64Range(0, 1).Draw(t, "share")
		e, err := EffectiveAge(life, remaining)
		d, err2 := AgeLife(must(t, e, err), life)
		if got := must(t, d, err2) + remaining/life; got < 1-1e-12 || got > 1+1e-12 {
			t.Fatalf("depreciation and what remains make %v, want 1", got)
		}
	})
}
