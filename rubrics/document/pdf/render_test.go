package pdf

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"asfound/rubrics/document/form"
)

// tool is a PDF program to hold files to; tests that need one are left out where it
// is not installed.
func tool(t *testing.T, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		t.Skipf("%s is not installed", name)
	}
	return path
}

func rendered(t testing.TB, d form.Document, page Page, photos func(string) []byte) string {
	t.Helper()
	out, err := Render(d, page, photos)
	if err != nil {
		t.Fatal(err)
	}
	name := filepath.Join(t.TempDir(), "paper.pdf")
	if err := os.WriteFile(name, out, 0o644); err != nil {
		t.Fatal(err)
	}
	return name
}

// scripts is a paper in many scripts, with what people paste into fields.
func scripts() form.Document {
	long := strings.Repeat("abcdefghij", 30)
	return form.Document{Language: "en-US", Title: "Scripts", Page: "Page %s of %s", Blocks: []form.Block{
		{Kind: "list", Items: []string{"Ελληνικά: Το συρματόσχοινο", "Кириллица: Трос изношен", "Հայերեն: Ճոպանը", "ქართული: ბაგირი", "Dây cáp, Zażółć, İğne", "שלום עולם", "كابل مهترئ", "<script>alert(1)</script>", "nul \x00 and\ttab", "日本語 👍🏽", long, "https://example.invalid/" + long}},
		{Kind: "table", Table: &form.Table{Title: "wide", Columns: make([]form.Column, 200), Rows: []form.Row{{Cells: []string{"first", "second"}}}}},
		{Kind: "table", Table: &form.Table{Columns: []form.Column{{Title: "Only a head", Share: -7}}}},
		{Kind: "caution", Signal: "danger", Word: "DANGER", Text: "A text."},
		{Kind: "photos", Photos: []form.Photo{{Key: sampleKey(0), Caption: "first", Pair: true}, {Key: sampleKey(1), Caption: "second"}, {Key: "none", Caption: "third"}}},
	}}
}

func samples() map[string]form.Document {
	return map[string]form.Document{
		"short":   sampleEstimate(sampleEnglish, "en-US", 4, 5),
		"long":    sampleEstimate(sampleSpanish, "es-MX", 60, 0),
		"photos":  sampleEstimate(sampleEnglish, "en-US", 60, 80),
		"scripts": scripts(),
		"empty":   {},
	}
}

// TestReadersTakeIt: programs by others find no fault with the files.
func TestReadersTakeIt(t *testing.T) {
	qpdf, info, fonts := tool(t, "qpdf"), tool(t, "pdfinfo"), tool(t, "pdffonts")
	for name, d := range samples() {
		for _, page := range []Page{Letter, A4} {
			file := rendered(t, d, page, samplePhotos(80))
			if out, err := exec.Command(qpdf, "--check", file).CombinedOutput(); err != nil || bytes.Contains(out, []byte("WARNING")) {
				t.Errorf("%s, %s: qpdf: %v\n%s", name, page, err, out)
			}
			out, err := exec.Command(info, file).CombinedOutput()
			if err != nil || bytes.Contains(out, []byte("Error")) {
				t.Errorf("%s, %s: pdfinfo: %v\n%s", name, page, err, out)
			}
			size := map[Page]string{Letter: "612 x 792 pts (letter)", A4: "595.28 x 841.89 pts (A4)"}[page]
			for _, want := range []string{"Tagged:          yes", "JavaScript:      no", "Page size:       " + size} {
				if !bytes.Contains(out, []byte(want)) {
					t.Errorf("%s, %s: pdfinfo does not say %q:\n%s", name, page, want, out)
				}
			}
			for _, never := range []string{"Producer", "Creator", "Author", "CreationDate", "ModDate"} {
				if bytes.Contains(out, []byte(never)) {
					t.Errorf("%s, %s: the file tells its %s", name, page, never)
				}
			}
			out, err = exec.Command(fonts, file).CombinedOutput()
			if err != nil {
				t.Fatal(err)
			}
			for _, line := range strings.Split(strings.TrimSpace(string(out)), "\n")[2:] {
				if f := strings.Fields(line); len(f) < 8 || f[4] != "yes" || f[6] != "yes" {
					t.Errorf("%s, %s: a font is not embedded with its characters: %s", name, page, line)
				}
			}
		}
	}
}

// TestTextExtracts: what is copied out of the file, or listened to, comes in the
// order of reading and as it was written.
func TestTextExtracts(t *testing.T) {
	text := tool(t, "pdftotext")
	extract := func(d form.Document) string {
		out, err := exec.Command(text, "-raw", rendered(t, d, Letter, samplePhotos(80)), "-").Output()
		if err != nil {
			t.Fatal(err)
		}
		return strings.Join(strings.Fields(string(out)), " ")
	}
	got := extract(samples()["short"])
	at := 0
	for _, want := range []string{sampleEnglish.title, "October 3, 2026", "Equipment", "Two-post lift, asymmetric", "WARNING", sampleEnglish.warn, "Seen Put right by Sum", "Section A", "1. " + sampleEnglish.line + " Cable set $120.50", "4. " + sampleEnglish.line, "Sum: together $12,345.00", "1. " + sampleEnglish.line, "Cable set $80.00", "2. " + sampleEnglish.line, sampleEnglish.absent, "4. " + sampleEnglish.line} {
		i := strings.Index(got[at:], want)
		if i < 0 {
			t.Fatalf("%q does not follow in\n%s", want, got[at:])
		}
		at += i + len(want)
	}
	for _, page := range []string{"Page 1 of", "Page 2 of"} {
		if !strings.Contains(got, page) {
			t.Errorf("no %q", page)
		}
	}
	got = extract(scripts())
	for _, want := range []string{"Το συρματόσχοινο", "Трос изношен", "Ճոպանը", "ბაგირი", "Dây cáp, Zażółć, İğne", "שלום", "עולם", "كابل", "مهترئ", "<script>alert(1)</script>", "日本語", "👍🏽", "Only a head", "second", "third"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not in\n%s", want, got)
		}
	}
	if n := strings.Count(strings.ReplaceAll(got, " ", ""), strings.Repeat("abcdefghij", 30)); n != 2 {
		t.Errorf("the long words are whole %d times, not twice", n)
	}
}

// TestStructure: a screen reader is told headings, tables and pictures.
func TestStructure(t *testing.T) {
	out, err := exec.Command(tool(t, "pdfinfo"), "-struct-text", rendered(t, samples()["short"], Letter, samplePhotos(80))).CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	got := string(out)
	if strings.Contains(got, "Error") {
		t.Errorf("%.2000s", got)
	}
	for _, want := range []string{"Document", "  H1", "  Table", "TR", "TH", "TD", "Figure", "Sect", "Caption"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %s in the structure:\n%.1500s", want, got)
		}
	}
	if n := strings.Count(got, `"Put right by"`); n > 5 {
		t.Errorf("heads that are repeated on a page are told again: %d", n)
	}
}

// TestMetadata: the file holds the title and the language, and no trace of who,
// where, when or by what it was made, nor of what photos carry.
func TestMetadata(t *testing.T) {
	d := sampleEstimate(sampleEnglish, "en-US", 3, 2)
	secret := []byte("Exif\x00\x00 GPS 48.85 N device serial 1234")
	photo := samplePhoto(0)
	with := append([]byte{0xff, 0xd8, 0xff, 0xe1, 0, byte(len(secret) + 2)}, secret...)
	with = append(with, photo[2:]...)
	out, err := Render(d, Letter, func(key string) []byte {
		if key == sampleKey(0) {
			return with
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(out, []byte("/Lang (en-US)")) || !bytes.Contains(out, []byte("/Subtype /Image")) {
		t.Error("language or photo is missing")
	}
	home, _ := os.Hostname()
	for _, never := range []string{"GPS", "serial 1234", "Exif", "FPDF", "fpdf", "Producer", "Date (", home, os.TempDir()} {
		if never != "" && bytes.Contains(out, []byte(never)) {
			t.Errorf("the file holds %q", never)
		}
	}
	d.Language = "en) /AA <</O (x"
	if out, err = Render(d, Letter, nil); err != nil || bytes.Contains(out, []byte("/AA")) {
		t.Errorf("a language tag of somebody else's gets into the file: %v", err)
	}
}

func TestPageSizes(t *testing.T) {
	if _, err := Render(form.Document{}, "a5", nil); err == nil || err.Error() != `page "a5": say letter or a4` {
		t.Errorf("a5: %v", err)
	}
}

// TestPhotos: whole JPEGs come into the file as they are, all else is drawn as a
// photo that is not there, and never costs the rest of the paper.
func TestPhotos(t *testing.T) {
	whole := samplePhoto(0)
	png := []byte("\x89PNG\r\n\x1a\n")
	for _, c := range []struct {
		name  string
		src   []byte
		shown bool
	}{
		{"a JPEG", whole, true},
		{"a JPEG with something behind its end", append(bytes.Clone(whole), "more"...), true},
		{"none", nil, false},
		{"empty", []byte{}, false},
		{"a PNG", png, false},
		{"half a JPEG", whole[:len(whole)/2], false},
		{"a JPEG without its last bytes", whole[:len(whole)-2], false},
		{"two bytes", whole[:2], false},
		{"a head alone", whole[:40], false},
		{"no picture between the marks", []byte{0xff, 0xd8, 0xff, 0xd9}, false},
		{"a segment longer than the file", []byte{0xff, 0xd8, 0xff, 0xe0, 0xff, 0xff, 0, 0}, false},
	} {
		p, ok := readJPEG(c.src)
		if ok != c.shown {
			t.Errorf("%s: shown %v, want %v", c.name, ok, c.shown)
		}
		if ok && (p.width != 800 || p.height != 600) {
			t.Errorf("%s: %d x %d", c.name, p.width, p.height)
		}
		d := form.Document{Title: "One photo", Absent: "Not here", Blocks: []form.Block{{Kind: "photos", Photos: []form.Photo{{Key: "k", Caption: "caption"}}}}}
		out, err := Render(d, A4, func(string) []byte { return c.src })
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		if got := bytes.Contains(out, []byte("/Filter /DCTDecode")); got != c.shown {
			t.Errorf("%s: in the file %v, want %v", c.name, got, c.shown)
		}
	}
}

// TestManyPhotos holds 60 lines with 80 photos of about 40 kB below 5 MB.
func TestManyPhotos(t *testing.T) {
	sum := 0
	for i := range 80 {
		sum += len(samplePhoto(i))
	}
	d := samples()["photos"]
	out, err := Render(d, Letter, samplePhotos(80))
	if err != nil {
		t.Fatal(err)
	}
	if n := bytes.Count(out, []byte("/Filter /DCTDecode")); n != 80 {
		t.Errorf("%d photos in the file, want 80", n)
	}
	if rest := len(out) - sum; rest > 1_000_000 {
		t.Errorf("the paper without its photos is %d bytes", rest)
	}
	if mean := sum / 80; len(out)-sum+80*max(mean, 40_000) > 5_000_000 {
		t.Errorf("%d bytes with photos of %d", len(out), mean)
	}
}

// TestSameBytes: photos of one width come in one order.
func TestSameBytes(t *testing.T) {
	d := sampleEstimate(sampleEnglish, "en-US", 6, 12)
	first, err := Render(d, Letter, samplePhotos(12))
	if err != nil {
		t.Fatal(err)
	}
	for range 5 {
		again, err := Render(d, Letter, samplePhotos(12))
		if err != nil || !bytes.Equal(first, again) {
			t.Fatalf("another file (%v)", err)
		}
	}
}

func FuzzRender(f *testing.F) {
	for _, d := range []form.Document{scripts(), sampleEstimate(sampleEnglish, "en-US", 2, 2), {}} {
		src, err := json.Marshal(d)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(src, []byte{})
	}
	f.Add([]byte(`{"blocks":[{"kind":"photos","photos":[{"key":"k","caption":"c"}]}]}`), samplePhoto(0))
	f.Fuzz(func(t *testing.T, src, photo []byte) {
		var d form.Document
		if json.Unmarshal(src, &d) != nil {
			return
		}
		w, h, _ := Letter.size()
		l := layOut(d, w, h, func(string) []byte { return photo })
		Uncovered(d)
		if len(src)%16 != 0 {
			return // drawing takes a hundred times as long and hangs on the layout alone
		}
		raw, err := l.draw()
		if err != nil {
			t.Fatal(err)
		}
		out, err := l.seal(raw)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.HasPrefix(out, []byte("%PDF-1.7")) || !bytes.HasSuffix(out, []byte("%%EOF\n")) {
			t.Fatal("no whole file")
		}
		if _, err := split(out); err != nil {
			t.Fatal(err)
		}
	})
}

func BenchmarkRender(b *testing.B) {
	for _, c := range []struct{ lines, photos int }{{8, 6}, {60, 0}, {60, 80}} {
		b.Run(fmt.Sprintf("%d-lines-%d-photos", c.lines, c.photos), func(b *testing.B) {
			d := sampleEstimate(sampleEnglish, "en-US", c.lines, c.photos)
			photos := samplePhotos(c.photos)
			size := 0
			for i := range c.photos {
				samplePhoto(i)
			}
			for b.Loop() {
				out, err := Render(d, Letter, photos)
				if err != nil {
					b.Fatal(err)
				}
				size = len(out)
			}
			b.ReportMetric(float64(size), "file-bytes")
		})
	}
}

// TestNothingBesidesPixels: what is put between the segments of a photo, or behind
// what Adobe's tells, does not come along.
func TestNothingBesidesPixels(t *testing.T) {
	whole := samplePhoto(0)
	for name, between := range map[string]string{
		"a restart marker": "\xff\xd0\x00\x0fhidden inside",
		"a lone marker":    "\xff\x01\x00\x0fhidden inside",
		"Adobe":            "\xff\xee\x00\x1bAdobe\x00\x64\x00\x00\x00\x00\x01hidden inside",
		"another APP14":    "\xff\xee\x00\x14other hidden inside",
	} {
		if p, ok := readJPEG(append(append(bytes.Clone(whole[:2]), between...), whole[2:]...)); ok && bytes.Contains(p.jpeg, []byte("hidden")) {
			t.Errorf("%s brings it along", name)
		}
	}
}
