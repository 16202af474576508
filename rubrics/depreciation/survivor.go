package depreciation

import (
	"asfound/rubrics/say"
)

// SurvivorSource says where the curves are from and how far they are to be trusted.
const SurvivorSource = "Winfrey, Iowa Engineering Experiment Station Bulletin 125 (1935), symmetric types; constants from memory, not held against the bulletin"

// SurvivorCurve is a symmetric Iowa type: retirements y = Y0 (1 - x^2/100)^M in
// percent of the original number, x the age from average life in tenths of it,
// -10 to 10. M follows from Y0, since all retirements make 100: Y0 = 10 / B(1/2, M+1).
type SurvivorCurve struct {
	ID string
	Y0 float64
	M  float64
}

// SurvivorCurves are the symmetric types, Y0 from memory. S0 spreads retirements
// most, S4 least. The left- and right-moded types (L, R) are fits of several terms
// that are not known here, so they are left out.
var SurvivorCurves = []SurvivorCurve{
	{"S0", 7.0806, 0.80593},
	{"S1", 9.0803, 1.82842},
	{"S2", 11.9113, 3.70029},
	{"S3", 15.6105, 6.90160},
	{"S4", 22.3294, 14.91205},
}

func findCurve(id string) (SurvivorCurve, error) {
	ids := make([]string, len(SurvivorCurves))
	for i, c := range SurvivorCurves {
		if c.ID == id {
			return c, nil
		}
		ids[i] = c.ID
	}
	return SurvivorCurve{}, refuse("survivor type", say.Later("one of %v", ids), "%.20q is not known; of the Iowa types only the symmetric ones are", id)
}

// at gives the share in service at age t and the years those have left on average,
// both in average lives. Ages at retirement, halved, are beta-distributed.
func (c SurvivorCurve) at(t float64) (survivors, remaining float64) {
	above, further := betaTail(t/2, c.M+1)
	return above, 2 * further
}

// Survivors is the share of a group still in service at an age given in average
// lives: 1 at 0, one half at 1, none from 2 on.
func Survivors(curve string, age float64) (float64, error) {
	c, err := findCurve(curve)
	if err = first(err, between("age", age, 0, mostYears, " average lives")); err != nil {
		return 0, err
	}
	s, _ := c.at(age)
	return s, nil
}

// RemainingLife is how many years those of a group that have reached an age may
// still expect, given the average life of the group, and the age-life depreciation
// that makes: age / (age + remaining). A machine that has outlived the average is
// thereby not worn out, but from twice the average life on nothing is expected:
// remaining 0, depreciation 1.
func RemainingLife(curve string, average, age float64) (remaining, depreciation float64, err error) {
	c, err := findCurve(curve)
	err = first(err,
		positive("average life", average, mostYears, " years"),
		between("age", age, 0, mostYears, " years"),
	)
	if err != nil {
		return 0, 0, err
	}
	_, left := c.at(age / average)
	remaining = float64(average * left)
	return remaining, age / (age + remaining), nil
}
