package sales

import (
	"fmt"
	"math/rand/v2"
	"testing"
)

func BenchmarkFit(b *testing.B) {
	for _, n := range []int{3, 100, 10_000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			k := drawMarket(rand.New(rand.NewPCG(1, 1)), n, 0)
			for b.Loop() {
				Fit(k.form, k.sales)
			}
		})
	}
}

func BenchmarkPredict(b *testing.B) {
	for _, n := range []int{3, 100, 10_000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			k := drawMarket(rand.New(rand.NewPCG(1, 1)), n, 0)
			m := Fit(k.form, k.sales)
			for b.Loop() {
				m.Predict(&k.thing)
			}
		})
	}
}
