package appraisal

import (
	"math"
	"testing"

	"asfound/rubrics/kernel"
)

func near(t *testing.T, id string, got, want, relative float64) {
	t.Helper()
	if math.Abs(got-want) > relative*math.Abs(want) {
		t.Errorf("%s: got %v, want %v within %g", id, got, want, relative)
	}
}

// ASABE D497.7 (2011, R2020): formula published, coefficients from memory; the
// 23 % of M01 is printed in Iowa State University A3-29.
func TestRemainingValue(t *testing.T) {
	for _, c := range []struct {
		id                       string
		c1, c2, c3, years, hours float64
		want                     float64
	}{
		{"M01 tractor over 150 hp", .976, .119, .0019, 15, 400, .227639},
		{"M03 tractor 80-150 hp", .942, .100, .0008, 10, 300, .374441},
		{"M04 tractor under 80 hp", .981, .093, .0058, 5, 200, .477510},
		{"M05 combine", 1.132, .165, .0079, 8, 250, .292032},
		{"M06 skid-steer", .786, .063, .0033, 6, 500, .311243},
		{"M07 miscellaneous", .943, .111, 0, 7, 0, .421619},
	} {
		near(t, c.id, RemainingValue(c.c1, c.c2, c.c3, c.years, c.hours), c.want, 1e-4)
	}
	if got := math.Round(100 * RemainingValue(.976, .119, .0019, 15, 400)); got != 23 {
		t.Errorf("M01: %v %%, printed 23 %%", got)
	}
	near(t, "M02 salvage of 150,000 at the printed 23 %", 150_000*math.Round(100*RemainingValue(.976, .119, .0019, 15, 400))/100, 34_500, 1e-9)
}

// M12: age-life, the rule of the American Society of Appraisers' text (from memory).
func TestAgeLife(t *testing.T) {
	near(t, "M12", 9000*(1-AgeLife(6, 15)), 5400, 1e-9)
	if AgeLife(40, 15) != 1 {
		t.Error("depreciation beyond life must stop at 1")
	}
}

// M15 to M17: the six-tenths rule; 8.0 to 12.1 million for twice the capacity is
// a published worked example (Grist Project Management, Economy of scale).
func TestCostToCapacity(t *testing.T) {
	near(t, "M15", 8_000_000*CostToCapacity(200_000, 400_000, 0.6), 12_125_733, 1e-6)
	near(t, "M16", 5200*CostToCapacity(10, 7.5, 0.6), 4375.63, 1e-5)
	near(t, "M17", kernel.Log(12.1/8.0)/kernel.Log(2), .5969, 1e-3)
}

// M20 and M18/M19 give the floor: Sacramento County Assessor, 2017 schedule,
// commercial equipment: no column ends below 10 %.
func TestPercentGoodFloor(t *testing.T) {
	if got := miscellaneous(60); got != percentGoodFloor {
		t.Errorf("60 years: %v, want the floor %v", got, percentGoodFloor)
	}
}

// M30: R help of mad(): 1..8 and 100 give 2.9652. M31: weighted median, lower form.
func TestRobust(t *testing.T) {
	near(t, "M30", MAD([]float64{1, 2, 3, 4, 5, 6, 7, 8, 100}), 2.9652, 1e-9)
	near(t, "M30 without the outlier", MAD([]float64{1, 2, 3, 4, 5, 6, 7, 8, 9}), 2.9652, 1e-9)
	if got := WeightedMedian([]float64{1, 2, 3, 4, 5}, []float64{.15, .1, .2, .3, .25}); got != 4 {
		t.Errorf("M31: %v, want 4", got)
	}
}

// M62, M63: turning formulas (DGI Supply catalogue p. 68); M64: cutting time
// page of a tool maker; M65: the stud derived from them, 90 an hour.
func TestMachining(t *testing.T) {
	n := SpindleSpeed(80, 0.5)
	near(t, "M62", n, 611.155, 1e-5)
	near(t, "M63", CuttingTime(3, n, 0.005), 0.981748, 1e-5)
	near(t, "M64", CuttingTime(100, 1, 20), 5, 1e-12)
	stud := Make{Setup: 20, Load: 2, Finish: 3, Pieces: 1, Cuts: []Cut{{Diameter: .5, Length: 3, Speed: 80, Feed: .005, Passes: 2}}}
	near(t, "M65 lot of 1", MachiningMinutes(stud)/60*90+3, 43.45, 1.2e-4)
	stud.Pieces = 10
	near(t, "M65 lot of 10, a part", MachiningMinutes(stud)/10/60*90+3, 16.45, 3e-4)
}
