package document_test

import (
	"slices"
	"strings"
	"testing"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/document"
)

func make1(t *testing.T, name string, ask document.Ask) *document.Document {
	t.Helper()
	d, err := document.Make(judge(t), nil, file(t, name), ask)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// walk calls visit for every block, those within parts too.
func walk(blocks []document.Block, visit func(*document.Block)) {
	for i := range blocks {
		visit(&blocks[i])
		walk(blocks[i].Blocks, visit)
	}
}

func texts(d *document.Document) string {
	var b strings.Builder
	walk(d.Blocks, func(x *document.Block) {
		b.WriteString(x.Text + "\n" + strings.Join(x.Items, "\n"))
		for _, f := range x.Facts {
			b.WriteString(f.Name + ": " + f.Value + "\n")
		}
		if x.Table != nil {
			for _, r := range x.Table.Rows {
				b.WriteString(strings.Join(r.Cells, " | ") + "\n")
			}
		}
	})
	return b.String()
}

func parts(d *document.Document) (answered, other []string) {
	walk(d.Blocks, func(x *document.Block) {
		if x.Kind == "part" && x.Answer {
			answered = append(answered, x.ID)
		} else if x.Kind == "part" {
			other = append(other, x.ID)
		}
	})
	return answered, other
}

// TestLeftOut: a line that is left out leaves the table and the sum, its finding
// stays; a finding that is left out goes with its line and its row.
func TestLeftOut(t *testing.T) {
	whole := make1(t, "demo/1-lift-walked", document.Ask{Kind: "estimate", Units: "inch"})
	line := make1(t, "demo/1-lift-walked", document.Ask{Kind: "estimate", Units: "inch", LeaveLines: []string{"hoses"}})
	check := make1(t, "demo/1-lift-walked", document.Ask{Kind: "estimate", Units: "inch", LeaveChecks: []string{"hoses"}})
	if s := texts(whole); !strings.Contains(s, "Hoses renewed") || strings.Contains(s, "not part of it") {
		t.Error("the whole estimate")
	}
	if s := texts(line); strings.Contains(s, "Hoses renewed") || strings.Contains(s, "Hydraulic oil") || !strings.Contains(s, "Fine cracks") || !strings.Contains(s, "not part of this paper") || !strings.Contains(s, "not part of it") {
		t.Errorf("its line left out:\n%s", s)
	}
	if s := texts(check); strings.Contains(s, "Hoses") || strings.Contains(s, "Fine cracks") || !strings.Contains(s, "not part of it") {
		t.Errorf("the finding left out:\n%s", s)
	}
	if a, _ := parts(check); slices.Contains(a, "hoses") || !slices.Contains(a, "pads") {
		t.Errorf("answered are %v", a)
	}
	// The danger stays said whatever is left out.
	hidden := make1(t, "demo/1-lift-walked", document.Ask{Kind: "estimate", Units: "inch", LeaveChecks: []string{"cable-diameter", "arm-keepers"}})
	if s := texts(hidden); !strings.Contains(s, "Do not use: tag it out") {
		t.Errorf("the paper is silent about what can kill:\n%s", s)
	}
}

// TestNothingFound: a paper with no lines says so, and is none that clears anything.
func TestNothingFound(t *testing.T) {
	for _, name := range []string{"appraisals/lift-sound-metric", "appraisals/lift-nothing-known"} {
		d := make1(t, name, document.Ask{Kind: "estimate", Units: "metric"})
		s := texts(d)
		if !strings.Contains(s, "Nothing was found that is worn or needs repair.") || !strings.Contains(s, "No repair is estimated") || !strings.Contains(s, "no certificate") {
			t.Errorf("%s:\n%s", name, s)
		}
		if d.Answers != nil {
			t.Errorf("%s: nothing is answered", name)
		}
	}
}

// TestNeverSafe: no paper calls equipment safe.
func TestNeverSafe(t *testing.T) {
	for _, name := range []string{"demo/1-lift-walked", "demo/4-press", "appraisals/lift-sound-metric", "appraisals/lift-cracked-column"} {
		for _, kind := range []string{"estimate", "jobs"} {
			for _, w := range strings.FieldsFunc(strings.ToLower(texts(make1(t, name, document.Ask{Kind: kind, Units: "inch"}))), func(c rune) bool { return c < 'a' || c > 'z' }) {
				if w == "safe" || w == "safely" {
					t.Errorf("%s of %s says %q", kind, name, w)
				}
			}
		}
	}
}

// TestScrapInThePaper: what cannot be put right is said, and no amount of it comes
// from what the thing is worth.
func TestScrapInThePaper(t *testing.T) {
	s := texts(make1(t, "appraisals/lift-cracked-column", document.Ask{Kind: "estimate", Units: "inch"}))
	if !strings.Contains(s, "This cannot be put right") || !strings.Contains(s, "taken away as scrap") || strings.Contains(s, "3,297") {
		t.Error(s)
	}
}

// TestJobsInOrder: every preparation stands before each work that needs it, once.
func TestJobsInOrder(t *testing.T) {
	for _, name := range []string{"demo/1-lift-walked", "appraisals/lift-horrible", "appraisals/four-post-slack-lock", "appraisals/engine-lathe-worn-bed"} {
		repair, err := judge(t).RepairOf(file(t, name), appraisal.LeftOut{})
		if err != nil {
			t.Fatal(err)
		}
		_, steps := parts(make1(t, name, document.Ask{Kind: "jobs", Units: "inch"}))
		if len(steps) != len(repair.Estimate.Lines) {
			t.Errorf("%s: %d steps for %d lines", name, len(steps), len(repair.Estimate.Lines))
		}
		for _, l := range repair.Estimate.Lines {
			if l.Kind != "preparation" {
				continue
			}
			for _, work := range l.Because {
				if slices.Index(steps, l.ID) > slices.Index(steps, work) {
					t.Errorf("%s: %s comes after %s", name, l.ID, work)
				}
			}
		}
	}
}

// TestPhotos: pairs stand together and first, what is left out is gone, what is not
// on the device is told.
func TestPhotos(t *testing.T) {
	f := *file(t, "demo/1-lift-walked")
	hash := func(c string) string { return strings.Repeat(c, 64) }
	x := f.Findings["pads"]
	for _, c := range []string{"a", "b", "c", "d"} {
		x.Photos = append(x.Photos, appraisal.Photo{Hash: hash(c), At: "2026-10-01T11:12:13Z"})
	}
	x.Pairs = []appraisal.PhotoPair{{Before: hash("d"), After: hash("a")}, {Before: hash("b"), After: hash("c")}}
	f.Findings["pads"] = x
	d, err := document.Make(judge(t), nil, &f, document.Ask{Kind: "estimate", Units: "inch", LeavePhotos: []string{hash("b")}, Missing: []string{hash("d")}})
	if err != nil {
		t.Fatal(err)
	}
	var got []document.Photo
	walk(d.Blocks, func(b *document.Block) { got = append(got, b.Photos...) })
	want := []document.Photo{
		{Key: hash("d"), Caption: "Pads, before, October 1, 2026", Pair: true, Missing: true}, {Key: hash("a"), Caption: "Pads, after, October 1, 2026"}, {Key: hash("c"), Caption: "Pads, October 1, 2026"},
	}
	if !slices.Equal(got, want) {
		t.Errorf("%+v", got)
	}
}

// TestTablesFit: each row has a cell a column, and the shares sum to 100.
func TestTablesFit(t *testing.T) {
	lift := file(t, "demo/2-lift-half")
	var all []*document.Document
	for _, kind := range []string{"estimate", "record", "jobs"} {
		all = append(all, make1(t, "demo/1-lift-walked", document.Ask{Kind: kind, Units: "metric"}), make1(t, "appraisals/lift-horrible", document.Ask{Kind: kind, Units: "inch"}))
	}
	for n := 2; n <= 8; n++ {
		d, err := document.Compare(judge(t), nil, slices.Repeat([]*appraisal.File{lift}, n), nil, document.Ask{Kind: "comparison", Units: "inch"})
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, d)
	}
	for _, d := range all {
		walk(d.Blocks, func(b *document.Block) {
			if b.Table == nil {
				return
			}
			sum := 0
			for _, c := range b.Table.Columns {
				sum += c.Share
			}
			if sum != 100 {
				t.Errorf("%s: the shares of %q sum to %d", d.Kind, b.Table.Title, sum)
			}
			for _, r := range b.Table.Rows {
				if len(r.Cells) != len(b.Table.Columns) {
					t.Errorf("%s: a row of %q has %d cells", d.Kind, b.Table.Title, len(r.Cells))
				}
			}
		})
	}
}
