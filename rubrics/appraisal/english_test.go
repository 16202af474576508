package appraisal

import "asfound/rubrics/limit"

// What the tests look for, in the words of the voice that speaks English.

const electrician = "A licensed electrician decides."

func exact(m Money) string       { return voice{}.exact(m) }
func whole(m Money) string       { return voice{}.whole(m) }
func inHundred(x float64) string { return voice{}.inHundred(x) }

func titles(files []*File) []string { return voice{}.titles(files) }

func weighed(weights map[string]int) []Criterion { return voice{}.weighed(weights) }

func figureOf(res *limit.Result, title string) float64 {
	return (&holding{}).figureOf(res, title)
}
