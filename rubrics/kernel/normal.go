package kernel

import "math"

// NormalQuantile is the inverse of the standard normal distribution for q in
// (0, 1), by P. J. Acklam's rational approximation (2003), relative error below
// 1.2e-9.
func NormalQuantile(q float64) float64 {
	const low = 0.02425
	switch {
	case q <= 0:
		return -40
	case q >= 1:
		return 40
	case q < low:
		return tail(math.Sqrt(-2 * Log(q)))
	case q > 1-low:
		return -tail(math.Sqrt(-2 * Log(1-q)))
	}
	x := q - 0.5
	r := float64(x * x)
	top := horner(r, -3.969683028665376e+01, 2.209460984245205e+02, -2.759285104469687e+02, 1.383577518672690e+02, -3.066479806614716e+01, 2.506628277459239e+00)
	bottom := horner(r, -5.447609879822406e+01, 1.615858368580409e+02, -1.556989798598866e+02, 6.680131188771972e+01, -1.328068155288572e+01, 1)
	return float64(top*x) / bottom
}

func tail(t float64) float64 {
	top := horner(t, -7.784894002430293e-03, -3.223964580411365e-01, -2.400758277161838e+00, -2.549732539343734e+00, 4.374664141464968e+00, 2.938163982698783e+00)
	return top / horner(t, 7.784695709041462e-03, 3.224671290700398e-01, 2.445134137142996e+00, 3.754408661907416e+00, 1)
}

// horner evaluates a polynomial, highest power first.
func horner(x float64, c ...float64) float64 {
	sum := 0.0
	for _, v := range c {
		sum = float64(sum*x) + v
	}
	return sum
}
