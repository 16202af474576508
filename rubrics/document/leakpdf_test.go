package document_test

import (
	"bytes"
	"compress/zlib"
	"io"
	"slices"
	"strings"
	"testing"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/document"
	"asfound/rubrics/document/marked"
	"asfound/rubrics/document/pdf"
)

// laidOpen is every byte of a PDF and of its streams unpacked. Text stands in UTF-16
// there (ISO 32000-1, 7.9.2): without its zero bytes a mark reads as it was written.
func laidOpen(t *testing.T, file []byte) []byte {
	t.Helper()
	out := bytes.Clone(file)
	streams := 0
	for rest := file; ; {
		_, after, found := bytes.Cut(rest, []byte("stream\n"))
		if !found {
			break
		}
		body, tail, _ := bytes.Cut(after, []byte("endstream"))
		rest = tail
		r, err := zlib.NewReader(bytes.NewReader(body))
		if err != nil {
			continue // a picture, or not packed: it stands in the file as it is
		}
		plain, err := io.ReadAll(r)
		if err != nil && len(plain) == 0 {
			continue
		}
		streams++
		out = append(out, plain...)
	}
	if streams == 0 {
		t.Fatal("no stream of the PDF could be unpacked")
	}
	return append(out, bytes.ReplaceAll(out, []byte{0}, nil)...)
}

// TestNothingLeaksIntoThePDF: as for the paper, for every byte of the file itself and
// of what is packed in it. What may be told is found by the same search.
func TestNothingLeaksIntoThePDF(t *testing.T) {
	a, b, marks := pair(t)
	render := func(f *appraisal.File) []byte {
		d, err := document.Make(judge(t), nil, f, document.Ask{Kind: "estimate", Units: "inch", From: "F", To: "T"})
		if err != nil {
			t.Fatal(err)
		}
		file, err := pdf.Render(*d, pdf.A4, func(string) []byte { return nil })
		if err != nil {
			t.Fatal(err)
		}
		return file
	}
	one := render(a)
	if !bytes.Equal(one, render(b)) {
		t.Error("a private field changes the PDF")
	}
	open := laidOpen(t, one)
	if told := marked.Told(open, marks); told != nil {
		t.Errorf("the PDF tells:\n%s", strings.Join(told, "\n"))
	}
	for _, path := range []string{"listing.maker", "listing.model", "listing.serial"} {
		i := slices.IndexFunc(marks, func(m marked.Mark) bool { return m.Path == path })
		if i < 0 || !bytes.Contains(open, []byte(marks[i].Text)) {
			t.Errorf("%s is not found in the PDF: the search is none", path)
		}
	}
}
