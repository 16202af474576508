package appraisal

import (
	"math"
)

// care is the latent class of how the thing was kept, by Bayes' rule over the
// three classes, and what it says of each point not checked.
type care struct {
	prior, post [3]float64
	start       start
	voice       voice
}

// badOdds is the probability of a bad finding at a check in each class.
func badOdds(r *Rubric, c *Check) [3]float64 {
	if c.Bad != nil {
		return *c.Bad
	}
	return r.Care.Bad
}

// learn updates the prior by every finding: bad or failed counts as bad, all else
// as not. Given the class, findings are taken as independent. Symptoms of one
// cause are not, but a bound on what a section or a remedy says in all did not
// foretell the open points better (DEVELOPERS.md, Decisions).
func learn(r *Rubric, f *File, walked []judged) care {
	var c care
	c.prior, c.start = prior(r, f)
	w := weigh(c.prior[:])
	for i := range walked {
		j := &walked[i]
		if !j.checked() {
			continue
		}
		likelihood := badOdds(r, j.check)
		if *j.grade > 1 {
			for k, p := range likelihood {
				likelihood[k] = 1 - p
			}
		}
		w.see(likelihood[:])
	}
	copy(c.post[:], w.shares())
	for i := range walked {
		if j := &walked[i]; j.open() {
			odds := badOdds(r, j.check)
			for k := range c.post {
				j.chance += float64(c.post[k] * odds[k])
			}
		}
	}
	return c
}

// parts writes the class probabilities in 1/10,000; the likeliest class takes what
// rounding leaves, so that they sum to 10,000 and can be given back as a belief.
func parts(p [3]float64) [3]int {
	var out [3]int
	top, rest := 0, 10_000
	for i := range p {
		out[i] = int(math.Floor(p[i]*10_000 + 0.5))
		rest -= out[i]
		if p[i] > p[top] {
			top = i
		}
	}
	out[top] += rest
	return out
}

// suspect is one unchecked point with what it would cost in the draws.
type suspect struct {
	j             *judged
	odds          [3]float64
	bad, failed   string // remedy ids, "scrap" or ""
	luck, failing stream
	outcome       [3]outcome // fine, bad, failed
	total         float64    // of the cost over the draws
}

func suspects(r *Rubric, walked []judged) []suspect {
	var out []suspect
	for i := range walked {
		j := &walked[i]
		if !j.open() {
			continue
		}
		rem := j.check.Remedies
		out = append(out, suspect{
			j: j, odds: badOdds(r, j.check), luck: newStream("doubt:" + j.check.ID), failing: newStream("failed:" + j.check.ID),
			bad: first(rem.Bad, rem.Failed, rem.Worn), failed: first(rem.Failed, rem.Bad, rem.Worn),
		})
	}
	return out
}

// hiddenSentence explains the allowance from its own numbers.
func hiddenSentence(walked []judged, c care, mean Money) string {
	seen, bad, open, chance := 0, 0, 0, 0.0
	for i := range walked {
		switch j := &walked[i]; {
		case j.checked():
			seen++
			if *j.grade <= 1 {
				bad++
			}
		case j.open():
			open++
			chance += j.chance
		}
	}
	v := c.voice
	if open == 0 {
		return v.T("Every point was checked: nothing is allowed for what was not.")
	}
	share, price := v.percent(chance/float64(open)), v.whole(mean)
	if seen == 0 {
		if open == 1 {
			return v.F("Nothing was checked yet. %s, the one point is priced at %s bad: %s.", c.start.basis(v), share, price)
		}
		return v.F("Nothing was checked yet. %s, the %s points are priced at %s bad on average: %s.", c.start.basis(v), v.spelled(open), share, price)
	}
	s := v.F("%s bad, so the %s you could not are priced at %s bad on average: %s.", v.ofSeen(bad, seen), v.spelled(open), share, price)
	if open == 1 {
		s = v.F("%s bad, so the one you could not is priced at %s bad: %s.", v.ofSeen(bad, seen), share, price)
	}
	switch {
	case c.start.own:
		s += " " + v.T("It starts from your own belief, not from the kind of seller.")
	case c.start.age > 0:
		s += " " + v.F("It starts from the kind of seller, tilted towards neglect because it is %d years old.", c.start.age)
	}
	return s
}

// ofSeen is how many of the points judged were bad, up to that word.
func (v voice) ofSeen(bad, seen int) string {
	switch {
	case seen == 1 && bad == 0:
		return v.T("The one point you could see was not")
	case seen == 1:
		return v.T("The one point you could see was")
	case bad == 0:
		return v.F("None of the %s points you could see was", v.spelled(seen))
	case bad == seen && seen == 2:
		return v.T("Both points you could see were")
	case bad == seen:
		return v.F("All %s points you could see were", v.spelled(seen))
	case bad == 1:
		return v.F("One of the %s points you could see was", v.spelled(seen))
	}
	return v.F("%s of the %s points you could see were", v.Spelled(bad), v.spelled(seen))
}
