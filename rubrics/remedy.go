package rubrics

import (
	"fmt"

	"asfound/rubrics/appraisal"
)

// preparations checks ids, parts and the order of what needs what.
func (c *checker) preparations(list []appraisal.Preparation, parts map[string]bool) map[string]bool {
	set := c.ids(len(list), func(i int) (string, string) { return fmt.Sprintf("preparations[%d]", i), list[i].ID })
	needs := map[string][]string{}
	for i := range list {
		path := fmt.Sprintf("preparations[%d]", i)
		c.parts(path, list[i].Parts, parts)
		for k, n := range list[i].Needs {
			c.known(fmt.Sprintf("%s.needs[%d]", path, k), n, "preparation", set)
		}
		needs[list[i].ID] = append(needs[list[i].ID], list[i].Needs...)
	}
	for i := range list {
		if reaches(needs, list[i].ID, list[i].ID, map[string]bool{}) {
			c.say(fmt.Sprintf("preparations[%d].needs", i), quoted(list[i].ID)+" needs itself in the end", "break the circle")
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

func (c *checker) parts(path string, uses []appraisal.PartUse, parts map[string]bool) {
	seen := map[string]bool{}
	for i, u := range uses {
		at := fmt.Sprintf("%s.parts[%d].part", path, i)
		if !parts[u.Part] {
			c.say(at, quoted(u.Part)+" is not in the price book", "add it to the price book first")
		}
		if seen[u.Part] {
			c.say(at, quoted(u.Part)+" stands twice", "add the quantities up")
		}
		seen[u.Part] = true
	}
}

func (c *checker) remedies(list []appraisal.Remedy, parts, preparations map[string]bool) map[string]bool {
	set := c.ids(len(list), func(i int) (string, string) { return fmt.Sprintf("remedies[%d]", i), list[i].ID })
	for i := range list {
		ways := list[i].Ways
		c.ids(len(ways), func(k int) (string, string) { return fmt.Sprintf("remedies[%d].ways[%d]", i, k), ways[k].ID })
		for k := range ways {
			c.way(fmt.Sprintf("remedies[%d].ways[%d]", i, k), &ways[k], parts, preparations)
		}
	}
	return set
}

func (c *checker) way(path string, w *appraisal.Way, parts, preparations map[string]bool) {
	c.parts(path, w.Parts, parts)
	if w.Make != nil && w.Kind != "make" {
		c.say(path+".make", "belongs to a way of kind make, this one is "+quoted(w.Kind), "drop it or change the kind")
	}
	if w.Kind == "hire" && (w.Rate == "own" || w.Rate == "machine") {
		c.say(path+".rate", quoted(w.Rate)+" is not hired", "a trade's rate, or kind buy for own work")
	}
	seen := map[string]bool{}
	for i, p := range w.Preparations {
		at := fmt.Sprintf("%s.preparations[%d]", path, i)
		c.known(at, p, "preparation", preparations)
		if seen[p] {
			c.say(at, quoted(p)+" stands twice", "name it once")
		}
		seen[p] = true
	}
}
