package appraisal

import (
	"strings"

	"asfound/rubrics/say"
)

// holding is a listing held against the buyer's shop. Site and needs are never
// nil; what is not told is empty.
type holding struct {
	voice
	rubric  *Rubric
	file    *File
	facts   map[string]string
	site    *Site
	needs   *Needs
	machine machine
}

// newHolding is nil where the rubric does not tell the size of its kind.
func newHolding(r *Rubric, f *File) *holding {
	if r.Body == nil {
		return nil
	}
	h := &holding{rubric: r, file: f, facts: told(r, f.Facts), site: f.Shop.Site, needs: r.Needs, machine: newMachine(r, f)}
	if h.site == nil {
		h.site = &Site{}
	}
	if h.needs == nil {
		h.needs = &Needs{}
	}
	return h
}

func (h *holding) electrician() string { return h.T("A licensed electrician decides.") }

// fit holds the listing against the shop, point by point.
func (h *holding) fit() *Fit {
	f := &Fit{Points: []FitPoint{}, Cautions: []string{}}
	add := func(p FitPoint, worst standing) {
		if line := h.line(p.ID); line != nil && (worst == work || worst == lacks) {
			p.Finding, p.Landing = WithWork, line.ID
			p.Text += " " + h.F("It brings the landing cost %q.", line.Title)
		}
		f.Points = append(f.Points, p)
	}
	add(h.ceiling())
	add(h.door())
	// What is no lift may stand on another floor than concrete, if that bears it.
	if h.needs.Slab != nil && (h.lifts() || h.site.Floor == "" || h.site.Floor == "concrete") {
		add(h.slab())
	}
	add(h.floor())
	if h.machine.power.known() || h.machine.amps > 0 || h.line("circuit") != nil {
		add(h.circuit())
		if h.machine.phases == 3 || h.line("converter") != nil {
			add(h.converter())
		}
		if h.machine.volts >= highVolts || h.line("transformer") != nil {
			add(h.transformer())
		}
		if h.site.Generator != nil {
			add(h.generator())
		}
		f.Cautions = append(f.Cautions, h.T("Everything electrical: a licensed electrician decides, by the code in force and its local amendments. No cover comes off with the power on."))
	}
	if h.needs.Air != nil {
		add(h.air())
	}
	if h.needs.Arms > 0 {
		add(h.arms())
	}
	if h.needs.Slab != nil {
		f.Cautions = append(f.Cautions, h.T("The maker's manual and foundation drawing come first; where they differ from what stands here, they hold. Asphalt, pavers, post-tensioned or heated slabs need an engineer."))
	}
	if h.lifts() {
		f.Cautions = append(f.Cautions, h.T("A lift is installed to its manual, then looked at by a qualified lift inspector before a vehicle is raised. Local code and permits apply."))
	}
	f.Cautions = append(f.Cautions, h.T("Measure this one and your own shop: figures marked as common practice or from memory can only warn."))
	f.Finding = Fits
	for i := range f.Points {
		f.Finding = worse(f.Finding, f.Points[i].Finding)
	}
	f.Sentence = h.fitSentence(f)
	return f
}

// lifts tells whether the kind raises vehicles.
func (h *holding) lifts() bool { return h.needs.Rise > 0 || h.needs.Arms > 0 }

// line is the landing line that a point of fit decides about, nil for none.
func (h *holding) line(point string) *Landing {
	for i := range h.rubric.Landing {
		if l := &h.rubric.Landing[i]; l.Fit == point && meets(l.When, h.facts) {
			return l
		}
	}
	return nil
}

// severity of the findings: what does not fit outweighs what is not known, and
// that outweighs what can be made to fit.
var severity = map[string]int{Fits: 0, WithWork: 1, NotKnown: 2, DoesNot: 3}

func worse(a, b string) string {
	if severity[b] > severity[a] {
		return b
	}
	return a
}

func (v voice) fitSentence(f *Fit) string {
	by := map[string][]string{}
	for i := range f.Points {
		p := &f.Points[i]
		by[p.Finding] = append(by[p.Finding], lowerFirst(p.Title))
	}
	var parts []string
	for _, part := range []struct{ finding, text string }{
		{DoesNot, say.Key("It does not fit your shop: %s.")}, {WithWork, say.Key("Fits with work: %s.")}, {NotKnown, say.Key("Not known yet: %s.")},
	} {
		if list := by[part.finding]; len(list) > 0 {
			parts = append(parts, v.Pattern(part.text, v.List(list)))
		}
	}
	if len(parts) == 0 {
		return v.F("By what was told it fits your shop as it stands: %s.", v.List(by[Fits]))
	}
	if list := by[Fits]; len(list) > 0 {
		parts = append(parts, v.F("Fits as it is: %s.", v.List(list)))
	}
	return strings.Join(parts, " ")
}
