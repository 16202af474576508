package appraisal

import "sync"

// The shapes of a column: a beta distribution is named by its mean.
const (
	fixedShape  = 0.0  // one value
	evenShape   = -1.0 // uniform on (0, 1)
	normalShape = -2.0 // standard normal
)

// shape names the distribution of a three-point amount between its ends.
func (p *pert) shape() float64 {
	if p.high > p.low {
		return (p.mean - p.low) / (p.high - p.low)
	}
	return fixedShape
}

// columns keeps the draws of causes between recomputes: a tap changes few lines,
// and those that stay are drawn as before. A kept column equals a fresh one, so
// nothing depends on what is kept. What was not asked for longest goes first,
// by halves. Single
// precision is off by far less than a cent and takes half the room.
var columns keptColumns

type columnKey struct {
	luck  stream
	shape float64
}

type keptColumns struct {
	sync.Mutex
	young, old map[columnKey][]float32
}

// mostColumns bounds each half; a column has 40 kB.
const mostColumns = 80

// column gives all draws of a stream in a shape; they must not be written to.
func (k *keptColumns) column(luck stream, shape float64) []float32 {
	key := columnKey{luck, shape}
	if c := k.find(key); c != nil {
		return c
	}
	c := make([]float32, Draws)
	switch shape {
	case evenShape:
		luck.fill(c, nil)
	case normalShape:
		luck.fill(c, normalTable())
	default:
		luck.fill(c, betaTables.table(shape))
	}
	k.Lock()
	defer k.Unlock()
	k.keep(key, c)
	return c
}

func (k *keptColumns) find(key columnKey) []float32 {
	k.Lock()
	defer k.Unlock()
	if c := k.young[key]; c != nil {
		return c
	}
	c := k.old[key]
	if c != nil {
		k.keep(key, c)
	}
	return c
}

// keep puts a column among the young; the caller holds the lock.
func (k *keptColumns) keep(key columnKey, c []float32) {
	if k.young == nil || len(k.young) >= mostColumns {
		k.old, k.young = k.young, make(map[columnKey][]float32, mostColumns)
	}
	k.young[key] = c
}
