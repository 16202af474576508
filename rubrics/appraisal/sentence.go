package appraisal

import (
	"strconv"
	"unicode"
	"unicode/utf8"

	"asfound/rubrics/say"
)

// voice says the engine's sentences; the zero one speaks English.
type voice struct{ *say.Voice }

var numberWords = []string{
	say.Key("no"), say.Key("one"), say.Key("two"), say.Key("three"), say.Key("four"), say.Key("five"), say.Key("six"),
	say.Key("seven"), say.Key("eight"), say.Key("nine"), say.Key("ten"), say.Key("eleven"), say.Key("twelve"),
}

// spelled writes a small number as a word.
func (v voice) spelled(n int) string {
	if n >= 0 && n < len(numberWords) {
		return v.Label(numberWords[n])
	}
	return strconv.Itoa(n)
}

// Spelled begins a sentence with a small number as a word.
func (v voice) Spelled(n int) string { return say.Capital(v.spelled(n)) }

// many says one pattern of one thing, another of several: the latter begins with
// their number in words.
func (v voice) many(n int, one, more string, args ...any) string {
	if n == 1 {
		return v.Pattern(one, args...)
	}
	return v.Pattern(more, append([]any{v.Spelled(n)}, args...)...)
}

// lowerFirst is a title inside a sentence.
func lowerFirst(s string) string {
	r, size := utf8.DecodeRuneInString(s)
	if size == 0 {
		return s
	}
	return string(unicode.ToLower(r)) + s[size:]
}

// whole writes an amount in whole currency units, thousands apart.
func (v voice) whole(m Money) string {
	n := int64(m)
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	return sign + v.Whole((n+50)/100)
}

// exact writes an amount to the cent where it is none of whole units: in messages
// that refuse it, -0.01 must not read as 0.
func (v voice) exact(m Money) string {
	if m%100 == 0 {
		return v.whole(m)
	}
	sign := ""
	if m < 0 {
		sign, m = "-", -m
	}
	return sign + v.whole(m-m%100) + v.Locale().Decimal + strconv.Itoa(int(m%100/10)) + strconv.Itoa(int(m%10))
}

// exactly is an amount in a message that is not said yet.
type exactly Money

func (m exactly) In(v *say.Voice) string { return voice{v}.exact(Money(m)) }

// percent writes a share of 0 to 1 as a whole percentage.
func (v voice) percent(x float64) string {
	return strconv.Itoa(int(float64(x*100)+0.5)) + "\u00a0%"
}

// basisPoints are hundredths of a percent, said as a percentage.
type basisPoints int

func (n basisPoints) In(v *say.Voice) string {
	if n%100 == 0 {
		return strconv.Itoa(int(n/100)) + " %"
	}
	return v.Number(float64(n)/100, 2) + " %"
}

// inHundred writes odds as cases of a hundred.
func (v voice) inHundred(x float64) string {
	n := int(float64(x*100) + 0.5)
	if n == 0 && x > 0 {
		return v.T("fewer than 1")
	}
	return strconv.Itoa(n)
}

// written writes a quantity with thousands apart.
func (v voice) written(q Quantity) string { return q.In(v.Voice) }
