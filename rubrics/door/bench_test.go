package door_test

import (
	"os"
	"testing"
)

// BenchmarkAppraise is the whole recompute as the worker does it: JSON in,
// 10,000 draws, JSON out.
func BenchmarkAppraise(b *testing.B) {
	d := open(b)
	src, err := os.ReadFile("../../testdata/demo/1-lift-walked.json")
	if err != nil {
		b.Fatal(err)
	}
	argument := append(append([]byte(`{"file":`), src...), '}')
	b.ReportAllocs()
	for b.Loop() {
		d.Call("appraise", argument)
	}
}
