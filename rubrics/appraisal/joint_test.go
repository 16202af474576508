package appraisal

import (
	"fmt"
	"math"
	"testing"
)

// newModel is the model of a file as the judgement makes it.
func newModel(t interface {
	Helper()
	Fatal(...any)
}, r *Rubric, parts []Part, f *File) *model {
	t.Helper()
	if err := f.check(); err != nil {
		t.Fatal(err)
	}
	n := &notes{}
	walked := walk(r, f)
	m, _ := prepare(r, parts, f, walked, n)
	_, m.belief, m.known = worth(r, f, n)
	return m
}

func testModel(t *testing.T, edit func(f *File)) *model {
	t.Helper()
	r, f := testRubric(), testFile()
	edit(f)
	return newModel(t, &r, []Part{{ID: "part", Title: "Part", Unit: "each", Price: Range{20_00, 40_00, 90_00}}}, f)
}

// lines makes tasks of three-point amounts.
func lines(amounts ...[3]float64) []task {
	var out []task
	for i, a := range amounts {
		t := finish(Line{ID: fmt.Sprint("line-", i), Kind: "remedy", Cost: Range{Money(a[0]), Money(a[1]), Money(a[2])}})
		out = append(out, t)
	}
	return out
}

// Sums of lines against the exact moments: means add, variances add; with the
// shared factor F of mean f and sd s, independent of the sum S, the mean is f*S
// and the variance (f2+s2)(V+S2) - f2*S2.
func TestSumsHaveExactMoments(t *testing.T) {
	for _, c := range []struct {
		id    string
		lines [][3]float64
		over  Overrun
		sd    float64 // how near the spread with the factor must come
	}{
		{"M37 path", [][3]float64{{200, 500, 800}, {100, 200, 900}, {100, 200, 900}, {100, 300, 1100}}, Overrun{100_00, 0}, 0.025},
		{"M43 rho 0", [][3]float64{{0, 90, 180}, {0, 120, 240}, {0, 75, 150}}, Overrun{100_00, 0}, 0.025},
		{"M44 rho 0", [][3]float64{{100, 180, 500}, {60, 90, 240}, {0, 150, 900}}, Overrun{100_00, 0}, 0.025},
		{"M44 with the factor", [][3]float64{{100, 180, 500}, {60, 90, 240}, {0, 150, 900}}, Overrun{110_00, 20_00}, 0.025},
		{"one wide line", [][3]float64{{0, 0, 9000}}, Overrun{150_00, 100_00}, 0.08}, // a long tail
		{"twenty lines", manyLines(20), Overrun{110_00, 20_00}, 0.025},
	} {
		m := testModel(t, func(f *File) { f.Shop.Overrun = c.over })
		m.tasks = lines(c.lines...)
		j := m.draw()
		sum, variance := 0.0, 0.0
		for _, a := range c.lines {
			sum += (a[0] + 4*a[1] + a[2]) / 6
			variance += (a[2] - a[0]) * (a[2] - a[0]) / 36
		}
		near(t, c.id+" mean without the factor", average(j.base), sum, 2e-4)
		near(t, c.id+" sd without the factor", spread(j.base), math.Sqrt(variance), 4*chanceOfSD(c.lines)+1e-3)
		f, s := float64(c.over.Mean)/1e4, float64(c.over.SD)/1e4
		// Only their interaction is left to chance: the sum and the factor alone are
		// laid out in layers.
		near(t, c.id+" mean", j.meanRepair, f*sum, 4*s*math.Sqrt(variance/Draws)/(f*sum)+3e-4)
		near(t, c.id+" sd", spread(j.repair), math.Sqrt((f*f+s*s)*(variance+sum*sum)-f*f*sum*sum), c.sd)
		j.release()
	}
}

// chanceOfSD is the standard error, in parts of it, of the spread of a sum of
// lines: each two correlate by chance, by about one over the root of the draws.
func chanceOfSD(lines [][3]float64) float64 {
	variance, pairs := 0.0, 0.0
	for i, a := range lines {
		variance += (a[2] - a[0]) * (a[2] - a[0]) / 36
		for _, b := range lines[:i] {
			pairs += math.Pow((a[2]-a[0])*(b[2]-b[0])/36, 2)
		}
	}
	return math.Sqrt(pairs) / variance / math.Sqrt(Draws)
}

func manyLines(n int) (out [][3]float64) {
	for i := range n {
		low := float64(50 * i)
		out = append(out, [3]float64{low, low + float64(37*(i%5)), low + 400})
	}
	return out
}

// M43: lines of sd 30, 40, 25 without correlation sum to 55.9017 (the textbook
// rule). M44: the repair bundle of three PERTs; its P80 is 723.18 by the normal
// approximation with the spread of the lambda-4 beta (170.126), which is not the
// classic one drawn here (166.93), so the two agree to 2 %. The rows with rho .3
// (69.96428 and 746.91) are not comparable: what makes lines move together here
// is a shared factor on their sum, not a correlation of each two of them.
func TestSumsOfThePublishedRows(t *testing.T) {
	m := testModel(t, func(f *File) { f.Shop.Overrun = Overrun{100_00, 0} })
	m.tasks = lines([3]float64{0, 9000, 18000}, [3]float64{0, 12000, 24000}, [3]float64{0, 7500, 15000})
	j := m.draw()
	near(t, "M43 rho 0", spread(j.repair)/100, 55.9017, 0.025)
	j.release()
	m.tasks = lines([3]float64{10000, 18000, 50000}, [3]float64{6000, 9000, 24000}, [3]float64{0, 15000, 90000})
	j = m.draw()
	near(t, "M44 mean", average(j.repair)/100, 580, 1e-4)
	near(t, "M44 P80, rho 0", j.cells.nth(j.repair, place(0.8, Draws), j.room)/100, 723.18, 0.02)
	j.release()
}

// Adding a line, or a point that costs nothing, leaves the draws of all others
// as they were.
func TestAddingALineDisturbsNoOther(t *testing.T) {
	all := func(f *File) {
		f.Findings = map[string]Finding{"weld": grade(4), "rope": grade(4), "hose": grade(4), "only": grade(4), "paint": grade(4)}
	}
	few := testModel(t, all)
	more := testModel(t, func(f *File) {
		all(f)
		f.Findings["hose"] = grade(1)
		delete(f.Findings, "paint") // open, and nothing to put right
	})
	more.care = few.care
	a, b := few.draw(), more.draw()
	defer a.release()
	defer b.release()
	added := make([]float64, Draws)
	more.sum(added, more.tasks...)
	for i := range Draws {
		if a.worth[i] != b.worth[i] || a.over[i] != b.over[i] || a.class[i] != b.class[i] || a.landing[i] != b.landing[i] || a.left[i] != b.left[i] {
			t.Fatalf("draw %d: another line changed it", i)
		}
		if a.base[i] != 0 || b.base[i] != added[i] || added[i] <= 0 {
			t.Fatalf("draw %d: repair %v and %v, the lines added make %v", i, a.base[i], b.base[i], added[i])
		}
	}
	// Another open point that costs nothing leaves the hidden costs as they were.
	bare := testModel(t, func(f *File) {
		all(f)
		delete(f.Findings, "paint")
		delete(f.Findings, "only")
	})
	full := testModel(t, func(f *File) {
		all(f)
		delete(f.Findings, "only")
	})
	full.care = bare.care
	c, d := bare.draw(), full.draw()
	defer c.release()
	defer d.release()
	for i := range Draws {
		if c.hidden[i] != d.hidden[i] {
			t.Fatalf("draw %d: a point that costs nothing changed the hidden costs from %v to %v", i, d.hidden[i], c.hidden[i])
		}
	}
}
