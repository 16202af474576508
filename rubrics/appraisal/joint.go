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
	voice    voice
	rubric   *Rubric
	file     *File
	pricing  *pricing
	tasks    []task
	landing  []task
	fit      *Fit
	home     *Home
	scrap    bool
	care     care
	suspects []suspect
	belief   belief
	known    bool // worth is known
	kept     float64

	extras []extra
	turn   uint64 // 0; another number draws all anew, with other luck
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

func (m *model) scrapTasks() (value, haul task) {
	value = finish(Line{ID: "value", Kind: "scrap", Cost: m.rubric.Scrap.Value})
	haul = finish(Line{ID: haulLine, Kind: "scrap", Cost: m.rubric.Scrap.Haul})
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
