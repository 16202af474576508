package appraisal

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"
	"unicode/utf8"

	"asfound/rubrics/say"
)

// mostChecks bounds a rubric that comes with an appraisal: ten times a long one.
const mostChecks = 1000

// guard refuses a rubric that comes with an appraisal and does not hold to the
// rules of rubric files: it may have been written by another program. Parts and
// limits it names may be gone since; that is told where they are used.
func (r *Rubric) guard() error {
	if n := countChecks(r); n > mostChecks {
		return refuse("made_with.sections", say.Later("at most %d checks", mostChecks), "%d checks are too many", n)
	}
	var first *Error
	tell := func(path string, what, right say.Text) {
		if first == nil {
			first = refuse("made_with."+path, right, "%s", what)
		}
	}
	ruled("", reflect.ValueOf(*r), "", tell)
	if first == nil {
		Examine(r, nil, nil, tell)
	}
	if first != nil {
		return first
	}
	return nil
}

// ruled holds every value to the rules that its type's validate tags state: the
// one home of these rules. It knows the tags that bound numbers, lengths and words;
// the others are for the reader of files.
func ruled(path string, v reflect.Value, tag string, tell Tell) {
	own, each, _ := strings.Cut(tag, "dive")
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			ruled(path, v.Elem(), strings.TrimPrefix(tag, "omitempty,"), tell)
		}
		return
	case reflect.Struct:
		for i := range v.NumField() {
			f := v.Type().Field(i)
			name, _, _ := strings.Cut(f.Tag.Get("yaml"), ",")
			if name == "" {
				name, _, _ = strings.Cut(f.Tag.Get("json"), ",")
			}
			ruled(Join(path, name), v.Field(i), f.Tag.Get("validate"), tell)
			bounded(path, name, v, v.Field(i), f.Tag.Get("validate"), tell)
		}
		return
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			ruled(fmt.Sprintf("%s[%d]", path, i), v.Index(i), strings.TrimPrefix(each, ","), tell)
		}
	case reflect.Map:
		for _, k := range v.MapKeys() {
			ruled(Join(path, k.String()), v.MapIndex(k), "", tell)
		}
	}
	if v.Kind() != reflect.Struct {
		if strings.HasPrefix(own, "omitempty") && v.IsZero() {
			return
		}
		for _, rule := range strings.Split(own, ",") {
			if right, ok := breaks(v, rule); ok {
				tell(path, say.Later("%v is out of range", v.Interface()), right)
			}
		}
	}
}

// bounded holds a field to the field that its tag names.
func bounded(path, name string, whole, v reflect.Value, tag string, tell Tell) {
	for _, rule := range strings.Split(tag, ",") {
		other, ok := strings.CutPrefix(rule, "gtefield=")
		if ok && size(v) < size(whole.FieldByName(other)) {
			tell(Join(path, name), say.Later("%v is less than %s", v.Interface(), strings.ToLower(other)), say.Later("low, likely, high must not fall"))
		}
	}
}

// breaks tells whether v breaks the rule, and what would be right.
func breaks(v reflect.Value, rule string) (right say.Text, yes bool) {
	key, value, _ := strings.Cut(rule, "=")
	bound, err := strconv.ParseFloat(value, 64)
	n := size(v)
	switch {
	case key == "required" && v.IsZero():
		return say.Later("write it"), true
	case key == "oneof":
		for _, word := range strings.Fields(value) {
			if v.String() == word {
				return right, false
			}
		}
		return say.Later("one of %s", value), true
	case key == "ne" && v.String() == value:
		return say.Later("another word"), true
	case err != nil:
		return right, false
	case (key == "gte" || key == "min") && !(n >= bound):
		return say.Later("at least %s", value), true
	case (key == "lte" || key == "max") && !(n <= bound):
		return say.Later("at most %s", value), true
	case key == "gt" && !(n > bound):
		return say.Later("more than %s", value), true
	case key == "lt" && !(n < bound):
		return say.Later("less than %s", value), true
	}
	return right, false
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
