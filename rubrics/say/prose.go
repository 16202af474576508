package say

import "reflect"

// Prose calls visit for every text of a value that people read, as its types tell
// by the tag `say:"yes"` on a string or a list of strings. Value is a pointer.
func Prose(value any, visit func(*string)) { walk(reflect.ValueOf(value), false, visit) }

func walk(v reflect.Value, said bool, visit func(*string)) {
	switch v.Kind() {
	case reflect.String:
		if said && v.CanAddr() && v.String() != "" {
			text := v.String()
			visit(&text)
			v.SetString(text)
		}
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			walk(v.Elem(), said, visit)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			walk(v.Index(i), said, visit)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() {
				walk(v.Field(i), f.Tag.Get("say") == "yes", visit)
			}
		}
	}
}
