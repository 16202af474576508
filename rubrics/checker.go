package rubrics

import (
	"fmt"
	"reflect"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/say"
)

// checker collects what a decoded file gets wrong.
type checker struct {
	file     string
	places   places
	problems Problems
}

func (c *checker) say(path string, what, right any) {
	c.problems = append(c.problems, problem(c.file, c.places.find(path), path, what, right))
}

// rubric runs every check of a decoded rubric.
func (c *checker) rubric(r *appraisal.Rubric, o Options) {
	c.fieldRules(*r)
	c.texts("", reflect.ValueOf(*r))
	parts := map[string]bool{}
	for _, p := range o.Parts {
		parts[p.ID] = true
	}
	appraisal.Examine(r, parts, o.Limits, func(path string, what, right say.Text) { c.say(path, what, right) })
}

// book checks a price book.
func (c *checker) book(b *Book) {
	c.fieldRules(*b)
	c.texts("", reflect.ValueOf(*b))
	seen := map[string]bool{}
	for i := range b.Parts {
		if id := b.Parts[i].ID; seen[id] {
			c.say(fmt.Sprintf("parts[%d].id", i), say.Later("%s stands twice", appraisal.Quoted(id)), "give each its own id")
		}
		seen[b.Parts[i].ID] = true
	}
}
