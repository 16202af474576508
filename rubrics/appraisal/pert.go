package appraisal

import (
	"math"
	"sync"

	"asfound/rubrics/kernel"
)

// pert is a three-point variable in cents with the classic moments: mean
// (a+4m+b)/6 and standard deviation (b-a)/6 (Malcolm, Roseboom, Clark, Fazar,
// Operations Research 7, 1959). It is drawn from the beta distribution with
// exactly these two moments, so what is printed is what is drawn.
type pert struct {
	low, high float64
	mean, sd  float64
}

func newPert(low, likely, high float64) pert {
	p := pert{low: low, high: high}
	p.mean = (low + 4*likely + high) / 6
	p.sd = (high - low) / 6
	return p
}

// at is the u-quantile.
func (p *pert) at(u float64) float64 {
	shape := p.shape()
	if shape == fixedShape {
		return p.low
	}
	return p.low + float64((p.high-p.low)*betaTables.table(shape).at(u))
}

// tables keeps beta tables by their mean, since a recompute needs those of the
// one before. A kept table equals a fresh one, so nothing depends on what is kept.
type tables struct {
	sync.Mutex
	by map[float64]*quantiles
}

const mostTables = 256

var betaTables = tables{by: map[float64]*quantiles{}}

func (k *tables) table(mean float64) *quantiles {
	k.Lock()
	defer k.Unlock()
	q := k.by[mean]
	if q == nil {
		if len(k.by) >= mostTables {
			clear(k.by)
		}
		q = betaTable(mean)
		k.by[mean] = q
	}
	return q
}

// betaSteps is the grid of a beta table.
const betaSteps = 512

// betaGrid is what all beta tables share: x = sin^2 t at the grid's points, and
// the logarithms of sin t and cos t between them.
type betaGrid struct {
	points         []float64
	logSin, logCos []float64
}

var grid = sync.OnceValue(func() betaGrid {
	g := betaGrid{make([]float64, betaSteps+1), make([]float64, betaSteps), make([]float64, betaSteps)}
	for i := range g.points {
		s := sine(float64(i) / betaSteps)
		g.points[i] = float64(s * s)
	}
	for i := range betaSteps {
		t := (float64(i) + 0.5) / betaSteps
		g.logSin[i], g.logCos[i] = kernel.Log(sine(t)), kernel.Log(sine(1-t))
	}
	return g
})

// betaTable is the beta distribution on [0, 1] with the given mean (1/6 to 5/6)
// and standard deviation 1/6. Substituting x = sin^2 t keeps its density bounded
// where a shape parameter is below one.
func betaTable(mean float64) *quantiles {
	nu := 36*float64(mean*(1-mean)) - 1
	return betaOf(float64(mean*nu), float64((1-mean)*nu))
}

func betaOf(alpha, beta float64) *quantiles {
	g := grid()
	var mass [betaSteps]float64
	for i := range mass {
		mass[i] = kernel.Exp(float64((2*alpha-1)*g.logSin[i]) + float64((2*beta-1)*g.logCos[i]))
	}
	return tabulate(g.points, mass[:])
}

// sine is sin(pi/2 * t) for t in [0, 1] by its series.
func sine(t float64) float64 {
	x := float64(t * (math.Pi / 2))
	x2 := float64(x * x)
	term, sum := x, x
	for k := 2; k < 26; k += 2 {
		term = -float64(term*x2) / float64(k*(k+1))
		sum += term
	}
	return sum
}
