package tongue

import (
	"fmt"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/parser"
	"github.com/goccy/go-yaml/token"
)

// read takes a file apart: a list of pairs, the English text under en and the other
// under the name of its language, and nothing else. The error names file and line.
func read(name, language string, src []byte) (map[string]string, error) {
	file, err := parser.ParseBytes(src, 0)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	out := map[string]string{}
	lines := map[string]int{}
	for _, d := range file.Docs {
		if d == nil || d.Body == nil {
			continue
		}
		list, ok := d.Body.(*ast.SequenceNode)
		if !ok {
			return nil, wrong(name, d.Body, "a list of pairs belongs here: - en: ... and %s: ...", language)
		}
		for _, item := range list.Values {
			english, own, err := pair(name, language, item)
			if err != nil {
				return nil, err
			}
			if line, twice := lines[english]; twice {
				return nil, wrong(name, item, "%.60q stands on line %d already: keep one of the two", english, line)
			}
			lines[english] = line(item)
			out[english] = own
		}
	}
	return out, nil
}

func pair(name, language string, item ast.Node) (english, own string, err error) {
	texts := map[string]string{}
	var fields []*ast.MappingValueNode
	switch m := item.(type) {
	case *ast.MappingNode:
		fields = m.Values
	case *ast.MappingValueNode:
		fields = []*ast.MappingValueNode{m}
	default:
		return "", "", wrong(name, item, "a pair belongs here: en: ... and %s: ...", language)
	}
	for _, f := range fields {
		key := f.Key.GetToken().Value
		if key != "en" && key != language {
			return "", "", wrong(name, f, "%.40q is no key of a pair: en or %s", key, language)
		}
		if _, twice := texts[key]; twice {
			return "", "", wrong(name, f, "%s stands twice in one pair", key)
		}
		switch v := f.Value.(type) {
		case *ast.StringNode:
			texts[key] = v.Value
		case *ast.LiteralNode:
			texts[key] = v.Value.Value
		default:
			return "", "", wrong(name, f, "%s is no text: put it in quotes", key)
		}
	}
	for _, key := range []string{"en", language} {
		if texts[key] == "" {
			return "", "", wrong(name, item, "%s is missing or empty", key)
		}
	}
	return texts["en"], texts[language], nil
}

func wrong(name string, at ast.Node, format string, args ...any) error {
	return fmt.Errorf("%s:%d: %s", name, line(at), fmt.Sprintf(format, args...))
}

// line is where a node begins; of a mapping the library's own token is a colon.
func line(n ast.Node) int {
	var t *token.Token
	switch m := n.(type) {
	case *ast.MappingNode:
		if len(m.Values) > 0 {
			t = m.Values[0].Key.GetToken()
		}
	case *ast.MappingValueNode:
		t = m.Key.GetToken()
	}
	if t == nil {
		t = n.GetToken()
	}
	if t == nil || t.Position == nil {
		return 1
	}
	return t.Position.Line
}
