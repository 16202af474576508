package appraisal

import (
	"fmt"
	"math"
	"testing"

	"asfound/rubrics/kernel"

	"pgregory.net/rapid"
)

// small draws a model of a few unchecked points in which all but the answers is
// fixed: every cost has one value, the worth and the overrun have no spread.
func small(t *rapid.T) *model {
	r := testRubric()
	amount := func(name string, most int64) Range {
		m := Money(rapid.Int64Range(0, most).Draw(t, name))
		return Range{m, m, m}
	}
	part := Part{ID: "part", Price: amount("part", 500_00)}
	other := Part{ID: "other", Price: amount("other", 900_00)}
	prep := Part{ID: "prep", Price: amount("prep", 300_00)}
	r.Scrap = Scrap{Value: amount("scrap value", 200_00), Haul: amount("haul", 200_00)}
	r.Landing = []Landing{{ID: "drive", Title: "Drive", Cost: amount("drive", 200_00)}}
	r.Preparations = []Preparation{{ID: "drain", Parts: []PartUse{{"prep", 1}}, Rate: "own"}}
	r.Remedies = []Remedy{
		{ID: "fix", Ways: []Way{{ID: "buy", Parts: []PartUse{{"part", 1}}, Rate: "own", Preparations: []string{"drain"}}}},
		{ID: "swap", Ways: []Way{{ID: "buy", Parts: []PartUse{{"other", 1}}, Rate: "own", Preparations: []string{"drain"}}}},
	}
	chance := rapid.Float64Range(0.02, 0.9)
	r.Care.Bad = [3]float64{chance.Draw(t, "well"), chance.Draw(t, "ordinary"), chance.Draw(t, "neglected")}
	r.Care.Failed = chance.Draw(t, "failed")
	well, ordinary := rapid.Float64Range(0.01, 0.5).Draw(t, "prior well"), rapid.Float64Range(0.01, 0.49).Draw(t, "prior ordinary")
	r.Care.Prior = map[string][3]float64{"private": {well, ordinary, 1 - well - ordinary}}
	remedy := rapid.SampledFrom([]string{"", "fix", "swap", "scrap"})
	r.Sections[0].Checks = nil
	for i := range rapid.IntRange(2, 4).Draw(t, "points") {
		c := Check{
			ID: fmt.Sprint("p", i), Title: fmt.Sprint("Point ", i), Minutes: float64(rapid.IntRange(1, 80).Draw(t, "minutes")) / 10,
			Hazard: rapid.SampledFrom([]string{"danger", "warning", "notice"}).Draw(t, "hazard"), Weight: Weight{Safety: rapid.IntRange(0, 9).Draw(t, "weight")},
			Remedies: Remedies{Bad: remedy.Draw(t, "bad"), Failed: remedy.Draw(t, "failed")},
		}
		if rapid.Bool().Draw(t, "own odds") {
			c.Bad = &[3]float64{chance.Draw(t, "well"), chance.Draw(t, "ordinary"), chance.Draw(t, "neglected")}
		}
		r.Sections[0].Checks = append(r.Sections[0].Checks, c)
	}
	f := testFile()
	f.Shop.Overrun.SD = 0
	f.Shop.Tax = rapid.IntRange(0, 20_00).Draw(t, "tax")
	m := newModel(t, &r, []Part{part, other, prep}, f)
	m.belief = belief{mu: kernel.Log(float64(rapid.Int64Range(100_00, 3000_00).Draw(t, "worth"))), sd: 0}
	return m
}

// state is one way in which all may be: its probability, the outcome of each
// point (0 fine, 1 bad, 2 failed) and the break-even price.
type state struct {
	p     float64
	found []int
	price float64
}

// states lists all of them, from the findings up and without the engine's sums:
// classes times outcomes, the union of what they need, scrap in place of it.
func states(m *model) (all []state) {
	n := len(m.suspects)
	worth := kernel.Exp(m.belief.mu) + m.kept
	fees, land := float64(m.file.Shop.Fees), 0.0
	for _, l := range m.landing {
		land += float64(l.line.Cost.Likely)
	}
	left := float64(m.rubric.Scrap.Value.Likely - m.rubric.Scrap.Haul.Likely)
	over, tax := float64(m.file.Shop.Overrun.Mean)/1e4, 1+float64(m.file.Shop.Tax)/1e4
	price := func(part string) float64 { return float64(m.pricing.parts[part].Price.Likely) }
	for class, prior := range m.rubric.Care.Prior["private"] {
		for code := range int(math.Pow(3, float64(n))) {
			s := state{p: prior, found: make([]int, n)}
			need, scrap := map[string]float64{}, false
			for i := range n {
				s.found[i] = code % 3
				code /= 3
				c := m.suspects[i].j.check
				odds := m.rubric.Care.Bad[class]
				if c.Bad != nil {
					odds = c.Bad[class]
				}
				id := ""
				switch s.found[i] {
				case 0:
					s.p *= 1 - odds
				case 1:
					s.p *= odds * (1 - m.rubric.Care.Failed)
					if id = c.Remedies.Bad; id == "" {
						id = c.Remedies.Failed
					}
				case 2:
					s.p *= odds * m.rubric.Care.Failed
					if id = c.Remedies.Failed; id == "" {
						id = c.Remedies.Bad
					}
				}
				switch id {
				case "scrap":
					scrap = true
				case "fix":
					need["drain"], need["fix"] = price("prep"), price("part")
				case "swap":
					need["drain"], need["swap"] = price("prep"), price("other")
				}
			}
			net := worth
			for _, c := range need {
				net -= c * over
			}
			if scrap {
				net = min(worth, left)
			}
			s.price = (net - fees - land) / tax
			all = append(all, s)
		}
	}
	return all
}

// worthOfKnowing is the expected value of knowing some points before deciding, by
// going through all states.
func worthOfKnowing(m *model, all []state, asked []int, price float64) float64 {
	chance, ahead := map[string]float64{}, map[string]float64{}
	blind := 0.0
	for _, s := range all {
		key := ""
		for _, i := range asked {
			key += fmt.Sprint(s.found[i])
		}
		chance[key] += s.p
		ahead[key] += s.p * (s.price - price)
		blind += s.p * (s.price - price)
	}
	informed := 0.0
	for _, x := range ahead {
		informed += max(x, 0)
	}
	return (informed - max(blind, 0)) * m.taxed()
}

// priceFor is a price at which buying is neither certain nor absurd.
func priceFor(t *rapid.T, all []state) float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for _, s := range all {
		low, high = min(low, s.price), max(high, s.price)
	}
	return low + (high-low)*rapid.Float64Range(0.02, 0.98).Draw(t, "price")
}

// What to check next is worth what going through every state says it is.
func TestNextAgainstAllStates(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := small(t)
		all := states(m)
		price := priceFor(t, all)
		j := m.draw()
		defer j.release()
		for _, n := range next(m, newOutlook(m, j), price) {
			for i := range m.suspects {
				if m.suspects[i].j.check.ID != n.Check {
					continue
				}
				if want := worthOfKnowing(m, all, []int{i}, price); math.Abs(float64(n.Gain)-want) > 0.51+1e-7*math.Abs(price) {
					t.Fatalf("%s: gain %d, all states give %.2f", n.Check, n.Gain, want)
				}
			}
		}
	})
}

// found is what every draw finds at a point, read from its streams again.
func (m *model) found(s int, class []uint8) []int {
	out, p := make([]int, Draws), &m.suspects[s]
	for i := range out {
		b, k := i/layers, i%layers
		if p.luck.at(i, p.luck.block(b).layer(k)) < p.odds[class[i]] {
			out[i] = 1
			if p.failing.at(i, p.failing.block(b).layer(k)) < m.rubric.Care.Failed {
				out[i] = 2
			}
		}
	}
	return out
}

// With every cost, the worth and the overrun uncertain, the outlook is the mean of
// the draws that share an answer, within their error, and so is the value of it.
func TestOutlookAgainstTheDraws(t *testing.T) {
	for name, edit := range map[string]func(f *File){
		"nothing checked": func(*File) {},
		"much is bad":     func(f *File) { f.Findings = map[string]Finding{"hose": grade(1), "paint": grade(0)} },
		"fixed":           func(f *File) { f.Findings = map[string]Finding{"rope": grade(1)}; f.Shop.Tax = 19_00 },
	} {
		m := testModel(t, edit)
		m.rubric.Sections[0].Checks[1].Remedies.Failed = "scrap" // lock: bad and failed differ
		m.suspects = suspects(m.rubric, walk(m.rubric, m.file))
		j := m.draw()
		o := newOutlook(m, j)
		all := o.all(&o.open, &o.first)
		error := func(x []float64) float64 { return spread(x) / math.Sqrt(float64(len(x))) }
		if d := all.worth - average(j.breakEven); math.Abs(d) > 4*error(j.breakEven) {
			t.Errorf("%s: expected %.0f, drawn %.0f", name, all.worth, average(j.breakEven))
		}
		after := newView(len(o.cost))
		for s := range m.suspects {
			o.without(&o.open, s, &after)
			found := m.found(s, j.class)
			var drawn [3][]float64
			for i, x := range j.breakEven {
				drawn[found[i]] = append(drawn[found[i]], x)
			}
			title := name + ", " + m.suspects[s].j.check.ID
			for n, b := range o.split(&after, &o.first, s) {
				if got := float64(len(drawn[n])) / Draws; math.Abs(got-b.chance) > 4*math.Sqrt(b.chance*(1-b.chance)/Draws) {
					t.Errorf("%s, outcome %d: chance %.4f, drawn %.4f", title, n, b.chance, got)
				}
				if d := b.worth/b.chance - average(drawn[n]); math.Abs(d) > 4.5*error(drawn[n]) {
					t.Errorf("%s, outcome %d: expected %.0f, drawn %.0f of %d", title, n, b.worth/b.chance, average(drawn[n]), len(drawn[n]))
				}
			}
			price := all.worth + 100_00
			buy := make([]float64, Draws)
			for i, x := range j.breakEven {
				buy[i] = (x - price) * m.taxed()
			}
			branches := o.split(&after, &o.first, s)
			exact, drawnGain := m.gain(branches[:], price), Information([][]float64{buy, make([]float64, Draws)}, found, nil)
			if math.Abs(exact-drawnGain) > 3*error(buy)+1 {
				t.Errorf("%s: worth %.0f, by the draws %.0f", title, exact, drawnGain)
			}
		}
		j.release()
	}
}
