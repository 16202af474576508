// Package document makes what leaves the app: the seller's estimate, and the
// record, job list and comparison sheet for oneself. A Document is a list of blocks
// in reading order, all text already in the reader's language; the page to print,
// the PDF and the seller's page show the same blocks, so that what was seen before
// it went is what arrives. The package does no I/O and draws nothing.
package document

import "asfound/rubrics/document/form"

// What a document consists of; package form tells each.
type (
	Document    = form.Document
	Block       = form.Block
	Fact        = form.Fact
	Table       = form.Table
	Column      = form.Column
	Row         = form.Row
	Photo       = form.Photo
	AnswerWords = form.AnswerWords
)
