package appraisal

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"
	"unicode/utf8"
)

// mostChecks bounds a rubric that comes with an appraisal: ten times a long one.
const mostChecks = 1000

// guard refuses a rubric that comes with an appraisal and does not hold to the
// rules of rubric files: it may have been written by another program. Parts and
// limits it names may be gone since; that is told where they are used.
func (r *Rubric) guard() error {
	if n := countChecks(r); n > mostChecks {
		return refuse("made_with.sections", fmt.Sprintf("at most %d checks", mostChecks), "%d checks are too many", n)
	}
	var first *Error
	say := func(path, what, right string) {
		if first == nil {
			first = refuse("made_with."+path, right, "%s", what)
		}
	}
	ruled("", reflect.ValueOf(*r), "", say)
	if first == nil {
		Examine(r, nil, nil, say)
	}
	if first != nil {
		return first
	}
	return nil
}

// ruled holds every value to the rules that its type's validate tags state: the
// one home of these rules. It knows the tags that bound numbers, lengths and words;
// the others are for the reader of files.
func ruled(path string, v reflect.Value, tag string, say func(path, what, right string)) {
	own, each, _ := strings.Cut(tag, "dive")
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			ruled(path, v.Elem(), strings.TrimPrefix(tag, "omitempty,"), say)
		}
		return
	case reflect.Struct:
		for i := range v.NumField() {
			f := v.Type().Field(i)
			name, _, _ := strings.Cut(f.Tag.Get("yaml"), ",")
			if name == "" {
				name, _, _ = strings.Cut(f.Tag.Get("json"), ",")
			}
			ruled(Join(path, name), v.Field(i), f.Tag.Get("validate"), say)
			bounded(path, name, v, v.Field(i), f.Tag.Get("validate"), say)
		}
		return
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			ruled(fmt.Sprintf("%s[%d]", path, i), v.Index(i), strings.TrimPrefix(each, ","), say)
		}
	case reflect.Map:
		for _, k := range v.MapKeys() {
			ruled(Join(path, k.String()), v.MapIndex(k), "", say)
		}
	}
	if v.Kind() != reflect.Struct {
		if strings.HasPrefix(own, "omitempty") && v.IsZero() {
			return
		}
		for _, rule := range strings.Split(own, ",") {
			if right := breaks(v, rule); right != "" {
				say(path, fmt.Sprintf("%v is out of range", v.Interface()), right)
			}
		}
	}
}

// bounded holds a field to the field that its tag names.
func bounded(path, name string, whole, v reflect.Value, tag string, say func(path, what, right string)) {
	for _, rule := range strings.Split(tag, ",") {
		other, ok := strings.CutPrefix(rule, "gtefield=")
		if ok && size(v) < size(whole.FieldByName(other)) {
			say(Join(path, name), fmt.Sprintf("%v is less than %s", v.Interface(), strings.ToLower(other)), "low, likely, high must not fall")
		}
	}
}

// breaks tells what would be right where v breaks the rule, "" where it does not.
func breaks(v reflect.Value, rule string) string {
	key, value, _ := strings.Cut(rule, "=")
	bound, err := strconv.ParseFloat(value, 64)
	n := size(v)
	switch {
	case key == "required" && v.IsZero():
		return "write it"
	case key == "oneof":
		for _, word := range strings.Fields(value) {
			if v.String() == word {
				return ""
			}
		}
		return "one of " + value
	case key == "ne" && v.String() == value:
		return "another word"
	case err != nil:
		return ""
	case (key == "gte" || key == "min") && !(n >= bound):
		return "at least " + value
	case (key == "lte" || key == "max") && !(n <= bound):
		return "at most " + value
	case key == "gt" && !(n > bound):
		return "more than " + value
	case key == "lt" && !(n < bound):
		return "less than " + value
	}
	return ""
}

// size is what a bound is about: a number itself, the length of anything else.
func size(v reflect.Value) float64 {
	switch v.Kind() {
	case reflect.Int, reflect.Int64:
		return float64(v.Int())
	case reflect.Float64:
		return v.Float()
	case reflect.String:
		return float64(utf8.RuneCountInString(v.String()))
	case reflect.Slice, reflect.Array, reflect.Map:
		return float64(v.Len())
	}
	return 0
}
