package appraisal

import (
	"strconv"
	"strings"
)

// count writes a small number as a word with its noun, capitalised.
func count(n int, noun string) string {
	if n != 1 {
		noun += "s"
	}
	return capital(spelled(n)) + " " + noun
}

// spelled writes a small number as a word.
func spelled(n int) string {
	words := []string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}
	if n >= 0 && n < len(words) {
		return words[n]
	}
	return strconv.Itoa(n)
}

// capital begins a sentence; the word is one of ours, in plain letters.
func capital(word string) string { return strings.ToUpper(word[:1]) + word[1:] }

func wereWas(n int) string {
	if n == 1 {
		return "was"
	}
	return "were"
}

// whole writes an amount in whole currency units, thousands apart.
func whole(m Money) string {
	n := int64(m)
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	digits := strconv.FormatInt((n+50)/100, 10)
	for i := len(digits) - 3; i > 0; i -= 3 {
		digits = digits[:i] + "," + digits[i:]
	}
	return sign + digits
}

// exact writes an amount to the cent where it is none of whole units: in messages
// that refuse it, -0.01 must not read as 0.
func exact(m Money) string {
	if m%100 == 0 {
		return whole(m)
	}
	sign := ""
	if m < 0 {
		sign, m = "-", -m
	}
	return sign + whole(m-m%100) + "." + strconv.Itoa(int(m%100/10)) + strconv.Itoa(int(m%10))
}

// percent writes a share of 0 to 1 as a whole percentage.
func percent(x float64) string {
	return strconv.Itoa(int(float64(x*100)+0.5)) + "\u00a0%"
}

// inHundred writes odds as cases of a hundred.
func inHundred(x float64) string {
	n := int(float64(x*100) + 0.5)
	if n == 0 && x > 0 {
		return "fewer than 1"
	}
	return strconv.Itoa(n)
}
