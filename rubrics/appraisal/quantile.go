package appraisal

import (
	"slices"
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

// through replaces probabilities by quantiles.
func (q *quantiles) through(u []float64) {
	for i, v := range u {
		u[i] = q.at(v)
	}
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

// cellsOf counts how many numbers fall into each of many equal cells between the
// least and the greatest, so that they can be ordered without comparing all.
type cellsOf struct {
	low, scale float64
	count      [sortCells + 1]int32
}

const sortCells = 4096

func (c *cellsOf) of(v float64) int {
	return min(int(float64((v-c.low)*c.scale)), sortCells-1)
}

// spreadOut prepares the cells of x; false where all numbers are one.
func (c *cellsOf) spreadOut(x []float64) bool {
	low, high := x[0], x[0]
	for _, v := range x {
		low, high = min(low, v), max(high, v)
	}
	c.low, c.scale = low, sortCells/(high-low)
	if !(high > low) || c.scale > 1e300 {
		return false
	}
	clear(c.count[:])
	for _, v := range x {
		c.count[c.of(v)]++
	}
	return true
}

// order sorts x into sorted, which has the same length.
func (c *cellsOf) order(x, sorted []float64) {
	if !c.spreadOut(x) {
		copy(sorted, x)
		slices.Sort(sorted)
		return
	}
	at := int32(0)
	for i, n := range c.count {
		c.count[i] = at
		at += n
	}
	for _, v := range x {
		i := c.of(v)
		sorted[c.count[i]] = v
		c.count[i]++
	}
	from := int32(0)
	for _, to := range c.count[:sortCells] {
		if to-from > 1 {
			slices.Sort(sorted[from:to])
		}
		from = to
	}
}

// nth is the number that would stand at place n if x were sorted; room is used
// to work in and is at least as long as x.
func (c *cellsOf) nth(x []float64, n int, room []float64) float64 {
	if !c.spreadOut(x) {
		copy(room, x)
		slices.Sort(room[:len(x)])
		return room[n]
	}
	cell, before := 0, 0
	for before+int(c.count[cell]) <= n {
		before += int(c.count[cell])
		cell++
	}
	found := room[:0]
	for _, v := range x {
		if c.of(v) == cell {
			found = append(found, v)
		}
	}
	slices.Sort(found)
	return found[n-before]
}

// place is the index of the q-quantile among n sorted draws.
func place(q float64, n int) int { return min(int(q*float64(n)), n-1) }

// share is the q-quantile of sorted draws.
func share(sorted []float64, q float64) float64 { return sorted[place(q, len(sorted))] }
