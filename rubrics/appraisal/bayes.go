package appraisal

import "asfound/rubrics/kernel"

// weights are the logarithms of prior times likelihoods, one a class. A sum of
// logarithms neither vanishes nor minds in which order findings come.
type weights []float64

// weigh starts from the prior of each class.
func weigh(prior []float64) weights {
	w := make(weights, len(prior))
	w.see(prior)
	return w
}

// see takes in one finding by its likelihood in each class.
func (w weights) see(likelihood []float64) {
	for k, p := range likelihood {
		w[k] += kernel.Log(max(p, 1e-300)) // checked rubrics hold no 0; it would be no number
	}
}

// shares are the probabilities of the classes by Bayes' rule; they sum to 1.
func (w weights) shares() []float64 {
	top, total := w[0], 0.0
	for _, v := range w {
		top = max(top, v)
	}
	out := make([]float64, len(w))
	for k, v := range w {
		out[k] = kernel.Exp(v - top)
		total += out[k]
	}
	for k := range out {
		out[k] /= total
	}
	return out
}
