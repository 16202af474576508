package appraisal

import "fmt"

// start tells where the prior of the care classes came from.
type start struct {
	own    bool   // the buyer's own belief, in place of all else
	seller string // in words
	age    int    // in years, where it tilted the prior; else 0
}

var sellerWords = map[string]string{
	"private": "a private seller", "closing": "a closing shop", "auction": "an auction", "dealer": "a dealer",
}

// prior is how it was kept, before looking: the buyer's own belief, else by the
// kind of seller, tilted for old equipment. The age is that of the plate: an
// effective age already speaks of its condition, which would count twice.
func prior(r *Rubric, f *File) ([3]float64, start) {
	if b := f.Care; b != nil {
		return [3]float64{float64(b.Well) / 10_000, float64(b.Ordinary) / 10_000, float64(b.Neglected) / 10_000}, start{own: true}
	}
	p, ok := r.Care.Prior[f.Listing.Seller]
	s := start{seller: sellerWords[f.Listing.Seller]}
	switch {
	case f.Listing.Seller == "":
		s.seller = "a private seller (it is not told who sells)"
	case !ok:
		s.seller = "a private seller (of " + s.seller + " the rubric says nothing)"
	}
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
func (s start) words() string {
	if s.own {
		return "your own belief before looking, in place of the rubric's"
	}
	w := "for " + s.seller + ", from the rubric (judgement)"
	if s.age > 0 {
		w += fmt.Sprintf(", tilted towards neglect because it is %d years old", s.age)
	}
	return w
}

// basis names it where nothing else was known.
func (s start) basis() string {
	switch {
	case s.own:
		return "your own belief"
	case s.age > 0:
		return fmt.Sprintf("the kind of seller and its %d years", s.age)
	}
	return "the kind of seller"
}
