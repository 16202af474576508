package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"sort"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"asfound/rubrics"
	"asfound/rubrics/appraisal"
	"asfound/server/record"
)

func compiledSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	return compiled(t, rubrics.FileSchema)
}

func compiled(t *testing.T, schema []byte) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(schema))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("appraisal.schema.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("appraisal.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func valid(t *testing.T, s *jsonschema.Schema, text []byte) error {
	t.Helper()
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return s.Validate(v)
}

// TestSchemaTakesEveryAppraisal: what the program reads and writes is what the
// schema describes.
func TestSchemaTakesEveryAppraisal(t *testing.T) {
	s := compiledSchema(t)
	var files []string
	for _, dir := range []string{"appraisals", "demo"} {
		found, err := filepath.Glob("../../testdata/" + dir + "/*.json")
		if err != nil || len(found) == 0 {
			t.Fatalf("%s: %d files, %v", dir, len(found), err)
		}
		files = append(files, found...)
	}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if err := valid(t, s, text); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		d, err := appraisal.Decode(text)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if text, err = d.Encode(); err != nil {
			t.Errorf("%s: %v", name, err)
		} else if err := valid(t, s, text); err != nil {
			t.Errorf("%s, written again: %v", name, err)
		}
	}
}

// filled gives every field of a type a value, so that no field escapes a test.
func filled(t reflect.Type) reflect.Value {
	v := reflect.New(t).Elem()
	switch t.Kind() {
	case reflect.Pointer:
		p := reflect.New(t.Elem())
		p.Elem().Set(filled(t.Elem()))
		return p
	case reflect.Struct:
		for i := range t.NumField() {
			v.Field(i).Set(filled(t.Field(i).Type))
		}
	case reflect.Map:
		v.Set(reflect.MakeMap(t))
		v.SetMapIndex(reflect.ValueOf("key"), filled(t.Elem()))
	case reflect.Slice:
		return reflect.Append(v, filled(t.Elem()))
	case reflect.Array:
		for i := range t.Len() {
			v.Index(i).Set(filled(t.Elem()))
		}
	case reflect.String:
		v.SetString("text")
	case reflect.Bool:
		v.SetBool(true)
	case reflect.Float64:
		v.SetFloat(1.5)
	default:
		v.SetInt(1)
	}
	return v
}

func filledFile(t *testing.T) map[string]any {
	t.Helper()
	f := filled(reflect.TypeFor[appraisal.File]()).Interface().(appraisal.File)
	f.Format, f.Version = appraisal.FileFormat, appraisal.FileVersion
	text, err := json.Marshal(f)
	if err != nil {
		t.Fatal(err)
	}
	var m map[string]any
	if err := json.Unmarshal(text, &m); err != nil {
		t.Fatal(err)
	}
	return m
}

// spoil is one way to spoil a file: do it, and what puts it right again.
type spoil struct {
	path, what string
	do, undo   func()
}

// spoils lists every field left out and every value of another type. Fields
// that may be left out are told by optional.
func spoils(path string, at any, t reflect.Type, optional map[string]bool) (out []spoil) {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	member := func(m map[string]any, k, path string, inner reflect.Type) {
		was := m[k]
		for what, wrong := range map[string]any{"a list": []any{[]any{}}, "a text": "text", "a number": 7, "a fraction": 7.5, "a truth": true, "a group": map[string]any{"none-of-these": map[string]any{}}} {
			if !suits(inner, what) {
				out = append(out, spoil{path, what, func() { m[k] = wrong }, func() { m[k] = was }})
			}
		}
		out = append(out, spoils(path, was, inner, optional)...)
	}
	switch v := at.(type) {
	case map[string]any:
		if t.Kind() == reflect.Map {
			for k := range v {
				member(v, k, path+"."+k, t.Elem())
			}
			return out
		}
		for i := range t.NumField() {
			name, options, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
			p := strings.TrimPrefix(path+"."+name, ".")
			optional[p] = options == "omitempty"
			was := v[name]
			out = append(out, spoil{p, "left out", func() { delete(v, name) }, func() { v[name] = was }})
			member(v, name, p, t.Field(i).Type)
		}
	case []any:
		for i := range v {
			out = append(out, spoils(fmt.Sprintf("%s[%d]", path, i), v[i], t.Elem(), optional)...)
		}
	}
	return out
}

func suits(t reflect.Type, what string) bool {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	switch t.Kind() {
	case reflect.String:
		return what == "a text"
	case reflect.Bool:
		return what == "a truth"
	case reflect.Float64:
		return what == "a number" || what == "a fraction"
	case reflect.Slice, reflect.Array:
		return false // a list of lists suits no list
	case reflect.Map, reflect.Struct:
		return what == "a group" // of fields that are unknown, not wrong
	}
	return what == "a number"
}

// TestSchemaAndProgramRefuseTheSame spoils every field there is, one at a time:
// schema and program must refuse it both, the program by its path, or take it
// both where the field may be left out.
func TestSchemaAndProgramRefuseTheSame(t *testing.T) {
	s, whole := compiledSchema(t), filledFile(t)
	if text, _ := json.Marshal(whole); valid(t, s, text) != nil {
		t.Fatalf("the schema refuses a file with every field: %v", valid(t, s, text))
	}
	// The rubric in a file is many times the rest: each is spoilt without the other,
	// or every one of the many spoils would carry both.
	plain, brought := filledFile(t), filledFile(t)
	delete(plain, "made_with")
	for name := range brought {
		if f, ok := fieldOf(name); !ok || strings.Contains(f.Tag.Get("json"), ",omitempty") && name != "made_with" {
			delete(brought, name)
		}
	}
	n := refuseTheSame(t, s, plain, func(path string) bool { return !strings.HasPrefix(path, "made_with") })
	n += refuseTheSame(t, s, brought, func(path string) bool { return strings.HasPrefix(path, "made_with.") })
	if n < 800 {
		t.Fatalf("only %d ways to spoil a file", n)
	}
}

// fieldOf is the field of an appraisal file by its name there.
func fieldOf(name string) (reflect.StructField, bool) {
	t := reflect.TypeFor[appraisal.File]()
	for i := range t.NumField() {
		if have, _, _ := strings.Cut(t.Field(i).Tag.Get("json"), ","); have == name {
			return t.Field(i), true
		}
	}
	return reflect.StructField{}, false
}

// refuseTheSame spoils every field of a file whose path is meant, one at a time,
// and says how many.
func refuseTheSame(t *testing.T, s *jsonschema.Schema, file map[string]any, meant func(path string) bool) int {
	t.Helper()
	optional := map[string]bool{}
	all := spoils("", file, reflect.TypeFor[appraisal.File](), optional)
	all = slices.DeleteFunc(all, func(sp spoil) bool { return !meant(sp.path) })
	sort.Slice(all, func(a, b int) bool { return all[a].path+all[a].what < all[b].path+all[b].what })
	for _, sp := range all {
		sp.do()
		text, err := json.Marshal(file)
		sp.undo()
		if err != nil {
			t.Fatal(err)
		}
		named := refusedField(text)
		fine := sp.what == "left out" && optional[sp.path]
		if bad := valid(t, s, text); (bad == nil) != fine {
			t.Errorf("%s, %s: the schema says %v", sp.path, sp.what, bad)
		}
		about := named == sp.path || strings.HasPrefix(named, sp.path+".") || strings.HasPrefix(named, sp.path+"[")
		if fine == about && sp.path != "format" {
			t.Errorf("%s, %s: the program names %q", sp.path, sp.what, named)
		}
	}
	return len(all)
}

// refusedField is the field that reading a file fails at; the values of a filled
// file are no real ones, so some field it always is.
func refusedField(text []byte) string {
	_, err := appraisal.Decode(text)
	var e *appraisal.Error
	if errors.As(err, &e) {
		return e.Field
	}
	return ""
}

// TestSchemaTakesStrangers: a newer program's fields are no reason to refuse.
func TestSchemaTakesStrangers(t *testing.T) {
	file := filledFile(t)
	file["from_tomorrow"] = 1
	file["listing"].(map[string]any)["mood"] = []any{nil}
	text, err := json.Marshal(file)
	if err != nil {
		t.Fatal(err)
	}
	if err := valid(t, compiledSchema(t), text); err != nil {
		t.Error(err)
	}
}

// TestArchiveSchema takes the rows that all devices agree on, and refuses what is none.
func TestArchiveSchema(t *testing.T) {
	s := compiled(t, record.ArchiveSchema)
	src, err := os.ReadFile("../../testdata/merges/merge.json")
	if err != nil {
		t.Fatal(err)
	}
	var cases []struct {
		Want json.RawMessage `json:"want"`
	}
	if err := json.Unmarshal(src, &cases); err != nil || len(cases) == 0 {
		t.Fatal(len(cases), err)
	}
	const photo = `{"hash":"00","type":"image/jpeg","width":4,"height":3,"bytes":9,"at":"2026-11-02T10:00:00Z"}`
	archive := func(rows, photos string) []byte {
		return fmt.Appendf(nil, `{"format":"asfound-archive","version":1,"made":"2026-11-02T10:00:00Z","device":"a1a1a1a1a1a1a1a1","photos":[%s],"rows":%s}`, photos, rows)
	}
	for _, c := range cases {
		if err := valid(t, s, archive(string(c.Want), photo)); err != nil {
			t.Errorf("%s: %v", c.Want, err)
		}
	}
	for _, bad := range []string{`[{"doc":"shop","entries":[],"seen":[]}]`, `[{"doc":"shop","path":"x","entries":[{"value":1}],"seen":[]}]`, `{}`} {
		if valid(t, s, archive(bad, photo)) == nil {
			t.Errorf("%s is taken", bad)
		}
	}
	if valid(t, s, archive("[]", `{"hash":7}`)) == nil {
		t.Error("a photo without its fields is taken")
	}
}
