package appraisal

import "slices"

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
		// Comparing is faster than min and max, which mind NaN.
		if v < low {
			low = v
		}
		if v > high {
			high = v
		}
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
