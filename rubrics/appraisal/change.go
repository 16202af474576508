package appraisal

import (
	"reflect"
	"strings"

	"asfound/rubrics/say"
)

// Change is one difference between the rubric an appraisal was made with and
// another version of it.
type Change struct {
	Kind string `json:"kind"` // added, dropped, changed
	Of   string `json:"of"`   // check, fact, landing, preparation, remedy, rubric
	ID   string `json:"id"`
	// Sentence says it to the user.
	Sentence string `json:"sentence"`
	// Finding tells that something was found or answered there.
	Finding bool `json:"finding,omitempty"`
}

// Changes lists what moving an appraisal from one rubric to another would change:
// first what was found or answered, then the rest, each in the order of the
// rubric. Nothing that was found is ever dropped from the file.
func Changes(from, to *Rubric, f *File) []Change { return changes(voice{}, from, to, f) }

// Changes lists them in the judge's language.
func (jd *Judge) Changes(from, to *Rubric, f *File) []Change { return changes(jd.voice, from, to, f) }

func changes(v voice, from, to *Rubric, f *File) []Change {
	c := &comparer{voice: v, file: f}
	c.checks(from, to)
	entries(c, "fact", pointers(from.Facts), pointers(to.Facts), func(x *Fact) (string, string) { return x.ID, x.Ask })
	entries(c, "landing", pointers(from.Landing), pointers(to.Landing), func(x *Landing) (string, string) { return x.ID, x.Title })
	entries(c, "remedy", pointers(from.Remedies), pointers(to.Remedies), func(x *Remedy) (string, string) { return x.ID, x.Title })
	entries(c, "preparation", pointers(from.Preparations), pointers(to.Preparations), func(x *Preparation) (string, string) { return x.ID, x.Title })
	c.whole(from, to)
	return append(c.found, c.rest...)
}

type comparer struct {
	voice
	file        *File
	found, rest []Change
}

func (c *comparer) add(ch Change) {
	if ch.Finding {
		c.found = append(c.found, ch)
	} else {
		c.rest = append(c.rest, ch)
	}
}

func (c *comparer) checks(from, to *Rubric) {
	old, now := checksByID(from), checksByID(to)
	for s := range from.Sections {
		for k := range from.Sections[s].Checks {
			was := &from.Sections[s].Checks[k]
			_, found := c.file.Findings[was.ID]
			is, ok := now[was.ID]
			switch {
			case !ok && found:
				c.add(Change{"dropped", "check", was.ID, c.F("The check %q is no longer there: what you found stays, but counts for nothing.", was.Title), true})
			case !ok:
				c.add(Change{"dropped", "check", was.ID, c.F("The check %q is no longer there.", was.Title), false})
			case !reflect.DeepEqual(was, is):
				c.add(Change{"changed", "check", was.ID, c.F("The check %q has changed: %s.", is.Title, strings.Join(c.differences(was, is), ", ")), found})
			}
		}
	}
	for s := range to.Sections {
		for k := range to.Sections[s].Checks {
			is := &to.Sections[s].Checks[k]
			if _, ok := old[is.ID]; !ok {
				_, found := c.file.Findings[is.ID]
				c.add(Change{"added", "check", is.ID, c.F("The check %q is new (%s, %g minutes).", is.Title, c.Label(is.Hazard), is.Minutes), found})
			}
		}
	}
}

func checksByID(r *Rubric) map[string]*Check {
	out := map[string]*Check{}
	for s := range r.Sections {
		for k := range r.Sections[s].Checks {
			out[r.Sections[s].Checks[k].ID] = &r.Sections[s].Checks[k]
		}
	}
	return out
}

// differences names the parts of a check that are not the same.
func (v voice) differences(was, is *Check) []string {
	var out []string
	for _, d := range []struct {
		differs bool
		words   string
	}{
		{was.Title != is.Title, v.F("its name (before: %q)", was.Title)},
		{was.Hazard != is.Hazard, v.F("hazard from %s to %s", v.Label(was.Hazard), v.Label(is.Hazard))},
		{was.Weight != is.Weight, v.F("weight from %d and %d to %d and %d", was.Weight.Safety, was.Weight.Condition, is.Weight.Safety, is.Weight.Condition)},
		{was.Grades != is.Grades, v.T("the words of its grades")},
		{was.How != is.How || was.Caution != is.Caution, v.T("how it is checked")},
		{was.Remedies != is.Remedies, v.T("what puts it right")},
		{!reflect.DeepEqual(was.Limit, is.Limit), v.T("its measured limit")},
		{!reflect.DeepEqual(was.When, is.When), v.T("when it applies")},
		{was.Kind != is.Kind || was.Minutes != is.Minutes || !reflect.DeepEqual(was.Instrument, is.Instrument) || !reflect.DeepEqual(was.Bad, is.Bad), v.T("minutes, instruments or chances")},
	} {
		if d.differs {
			out = append(out, d.words)
		}
	}
	return out
}

func pointers[T any](list []T) []*T {
	out := make([]*T, len(list))
	for i := range list {
		out[i] = &list[i]
	}
	return out
}

// changeWords say that a thing of the rubric is gone, has changed or is new.
var changeWords = map[string][3]string{
	"fact":        {say.Key("The fact %q is no longer there."), say.Key("The fact %q has changed."), say.Key("The fact %q is new.")},
	"landing":     {say.Key("The landing %q is no longer there."), say.Key("The landing %q has changed."), say.Key("The landing %q is new.")},
	"remedy":      {say.Key("The remedy %q is no longer there."), say.Key("The remedy %q has changed."), say.Key("The remedy %q is new.")},
	"preparation": {say.Key("The preparation %q is no longer there."), say.Key("The preparation %q has changed."), say.Key("The preparation %q is new.")},
}

// entries compares two lists of things with ids.
func entries[T any](c *comparer, of string, from, to []*T, name func(*T) (id, title string)) {
	words, now, old := changeWords[of], map[string]*T{}, map[string]bool{}
	for _, x := range to {
		id, _ := name(x)
		now[id] = x
	}
	for _, x := range from {
		id, title := name(x)
		old[id] = true
		switch is, ok := now[id]; {
		case !ok:
			c.add(Change{"dropped", of, id, c.Pattern(words[0], title), c.answered(of, id)})
		case !reflect.DeepEqual(x, is):
			c.add(Change{"changed", of, id, c.Pattern(words[1], title), c.answered(of, id)})
		}
	}
	for _, x := range to {
		if id, title := name(x); !old[id] {
			c.add(Change{"added", of, id, c.Pattern(words[2], title), false})
		}
	}
}

// answered tells whether the user settled something there.
func (c *comparer) answered(of, id string) bool {
	var ok bool
	switch of {
	case "fact":
		_, ok = c.file.Facts[id]
	case "landing":
		_, ok = c.file.Landing[id]
	case "remedy":
		_, ok = c.file.Ways[id]
	}
	return ok
}

// whole compares what stands once.
func (c *comparer) whole(from, to *Rubric) {
	for _, d := range []struct {
		id      string
		differs bool
		words   string
	}{
		{"cautions", from.About != to.About || !reflect.DeepEqual(from.Cautions, to.Cautions), c.T("Its description or its cautions have changed.")},
		{"worth", from.Capacity.Unit != to.Capacity.Unit || from.Capacity.Exponent != to.Capacity.Exponent || from.Life != to.Life || from.Depreciation != to.Depreciation || from.Scrap != to.Scrap, c.T("What its worth rests on (size, life, scrap) has changed.")},
		{"care", !reflect.DeepEqual(from.Care, to.Care), c.T("Its belief of how such equipment is kept has changed.")},
		{"visit", !reflect.DeepEqual(from.Visit, to.Visit) || !reflect.DeepEqual(from.Body, to.Body) || !reflect.DeepEqual(from.Needs, to.Needs), c.T("Its questions, size or needs have changed.")},
	} {
		if d.differs {
			c.add(Change{"changed", "rubric", d.id, d.words, false})
		}
	}
}
