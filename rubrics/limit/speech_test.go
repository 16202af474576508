package limit

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"asfound/rubrics/say"

	"github.com/goccy/go-yaml"
	"pgregory.net/rapid"
)

// marking is a voice whose every text stands between marks: what is not said through
// it shows.
func marking(t *testing.T) *say.Voice {
	t.Helper()
	names, err := filepath.Glob("../tongue/es/*.yaml")
	if err != nil || len(names) < 4 {
		t.Fatal(names, err)
	}
	words := map[string]string{}
	for _, name := range names {
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		var pairs []struct{ En, Es string }
		if err := yaml.Unmarshal(src, &pairs); err != nil {
			t.Fatal(err)
		}
		for _, p := range pairs {
			words[p.En] = "‹" + p.En + "›"
		}
	}
	locale, _ := say.LocaleOf("es-ES")
	return say.New(locale, words)
}

// unsaid tells whether a text, or a piece of it, was not said by the marking voice.
func unsaid(text string) bool {
	text = strings.TrimSuffix(text, ".")
	if !strings.HasPrefix(text, "‹") || !strings.HasSuffix(text, "›") {
		return text != ""
	}
	depth := 0
	for i, r := range text {
		switch r {
		case '‹':
			depth++
		case '›':
			depth--
		}
		if depth == 0 && i+len("›") < len(text) {
			return true
		}
	}
	return depth != 0 || strings.Contains(text, "%!")
}

// Every sentence of a result and of a refusal is said by the voice as one pattern, and
// numbers in it have the marks of its locale.
func TestEverySentenceIsSaid(t *testing.T) {
	v := marking(t)
	for _, d := range All() {
		t.Run(d.Name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				given := likely(t, &d)
				if rapid.IntRange(0, 4).Draw(t, "odd") == 0 {
					q := rapid.SampledFrom(d.Quantities).Draw(t, "quantity")
					given[q.Name] = rapid.SampledFrom([]string{"", "0 " + q.Unit, "-1 " + q.Unit, "99999 " + q.Unit, "x", "1.5"}).Draw(t, "odd one")
				}
				res, err := ComputeIn(v, d.Name, given)
				if err != nil {
					e := err.(*Error)
					if unsaid(e.What) || unsaid(e.Right) {
						t.Fatalf("%v: not said: %q, %q", given, e.What, e.Right)
					}
					return
				}
				for _, text := range append([]string{res.Text, res.Caution}, res.Notes...) {
					if unsaid(text) {
						t.Fatalf("%v: not said: %q", given, text)
					}
				}
				for _, f := range res.More {
					if unsaid(f.Title) {
						t.Fatalf("%v: not said: %q", given, f.Title)
					}
				}
			})
		})
	}
}

// A result is in Spanish, with its decimal mark, and finds what the English one finds.
func TestSpokenElsewhere(t *testing.T) {
	locale, _ := say.LocaleOf("es-ES")
	v := say.New(locale, map[string]string{
		"The gap has grown by %s": "La abertura creció %s", "%s, more than %s: the frame has taken a set.": "%s, más que %s: el bastidor quedó deformado.",
		"the %s allowed": "lo admitido, %s",
	})
	res, err := ComputeIn(v, "press-set", map[string]string{"growth": "0.2 in"})
	if want := "La abertura creció 0,2 in, más que lo admitido, 0,125 in: el bastidor quedó deformado."; err != nil || res.Text != want || res.Finding != Beyond {
		t.Errorf("%q, %s, %v, want %q", res.Text, res.Finding, err, want)
	}
}
