package appraisal

import (
	"fmt"
	"math"
)

// care is the latent class of how the thing was kept, by Bayes' rule over the
// three classes, and what it says of each point not checked.
type care struct {
	prior, post [3]float64
}

// badOdds is the probability of a bad finding at a check in each class.
func badOdds(r *Rubric, c *Check) [3]float64 {
	if c.Bad != nil {
		return *c.Bad
	}
	return r.Care.Bad
}

// learn updates the prior of the kind of seller by every finding: bad or failed
// counts as bad, all else as not.
func learn(r *Rubric, f *File, walked []judged) care {
	prior, ok := r.Care.Prior[f.Listing.Seller]
	if !ok {
		prior = r.Care.Prior["private"]
	}
	c := care{prior: prior, post: prior}
	for i := range walked {
		j := &walked[i]
		if !j.checked() {
			continue
		}
		odds := badOdds(r, j.check)
		total := 0.0
		for k := range c.post {
			p := odds[k]
			if *j.grade > 1 {
				p = 1 - p
			}
			c.post[k] *= p
			total += c.post[k]
		}
		for k := range c.post {
			c.post[k] /= total
		}
	}
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

// parts writes the class probabilities in 1/10,000.
func parts(p [3]float64) [3]int {
	var out [3]int
	for i := range p {
		out[i] = int(math.Floor(p[i]*10_000 + 0.5))
	}
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
	if open == 0 {
		return "Every point was checked: nothing is allowed for what was not."
	}
	share := percent(chance / float64(open))
	if seen == 0 {
		return fmt.Sprintf("Nothing was checked yet. By the kind of seller alone, the %d points are priced at %s bad on average: %s.", open, share, whole(mean))
	}
	kept := [3]string{"a well kept", "an ordinary", "a neglected"}
	top := 0
	for k := range c.post {
		if c.post[k] > c.post[top] {
			top = k
		}
	}
	return fmt.Sprintf("%d of the %d points you could judge %s bad, which fits %s one best (%s). So the %d you could not are priced at %s bad on average: %s.",
		bad, seen, wereWas(bad), kept[top], percent(c.post[top]), open, share, whole(mean))
}
