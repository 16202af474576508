package sales

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// plain takes errors as they are, so that a fit under vague priors is ordinary
// least squares and can be held to published regressions.
var plain = tails{freedom: 1e12, share: 1}

// vague is a form whose priors say next to nothing; a unit is the size of what is
// fitted.
func vague(unit float64, numbers ...string) Form {
	f := Form{Spread: unit, Count: 1e-9}
	for _, n := range numbers {
		f.Attributes = append(f.Attributes, Attribute{ID: n, RateSD: 1e5, Width: 1})
	}
	return f
}

// norris is the calibration of ozone monitors, y and x (NIST StRD, linear
// regression, Norris; a work of the US Government).
var norris = [36][2]float64{
	{0.1, 0.2}, {338.8, 337.4}, {118.1, 118.2}, {888.0, 884.6}, {9.2, 10.1}, {228.1, 226.5}, {668.5, 666.3}, {998.5, 996.3}, {449.1, 448.6},
	{778.9, 777.0}, {559.2, 558.2}, {0.3, 0.4}, {0.1, 0.6}, {778.1, 775.5}, {668.8, 666.9}, {339.3, 338.0}, {448.9, 447.5}, {10.8, 11.6},
	{557.7, 556.0}, {228.3, 228.1}, {998.0, 995.8}, {888.8, 887.6}, {119.6, 120.2}, {0.3, 0.3}, {0.6, 0.3}, {557.6, 556.8}, {339.3, 339.1},
	{888.0, 887.2}, {998.5, 999.0}, {778.9, 779.0}, {10.2, 11.1}, {117.6, 118.3}, {228.9, 229.2}, {668.4, 669.1}, {449.2, 448.9}, {0.2, 0.5},
}

// intercept is the fitted value where the first number is 0.
func (m *Market) intercept() float64 { return m.beta[0] - m.beta[1]*m.centre[0] }

func TestNorris(t *testing.T) {
	var sales []Sale
	for _, p := range norris {
		sales = append(sales, Sale{Log: p[0], Numbers: []float64{p[1]}, Weight: 1})
	}
	m := fit(vague(1, "x"), sales, plain)
	t.Run("M24", func(t *testing.T) { // certified values, NIST StRD
		rate := m.Rates()[0]
		within(t, "slope", rate.Mean, 1.00211681802045, 1e-10)
		within(t, "its standard deviation", rate.SD, 0.429796848199937e-03, 1e-7)
		within(t, "intercept", m.intercept(), -0.262323073774029, 1e-7)
	})
	t.Run("M25", func(t *testing.T) {
		within(t, "residual standard deviation", m.Spread(), 0.884796396144373, 1e-7)
	})
}

// NIST StRD, univariate, NumAcc1: certified mean 10000002 and standard deviation
// 1; the three values from memory. A sum of squares less the square of the sum
// loses all digits here.
func TestSpreadSurvivesCancellation(t *testing.T) {
	t.Run("M26", func(t *testing.T) {
		m := fit(vague(1), []Sale{{Log: 10000001, Weight: 1}, {Log: 10000003, Weight: 1}, {Log: 10000002, Weight: 1}}, plain)
		within(t, "mean", m.beta[0], 10000002, 1e-15)
		within(t, "standard deviation", m.Spread(), 1, 1e-6) // the prior of the mean takes 3e-7
	})
}

// Price on mileage, Kuiper's data: intercept, slope and R squared by R 4.2.2 (lm).
// Her published equation is Price = 24765 - 0.173 Mileage, R-Sq 2.0 % (from memory).
func TestCarsByMileage(t *testing.T) {
	t.Run("M32", func(t *testing.T) {
		cars := readOpen(t, "car_prices.csv")
		price, mileage := cars.numbers(t, "Price"), cars.numbers(t, "Mileage")
		var sales []Sale
		for i := range price {
			sales = append(sales, Sale{Log: price[i] / 1000, Numbers: []float64{mileage[i] / 1000}, Weight: 1})
		}
		m := fit(vague(10, "mileage"), sales, plain)
		within(t, "intercept", 1000*m.intercept(), 24764.5589912, 1e-8)
		within(t, "slope", m.Rates()[0].Mean, -0.1725205026, 1e-8)
		within(t, "its standard deviation", m.Rates()[0].SD, 0.0421477558, 1e-6)
		within(t, "residual standard deviation", 1000*m.Spread(), 9789.288287, 1e-7)
		r2 := 1 - m.Spread()*m.Spread()*802/(stat.Variance(price, nil)/1e6*803)
		within(t, "R squared", r2, 0.0204634475, 1e-5)
	})
}

// conditions of the houses, worst first, and the premium of each over Very_Poor:
// R 4.2.2 on De Cock's data, lm(log(Sale_Price) ~ log(Gr_Liv_Area) + Year_Built +
// Overall_Cond + Neighborhood), R squared 0.828.
var conditions = []struct {
	word    string
	premium float64
}{
	{"Very_Poor", 0}, {"Poor", .102}, {"Fair", .250}, {"Below_Average", .406}, {"Average", .510},
	{"Above_Average", .569}, {"Good", .642}, {"Very_Good", .694}, {"Excellent", .804},
}

// houses are the sales with the log of the area, the year built, condition and
// neighbourhood.
func houses(t *testing.T) []Sale {
	o := readOpen(t, "house_sales.csv")
	price, area, built := o.numbers(t, "Sale_Price"), o.numbers(t, "Gr_Liv_Area"), o.numbers(t, "Year_Built")
	condition, place := o.words(t, "Overall_Cond"), o.words(t, "Neighborhood")
	var sales []Sale
	for i := range price {
		sales = append(sales, Sale{Log: math.Log(price[i]), Numbers: []float64{math.Log(area[i]), built[i]}, Labels: []string{condition[i], place[i]}, Weight: 1})
	}
	return sales
}

func TestConditionPremiaOfHouses(t *testing.T) {
	sales := houses(t)
	form := vague(1, "log area", "year built")
	form.Labels = []Label{{ID: "condition", SD: 30, Unlike: 1}, {ID: "neighbourhood", SD: 30, Unlike: 1}}
	m := fit(form, sales, plain)
	for _, c := range conditions {
		got := m.Premium(0, c.word) - m.Premium(0, "Very_Poor")
		if math.Abs(got-c.premium) > 0.0006 { // listed to three places
			t.Errorf("as least squares: %s is worth %.4f more than very poor, R gives %.3f", c.word, got, c.premium)
		}
	}
	within(t, "elasticity", m.Rates()[0].Mean, 0.63787867, 1e-6)
	within(t, "rate of the year", m.Rates()[1].Mean, 0.00496475, 1e-5)
	within(t, "residual standard deviation", m.Spread(), 0.1700035, 1e-6)

	// With outliers forgiven and the priors of a backtest the premia over the
	// average still rise with the condition. The ends, with 7 and 10 houses, are
	// drawn towards it; the others come within 0.06 of R's.
	form = Form{
		Attributes: []Attribute{{ID: "log area", RateSD: 1.5, Width: .6}, {ID: "year built", RateSD: .02, Width: 60}},
		Labels:     []Label{{ID: "condition", SD: .2, Unlike: .1}, {ID: "neighbourhood", SD: .2, Unlike: .1}},
		Spread:     DefaultSpread, Count: DefaultCount,
	}
	m = Fit(form, sales)
	before := math.Inf(-1)
	for i, c := range conditions {
		got, want := m.Premium(0, c.word)-m.Premium(0, "Average"), c.premium-0.510
		far := 0.06
		if i < 2 {
			far = 0.15
		}
		if math.Abs(got-want) > far || got <= before {
			t.Errorf("%s is worth %.3f more than average, R gives %.3f; the one below had %.3f", c.word, got, want, before)
		}
		before = got
	}
	// A premium for each combination takes some of it over, and keeps the order.
	form.Together = .2
	m = Fit(form, sales)
	for i := 1; i < len(conditions); i++ {
		if a, b := conditions[i-1].word, conditions[i].word; m.Premium(0, b) <= m.Premium(0, a) {
			t.Errorf("%s has a premium of %.3f, %s of %.3f", a, m.Premium(0, a), b, m.Premium(0, b))
		}
	}
}

// R 4.2.2 on the same data: log price on log area alone, and with neighbourhoods.
func TestElasticityOfHouses(t *testing.T) {
	sales := houses(t)
	var alone, placed []Sale
	for _, s := range sales {
		alone = append(alone, Sale{Log: s.Log, Numbers: s.Numbers[:1], Weight: 1})
		placed = append(placed, Sale{Log: s.Log, Numbers: s.Numbers[:1], Labels: s.Labels[1:], Weight: 1})
	}
	within(t, "elasticity", fit(vague(1, "log area"), alone, plain).Rates()[0].Mean, 0.9078053, 1e-6)
	form := vague(1, "log area")
	form.Labels = []Label{{ID: "neighbourhood", SD: 30, Unlike: 1}}
	within(t, "elasticity within neighbourhoods", fit(form, placed, plain).Rates()[0].Mean, 0.6326668, 1e-5)
}

// The share is what normal errors make of the scale of Student's t: held to
// gonum's quadrature.
func TestSpreadIsThatOfNormalErrors(t *testing.T) {
	got := quad.Fixed(func(z float64) float64 {
		return (robust.freedom + 1) * z * z / (robust.freedom + z*z/robust.share) * distuv.UnitNormal.Prob(z)
	}, -12, 12, 400, quad.Legendre{}, 0)
	within(t, "share", robust.share, got, 1e-6)
	// And in a market: the quantiles of a normal distribution as sales.
	var sales []Sale
	for i := range 2000 {
		sales = append(sales, Sale{Log: 8 + 0.3*distuv.UnitNormal.Quantile((float64(i)+0.5)/2000), Weight: 1})
	}
	within(t, "spread", Fit(vague(0.2), sales).Spread(), 0.3, 0.005)
}
