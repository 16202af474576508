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
	task      task
	low, span float64
	drawn     []float32 // nil where the amount is fixed
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
	m.sum(j.base, m.tasks...)
	m.sum(j.landing, m.landing...)
	if m.known {
		m.spreadOf(m.belief, "worth", j.worth)
		for i := range j.worth {
			j.worth[i] += m.kept
		}
	} else {
		clear(j.worth)
	}
	value, haul := m.scrapTasks()
	m.sum(j.haul, haul)
	m.sum(j.left, value)
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
	if b.shape != nil {
		table := b.table()
		for i, u := range columns.column(m.luck(newStream(name)), evenShape) {
			into[i] = kernel.Exp(b.mu + float64(b.sd*table.at(float64(u))))
		}
		return
	}
	for i, z := range columns.column(m.luck(newStream(name)), normalShape) {
		into[i] = kernel.Exp(b.mu + float64(b.sd*float64(z)))
	}
}

// add adds a task's amount to each draw.
func (m *model) add(t *task, into []float64) {
	shape := t.pert.shape()
	if shape == fixedShape {
		for i := range into {
			into[i] += t.pert.low
		}
		return
	}
	span := t.pert.high - t.pert.low
	for i, x := range columns.column(m.luck(t.luck), shape) {
		into[i] += t.pert.low + float64(span*float64(x))
	}
}

// sum draws the total of some tasks.
func (m *model) sum(into []float64, tasks ...task) {
	clear(into)
	for t := range tasks {
		m.add(&tasks[t], into)
	}
}

// classes draws how the thing was kept.
func (m *model) classes(j *joint) {
	well, ordinary := m.care.post[0], m.care.post[0]+m.care.post[1]
	for i, u := range columns.column(m.luck(newStream("care")), evenShape) {
		class, u := uint8(0), float64(u)
		if u >= well {
			class = 1
		}
		if u >= ordinary {
			class = 2
		}
		j.class[i] = class
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
				if !d.odds[class[i]].passed(d.luck, i, layer) {
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

// account is what the break-even price of a draw takes besides the draws.
type account struct {
	scrap     bool // a finding rules repair out
	fees, tax float64
}

func (m *model) account() account { return account{m.scrap, float64(m.file.Shop.Fees), m.taxed()} }

// price is the break-even price of draw i from its parts, where worth is known.
// What is ruined loses all down to its scrap, whatever hidden remedies would cost.
func (a *account) price(j *joint, i int, value, repair, hidden, land float64, ruined bool) float64 {
	rest := value - repair
	if a.scrap {
		rest = j.left[i]
	} else if !ruined {
		rest -= hidden
	} else if rest > j.left[i] {
		rest = j.left[i]
	}
	return (rest - a.fees - land) / a.tax
}

// settle puts the columns together.
func (m *model) settle(j *joint) {
	a := m.account()
	for i := range Draws {
		value, repair, hidden := j.worth[i], j.repair[i], float64(j.extra[i]*j.over[i])
		switch {
		case m.scrap && m.known:
			// A finding already ruled repair out: what is left is its material.
			repair, hidden = value-j.left[i], 0
		case m.scrap:
			repair, hidden = j.haul[i], 0
		case j.ruined[i] && m.known:
			if hidden = value - j.left[i] - repair; hidden < 0 {
				hidden = 0
			}
		case j.ruined[i]:
			hidden += j.haul[i]
		}
		j.repair[i], j.hidden[i] = repair, hidden
		j.breakEven[i] = (value - repair - hidden - a.fees - j.landing[i]) / a.tax
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
			at = len(m.extras)
			index[key] = at
			x := extra{task: t, low: t.pert.low, span: t.pert.high - t.pert.low}
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
