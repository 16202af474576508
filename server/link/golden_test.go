package link

import (
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"asfound/rubrics/document"
)

// Every estimate that the engine makes is taken; what is for oneself is not.
func TestPapersOfTheEngine(t *testing.T) {
	paths, err := filepath.Glob("../../testdata/golden/document/*.json")
	if err != nil || len(paths) == 0 {
		t.Fatalf("no documents: %v", err)
	}
	estimates := 0
	for _, path := range paths {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		var d document.Document
		if err := json.Unmarshal(text, &d); err != nil {
			t.Fatal(err)
		}
		_, err = ReadDocument(text)
		if d.Kind == "estimate" {
			estimates++
		}
		if taken := err == nil; taken != (d.Kind == "estimate") || err != nil && !errors.Is(err, ErrRefused) {
			t.Errorf("%s, %s: %v", path, d.Kind, err)
		}
	}
	if estimates == 0 {
		t.Error("no estimate among them")
	}
}
