package document_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"github.com/goccy/go-yaml"

	"asfound/rubrics/document"
	"asfound/rubrics/say"
)

// spanish are the pairs of the documents' own sentences.
func spanish(t *testing.T) map[string]string {
	t.Helper()
	src, err := os.ReadFile("../tongue/es/document.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var pairs []struct{ En, Es string }
	if err := yaml.Unmarshal(src, &pairs); err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	for _, p := range pairs {
		out[p.En] = p.Es
	}
	return out
}

// TestSpanishIsWhole: each sentence that documents and tables say stands in the
// Spanish file with as many arguments, and none stands there unsaid.
func TestSpanishIsWhole(t *testing.T) {
	pairs, said := spanish(t), map[string]bool{}
	for _, pattern := range []string{"*.go", "../sheet/*.go"} {
		names, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range names {
			if strings.HasSuffix(name, "_test.go") {
				continue
			}
			f, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
			if err != nil {
				t.Fatal(err)
			}
			ast.Inspect(f, func(n ast.Node) bool {
				call, ok := n.(*ast.CallExpr)
				if !ok || len(call.Args) == 0 {
					return true
				}
				fun, ok := call.Fun.(*ast.SelectorExpr)
				if !ok || fun.Sel.Name != "T" && fun.Sel.Name != "F" {
					return true
				}
				literal, ok := call.Args[0].(*ast.BasicLit)
				if !ok {
					t.Errorf("%s says what is no fixed text: use Label for a text of the catalogue", name)
					return true
				}
				text, err := strconv.Unquote(literal.Value)
				if err != nil {
					t.Fatal(err)
				}
				said[text] = true
				return true
			})
		}
	}
	if len(said) < 200 {
		t.Fatalf("only %d sentences were found", len(said))
	}
	for text := range said {
		if !strings.ContainsFunc(strings.ReplaceAll(text, "%s", ""), unicode.IsLetter) {
			continue // only joins what is said
		}
		own, ok := pairs[text]
		if !ok || strings.Count(own, "%s") != strings.Count(text, "%s") {
			t.Errorf("%q is not in Spanish, or with other arguments: %q", text, own)
		}
	}
	for text := range pairs {
		if !said[text] {
			t.Errorf("%q is said nowhere", text)
		}
	}
}

// TestEstimateInSpanish: the paper's own words and numbers are the seller's, the
// texts of the rubric stay as the judge has them.
func TestEstimateInSpanish(t *testing.T) {
	locale, ok := say.LocaleOf("es-ES")
	if !ok {
		t.Fatal("no such locale")
	}
	d, err := document.Make(judge(t), say.New(locale, spanish(t)), file(t, "demo/1-lift-walked"), document.Ask{Kind: "estimate", Units: "metric"})
	if err != nil {
		t.Fatal(err)
	}
	s := texts(d)
	if d.Title != "Presupuesto de reparación" || d.Language != "es-ES" || d.Page != "Página %s de %s" {
		t.Errorf("%q in %s, %q", d.Title, d.Language, d.Page)
	}
	for _, want := range []string{"Arreglar lo que aquí se indica cuesta unos 1144; en ocho de diez casos, entre 875 y 1490.", "0,352\u00a0in (8,941\u00a0mm)", "Lo que se halló", "no revisado: el vendedor no quiso", "estimación sin cotización", "4082\u00a0kg"} {
		if !strings.Contains(s, want) {
			t.Errorf("%q is not in the paper", want)
		}
	}
}
