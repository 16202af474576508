package appraisal

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"unicode"
)

const plainFile = `{"format":"asfound-appraisal","version":1,"rubric":{"id":"test","version":2},"date":"2026-03-31",
"listing":{"title":"Invented","asking":240000},"shop":{"currency":"USD","units":"inch","rates":{"own":3500},"tax":0,"fees":0,
"odds":{"opening":9000,"fair":7500,"walk_away":5000},"overrun":{"mean":11000,"sd":2000},"kept":5000}}`

// with is the plain file with one more field.
func with(field string) string { return strings.Replace(plainFile, `"shop"`, field+`,"shop"`, 1) }

func many(n int) string {
	all := make([]string, n)
	for i := range all {
		all[i] = fmt.Sprintf(`"check-%d":{"grade":3}`, i)
	}
	return strings.Join(all, ",")
}

func TestDecodeNamesWhatIsWrong(t *testing.T) {
	for _, c := range []struct{ name, src, says string }{
		{"empty", " ", "empty"},
		{"half written", plainFile[:120], "stops in the middle"},
		{"a list", "[]", "the file is a list: a JSON object"},
		{"text for a number", strings.Replace(plainFile, "240000", `"cheap"`, 1), "listing.asking"},
		{"a fraction of a cent", strings.Replace(plainFile, "240000", "2400.5", 1), "listing.asking"},
		{"1e309", strings.Replace(plainFile, "240000", "1e309", 1), "listing.asking"},
		{"more after the end", plainFile + "{}", "goes on after its end"},
		{"broken on line 2", strings.Replace(plainFile, `"listing":{`, `"listing":{{`, 1), "line 2"},
		{"byte order mark", "\ufeff" + plainFile, "line 1: the file begins with a byte order mark: save it as UTF-8 without one"},
		{"UTF-16", "\xff\xfe{\x00", "line 1: byte 0xff is not UTF-8 text"},
		{"broken UTF-8 on line 2", strings.Replace(plainFile, "Invented", "Inv\xffnted", 1), "line 2: byte 0xff is not UTF-8 text: save the file as UTF-8"},
		{"NUL", strings.Replace(plainFile, "Invented", `\u0000`, 1), "line 2: a text holds the character NUL"},
		{"high half alone", strings.Replace(plainFile, "Invented", `\ud83d!`, 1), "line 2: a text holds half a character"},
		{"low half alone", strings.Replace(plainFile, "Invented", `\udd27`, 1), "half a character"},
		{"two high halves", strings.Replace(plainFile, "Invented", `\ud83d\ud83d`, 1), "half a character"},
		{"deep", strings.Replace(plainFile, `"version":1`, `"x":`+strings.Repeat("[", 1<<20)+strings.Repeat("]", 1<<20)+`,"version":1`, 1), "line 1: brackets are nested too deep: at most 32 levels"},
		{"a key twice", strings.Replace(plainFile, `"tax":0`, `"tax":0,"tax":600`, 1), "shop.tax: it stands twice, again on line 2: keep one of the two"},
		{"an unknown key twice", strings.Replace(plainFile, `"title"`, `"x":{"y":1,"y":2},"title"`, 1), "listing.x.y: it stands twice"},
		{"a key spelled otherwise", strings.Replace(plainFile, `"asking"`, `"Asking"`, 1), "listing.Asking: the field is not spelled so: write asking"},
		{"a key in a fold of its own", strings.Replace(plainFile, `"asking"`, `"a\u017fking"`, 1), "the field is not spelled so: write asking"},
		{"a missing share", strings.Replace(plainFile, `,"kept":5000`, "", 1), "shop.kept: it is missing: write a whole number"},
		{"null for an amount", strings.Replace(plainFile, `"fees":0`, `"fees":null`, 1), "shop.fees: it is missing: write an amount as a whole number of cents"},
		{"no listing", strings.Replace(plainFile, `"listing"`, `"thing"`, 1), "listing: it is missing: write a group of fields in braces with title"},
		{"a null finding", with(`"findings":{"lock":null}`), "findings.lock: found nothing (null): write a group of fields"},
		{"half a range", with(`"prices":{"pin":{"low":5}}`), "prices.pin.likely: it is missing"},
		{"a quantity without unit", with(`"findings":{"lock":{"measured":{"gap":{"n":1}}}}`), "findings.lock.measured.gap.unit: it is missing"},
		{"a broken grade", with(`"findings":{"lock":{"grade":3.5}}`), "findings.lock.grade: found the number 3.5: write a whole number"},
		{"a comparable by number", with(`"comparables":[{"id":"a","title":"","price":1,"basis":"sold"},7]`), "comparables[1]: found the number 7"},
		{"comparables of one id", with(`"comparables":[{"id":"a","title":"","price":1,"basis":"sold"},{"id":"a","title":"","price":1,"basis":"sold"}]`), "comparables[1].id: \"a\" stands twice"},
		{"a comparable of no size", with(`"comparables":[{"id":"a","title":"","price":1,"basis":"sold","capacity":{"n":1e-300,"unit":"lb"}}]`), "comparables[0].capacity: 1e-300 is no size"},
		{"a comparable run backwards", with(`"comparables":[{"id":"a","title":"","price":1,"basis":"sold","hours":-1}]`), "comparables[0].hours: -1 is no number of hours run: 0 to 1,000,000"},
		{"a comparable run for ages", with(`"comparables":[{"id":"a","title":"","price":1,"basis":"sold","hours":1000001}]`), "comparables[0].hours"},
		{"a comparable complete by half", with(`"comparables":[{"id":"a","title":"","price":1,"basis":"sold","complete":"half"}]`), "comparables[0].complete: \"half\" is not known: one of [complete bare missing]"},
		{"a comparable with a long note", with(`"comparables":[{"id":"a","title":"","price":1,"basis":"sold","note":"` + strings.Repeat("x", 20_001) + `"}]`), "comparables[0].note: 20001 characters"},
		{"a comparable with a long maker", with(`"comparables":[{"id":"a","title":"","price":1,"basis":"sold","maker":"` + strings.Repeat("x", 2001) + `"}]`), "comparables[0].maker: 2001 characters"},
		{"a photo that is a path", with(`"findings":{"lock":{"photos":[{"hash":"../../shop/asfound.db"}]}}`), "findings.lock.photos[0].hash"},
		{"a cent below nothing", strings.Replace(plainFile, "240000", "-1", 1), "listing.asking: -0.01 is no price"},
		{"a year before machines", strings.Replace(plainFile, "2026-03-31", "0000-01-01", 1), `date: "0000-01-01" is no date`},
		{"a rubric before the first", strings.Replace(plainFile, `"version":2`, `"version":-2`, 1), "rubric.version: -2 is no rubric version"},
		{"an id that steers the terminal", with(`"findings":{"\u001b[2J":{"grade":7}}`), `findings."\x1b[2J".grade: 7 is no grade`},
		{"half a belief", with(`"care":{"well":5000,"neglected":5000}`), "care.ordinary: it is missing: write a whole number"},
		{"a belief that does not sum", with(`"care":{"well":5000,"ordinary":4000,"neglected":500}`), "care: they sum to 95 %: well kept, ordinary and neglected sum to 100 % (10000)"},
		{"a newer file, strange in all", strings.Replace(strings.Replace(plainFile, `"version":1`, `"version":2`, 1), `"tax":0`, `"tax":{}`, 1), "newer than this program knows"},
		{"too many findings", with(`"findings":{` + many(2001) + `}`), "findings: 2001 are too many: at most 2000"},
	} {
		_, err := Decode([]byte(c.src))
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want it to say %q", c.name, err, c.says)
			continue
		}
		if text := err.Error(); len(text) > 400 || strings.ContainsFunc(text, unicode.IsControl) {
			t.Errorf("%s: no readable line: %.500q", c.name, text)
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
	f.Add([]byte(with(`"comparables":[{"id":"a","title":"","price":1,"basis":"sold","capacity":{"n":1,"unit":"lb"}},{"id":"b","title":"","price":100000000000,"basis":"asked","made":1850,"condition":"bad","capacity":{"n":19,"unit":"t"}}],"new_price":{"price":{"low":0,"likely":1,"high":100000000000},"capacity":{"n":1e9,"unit":"t"}}`)))
	f.Add([]byte(with(`"prices":{"part":{"low":0,"likely":0,"high":100000000000}},"landing":{"drive":{"off":true}},"facts":{"phase":"two"},"ways":{"fix":"pray"}`)))
	f.Add([]byte(strings.Replace(plainFile, `"tax":0,"fees":0`, `"tax":10000,"fees":100000000000`, 1)))
	f.Add([]byte(with(`"care":{"well":9800,"ordinary":100,"neglected":100}`)))
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
		if r, err := j.Of(&d.File, Ask{}); err == nil {
			text, err := json.Marshal(r) // refuses NaN and infinities
			if err != nil {
				t.Fatal(err)
			}
			// Every amount is in reach and rises where it must.
			if w := r.Worth; w.Low > w.Centre || w.Centre > w.High || w.Low < 0 || w.High > reach {
				t.Fatalf("worth %d, %d, %d", w.Low, w.Centre, w.High)
			}
			if e := r.Estimate; e.Low > e.Median || e.Median > e.High || e.Low < -reach || e.High > reach {
				t.Fatalf("estimate %d, %d, %d", e.Low, e.Median, e.High)
			}
			for _, p := range []PricePoint{r.Offer.Opening, r.Offer.Fair, r.Offer.WalkAway} {
				if p.Price < 0 || p.Price > reach {
					t.Fatalf("price %+v", p)
				}
			}
			if strings.Contains(strings.ToLower(string(text)), "is safe") {
				t.Fatal("it must never say safe")
			}
		}
	})
}
