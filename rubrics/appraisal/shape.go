package appraisal

import (
	"encoding/json"
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"asfound/rubrics/say"
)

// isPlainKey tells whether a key needs no quotes in a message. Spelled out, since
// package regexp would make the browser's module a tenth larger.
func isPlainKey(key string) bool {
	for _, c := range []byte(key) {
		switch {
		case c >= 'a' && c <= 'z', c >= 'A' && c <= 'Z', c >= '0' && c <= '9', c == '_', c == '.', c == '-':
		default:
			return false
		}
	}
	return len(key) > 0 && len(key) <= 60
}

// step adds a key to the path of a field; an odd key is quoted and cut, so that a
// message stays one readable line.
func step(path, key string) string {
	if !isPlainKey(key) {
		if r := []rune(key); len(r) > 40 {
			key = string(r[:40]) + "..."
		}
		key = strconv.Quote(key)
	}
	if path == "" {
		return key
	}
	return path + "." + key
}

// shaped holds unpacked JSON against the type it is to fill and gives the first
// thing that does not fit, with its whole path. The decoder names no list item
// or key, leaves a missing field at zero, and takes "GRADE" for "grade".
func shaped(path string, v any, t reflect.Type) error {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	switch t.Kind() {
	case reflect.Struct:
		m, ok := v.(map[string]any)
		if !ok {
			return misfit(path, v, t)
		}
		return fields(path, m, t)
	case reflect.Map:
		m, ok := v.(map[string]any)
		if !ok {
			return misfit(path, v, t)
		}
		for _, k := range sortedKeys(m) {
			if err := shaped(step(path, k), m[k], t.Elem()); err != nil {
				return err
			}
		}
		return nil
	case reflect.Slice, reflect.Array:
		list, ok := v.([]any)
		if !ok || (t.Kind() == reflect.Array && len(list) != t.Len()) {
			return misfit(path, v, t)
		}
		for i := range list {
			if err := shaped(fmt.Sprintf("%s[%d]", path, i), list[i], t.Elem()); err != nil {
				return err
			}
		}
		return nil
	}
	return scalar(path, v, t)
}

func fields(path string, m map[string]any, t reflect.Type) error {
	known := map[string]bool{}
	for i := range t.NumField() {
		name, _, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
		known[name] = true
	}
	if wrong, right := misspelled(m, known); wrong != "" {
		return refuse(step(path, wrong), say.Later("write %s", right), "the field is not spelled so")
	}
	for i := range t.NumField() {
		name, options, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
		v := m[name]
		if v == nil && options == "omitempty" {
			continue // left out, or null, which says the same
		}
		if v == nil {
			return refuse(step(path, name), say.Later("write %s", wanted(t.Field(i).Type)), "it is missing")
		}
		if err := shaped(step(path, name), v, t.Field(i).Type); err != nil {
			return err
		}
	}
	return nil
}

// misspelled finds the first key that differs from a known one only in capitals.
func misspelled(m map[string]any, known map[string]bool) (wrong, right string) {
	for k := range m {
		if known[k] {
			continue
		}
		for name := range known {
			if strings.EqualFold(k, name) && (wrong == "" || k < wrong) {
				wrong, right = k, name
			}
		}
	}
	return wrong, right
}

func scalar(path string, v any, t reflect.Type) error {
	fits := false
	switch t.Kind() {
	case reflect.String:
		_, fits = v.(string)
	case reflect.Bool:
		_, fits = v.(bool)
	case reflect.Int, reflect.Int64:
		if n, ok := v.(json.Number); ok {
			_, err := strconv.ParseInt(n.String(), 10, 64)
			fits = err == nil
		}
	case reflect.Float64:
		if n, ok := v.(json.Number); ok {
			_, err := n.Float64()
			fits = err == nil
		}
	}
	if !fits {
		return misfit(path, v, t)
	}
	return nil
}

func misfit(path string, v any, t reflect.Type) error {
	return refuse(path, say.Later("write %s", wanted(t)), "found %s", found(v))
}

// found names a piece of JSON in the user's words.
func found(v any) say.Text {
	switch v := v.(type) {
	case nil:
		return say.Later("nothing (null)")
	case string:
		return say.Later("the text %.40q", v)
	case json.Number:
		if len(v) > 40 {
			return say.Later("the number %s", string(v[:40])+"...")
		}
		return say.Later("the number %s", string(v))
	case bool:
		return say.Plain(strconv.FormatBool(v))
	case []any:
		return say.Later("a list")
	}
	return say.Later("a group of fields")
}

// wanted names what belongs into a field of type t.
func wanted(t reflect.Type) say.Text {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	if t == reflect.TypeFor[Money]() {
		return say.Later("an amount as a whole number of cents")
	}
	switch t.Kind() {
	case reflect.Struct:
		var names []string
		for i := range t.NumField() {
			name, options, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
			if options == "" {
				names = append(names, name)
			}
		}
		if len(names) == 0 {
			return say.Later("a group of fields in braces")
		}
		return say.Later("a group of fields in braces with %s", strings.Join(names, ", "))
	case reflect.Map:
		return say.Later("a group of fields in braces")
	case reflect.Slice:
		return say.Later("a list in brackets")
	case reflect.Array:
		return say.Later("a list of %d in brackets", t.Len())
	case reflect.Float64:
		return say.Later("a number")
	case reflect.Bool:
		return say.Later("true or false")
	case reflect.Int, reflect.Int64:
		return say.Later("a whole number within reach")
	}
	return say.Later("a text in quotes")
}
