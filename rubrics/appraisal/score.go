package appraisal

import "math"

// score sums one of the two scores over what applies; weight picks it.
func score(walked []judged, weight func(Weight) int) Score {
	var got, done, all float64
	var s Score
	for i := range walked {
		j := &walked[i]
		w := float64(weight(j.check.Weight))
		if !j.applies || w == 0 {
			continue
		}
		s.Applies++
		all += w
		if j.grade != nil {
			s.Checked++
			done += w
			got += w * float64(*j.grade) / 4
		}
	}
	if all == 0 {
		return s
	}
	s.Coverage = tenths(100 * done / all)
	s.Low = tenths(100 * got / all)
	s.High = tenths(100 * (got + all - done) / all)
	if done > 0 {
		v := tenths(100 * got / done)
		s.Value = &v
	}
	return s
}

func tenths(x float64) float64 { return math.Floor(float64(x*10)+0.5) / 10 }
