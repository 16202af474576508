package server

import (
	"bytes"
	"encoding/json"
	"image"
	"image/jpeg"
	"mime/multipart"
	"net/http"
	"net/http/httptest"
	"net/textproto"
	"testing"

	"asfound/rubrics/document"
)

const (
	linkID    = "01jzzzzzzzzzzzzzzzzzzzzzz1"
	listingID = "01hzzzzzzzzzzzzzzzzzzzzzz1"
	photoKey  = "1111111111111111111111111111111111111111111111111111111111111111"
	cable     = "finding.cable"
)

var answerWords = document.AnswerWords{
	Lead: "You may answer each point.", Agree: "Agree", Disagree: "Disagree", Done: "Already done", Word: "Your words", Photo: "A photo",
	Send: "Send", Sent: "Sent.", Yours: "You said", Expires: "This page opens until %s.", TooLong: "Too long: 500 characters.",
	NoPhoto: "This is no photo that can be read.", NoAnswer: "Choose one of the three.",
}

// testDocument is a small invented estimate.
func testDocument() document.Document {
	words := answerWords
	return document.Document{
		Kind: "estimate", Language: "en-US", Title: "Repair estimate, two-post lift", Date: "May 1, 2024", Foot: "Invented for tests.",
		Page: "Page %s of %s", Answers: &words,
		Blocks: []document.Block{
			{Kind: "caution", Signal: "danger", Word: "DANGER", Text: "Do not stand under it."},
			{Kind: "heading", Level: 1, Text: "Findings"},
			{Kind: "part", ID: cable, Answer: true, Blocks: []document.Block{
				{Kind: "heading", Level: 2, Text: "Equalizer cable"},
				{Kind: "facts", Facts: []document.Fact{{Name: "Broken wires", Value: "7 in one lay"}}},
				{Kind: "photos", Photos: []document.Photo{{Key: photoKey, Caption: "The cable at the lower sheave"}}},
			}},
			{Kind: "part", ID: "finding.pad", Answer: true, Blocks: []document.Block{{Kind: "heading", Level: 2, Text: "Pads"}}},
			{Kind: "table", Table: &document.Table{Title: "Lines", Columns: []document.Column{{Title: "Line", Share: 70}, {Title: "Cost", Share: 30, Right: true}},
				Rows: []document.Row{{Kind: "group", Cells: []string{"Parts", ""}}, {Cells: []string{"Cable set", "$410"}}, {Kind: "total", Cells: []string{"Total", "$410"}}}}},
		},
	}
}

func testJPEG(t testing.TB, w, h int) []byte {
	t.Helper()
	m := image.NewGray(image.Rect(0, 0, w, h))
	for i := range m.Pix {
		m.Pix[i] = byte(i * 7)
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, m, nil); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// asked is a request for a link that a test may spoil.
type asked struct {
	head   map[string]any
	photos map[string][]byte
	// order of the photos' keys, when not that of the map; raw replaces the head's JSON.
	raw string
}

func goodAsk(t testing.TB) *asked {
	return &asked{
		head:   map[string]any{"id": linkID, "listing": listingID, "days": 21, "lines": []string{cable, "finding.pad"}, "document": testDocument()},
		photos: map[string][]byte{photoKey: testJPEG(t, 40, 30)},
	}
}

type part struct {
	name, file string
	body       []byte
}

func formOf(t testing.TB, parts ...part) (body, contentType string) {
	t.Helper()
	var b bytes.Buffer
	w := multipart.NewWriter(&b)
	for _, p := range parts {
		h := textproto.MIMEHeader{}
		disposition := `form-data; name="` + p.name + `"`
		if p.file != "" {
			disposition += `; filename="` + p.file + `"`
		}
		h.Set("Content-Disposition", disposition)
		out, err := w.CreatePart(h)
		if err == nil {
			_, err = out.Write(p.body)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return b.String(), "Content-Type: " + w.FormDataContentType()
}

func (a *asked) form(t testing.TB) (body, contentType string) {
	t.Helper()
	head, err := json.Marshal(a.head)
	if err != nil {
		t.Fatal(err)
	}
	if a.raw != "" {
		head = []byte(a.raw)
	}
	parts := []part{{"link", "", head}}
	for key, b := range a.photos {
		parts = append(parts, part{"photo", key, b})
	}
	return formOf(t, parts...)
}

type madeLink struct {
	message
	linkMade
}

func (s *shop) askLink(a *asked, headers ...string) madeLink {
	s.t.Helper()
	body, kind := a.form(s.t)
	w := s.ask("POST", "/api/links", body, append([]string{kind, "Asfound: 1"}, headers...)...)
	m := madeLink{message: s.read(w)}
	if w.Code == http.StatusOK {
		if err := json.Unmarshal(w.Body.Bytes(), &m.linkMade); err != nil {
			s.t.Fatal(err)
		}
	}
	return m
}

func (s *shop) makeLink() string {
	s.t.Helper()
	m := s.askLink(goodAsk(s.t))
	if m.Status != http.StatusOK {
		s.t.Fatalf("no link: %+v", m)
	}
	return m.Path
}

func (s *shop) page(path string, headers ...string) *httptest.ResponseRecorder {
	return s.ask("GET", path, "", headers...)
}
