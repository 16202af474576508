package rubrics

import (
	"fmt"
	"math"
	"strings"

	"asfound/rubrics/appraisal"
)

// Report is what a rubric holds, for the person who writes it.
type Report struct {
	ID      string  `json:"id"`
	Kind    string  `json:"kind"`
	Version int     `json:"version"`
	Checks  int     `json:"checks"`
	Danger  int     `json:"danger"`
	Minutes float64 `json:"minutes"`
	// Limits counts the checks that are measured.
	Limits int `json:"limits"`
	// Grade is the school grade that reads its checks with ease (see ReadingGrade).
	Grade    float64         `json:"grade"`
	Sections []SectionReport `json:"sections"`
	// WithoutRemedy lists check: grade for every worn, bad or failed grade that
	// is offered and leads to no remedy.
	WithoutRemedy []string `json:"without_remedy"`
	// WithoutPrice lists remedy: way for every way that costs neither parts nor time.
	WithoutPrice []string `json:"without_price"`
	// Unused lists remedies and preparations that nothing refers to.
	Unused []string `json:"unused"`
}

// SectionReport sums one section; the weights are what it counts for.
type SectionReport struct {
	ID        string  `json:"id"`
	Title     string  `json:"title"`
	State     string  `json:"state"`
	Checks    int     `json:"checks"`
	Danger    int     `json:"danger"`
	Safety    int     `json:"safety"`
	Condition int     `json:"condition"`
	Minutes   float64 `json:"minutes"`
}

// Check reads a rubric against the embedded price book and limits and reports
// what it holds. The error is Problems where the file is refused.
func Check(name string, src []byte) (Report, error) {
	o, err := embedded()
	if err != nil {
		return Report{}, err
	}
	r, err := Decode(name, src, o)
	if err != nil {
		return Report{}, err
	}
	return Describe(&r, o.Parts), nil
}

// Describe reports what a rubric holds; parts is the price book its ways are priced by.
func Describe(r *appraisal.Rubric, parts []appraisal.Part) Report {
	out := Report{
		ID: r.ID, Kind: r.Kind, Version: r.Version, Sections: []SectionReport{},
		WithoutRemedy: []string{}, WithoutPrice: []string{}, Unused: []string{},
	}
	used := map[string]bool{}
	for i := range r.Sections {
		s := &r.Sections[i]
		row := SectionReport{ID: s.ID, Title: s.Title, State: s.State, Checks: len(s.Checks)}
		for k := range s.Checks {
			c := &s.Checks[k]
			row.Safety += c.Weight.Safety
			row.Condition += c.Weight.Condition
			row.Minutes += c.Minutes
			if c.Limit != nil {
				out.Limits++
			}
			if c.Hazard == "danger" {
				row.Danger++
			}
			for _, word := range appraisal.GradeOrder[2:] {
				used[appraisal.RemedyOf(c.Remedies, word)] = true
				if appraisal.GradeText(c.Grades, word) != "" && !leadsOn(c.Remedies, word) {
					out.WithoutRemedy = append(out.WithoutRemedy, c.ID+": "+word)
				}
			}
		}
		out.Checks += row.Checks
		out.Danger += row.Danger
		out.Minutes += row.Minutes
		out.Sections = append(out.Sections, row)
	}
	out.Grade = math.Round(readingGrade(r)*10) / 10
	out.WithoutPrice = append(out.WithoutPrice, unpriced(r, parts)...)
	out.Unused = append(out.Unused, unused(r, used)...)
	return out
}

// leadsOn tells whether a grade leads to a remedy; bad and failed fall back on
// each other and on worn, as the estimate does.
func leadsOn(r appraisal.Remedies, word string) bool {
	if word == "worn" {
		return r.Worn != ""
	}
	return r.Worn+r.Bad+r.Failed != ""
}

func unpriced(r *appraisal.Rubric, parts []appraisal.Part) (out []string) {
	price := map[string]appraisal.Money{}
	for _, p := range parts {
		price[p.ID] = p.Price.High
	}
	for i := range r.Remedies {
		for k := range r.Remedies[i].Ways {
			w := &r.Remedies[i].Ways[k]
			costs := w.Hours.High > 0 || w.Make != nil
			for _, u := range w.Parts {
				costs = costs || price[u.Part] > 0
			}
			if !costs {
				out = append(out, r.Remedies[i].ID+": "+w.ID)
			}
		}
	}
	return out
}

func unused(r *appraisal.Rubric, remedies map[string]bool) (out []string) {
	needed := map[string]bool{}
	for i := range r.Remedies {
		if !remedies[r.Remedies[i].ID] {
			out = append(out, r.Remedies[i].ID)
		}
		for k := range r.Remedies[i].Ways {
			for _, p := range r.Remedies[i].Ways[k].Preparations {
				needed[p] = true
			}
		}
	}
	for i := range r.Preparations {
		for _, p := range r.Preparations[i].Needs {
			needed[p] = true
		}
	}
	for i := range r.Preparations {
		if !needed[r.Preparations[i].ID] {
			out = append(out, r.Preparations[i].ID)
		}
	}
	return out
}

// String lists the report for a terminal.
func (r Report) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s (%s, version %d): %d checks, %d of them danger, %d measured, %g minutes, read in school grade %g\n",
		r.ID, r.Kind, r.Version, r.Checks, r.Danger, r.Limits, r.Minutes, r.Grade)
	for _, s := range r.Sections {
		fmt.Fprintf(&b, "  %-11s %-40s %3d checks, %2d danger, safety %3d, condition %3d, %3g minutes\n", s.State, s.Title, s.Checks, s.Danger, s.Safety, s.Condition, s.Minutes)
	}
	for _, list := range []struct {
		title string
		items []string
	}{{"without remedy", r.WithoutRemedy}, {"without price", r.WithoutPrice}, {"unused", r.Unused}} {
		if len(list.items) > 0 {
			fmt.Fprintf(&b, "  %s: %s\n", list.title, strings.Join(list.items, ", "))
		}
	}
	return b.String()
}
