package appraisal

import (
	"fmt"
)

// preparations checks ids, parts and the order of what needs what.
func (c *examiner) preparations(list []Preparation) map[string]bool {
	set := c.ids(len(list), func(i int) (string, string) { return fmt.Sprintf("preparations[%d]", i), list[i].ID })
	needs := map[string][]string{}
	for i := range list {
		path := fmt.Sprintf("preparations[%d]", i)
		c.uses(path, list[i].Parts)
		for k, n := range list[i].Needs {
			c.known(fmt.Sprintf("%s.needs[%d]", path, k), n, "preparation", set)
		}
		needs[list[i].ID] = append(needs[list[i].ID], list[i].Needs...)
	}
	for i := range list {
		if reaches(needs, list[i].ID, list[i].ID, map[string]bool{}) {
			c.say(fmt.Sprintf("preparations[%d].needs", i), Quoted(list[i].ID)+" needs itself in the end", "break the circle")
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
			c.say(at, Quoted(u.Part)+" is not in the price book", "add it to the price book first")
		}
		if seen[u.Part] {
			c.say(at, Quoted(u.Part)+" stands twice", "add the quantities up")
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
		c.say(path+".make", "belongs to a way of kind make, this one is "+Quoted(w.Kind), "drop it or change the kind")
	}
	if w.Kind == "hire" && (w.Rate == "own" || w.Rate == "machine") {
		c.say(path+".rate", Quoted(w.Rate)+" is not hired", "a trade's rate, or kind buy for own work")
	}
	seen := map[string]bool{}
	for i, p := range w.Preparations {
		at := fmt.Sprintf("%s.preparations[%d]", path, i)
		c.known(at, p, "preparation", preparations)
		if seen[p] {
			c.say(at, Quoted(p)+" stands twice", "name it once")
		}
		seen[p] = true
	}
}
