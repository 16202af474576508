package appraisal

import (
	"strconv"

	"asfound/rubrics/limit"
	"asfound/rubrics/say"
)

// gradeNumber gives the number of a grade word of the rubric files.
var gradeNumber = map[string]int{"failed": 0, "bad": 1, "worn": 2, "sound": 3, "as_new": 4}

// judged is one check with what was found at it.
type judged struct {
	check   *Check
	finding Finding
	applies bool
	grade   *int
	limit   *limit.Result
	problem error // why a measured value could not be judged
	chance  float64
	// held is why it is not to be tried now: a pattern and the check that stands against it.
	held, by string
}

// walk judges every check of the rubric in walking order; what the limits say is
// in English.
func walk(r *Rubric, f *File) []judged { return voice{}.walk(r, f) }

func (v voice) walk(r *Rubric, f *File) []judged {
	var out []judged
	facts := told(r, f.Facts)
	for s := range r.Sections {
		for c := range r.Sections[s].Checks {
			check := &r.Sections[s].Checks[c]
			j := judged{check: check, finding: f.Findings[check.ID], applies: meets(check.When, facts)}
			j.judge(v)
			out = append(out, j)
		}
	}
	hold(r, out)
	return out
}

// hold marks the checks that are not to be tried: nothing runs once a danger
// point failed or is bad, or while one that comes earlier was not even answered;
// and nothing is loaded before every danger point that comes earlier was checked.
func hold(r *Rubric, walked []judged) {
	i, stop, open, unseen := 0, "", "", ""
	for s := range r.Sections {
		state := r.Sections[s].State
		stopBefore, openBefore, unseenBefore := stop, open, unseen
		for range r.Sections[s].Checks {
			j := &walked[i]
			i++
			if !j.applies {
				continue
			}
			switch {
			case (state == "unloaded" || state == "loaded") && stopBefore != "":
				j.held, j.by = say.Key("Not to be run or loaded: \"%s\" was found bad."), stopBefore
			case state == "unloaded" && unseenBefore != "":
				j.held, j.by = say.Key("Not to be run yet: \"%s\" was not looked at, nor said why not."), unseenBefore
			case state == "loaded" && openBefore != "":
				j.held, j.by = say.Key("Not to be loaded: \"%s\" was not checked."), openBefore
			}
			if j.check.Hazard == "danger" {
				if j.grade != nil && *j.grade <= 1 && stop == "" {
					stop = j.check.Title
				}
				if j.grade == nil && open == "" {
					open = j.check.Title
				}
				if j.grade == nil && j.finding.Skipped == "" && unseen == "" {
					unseen = j.check.Title
				}
			}
		}
	}
}

// held says why a check is not to be tried now, "" where it may be.
func (v voice) held(j *judged) string {
	if j.held == "" {
		return ""
	}
	return v.Pattern(j.held, j.by)
}

// told keeps the answers that the rubric offers. Any other, of an older rubric or
// a slip, must not hide a check.
func told(r *Rubric, facts map[string]string) map[string]string {
	out := map[string]string{}
	for _, fact := range r.Facts {
		for _, o := range fact.Options {
			if answer, ok := facts[fact.ID]; ok && answer == o.ID {
				out[fact.ID] = answer
			}
		}
	}
	return out
}

// meets holds the facts against a condition; a fact not yet told hides nothing.
func meets(when map[string][]string, facts map[string]string) bool {
	for fact, options := range when {
		told, ok := facts[fact]
		if !ok {
			continue
		}
		fits := false
		for _, o := range options {
			fits = fits || o == told
		}
		if !fits {
			return false
		}
	}
	return true
}

// judge holds a measured value against its limit. The measured value proposes
// the grade; a person may grade otherwise, but never better than a limit that
// is passed.
func (j *judged) judge(v voice) {
	j.grade = j.finding.Grade
	l := j.check.Limit
	if l == nil || (len(j.finding.Measured) == 0 && len(j.finding.Words) == 0) {
		return
	}
	res, err := limit.ComputeIn(v.Voice, l.Name, given(l, &j.finding))
	if err != nil {
		j.problem = err
		return
	}
	j.limit = &res
	word := map[limit.Finding]string{limit.Within: l.Within, limit.Watch: l.Watch, limit.Beyond: l.Beyond}[res.Finding]
	if word == "" {
		return
	}
	proposed := gradeNumber[word]
	if j.grade == nil || (res.Finding == limit.Beyond && proposed < *j.grade) {
		j.grade = &proposed
	}
}

// given writes the measured quantities as the limit takes them.
func given(l *Limit, f *Finding) map[string]string {
	out := map[string]string{}
	for k, v := range l.Fixed {
		out[k] = v
	}
	for k, q := range f.Measured {
		out[k] = quantityText(q)
	}
	for k, w := range f.Words {
		out[k] = w
	}
	if f.Maker != nil {
		out["maker"] = quantityText(*f.Maker)
	}
	return out
}

func quantityText(q Quantity) string {
	s := strconv.FormatFloat(q.N, 'f', -1, 64)
	if q.Unit != "" {
		s += " " + q.Unit
	}
	return s
}

// checked tells whether the point was judged.
func (j *judged) checked() bool { return j.applies && j.grade != nil }

// open tells whether the point applies and was not judged.
func (j *judged) open() bool { return j.applies && j.grade == nil }

// remedy is what puts the finding right: a remedy id, "scrap" or "".
func (j *judged) remedy() string {
	if !j.checked() {
		return ""
	}
	r := j.check.Remedies
	switch *j.grade {
	case 2:
		return r.Worn
	case 1:
		return first(r.Bad, r.Failed, r.Worn)
	case 0:
		return first(r.Failed, r.Bad, r.Worn)
	}
	return ""
}

func first(words ...string) string {
	for _, w := range words {
		if w != "" {
			return w
		}
	}
	return ""
}
