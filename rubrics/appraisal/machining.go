package appraisal

import "math"

// SpindleSpeed is N = 12 V / (pi D): V ft/min, D in, N rev/min.
func SpindleSpeed(v, d float64) float64 { return 12 * v / (math.Pi * d) }

// CuttingTime is t = L / (N f) minutes a pass: L in, N rev/min, f in/rev.
func CuttingTime(l, n, f float64) float64 { return l / float64(n*f) }

// MachiningMinutes is set-up once for the lot, then loading, cutting and
// finishing a piece.
func MachiningMinutes(m Make) float64 {
	piece := m.Load + m.Finish
	for _, c := range m.Cuts {
		piece += float64(float64(c.Passes) * CuttingTime(c.Length, SpindleSpeed(c.Speed, c.Diameter), c.Feed))
	}
	return m.Setup + float64(float64(m.Pieces)*piece)
}

// machiningHours spreads the computed time; overruns reach twice as far as
// savings (a judgement).
func machiningHours(m Make) Hours {
	t := MachiningMinutes(m) / 60
	return Hours{Low: t * (1 - m.Spread), Likely: t, High: t * (1 + 2*m.Spread)}
}
