package appraisal

// Information is the expected value of sample information (Raiffa, Schlaifer,
// Applied Statistical Decision Theory, 1961): how much better one does on
// average when the signal is known before choosing,
//
//	E[max over a of E[payoff of a | signal]] - max over a of E[payoff of a].
//
// Payoffs hold a row an action and a column a draw; signal numbers what each
// draw would show, from 0; weights are those of the draws, nil for equal ones,
// and need not sum to 1. With a signal of its own for every draw it is the
// expected value of perfect information. It is never negative.
func Information(payoffs [][]float64, signal []int, weights []float64) float64 {
	signals := 0
	for _, s := range signal {
		signals = max(signals, s+1)
	}
	total := float64(len(signal))
	if weights != nil {
		total = 0
		for _, w := range weights {
			total += w
		}
	}
	if len(payoffs) == 0 || !(total > 0) {
		return 0
	}
	best := make([]float64, signals) // of each signal, with what was summed so far
	sum := make([]float64, signals)
	blind := 0.0
	for a, row := range payoffs {
		clear(sum)
		for d, s := range signal {
			if weights == nil {
				sum[s] += row[d]
			} else {
				sum[s] += float64(weights[d] * row[d])
			}
		}
		all := 0.0
		for s, v := range sum {
			all += v
			if a == 0 || v > best[s] {
				best[s] = v
			}
		}
		if a == 0 || all > blind {
			blind = all
		}
	}
	informed := 0.0
	for _, v := range best {
		informed += v
	}
	return max((informed-blind)/total, 0)
}
