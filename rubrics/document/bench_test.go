package document_test

import (
	"testing"

	"asfound/rubrics/document"
)

// BenchmarkEstimate makes a seller's paper without the JSON around it.
func BenchmarkEstimate(b *testing.B) {
	jd, f := judge(b), file(b, "demo/1-lift-walked")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := document.Make(jd, nil, f, document.Ask{Kind: "estimate", Units: "metric"}); err != nil {
			b.Fatal(err)
		}
	}
}
