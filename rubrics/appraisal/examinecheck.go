package appraisal

import (
	"fmt"
	"slices"
	"strings"

	"asfound/rubrics/limit"
	"asfound/rubrics/say"
)

// GradeOrder gives the grade words from best to worst.
var GradeOrder = []string{"as_new", "sound", "worn", "bad", "failed"}

// gradeText gives what a grade word looks like at a check; empty is not offered.
func GradeText(g Grades, word string) string {
	switch word {
	case "as_new":
		return g.AsNew
	case "sound":
		return g.Sound
	case "worn":
		return g.Worn
	case "bad":
		return g.Bad
	case "failed":
		return g.Failed
	}
	return ""
}

// remedyOf gives the remedy named for a grade word, "" for none.
func RemedyOf(r Remedies, word string) string {
	switch word {
	case "worn":
		return r.Worn
	case "bad":
		return r.Bad
	case "failed":
		return r.Failed
	}
	return ""
}

// check holds one check against the rest of its file.
func (c *examiner) check(path string, k *Check, remedies map[string]bool, facts map[string]map[string]bool, limits []limit.Definition) {
	if k.Weight.Safety == 0 && k.Weight.Condition == 0 {
		c.say(path+".weight", "both weights are 0", "at least one of safety and condition above 0")
	}
	for _, word := range GradeOrder[2:] {
		id := RemedyOf(k.Remedies, word)
		at := path + ".remedies." + word
		if id == "" {
			continue
		}
		if id != "scrap" && !remedies[id] {
			c.say(at, say.Later("%s is no remedy of this file", Quoted(id)), say.Later("scrap or %s", listed(remedies)))
		}
		if GradeText(k.Grades, word) == "" {
			c.say(at, say.Later("the check does not offer the grade %s", word), say.Later("write grades.%s or drop the remedy", word))
		}
	}
	for _, word := range GradeOrder {
		if saysSafe(GradeText(k.Grades, word)) {
			c.say(path+".grades."+word, "calls something safe", "say what is seen: nothing found here makes it safe")
		}
	}
	if k.Bad != nil {
		c.rising(path+".bad", *k.Bad)
	}
	c.when(path+".when", k.When, facts)
	if k.Limit != nil && limits != nil {
		c.limit(path+".limit", k, limits)
	}
}

func (c *examiner) when(path string, when map[string][]string, facts map[string]map[string]bool) {
	for fact, options := range when {
		at := Join(path, fact)
		known, ok := facts[fact]
		if !ok {
			c.say(at, say.Later("%s is no fact of this file", Quoted(fact)), "add the fact or drop the condition")
			continue
		}
		if len(options) == 0 {
			c.say(at, "names no option, so the check would never be shown", listed(known))
		}
		for i, o := range options {
			c.known(fmt.Sprintf("%s[%d]", at, i), o, say.Later("%s is no option of %s of this file", Quoted(o), fact), known)
		}
	}
}

// limit checks that the measured limit exists, that what it needs is asked or
// fixed, and that the grades it proposes are offered and do not rise.
func (c *examiner) limit(path string, k *Check, all []limit.Definition) {
	l := k.Limit
	i := slices.IndexFunc(all, func(d limit.Definition) bool { return d.Name == l.Name })
	if i < 0 {
		names := map[string]bool{}
		for _, d := range all {
			names[d.Name] = true
		}
		c.say(path+".name", say.Later("%s is no measured limit", Quoted(l.Name)), listed(names))
	} else {
		c.quantities(path, l, all[i].Quantities)
	}
	worst := 0
	for _, p := range []struct{ key, word string }{{"within", l.Within}, {"watch", l.Watch}, {"beyond", l.Beyond}} {
		at := slices.Index(GradeOrder, p.word)
		if at < 0 {
			continue // already refused by its own rule
		}
		if GradeText(k.Grades, p.word) == "" {
			c.say(path+"."+p.key, say.Later("the check does not offer the grade %s", p.word), say.Later("write grades.%s or propose another", p.word))
		}
		if at < worst {
			c.say(path+"."+p.key, say.Later("%s is better than the grade before it", p.word), "within, watch, beyond must not rise")
		}
		worst = max(worst, at)
	}
}

func (c *examiner) quantities(path string, l *Limit, inputs []limit.Input) {
	names := map[string]bool{}
	for _, in := range inputs {
		names[in.Name] = true
	}
	given := map[string]bool{}
	for i, q := range l.Ask {
		at := fmt.Sprintf("%s.ask[%d]", path, i)
		c.quantity(at, q, l.Name, names)
		if given[q] {
			c.say(at, say.Later("%s stands twice", Quoted(q)), "ask once")
		}
		given[q] = true
	}
	for q, v := range l.Fixed {
		at := Join(path+".fixed", q)
		c.quantity(at, q, l.Name, names)
		if given[q] {
			c.say(at, say.Later("%s is asked as well", Quoted(q)), "ask it or fix it")
		}
		given[q] = true
		i := slices.IndexFunc(inputs, func(in limit.Input) bool { return in.Name == q })
		if i >= 0 && len(inputs[i].Words) > 0 && !slices.Contains(inputs[i].Words, v) {
			c.say(at, say.Later("%s is not known", Quoted(v)), say.Later("one of %s", strings.Join(inputs[i].Words, ", ")))
		}
	}
	for _, in := range inputs {
		if !in.Optional && in.Default == "" && !given[in.Name] {
			c.say(path+".ask", say.Later("%s needs %s too", l.Name, in.Name), "ask it or fix it")
		}
	}
}

func (c *examiner) quantity(path, q, name string, names map[string]bool) {
	if !names[q] {
		c.say(path, say.Later("%s is no quantity of %s", Quoted(q), name), listed(names))
	}
}

// saysSafe tells whether a text has the word safe; safety and unsafe are others.
func saysSafe(text string) bool {
	for _, word := range strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return r < 'a' || r > 'z' }) {
		if word == "safe" || word == "safely" {
			return true
		}
	}
	return false
}
