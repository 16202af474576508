package appraisal

import (
	"fmt"

	"asfound/rubrics/say"
)

// preparations checks ids, parts and the order of what needs what.
func (c *examiner) preparations(list []Preparation) map[string]bool {
	set := c.ids(len(list), func(i int) (string, string) { return fmt.Sprintf("preparations[%d]", i), list[i].ID })
	needs := map[string][]string{}
	for i := range list {
		path := fmt.Sprintf("preparations[%d]", i)
		c.uses(path, list[i].Parts)
		for k, n := range list[i].Needs {
			c.known(fmt.Sprintf("%s.needs[%d]", path, k), n, say.Later("%s is no preparation of this file", Quoted(n)), set)
		}
		needs[list[i].ID] = append(needs[list[i].ID], list[i].Needs...)
	}
	for i := range list {
		if reaches(needs, list[i].ID, list[i].ID, map[string]bool{}) {
			c.say(fmt.Sprintf("preparations[%d].needs", i), say.Later("%s needs itself in the end", Quoted(list[i].ID)), "break the circle")
		}
	}
	return set
}

// reaches tells whether following needs from one id comes to another.
func reaches(needs map[string][]string, from, to string, been map[string]bool) bool {
	for _, n := range needs[from] {
		if n == to {
			return true
		}
		if been[n] {
			continue
		}
		been[n] = true
		if reaches(needs, n, to, been) {
			return true
		}
	}
	return false
}

func (c *examiner) uses(path string, uses []PartUse) {
	seen := map[string]bool{}
	for i, u := range uses {
		at := fmt.Sprintf("%s.parts[%d].part", path, i)
		if c.parts != nil && !c.parts[u.Part] {
			c.say(at, say.Later("%s is not in the price book", Quoted(u.Part)), "add it to the price book first")
		}
		if seen[u.Part] {
			c.say(at, say.Later("%s stands twice", Quoted(u.Part)), "add the quantities up")
		}
		seen[u.Part] = true
	}
}

func (c *examiner) remedies(list []Remedy, preparations map[string]bool) map[string]bool {
	set := c.ids(len(list), func(i int) (string, string) { return fmt.Sprintf("remedies[%d]", i), list[i].ID })
	for i := range list {
		ways := list[i].Ways
		c.ids(len(ways), func(k int) (string, string) { return fmt.Sprintf("remedies[%d].ways[%d]", i, k), ways[k].ID })
		for k := range ways {
			c.way(fmt.Sprintf("remedies[%d].ways[%d]", i, k), &ways[k], preparations)
		}
	}
	return set
}

func (c *examiner) way(path string, w *Way, preparations map[string]bool) {
	c.uses(path, w.Parts)
	if w.Make != nil && w.Kind != "make" {
		c.say(path+".make", say.Later("belongs to a way of kind make, this one is %s", Quoted(w.Kind)), "drop it or change the kind")
	}
	if w.Kind == "hire" && (w.Rate == "own" || w.Rate == "machine") {
		c.say(path+".rate", say.Later("%s is not hired", Quoted(w.Rate)), "a trade's rate, or kind buy for own work")
	}
	seen := map[string]bool{}
	for i, p := range w.Preparations {
		at := fmt.Sprintf("%s.preparations[%d]", path, i)
		c.known(at, p, say.Later("%s is no preparation of this file", Quoted(p)), preparations)
		if seen[p] {
			c.say(at, say.Later("%s stands twice", Quoted(p)), "name it once")
		}
		seen[p] = true
	}
}
