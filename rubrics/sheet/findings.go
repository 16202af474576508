package sheet

import (
	"slices"
	"strconv"

	"asfound/rubrics/appraisal"
)

func (s *sheets) findings() Table {
	v := s.v
	t := Table{Name: "findings", Title: v.T("Findings"), Columns: []Column{
		{v.T("Listing"), Text}, {v.T("Section"), Text}, {v.T("Point"), Text}, {v.T("Hazard"), Text}, {v.T("Grade, 4 to 0"), Number}, {v.T("Grade"), Text}, {v.T("Why not checked"), Text},
		{v.T("Measured"), Text}, {v.T("Value"), Number}, {v.T("Limit"), Number}, {v.T("Unit"), Text}, {v.T("Against the limit"), Text}, {v.T("Source of the limit"), Text}, {v.T("Standing of the source"), Text},
		{v.T("Note"), Text}, {v.T("Photos"), Number},
	}}
	for i := range s.all {
		a := &s.all[i]
		at := 0
		for si := range a.rubric.Sections {
			section := &a.rubric.Sections[si]
			for ci := range section.Checks {
				check, r := &section.Checks[ci], &a.result.Checks[at]
				at++
				if r.Applies {
					t.Rows = append(t.Rows, s.finding(a, section.Title, check, r))
				}
			}
		}
	}
	return t
}

func (s *sheets) finding(a *appraised, section string, check *appraisal.Check, r *appraisal.CheckResult) []Cell {
	f := a.file.Findings[check.ID]
	row := []Cell{a.file.Listing.Title, section, check.Title, s.v.Label(check.Hazard), nil, nil, s.choice(appraisal.Reasons, r.Skipped), words(measured(&f))}
	if r.Grade != nil {
		row[4], row[5] = float64(*r.Grade), s.v.Label(appraisal.GradeWords[*r.Grade])
	}
	if l := r.Limit; l != nil {
		limit := Cell(nil)
		if l.Limit != nil {
			limit = *l.Limit
		}
		row = append(row, l.Value, limit, words(l.Unit), s.v.Label(string(l.Finding)), l.Source, s.v.Label(string(l.Status)))
	} else {
		row = append(row, nil, nil, nil, nil, nil, nil)
	}
	return append(row, words(f.Note), float64(len(f.Photos)))
}

// measured writes what was entered: measured=0.352 in; nominal=0.375 in.
func measured(f *appraisal.Finding) string {
	var out []string
	for name, q := range f.Measured {
		text := name + "=" + strconv.FormatFloat(q.N, 'f', -1, 64)
		if q.Unit != "" {
			text += " " + q.Unit
		}
		out = append(out, text)
	}
	for name, w := range f.Words {
		out = append(out, name+"="+w)
	}
	slices.Sort(out)
	return joined(out)
}

func (s *sheets) photos() Table {
	v := s.v
	t := Table{Name: "photos", Title: v.T("Photos"), Columns: []Column{{v.T("Listing"), Text}, {v.T("Point"), Text}, {v.T("Taken"), Text}, {v.T("SHA-256 of the original"), Text}}}
	for i := range s.all {
		a := &s.all[i]
		for _, x := range a.file.Listing.Photos {
			t.Rows = append(t.Rows, []Cell{a.file.Listing.Title, nil, words(x.At), x.Hash})
		}
		for si := range a.rubric.Sections {
			for ci := range a.rubric.Sections[si].Checks {
				check := &a.rubric.Sections[si].Checks[ci]
				for _, x := range a.file.Findings[check.ID].Photos {
					t.Rows = append(t.Rows, []Cell{a.file.Listing.Title, check.Title, words(x.At), x.Hash})
				}
			}
		}
	}
	return t
}
