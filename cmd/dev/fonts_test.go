package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
)

// TestFontsAreFresh holds the cut faces in the tree to the whole ones.
func TestFontsAreFresh(t *testing.T) {
	cut, err := cutFonts()
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range cut {
		have, err := os.ReadFile(filepath.Join("../..", fontsPath, name))
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(have, want) {
			t.Errorf("%s is not cut from the whole face as it should be: run go run ./cmd/dev fonts", name)
		}
	}
}
