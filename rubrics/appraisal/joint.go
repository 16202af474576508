package appraisal

import (
	"math"
	"slices"

	"asfound/rubrics/kernel"
)

// joint is everything drawn together, once, for one appraisal.
type joint struct {
	breakEven            []float64 // price at which a draw comes out at zero
	repair, hidden       []float64
	landing              []float64
	worth                []float64 // in place
	meanRepair, meanHide float64
	meanLand, meanWorth  float64
}

// model is what the draws need.
type model struct {
	rubric   *Rubric
	file     *File
	pricing  *pricing
	tasks    []task
	landing  []task
	scrap    bool
	care     care
	suspects []suspect
	belief   belief
	known    bool // worth is known
	kept     float64
}

// extra is a remedy or preparation that only a hidden defect would need.
type extra struct {
	task task
	drew int // the draw in which it was counted last
}

// draw runs the model. Each unchecked point is bad with the probability of the
// class drawn; its remedy and preparations enter once a draw, however many
// points need them, and not at all if the findings already need them.
func (m *model) draw() *joint {
	out := &joint{
		breakEven: make([]float64, Draws), repair: make([]float64, Draws), hidden: make([]float64, Draws),
		landing: make([]float64, Draws), worth: make([]float64, Draws),
	}
	for i := range m.tasks {
		m.tasks[i].pert.ready()
	}
	for i := range m.landing {
		m.landing[i].pert.ready()
	}
	normal := normalTable()
	extras, needed := m.extras()
	scrapValue, haul := m.scrapTasks()
	worthLuck, careLuck, overLuck := newStream("worth"), newStream("care"), newStream("overrun")
	failLuck := newStream("failed")
	over := m.file.Shop.Overrun
	mean, sd := float64(over.Mean)/10_000, float64(over.SD)/10_000
	logVar := kernel.Log(1 + float64(sd*sd)/float64(mean*mean))
	logSD, logMu := math.Sqrt(logVar), kernel.Log(mean)-logVar/2
	tax := float64(m.file.Shop.Tax) / 10_000
	fees := float64(m.file.Shop.Fees)
	bad := make([]int, 0, len(m.suspects))
	for i := range Draws {
		factor := kernel.Exp(logMu + float64(logSD*normal.at(overLuck.at(i))))
		repair := 0.0
		for t := range m.tasks {
			repair += m.tasks[t].draw(i)
		}
		repair *= factor
		land := 0.0
		for t := range m.landing {
			land += m.landing[t].draw(i)
		}
		value := 0.0
		if m.known {
			value = kernel.Exp(m.belief.mu+float64(m.belief.sd*normal.at(worthLuck.at(i)))) + m.kept
		}
		left := scrapValue.draw(i) - haul.draw(i)
		class := 0
		if u := careLuck.at(i); u >= m.care.post[0] {
			class = 1
			if u >= m.care.post[0]+m.care.post[1] {
				class = 2
			}
		}
		hidden, ruined := 0.0, false
		bad = bad[:0]
		for s := range m.suspects {
			p := &m.suspects[s]
			if p.luck.at(i) >= p.odds[class] {
				continue
			}
			bad = append(bad, s)
			id := p.bad
			if failLuck.at(i*len(m.suspects)+s) < m.rubric.Care.Failed {
				id = p.failed
			}
			own := 0.0
			if id == "scrap" {
				ruined = true
				own = max(value-left-repair, 0)
			} else {
				for _, e := range needed[id] {
					x := &extras[e]
					if x.drew != i {
						x.drew = i
						c := float64(x.task.draw(i) * factor)
						hidden += c
						own += c
					}
				}
			}
			p.total += own
		}
		switch {
		case m.scrap && m.known:
			// A finding already ruled repair out: what is left is its material.
			repair, hidden = value-left, 0
		case m.scrap:
			repair, hidden = haul.draw(i), 0
		case ruined && m.known:
			hidden = max(value-left-repair, 0)
		case ruined:
			hidden += haul.draw(i)
		}
		net := value - fees - land - repair - hidden
		out.breakEven[i] = net / (1 + tax)
		for _, s := range bad {
			m.suspects[s].when.sum += out.breakEven[i]
			m.suspects[s].when.n++
		}
		out.repair[i], out.hidden[i], out.landing[i], out.worth[i] = repair, hidden, land, value
	}
	out.meanRepair, out.meanHide = average(out.repair), average(out.hidden)
	out.meanLand, out.meanWorth = average(out.landing), average(out.worth)
	return out
}

// extras lists every remedy and preparation that a suspect might need beyond
// the findings, and by remedy id which of them it needs.
func (m *model) extras() ([]extra, map[string][]int) {
	have := map[string]bool{}
	for _, t := range m.tasks {
		have[t.line.Kind+":"+t.line.ID] = true
	}
	var list []extra
	index := map[string]int{}
	add := func(kind, id string) (int, bool) {
		key := kind + ":" + id
		if have[key] {
			return 0, false
		}
		if at, ok := index[key]; ok {
			return at, true
		}
		t := task{}
		if kind == "preparation" {
			t = m.pricing.preparationTask(id, nil)
		} else {
			t = m.pricing.remedyTask(id, nil)
		}
		t.pert.ready()
		list = append(list, extra{task: t, drew: -1})
		index[key] = len(list) - 1
		return len(list) - 1, true
	}
	needed := map[string][]int{}
	for _, s := range m.suspects {
		for _, id := range []string{s.bad, s.failed} {
			r := m.pricing.remedy[id]
			if r == nil || needed[id] != nil {
				continue
			}
			needed[id] = []int{}
			for _, p := range m.pricing.needs(m.pricing.way(r)) {
				if at, ok := add("preparation", p); ok {
					needed[id] = append(needed[id], at)
				}
			}
			if at, ok := add("remedy", id); ok {
				needed[id] = append(needed[id], at)
			}
		}
	}
	return list, needed
}

func (m *model) scrapTasks() (value, haul task) {
	value = finish(Line{ID: "value", Kind: "scrap", Cost: m.rubric.Scrap.Value})
	haul = finish(Line{ID: "haul", Kind: "scrap", Cost: m.rubric.Scrap.Haul})
	value.pert.ready()
	haul.pert.ready()
	return value, haul
}

func average(x []float64) float64 {
	s := 0.0
	for _, v := range x {
		s += v
	}
	return s / float64(len(x))
}

// spread is the standard deviation over the draws.
func spread(x []float64) float64 {
	m, s := average(x), 0.0
	for _, v := range x {
		s += float64((v - m) * (v - m))
	}
	return math.Sqrt(s / float64(len(x)))
}

// ordered returns a sorted copy.
func ordered(x []float64) []float64 {
	s := slices.Clone(x)
	slices.Sort(s)
	return s
}

// share is the q-quantile of sorted draws.
func share(sorted []float64, q float64) float64 {
	return sorted[min(int(q*float64(len(sorted))), len(sorted)-1)]
}
