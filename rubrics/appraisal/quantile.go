package appraisal

import (
	"sync"

	"asfound/rubrics/kernel"
)

// cells is the resolution of an inverse distribution table.
const cells = 1024

// quantiles is an inverse distribution function as a table over equal
// probability, read with linear interpolation.
type quantiles [cells + 1]float64

func (q *quantiles) at(u float64) float64 {
	x := u * cells
	i := int(x)
	if i >= cells {
		i = cells - 1
	}
	return q[i] + float64((x-float64(i))*(q[i+1]-q[i]))
}

// tabulate builds the table of a distribution given points and the mass between
// neighbours. The outer cells end where their mean is right, so that a long
// tail neither vanishes nor counts double.
func tabulate(points, mass []float64) *quantiles {
	total := 0.0
	for _, m := range mass {
		total += m
	}
	var q quantiles
	at, below := 0, 0.0
	for k := 1; k < cells; k++ {
		want := float64(total * (float64(k) / cells))
		for below+mass[at] < want && at < len(mass)-1 {
			below += mass[at]
			at++
		}
		part := 0.5
		if mass[at] > 0 {
			part = (want - below) / mass[at]
		}
		q[k] = points[at] + float64(part*(points[at+1]-points[at]))
	}
	q[0] = outer(points, mass, q[1], total/cells, false)
	q[cells] = outer(points, mass, q[cells-1], total/cells, true)
	return &q
}

// outer places the end of an outer cell so that the cell's mean is right.
func outer(points, mass []float64, inner, want float64, upper bool) float64 {
	sum, got := 0.0, 0.0
	n := len(mass)
	for j := range n {
		i := j
		if upper {
			i = n - 1 - j
		}
		m := min(mass[i], want-got)
		if m <= 0 {
			break
		}
		sum += float64(m * ((points[i] + points[i+1]) / 2))
		got += m
	}
	if got == 0 {
		return inner
	}
	end := 2*(sum/got) - inner
	return min(max(end, points[0]), points[n])
}

// normalTable is the standard normal distribution.
var normalTable = sync.OnceValue(func() *quantiles {
	const steps, reach = 4096, 8.0
	points := make([]float64, steps+1)
	mass := make([]float64, steps)
	for i := range points {
		points[i] = -reach + float64(2*reach*(float64(i)/steps))
	}
	for i := range mass {
		mid := (points[i] + points[i+1]) / 2
		mass[i] = kernel.Exp(-float64(mid*mid) / 2)
	}
	return tabulate(points, mass)
})
