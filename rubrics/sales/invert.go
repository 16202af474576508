package sales

import "math"

// invert gives the inverse of a symmetric positive definite matrix by Cholesky's
// decomposition; it reads the lower triangle. A pivot lost to rounding is held
// just above zero.
func invert(a [][]float64) [][]float64 {
	n := len(a)
	l := make([][]float64, n)
	for i := range l {
		l[i] = make([]float64, i+1)
		for j := range l[i] {
			s := a[i][j]
			for k := range j {
				s -= float64(l[i][k] * l[j][k])
			}
			if i == j {
				l[i][i] = math.Sqrt(max(s, 1e-14*max(a[i][i], 1e-300)))
			} else {
				l[i][j] = s / l[j][j]
			}
		}
	}
	out := make([][]float64, n)
	for c := range out {
		x := make([]float64, n)
		for i := c; i < n; i++ { // forward
			s := 0.0
			if i == c {
				s = 1
			}
			for k := c; k < i; k++ {
				s -= float64(l[i][k] * x[k])
			}
			x[i] = s / l[i][i]
		}
		for i := n - 1; i >= 0; i-- { // back
			s := x[i]
			for k := i + 1; k < n; k++ {
				s -= float64(l[k][i] * x[k])
			}
			x[i] = s / l[i][i]
		}
		out[c] = x
	}
	return out
}
