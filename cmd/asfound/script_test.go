package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"asfound/rubrics/limit"
)

// TestScripts runs the program as a person would. Beside the usual commands:
//
//	keys FILE [KEY...]   FILE holds a JSON object (or a list of them) and each has these keys
//	edit FILE OLD NEW    replaces OLD, which must stand in FILE, by NEW everywhere
//	cut FILE BYTES       leaves the first BYTES of FILE
//	busy VAR             listens on a free loopback port until the script ends; VAR is its address
//	exits CODE CMD...    CMD ends with this code, a result on stdout or an error on stderr
//	within TIME CODE CMD...  the same, in time
//	serving FILE         waits until the program has written its address to FILE
//	limits FILE          FILE, from limit list --json, tells of every limit all it must
func TestScripts(t *testing.T) {
	data, err := filepath.Abs("../../testdata")
	if err != nil {
		t.Fatal(err)
	}
	// As it is given out: without the race detector, under which each start takes seconds.
	program := t.TempDir()
	build := exec.Command("go", "build", "-o", program, ".")
	build.Env = append(os.Environ(), "CGO_ENABLED=0")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	testscript.Run(t, testscript.Params{
		Dir:                 "../../testdata/scripts",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup: func(e *testscript.Env) error {
			e.Setenv("DATA", data)
			e.Setenv("PATH", program+string(os.PathListSeparator)+os.Getenv("PATH"))
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"keys": keys, "edit": edit, "cut": cutFile, "busy": busy, "exits": exits, "within": within, "serving": serving, "limits": limits,
		},
	})
}

func positive(ts *testscript.TestScript, neg bool, args []string, least int) {
	if neg || len(args) < least {
		ts.Fatalf("%d or more arguments and no negation are expected", least)
	}
}

func keys(ts *testscript.TestScript, neg bool, args []string) {
	positive(ts, neg, args, 1)
	var list []map[string]json.RawMessage
	text := []byte(ts.ReadFile(args[0]))
	if err := json.Unmarshal(text, &list); err != nil {
		list = make([]map[string]json.RawMessage, 1)
		ts.Check(json.Unmarshal(text, &list[0]))
	}
	if len(list) == 0 {
		ts.Fatalf("the list is empty")
	}
	for i, m := range list {
		for _, k := range args[1:] {
			if _, ok := m[k]; !ok {
				ts.Fatalf("object %d has no key %q", i, k)
			}
		}
	}
}

func edit(ts *testscript.TestScript, neg bool, args []string) {
	positive(ts, neg, args, 3)
	text := ts.ReadFile(args[0])
	if !strings.Contains(text, args[1]) {
		ts.Fatalf("%q does not stand in %s", args[1], args[0])
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(strings.ReplaceAll(text, args[1], args[2])), 0o644))
}

func cutFile(ts *testscript.TestScript, neg bool, args []string) {
	positive(ts, neg, args, 2)
	size, err := strconv.ParseInt(args[1], 10, 64)
	ts.Check(err)
	ts.Check(os.Truncate(ts.MkAbs(args[0]), size))
}

func busy(ts *testscript.TestScript, neg bool, args []string) {
	positive(ts, neg, args, 1)
	l, err := net.Listen("tcp", "127.0.0.1:0")
	ts.Check(err)
	ts.Defer(func() { l.Close() })
	ts.Setenv(args[0], l.Addr().String())
}

var speaker = regexp.MustCompile(`(?m)^(asfound [a-z]+: |asfound: |Asfound appraises )`)

// exits holds a call to the rules of speech: 0 says nothing on stderr; 1 and 2
// say nothing on stdout, and on stderr who speaks and what is wrong.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	positive(ts, neg, args, 2)
	code := 0
	err := ts.Exec(args[1], args[2:]...)
	var ended *exec.ExitError
	if errors.As(err, &ended) {
		code = ended.ExitCode()
	} else if err != nil {
		ts.Fatalf("%v", err)
	}
	out, errs := ts.ReadFile("stdout"), ts.ReadFile("stderr")
	switch {
	case strconv.Itoa(code) != args[0]:
		ts.Fatalf("exit %d, want %s\n%s", code, args[0], errs)
	case code == 0 && errs != "":
		ts.Fatalf("done, and yet an error is written: %s", errs)
	case code != 0 && out != "":
		ts.Fatalf("an error, and yet a result is written: %s", out)
	case code != 0 && !speaker.MatchString(errs):
		ts.Fatalf("the error does not say who speaks: %s", errs)
	}
}

func within(ts *testscript.TestScript, neg bool, args []string) {
	positive(ts, neg, args, 3)
	longest, err := time.ParseDuration(args[0])
	ts.Check(err)
	start := time.Now()
	exits(ts, false, args[1:])
	if took := time.Since(start); took > longest {
		ts.Fatalf("it took %s, longer than %s", took, longest)
	}
}

func serving(ts *testscript.TestScript, neg bool, args []string) {
	positive(ts, neg, args, 1)
	for range 600 {
		if text, err := os.ReadFile(ts.MkAbs(args[0])); err == nil && bytes.Contains(text, []byte("http://127.0.0.1:")) {
			return
		}
		time.Sleep(50 * time.Millisecond)
	}
	ts.Fatalf("no address within 30 s")
}

func limits(ts *testscript.TestScript, neg bool, args []string) {
	positive(ts, neg, args, 1)
	var all []limit.Definition
	ts.Check(json.Unmarshal([]byte(ts.ReadFile(args[0])), &all))
	if len(all) != len(limit.All()) {
		ts.Fatalf("%d limits, want %d", len(all), len(limit.All()))
	}
	standings := []limit.Status{limit.Published, limit.Reprint, limit.Practice, limit.Memory, limit.Physics}
	for _, d := range all {
		if d.Name == "" || d.Title == "" || d.Formula == "" || d.Source == "" || !slices.Contains(standings, d.Status) || len(d.Quantities) == 0 {
			ts.Fatalf("%q leaves out what a reader needs: %+v", d.Name, d)
		}
		for _, q := range d.Quantities {
			unitless := q.Dimension == "number" || q.Dimension == "word"
			if q.Name == "" || q.Dimension == "" || !unitless && (q.Unit == "" || q.Metric == "") || q.Dimension == "word" && len(q.Words) == 0 {
				ts.Fatalf("%s: the quantity %+v has no unit or no words", d.Name, q)
			}
		}
	}
}
