package appraisal

import "strconv"

// count writes a small number as a word with its noun, capitalised.
func count(n int, noun string) string {
	words := []string{"No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine", "Ten", "Eleven", "Twelve"}
	s := strconv.Itoa(n)
	if n >= 0 && n < len(words) {
		s = words[n]
	}
	if n != 1 {
		noun += "s"
	}
	return s + " " + noun
}

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
