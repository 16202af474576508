package limit

import "testing"

// TH08: published worked example, 1/2-13 2A, Es 0.4435 -> 0.13757 in2. TH09:
// Machinery's Handbook, constant from memory. Metric areas: the table of section 3.
func TestThreadStrength(t *testing.T) {
	check(t, "thread-strength", 0.0015, []row{
		{"TH08", "diameter=1/2 in; tpi=13 tpi; minor-pitch=0.4435 in; strong=yes", 0.13757, "in2", Computed, nil},
		{"TH09", "diameter=1/2 in; tpi=13 tpi", 0.1419, "in2", Computed, map[string]float64{"breaks at, Grade 8": 21285, "breaks at, unmarked": 8514}},
		{"M5", "diameter=5 mm; pitch=0.8 mm", 14.2, "mm2", Computed, nil},
		{"M8", "diameter=8 mm; pitch=1.25 mm", 36.6, "mm2", Computed, nil},
		{"M12", "diameter=12 mm; pitch=1.75 mm", 84.3, "mm2", Computed, map[string]float64{"breaks at, 8.8": 69.95}},
		{"M16", "diameter=16 mm; pitch=2 mm", 156.7, "mm2", Computed, nil},
		{"M20", "diameter=20 mm; pitch=2.5 mm", 244.8, "mm2", Computed, nil},
		{"M24", "diameter=24 mm; pitch=3 mm", 352.5, "mm2", Computed, nil},
	})
	refuses(t, "thread-strength", []refusal{
		{"diameter=1/2 in", "pitch", "neither"},
		{"diameter=1/2 in; tpi=13 tpi; pitch=2 mm", "pitch", "both"},
		{"diameter=1/2 in; tpi=13 tpi; strong=yes", "minor-pitch", "is needed"},
		{"diameter=1/2 in; tpi=13 tpi; strong=yes; minor-pitch=0.5 in", "minor-pitch", "does not fit"},
		{"diameter=12 mm; pitch=1.75 mm; strong=yes", "strong", "inch threads"},
		{"diameter=1/2 in; tpi=3 tpi", "pitch", "too coarse"},
	})
}

// TH10: formula of Machinery's Handbook, 24th ed., as quoted on a public page;
// the inputs partly from memory.
func TestThreadEngagement(t *testing.T) {
	check(t, "thread-engagement", 0.001, []row{
		{"TH10", "area=0.1419 in2; nut-minor=0.434 in; bolt-pitch=0.4435 in; tpi=13 tpi", 0.364, "in", Computed, nil},
	})
	refuses(t, "thread-engagement", []refusal{
		{"area=0.1419 in2; nut-minor=0.5 in; bolt-pitch=0.4 in; tpi=13 tpi", "bolt-pitch", "do not make a thread"},
		{"area=0.1419 in2; nut-minor=0.434 in; bolt-pitch=0.6 in; tpi=13 tpi", "bolt-pitch", "do not make a thread"},
		{"area=0.1419 in; nut-minor=0.434 in; bolt-pitch=0.4435 in; tpi=13 tpi", "area", "length"},
	})
}

// TH11, ASME B18.29 from memory: D + 0.2165 P and D + 1.299 P.
func TestThreadInsert(t *testing.T) {
	check(t, "thread-insert", 0.0003, []row{
		{"TH11", "diameter=1/4 in; tpi=20 tpi", 0.2608, "in", Computed, map[string]float64{"tapped hole": 0.3150}},
		{"M8", "diameter=8 mm; pitch=1.25 mm", 8.2706, "mm", Computed, map[string]float64{"tapped hole": 9.6238}},
	})
	// The drills of section 3, from memory, stand above the smallest bore by less
	// than a quarter pitch.
	for _, c := range []struct {
		name  string
		drill float64 // mm
	}{
		{"1/4-20 UNC", 17. / 64 * 25.4}, {"5/16-18 UNC", 0.332 * 25.4}, {"3/8-16 UNC", 0.397 * 25.4}, {"7/16-14 UNC", 29. / 64 * 25.4},
		{"1/2-13 UNC", 17. / 32 * 25.4}, {"M6x1.0", 6.3}, {"M8x1.25", 8.4}, {"M10x1.5", 10.5}, {"M12x1.75", 12.5},
	} {
		s := byName(t, c.name)
		_, bore := insertHole(s.majorMM(), s.pitchMM())
		if s.insert == "" || c.drill < bore || c.drill > bore+s.pitchMM()/4 {
			t.Errorf("%s: drill %v mm (%q), bore %v mm", c.name, c.drill, s.insert, bore)
		}
	}
	refuses(t, "thread-insert", []refusal{{"diameter=1/4 in", "pitch", "neither"}, {"diameter=1/4 in; pitch=20 mm", "pitch", "too coarse"}})
}
