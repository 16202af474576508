package depreciation

import "asfound/rubrics/kernel"

// depth is where the continued fraction below is cut off: for shapes of 1 to 60 it
// no longer changes from 30 on.
const depth = 32

// incompleteBeta is the regularised incomplete beta function I_x(a, b), for x from
// 0 to 1 and shapes of 1 to 60.
func incompleteBeta(x, a, b float64) float64 {
	switch {
	case x <= 0:
		return 0
	case x >= 1:
		return 1
	case x > (a+1)/(a+b+2): // the fraction converges fast on the near side alone
		return 1 - float64(betaFront(1-x, b, a)*betaFraction(1-x, b, a))
	}
	return float64(betaFront(x, a, b) * betaFraction(x, a, b))
}

// betaFront is x^a (1-x)^b / (a B(a, b)).
func betaFront(x, a, b float64) float64 {
	if x <= 0 || x >= 1 {
		return 0
	}
	log := float64(a*kernel.Log(x)) + float64(b*kernel.Log(1-x)) - kernel.Log(a)
	return kernel.Exp(log + logGamma(a+b) - logGamma(a) - logGamma(b))
}

// betaFraction is the continued fraction of the NIST Digital Library of
// Mathematical Functions, 8.17.22, from the inside out.
func betaFraction(x, a, b float64) float64 {
	f := 1.0
	for m := float64(depth); m > 0; m-- {
		even := m * (b - m) * x / ((a + 2*m - 1) * (a + 2*m))
		odd := -(a + m - 1) * (a + b + m - 1) * x / ((a + 2*m - 2) * (a + 2*m - 1))
		f = 1 + odd/(1+even/f)
	}
	return 1 / f
}

// logGamma is the logarithm of the gamma function for z of 1 or more: Stirling's
// series (DLMF 5.11.1) from 12 up, and the recurrence below.
func logGamma(z float64) float64 {
	below := 1.0
	for ; z < 12; z++ {
		below *= z
	}
	const halfLog2Pi = 0.91893853320467274178
	w := 1 / float64(z*z)
	series := 1.0 / 1188
	for _, c := range [...]float64{-1.0 / 1680, 1.0 / 1260, -1.0 / 360, 1.0 / 12} {
		series = c + float64(series*w)
	}
	return float64((z-0.5)*kernel.Log(z)) - z + halfLog2Pi + series/z - kernel.Log(below)
}

// betaTail is the share of a symmetric beta distribution of shape a above x, and
// how far above x its mean then lies. The mean of the tail needs no integral:
// I_x(a+1, a) = I_x(a, a) - betaFront(x, a, a), DLMF 8.17.20.
func betaTail(x, a float64) (above, further float64) {
	switch {
	case x >= 1:
		return 0, 0
	case x == 0.5:
		above = 0.5 // by symmetry, without rounding
	case x < 0.5:
		above = 1 - incompleteBeta(x, a, a)
	default:
		above = incompleteBeta(1-x, a, a)
	}
	return above, max(0.5-x+betaFront(min(x, 1-x), a, a)/(2*above), 0)
}
