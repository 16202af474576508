package document

import (
	"slices"

	"asfound/rubrics/appraisal"
)

// seen is all of an appraisal file that a paper for the seller may tell. Only reveal
// fills it, and nothing else of such a paper reads the file: what the buyer thinks it
// is worth, where he saw it and what he keeps to himself is not even at hand.
type seen struct {
	date                 string
	maker, model, serial string
	made                 int
	capacity             *appraisal.Quantity
	currency             string
	overrun              int             // mean of the shared factor, basis points
	own                  map[string]bool // parts the buyer entered himself
	points               map[string]point
}

// point is what was found at one check.
type point struct {
	measured map[string]appraisal.Quantity
	words    map[string]string
	maker    *appraisal.Quantity
	note     string // only where the buyer chose to show it
	photos   []appraisal.Photo
	pairs    []appraisal.PhotoPair
}

func reveal(f *appraisal.File, ask *Ask) *seen {
	l := &f.Listing
	s := &seen{
		date: f.Date, maker: plain(l.Maker), model: plain(l.Model), serial: plain(l.Serial), made: l.Made, capacity: l.Capacity,
		currency: f.Shop.Currency, overrun: f.Shop.Overrun.Mean, own: map[string]bool{}, points: map[string]point{},
	}
	for i := range f.Parts {
		s.own[f.Parts[i].ID] = true
	}
	for id, x := range f.Findings {
		if slices.Contains(ask.LeaveChecks, id) {
			continue
		}
		p := point{measured: x.Measured, words: x.Words, maker: x.Maker, pairs: x.Pairs}
		if slices.Contains(ask.Notes, id) {
			p.note = x.Note
		}
		for _, photo := range x.Photos {
			if !slices.Contains(ask.LeavePhotos, photo.Hash) {
				p.photos = append(p.photos, appraisal.Photo{Hash: photo.Hash, At: day(photo.At)})
			}
		}
		s.points[id] = p
	}
	return s
}

// day is the date of a moment, without its hour; "" where it tells none.
func day(at string) string {
	if len(at) < 10 {
		return ""
	}
	for i, c := range []byte(at[:10]) {
		dash := i == 4 || i == 7
		if dash != (c == '-') || !dash && (c < '0' || c > '9') {
			return ""
		}
	}
	return at[:10]
}
