// Package seller writes the page that a seller sees: a document as HTML that any browser shows with scripts off, and
// the forms by which he answers. It knows the document and what was answered, and nothing of links, files or HTTP.
package seller

import (
	"crypto/sha256"
	_ "embed" // for the page's form
	"encoding/hex"
	"fmt"
	"html/template"
	"io"
	"strings"
	"time"

	"asfound/rubrics/document"
)

// Page is all that is shown.
type Page struct {
	Document document.Document
	// Base is the page's own address, as /s/<token>; photos lie below it.
	Base    string
	Expires time.Time
	// Sizes are the photos that are there, by key.
	Sizes map[string]Size
	// Lines are the parts that may be answered.
	Lines   []string
	Answers map[string]Answer // by line
	// Sent is the line that was just answered.
	Sent string
	// Fault is what is wrong with an answer that was not taken, nil for none.
	Fault *Fault
}

// Size of a photo in points.
type Size struct{ Width, Height int }

// Answer is what was said to a line.
type Answer struct {
	Says, Word string
	Photo      bool
}

// Fault tells why an answer was not taken, with all that was typed.
type Fault struct {
	Line string
	What What
	Answer
}

// What is wrong with an answer.
type What int

// Each has its words in the document or in the language's own.
const (
	NoAnswer What = iota
	TooLong
	NoPhoto
	TooMany
	TooManyPhotos
	Busy
	NotStored
)

var (
	//go:embed seller.html
	pageText string
	//go:embed seller.css
	styleText string

	page = template.Must(template.New("page").Parse(pageText))
)

// Style is the stylesheet; StyleName changes with it, so that it may be kept for ever.
var (
	Style     = []byte(styleText + shares())
	StyleName = nameOf(Style)
)

func nameOf(b []byte) string {
	sum := sha256.Sum256(b)
	return hex.EncodeToString(sum[:8]) + ".css"
}

// shares are the widths of columns: the page may carry no style of its own.
func shares() string {
	var b strings.Builder
	for n := 1; n <= 100; n++ {
		fmt.Fprintf(&b, "\n.c%d{width:%d%%}", n, n)
	}
	return b.String()
}

// Nothing is what is said at every address that opens nothing, in all languages at once, since nobody knows which.
var Nothing = []byte(`<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><meta name="robots" content="noindex, nofollow">
<title>Nothing here</title>
<link rel="stylesheet" href="/s/` + StyleName + `">
<link rel="icon" href="data:,"></head>
<body><header><h1>There is nothing at this address</h1></header>
<p>If somebody gave it to you, ask for a new one.</p>
<h2 lang="es">No hay nada en esta dirección</h2>
<p lang="es">Si alguien se la dio, pídale una nueva.</p></body></html>
`)

// Write writes the page.
func (p *Page) Write(w io.Writer) error { return page.Execute(w, p.view()) }
