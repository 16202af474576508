package door_test

import (
	"encoding/json"
	"os"
	"strings"
	"testing"
)

// FuzzCall: whatever comes over the border, an answer comes back: a value or an
// error in words, never a fault of the engine's own.
func FuzzCall(f *testing.F) {
	d := open(f)
	press, err := os.ReadFile("../../testdata/demo/4-press.json")
	if err != nil {
		f.Fatal(err)
	}
	f.Add("appraise", []byte(`{"file":`+string(press)+`,"price":30000}`))
	f.Add("appraise", []byte(`{"file":null}`))
	f.Add("appraise", []byte(`{}`))
	f.Add("notice", []byte(`{"text":"two post lift 9000 lb, $2,400","currency":"USD","units":"inch","rubric":"two-post-lift","date":"2026-03-31"}`))
	f.Add("prices-read", []byte(`{"source":"aWQsbG93LGxpa2VseSxoaWdoCmh5ZHJhdWxpYy1vaWwsMSwyLDMK","own":{"x":{"low":1,"likely":2,"high":3}},"currency":"USD"}`))
	f.Add("prices-write", []byte(`{"own":{"=x":{"low":1,"likely":2,"high":3}},"currency":"USD","date":"2026-03-31"}`))
	f.Add("visit", []byte(`{"file":`+string(press)+`}`))
	f.Add("compare", []byte(`{"files":[`+string(press)+`,`+string(press)+`],"prices":[30000,null]}`))
	f.Add("compare", []byte(`{"files":[null]}`))
	f.Add("comparables", []byte(`{"rubric":"h-frame-press","source":"UHJlc3M7UHJlaXMKYTsxMiw1Cg==","choice":{"decimal_comma":true,"unit":"t"}}`))
	f.Add("comparables", []byte(`{"rubric":"h-frame-press"}`))
	f.Add("document", []byte(`{"file":`+string(press)+`,"ask":{"kind":"estimate","units":"inch","leave_lines":["x"]}}`))
	f.Add("document", []byte(`{"file":`+string(press)+`,"ask":{"kind":"record","units":"metric","locale":"en-GB"}}`))
	f.Add("document", []byte(`{"files":[`+string(press)+`,`+string(press)+`],"ask":{"kind":"comparison","units":"inch"}}`))
	f.Add("tables", []byte(`{"files":[`+string(press)+`],"decisions":[{"date":"","price":1}]}`))
	f.Add("csv", []byte(`{"table":{"name":"x","columns":[{"title":"=x","kind":"text"}],"rows":[["=1",2.5,null],[true]]}}`))
	f.Add("limit", []byte(`{"name":"rope-diameter","given":{"nominal":"3/8 in","measured":"0.352 in","maker":"0.34 in"}}`))
	f.Add("limit", []byte(`{"name":"rope-diameter","given":null}`))
	f.Add("quantity", []byte(`{"text":"3/8","dimension":"length","unit":"in"}`))
	f.Add("ready", []byte(``))
	f.Add("nothing", []byte(`{`))
	f.Fuzz(func(t *testing.T, name string, argument []byte) {
		out := d.Call(name, argument)
		var r struct {
			Value json.RawMessage `json:"value"`
			Error string          `json:"error"`
		}
		if err := json.Unmarshal(out, &r); err != nil {
			t.Fatalf("%s: the answer is no JSON: %v", name, err)
		}
		if (r.Error == "") == (len(r.Value) == 0) {
			t.Fatalf("%s: neither or both of a value and an error: %.300s", name, out)
		}
		if strings.Contains(r.Error, "a fault of its own") || strings.Contains(r.Error, "could not be written") {
			t.Fatalf("%s %.300q: %s", name, argument, r.Error)
		}
	})
}
