package depreciation

import (
	"math"

	"asfound/rubrics/kernel"
)

// leastApart is how far two sizes must differ to tell an exponent (judgement):
// nearer together, the answer is the noise of the prices.
const leastApart = 0.01

// CostToCapacity is what a price is multiplied by to go from size q1 to size q2 of
// one unit: (q2/q1)^n, n about 0.6, 0.5 to 0.9 (cost engineers' six-tenths rule).
func CostToCapacity(q1, q2, n float64) (float64, error) {
	r, err := ratio("size", q2, q1)
	if err = first(err, between("exponent", n, 0, mostExponent, "")); err != nil {
		return 0, err
	}
	return kernel.Pow(r, n), nil
}

// ExponentBetween is the n by which the cost-to-capacity rule goes from price c1
// at size q1 to price c2 at size q2. It may well lie outside 0.5 to 0.9.
func ExponentBetween(q1, c1, q2, c2 float64) (float64, error) {
	size, err := ratio("size", q2, q1)
	if err != nil {
		return 0, err
	}
	price, err := ratio("price", c2, c1)
	if err != nil {
		return 0, err
	}
	if math.Abs(size-1) < leastApart {
		return 0, refuse("size", "two sizes at least 1 % apart", "%g and %g are too near each other", q1, q2)
	}
	return kernel.Log(price) / kernel.Log(size), nil
}
