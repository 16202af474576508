package rubrics

import (
	"reflect"
	"strings"

	"asfound/rubrics/appraisal"

	yaml "github.com/goccy/go-yaml"
)

// Write gives a rubric as a file that Decode reads back as the same rubric.
func Write(r appraisal.Rubric) ([]byte, error) {
	text, err := yaml.MarshalWithOptions(written(reflect.ValueOf(r)), yaml.Indent(2), yaml.IndentSequence(true))
	if err != nil {
		return nil, err
	}
	return append(text, "...\n"...), nil
}

// written turns a value into what the YAML library writes as this package reads:
// keys in the order of the type, amounts as plain numbers, nothing that is empty
// and may be left out.
func written(v reflect.Value) any {
	if m, ok := v.Interface().(appraisal.Money); ok {
		if m%100 == 0 {
			return int64(m / 100)
		}
		return float64(m) / 100
	}
	if x, ok := v.Interface().(float64); ok && x == float64(int64(x)) {
		return int64(x)
	}
	switch v.Kind() {
	case reflect.Pointer:
		return written(v.Elem())
	case reflect.Struct:
		var out yaml.MapSlice
		for i := range v.NumField() {
			f := v.Type().Field(i)
			if strings.Contains(f.Tag.Get("json"), ",omitempty") && v.Field(i).IsZero() {
				continue
			}
			out = append(out, yaml.MapItem{Key: yamlName(f), Value: written(v.Field(i))})
		}
		return out
	case reflect.Map:
		out := map[string]any{} // the library writes keys in order
		for _, k := range v.MapKeys() {
			out[k.String()] = written(v.MapIndex(k))
		}
		return out
	case reflect.Slice, reflect.Array:
		out := make([]any, v.Len())
		for i := range out {
			out[i] = written(v.Index(i))
		}
		return out
	}
	return v.Interface()
}
