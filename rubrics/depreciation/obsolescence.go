package depreciation

import "asfound/rubrics/kernel"

// DepreciatedCost is what is left of the cost new after physical, functional and
// economic depreciation, each a share of what the one before leaves: cost (1 -
// physical) (1 - functional) (1 - economic). Rule of the American Society of
// Appraisers' text, from memory.
func DepreciatedCost(cost, physical, functional, economic float64) (float64, error) {
	err := first(
		between("cost new", cost, 0, mostPrice, ""),
		between("physical depreciation", physical, 0, 1, ""),
		between("functional obsolescence", functional, 0, 1, ""),
		between("economic obsolescence", economic, 0, 1, ""),
	)
	if err != nil {
		return 0, err
	}
	return cost * (1 - physical) * (1 - functional) * (1 - economic), nil
}

// Inutility is the economic obsolescence of a machine that cannot be used as it
// could: 1 - (actual / rated)^n, n the exponent of the cost-to-capacity rule. Same
// text, from memory. Use above the rating is refused: the rule counts what idles.
func Inutility(actual, rated, n float64) (float64, error) {
	err := first(
		positive("rated use", rated, mostPrice, ""),
		between("actual use", actual, 0, mostPrice, ""),
		positive("exponent", n, mostExponent, ""),
	)
	if err != nil {
		return 0, err
	}
	switch {
	case actual > rated:
		return 0, refuse("actual use", "at most the rated use", "%g is more than the rated %g", actual, rated)
	case actual/rated == 0:
		return 1, nil // no logarithm of 0
	}
	return 1 - kernel.Pow(actual/rated, n), nil
}
