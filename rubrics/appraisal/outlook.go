package appraisal

import (
	"math/bits"
	"slices"
)

// outlook is what the draws come to on average once some of the unchecked points
// are known, by Bayes' rule over the classes of keeping. Worth, costs and the
// overrun do not hang on the answers, so their draws enter by their means alone,
// and what is left is exact: given the class, the points are independent. Reading
// it off the draws that share an answer would call their other luck knowledge,
// the more so the fewer they are.
type outlook struct {
	sound, ruined float64   // mean break-even price with nothing hidden, and as scrap
	cost          []float64 // by which each extra lowers it
	suspects      []suspect
	failed        float64
	first         answers
	open          view
}

// answers is one way in which the points asked so far may turn out.
type answers struct {
	care   [3]float64 // its probability jointly with each class
	needed []uint64   // extras, as a set
}

// view tells what the points still open hide: in each class, the expected
// break-even price if no extra were known to be needed, and by how much each
// extra would lower it if it were.
type view struct {
	whole  [3]float64
	intact [3]float64   // chance that no open point rules repair out
	free   [3][]float64 // and that none needs the extra
	loss   [3][]float64
}

func newView(extras int) view {
	var v view
	for k := range v.free {
		v.free[k], v.loss[k] = make([]float64, extras), make([]float64, extras)
	}
	return v
}

// set copies another view into this one.
func (v *view) set(from *view) {
	v.whole, v.intact = from.whole, from.intact
	for k := range v.free {
		copy(v.free[k], from.free[k])
		copy(v.loss[k], from.loss[k])
	}
}

func newOutlook(m *model, j *joint) *outlook {
	o := &outlook{suspects: m.suspects, failed: m.rubric.Care.Failed, cost: make([]float64, len(m.extras)), open: newView(len(m.extras))}
	tax, fees := m.taxed(), float64(m.file.Shop.Fees)
	for i := range Draws {
		repair := float64(j.base[i] * j.over[i])
		o.sound += j.worth[i] - repair
		if rest := j.worth[i] - repair; rest < j.left[i] {
			o.ruined += rest
		} else {
			o.ruined += j.left[i]
		}
	}
	o.sound = (o.sound/Draws - fees - j.meanLand) / tax
	o.ruined = (o.ruined/Draws - fees - j.meanLand) / tax
	over := float64(m.file.Shop.Overrun.Mean) / 10_000
	for e := range m.extras {
		o.cost[e] = float64(m.extras[e].mean*over) / tax
	}
	o.first = answers{care: m.care.post, needed: make([]uint64, (len(m.extras)+63)/64)}
	for k := range 3 {
		o.open.intact[k] = 1
		for e := range o.cost {
			o.open.free[k][e] = 1
		}
		for s := range o.suspects {
			ends, needs := o.chances(s, k)
			o.open.intact[k] *= 1 - ends
			for e := range o.cost {
				o.open.free[k][e] *= 1 - ends - needs(e)
			}
		}
	}
	o.finish(&o.open)
	return o
}

// odds are those of the outcomes of a point in a class.
func (o *outlook) odds(s, class int) [3]float64 {
	q := o.suspects[s].odds[class]
	f := float64(q * o.failed)
	return [3]float64{1 - q, q - f, f}
}

// chances that a point rules repair out, and that it needs an extra instead.
func (o *outlook) chances(s, class int) (ends float64, needs func(e int) float64) {
	odds, p := o.odds(s, class), &o.suspects[s]
	for k := 1; k < 3; k++ {
		if p.outcome[k].scrap {
			ends += odds[k]
		}
	}
	return ends, func(e int) float64 {
		sum := 0.0
		for k := 1; k < 3; k++ {
			for _, n := range p.outcome[k].needs {
				if n == e {
					sum += odds[k]
				}
			}
		}
		return sum
	}
}

// finish computes the sums of a view.
func (o *outlook) finish(v *view) {
	for k := range 3 {
		v.whole[k] = float64(v.intact[k]*o.sound) + float64((1-v.intact[k])*o.ruined)
		for e, c := range o.cost {
			v.loss[k][e] = float64(c * v.free[k][e])
			v.whole[k] -= float64(c*v.intact[k]) - v.loss[k][e]
		}
	}
}

// without is the view once point s is known too.
func (o *outlook) without(v *view, s int, out *view) {
	for k := range 3 {
		ends, needs := o.chances(s, k)
		out.intact[k] = v.intact[k] / (1 - ends)
		for e := range o.cost {
			out.free[k][e] = v.free[k][e] / (1 - ends)
		}
		for _, w := range o.suspects[s].outcome {
			for _, e := range w.needs {
				out.free[k][e] = v.free[k][e] / (1 - ends - needs(e))
			}
		}
	}
	o.finish(out)
}

// worth is the expected break-even price after some answers, in each class.
func (o *outlook) worth(v *view, g *answers) [3]float64 {
	net := v.whole
	for w, set := range g.needed {
		for ; set != 0; set &= set - 1 {
			for k := range net {
				net[k] -= v.loss[k][64*w+bits.TrailingZeros64(set)]
			}
		}
	}
	return net
}

// branch is what an outcome adds to some answers: its chance, and its expected
// break-even price times its chance.
type branch struct{ chance, worth float64 }

func (b branch) over(price float64) float64 { return max(b.worth-float64(b.chance*price), 0) }

// all is the branch of some answers with nothing more asked.
func (o *outlook) all(v *view, g *answers) branch {
	var b branch
	net := o.worth(v, g)
	for k, p := range g.care {
		b.chance += p
		b.worth += float64(p * net[k])
	}
	return b
}

// split is the branches of the outcomes of point s. The view is the one without s.
func (o *outlook) split(v *view, g *answers, s int) (out [3]branch) {
	net := o.worth(v, g)
	for k, p := range g.care {
		for n, q := range o.odds(s, k) {
			w, at := &o.suspects[s].outcome[n], net[k]
			if w.scrap {
				at = o.ruined
			}
			for _, e := range w.needs {
				if !g.needs(e) {
					at -= v.loss[k][e]
				}
			}
			p := float64(p * q)
			out[n].chance += p
			out[n].worth += float64(p * at)
		}
	}
	return out
}

func (g *answers) needs(e int) bool { return g.needed[e/64]>>(e%64)&1 != 0 }

// with is the answers and an outcome of point s.
func (o *outlook) with(g *answers, s, n int) answers {
	out := answers{needed: g.needed}
	for k := range out.care {
		out.care[k] = float64(g.care[k] * o.odds(s, k)[n])
	}
	for i, e := range o.suspects[s].outcome[n].needs {
		if i == 0 {
			out.needed = slices.Clone(g.needed)
		}
		out.needed[e/64] |= 1 << (e % 64)
	}
	return out
}
