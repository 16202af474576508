package door_test

import (
	"os"
	"testing"

	"asfound/rubrics"
	"asfound/rubrics/appraisal"
)

func source(b *testing.B, name string) []byte {
	b.Helper()
	src, err := os.ReadFile("../../testdata/demo/" + name)
	if err != nil {
		b.Fatal(err)
	}
	return src
}

// BenchmarkAppraise is the whole recompute as the worker does it: JSON in, all
// draws, JSON out.
func BenchmarkAppraise(b *testing.B) { call(b, "1-lift-walked.json", "") }

// BenchmarkListed is the same with nothing checked yet, and BenchmarkPlan with a
// plan for 45 minutes.
func BenchmarkListed(b *testing.B) { call(b, "3-lift-listed.json", "") }
func BenchmarkPlan(b *testing.B)   { call(b, "3-lift-listed.json", `,"minutes":45`) }

func call(b *testing.B, name, more string) {
	d := open(b)
	argument := append(append([]byte(`{"file":`), source(b, name)...), more+"}"...)
	b.ReportAllocs()
	for b.Loop() {
		d.Call("appraise", argument)
	}
}

// BenchmarkJudge leaves the JSON out.
func BenchmarkJudge(b *testing.B) {
	all, err := rubrics.All()
	if err != nil {
		b.Fatal(err)
	}
	parts, err := rubrics.Parts()
	if err != nil {
		b.Fatal(err)
	}
	doc, err := appraisal.Decode(source(b, "1-lift-walked.json"))
	if err != nil {
		b.Fatal(err)
	}
	judge := appraisal.NewJudge(all, parts)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := judge.Of(&doc.File, appraisal.Ask{}); err != nil {
			b.Fatal(err)
		}
	}
}
