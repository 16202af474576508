package rubrics

import (
	"math"
	"testing"
)

// Texts whose syllables are beyond doubt, by the printed formula; the second is
// the worked example commonly given with it (13 words, 24 syllables: 11.3).
func TestReadingGrade(t *testing.T) {
	for _, c := range []struct {
		text string
		want float64
	}{
		{"The cat sat on the mat.", 0.39*6 + 11.8 - 15.59},
		{"The Australian platypus is seemingly a hybrid of a mammal and reptilian creature.", 11.3},
		{"Stop. Look. Wait here.", 0.39*4/3 + 11.8 - 15.59},
		{"", 0},
		{"3/8 1.5 %", 0},
	} {
		if got := ReadingGrade(c.text); math.Abs(got-c.want) > 0.95 {
			t.Errorf("%q is read in grade %.2f, want %.2f", c.text, got, c.want)
		}
	}
}

func TestSyllables(t *testing.T) {
	for word, want := range map[string]int{
		"weld": 1, "plate": 1, "bushes": 2, "table": 2, "leaked": 1, "bolted": 2, "hydraulic": 3, "inspection": 3,
		"lowering": 3, "safety": 3, "the": 1, "gauge": 1, "edges": 2, "lines": 1, "be": 1, "carriage": 2,
	} {
		if got := syllablesOf(word); got != want {
			t.Errorf("%s has %d syllables, counted %d", word, want, got)
		}
	}
}
