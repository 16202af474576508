package appraisal

import (
	"strings"

	"asfound/rubrics/limit"
	"asfound/rubrics/say"
)

// standing is what holding one figure against another gives, in rising order of
// what it means for the point.
type standing int

const (
	passes standing = iota
	work            // work is needed whatever else is known
	open            // not known
	lacks           // does not do as it is; a landing line may cure it
	never           // no landing line cures it
)

// trial is one figure held against another.
type trial struct {
	standing standing
	text     string
	// note says on which usual size it rests; several trials may share one.
	note    string
	limit   *limit.Result
	missing []string
}

// missed is a trial that waits for fields to be told.
func missed(text string, fields ...string) trial {
	return trial{standing: open, text: text, missing: fields}
}

// try holds values against a limit of package limit. What the limit refuses
// settles nothing, and the refusal says why.
func (h *holding) try(name string, given map[string]string) trial {
	res, err := limit.ComputeIn(h.voice.Voice, name, given)
	if err != nil {
		text := h.Error(err)
		if e, ok := err.(*limit.Error); ok {
			text = say.Capital(e.What) + ": " + e.Right + "."
		}
		return trial{standing: open, text: text}
	}
	t := trial{limit: &res, text: res.Text}
	if res.Finding == limit.Beyond {
		t.standing = lacks
	}
	return t
}

// span tries a size. Where only the usual one of the kind is known it passes by
// the largest and lacks by the smallest; between them it stays open.
func (h *holding) span(s *sized, one func(at Quantity) trial) trial {
	if s.told != nil {
		return one(*s.told)
	}
	at := func(x float64) trial { return one(h.in(x, s.unit)) }
	high := at(s.span.High)
	if high.standing == passes || high.standing == work {
		high.note = h.untold(s)
		return high
	}
	low := at(s.span.Low)
	if low.standing >= lacks {
		low.note = h.untold(s)
		return low
	}
	likely := at(s.span.Likely)
	likely.standing, likely.note = open, h.untold(s)
	likely.missing = append(likely.missing, s.field)
	return likely
}

// untold says that a size is only the usual one of the kind.
func (h *holding) untold(s *sized) string {
	if s.of != nil {
		s = s.of
	}
	return h.F("The %s is not told; usual ones of the kind have %s (common practice).", h.Label(s.text), h.usual(s))
}

// figure is a size with what it is founded on.
type figure struct {
	x, need float64 // in unit
	unit    string
	status  limit.Status
	source  string
}

// against holds a figure against one it must reach; both are told by plates, tape
// or the rubric, and source says which.
func (h *holding) against(name, text string, f figure) trial {
	short := f.x < f.need-1e-9*f.need
	have, u := h.read(f.x, f.unit)
	need, _ := h.read(f.need, f.unit)
	res := limit.Result{
		Name: name, Value: round4(have), Unit: u, Finding: limit.Within, Text: text, Formula: h.T("what there is, at least what is needed"),
		Source: f.source, Status: f.status,
	}
	at := round4(need)
	res.Limit = &at
	switch {
	case short:
		res.Finding = limit.Beyond
	case f.status == limit.Practice:
		res.Finding = limit.Computed
	}
	if f.status == limit.Practice && f.source != h.byUsual() { // a usual size says so itself
		res.Text = h.F("%s; the figure is common practice and can only warn.", strings.TrimSuffix(text, "."))
	}
	t := trial{limit: &res, text: res.Text}
	if short {
		t.standing = lacks
	}
	return t
}

// settle makes a point of its trials: the worst decides, and says why.
func settle(id, title string, trials []trial, also string) (p FitPoint, worst standing) {
	p = FitPoint{ID: id, Title: title}
	for i := range trials {
		worst = max(worst, trials[i].standing)
	}
	var texts, notes []string
	for i := range trials {
		t := &trials[i]
		if t.standing != worst {
			continue
		}
		if t.text != "" {
			texts = append(texts, t.text)
		}
		if t.note != "" && !contains(notes, t.note) {
			notes = append(notes, t.note)
		}
		if p.Limit == nil {
			p.Limit = t.limit
		}
		for _, m := range t.missing {
			if !contains(p.Missing, m) {
				p.Missing = append(p.Missing, m)
			}
		}
	}
	texts = append(texts, notes...)
	if also != "" {
		texts = append(texts, also)
	}
	p.Text = strings.Join(texts, " ")
	p.Finding = map[standing]string{passes: Fits, work: WithWork, open: NotKnown, lacks: DoesNot, never: DoesNot}[worst]
	return p, worst
}

func contains(list []string, word string) bool {
	for _, w := range list {
		if w == word {
			return true
		}
	}
	return false
}
