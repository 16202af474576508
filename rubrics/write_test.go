package rubrics

import (
	"reflect"
	"testing"
)

// Every rubric comes back from its own text as it was, and twice written is the
// same text.
func TestWrite(t *testing.T) {
	o, err := embedded()
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range load(t) {
		text, err := Write(r)
		if err != nil {
			t.Fatal(err)
		}
		back, err := Decode(r.ID+".yaml", text, o)
		if err != nil {
			t.Fatalf("%s: %v", r.ID, err)
		}
		if !reflect.DeepEqual(r, back) {
			t.Errorf("%s came back changed", r.ID)
		}
		if again, err := Write(back); err != nil || string(again) != string(text) {
			t.Errorf("%s: written again it differs (%v)", r.ID, err)
		}
	}
}
