package door_test

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"testing"

	"asfound/rubrics"
	"asfound/rubrics/appraisal"
	"asfound/rubrics/door"
)

// demoFile is the lift inspected by half, as its file.
func demoFile(t testing.TB) appraisal.File {
	t.Helper()
	src, err := os.ReadFile("../../testdata/demo/2-lift-half.json")
	if err != nil {
		t.Fatal(err)
	}
	doc, err := appraisal.Decode(src)
	if err != nil {
		t.Fatal(err)
	}
	return doc.File
}

// sized is the two-post lift's rubric with n checks, its own again and again.
func sized(t testing.TB, n int) *door.Door {
	t.Helper()
	all, err := rubrics.All()
	if err != nil {
		t.Fatal(err)
	}
	parts, err := rubrics.Parts()
	if err != nil {
		t.Fatal(err)
	}
	for i := range all {
		if all[i].ID != "two-post-lift" {
			continue
		}
		var checks []appraisal.Check
		for _, s := range all[i].Sections {
			checks = append(checks, s.Checks...)
		}
		own := len(checks)
		for k := own; k < n; k++ {
			again := checks[k%own]
			again.ID = fmt.Sprintf("%s-%d", again.ID, k/own)
			checks = append(checks, again)
		}
		section := all[i].Sections[0]
		section.Checks = checks[:n]
		all[i].Sections = []appraisal.Section{section}
	}
	text, err := json.Marshal(door.NewCatalogue(all, parts, "2026-01-01"))
	if err != nil {
		t.Fatal(err)
	}
	d, err := door.Open(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func recompute(b *testing.B, d *door.Door, f appraisal.File) {
	b.Helper()
	src, err := json.Marshal(f)
	if err != nil {
		b.Fatal(err)
	}
	argument := append(append([]byte(`{"file":`), src...), '}')
	var r door.Reply
	if err := json.Unmarshal(d.Call("appraise", argument), &r); err != nil || r.Error != "" {
		b.Fatal(err, r.Error)
	}
	b.ReportAllocs()
	for b.Loop() {
		d.Call("appraise", argument)
	}
	b.ReportMetric(appraisal.Draws/(b.Elapsed().Seconds()/float64(b.N)), "draws/s")
}

func BenchmarkChecks(b *testing.B) {
	for _, n := range []int{20, 60, 200} {
		b.Run(fmt.Sprint(n), func(b *testing.B) { recompute(b, sized(b, n), demoFile(b)) })
	}
}

func BenchmarkComparables(b *testing.B) {
	for _, n := range []int{3, 100, 10_000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			f := demoFile(b)
			f.Comparables = nil
			for i := range n {
				f.Comparables = append(f.Comparables, appraisal.Comparable{
					ID: fmt.Sprint("c", i), Title: fmt.Sprint("lift ", i), Basis: []string{"asked", "sold"}[i%2], Made: 2000 + i%25,
					Price: appraisal.Money(2000_00 + 1000_00*math.Sin(float64(i))), Maker: fmt.Sprint("maker ", i%7), Condition: []string{"sound", "worn", "bad"}[i%3],
				})
			}
			recompute(b, open(b), f)
		})
	}
}
