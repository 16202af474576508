package main

import (
	"os"
	"strings"
	"testing"
)

// What a version of a rubric says never changes once it was noted.
func TestRubricVersions(t *testing.T) {
	noted, err := os.ReadFile("../../" + rubricVersions)
	if err != nil {
		t.Fatal(err)
	}
	lines, err := rubricLines()
	if err != nil {
		t.Fatal(err)
	}
	now, err := addVersions(string(noted), lines)
	if err != nil {
		t.Fatal(err)
	}
	if now != string(noted) {
		t.Errorf("versions are not noted yet: `go run ./cmd/dev golden` writes them to %s", rubricVersions)
	}
}

func TestAddVersions(t *testing.T) {
	noted := "lift 1 aa\npress 2 bb\n"
	for _, c := range []struct{ lines, want, says string }{
		{"lift 1 aa|press 2 bb", noted, ""},
		{"lift 2 cc|press 2 bb", noted + "lift 2 cc\n", ""},
		{"lift 1 dd", "", "lift version 1 says something else"},
	} {
		got, err := addVersions(noted, strings.Split(c.lines, "|"))
		if got != c.want || (err == nil) != (c.says == "") || err != nil && !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s gives %q, %v", c.lines, got, err)
		}
	}
}
