package tongue

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"slices"
	"sort"
	"strconv"
	"strings"
	"testing"
	"unicode"
)

// speaking are the packages whose sentences the engine says, from this folder.
var speaking = []string{"../appraisal", "../depreciation", "../door", "../editing", "../notice", "../pairwise", "../say", "../table", "../unit", ".."}

// sayers are the functions that take a pattern, and at which of their arguments. Those
// of package say take nothing but constant ones; the others may also take a text that
// was made before.
var sayers = map[string][]int{
	"F": {0}, "T": {0}, "Later": {0}, "Key": {0}, "Errorf": {0},
	"refuse": {0, 1, 2}, "refuseLine": {1, 2}, "add": {0}, "said": {0}, "restsOn": {1}, "many": {1, 2},
	"say": {0, 1, 2}, "wrong": {1, 2}, "at": {2, 3}, "problem": {3, 4}, "because": {0, 1}, "Add": {2},
	"tell": {0}, "join": {0}, "between": {0, 4}, "positive": {0, 3}, "first": {}, "ratio": {0},
}

var constantOnly = []string{"F", "T", "Later", "Key", "Errorf"}

// where a pattern is said.
type place struct{ file, name string }

// keys finds all patterns that the engine says, with one place of each.
func keys(t *testing.T, dirs []string, sayers map[string][]int) map[string]place {
	t.Helper()
	out := map[string]place{}
	for _, dir := range dirs {
		set := token.NewFileSet()
		names, err := filepath.Glob(filepath.Join(dir, "*.go"))
		if err != nil {
			t.Fatal(err)
		}
		var parsed []*ast.File
		for _, name := range names {
			if strings.HasSuffix(name, "_test.go") {
				continue
			}
			f, err := parser.ParseFile(set, name, nil, 0)
			if err != nil {
				t.Fatal(err)
			}
			parsed = append(parsed, f)
		}
		known := constants(parsed)
		for _, f := range parsed {
			ast.Inspect(f, func(n ast.Node) bool {
				call, ok := n.(*ast.CallExpr)
				if !ok {
					return true
				}
				name := called(call.Fun)
				for _, i := range sayers[name] {
					if i >= len(call.Args) {
						continue
					}
					text, constant := known.text(call.Args[i])
					at := set.Position(call.Pos())
					switch {
					case constant && text != "" && sentence(name, text):
						if _, met := out[text]; !met {
							out[text] = place{fmt.Sprintf("%s:%d", at.Filename, at.Line), name}
						}
					case !constant && slices.Contains(constantOnly, name) && !strings.HasPrefix(at.Filename, "../say"):
						t.Errorf("%s:%d: %s takes a pattern that is no constant: mark it as a Key where it stands and say it by Label or Pattern", at.Filename, at.Line, name)
					}
				}
				return true
			})
		}
	}
	return out
}

func called(fun ast.Expr) string {
	switch f := fun.(type) {
	case *ast.Ident:
		return f.Name
	case *ast.SelectorExpr:
		if x, ok := f.X.(*ast.Ident); ok && (x.Name == "fmt" || x.Name == "errors") {
			return ""
		}
		return f.Sel.Name
	}
	return ""
}

// constantTexts are the constant strings of a package, by name.
type constantTexts map[string]string

func constants(parsed []*ast.File) constantTexts {
	out := constantTexts{"Apart": "\x04"}
	for _, f := range parsed {
		ast.Inspect(f, func(n ast.Node) bool {
			if d, ok := n.(*ast.GenDecl); ok && d.Tok == token.CONST {
				for _, s := range d.Specs {
					v := s.(*ast.ValueSpec)
					for i := range min(len(v.Names), len(v.Values)) {
						if text, ok := out.text(v.Values[i]); ok {
							out[v.Names[i].Name] = text
						}
					}
				}
			}
			return true
		})
	}
	return out
}

// text is the value of a constant string.
func (c constantTexts) text(e ast.Expr) (string, bool) {
	switch x := e.(type) {
	case *ast.BasicLit:
		text, err := strconv.Unquote(x.Value)
		return text, err == nil && x.Kind == token.STRING
	case *ast.Ident:
		text, ok := c[x.Name]
		return text, ok
	case *ast.SelectorExpr:
		text, ok := c[x.Sel.Name]
		return text, ok
	case *ast.BinaryExpr:
		a, ok := c.text(x.X)
		b, too := c.text(x.Y)
		return a + b, ok && too && x.Op == token.ADD
	}
	return "", false
}

var onlyVerbs = regexp.MustCompile(`^(%[0-9.]*[a-z])+$`)

// sentence leaves out what is the same in every language: bare verbs, and fields and
// ids where a sayer of messages takes them.
func sentence(name, text string) bool {
	if onlyVerbs.MatchString(text) {
		return false
	}
	if slices.Contains(constantOnly, name) {
		return true
	}
	return !isField.MatchString(text)
}

var isField = regexp.MustCompile(`^[a-z_-]+(\.[a-z_]+)*\.?$|^$`)

// verbs of a pattern in the order of their arguments.
func verbs(pattern string) string {
	var out []string
	next := 0
	for _, m := range verb.FindAllStringSubmatch(pattern, -1) {
		if m[0] == "%%" {
			continue
		}
		at := next
		if m[1] != "" {
			fmt.Sscan(strings.Trim(m[1], "[]"), &at)
			at--
		}
		next = at + 1
		out = append(out, fmt.Sprintf("%d%s%s", at, m[2], m[3]))
	}
	sort.Strings(out)
	return strings.Join(out, " ")
}

var verb = regexp.MustCompile(`%%|%(\[\d+\])?([#+]?[0-9.]*)([a-zA-Z])`)

// TestEngineWords: every sentence that the engine says stands in the file of each
// language, with the same arguments, and no other does.
func TestEngineWords(t *testing.T) { holdWords(t, "engine", keys(t, speaking, sayers)) }

// TestProgramWords holds the command line's own words likewise.
func TestProgramWords(t *testing.T) {
	said := keys(t, []string{"../../cmd/asfound"}, map[string][]int{"F": {0}, "T": {0}, "Key": {0}, "tell": {0}})
	for english := range said {
		if !strings.ContainsFunc(verb.ReplaceAllString(english, ""), unicode.IsLetter) {
			delete(said, english) // columns alone
		}
	}
	holdWords(t, program, said)
}

func holdWords(t *testing.T, name string, said map[string]place) {
	if len(said) < 50 {
		t.Fatalf("only %d sentences were found", len(said))
	}
	for _, language := range Languages {
		l, err := Load(language)
		if err != nil {
			t.Fatal(err)
		}
		words := l.files[name]
		for english, at := range said {
			own, ok := words[english]
			switch {
			case !ok:
				t.Errorf("%s/%s.yaml lacks %q, which %s says", language, name, english, at.file)
			case verbs(own) != verbs(english):
				t.Errorf("%s/%s.yaml: %q takes %q, the English %q", language, name, own, verbs(own), verbs(english))
			}
		}
		for english := range words {
			if _, ok := said[english]; !ok {
				t.Errorf("%s/%s.yaml: nobody says %q", language, name, english)
			}
		}
	}
}
