package appraisal

// Draws is how many times every sum is drawn.
const Draws = 10_000

// stream gives the uniform numbers of one named cause. It is counter-based, so
// adding a line never disturbs the others, and two listings that share a cause
// share its luck (common random numbers).
type stream uint64

// newStream derives a stream from its name.
func newStream(name string) stream { return stream(mix(hash(name))) }

// hash is FNV-1a, 64 bit.
func hash(name string) uint64 {
	h := uint64(14695981039346656037)
	for i := range len(name) {
		h ^= uint64(name[i])
		h *= 1099511628211
	}
	return h
}

// at is the i-th number of the stream, in [0, 1).
func (s stream) at(i int) float64 {
	return float64(mix(uint64(s)+uint64(i+1)*0x9E3779B97F4A7C15)>>11) / (1 << 53)
}

// mix is the finalizer of SplitMix64 (Steele, Lea, Flood, OOPSLA 2014).
func mix(z uint64) uint64 {
	z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9
	z = (z ^ (z >> 27)) * 0x94D049BB133111EB
	return z ^ (z >> 31)
}
