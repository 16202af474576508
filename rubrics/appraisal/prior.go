package appraisal

import (
	"asfound/rubrics/say"
)

// start tells where the prior of the care classes came from.
type start struct {
	own    bool   // the buyer's own belief, in place of all else
	seller string // the kind of seller; "" where it is not told
	none   bool   // the rubric says nothing of that kind
	age    int    // in years, where it tilted the prior; else 0
}

// sellerPriors say from which kind of seller a prior is, by its id.
var sellerPriors = map[string]string{
	"":        say.Key("for a private seller (it is not told who sells), from the rubric (judgement)"),
	"private": say.Key("for a private seller, from the rubric (judgement)"),
	"closing": say.Key("for a closing shop, from the rubric (judgement)"),
	"auction": say.Key("for an auction, from the rubric (judgement)"),
	"dealer":  say.Key("for a dealer, from the rubric (judgement)"),
}

// silentPriors say so where the rubric knows nothing of that kind.
var silentPriors = map[string]string{
	"":        sellerPriors[""],
	"private": say.Key("for a private seller (of a private seller the rubric says nothing), from the rubric (judgement)"),
	"closing": say.Key("for a private seller (of a closing shop the rubric says nothing), from the rubric (judgement)"),
	"auction": say.Key("for a private seller (of an auction the rubric says nothing), from the rubric (judgement)"),
	"dealer":  say.Key("for a private seller (of a dealer the rubric says nothing), from the rubric (judgement)"),
}

// prior is how it was kept, before looking: the buyer's own belief, else by the
// kind of seller, tilted for old equipment. The age is that of the plate: an
// effective age already speaks of its condition, which would count twice.
func prior(r *Rubric, f *File) ([3]float64, start) {
	if b := f.Care; b != nil {
		return [3]float64{float64(b.Well) / 10_000, float64(b.Ordinary) / 10_000, float64(b.Neglected) / 10_000}, start{own: true}
	}
	p, ok := r.Care.Prior[f.Listing.Seller]
	s := start{seller: f.Listing.Seller, none: !ok}
	if !ok {
		p = r.Care.Prior["private"]
	}
	age := year(f.Date) - f.Listing.Made
	if o := r.Care.Older; o != nil && f.Listing.Made > 0 && float64(age) > o.After {
		s.age = age
		total := 0.0
		for k := range p {
			p[k] *= o.Odds[k]
			total += p[k]
		}
		for k := range p {
			p[k] /= total
		}
	}
	return p, s
}

// words says where the prior came from.
func (s start) words(v voice) string {
	if s.own {
		return v.T("your own belief before looking, in place of the rubric's")
	}
	from := sellerPriors
	if s.none {
		from = silentPriors
	}
	w := v.Label(from[s.seller])
	if s.age > 0 {
		w = v.F("%s, tilted towards neglect because it is %d years old", w, s.age)
	}
	return w
}

// basis begins a sentence with it where nothing else was known.
func (s start) basis(v voice) string {
	switch {
	case s.own:
		return v.T("By your own belief alone")
	case s.age > 0:
		return v.F("By the kind of seller and its %d years alone", s.age)
	}
	return v.T("By the kind of seller alone")
}
