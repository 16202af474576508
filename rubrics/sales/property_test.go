package sales

import (
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"
)

// anyMarket draws a form, sales and a thing of it. Prices go from a cent to 1e12,
// numbers from -1e12 to 1e12; much is unknown, and much is equal.
func anyMarket(t *rapid.T, most int) (Form, []Sale, Sale) {
	form := Form{
		Spread: rapid.Float64Range(0.01, 1).Draw(t, "spread"), Count: rapid.Float64Range(0.5, 20).Draw(t, "count"),
		Together:   rapid.SampledFrom([]float64{0, 0.2}).Draw(t, "together"),
		Neighbours: rapid.SampledFrom([]int{0, 1, 3}).Draw(t, "neighbours"),
	}
	size := rapid.SampledFrom([]float64{1, 20, 1e12}).Draw(t, "size")
	for range rapid.IntRange(0, 3).Draw(t, "attributes") {
		form.Attributes = append(form.Attributes, Attribute{
			Rate: rapid.Float64Range(-1, 1).Draw(t, "rate") / size, RateSD: rapid.SampledFrom([]float64{0, 0.1, 1}).Draw(t, "rate sd") / size,
			Width: rapid.Float64Range(0.1, 5).Draw(t, "width") * size,
		})
	}
	for range rapid.IntRange(0, 3).Draw(t, "labels") {
		form.Labels = append(form.Labels, Label{SD: rapid.SampledFrom([]float64{0, 0.2}).Draw(t, "sd"), Unlike: rapid.SampledFrom([]float64{0, 0.3, 1}).Draw(t, "unlike")})
	}
	number := rapid.OneOf(rapid.Just(math.NaN()), rapid.Just(size/3), rapid.Float64Range(-size, size))
	word := rapid.SampledFrom([]string{"", "a", "b", "c"})
	price := rapid.OneOf(rapid.Just(math.Log(0.01)), rapid.Just(math.Log(1e12)), rapid.Just(math.Log(2400)), rapid.Float64Range(5, 9))
	draw := func() Sale {
		s := Sale{Log: price.Draw(t, "log"), Weight: 1}
		for range form.Attributes {
			s.Numbers = append(s.Numbers, number.Draw(t, "number"))
		}
		for range form.Labels {
			s.Labels = append(s.Labels, word.Draw(t, "word"))
		}
		return s
	}
	sales := []Sale{draw()}
	for range rapid.IntRange(0, most-1).Draw(t, "more") {
		if rapid.IntRange(0, 3).Draw(t, "again") == 0 {
			sales = append(sales, sales[0])
		} else {
			sales = append(sales, draw())
		}
	}
	return form, sales, draw()
}

// figures are all that a market says of a thing but its rows.
func figures(m *Market, thing *Sale) []float64 {
	p := m.Predict(thing)
	out := []float64{p.Mean, p.SD, p.Scatter, p.Price(), m.Spread()}
	for _, q := range []float64{0.01, 0.1, 0.25, 0.5, 0.75, 0.9, 0.99} {
		out = append(out, p.Quantile(q))
	}
	for _, r := range m.Rates() {
		out = append(out, r.Mean, r.SD, r.FromData)
	}
	return out
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

func TestAnyMarketGivesFigures(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		form, sales, thing := anyMarket(t, 25)
		m := Fit(form, sales)
		for i, x := range figures(m, &thing) {
			if !finite(x) {
				t.Fatalf("figure %d is %v", i, x)
			}
		}
		p := m.Predict(&thing)
		if p.SD <= 0 || p.Scatter < 0 || m.Spread() <= 0 {
			t.Fatalf("spreads of %v, %v, %v", p.SD, p.Scatter, m.Spread())
		}
		total, logs, weights := 0.0, []float64{}, []float64{}
		for _, r := range p.Rows {
			sum := sales[r.Sale].Log
			for _, f := range r.Factors {
				sum += f
			}
			if !(r.Trust > 0 && r.Trust <= 1) || !(r.Weight > 0) || len(r.Factors) < len(form.Attributes)+len(form.Labels) || math.Abs(sum-r.Log) > 1e-9*max(1, math.Abs(sum)) {
				t.Fatalf("row %+v: its factors come to %v", r, sum)
			}
			total += r.Weight
			logs, weights = append(logs, r.Log), append(weights, r.Weight)
		}
		if math.Abs(total-1) > 1e-9 {
			t.Fatalf("the weights sum to %v", total)
		}
		// What the rows show is what was reckoned: the price is their middle.
		if middle := weightedMiddle(logs, weights, ranked(logs)); math.Abs(middle-p.Mean) > 1e-6*max(1, math.Abs(p.Mean)) {
			t.Fatalf("the middle of the rows is %v, the price %v", middle, p.Mean)
		}
		for q, before := 0.01, math.Inf(-1); q < 1; q += 0.01 {
			if x := p.Quantile(q); x < before {
				t.Fatalf("quantile %.2f is %v, below %v", q, x, before)
			} else {
				before = x
			}
		}
	})
}

// near tells whether two lists of figures are the same but for rounding.
func near(a, b []float64) bool {
	for i := range a {
		if math.Abs(a[i]-b[i]) > 1e-6*max(1, math.Abs(a[i])) {
			return false
		}
	}
	return len(a) == len(b)
}

// plainMarket draws a market of an ordinary kind.
func plainMarket(t *rapid.T, least, most int) (Form, []Sale, Sale) {
	n := rapid.IntRange(least, most).Draw(t, "n")
	form := Form{
		Attributes: []Attribute{{ID: "age", Rate: -0.05, RateSD: 0.03, Width: 5}},
		Labels:     []Label{{ID: "maker", SD: 0.2, Unlike: 0.5}}, Together: 0.1, Spread: DefaultSpread, Count: DefaultCount,
	}
	draw := func() Sale {
		return Sale{
			Log: rapid.Float64Range(6, 9).Draw(t, "log"), Weight: 1, Numbers: []float64{rapid.Float64Range(0, 30).Draw(t, "age")},
			Labels: []string{rapid.SampledFrom([]string{"a", "b", "c", ""}).Draw(t, "maker")},
		}
	}
	var sales []Sale
	for range n {
		sales = append(sales, draw())
	}
	return form, sales, draw()
}

func TestCopiesCountAsOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		form, sales, thing := plainMarket(t, 1, 12)
		k := rapid.IntRange(2, 12).Draw(t, "copies")
		which := rapid.IntRange(0, len(sales)-1).Draw(t, "which")
		var copied []Sale
		for i, s := range sales {
			if i != which {
				copied = append(copied, s)
				continue
			}
			s.Weight = 1 / float64(k)
			for range k {
				copied = append(copied, s)
			}
		}
		if a, b := figures(Fit(form, sales), &thing), figures(Fit(form, copied), &thing); !near(a, b) {
			t.Fatalf("one gives\n%v\n%d copies\n%v", a, k, b)
		}
	})
}

func TestOrderOfSalesMeansNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		form, sales, thing := plainMarket(t, 1, 20)
		form.Neighbours = rapid.SampledFrom([]int{0, 5}).Draw(t, "neighbours")
		mixed := rapid.Permutation(sales).Draw(t, "mixed")
		a, b := figures(Fit(form, sales), &thing), figures(Fit(form, mixed), &thing)
		for i := range a {
			if math.Abs(a[i]-b[i]) > 1e-9*max(1, math.Abs(a[i])) {
				t.Fatalf("figure %d: %v in one order, %v in another", i, a[i], b[i])
			}
		}
	})
}

// Sales more than are left out one by one, or are neighbours, in another order.
func TestOrderOfManySalesMeansNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	k := drawMarket(r, 700, 0.1)
	before := figures(Fit(k.form, k.sales), &k.thing)
	r.Shuffle(len(k.sales), func(i, j int) { k.sales[i], k.sales[j] = k.sales[j], k.sales[i] })
	after := figures(Fit(k.form, k.sales), &k.thing)
	for i := range before {
		if math.Abs(before[i]-after[i]) > 1e-9*max(1, math.Abs(before[i])) {
			t.Errorf("figure %d: %v in one order, %v in another", i, before[i], after[i])
		}
	}
}

// The middle of few is a step, and a new sale shifts what the others are trusted
// with, so it may stay or give way by a little; it goes no further away.
func TestOneLikeItPullsTowardsItsPrice(t *testing.T) {
	pulled, all := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		k := drawMarket(rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 5)), rapid.IntRange(1, 12).Draw(t, "n"), 0)
		form, sales, thing := k.form, k.sales, k.thing
		before := Fit(form, sales).Predict(&thing)
		same := thing
		same.Log = before.Mean + rapid.SampledFrom([]float64{-0.3, 0.3}).Draw(t, "apart")
		after := Fit(form, append(sales[:len(sales):len(sales)], same)).Predict(&thing)
		is := math.Abs(same.Log - after.Mean)
		if is > 0.3+0.03 {
			t.Fatalf("it lay 0.3 away, and with one that brought it %v", is)
		}
		all++
		if is < 0.3 {
			pulled++
		}
	})
	if 10*pulled < 9*all {
		t.Errorf("of %d it pulled only %d", all, pulled)
	}
}

// The rate goes from what was expected to what the sales show, the more of them
// the further, and says so.
func TestRateGoesFromPriorToData(t *testing.T) {
	const truth = -0.02
	form := Form{Attributes: []Attribute{{ID: "age", Rate: -0.06, RateSD: 0.02, Width: 6}}, Spread: DefaultSpread, Count: DefaultCount}
	far, share := math.Abs(-0.06-truth), 0.0
	for _, n := range []int{4, 12, 40, 100, 1000} {
		var sales []Sale
		for i := range n { // ages all over 0 to 20, errors that have nothing to do with them
			age := 20 * float64(i) / float64(n-1)
			sales = append(sales, Sale{Log: 8 + truth*age + []float64{0.2, -0.2, -0.2, 0.2}[i%4], Numbers: []float64{age}, Weight: 1})
		}
		r := Fit(form, sales).Rates()[0]
		if d := math.Abs(r.Mean - truth); d > far {
			t.Errorf("%d sales: a rate of %.4f, further from %v than before", n, r.Mean, truth)
		} else {
			far = d
		}
		if r.FromData <= share || r.FromData >= 1 {
			t.Errorf("%d sales bring %.3f of it, after %.3f", n, r.FromData, share)
		}
		share = r.FromData
	}
	if far > 0.002 || share < 0.95 {
		t.Errorf("a thousand sales leave the rate %.4f away, and bring %.3f of it", far, share)
	}
	if r := Fit(form, []Sale{{Log: 8, Numbers: []float64{5}, Weight: 1}}).Rates()[0]; math.Abs(r.Mean+0.06) > 1e-12 || r.FromData > 1e-9 {
		t.Errorf("one sale gives %+v, and should leave the rate as expected", r)
	}
}

// One of ten at five times its price.
func TestOneApartLosesItsWeight(t *testing.T) {
	form := Form{Attributes: []Attribute{{ID: "age", Rate: -0.05, RateSD: 0.02, Width: 6}}, Spread: DefaultSpread, Count: DefaultCount}
	var sales []Sale
	for i := range 10 {
		age := 3 + float64(2*i%17)
		sales = append(sales, Sale{Log: 8 - 0.05*age + 0.15*math.Sin(float64(5*i)), Numbers: []float64{age}, Weight: 1})
	}
	thing := Sale{Numbers: []float64{9}}
	before := Fit(form, sales).Predict(&thing)
	for i := range sales {
		apart := append([]Sale(nil), sales...)
		apart[i].Log += math.Log(5)
		after := Fit(form, apart).Predict(&thing)
		if trust := after.Rows[i].Trust; trust >= 0.5 || trust >= before.Rows[i].Trust {
			t.Errorf("sale %d at five times its price keeps a trust of %.2f", i, trust)
		}
		if moved := math.Abs(after.Mean - before.Mean); moved > math.Log(5)/10 {
			t.Errorf("sale %d moves the middle by %.3f, more than a tenth of what it is off", i, moved)
		}
	}
}
