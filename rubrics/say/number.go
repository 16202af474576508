package say

import (
	"strconv"
	"strings"
)

// Whole writes a whole number, thousands apart.
func (v *Voice) Whole(n int64) string {
	digits, negative := strings.CutPrefix(strconv.FormatInt(n, 10), "-")
	return sign(negative) + v.grouped(digits)
}

// Number writes a number with exactly so many decimals.
func (v *Voice) Number(x float64, decimals int) string {
	text, negative := strings.CutPrefix(strconv.FormatFloat(x, 'f', decimals, 64), "-")
	if strings.Trim(text, "0.") == "" {
		negative = false
	}
	whole, rest, has := strings.Cut(text, ".")
	text = sign(negative) + v.grouped(whole)
	if has {
		text += v.Locale().Decimal + rest
	}
	return text
}

// Short writes a number with at most so many decimals.
func (v *Voice) Short(x float64, decimals int) string {
	text := v.Number(x, decimals)
	if decimals == 0 {
		return text
	}
	return strings.TrimSuffix(strings.TrimRight(text, "0"), v.Locale().Decimal)
}

// Digits writes a plain decimal such as -1234.5 with the marks of the locale.
func (v *Voice) Digits(text string) string {
	text, negative := strings.CutPrefix(text, "-")
	whole, rest, has := strings.Cut(text, ".")
	if !strings.Contains(whole, "e") {
		whole = v.grouped(whole)
	}
	if has {
		whole += v.Locale().Decimal + rest
	}
	return sign(negative) + whole
}

// Percent writes a share of 0 to 1 as a whole percentage, the sign apart (ISO 80000-1).
func (v *Voice) Percent(share float64) string {
	return v.Number(share*100, 0) + "\u00a0%"
}

func (v *Voice) grouped(digits string) string {
	l := v.Locale()
	if len(digits) < l.GroupFrom {
		return digits
	}
	for i := len(digits) - 3; i > 0; i -= 3 {
		digits = digits[:i] + l.Group + digits[i:]
	}
	return digits
}

func sign(negative bool) string {
	if negative {
		return "-"
	}
	return ""
}
