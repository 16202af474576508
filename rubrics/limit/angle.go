package limit

// Sines and tangents of their own, since the library's differ in the last bit
// between processors.

const degree = 3.14159265358979323846 / 180

// arctan gives the angle in degrees of a slope of at most 0.1.
func arctan(x float64) float64 {
	sum, term := 0.0, x
	for n := 1.0; n <= 21; n += 2 {
		sum += float64(term / n)
		term = -float64(float64(term*x) * x)
	}
	return sum / degree
}

// sine takes degrees from 0 to 90.
func sine(deg float64) float64 {
	x := float64(deg * degree)
	sum, term := 0.0, x
	for n := 1.0; n <= 23; n += 2 {
		sum += term
		term = -float64(float64(term*x)*x) / float64((n+1)*(n+2))
	}
	return sum
}
