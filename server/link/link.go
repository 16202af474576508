// Package link keeps the papers given to sellers: the document with its photo copies, until when it opens, and what
// was answered. What is small stands in a drawer of the store; documents and photos are files in the data folder,
// links/<id>/, so that a copy of the folder holds all. It knows no HTTP and no rows.
package link

import (
	"errors"
	"time"
)

// Bounds of a link.
const (
	MinDays, MaxDays, UsualDays = 1, 90, 21

	MaxDocumentBytes = 1 << 20
	MaxPhotos        = 200
	MaxPhotoSide     = 2400
	MaxPhotoBytes    = 2 << 20
	// MaxBytes bounds document and photos together.
	MaxBytes = 12_000_000

	MaxWord = 500 // characters of a seller's own words
	// MaxSends and MaxAnswerPhotos bound what a seller can leave behind one link, changes included.
	MaxSends        = 200
	MaxAnswerPhotos = 30

	// MaxLinks bounds the links that hold content.
	MaxLinks = 1000
)

// grace is how long content stays after a link no longer opens, kept how long it is remembered that there was one.
const (
	grace = 7 * 24 * time.Hour
	kept  = 400 * 24 * time.Hour
)

// Errors of links. Each comes wrapped in a sentence that says what would be right.
var (
	// ErrRefused: the link asked for is not one that can be made.
	ErrRefused = errors.New("no link was made")
	// ErrMade: there is or was a link of that id.
	ErrMade = errors.New("there is a link of this id already")
	// ErrNone: no link, or none that opens.
	ErrNone = errors.New("no such link")
	// ErrFull: more than may be kept.
	ErrFull = errors.New("as much as may be kept")
)

// Link is all that is known of one link but for document and photos. Times are ms since the Unix epoch, 0 for never.
type Link struct {
	ID      string `json:"id"`
	Listing string `json:"listing"`
	// Secret is the SHA-256 of the token, hex; the token itself is kept nowhere.
	Secret string `json:"secret,omitempty"`
	// Content is the SHA-256 of what was asked for, by which the same request is known again.
	Content   string            `json:"content,omitempty"`
	Created   int64             `json:"created"`
	Expires   int64             `json:"expires"`
	Withdrawn int64             `json:"withdrawn,omitempty"`
	Lines     []string          `json:"lines,omitempty"`
	Photos    map[string]Copy   `json:"photos,omitempty"` // by Photo.Key
	Opened    Opened            `json:"opened"`
	Answers   map[string]Answer `json:"answers,omitempty"` // by line
	// Held are photos of answers that could not be taken yet for another reason, by line.
	Held   map[string]string `json:"held,omitempty"`
	Sends  int               `json:"sends,omitempty"`
	Shots  int               `json:"shots,omitempty"` // photos sent
	Purged bool              `json:"purged,omitempty"`
}

// Copy is a photo made for the paper.
type Copy struct {
	File   string `json:"file"` // SHA-256 of its bytes
	Width  int    `json:"width"`
	Height int    `json:"height"`
}

// Opened tells when the page was looked at; Count counts looks, not people.
type Opened struct {
	First int64 `json:"first"`
	Last  int64 `json:"last"`
	Count int   `json:"count"`
}

// Answer is what the seller said to one line.
type Answer struct {
	Says  string `json:"says"` // agree, disagree, done
	Word  string `json:"word"`
	Photo string `json:"photo,omitempty"` // name in the photo folder
	At    int64  `json:"at"`
}

// State is open, expired or withdrawn.
func (l *Link) State(now time.Time) string {
	switch {
	case l.Withdrawn > 0:
		return "withdrawn"
	case now.UnixMilli() > l.Expires:
		return "expired"
	}
	return "open"
}

// MayAnswer tells whether a line of the paper may be answered.
func (l *Link) MayAnswer(line string) bool {
	for _, l := range l.Lines {
		if l == line {
			return true
		}
	}
	return false
}

// expiry is the last moment of the day so many days from now, where the server stands.
func expiry(now time.Time, days int) int64 {
	y, m, d := now.Date()
	return time.Date(y, m, d+days+1, 0, 0, 0, 0, now.Location()).UnixMilli() - 1
}
