package sales

import (
	"cmp"
	"slices"
)

// ranked is the order of the values, equal ones as they stand.
func ranked(values []float64) []int {
	order := make([]int, len(values))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(values[a], values[b]) })
	return order
}

// weightedMiddle is the weighted median of values that are ranked, halfway where
// two share the middle. The weights sum to 1.
func weightedMiddle(values, weights []float64, rank []int) float64 {
	const even = 1e-9
	sum, last, reached := 0.0, 0.0, false
	for _, i := range rank {
		if weights[i] == 0 {
			continue
		}
		if reached {
			return (last + values[i]) / 2
		}
		sum += weights[i]
		last = values[i]
		if sum > 0.5+even {
			return last
		}
		reached = sum > 0.5-even
	}
	return last
}

// normal90 is the 90 % quantile of the standard normal distribution.
const normal90 = 1.2815515655446004

// student is the 90 % quantile of Student's t with nu degrees of freedom, by the
// Cornish-Fisher expansion (Abramowitz and Stegun 26.7.5, 1964): within 0.002
// from 4 degrees on. Fewer than 1 are taken as 1.
func student(nu float64) float64 {
	const z = normal90
	const z3, z5, z7 = z * z * z, z * z * z * z * z, z * z * z * z * z * z * z
	nu = max(nu, 1)
	return z + (z3+z)/(4*nu) + (5*z5+16*z3+3*z)/(96*nu*nu) + (3*z7+19*z5+17*z3-15*z)/(384*nu*nu*nu)
}
