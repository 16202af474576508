package appraisal

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"asfound/rubrics/limit"
	"asfound/rubrics/say"
	"asfound/rubrics/unit"
)

// Tell takes one thing wrong in a rubric: where, what, and what would be right.
type Tell func(path string, what, right say.Text)

// IsMissing is what Examine says of something that is not there.
const IsMissing = "is missing"

// Examine holds a rubric to all that one field cannot tell of itself: ids told
// apart, references that lead somewhere, chances that rise, sections in safe
// order. tell is told of every problem: where, what, and what would be right.
// parts and limits are what the rubric may refer to; nil leaves that open.
func Examine(r *Rubric, parts map[string]bool, limits []limit.Definition, tell Tell) {
	c := &examiner{tell: tell, parts: parts}
	c.care(&r.Care)
	for i, other := range r.Capacity.Other {
		if _, err := unit.Convert(1, other, r.Capacity.Unit); err != nil {
			c.say(fmt.Sprintf("capacity.other[%d]", i), say.Later("%s", err), say.Later("a unit that converts to %s", r.Capacity.Unit))
		}
	}
	facts := c.facts(r.Facts)
	c.landing(r.Landing, facts)
	c.body(r.Body, facts)
	c.visit(r.Visit, facts)
	preparations := c.preparations(r.Preparations)
	remedies := c.remedies(r.Remedies, preparations)
	c.sections(r.Sections)
	c.ids(countChecks(r), func(i int) (string, string) { return nthCheck(r, i) })
	for s := range r.Sections {
		for k := range r.Sections[s].Checks {
			path := fmt.Sprintf("sections[%d].checks[%d]", s, k)
			c.check(path, &r.Sections[s].Checks[k], remedies, facts, limits)
		}
	}
}

// examiner looks a rubric through.
type examiner struct {
	tell  Tell
	parts map[string]bool // nil: any
}

func (c *examiner) say(path string, what, right any) { c.tell(path, say.Of(what), say.Of(right)) }

// Join makes the path of a key under a path, quoted where its marks would mislead.
func Join(path, key string) string {
	if strings.ContainsAny(key, ".[] \n") || key == "" {
		key = strconv.Quote(strings.NewReplacer(".", "_", "[", "_", "]", "_").Replace(key))
	}
	if path == "" {
		return key
	}
	return path + "." + key
}

// Quoted shows a text of a file in a message, cut where it is long.
func Quoted(s string) string {
	if r := []rune(s); len(r) > 60 {
		s = string(r[:57]) + "..."
	}
	return strconv.Quote(s)
}

// ids checks that ids of one list are told apart and gives them as a set.
func (c *examiner) ids(n int, id func(int) (path, id string)) map[string]bool {
	set := map[string]bool{}
	for i := range n {
		path, v := id(i)
		if set[v] {
			c.say(path+".id", say.Later("%s stands twice", Quoted(v)), "give each its own id")
		}
		set[v] = true
	}
	return set
}

// known reports a reference to nothing.
func (c *examiner) known(path, id string, what say.Text, set map[string]bool) {
	if !set[id] {
		c.say(path, what, listed(set))
	}
}

func listed[V any](set map[string]V) say.Text {
	names := make([]string, 0, len(set))
	for n := range set {
		names = append(names, n)
	}
	slices.Sort(names)
	if len(names) > 12 {
		names = append(names[:12], "...")
	}
	if len(names) == 0 {
		return say.Later("there is none yet: add it first")
	}
	return say.Later("one of %s", strings.Join(names, ", "))
}

func countChecks(r *Rubric) (n int) {
	for i := range r.Sections {
		n += len(r.Sections[i].Checks)
	}
	return n
}

// nthCheck gives path and id of the i-th check in walking order.
func nthCheck(r *Rubric, i int) (path, id string) {
	s := 0
	for i >= len(r.Sections[s].Checks) {
		i -= len(r.Sections[s].Checks)
		s++
	}
	return fmt.Sprintf("sections[%d].checks[%d]", s, i), r.Sections[s].Checks[i].ID
}

func (c *examiner) care(care *Care) {
	if _, ok := care.Prior["private"]; !ok {
		c.say("care.prior.private", IsMissing, "a private seller is the fallback for the others")
	}
	for seller, row := range care.Prior {
		path := Join("care.prior", seller)
		sum := 0.0
		for i, p := range row {
			if !(p > 0 && p < 1) {
				c.say(fmt.Sprintf("%s[%d]", path, i), say.Later("%g is no open probability", p), "more than 0 and less than 1, or no finding could change it")
			}
			sum += p
		}
		if math.Abs(sum-1) > 1e-6 {
			c.say(path, say.Later("sums to %g", sum), "well kept, ordinary and neglected sum to 1")
		}
	}
	c.rising("care.bad", care.Bad)
	if care.Older != nil {
		c.rising("care.older.odds", care.Older.Odds)
	}
}

// rising holds what goes with the classes of keeping to their order.
func (c *examiner) rising(path string, row [3]float64) {
	if !(row[0] < row[1] && row[1] < row[2]) {
		c.say(path, say.Later("%g, %g, %g do not rise", row[0], row[1], row[2]), "well kept < ordinary < neglected")
	}
}

func (c *examiner) landing(lines []Landing, facts map[string]map[string]bool) {
	c.ids(len(lines), func(i int) (string, string) { return fmt.Sprintf("landing[%d]", i), lines[i].ID })
	for i := range lines {
		if lines[i].Hours.High > 0 && lines[i].Rate == "" {
			c.say(fmt.Sprintf("landing[%d].rate", i), IsMissing, "hours need a rate: own, machine or a trade")
		}
		if lines[i].Assumed && lines[i].Fit == "" {
			c.say(fmt.Sprintf("landing[%d].assumed", i), "stands without fit", "name the point of fit, or drop it")
		}
		c.when(fmt.Sprintf("landing[%d].when", i), lines[i].When, facts)
	}
}

func (c *examiner) body(b *Body, facts map[string]map[string]bool) {
	if b == nil {
		return
	}
	c.ids(len(b.Pieces), func(i int) (string, string) { return fmt.Sprintf("body.pieces[%d]", i), b.Pieces[i].ID })
	for i := range b.Pieces {
		c.when(fmt.Sprintf("body.pieces[%d].when", i), b.Pieces[i].When, facts)
	}
}

func (c *examiner) visit(v *Visit, facts map[string]map[string]bool) {
	if v == nil {
		return
	}
	c.ids(len(v.Questions), func(i int) (string, string) { return fmt.Sprintf("visit.questions[%d]", i), v.Questions[i].ID })
	for i := range v.Questions {
		c.when(fmt.Sprintf("visit.questions[%d].when", i), v.Questions[i].When, facts)
		c.answers(i, v.Questions[i].Answers, facts)
	}
}

// answers holds what answers a question to the fields of a listing and the facts.
func (c *examiner) answers(i int, names []string, facts map[string]map[string]bool) {
	for k, name := range names {
		path := fmt.Sprintf("visit.questions[%d].answers[%d]", i, k)
		if fact, ok := strings.CutPrefix(name, "fact/"); ok {
			if facts[fact] == nil {
				c.say(path, say.Later("%s is no fact of this file", Quoted(fact)), listed(facts))
			}
		} else if !slices.Contains(AnswerFields, name) {
			c.say(path, say.Later("%s is no field of a listing", Quoted(name)), say.Later("one of %s, or fact/ and the id of a fact", strings.Join(AnswerFields, ", ")))
		}
	}
}

func (c *examiner) facts(facts []Fact) map[string]map[string]bool {
	c.ids(len(facts), func(i int) (string, string) { return fmt.Sprintf("facts[%d]", i), facts[i].ID })
	out := map[string]map[string]bool{}
	for i := range facts {
		options := facts[i].Options
		out[facts[i].ID] = c.ids(len(options), func(k int) (string, string) {
			return fmt.Sprintf("facts[%d].options[%d]", i, k), options[k].ID
		})
	}
	return out
}

// stateOrder is the safe order of a walkaround.
var stateOrder = []string{"documents", "power-off", "unloaded", "loaded"}

func (c *examiner) sections(sections []Section) {
	c.ids(len(sections), func(i int) (string, string) { return fmt.Sprintf("sections[%d]", i), sections[i].ID })
	reached := 0
	for i := range sections {
		at := slices.Index(stateOrder, sections[i].State)
		if at < 0 {
			continue // already refused by its own rule
		}
		if at < reached {
			c.say(fmt.Sprintf("sections[%d].state", i), say.Later("%s comes after %s", sections[i].State, stateOrder[reached]), "documents, power-off, unloaded, loaded, never going back")
		}
		reached = max(reached, at)
	}
}
