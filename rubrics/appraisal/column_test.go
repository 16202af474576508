package appraisal

import (
	"math"
	"slices"
	"sync"
	"testing"
)

// Columns used before for something else give the same draws.
func TestColumnsAreWrittenAnew(t *testing.T) {
	m := testModel(t, func(f *File) { f.Findings = map[string]Finding{"lock": grade(1)} })
	fresh := func() []float64 {
		j := m.draw()
		defer j.release()
		return slices.Clone(j.breakEven)
	}
	first := fresh()
	dirty := spare.Get().(*joint)
	for i := range dirty.ruined {
		dirty.ruined[i], dirty.class[i] = true, 2
		for _, c := range [][]float64{dirty.breakEven, dirty.repair, dirty.hidden, dirty.landing, dirty.worth, dirty.over, dirty.base, dirty.extra, dirty.left, dirty.haul, dirty.sorted, dirty.room} {
			c[i] = math.NaN()
		}
	}
	for e := range dirty.taken {
		dirty.taken[e][3] = math.MaxUint64
	}
	dirty.release()
	if !slices.Equal(fresh(), first) {
		t.Error("the draws hang on what was drawn before")
	}
}

// What is kept is what would be made anew, and is bounded, whoever asks for it.
func TestKeptColumnsAndTables(t *testing.T) {
	s, mean := newStream("remedy:lift-cables"), 0.3
	fresh := make([]float32, Draws)
	s.fill(fresh, betaTable(mean))
	var all sync.WaitGroup
	for g := range 4 {
		all.Go(func() {
			for i := range 3 * mostColumns {
				columns.column(newStream("landing:transport").other(uint64(i%100+g)), evenShape)
				betaTables.table(1.0/6 + float64(i*4+g)/(20*mostColumns))
				if i%20 == 0 && !slices.Equal(columns.column(s, mean), fresh) {
					t.Error("a kept column is not the fresh one")
				}
			}
		})
	}
	all.Wait()
	if len(columns.young) > mostColumns || len(columns.old) > mostColumns || len(betaTables.by) > mostTables {
		t.Errorf("kept: %d and %d columns, %d tables", len(columns.young), len(columns.old), len(betaTables.by))
	}
	if *betaTables.table(mean) != *betaTable(mean) {
		t.Error("a kept table is not the fresh one")
	}
}

// Judged at the same time, an appraisal gives the same result.
func TestJudgingAtTheSameTime(t *testing.T) {
	edit := func(f *File) { f.Findings = map[string]Finding{"hose": grade(1)} }
	want := judgeEdited(t, edit).Offer
	var all sync.WaitGroup
	for range 4 {
		all.Go(func() {
			if got := judgeEdited(t, edit).Offer; got.Fair != want.Fair || got.Error != want.Error || !slices.Equal(got.Curve, want.Curve) {
				t.Errorf("fair offer %+v, alone %+v", got.Fair, want.Fair)
			}
		})
	}
	all.Wait()
}
