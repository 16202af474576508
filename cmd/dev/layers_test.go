package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// goLayers names what a package must not reach, directly or not, and why.
var goLayers = []struct {
	pkg    string
	banned []string
	why    string
}{
	{"asfound/rubrics/appraisal", []string{"asfound/server", "asfound/cmd", "asfound/pwa", "os", "net", "net/http", "io/fs", "embed", "log", "math/rand", "math/rand/v2", "regexp", "syscall/js", "github.com/goccy/go-yaml", "github.com/go-playground/validator/v10"},
		"the engine is pure and small: no files, network, chance or validator"},
	{"asfound/rubrics/limit", []string{"asfound/server", "asfound/rubrics/appraisal", "os", "net", "embed", "math/rand"}, "a limit is a pure function"},
	{"asfound/rubrics/unit", []string{"asfound/rubrics/limit", "asfound/server", "os", "net"}, "units know nothing of what is measured"},
	{"asfound/rubrics/table", []string{"asfound/rubrics", "asfound/rubrics/appraisal", "asfound/rubrics/unit", "asfound/server", "os", "net", "regexp"}, "a table is text, whatever its columns mean"},
	{"asfound/rubrics/notice", []string{"asfound/rubrics", "asfound/rubrics/appraisal", "asfound/rubrics/unit", "asfound/server", "os", "net", "regexp", "time", "math/rand"}, "a text is read for its words, whoever judges by them"},
	{"asfound/rubrics/backtest", []string{"asfound/rubrics", "asfound/rubrics/appraisal", "asfound/server", "os", "io", "net", "math/rand", "math/rand/v2", "time"}, "measuring prices needs a table and the sales, not where they come from"},
	{"asfound/rubrics/document", []string{"asfound/server", "asfound/rubrics", "asfound/rubrics/door", "os", "net", "net/http", "regexp", "math/rand", "math/rand/v2", "html", "text/template"}, "a document is made of what is known and drawn by others"},
	{"asfound/rubrics/sheet", []string{"asfound/server", "asfound/rubrics", "asfound/rubrics/door", "os", "net", "regexp", "math/rand", "math/rand/v2", "encoding/csv"}, "tables are filled here and written by others"},
	{"asfound/rubrics/door", []string{"asfound/server", "asfound/rubrics", "embed", "github.com/goccy/go-yaml", "github.com/go-playground/validator/v10"},
		"the browser loads the engine and JSON alone"},
	{"asfound/rubrics/editing", []string{"asfound/server", "asfound/rubrics/door", "os", "net", "syscall/js"}, "the editor reads and checks rubrics; it judges nothing"},
	{"asfound/rubrics/document/form", []string{"asfound/rubrics", "asfound/server", "os", "net"}, "the form of a document is data, whoever makes or draws it"},
	{"asfound/rubrics/document/pdf", []string{"asfound/rubrics", "asfound/rubrics/appraisal", "asfound/rubrics/limit", "asfound/server", "os", "net", "time", "math/rand", "math/rand/v2", "syscall/js", "github.com/go-playground/validator/v10"}, "drawing a paper judges nothing, and the same document gives the same bytes"},
	{"asfound/rubrics/printing", []string{"asfound/rubrics", "asfound/rubrics/appraisal", "asfound/rubrics/limit", "asfound/rubrics/door", "asfound/server", "os", "net", "syscall/js", "github.com/go-playground/validator/v10"}, "the browser loads the papers without the engine"},
	{"asfound/rubrics", []string{"asfound/server", "asfound/cmd", "asfound/pwa"}, "the judgement does not know who asks"},
	{"asfound/server/record", []string{"asfound/rubrics", "asfound/server/store", "os", "net", "net/http", "go.etcd.io/bbolt", "github.com/labstack/echo/v4"}, "merging is pure"},
	{"asfound/server/store/bolt", []string{"asfound/rubrics", "github.com/labstack/echo/v4", "net/http"}, "a store knows no HTTP"},
	{"asfound/server/link", []string{"asfound/server/store", "asfound/server/seller", "github.com/labstack/echo/v4", "net/http", "go.etcd.io/bbolt"}, "papers are kept, whoever asks for them"},
	{"asfound/server/seller", []string{"asfound/server", "asfound/server/link", "asfound/server/store", "asfound/server/photo", "github.com/labstack/echo/v4", "net/http", "os"}, "what a seller sees is a document and what he said, and nothing else can come in"},
	{"asfound/server/workbook", []string{"asfound/server", "asfound/rubrics", "asfound/rubrics/appraisal", "net/http", "os"}, "it writes cells, whatever they mean"},
	{"asfound/server", []string{"asfound/cmd", "asfound/pwa", "go.etcd.io/bbolt"}, "the app and the store arrive from outside"},
	{"asfound/pwa", []string{"asfound/server", "asfound/rubrics", "asfound/cmd"}, "it only carries the built app"},
}

func TestGoLayers(t *testing.T) {
	for _, l := range goLayers {
		// Nearly every package reaches os through fmt and errors of the library;
		// what counts is what our own packages import.
		out, err := exec.Command("go", "list", "-deps", "-f", `{{if not .Standard}}{{.ImportPath}} {{join .Imports " "}}{{end}}`, l.pkg).CombinedOutput()
		if err != nil {
			t.Fatalf("%s: %v\n%s", l.pkg, err, out)
		}
		for _, line := range strings.Split(strings.TrimSpace(string(out)), "\n") {
			from, imports, _ := strings.Cut(line, " ")
			if !strings.HasPrefix(from, "asfound/") {
				continue
			}
			for _, imported := range strings.Fields(imports) {
				for _, b := range l.banned {
					if imported == b || (strings.HasPrefix(b, "asfound/") && b != "asfound/rubrics" && strings.HasPrefix(imported, b+"/")) {
						t.Errorf("%s reaches %s (through %s): %s", l.pkg, imported, from, l.why)
					}
				}
			}
		}
	}
}

// goOnly names all that a package may import itself, where a list of bans would
// be longer.
var goOnly = []struct {
	pkg     string
	allowed []string
	why     string
}{
	{"asfound/rubrics/depreciation", []string{"errors", "fmt", "math", "asfound/rubrics/kernel", "asfound/rubrics/say"}, "how worth is lost is arithmetic: no appraisal, file, clock or chance"},
	{"asfound/rubrics/sales", []string{"cmp", "math", "slices", "strings", "asfound/rubrics/kernel"}, "it knows numbers and labels, not what they mean"},
	{"asfound/rubrics/pairwise", []string{"errors", "fmt", "math", "asfound/rubrics/kernel", "asfound/rubrics/say"}, "weights are arithmetic, whatever is weighed"},
	{"asfound/rubrics/say", []string{"errors", "fmt", "reflect", "strconv", "strings", "unicode", "unicode/utf8"}, "a voice knows patterns and marks, not what is said"},
	{"asfound/rubrics/kernel", []string{"math"}, "every build must give the same last bit"},
}

func TestGoLayersOnly(t *testing.T) {
	for _, l := range goOnly {
		out, err := exec.Command("go", "list", "-f", `{{join .Imports " "}}`, l.pkg).CombinedOutput()
		if err != nil {
			t.Fatalf("%s: %v\n%s", l.pkg, err, out)
		}
		for _, imported := range strings.Fields(string(out)) {
			if !slices.Contains(l.allowed, imported) {
				t.Errorf("%s imports %s, only %v are open to it: %s", l.pkg, imported, l.allowed, l.why)
			}
		}
	}
}

// tsLayers names the folders of the app that each folder may import from.
var tsLayers = map[string][]string{
	"screens":   {"screens", "parts", "charts", "data", "sync", "engine", "words", "generated", "style"},
	"parts":     {"parts", "data", "sync", "engine", "words", "generated", "style", "sw"},
	"charts":    {"charts", "parts", "words", "generated"},
	"data":      {"data", "words", "generated"},
	"sync":      {"sync", "data", "words", "generated"},
	"engine":    {"engine", "words", "generated"},
	"words":     {"words", "generated"},
	"sw":        {"sw"},
	"style":     {"style"},
	"generated": {},
}

var importLine = regexp.MustCompile(`(?m)^(?:import|export)\s[^;]*?from\s+"(\.[^"]+)"|^import\s+"(\.[^"]+)"`)

func TestTypeScriptLayers(t *testing.T) {
	root := "../../pwa/src"
	files := 0
	err := filepath.WalkDir(root, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() || !(strings.HasSuffix(path, ".ts") || strings.HasSuffix(path, ".tsx")) {
			return err
		}
		rel, _ := filepath.Rel(root, path)
		folder, _, nested := strings.Cut(filepath.ToSlash(rel), "/")
		if !nested || strings.Contains(path, ".test.") {
			return nil // the top files tie everything together
		}
		files++
		may, ok := tsLayers[folder]
		if !ok {
			t.Errorf("%s: the folder %s has no place in the layers", rel, folder)
			return nil
		}
		src, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		for _, m := range importLine.FindAllStringSubmatch(string(src), -1) {
			to := m[1] + m[2]
			target, err := filepath.Rel(root, filepath.Join(filepath.Dir(path), to))
			if err != nil || strings.HasPrefix(target, "..") {
				t.Errorf("%s imports %s from outside src", rel, to)
				continue
			}
			into, _, _ := strings.Cut(filepath.ToSlash(target), "/")
			fits := false
			for _, a := range may {
				fits = fits || a == into
			}
			if !fits {
				t.Errorf("%s imports %s: %s may import only %v", rel, to, folder, may)
			}
		}
		for _, word := range []string{"dexie", "fetch(", "WebAssembly"} {
			if (folder == "screens" || folder == "parts" || folder == "charts") && strings.Contains(string(src), word) {
				t.Errorf("%s touches %s itself: that is data's, sync's or the engine's work", rel, word)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if files == 0 {
		t.Fatal("no TypeScript files found")
	}
}

// TestGeneratedFilesAreFresh holds the border types to what the tree has.
func TestGeneratedFilesAreFresh(t *testing.T) {
	if err := os.Chdir("../.."); err != nil {
		t.Fatal(err)
	}
	defer os.Chdir("cmd/dev")
	if err := generatedFresh(); err != nil {
		t.Error(err)
	}
}
