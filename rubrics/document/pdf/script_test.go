package pdf

import (
	"fmt"
	"math/rand/v2"
	"os/exec"
	"strings"
	"testing"

	"golang.org/x/text/unicode/bidi"
	"golang.org/x/text/unicode/norm"
	"golang.org/x/text/unicode/runenames"
	"pgregory.net/rapid"
)

// TestArabicForms holds the table of forms to the names and decompositions of the
// Unicode Character Database, as golang.org/x/text carries them.
func TestArabicForms(t *testing.T) {
	names := []string{"ISOLATED FORM", "FINAL FORM", "INITIAL FORM", "MEDIAL FORM"}
	for letter, form := range arabicForms {
		for k := range form.forms {
			r := form.first + k
			if got := runenames.Name(r); !strings.HasSuffix(got, names[k]) {
				t.Errorf("%U, form %d of %U, is %s", r, k, letter, got)
			}
			if got := norm.NFKD.String(string(r)); got != norm.NFKD.String(string(letter)) {
				t.Errorf("%U decomposes to %q, not to %q", r, got, string(letter))
			}
		}
	}
	for alef, ligature := range lamAlef {
		for k, form := range []string{"ISOLATED FORM", "FINAL FORM"} {
			r := ligature + rune(k)
			if got := runenames.Name(r); !strings.HasPrefix(got, "ARABIC LIGATURE LAM WITH ALEF") || !strings.HasSuffix(got, form) {
				t.Errorf("%U is %s", r, got)
			}
			if got := norm.NFKD.String(string(r)); got != norm.NFKD.String(string([]rune{lam, alef})) {
				t.Errorf("%U decomposes to %q", r, got)
			}
		}
	}
}

func TestArabicJoins(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"one letter alone", "ب", "\ufe8f"},
		{"three that join", "ببب", "\ufe91\ufe92\ufe90"},
		{"after one that does not reach on", "داب", "\ufea9\ufe8d\ufe8f"},
		{"lam with alef", "سلام", "\ufeb3\ufefc\x00\ufee1"},
		{"lam with alef at the beginning", "لا", "\ufefb\x00"},
		{"a mark between does not part", "بَب", "\ufe91\u064e\ufe90"},
		{"a non-joiner parts", "ب\u200cب", "\ufe8f\u200c\ufe8f"},
		{"a Latin letter parts", "بaب", "\ufe8fa\ufe8f"},
	} {
		got := []rune(c.text)
		arabic(got)
		if string(got) != c.want {
			t.Errorf("%s: %q becomes %q, want %q", c.name, c.text, string(got), c.want)
		}
	}
}

// TestEmbedding holds directions to golang.org/x/text/unicode/bidi, which tells of
// each character whether it runs to the left. It pairs no brackets: those are held
// to another library below.
func TestEmbedding(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOfN(rapid.SampledFrom([]rune("abאבגجسم123٤٥ .,:-+/$%\u05b0\u064e")), 1, 24, -1).Draw(t, "text")
		var p bidi.Paragraph
		if _, err := p.SetString(text); err != nil {
			t.Skip("not taken")
		}
		order, err := p.Order()
		if err != nil {
			t.Skip("not taken")
		}
		var want []bool
		for i := range order.NumRuns() {
			run := order.Run(i)
			for range []rune(run.String()) {
				want = append(want, run.Direction() == bidi.RightToLeft)
			}
		}
		runes := []rune(text)
		levels, base := embedding(runes)
		// Spaces at the end take the paragraph's direction (L1), which lines do here.
		for i := len(runes) - 1; i >= 0 && runes[i] == ' '; i-- {
			levels[i] = base
		}
		for i := range want {
			if got := levels[i]%2 == 1; got != want[i] {
				t.Fatalf("%q: character %d (%q) runs to the left: %v, want %v; levels %v", text, i, runes[i], got, want[i], levels)
			}
		}
	})
}

// TestBrackets holds levels with brackets to GNU FriBidi, where it is installed.
func TestBrackets(t *testing.T) {
	tool, err := exec.LookPath("fribidi")
	if err != nil {
		t.Skip("fribidi is not installed")
	}
	random := rand.New(rand.NewPCG(1, 2))
	from := []rune("abאבגجسم123٤٥ .,:-+/$%()[]()[]")
	var texts []string
	for range 5000 {
		text := ""
		for range 1 + random.IntN(20) {
			text += string(from[random.IntN(len(from))])
		}
		texts = append(texts, text)
	}
	cmd := exec.Command(tool, "--levels", "--novisual", "--nobreak", "--nopad", "--wltr")
	cmd.Stdin = strings.NewReader(strings.Join(texts, "\n") + "\n")
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimRight(string(out), "\n"), "\n")
	if len(lines) != len(texts) {
		t.Fatalf("%d answers to %d texts", len(lines), len(texts))
	}
	for i, text := range texts {
		runes := []rune(text)
		levels, base := embedding(runes)
		for k := len(runes) - 1; k >= 0 && runes[k] == ' '; k-- {
			levels[k] = base
		}
		if got, want := strings.Trim(fmt.Sprint(levels), "[]"), strings.Join(strings.Fields(lines[i]), " "); got != want {
			t.Errorf("%q: levels %s, want %s", text, got, want)
		}
	}
}

// TestVisual: texts in the manner of the examples of UAX #9, 3.4 (L2).
func TestVisual(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"car means אבג.", "car means גבא."},
		{"מכונית היא car", "car איה תינוכמ"},
		{"אבג 123 דהו", "והד 123 גבא"},
		{"abc אבג 123 דהו xyz", "abc והד 123 גבא xyz"},
		{"(אבג)", "(גבא)"}, // mirrored
	} {
		lines := wrap(c.text, body, 1000)
		got := ""
		for _, l := range lines[0].letters {
			got += string(l.drawn)
		}
		if got != c.want {
			t.Errorf("%q stands as %q, want %q", c.text, got, c.want)
		}
	}
}

func TestUncoveredCharacters(t *testing.T) {
	d := sampleEstimate(sampleEnglish, "en-US", 1, 0)
	if got := Uncovered(d); len(got) != 0 {
		t.Errorf("the sample has boxes for %q", got)
	}
	d.Blocks[2].Text = "日本 and 👍🏽, 日 again\x00, 👨‍👩‍👧"
	if got := strings.Join(Uncovered(d), "|"); got != "日|本|👍🏽|👨‍👩‍👧" {
		t.Errorf("uncovered: %q", got)
	}
	for _, script := range []string{"Ελληνικά ά", "Кириллица ґїщ", "Հայերեն և", "ქართული", "עברית שָׁלוֹם", "العربية لا گچپژ ۱۲۳", "Zażółć İğı Dây cáp ½ ″ ⌀ ± ≤ µ € £ ¥ ₪ ₽ ✓ ☐ ⚠ → □"} {
		d.Blocks[2].Text = script
		if got := Uncovered(d); len(got) != 0 {
			t.Errorf("%s: no letter for %q", script, got)
		}
	}
}
