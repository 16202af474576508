package rubrics

import (
	"reflect"
	"strings"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/token"

	"asfound/rubrics/say"
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

// called names what a node is, in the user's words.
func called(n ast.Node) say.Text {
	switch n.Type() {
	case ast.MappingType, ast.MappingValueType:
		return say.Later("a group of keys")
	case ast.SequenceType:
		return say.Later("a list")
	case ast.IntegerType, ast.FloatType:
		return say.Later("a number")
	case ast.BoolType:
		return say.Later("true or false")
	case ast.StringType, ast.LiteralType:
		return say.Later("a text")
	}
	return say.Later("something else")
}

// wanted names what belongs into a field of type t.
func wanted(t reflect.Type) say.Text {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	if t == moneyType {
		return say.Later("an amount like 180 or 12.50")
	}
	switch t.Kind() {
	case reflect.Struct:
		var names []string
		for i := range t.NumField() {
			names = append(names, yamlName(t.Field(i)))
		}
		return say.Later("a group of %s", strings.Join(names, ", "))
	case reflect.Map:
		return say.Later("a group of keys")
	case reflect.Slice:
		return say.Later("a list")
	case reflect.Array:
		return say.Later("a list of exactly %d numbers", t.Len())
	case reflect.Float64:
		return say.Later("a number")
	case reflect.Int:
		return say.Later("a whole number")
	case reflect.Bool:
		return say.Later("true or false")
	}
	return say.Later("a text")
}

func yamlName(f reflect.StructField) string {
	name, _, _ := strings.Cut(f.Tag.Get("yaml"), ",")
	return name
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

// alone cuts an amount's token out of the chain of all tokens: to hand it to
// Money the library would walk that chain from the file's start, each time.
func alone(n ast.Node) {
	switch n := n.(type) {
	case *ast.IntegerNode:
		n.Token = cut(n.Token)
	case *ast.FloatNode:
		n.Token = cut(n.Token)
	}
}

func cut(t *token.Token) *token.Token {
	c := *t
	c.Prev, c.Next = nil, nil
	return &c
}
