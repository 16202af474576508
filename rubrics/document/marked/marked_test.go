package marked

import (
	"reflect"
	"strings"
	"testing"

	"asfound/rubrics"
	"asfound/rubrics/appraisal"
)

// TestPrivateFieldsDiffer: what is private differs between the two files, all else is
// the same in both.
func TestPrivateFieldsDiffer(t *testing.T) {
	all, err := rubrics.All()
	if err != nil {
		t.Fatal(err)
	}
	var lift *appraisal.Rubric
	for i := range all {
		if all[i].ID == "two-post-lift" {
			lift = &all[i]
		}
	}
	a, b, _, err := Files(lift)
	if err != nil {
		t.Fatal(err)
	}
	a.MadeWith, b.MadeWith = nil, nil
	n := 0
	differs(t, reflect.ValueOf(*a), reflect.ValueOf(*b), "", &n)
	if n < 100 {
		t.Errorf("only %d private fields were seen", n)
	}
}

func differs(t *testing.T, a, b reflect.Value, path string, private *int) {
	switch a.Kind() {
	case reflect.Pointer:
		if !a.IsNil() {
			differs(t, a.Elem(), b.Elem(), path, private)
		}
	case reflect.Struct:
		for i := range a.NumField() {
			name, _, _ := strings.Cut(a.Type().Field(i).Tag.Get("json"), ",")
			differs(t, a.Field(i), b.Field(i), strings.TrimPrefix(path+"."+name, "."), private)
		}
	case reflect.Slice:
		for i := range a.Len() {
			differs(t, a.Index(i), b.Index(i), path+"[]", private)
		}
	case reflect.Map:
		for _, k := range a.MapKeys() {
			name := k.String()
			if strings.HasPrefix(name, "Zq") {
				name = anyKey
			}
			differs(t, a.MapIndex(k), b.MapIndex(k), path+"."+name, private)
		}
	default:
		f, _ := classified(path)
		if same := reflect.DeepEqual(a.Interface(), b.Interface()); same == (f.standing == Private) {
			t.Errorf("%s: %v and %v", path, a, b)
		}
		if f.standing == Private {
			*private++
		}
	}
}

// TestUnclassifiedIsRefused: a field that nobody has classified is named.
func TestUnclassifiedIsRefused(t *testing.T) {
	w := &writer{used: map[string]bool{}, keys: keysOf()}
	var later struct {
		Listing struct {
			Title  string         `json:"title"`
			Rumour string         `json:"rumour"`
			Odd    map[string]int `json:"odd"`
		} `json:"listing"`
	}
	w.fill(reflect.ValueOf(&later).Elem(), "")
	if len(w.problems) != 2 || !strings.HasPrefix(w.problems[0], "listing.rumour is not classified") || !strings.HasPrefix(w.problems[1], "listing.odd is not classified") {
		t.Errorf("%q", w.problems)
	}
}
