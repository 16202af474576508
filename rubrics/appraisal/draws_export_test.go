package appraisal

import "math"

// Fair is the fair offer of a file before rounding, and its standard error, with
// the luck of a turn; turn 0 is the judgement's own.
func (jd *Judge) Fair(t interface {
	Helper()
	Fatal(...any)
}, f *File, turn uint64) (fair, drawing float64, known bool) {
	m := newModel(t, jd.rubrics[f.Rubric.ID], jd.parts, f)
	m.turn = turn
	j := m.draw()
	defer j.release()
	q := below(f.Shop.Odds.Fair)
	return j.cells.nth(j.breakEven, place(q, Draws), j.room), j.standardError(q), m.known
}

// Mean is the break-even price that the draws come to, with its error by chance,
// and what is expected of it without them.
func (jd *Judge) Mean(t interface {
	Helper()
	Fatal(...any)
}, f *File) (drawn, drawing, expected float64) {
	m := newModel(t, jd.rubrics[f.Rubric.ID], jd.parts, f)
	if !m.known || m.scrap {
		return 0, 0, 0
	}
	j := m.draw()
	defer j.release()
	o := newOutlook(m, j)
	return average(j.breakEven), spread(j.breakEven) / math.Sqrt(Draws), o.all(&o.open, &o.first).worth
}

// PlanGain is the gain a plan tells at a price so much above the mean of the
// draws, what it is by the draws of the points it names, and their error.
func (jd *Judge) PlanGain(t interface {
	Helper()
	Fatal(...any)
}, f *File, minutes, above float64) (told, drawn, drawing float64) {
	m := newModel(t, jd.rubrics[f.Rubric.ID], jd.parts, f)
	if !m.known {
		return 0, 0, 0
	}
	j := m.draw()
	defer j.release()
	o := newOutlook(m, j)
	price := o.all(&o.open, &o.first).worth + above
	p := plan(m, o, price, minutes)
	v, next := newView(len(o.cost)), newView(len(o.cost))
	v.set(&o.open)
	found := map[int][]int{}
	for s := range m.suspects {
		for _, x := range p.Points {
			if x.Check == m.suspects[s].j.check.ID {
				o.without(&v, s, &next)
				v.set(&next)
				found[s] = m.found(s, j.class)
			}
		}
	}
	ahead, informed := make([]float64, Draws), make([]float64, Draws)
	for i := range ahead {
		g, ruined := o.first, false
		for s := range m.suspects {
			if at := found[s]; at != nil {
				g = o.with(&g, s, at[i])
				ruined = ruined || m.suspects[s].outcome[at[i]].scrap
			}
		}
		ahead[i] = o.ruined - price
		if b := o.all(&v, &g); !ruined {
			ahead[i] = b.worth/b.chance - price
		}
		informed[i] = max(ahead[i], 0)
	}
	drawn = (average(informed) - max(average(ahead), 0)) * m.taxed()
	// Where buying blind pays, the gain is what deciding saves, and so is its error;
	// at a price at the mean either may be the one.
	saved := make([]float64, Draws)
	for i := range saved {
		saved[i] = informed[i] - ahead[i]
	}
	return float64(p.Gain), drawn, max(spread(informed), spread(saved)) / math.Sqrt(Draws) * m.taxed()
}
