package rubrics

import (
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"

	"asfound/rubrics/appraisal"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/token"
)

// position is where something stands in the file, from 1.
type position struct{ line, column int }

// places gives the position of every field path of a file.
type places map[string]position

// find gives the position of the path or, where that is absent, of what holds it.
func (ps places) find(path string) position {
	for ; path != ""; path = parent(path) {
		if p, ok := ps[path]; ok {
			return p
		}
	}
	return ps[""]
}

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

func (s *shape) say(path, what, right string) {
	p := s.places.find(path)
	s.problems = append(s.problems, &Problem{File: s.file, Line: p.line, Column: p.column, Field: path, What: what, Right: right})
}

func (s *shape) wrong(path, what, right string) {
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
		s.wrong(path, "is empty", "write "+wanted(t)+" or leave the key out")
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
			s.walk(join(path, keyText(kv)), kv.Value, t.Elem())
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
			s.places[join(path, key)] = at(kv.Key.GetToken())
			s.say(join(path, key), "is no key of this place", "one of "+strings.Join(names, ", "))
			continue
		}
		seen[key] = true
		s.walk(join(path, key), kv.Value, f.Type)
	}
	for _, name := range names {
		// What JSON always writes, a file must always say: no silent zero.
		if f := known[name]; !seen[name] && !strings.Contains(f.Tag.Get("json"), ",omitempty") {
			s.say(join(path, name), isMissing, "write "+wanted(f.Type))
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
		s.wrong(path, fmt.Sprintf("has %d entries", len(seq.Values)), "write "+wanted(t))
	}
}

func (s *shape) scalar(path string, n ast.Node, t reflect.Type) {
	text := ""
	if tok := n.GetToken(); tok != nil {
		text = tok.Value
		switch tok.Type {
		case token.BinaryIntegerType, token.OctetIntegerType, token.HexIntegerType:
			s.wrong(path, fmt.Sprintf("%s is no decimal number", quoted(text)), "write it without leading 0, 0b, 0o or 0x")
			return
		}
	}
	switch n.Type() {
	case ast.InfinityType, ast.NanType:
		s.wrong(path, fmt.Sprintf("%s is no finite number", quoted(text)), "write "+wanted(t))
		return
	}
	number := n.Type() == ast.IntegerType || n.Type() == ast.FloatType
	fits := false
	switch {
	case t == moneyType:
		if number {
			_, err := appraisal.ParseMoney(text)
			if err != nil {
				s.wrong(path, quoted(text)+" is no amount", "write it like 180 or 12.50, at most 1000000000")
				return
			}
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
			s.wrong(path, text+" is read as "+called(n)+" where a text belongs", fmt.Sprintf("put it in quotes: %q", text))
			return
		}
		fits = n.Type() == ast.StringType || n.Type() == ast.LiteralType
	}
	if !fits {
		s.mismatch(path, n, t)
	}
}

func (s *shape) mismatch(path string, n ast.Node, t reflect.Type) {
	what := "is " + called(n)
	if _, ok := n.(*ast.StringNode); ok {
		what = quoted(n.GetToken().Value) + " " + what
	}
	s.wrong(path, what, "write "+wanted(t))
}

// called names what a node is, in the user's words.
func called(n ast.Node) string {
	switch n.Type() {
	case ast.MappingType, ast.MappingValueType:
		return "a group of keys"
	case ast.SequenceType:
		return "a list"
	case ast.IntegerType, ast.FloatType:
		return "a number"
	case ast.BoolType:
		return "true or false"
	case ast.StringType, ast.LiteralType:
		return "a text"
	}
	return "something else"
}

// wanted names what belongs into a field of type t.
func wanted(t reflect.Type) string {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	if t == moneyType {
		return "an amount like 180 or 12.50"
	}
	switch t.Kind() {
	case reflect.Struct:
		var names []string
		for i := range t.NumField() {
			names = append(names, yamlName(t.Field(i)))
		}
		return "a group of " + strings.Join(names, ", ")
	case reflect.Map:
		return "a group of keys"
	case reflect.Slice:
		return "a list"
	case reflect.Array:
		return fmt.Sprintf("a list of exactly %d numbers", t.Len())
	case reflect.Float64:
		return "a number"
	case reflect.Int:
		return "a whole number"
	case reflect.Bool:
		return "true or false"
	}
	return "a text"
}

func yamlName(f reflect.StructField) string {
	name, _, _ := strings.Cut(f.Tag.Get("yaml"), ",")
	return name
}

func join(path, key string) string {
	if strings.ContainsAny(key, ".[] \n") || key == "" {
		key = strconv.Quote(strings.NewReplacer(".", "_", "[", "_", "]", "_").Replace(key))
	}
	if path == "" {
		return key
	}
	return path + "." + key
}

// mapping gives the pairs of a group of keys.
func mapping(n ast.Node) ([]*ast.MappingValueNode, bool) {
	switch m := n.(type) {
	case *ast.MappingNode:
		return m.Values, true
	case *ast.MappingValueNode:
		return []*ast.MappingValueNode{m}, true
	}
	return nil, false
}

func keyText(kv *ast.MappingValueNode) string {
	if t := kv.Key.GetToken(); t != nil {
		return t.Value
	}
	return ""
}

// place is where a node begins: for a group of keys its first key, since the
// library's own token for it is the colon.
func place(n ast.Node) position {
	if pairs, ok := mapping(n); ok && len(pairs) > 0 && !flow(n) {
		return at(pairs[0].Key.GetToken())
	}
	return at(n.GetToken())
}

func flow(n ast.Node) bool {
	m, ok := n.(*ast.MappingNode)
	return ok && m.IsFlowStyle
}

func at(t *token.Token) position {
	if t == nil || t.Position == nil {
		return position{1, 1}
	}
	return position{t.Position.Line, t.Position.Column}
}
