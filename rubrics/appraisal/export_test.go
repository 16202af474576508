package appraisal

// RepairAndHidden gives every draw of what putting it right costs in all: what was
// found, and what was not checked.
func RepairAndHidden(jd *Judge, f *File) []float64 {
	r := jd.rubrics[f.Rubric.ID]
	walked := walk(r, f)
	m := &model{rubric: r, file: f, pricing: newPricing(r, jd.parts, f, &notes{})}
	var scrap []string
	m.tasks, scrap = m.pricing.repairs(walked)
	m.scrap = len(scrap) > 0
	m.care = learn(r, f, walked)
	if !m.scrap {
		m.suspects = suspects(r, walked)
	}
	j := m.draw()
	out := make([]float64, len(j.repair))
	for i := range out {
		out[i] = j.repair[i] + j.hidden[i]
	}
	return out
}
