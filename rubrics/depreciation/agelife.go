package depreciation

// AgeLife is the physical depreciation, effective age / total life, and 1 beyond
// it. Both in years. Rule of the American Society of Appraisers' text, from memory.
func AgeLife(age, life float64) (float64, error) {
	err := first(
		between("age", age, 0, mostYears, " years"),
		positive("life", life, mostYears, " years"),
	)
	if err != nil {
		return 0, err
	}
	return min(age/life, 1), nil
}

// EffectiveAge is the age its condition shows: total life less the years still
// expected of it (same text, from memory). It may differ from the calendar age.
func EffectiveAge(life, remaining float64) (float64, error) {
	err := first(
		positive("life", life, mostYears, " years"),
		between("remaining life", remaining, 0, mostYears, " years"),
	)
	if err != nil {
		return 0, err
	}
	if remaining > life {
		return 0, refuse("remaining life", "at most the total life, or a longer total life", "%g years are more than the total life of %g", remaining, life)
	}
	return life - remaining, nil
}
