package notice

import (
	"testing"

	"asfound/rubrics/unit"
)

// TestUnits: what a listing's unit is called here, package unit knows, and means
// the same by the words as they are written.
func TestUnits(t *testing.T) {
	dimensions := map[dimension]string{mass: "mass", length: "length", way: "length", voltage: "voltage", power: "power", current: "current", hours: "time", pressure: "pressure", flow: "flow", volume: "volume"}
	for written, u := range units {
		name, ok := dimensions[u.dimension]
		if !ok {
			continue
		}
		v, err := unit.Parse("1 "+u.name, name)
		if err != nil || v.Unit != u.name {
			t.Errorf("%q is %q here, which is no unit of %s: %v", written, u.name, name, err)
			continue
		}
		if w, err := unit.Parse("1 "+written, name); err == nil && w.Unit != u.name {
			t.Errorf("%q is %q here and %q there", written, u.name, w.Unit)
		}
	}
}

// TestWordsOfThePlace: the piece of text is the piece that was read.
func TestWordsOfThePlace(t *testing.T) {
	text := "Zweisäulen, two post lift.\r\nI'd like US$ 2,400 for it, or so I think after a long time, firm as it is."
	all, err := Read(text, shop())
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range all {
		if p.Field != "asking" {
			continue
		}
		if p.Words != "US$ 2,400" || p.Before != "I'd like " || p.After != " for it, or so I think after …" {
			t.Errorf("%q %q %q", p.Before, p.Words, p.After)
		}
		return
	}
	t.Error("no price")
}

// TestKindGiven: a kind that is known is not proposed, and its words are read.
func TestKindGiven(t *testing.T) {
	ask := shop()
	ask.Kind = "two-post-lift"
	if got := told(t, "9000 lb, floor plate, shop press beside it", ask); got != "capacity=9000 lb~ fact/cross-over=floor-plate" {
		t.Error(got)
	}
	ask.Kind = "unheard-of"
	if got := told(t, "two post lift 9000 lb, floor plate", ask); got != "rubric=two-post-lift capacity=9000 lb fact/cross-over=floor-plate" {
		t.Error(got)
	}
	if got := told(t, "two post lift 9000 lb, $900", Ask{}); got != "asking=900 capacity=9000 lb~" {
		t.Error(got)
	}
}
