package pdf

import (
	"flag"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"asfound/rubrics/document/form"
)

var write = flag.Bool("write", false, "write the expected layouts again")

// outline is a layout as text: what stands on which page, in which order, as what.
func outline(l *layout) string {
	var out strings.Builder
	for i, page := range l.pages {
		fmt.Fprintf(&out, "page %d\n", i+1)
		for _, p := range page {
			for _, k := range p.strip.inks {
				role := "-"
				if k.part > 0 {
					role = l.parts[k.part].role
				}
				switch k.kind {
				case inkText:
					text := ""
					for _, letter := range k.line.letters {
						text += string(letter.drawn)
					}
					fmt.Fprintf(&out, "  %-8s %5.1f %5.1f  %s\n", role, p.y+k.y, k.x, text)
				case inkPhoto:
					fmt.Fprintf(&out, "  %-8s %5.1f %5.1f  photo %.0f x %.0f\n", role, p.y+k.y, k.x, k.w, k.h)
				}
			}
		}
	}
	return out.String()
}

// TestLayout holds papers to their expected layouts; `go test ./rubrics/document/pdf
// -run TestLayout -write` writes them again: read the difference.
func TestLayout(t *testing.T) {
	for _, c := range []struct {
		name  string
		page  Page
		words sampleWords
		tag   string
		lines int
		photo int
	}{
		{"short-letter-en", Letter, sampleEnglish, "en-US", 4, 5},
		{"short-a4-es", A4, sampleSpanish, "es-MX", 4, 5},
		{"long-a4-es", A4, sampleSpanish, "es-MX", 60, 0},
	} {
		w, h, _ := c.page.size()
		got := outline(layOut(sampleEstimate(c.words, c.tag, c.lines, c.photo), w, h, samplePhotos(c.photo)))
		name := "testdata/" + c.name + ".txt"
		if *write {
			if err := os.WriteFile(name, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if got != string(want) {
			t.Errorf("%s is laid out differently:\n%s", c.name, firstDifference(got, string(want)))
		}
	}
}

func firstDifference(got, want string) string {
	a, b := strings.Split(got, "\n"), strings.Split(want, "\n")
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			return fmt.Sprintf("line %d\n got %s\nwant %s", i+1, a[i], b[i])
		}
	}
	return fmt.Sprintf("%d lines, want %d", len(a), len(b))
}

// anyDocument draws documents of all blocks, sensible and not.
func anyDocument(t *rapid.T) form.Document {
	word := rapid.OneOf(
		rapid.StringOfN(rapid.SampledFrom([]rune("abc efg ÁñЖΩ אבגلاس日\n\x00-/.,(1)5")), 0, 40, -1),
		rapid.StringOfN(rapid.SampledFrom([]rune("abcdef/._?=")), 250, 350, -1),
		rapid.Just("<script>alert(1)</script>"), rapid.Just(strings.Repeat("several words in a row ", 60)),
	)
	kind := rapid.SampledFrom([]string{"heading", "text", "facts", "list", "table", "caution", "photos", "part", "unknown"})
	number := rapid.IntRange(-3, 120)
	var blocks func(depth int) []form.Block
	blocks = func(depth int) []form.Block {
		return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) form.Block {
			b := form.Block{Kind: kind.Draw(t, "kind"), Text: word.Draw(t, "text"), Level: rapid.IntRange(-1, 9).Draw(t, "level")}
			switch b.Kind {
			case "facts":
				b.Facts = rapid.SliceOfN(rapid.Custom(func(t *rapid.T) form.Fact {
					return form.Fact{Name: word.Draw(t, "name"), Value: word.Draw(t, "value")}
				}), 0, 5).Draw(t, "facts")
			case "list":
				b.Items = rapid.SliceOfN(word, 0, 5).Draw(t, "items")
			case "table":
				columns := rapid.SampledFrom([]int{0, 1, 2, 3, 5, 9, 14, 30}).Draw(t, "columns")
				b.Table = &form.Table{Columns: make([]form.Column, columns)}
				for i := range b.Table.Columns {
					b.Table.Columns[i] = form.Column{Title: rapid.SampledFrom([]string{"", "Sum", "What was found"}).Draw(t, "title"), Right: rapid.Bool().Draw(t, "right"), Share: number.Draw(t, "share")}
				}
				b.Table.Rows = rapid.SliceOfN(rapid.Custom(func(t *rapid.T) form.Row {
					return form.Row{Cells: rapid.SliceOfN(word, 0, columns+2).Draw(t, "cells"), Kind: rapid.SampledFrom([]string{"", "", "group", "total", "odd"}).Draw(t, "row")}
				}), 0, 8).Draw(t, "rows")
			case "caution":
				b.Signal, b.Word = rapid.SampledFrom([]string{"danger", "warning", "caution", "notice", ""}).Draw(t, "signal"), word.Draw(t, "word")
			case "photos":
				b.Photos = rapid.SliceOfN(rapid.Custom(func(t *rapid.T) form.Photo {
					return form.Photo{Key: sampleKey(rapid.IntRange(0, 3).Draw(t, "key")), Caption: word.Draw(t, "caption"), Pair: rapid.Bool().Draw(t, "pair"), Missing: rapid.Bool().Draw(t, "missing")}
				}), 0, 7).Draw(t, "photos")
			case "part":
				if depth < 3 {
					b.Blocks = blocks(depth + 1)
				}
			}
			return b
		}), 0, 6).Draw(t, "blocks")
	}
	return form.Document{Title: word.Draw(t, "title"), Date: "day", Language: "en", Blocks: blocks(0), Foot: word.Draw(t, "foot"), Page: "Page %s of %s"}
}

// counting names a letter; a bracket may be mirrored by what stands beside it.
func counting(l letter) string {
	return string(min(l.drawn, mirrored(l.drawn))) + l.typed
}

// written counts the characters of all that a document shows, spaces apart.
func written(d form.Document) map[string]int {
	count := map[string]int{}
	add := func(texts ...string) {
		for _, text := range texts {
			for _, paragraph := range clean(text) {
				all, _ := letters(paragraph, false)
				for _, l := range all {
					if !l.space {
						count[counting(l)]++
					}
				}
			}
		}
	}
	add(d.Title, d.Date)
	var walk func(list []form.Block)
	walk = func(list []form.Block) {
		for _, b := range list {
			switch b.Kind {
			case "facts":
				for _, f := range b.Facts {
					add(f.Name, f.Value)
				}
			case "list":
				add(b.Items...)
			case "table":
				for _, r := range b.Table.Rows { // a head over empty cells may be left out
					if len(b.Table.Columns) > 0 || len(r.Cells) > 0 {
						add(r.Cells...)
					}
				}
			case "caution":
				add(b.Word, b.Text)
			case "photos":
				for _, p := range b.Photos {
					add(p.Caption)
				}
			case "part":
				walk(b.Blocks)
			default:
				add(b.Text)
			}
		}
	}
	walk(d.Blocks)
	return count
}

// TestEveryDocument: nothing is lost, nothing stands over the edge or over something
// else, and the library takes it.
func TestEveryDocument(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anyDocument(t)
		page := rapid.SampledFrom([]Page{Letter, A4}).Draw(t, "page")
		w, h, _ := page.size()
		l := layOut(d, w, h, samplePhotos(4))
		shown := map[string]int{}
		for i, page := range l.pages {
			below := 0.0
			for _, p := range page {
				if p.y < below-0.01 || p.y+p.strip.height > h-footMargin {
					t.Fatalf("page %d: a strip from %.1f to %.1f, the one above ends at %.1f", i+1, p.y, p.y+p.strip.height, below)
				}
				below = p.y + p.strip.height
				for _, k := range p.strip.inks {
					if k.x < -4 || k.x+max(k.w, k.line.width) > w-2*sideMargin+4 || math.IsNaN(k.x+k.y+k.w+k.h) {
						t.Fatalf("page %d: ink of kind %d from %.1f, %.1f wide", i+1, k.kind, k.x, max(k.w, k.line.width))
					}
					for _, letter := range k.line.letters {
						if k.part > 0 && !letter.space {
							shown[counting(letter)]++
						}
					}
				}
			}
		}
		for c, n := range written(d) {
			if shown[c] < n {
				t.Fatalf("%q stands %d times in the document, %d times on paper", c, n, shown[c])
			}
		}
		if _, err := l.draw(); err != nil {
			t.Fatal(err)
		}
	})
}

// TestKeepsTogether: no heading ends a page, a part that fits stands on one page, a
// table's head stands on every page of it, a total is not alone.
func TestKeepsTogether(t *testing.T) {
	for lines := 1; lines <= 40; lines++ {
		w, h, _ := Letter.size()
		l := layOut(sampleEstimate(sampleEnglish, "en-US", lines, lines), w, h, samplePhotos(lines))
		heads := map[string]int{}
		for i, page := range l.pages {
			last := page[len(page)-1]
			for _, k := range last.strip.inks {
				if role := l.parts[k.part].role; strings.HasPrefix(role, "H") {
					t.Errorf("%d lines: page %d ends with a heading", lines, i+1)
				}
			}
			text := ""
			totals, rows := 0, 0
			for _, p := range page {
				for _, k := range p.strip.inks {
					for _, letter := range k.line.letters {
						text += string(letter.drawn)
					}
					if l.parts[k.part].role == "TD" {
						rows++
					}
				}
			}
			totals = strings.Count(text, "Sum: together")
			if totals > 0 && rows <= 2*totals {
				t.Errorf("%d lines: a total stands alone on page %d", lines, i+1)
			}
			for n := 1; n <= lines; n++ {
				// A part is told by its photo's caption and its heading.
				heads[fmt.Sprint(n)] += strings.Count(text, fmt.Sprintf("%d. Left column, where", n))
			}
			if i > 0 && strings.Contains(text, "Section ") && !strings.Contains(text, "SeenPut right bySum") {
				t.Errorf("%d lines: the table goes on at page %d without its head", lines, i+1)
			}
		}
		// Each part: its heading and its total on one page.
		where := map[int]map[int]bool{}
		for i, page := range l.pages {
			for _, p := range page {
				for _, k := range p.strip.inks {
					for n := k.part; n > 0; n = l.parts[n].parent {
						if l.parts[n].role == "Sect" && l.parts[l.parts[n].parent].role == "Document" {
							if where[n] == nil {
								where[n] = map[int]bool{}
							}
							where[n][i] = true
						}
					}
				}
			}
		}
		for n, pages := range where {
			if len(pages) > 1 {
				t.Errorf("%d lines: part %d stands on %d pages", lines, n, len(pages))
			}
		}
	}
}

func TestCounted(t *testing.T) {
	for _, c := range []struct{ pattern, want string }{
		{"Page %s of %s", "Page 2 of 5"}, {"Página %d de %d", "Página 2 de 5"}, {"", "2 / 5"}, {"Sheet", "Sheet"}, {"%s", "2"}, {"100%", "100%"},
	} {
		if got := counted(c.pattern, 2, 5); got != c.want {
			t.Errorf("%q gives %q, want %q", c.pattern, got, c.want)
		}
	}
}
