// Package pairwise makes weights out of judgements two by two: how many times one
// thing matters more than another (Saaty's analytic hierarchy process). It knows
// numbers alone, not what they are about.
package pairwise

import (
	"errors"
	"math"

	"asfound/rubrics/kernel"
	"asfound/rubrics/say"
)

// Most things that can be compared at once: beyond, nobody answers consistently,
// and no random index is published that is needed here.
const Most = 10

// Accept is the consistency ratio up to which answers agree well enough (Saaty).
const Accept = 0.10

// random are the mean consistency indices of random answers by number of things:
// Saaty's, n = 1 to 8 as printed; 9 and 10 from memory.
var random = [Most + 1]float64{0, 0, 0, 0.58, 0.90, 1.12, 1.24, 1.32, 1.41, 1.45, 1.49}

// Weighed is what the answers give.
type Weighed struct {
	// Weights sum to 1: the principal eigenvector of the answers.
	Weights []float64 `json:"weights"`
	// Largest is the principal eigenvalue; n where all answers agree.
	Largest float64 `json:"largest"`
	// Ratio is the consistency ratio: how far the answers contradict each other,
	// as a share of what random answers would. 0 agrees throughout.
	Ratio float64 `json:"ratio"`
	// Accept is the ratio up to which answers agree well enough.
	Accept float64 `json:"accept"`
	// Worst is the answer that fits the others least, as positions i < j, and what
	// the others together would make of it; -1 where fewer than three are compared.
	Worst     [2]int  `json:"worst"`
	WorstFits float64 `json:"worst_fits"`
}

// Weigh takes a square matrix: a[i][j] is how many times i matters more than j,
// 1/9 to 9 by Saaty's scale, a[j][i] its inverse, 1 on the diagonal.
func Weigh(a [][]float64) (Weighed, error) {
	n := len(a)
	if n < 2 || n > Most {
		return Weighed{}, say.Errorf("%d things cannot be compared two by two: 2 to %d can", n, Most)
	}
	if err := square(a); err != nil {
		return Weighed{}, err
	}
	out := Weighed{Accept: Accept, Worst: [2]int{-1, -1}, WorstFits: 1}
	out.Weights, out.Largest = principal(a)
	if n >= 3 {
		index := (out.Largest - float64(n)) / float64(n-1)
		out.Ratio = math.Max(0, index/random[n])
		out.worst(a)
	}
	return out, nil
}

func square(a [][]float64) error {
	for i := range a {
		if len(a[i]) != len(a) {
			return errors.New("each thing must be compared with every other one")
		}
		for j, x := range a[i] {
			switch {
			case !(x >= 1.0/9-1e-9 && x <= 9+1e-9):
				return say.Errorf("%g is no answer: it lies between 1/9 and 9", x)
			case i == j && x != 1:
				return errors.New("a thing matters as much as itself")
			case math.Abs(float64(x*a[j][i])-1) > 1e-9:
				return errors.New("two answers about one pair do not agree: the second is the inverse of the first")
			}
		}
	}
	return nil
}

// principal finds the eigenvector by the power method; a positive matrix has one,
// and it converges fast where answers are nearly consistent.
func principal(a [][]float64) (w []float64, largest float64) {
	n := len(a)
	w = make([]float64, n)
	for i := range w {
		w[i] = 1 / float64(n)
	}
	next := make([]float64, n)
	for range 10_000 {
		sum := 0.0
		for i := range a {
			next[i] = 0
			for j := range a[i] {
				next[i] += float64(a[i][j] * w[j])
			}
			sum += next[i]
		}
		moved := 0.0
		for i := range w {
			x := next[i] / sum
			moved = math.Max(moved, math.Abs(x-w[i]))
			w[i] = x
		}
		largest = sum // the weights before summed to 1
		if moved < 1e-15 {
			break
		}
	}
	return w, largest
}

// worst finds the answer furthest from what the others make of it: the geometric
// mean of the ways round by a third thing.
func (o *Weighed) worst(a [][]float64) {
	most := 0.0
	for i := range a {
		for j := i + 1; j < len(a); j++ {
			around := 1.0
			for k := range a {
				if k != i && k != j {
					around *= float64(a[i][k] * a[k][j])
				}
			}
			fits := kernel.Pow(around, 1/float64(len(a)-2))
			off := math.Max(a[i][j]/fits, fits/a[i][j])
			if off > most+1e-9 {
				most, o.Worst, o.WorstFits = off, [2]int{i, j}, fits
			}
		}
	}
}
