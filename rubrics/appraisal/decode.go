package appraisal

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"reflect"
	"strconv"
	"strings"

	"asfound/rubrics/say"
)

// MaxFile bounds an appraisal file in bytes; photos are not in it.
const MaxFile = 8 << 20

// Document is an appraisal file with whatever newer programs wrote into it.
type Document struct {
	File File
	raw  map[string]any
}

// Decode reads an appraisal file. Fields it does not know are kept for Encode.
// Bad input gives an *Error that names the field or the line.
func Decode(src []byte) (*Document, error) {
	if len(src) > MaxFile {
		return nil, refuse("", "at most 8 MiB", "the file is too large")
	}
	if len(bytes.TrimSpace(src)) == 0 {
		return nil, refuse("", "a JSON object", "the file is empty")
	}
	if err := characters(src); err != nil {
		return nil, err
	}
	raw, err := newTree(src)
	if err != nil {
		return nil, err
	}
	if err := newer(raw); err != nil {
		return nil, err
	}
	if err := shaped("", raw, reflect.TypeFor[File]()); err != nil {
		return nil, err
	}
	d := &Document{raw: raw}
	if err := json.Unmarshal(src, &d.File); err != nil {
		return nil, jsonError(src, err)
	}
	if err := d.File.check(); err != nil {
		return nil, err
	}
	return d, nil
}

// newer says first of all that a file is none of ours or of a newer program: its
// other fields may look strange for that reason alone.
func newer(raw map[string]any) error {
	if format, ok := raw["format"].(string); !ok || format != FileFormat {
		return refuse("format", say.Plain(strconv.Quote(FileFormat)), "this is not an appraisal file (%s)", found(raw["format"]))
	}
	if n, ok := raw["version"].(json.Number); ok {
		if v, err := n.Int64(); err == nil && v > FileVersion {
			return refuse("version", say.Later("%d, or a newer program", FileVersion), "the file has version %d, which is newer than this program knows", v)
		}
	}
	return nil
}

// jsonError says in the user's words where and why JSON is wrong.
func jsonError(src []byte, err error) error {
	var syntax *json.SyntaxError
	switch {
	case errors.As(err, &syntax):
		what := say.Plain(syntax.Error())
		if strings.Contains(syntax.Error(), "unexpected end") {
			what = say.Later("the file stops in the middle")
		}
		return refuseLine(lineAt(src, syntax.Offset), "complete JSON", "%s", what)
	case errors.Is(err, io.ErrUnexpectedEOF):
		return refuseLine(lineAt(src, int64(len(src))), "complete JSON", "the file stops in the middle")
	}
	return refuse("", "a JSON object", "%s", err)
}

func lineAt(src []byte, offset int64) int {
	return 1 + bytes.Count(src[:min(max(offset, 0), int64(len(src)))], []byte("\n"))
}

// Encode writes the file again, with the fields it did not know.
func (d *Document) Encode() ([]byte, error) {
	known, err := json.Marshal(d.File)
	if err != nil {
		return nil, err
	}
	var fresh map[string]any
	dec := json.NewDecoder(bytes.NewReader(known))
	dec.UseNumber()
	if err := dec.Decode(&fresh); err != nil {
		return nil, err
	}
	if d.raw != nil {
		empty, err := unknownOf(d.raw)
		if err != nil {
			return nil, err
		}
		overlay(fresh, empty)
	}
	out, err := json.MarshalIndent(fresh, "", "  ")
	if err == nil && len(out) > MaxFile { // what could be read must be readable again
		out, err = json.Marshal(fresh)
	}
	if err == nil && len(out) > MaxFile {
		return nil, refuse("", "at most 8 MiB", "the file would be too large")
	}
	return out, err
}

// unknownOf is what is left of raw after all that File knows was taken out.
func unknownOf(raw map[string]any) (map[string]any, error) {
	text, err := json.Marshal(raw)
	if err != nil {
		return nil, err
	}
	var f File
	if err := json.Unmarshal(text, &f); err != nil {
		return nil, err
	}
	text, err = json.Marshal(f)
	if err != nil {
		return nil, err
	}
	var known map[string]any
	if err := json.Unmarshal(text, &known); err != nil {
		return nil, err
	}
	return subtract(raw, known), nil
}

func subtract(raw, known map[string]any) map[string]any {
	rest := map[string]any{}
	for k, v := range raw {
		have, ok := known[k]
		if !ok {
			if fileZero[k] && v == nil {
				continue
			}
			rest[k] = v
			continue
		}
		inner, both := v.(map[string]any)
		other, too := have.(map[string]any)
		if both && too {
			if sub := subtract(inner, other); len(sub) > 0 {
				rest[k] = sub
			}
		}
		list, isList := v.([]any)
		others, areList := have.([]any)
		if isList && areList && len(list) == len(others) {
			subs, found := make([]any, len(list)), false
			for i := range list {
				a, x := list[i].(map[string]any)
				b, y := others[i].(map[string]any)
				if x && y {
					s := subtract(a, b)
					subs[i], found = s, found || len(s) > 0
				}
			}
			if found {
				rest[k] = subs
			}
		}
	}
	return rest
}

// fileZero names optional fields that are dropped when null.
var fileZero = map[string]bool{"new_price": true, "capacity": true, "distance": true, "asking": true, "grade": true, "maker": true, "cost": true,
	"weight": true, "length": true, "width": true, "height": true, "power": true, "voltage": true, "current": true,
	"site": true, "haulage": true, "ceiling": true, "door_width": true, "door_height": true, "floor_length": true, "floor_width": true,
	"slab": true, "slab_strength": true, "circuit": true, "run": true, "generator": true, "air_flow": true, "air_pressure": true,
	"vehicle": true, "truck": true, "trailer": true, "lifting": true, "rated": true, "empty": true, "people": true,
	"tow": true, "deck": true, "tongue": true, "axle": true,
}

// overlay adds to fresh what only rest has. List items are matched by place and
// only while the list has not grown or shrunk.
func overlay(fresh, rest map[string]any) {
	for k, v := range rest {
		have, ok := fresh[k]
		if !ok {
			fresh[k] = v
			continue
		}
		switch sub := v.(type) {
		case map[string]any:
			if into, ok := have.(map[string]any); ok {
				overlay(into, sub)
			}
		case []any:
			into, ok := have.([]any)
			if !ok || len(into) != len(sub) {
				continue
			}
			for i := range sub {
				a, x := into[i].(map[string]any)
				b, y := sub[i].(map[string]any)
				if x && y {
					overlay(a, b)
				}
			}
		}
	}
}
