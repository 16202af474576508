// Package kernel has the elementary functions of the engine. It is pure arithmetic,
// so that every build gives the same last bit.
package kernel

import "math"

// The kernels below use plain arithmetic only: the library versions have
// assembly on some processors whose last bit differs. Products that are added
// to are wrapped in float64 so that no compiler fuses them.

const (
	ln2High = 6.93147180369123816490e-01
	ln2Low  = 1.90821492927058770002e-10
)

// Exp is e to the x by argument reduction and the FreeBSD msun rational form
// (e_exp.c, Sun Microsystems 1993), relative error below 1e-15.
func Exp(x float64) float64 {
	switch {
	case x > 709:
		return math.MaxFloat64
	case x < -740:
		return 0
	}
	k := math.Floor(x/math.Ln2 + 0.5)
	high := x - float64(k*ln2High)
	low := float64(k * ln2Low)
	r := high - low
	t := float64(r * r)
	c := r - float64(t*(1.66666666666666657415e-01+float64(t*(-2.77777777770155933842e-03+float64(t*(6.61375632143793436117e-05+float64(t*(-1.65339022054652515390e-06+float64(t*4.13813679705723846039e-08)))))))))
	y := 1 - ((low - float64(r*c)/(2-c)) - high)
	if k > -1000 && k < 1000 {
		return y * math.Float64frombits(uint64(1023+int(k))<<52) // exact, and faster
	}
	return math.Ldexp(y, int(k))
}

// Log is the natural logarithm (FreeBSD msun e_log.c form); x must be positive.
func Log(x float64) float64 {
	f, e := math.Frexp(x)
	if f < math.Sqrt2/2 {
		f *= 2
		e--
	}
	f--
	k := float64(e)
	s := f / (2 + f)
	s2 := float64(s * s)
	s4 := float64(s2 * s2)
	t1 := float64(s2 * (6.666666666666735130e-01 + float64(s4*(2.857142874366239149e-01+float64(s4*(1.818357216161805012e-01+float64(s4*1.479819860511658591e-01)))))))
	t2 := float64(s4 * (3.999999999940941908e-01 + float64(s4*(2.222219843214978396e-01+float64(s4*1.531383769920937332e-01)))))
	r := t1 + t2
	half := float64(0.5 * float64(f*f))
	return float64(k*ln2High) - ((half - (float64(s*(half+r)) + float64(k*ln2Low))) - f)
}

// Pow is x to the y for positive x.
func Pow(x, y float64) float64 { return Exp(float64(y * Log(x))) }
