package appraisal

import (
	"encoding/json"
	"strings"
	"testing"
)

const plainFile = `{"format":"asfound-appraisal","version":1,"rubric":{"id":"test","version":2},"date":"2026-03-31",
"listing":{"title":"Invented","asking":240000},"shop":{"currency":"USD","units":"inch","rates":{"own":3500},"tax":0,"fees":0,
"odds":{"opening":9000,"fair":7500,"walk_away":5000},"overrun":{"mean":11000,"sd":2000},"kept":5000}}`

func TestDecodeNamesWhatIsWrong(t *testing.T) {
	for _, c := range []struct{ name, src, says string }{
		{"empty", " ", "empty"},
		{"half written", plainFile[:120], "stops in the middle"},
		{"a list", "[]", "group of fields"},
		{"text for a number", strings.Replace(plainFile, "240000", `"cheap"`, 1), "listing.asking"},
		{"a fraction of a cent", strings.Replace(plainFile, "240000", "2400.5", 1), "listing.asking"},
		{"1e309", strings.Replace(plainFile, "240000", "1e309", 1), "listing.asking"},
		{"more after the end", plainFile + "{}", "goes on after its end"},
		{"broken on line 2", strings.Replace(plainFile, `"listing":{`, `"listing":{{`, 1), "line 2"},
	} {
		_, err := Decode([]byte(c.src))
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want it to say %q", c.name, err, c.says)
		}
	}
}

func TestUnknownFieldsSurvive(t *testing.T) {
	src := strings.Replace(plainFile, `"title":"Invented"`, `"title":"Invented","colour":{"ral":5010},"photos":[{"hash":"`+strings.Repeat("a", 64)+`","lens":28}]`, 1)
	src = strings.Replace(src, `"version":1,`, `"version":1,"mood":"new",`, 1)
	d, err := Decode([]byte(src))
	if err != nil {
		t.Fatal(err)
	}
	asking := Money(200000)
	d.File.Listing.Asking = &asking
	out, err := d.Encode()
	if err != nil {
		t.Fatal(err)
	}
	var got, want map[string]any
	if err := json.Unmarshal(out, &got); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal([]byte(strings.Replace(src, "240000", "200000", 1)), &want); err != nil {
		t.Fatal(err)
	}
	a, _ := json.Marshal(got)
	b, _ := json.Marshal(want)
	if string(a) != string(b) {
		t.Errorf("round trip\n got %s\nwant %s", a, b)
	}
}

// FuzzDecode: whatever is read can be judged or is refused in words, and is
// written back readable.
func FuzzDecode(f *testing.F) {
	f.Add([]byte(plainFile))
	f.Add([]byte(strings.Replace(plainFile, `"shop"`, `"findings":{"lock":{"grade":1}},"comparables":[{"id":"a","price":1,"basis":"sold"}],"shop"`, 1)))
	f.Add([]byte(`{"format":null}`))
	j := testJudge()
	f.Fuzz(func(t *testing.T, src []byte) {
		d, err := Decode(src)
		if err != nil {
			return
		}
		out, err := d.Encode()
		if err != nil {
			t.Fatal(err)
		}
		if _, err := Decode(out); err != nil {
			t.Fatalf("written back unreadable: %v\n%s", err, out)
		}
		if r, err := j.Of(&d.File, nil); err == nil {
			if _, err := json.Marshal(r); err != nil {
				t.Fatal(err)
			}
		}
	})
}
