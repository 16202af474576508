package appraisal

import "slices"

// pair holds two listings against each other draw by draw. Both were drawn with
// the same random numbers, so the spread of the difference is that of the
// equipment and not of the luck.
type pair struct {
	// gaps are the draws of breakEven_a - scale*breakEven_b: what a may cost more
	// than scaled b and still bring the same.
	gaps   []float64
	middle float64 // their median
	// scale is (1+tax_b)/(1+tax_a): coming out ahead by a sum moves the price that
	// may be paid by that sum without its tax.
	scale float64
}

// newPair takes break-even prices and taxes (basis points) of both.
func newPair(a, b []float64, taxA, taxB int) pair {
	p := pair{gaps: make([]float64, len(a)), scale: float64(10_000+taxB) / float64(10_000+taxA)}
	for i := range p.gaps {
		p.gaps[i] = a[i] - float64(p.scale*b[i])
	}
	p.middle = middleOf(slices.Clone(p.gaps))
	return p
}

// better is the share of draws in which a at its price brings more than b at its
// price; equal draws count half.
func (p pair) better(priceA, priceB Money) float64 {
	level := float64(priceA) - float64(p.scale*float64(priceB))
	halves := 0
	for _, gap := range p.gaps {
		if gap > level {
			halves += 2
		} else if gap == level {
			halves++
		}
	}
	return float64(halves) / float64(2*len(p.gaps))
}

// overtakeA is the price of a at which each of both is better in half the draws.
func (p pair) overtakeA(priceB Money) Money {
	return cents(p.middle + float64(p.scale*float64(priceB)))
}

// overtakeB is the same for b.
func (p pair) overtakeB(priceA Money) Money {
	return cents((float64(priceA) - p.middle) / p.scale)
}

// middleOf is the middle of x, or the mean of the two middle ones; it reorders x.
// Only the half that holds the middle is searched on (Hoare, Find, 1961): a whole
// sort of every two of eight listings would take longer than drawing them.
func middleOf(x []float64) float64 {
	k := (len(x) - 1) / 2
	for low, high := 0, len(x)-1; low < high; {
		pivot := x[low+(high-low)/2]
		i, j := low, high
		for i <= j {
			for x[i] < pivot {
				i++
			}
			for x[j] > pivot {
				j--
			}
			if i <= j {
				x[i], x[j] = x[j], x[i]
				i++
				j--
			}
		}
		switch {
		case k <= j:
			high = j
		case k >= i:
			low = i
		default:
			low, high = k, k
		}
	}
	if len(x)%2 == 1 {
		return x[k]
	}
	return x[k]/2 + slices.Min(x[k+1:])/2
}
