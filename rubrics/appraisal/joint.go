package appraisal

import (
	"math"
	"sync"

	"asfound/rubrics/kernel"
)

// joint is everything drawn together, once, for one appraisal, a column a cause.
type joint struct {
	breakEven            []float64 // price at which a draw comes out at zero
	repair, hidden       []float64
	landing              []float64
	worth                []float64 // in place
	meanRepair, meanHide float64
	meanLand, meanWorth  float64

	over        []float64 // shared overrun factor
	base, extra []float64 // repair and hidden remedies before the overrun
	left, haul  []float64 // what scrapping brings, and its hauling alone
	class       []uint8   // of keeping: well kept, ordinary, neglected
	ruined      []bool    // a point not checked rules repair out

	sorted, room []float64 // to work in
	cells        cellsOf
	taken        []marks // of each extra
}

// marks is a set of draws.
type marks [(Draws + 63) / 64]uint64

// spare keeps the columns of past appraisals for the next ones.
var spare = sync.Pool{New: func() any {
	j := &joint{class: make([]uint8, Draws), ruined: make([]bool, Draws)}
	for _, c := range []*[]float64{
		&j.breakEven, &j.repair, &j.hidden, &j.landing, &j.worth, &j.over, &j.base, &j.extra, &j.left, &j.haul, &j.sorted, &j.room,
	} {
		*c = make([]float64, Draws)
	}
	return j
}}

// release hands the columns on; the joint must not be used any more.
func (j *joint) release() { spare.Put(j) }

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

	extras []extra
	turn   uint64 // 0; another number draws all anew, with other luck
}

// extra is a remedy or preparation that only a hidden defect would need.
type extra struct {
	task task
	at   [blocks]order
}

// outcome is what an answer of an unchecked point would mean: the end of the
// thing, or extras that it needs.
type outcome struct {
	scrap bool
	needs []int
}

func (m *model) luck(s stream) stream { return s.other(m.turn) }

// taxed turns what is left for the price into the price before tax.
func (m *model) taxed() float64 { return 1 + float64(m.file.Shop.Tax)/10_000 }

// overrun is the shared factor on the log scale.
func (m *model) overrun() belief {
	over := m.file.Shop.Overrun
	mean, sd := float64(over.Mean)/10_000, float64(over.SD)/10_000
	variance := kernel.Log(1 + float64(sd*sd)/float64(mean*mean))
	return belief{mu: kernel.Log(mean) - variance/2, sd: math.Sqrt(variance)}
}

// draw runs the model. Each unchecked point is bad with the probability of the
// class drawn; its remedy and preparations enter once a draw, however many
// points need them, and not at all if the findings already need them.
func (m *model) draw() *joint {
	j := spare.Get().(*joint)
	m.doubts()
	m.spreadOf(m.overrun(), "overrun", j.over)
	m.sum(m.tasks, j.base, j.room)
	m.sum(m.landing, j.landing, j.room)
	if m.known {
		m.spreadOf(m.belief, "worth", j.worth)
		for i := range j.worth {
			j.worth[i] += m.kept
		}
	} else {
		clear(j.worth)
	}
	value, haul := m.scrapTasks()
	m.column(&haul, j.haul)
	m.column(&value, j.left)
	for i := range j.left {
		j.left[i] -= j.haul[i]
		j.repair[i] = float64(j.base[i] * j.over[i])
	}
	m.classes(j)
	m.hide(j, j.class, j.extra, j.ruined, true)
	m.settle(j)
	return j
}

// spreadOf draws a log-normal cause.
func (m *model) spreadOf(b belief, name string, into []float64) {
	m.luck(newStream(name)).fill(into)
	table := b.table()
	for i, u := range into {
		into[i] = kernel.Exp(b.mu + float64(b.sd*table.at(u)))
	}
}

// column draws one task.
func (m *model) column(t *task, into []float64) {
	t.pert.ready()
	if t.pert.table != nil {
		m.luck(t.luck).fill(into)
	}
	t.pert.through(into)
}

// sum draws the total of some tasks.
func (m *model) sum(tasks []task, into, room []float64) {
	clear(into)
	for t := range tasks {
		m.column(&tasks[t], room)
		for i, v := range room {
			into[i] += v
		}
	}
}

// classes draws how the thing was kept.
func (m *model) classes(j *joint) {
	m.luck(newStream("care")).fill(j.room)
	well, ordinary := m.care.post[0], m.care.post[0]+m.care.post[1]
	for i, u := range j.room {
		j.class[i] = 0
		if u >= well {
			j.class[i] = 1
		}
		if u >= ordinary {
			j.class[i] = 2
		}
	}
}

// hide draws what the points not checked would cost, before the overrun, if the
// thing was kept as class says, and in which draws one of them rules repair out.
// Where wanted, it credits each point with what it brings.
func (m *model) hide(j *joint, class []uint8, cost []float64, ruined []bool, credit bool) {
	clear(cost)
	clear(ruined)
	for len(j.taken) < len(m.extras) {
		j.taken = append(j.taken, marks{})
	}
	for e := range m.extras {
		j.taken[e] = marks{}
	}
	for s := range m.suspects {
		p := &m.suspects[s]
		bad, failed := &p.outcome[1], &p.outcome[2]
		if !bad.scrap && !failed.scrap && len(bad.needs) == 0 && len(failed.needs) == 0 {
			continue
		}
		luck, failing := m.luck(p.luck), m.luck(p.failing)
		// No draw of the layers above is bad, so most need no closer look.
		top := int(max(p.odds[0], p.odds[1], p.odds[2])*layers) + 1
		own := 0.0
		for b := range blocks {
			o, f := luck.block(b), failing.block(b)
			for k := range layers {
				layer := o.layer(k)
				if layer > top {
					continue
				}
				i := b*layers + k
				if luck.at(i, layer) >= p.odds[class[i]] {
					continue
				}
				out := bad
				if failing.at(i, f.layer(k)) < m.rubric.Care.Failed {
					out = failed
				}
				if out.scrap {
					ruined[i] = true
					own += max(j.worth[i]-j.left[i]-j.repair[i], 0)
					continue
				}
				for _, e := range out.needs {
					if taken := &j.taken[e]; taken[i/64]>>(i%64)&1 == 0 {
						taken[i/64] |= 1 << (i % 64)
						c := m.extras[e].draw(m.turn, b, k)
						cost[i] += c
						own += float64(c * j.over[i])
					}
				}
			}
		}
		if credit {
			p.total = own
		}
	}
}

// draw is the cost of an extra in draw k of block b.
func (x *extra) draw(turn uint64, b, k int) float64 {
	if x.task.pert.table == nil {
		return x.task.pert.low
	}
	return x.task.pert.at(x.task.luck.other(turn).at(b*layers+k, x.at[b].layer(k)))
}

// settle puts the columns together.
func (m *model) settle(j *joint) {
	tax, fees := m.taxed(), float64(m.file.Shop.Fees)
	for i := range Draws {
		value, repair, hidden := j.worth[i], j.repair[i], float64(j.extra[i]*j.over[i])
		switch {
		case m.scrap && m.known:
			// A finding already ruled repair out: what is left is its material.
			repair, hidden = value-j.left[i], 0
		case m.scrap:
			repair, hidden = j.haul[i], 0
		case j.ruined[i] && m.known:
			hidden = max(value-j.left[i]-repair, 0)
		case j.ruined[i]:
			hidden += j.haul[i]
		}
		j.repair[i], j.hidden[i] = repair, hidden
		j.breakEven[i] = (value - fees - j.landing[i] - repair - hidden) / tax
	}
	j.meanRepair, j.meanHide = average(j.repair), average(j.hidden)
	j.meanLand, j.meanWorth = average(j.landing), average(j.worth)
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
			t.pert.ready()
			at = len(m.extras)
			index[key] = at
			m.extras = append(m.extras, extra{task: t, at: m.luck(t.luck).orders()})
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

func (m *model) scrapTasks() (value, haul task) {
	value = finish(Line{ID: "value", Kind: "scrap", Cost: m.rubric.Scrap.Value})
	haul = finish(Line{ID: "haul", Kind: "scrap", Cost: m.rubric.Scrap.Haul})
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
