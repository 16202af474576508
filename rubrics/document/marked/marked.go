// Package marked makes two appraisal files for tests of what leaves the app. Every
// field of them is filled, every text with a mark of its own, and they differ in
// every field that a paper for the seller must not tell: such a paper made of one
// and of the other must be the same to the byte, and holds no private mark. A field
// that nobody has classified is refused. The package is for tests alone.
package marked

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"sort"
	"strings"

	"asfound/rubrics/appraisal"
)

// Standing says whether a paper for the seller may tell a field.
type Standing int

const (
	// Private fields are not told and change nothing.
	Private Standing = iota
	// Works fields are not told, but decide figures that are.
	Works
	// Shown fields may be told.
	Shown
)

// Mark is a text that stands in one field alone.
type Mark struct {
	Path     string
	Text     string
	Standing Standing
}

// Files are two files of a rubric that differ in all that is private, with all marks
// of both. The rubric is not changed.
func Files(r *appraisal.Rubric) (a, b *appraisal.File, marks []Mark, err error) {
	w := &writer{used: map[string]bool{}, keys: keysOf()}
	for _, f := range []**appraisal.File{&a, &b} {
		*f = &appraisal.File{}
		w.fill(reflect.ValueOf(*f).Elem(), "")
		if err := w.rubric(*f, r); err != nil {
			return nil, nil, nil, err
		}
		w.second = true
	}
	for _, path := range append(paths(fields), paths(rubricTexts)...) {
		if !w.used[path] {
			w.problem("%s is classified, but there is no such field", path)
		}
	}
	if len(w.problems) > 0 {
		sort.Strings(w.problems)
		return nil, nil, nil, fmt.Errorf("%s", strings.Join(w.problems, "\n"))
	}
	return a, b, w.marks, nil
}

// Told gives the fields whose mark stands in what leaves and may not.
func Told(what []byte, marks []Mark) []string {
	var out []string
	for _, m := range marks {
		if m.Standing != Shown && bytes.Contains(what, []byte(m.Text)) {
			out = append(out, m.Path+": "+m.Text)
		}
	}
	return out
}

// writer fills a file.
type writer struct {
	second   bool // private fields take their other value
	marks    []Mark
	used     map[string]bool
	keys     map[string][]string
	problems []string
}

func (w *writer) problem(format string, args ...any) {
	if text := fmt.Sprintf(format, args...); !slices.Contains(w.problems, text) {
		w.problems = append(w.problems, text)
	}
}

// mark is the mark of a field: letters and digits that no sentence has. What is not
// private has the same in both files.
func (w *writer) mark(path string, s Standing) string {
	if i := slices.IndexFunc(w.marks, func(m Mark) bool { return m.Path == path }); i >= 0 && s != Private {
		return w.marks[i].Text
	}
	text := fmt.Sprintf("Zq%04dz", len(w.marks))
	w.marks = append(w.marks, Mark{path, text, s})
	return text
}

func (w *writer) fill(v reflect.Value, path string) {
	switch v.Kind() {
	case reflect.Pointer:
		if v.Type() == reflect.TypeFor[*appraisal.Rubric]() {
			return // filled from a real one
		}
		if f, at := classified(path); f != nil && f.first == none {
			w.used[at] = true
			return
		}
		v.Set(reflect.New(v.Type().Elem()))
		w.fill(v.Elem(), path)
	case reflect.Struct:
		for i := range v.NumField() {
			name, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
			w.fill(v.Field(i), strings.TrimPrefix(path+"."+name, "."))
		}
	case reflect.Slice:
		if f, at := classified(path); f != nil && f.first == none {
			w.used[at] = true
			return
		}
		v.Set(reflect.MakeSlice(v.Type(), 1, 1))
		w.fill(v.Index(0), path+"[]")
	case reflect.Map:
		v.Set(reflect.MakeMap(v.Type()))
		for _, key := range w.keysAt(path) {
			e := reflect.New(v.Type().Elem()).Elem()
			w.fill(e, path+"."+key)
			name := key
			if key == anyKey {
				name = w.mark(path+" (a key)", Works)
			}
			v.SetMapIndex(reflect.ValueOf(name), e)
		}
	default:
		w.leaf(v, path)
	}
}

func (w *writer) keysAt(path string) []string {
	if keys, ok := w.keys[path]; ok {
		return keys
	}
	for p, keys := range w.keys {
		if alike(p, path) {
			return keys
		}
	}
	w.problem("%s is not classified: say in fields.go which keys it has", path)
	return nil
}

// leaf sets one text, number or choice.
func (w *writer) leaf(v reflect.Value, path string) {
	f, at := classified(path)
	if f == nil {
		w.problem("%s is not classified: say in fields.go whether a seller's paper may tell it", path)
		return
	}
	w.used[at] = true
	value := f.first
	if f.standing == Private && w.second {
		value = f.other
	}
	if value != nil {
		v.Set(reflect.ValueOf(value).Convert(v.Type()))
		return
	}
	if v.Kind() != reflect.String {
		w.problem("%s has no value: fields.go says which two it may have", path)
		return
	}
	v.SetString(w.mark(path, f.standing))
}

// rubric puts a copy of a real one into the file, its texts marked.
func (w *writer) rubric(f *appraisal.File, r *appraisal.Rubric) error {
	text, err := json.Marshal(r)
	if err != nil {
		return err
	}
	f.MadeWith = &appraisal.Rubric{}
	if err := json.Unmarshal(text, f.MadeWith); err != nil {
		return err
	}
	f.MadeWith.ID, f.MadeWith.Version = f.Rubric.ID, f.Rubric.Version
	w.texts(reflect.ValueOf(f.MadeWith).Elem(), "made_with")
	return nil
}

// texts marks every text of the rubric that people read.
func (w *writer) texts(v reflect.Value, path string) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			w.texts(v.Elem(), path)
		}
	case reflect.Slice:
		for i := range v.Len() {
			w.texts(v.Index(i), path+"[]")
		}
	case reflect.Struct:
		for i := range v.NumField() {
			name, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
			if v.Type().Field(i).Tag.Get("say") == "yes" {
				w.text(v.Field(i), path+"."+name)
			} else {
				w.texts(v.Field(i), path+"."+name)
			}
		}
	}
}

func (w *writer) text(v reflect.Value, path string) {
	if v.Kind() == reflect.Slice {
		for i := range v.Len() {
			w.text(v.Index(i), path)
		}
		return
	}
	standing, ok := rubricTexts[path]
	w.used[path] = true
	switch {
	case !ok:
		w.problem("%s is not classified: say in fields.go whether a seller's paper may tell it", path)
	case v.String() == "":
	default:
		v.SetString(w.marked(path, v.String(), standing))
	}
}

// marked keeps a text as long as it was: rubrics bound their texts.
func (w *writer) marked(path, text string, s Standing) string {
	mark := w.mark(path+" "+text, s)
	r := []rune(text)
	return string(r[:max(0, len(r)-len(mark)-1)]) + " " + mark
}
