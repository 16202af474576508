package sales

import (
	"fmt"
	"math/rand/v2"
	"testing"
)

func benchmark(b *testing.B, run func(b *testing.B, k drawn, m *Market)) {
	for _, n := range []int{3, 100, 10_000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			k := drawMarket(rand.New(rand.NewPCG(1, 1)), n, 0)
			run(b, k, Fit(k.form, k.sales))
		})
	}
}

func BenchmarkFit(b *testing.B) {
	benchmark(b, func(b *testing.B, k drawn, _ *Market) {
		for b.Loop() {
			Fit(k.form, k.sales)
		}
	})
}

// The first prediction also predicts its neighbours one by one.
func BenchmarkFirstPrediction(b *testing.B) {
	benchmark(b, func(b *testing.B, k drawn, m *Market) {
		for b.Loop() {
			m.misses = nil
			m.Predict(&k.thing)
		}
	})
}

func BenchmarkFurtherPrediction(b *testing.B) {
	benchmark(b, func(b *testing.B, k drawn, m *Market) {
		for b.Loop() {
			m.Predict(&k.thing)
		}
	})
}
