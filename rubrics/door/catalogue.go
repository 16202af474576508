// Package door is the one way into the engine for programs that speak JSON: the
// browser's worker and the tests that compare builds. It does no I/O.
package door

import (
	"encoding/json"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/limit"
	"asfound/rubrics/say"
)

// Catalogue is everything the app needs to know before it judges: labels,
// defaults, rubrics and limits have their one home in Go.
type Catalogue struct {
	// Language that all of it is in (en, es), Words the engine's own sentences in it
	// by the English ones; none are needed for English.
	Language string            `json:"language"`
	Words    map[string]string `json:"words,omitempty"`
	// Locales that are offered, of every language.
	Locales    []say.Locale       `json:"locales"`
	Rubrics    []appraisal.Rubric `json:"rubrics"`
	Parts      []appraisal.Part   `json:"parts"`
	PartsDated string             `json:"parts_dated"` // date of the example prices
	Limits     []limit.Definition `json:"limits"`
	Subjects   []limit.Subject    `json:"subjects"` // what the limits stand under, in order
	Shop       appraisal.Shop     `json:"shop"`
	Grades     []string           `json:"grades" say:"yes"` // by number, 0 to 4
	Reasons    []appraisal.Choice `json:"reasons"`
	Sellers    []appraisal.Choice `json:"sellers"`
	Trades     []appraisal.Choice `json:"trades"`
	Conditions []appraisal.Choice `json:"conditions"`
	// Completeness of a comparable, best first.
	Completeness []appraisal.Choice `json:"completeness"`
	Currencies   []string           `json:"currencies"`
	// Criteria rank listings that are compared, with their default weights.
	Criteria []appraisal.Criterion `json:"criteria"`
	// Compared bounds how many listings stand side by side.
	Compared Bounds `json:"compared"`
	// Measures are the sizes of listing and shop, with their units and bounds.
	Measures []appraisal.Measure `json:"measures"`
	Floors   []appraisal.Choice  `json:"floors"`
	// TieDowns are the kinds of tie-down whose working load limit is known.
	TieDowns []appraisal.Choice `json:"tie_downs"`
	// Hazards are the signal words, Standings how a limit's figure is founded.
	Hazards   []appraisal.Choice `json:"hazards"`
	Standings []appraisal.Choice `json:"standings"`
	// Miles are the units of a way by road, each in miles, to put listings in order.
	Miles map[string]float64 `json:"miles"`
}

// Bounds of a count.
type Bounds struct {
	Least int `json:"least"`
	Most  int `json:"most"`
}

// The Locale of a request (BCP 47, es-MX) says in which language and with which
// number marks it is answered; without one, in the language of the catalogue.

// LimitRequest asks for one limit; values are text with units.
type LimitRequest struct {
	Name   string            `json:"name"`
	Given  map[string]string `json:"given"`
	Locale string            `json:"locale,omitempty"`
}

// AppraiseRequest asks for the judgement of a file, optionally at another price
// and for a plan of the minutes left.
type AppraiseRequest struct {
	File    json.RawMessage  `json:"file"`
	Price   *appraisal.Money `json:"price,omitempty"`
	Minutes float64          `json:"minutes,omitempty"`
	Locale  string           `json:"locale,omitempty"`
}

// LearnRequest brings the catalogue of another language. The answers to calls in a
// locale of that language are in it from then on.
type LearnRequest struct {
	Catalogue json.RawMessage `json:"catalogue"`
}

// VisitRequest asks what to settle before the drive to a listing.
type VisitRequest struct {
	File   json.RawMessage `json:"file"`
	Locale string          `json:"locale,omitempty"`
}

// CompareRequest asks for a comparison of files, each at its asking price or at
// the price given for it. Weights of the criteria are those of the first file's
// shop.
type CompareRequest struct {
	Files  []json.RawMessage  `json:"files"`
	Prices []*appraisal.Money `json:"prices,omitempty"`
	Locale string             `json:"locale,omitempty"`
}

// CheckRequest asks whether the figures of a shop or a listing make sense, before
// one of them is kept.
type CheckRequest struct {
	Shop    *appraisal.Shop    `json:"shop,omitempty"`
	Listing *appraisal.Listing `json:"listing,omitempty"`
	Locale  string             `json:"locale,omitempty"`
}

// Reply is what every call answers: a value or an error in the user's words.
type Reply struct {
	Value json.RawMessage `json:"value,omitempty"`
	Error string          `json:"error,omitempty"`
	// Field names the quantity or field at fault, where there is one.
	Field string `json:"field,omitempty"`
}
