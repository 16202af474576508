package depreciation

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// near holds a figure to a relative tolerance.
func near(t *testing.T, id string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*math.Abs(want)) {
		t.Errorf("%s: got %v, want %v within %g", id, got, want, relative)
	}
}

// must is a figure that may not be refused.
func must(t interface {
	Helper()
	Fatalf(string, ...any)
}, v float64, err error) float64 {
	t.Helper()
	if err != nil {
		t.Fatalf("refused: %v", err)
	}
	return v
}

// call is a function of the package with its arguments in a row.
type call struct {
	name string
	n    int
	of   func(x []float64) ([]float64, error)
}

func one(v float64, err error) ([]float64, error) { return []float64{v}, err }

// calls are all that take numbers and may refuse them.
var calls = []call{
	{"RemainingValue", 2, func(x []float64) ([]float64, error) { return one(RemainingValue(Classes[3], x[0], x[1])) }},
	{"RepairCost", 2, func(x []float64) ([]float64, error) { return one(RepairCost(Machines[0], x[0], x[1])) }},
	{"RepairBetween", 3, func(x []float64) ([]float64, error) { return one(RepairBetween(Machines[0], x[0], x[1], x[2])) }},
	{"AgeLife", 2, func(x []float64) ([]float64, error) { return one(AgeLife(x[0], x[1])) }},
	{"EffectiveAge", 2, func(x []float64) ([]float64, error) { return one(EffectiveAge(x[0], x[1])) }},
	{"DepreciatedCost", 4, func(x []float64) ([]float64, error) { return one(DepreciatedCost(x[0], x[1], x[2], x[3])) }},
	{"Inutility", 3, func(x []float64) ([]float64, error) { return one(Inutility(x[0], x[1], x[2])) }},
	{"CostToCapacity", 3, func(x []float64) ([]float64, error) { return one(CostToCapacity(x[0], x[1], x[2])) }},
	{"ExponentBetween", 4, func(x []float64) ([]float64, error) { return one(ExponentBetween(x[0], x[1], x[2], x[3])) }},
	{"Trended", 3, func(x []float64) ([]float64, error) { return one(Trended(x[0], x[1], x[2])) }},
	{"PercentGood", 2, func(x []float64) ([]float64, error) { return one(PercentGood(x[0], x[1])) }},
	{"Survivors", 1, func(x []float64) ([]float64, error) { return one(Survivors("S3", x[0])) }},
	{"RemainingLife", 2, func(x []float64) ([]float64, error) {
		r, d, err := RemainingLife("S3", x[0], x[1])
		return []float64{r, d}, err
	}},
}

// Whatever comes in, what comes out is finite or a refusal that says what is wrong
// and what would be right; a refusal carries no figure.
func TestNothingButFiguresOrRefusals(t *testing.T) {
	number := rapid.OneOf(
		rapid.Float64(),
		rapid.Float64Range(0, 100),
		rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, math.Copysign(0, -1), -1, 1, 2, 10,
			math.SmallestNonzeroFloat64, math.MaxFloat64, math.Nextafter(2, 1), 1e-300, 1e300}),
	)
	for _, c := range calls {
		t.Run(c.name, rapid.MakeCheck(func(t *rapid.T) {
			x := rapid.SliceOfN(number, c.n, c.n).Draw(t, "x")
			got, err := c.of(x)
			for _, v := range got {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Fatalf("%s%v = %v", c.name, x, got)
				}
				if err != nil && v != 0 {
					t.Fatalf("%s%v refuses (%v) and gives %v", c.name, x, err, v)
				}
			}
			var e *Error
			if err != nil && (!errors.As(err, &e) || e.Quantity == "" || e.What == "" || e.Right == "") {
				t.Fatalf("%s%v: the refusal %q lacks something", c.name, x, err)
			}
			for _, v := range x {
				if err == nil && (math.IsNaN(v) || math.IsInf(v, 0) || v < 0) {
					t.Fatalf("%s%v = %v, want a refusal", c.name, x, got)
				}
			}
		}))
	}
}

// Every refusal in the user's words, the quantity first.
func TestRefusals(t *testing.T) {
	nan := math.NaN()
	for _, r := range []struct {
		name string
		x    []float64
		says string
	}{
		{"RemainingValue", []float64{-1, 0}, "age: -1 is out of range: 0 to 1000 years"},
		{"RemainingValue", []float64{5, 9000}, "hours a year: 9000 is out of range: 0 to 8784 hours"},
		{"RemainingValue", []float64{nan, 0}, "age: not a number"},
		{"RepairCost", []float64{-5, 100}, "list price: -5 is out of range"},
		{"RepairCost", []float64{100, -5}, "hours: -5 is out of range: 0 to 1000000 hours"},
		{"RepairBetween", []float64{100, 500, 400}, "hours: the meter goes from 500 back to 400: the earlier reading first"},
		{"AgeLife", []float64{6, 0}, "life: 0 is out of range: more than 0, at most 1000 years"},
		{"AgeLife", []float64{6, -15}, "life: -15 is out of range"},
		{"AgeLife", []float64{6, nan}, "life: not a number"},
		{"AgeLife", []float64{-6, 15}, "age: -6 is out of range"},
		{"EffectiveAge", []float64{10, 12}, "remaining life: 12 years are more than the total life of 10"},
		{"DepreciatedCost", []float64{-1, 0, 0, 0}, "cost new: -1"},
		{"DepreciatedCost", []float64{1, 1.1, 0, 0}, "physical depreciation: 1.1 is out of range: 0 to 1"},
		{"DepreciatedCost", []float64{1, 0, 10, 0}, "functional obsolescence: 10"},
		{"DepreciatedCost", []float64{1, 0, 0, -0.1}, "economic obsolescence: -0.1"},
		{"Inutility", []float64{120, 100, .7}, "actual use: 120 is more than the rated 100: at most the rated use"},
		{"Inutility", []float64{80, 0, .7}, "rated use: 0 is out of range"},
		{"Inutility", []float64{80, 100, 0}, "exponent: 0 is out of range"},
		{"CostToCapacity", []float64{0, 10, .6}, "size: 0 and 10 cannot be compared"},
		{"CostToCapacity", []float64{1, 1e7, .6}, "size: 1 and 1e+07 lie more than a million times apart: both in one unit"},
		{"CostToCapacity", []float64{1, 2, 60}, "exponent: 60 is out of range: 0 to 2"},
		{"ExponentBetween", []float64{10, 5, 10, 6}, "size: 10 and 10 are too near each other: two sizes at least 1 % apart"},
		{"ExponentBetween", []float64{10, 0, 20, 6}, "price: 0 and 6 cannot be compared"},
		{"Trended", []float64{100, 0, 110}, "index: 0 and 110 cannot be compared"},
		{"Trended", []float64{-100, 100, 110}, "cost: -100 is out of range"},
		{"PercentGood", []float64{9, 3}, "life: the schedule has no column for 9 years: one of [4 5 6 7 8 10 12 15 17 20] years"},
		{"PercentGood", []float64{10, 0}, "age: 0 is out of range: 1 to 1000 years"},
		{"PercentGood", []float64{10, 2.5}, "age: 2.5 years stand between two rows"},
		{"Survivors", []float64{-.5}, "age: -0.5 is out of range: 0 to 1000 average lives"},
		{"RemainingLife", []float64{0, 3}, "average life: 0 is out of range"},
		{"RemainingLife", []float64{1500, 3}, "average life: 1500 is out of range: more than 0, at most 1000 years"},
		{"RemainingLife", []float64{15, -3}, "age: -3 is out of range"},
	} {
		for _, c := range calls {
			if c.name != r.name {
				continue
			}
			if got, err := c.of(r.x); err == nil || !strings.Contains(err.Error(), r.says) {
				t.Errorf("%s%v = %v, %v; want a refusal with %q", r.name, r.x, got, err, r.says)
			}
		}
	}
	for _, id := range []string{"L2", "R3", "S9", ""} {
		if _, err := Survivors(id, 1); err == nil || !strings.Contains(err.Error(), "one of [S0 S1 S2 S3 S4]") {
			t.Errorf("survivor type %q: %v", id, err)
		}
		if _, _, err := RemainingLife(id, 15, 1); err == nil || !strings.Contains(err.Error(), "survivor type") {
			t.Errorf("survivor type %q: %v", id, err)
		}
	}
}
