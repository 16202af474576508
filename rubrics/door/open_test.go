package door

import (
	"encoding/json"
	"testing"

	"asfound/rubrics"
)

// catalogueText is the catalogue as the browser gets it.
func catalogueText(b *testing.B) []byte {
	b.Helper()
	all, err := rubrics.All()
	if err != nil {
		b.Fatal(err)
	}
	book, err := rubrics.PriceBook()
	if err != nil {
		b.Fatal(err)
	}
	text, err := json.Marshal(NewCatalogue(all, book.Parts, book.Dated))
	if err != nil {
		b.Fatal(err)
	}
	return text
}

// Opening comes before the first answer of every start.
func BenchmarkOpen(b *testing.B) {
	text := catalogueText(b)
	for b.Loop() {
		if _, err := Open(text); err != nil {
			b.Fatal(err)
		}
	}
}
