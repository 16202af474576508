package document

// scope tells what was checked and what was not, with the reason.
func (p *paper) scope() []Block {
	v := p.v
	t := Table{Title: v.T("Each point with its result"), Columns: []Column{{Title: v.T("Point"), Share: 62}, {Title: v.T("Result"), Share: 38}}}
	var open []string
	for s := range p.repair.Rubric.Sections {
		section := &p.repair.Rubric.Sections[s]
		first := true
		for c := range section.Checks {
			check := &section.Checks[c]
			r := p.result[check.ID]
			if r == nil || !r.Applies || p.left(check.ID) {
				continue
			}
			if first {
				t.Rows, first = append(t.Rows, Row{Cells: []string{plain(section.Title), ""}, Kind: "group"}), false
			}
			said := v.F("not checked: %s", skipWord(v, r.Skipped))
			if r.Grade != nil {
				said = gradeWord(v, *r.Grade)
				if l := r.Limit; l != nil && l.Limit != nil {
					said = v.F("%s: %s, limit %s", said, computed(v, l.Value, l.Unit, p.ask.Units), computed(v, *l.Limit, l.Unit, p.ask.Units))
				}
			} else {
				open = append(open, v.F("%s: %s", plain(check.Title), skipWord(v, r.Skipped)))
			}
			t.Rows = append(t.Rows, Row{Cells: []string{plain(check.Title), said}})
		}
	}
	out := []Block{heading(2, v.T("What was checked and what was not"))}
	if len(open) > 0 {
		out = append(out, heading(3, v.T("Not checked")), list(open))
	}
	if len(t.Rows) > 0 {
		out = append(out, tableOf(t))
	}
	return out
}
