package rubrics

import (
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"

	"asfound/rubrics/appraisal"

	"asfound/rubrics/say"
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/token"
)

// shape holds a document against the Go type it is to fill, before it is
// decoded: the YAML library stops at the first unknown key, gives no place for
// amounts, and panics on a list that is longer than its array.
type shape struct {
	file     string
	places   places
	problems Problems
	// mistyped is set where decoding would fail, so that checking must end here.
	mistyped bool
}

func (s *shape) say(path string, what, right any) {
	s.problems = append(s.problems, problem(s.file, s.places.find(path), path, what, right))
}

func (s *shape) wrong(path string, what, right any) {
	s.mistyped = true
	s.say(path, what, right)
}

var moneyType = reflect.TypeFor[appraisal.Money]()

// walk checks node n at path against type t and notes every position.
func (s *shape) walk(path string, n ast.Node, t reflect.Type) {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	s.places[path] = place(n)
	if n.Type() == ast.NullType {
		s.wrong(path, "is empty", say.Later("write %s or leave the key out", wanted(t)))
		return
	}
	switch t.Kind() {
	case reflect.Struct:
		s.fields(path, n, t)
	case reflect.Map:
		pairs, ok := mapping(n)
		if !ok {
			s.mismatch(path, n, t)
			return
		}
		for _, kv := range pairs {
			s.walk(appraisal.Join(path, keyText(kv)), kv.Value, t.Elem())
		}
	case reflect.Slice, reflect.Array:
		s.list(path, n, t)
	default:
		s.scalar(path, n, t)
	}
}

func (s *shape) fields(path string, n ast.Node, t reflect.Type) {
	pairs, ok := mapping(n)
	if !ok {
		s.mismatch(path, n, t)
		return
	}
	known := map[string]reflect.StructField{}
	var names []string
	for i := range t.NumField() {
		f := t.Field(i)
		known[yamlName(f)] = f
		names = append(names, yamlName(f))
	}
	seen := map[string]bool{}
	for _, kv := range pairs {
		key := keyText(kv)
		f, ok := known[key]
		if !ok {
			s.places[appraisal.Join(path, key)] = at(kv.Key.GetToken())
			s.say(appraisal.Join(path, key), "is no key of this place", say.Later("one of %s", strings.Join(names, ", ")))
			continue
		}
		seen[key] = true
		s.walk(appraisal.Join(path, key), kv.Value, f.Type)
	}
	for _, name := range names {
		// What JSON always writes, a file must always say: no silent zero.
		if f := known[name]; !seen[name] && !strings.Contains(f.Tag.Get("json"), ",omitempty") {
			s.say(appraisal.Join(path, name), appraisal.IsMissing, say.Later("write %s", wanted(f.Type)))
		}
	}
}

func (s *shape) list(path string, n ast.Node, t reflect.Type) {
	seq, ok := n.(*ast.SequenceNode)
	if !ok {
		s.mismatch(path, n, t)
		return
	}
	for i, v := range seq.Values {
		s.walk(fmt.Sprintf("%s[%d]", path, i), v, t.Elem())
	}
	if t.Kind() == reflect.Array && len(seq.Values) != t.Len() {
		s.wrong(path, say.Later("has %d entries", len(seq.Values)), say.Later("write %s", wanted(t)))
	}
}

func (s *shape) scalar(path string, n ast.Node, t reflect.Type) {
	text := ""
	if tok := n.GetToken(); tok != nil {
		text = tok.Value
		switch tok.Type {
		case token.BinaryIntegerType, token.OctetIntegerType, token.HexIntegerType:
			s.wrong(path, say.Later("%s is no decimal number", appraisal.Quoted(text)), "write it without leading 0, 0b, 0o or 0x")
			return
		}
	}
	switch n.Type() {
	case ast.InfinityType, ast.NanType:
		s.wrong(path, say.Later("%s is no finite number", appraisal.Quoted(text)), say.Later("write %s", wanted(t)))
		return
	}
	number := n.Type() == ast.IntegerType || n.Type() == ast.FloatType
	fits := false
	switch {
	case t == moneyType:
		if number {
			_, err := appraisal.ParseMoney(text)
			if err != nil {
				s.wrong(path, say.Later("%s is no amount", appraisal.Quoted(text)), "write it like 180 or 12.50, at most 1000000000")
				return
			}
			alone(n)
			fits = true
		}
	case t.Kind() == reflect.Float64:
		v, err := strconv.ParseFloat(strings.ReplaceAll(text, "_", ""), 64)
		fits = number && err == nil && !math.IsInf(v, 0)
	case t.Kind() == reflect.Int:
		_, err := strconv.ParseInt(text, 10, 32)
		fits = n.Type() == ast.IntegerType && err == nil
	case t.Kind() == reflect.Bool:
		fits = n.Type() == ast.BoolType
	case t.Kind() == reflect.String:
		if number || n.Type() == ast.BoolType {
			s.wrong(path, say.Later("%s is read as %s where a text belongs", text, called(n)), say.Later("put it in quotes: %q", text))
			return
		}
		fits = n.Type() == ast.StringType || n.Type() == ast.LiteralType
	}
	if !fits {
		s.mismatch(path, n, t)
	}
}

func (s *shape) mismatch(path string, n ast.Node, t reflect.Type) {
	what := say.Later("is %s", called(n))
	switch n.(type) {
	case *ast.StringNode, *ast.IntegerNode, *ast.FloatNode:
		what = say.Later("%s is %s", appraisal.Quoted(n.GetToken().Value), called(n))
	}
	s.wrong(path, what, say.Later("write %s", wanted(t)))
}
