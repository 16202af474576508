package door_test

import (
	"encoding/base64"
	"encoding/json"
	"testing"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/door"
)

// TestComparablesOverTheBorder: a table goes in as base64, and comes back as
// comparables with how it was read.
func TestComparablesOverTheBorder(t *testing.T) {
	d := open(t)
	source := base64.StdEncoding.EncodeToString([]byte("Title;Price;Sold on\nInvented lift;1.234,50;03.02.2025\nAnother;call;\n"))
	var r door.Reply
	if err := json.Unmarshal(d.Call("comparables", []byte(`{"rubric":"two-post-lift","source":"`+source+`","choice":{"basis":"sold"}}`)), &r); err != nil {
		t.Fatal(err)
	}
	if r.Error != "" {
		t.Fatal(r.Error)
	}
	var got appraisal.Import
	if err := json.Unmarshal(r.Value, &got); err != nil {
		t.Fatal(err)
	}
	if got.Total != 2 || got.Read != 1 || len(got.Rows) != 1 || len(got.Problems) != 1 || got.Problems[0].Line != 3 {
		t.Fatalf("%+v", got)
	}
	if c := got.Rows[0]; c.Title != "Invented lift" || c.Price != 123450 || c.Basis != "sold" || c.Date != "2025-02-03" || c.ID == "" {
		t.Errorf("%+v", c)
	}
}
