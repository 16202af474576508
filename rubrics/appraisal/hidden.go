package appraisal

// extra is a remedy or preparation that only a hidden defect would need.
type extra struct {
	low, span, mean float64
	drawn           []float32 // nil where the amount is fixed
}

// outcome is what an answer of an unchecked point would mean: the end of the
// thing, or extras that it needs.
type outcome struct {
	scrap bool
	needs []int
}

// doubts lists every remedy and preparation that a suspect might need beyond
// the findings, and gives each suspect its outcomes.
func (m *model) doubts() {
	have := map[string]bool{}
	for _, t := range m.tasks {
		have[t.line.Kind+":"+t.line.ID] = true
	}
	index := map[string]int{}
	add := func(out *outcome, kind, id string) {
		key := kind + ":" + id
		if have[key] {
			return
		}
		at, ok := index[key]
		if !ok {
			t := task{}
			if kind == "preparation" {
				t = m.pricing.preparationTask(id, nil)
			} else {
				t = m.pricing.remedyTask(id, nil)
			}
			at = len(m.extras)
			index[key] = at
			x := extra{low: t.pert.low, span: t.pert.high - t.pert.low, mean: t.pert.mean}
			if shape := t.pert.shape(); shape != fixedShape {
				x.drawn = columns.column(m.luck(t.luck), shape)
			}
			m.extras = append(m.extras, x)
		}
		out.needs = append(out.needs, at)
	}
	m.extras = nil
	known := map[string]outcome{"": {}, "scrap": {scrap: true}}
	for s := range m.suspects {
		p := &m.suspects[s]
		for k, id := range []string{p.bad, p.failed} {
			out, ok := known[id]
			if r := m.pricing.remedy[id]; !ok && r != nil {
				for _, prep := range m.pricing.needs(m.pricing.way(r)) {
					add(&out, "preparation", prep)
				}
				add(&out, "remedy", id)
			}
			known[id] = out
			p.outcome[1+k] = out
		}
	}
}

// hide draws what the points not checked would cost, before the overrun, if the
// thing was kept as class says, and in which draws one of them rules repair out.
// Where wanted, it credits each point with what it brings; else it does not follow
// a ruined draw any further.
func (m *model) hide(j *joint, class []uint8, cost []float64, ruined []bool, credit bool) {
	clear(cost)
	clear(ruined)
	for len(j.taken) < len(m.extras) {
		j.taken = append(j.taken, marks{})
	}
	for e := range m.extras {
		j.taken[e] = marks{}
	}
	var present [3]bool
	for _, k := range class {
		present[k] = true
	}
	doubts := make([]doubt, len(m.suspects))
	for s := range doubts {
		doubts[s] = m.doubt(&m.suspects[s], present)
	}
	// Block by block, so that what is worked on stays small.
	for b := range blocks {
		for s := range doubts {
			d, p := &doubts[s], &m.suspects[s]
			o, f := d.luck.block(b), d.failing.block(b)
			for layer := range d.top {
				k := o.draw(layer)
				i := b*layers + k
				if !d.odds[class[i]].passed(d.luck, i, layer) || (ruined[i] && !credit) {
					continue
				}
				out := &p.outcome[1]
				if d.failed.passed(d.failing, i, f.layer(k)) {
					out = &p.outcome[2]
				}
				if out.scrap {
					ruined[i] = true
					if lost := j.worth[i] - j.left[i] - j.repair[i]; lost > 0 {
						d.own += lost
					}
					continue
				}
				for _, e := range out.needs {
					if taken := &j.taken[e]; taken[i/64]>>(i%64)&1 == 0 {
						taken[i/64] |= 1 << (i % 64)
						c := m.extras[e].cost(i)
						cost[i] += c
						d.own += float64(c * j.over[i])
					}
				}
			}
		}
	}
	if credit {
		for s := range doubts {
			m.suspects[s].total = doubts[s].own
		}
	}
}

// doubt is a suspect as the draws take it.
type doubt struct {
	luck, failing stream
	odds          [3]threshold
	failed        threshold
	top           int // no draw of the layers from here on is bad
	own           float64
}

// doubt is empty where neither outcome costs anything.
func (m *model) doubt(p *suspect, present [3]bool) doubt {
	d := doubt{luck: m.luck(p.luck), failing: m.luck(p.failing), failed: newThreshold(m.rubric.Care.Failed)}
	costs := false
	for _, out := range p.outcome {
		costs = costs || out.scrap || len(out.needs) > 0
	}
	for k, q := range p.odds {
		d.odds[k] = newThreshold(q)
		if present[k] && costs {
			d.top = max(d.top, min(d.odds[k].layer+2, layers))
		}
	}
	return d
}

// cost is what an extra costs in draw i.
func (x *extra) cost(i int) float64 {
	if x.drawn == nil {
		return x.low
	}
	return x.low + float64(x.span*float64(x.drawn[i]))
}
