package depreciation

import (
	"math"

	"asfound/rubrics/say"
)

// PercentGoodSource says where the schedule is from.
const PercentGoodSource = "Sacramento County Assessor, 2017 schedule, commercial equipment; index factor included"

// PercentGoodFloor is the least share of the new price while in use: the columns
// of the schedule end at 10 to 16 %.
const PercentGoodFloor = 0.10

// schedule has a column for each life in years, and in it the percent of the
// original cost for things bought 1, 2, 3 ... years before. The copy read runs all
// columns together; that they are these lives in this order is borne out by the
// 2020 edition, which is printed row by row.
var schedule = []struct {
	life    int
	percent []float64
}{
	{4, []float64{75, 52, 31, 17, 10, 10}},
	{5, []float64{80, 61, 44, 30, 18, 11, 11}},
	{6, []float64{84, 68, 53, 40, 28, 18, 12, 11, 11}},
	{7, []float64{86, 73, 60, 48, 37, 27, 20, 13, 11, 11}},
	{8, []float64{88, 77, 65, 55, 44, 36, 27, 19, 14, 12, 12}},
	{10, []float64{91, 82, 73, 65, 57, 49, 43, 33, 28, 22, 17, 14, 13, 13}},
	{12, []float64{93, 86, 78, 72, 66, 59, 53, 45, 40, 35, 29, 25, 21, 17, 14, 14}},
	{15, []float64{95, 89, 84, 80, 74, 70, 66, 59, 56, 51, 47, 43, 39, 35, 30, 24, 21, 17, 15, 15}},
	{17, []float64{96, 91, 86, 84, 79, 76, 73, 67, 63, 60, 57, 53, 51, 46, 41, 35, 31, 26, 23, 19, 18, 15, 15}},
	{20, []float64{96, 93, 89, 87, 83, 81, 80, 75, 72, 70, 69, 66, 66, 61, 56, 52, 47, 42, 38, 34, 31, 27, 25, 23, 20, 18, 16}},
}

// Lives are the lives in years that have a column, in rising order.
func Lives() []int {
	lives := make([]int, len(schedule))
	for i, c := range schedule {
		lives[i] = c.life
	}
	return lives
}

// PercentGood is the percent of the ORIGINAL cost that a thing of that life, bought
// that many years before, is worth; it must not be taken of today's new price,
// since each figure holds the rise of prices up to January 2017 too. Age is the
// year of the assessment less the year of purchase, 1 or more. Past the end of a
// column its last figure stays: the least while in use. A life between two columns
// is refused, since nothing is published there.
func PercentGood(life, age float64) (float64, error) {
	err := first(
		positive("life", life, mostYears, " years"),
		between("age", age, 1, mostYears, " years"),
	)
	if err != nil {
		return 0, err
	}
	if age != math.Floor(age) {
		return 0, refuse("age", "whole years, from the year of purchase", "%g years stand between two rows of the schedule", age)
	}
	for _, c := range schedule {
		if life == float64(c.life) {
			return c.percent[min(int(age), len(c.percent))-1], nil
		}
	}
	return 0, refuse("life", say.Later("one of %v years", Lives()), "the schedule has no column for %g years", life)
}
