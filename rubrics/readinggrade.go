package rubrics

import (
	"strings"
	"unicode"

	"asfound/rubrics/appraisal"
)

// ReadingGrade is the school grade that reads a text with ease: 0.39 words a
// sentence + 11.8 syllables a word - 15.59 (Kincaid et al., Research Branch Report
// 8-75, 1975). Syllables are counted by their vowels, so it is good to about one
// grade. A text without words has grade 0.
func ReadingGrade(text string) float64 {
	words, sentences, syllables := 0, 0, 0
	open := false
	for _, field := range strings.Fields(text) {
		word := strings.TrimFunc(field, func(r rune) bool { return !unicode.IsLetter(r) })
		if word != "" {
			words++
			open = true
			syllables += syllablesOf(word)
		}
		if open && strings.HasSuffix(strings.TrimRight(field, `"')`), ".") || strings.HasSuffix(field, "?") || strings.HasSuffix(field, ":") || strings.HasSuffix(field, ";") {
			sentences++
			open = false
		}
	}
	if open {
		sentences++
	}
	if words == 0 || sentences == 0 {
		return 0
	}
	return 0.39*float64(words)/float64(sentences) + 11.8*float64(syllables)/float64(words) - 15.59
}

// syllablesOf counts groups of vowels, a silent last e not among them.
func syllablesOf(word string) int {
	w := strings.ToLower(word)
	n, before := 0, false
	for _, r := range w {
		vowel := strings.ContainsRune("aeiouy", r)
		if vowel && !before {
			n++
		}
		before = vowel
	}
	for _, silent := range []string{"e", "es", "ed"} {
		stem, ok := strings.CutSuffix(w, silent)
		if !ok || n < 2 {
			continue
		}
		last := stem[max(0, len(stem)-1):]
		spoken := silent == "e" && last == "l" && len(stem) > 1 && !strings.ContainsAny(stem[len(stem)-2:len(stem)-1], "aeiouy") ||
			silent == "es" && strings.ContainsAny(last, "sxzgch") || silent == "ed" && strings.ContainsAny(last, "td") || strings.ContainsAny(last, "aeiouy")
		if !spoken {
			n--
		}
		break
	}
	return max(1, n)
}

// readingGrade is the grade of all that is read while walking: how to check,
// what each grade looks like, and the cautions.
func readingGrade(r *appraisal.Rubric) float64 {
	var all []string
	for s := range r.Sections {
		for k := range r.Sections[s].Checks {
			c := &r.Sections[s].Checks[k]
			all = append(all, c.How, c.Caution, c.Grades.AsNew, c.Grades.Sound, c.Grades.Worn, c.Grades.Bad, c.Grades.Failed)
		}
	}
	return ReadingGrade(strings.Join(all, " "))
}
