package document_test

import (
	"os"
	"sync"
	"testing"

	"asfound/rubrics"
	"asfound/rubrics/appraisal"
)

var carried = sync.OnceValues(func() (*appraisal.Judge, error) {
	all, err := rubrics.All()
	if err != nil {
		return nil, err
	}
	parts, err := rubrics.Parts()
	if err != nil {
		return nil, err
	}
	return appraisal.NewJudge(all, parts), nil
})

func judge(t testing.TB) *appraisal.Judge {
	t.Helper()
	jd, err := carried()
	if err != nil {
		t.Fatal(err)
	}
	return jd
}

func file(t testing.TB, name string) *appraisal.File {
	t.Helper()
	src, err := os.ReadFile("../../testdata/" + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	d, err := appraisal.Decode(src)
	if err != nil {
		t.Fatal(err)
	}
	return &d.File
}
