package appraisal

// RepairAndHidden gives every draw of what putting it right costs in all: what was
// found, and what was not checked.
func RepairAndHidden(jd *Judge, f *File) []float64 {
	r := jd.rubrics[f.Rubric.ID]
	walked := walk(r, f)
	m, _ := prepare(r, jd.parts, f, walked, &notes{})
	j := m.draw()
	out := make([]float64, len(j.repair))
	for i := range out {
		out[i] = j.repair[i] + j.hidden[i]
	}
	return out
}
