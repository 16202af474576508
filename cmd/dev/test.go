package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
)

// test runs every test there is and stops at the first stage that fails.
func test(ctx context.Context, _ []string) error {
	stages := []struct {
		about string
		work  func() error
	}{
		{"format of the Go code", formatted},
		{"go vet", func() error { return runIn(ctx, ".", "go", "vet", "./...") }},
		{"staticcheck", func() error { return runIn(ctx, ".", "go", "tool", "staticcheck", "./...") }},
		{"generated files are up to date", generatedFresh},
		{"a C compiler, found or installed", func() error { return compiler(ctx) }},
		{"readers of PDF for the tests, found or installed", func() error { return pdfReaders(ctx) }},
		{"Go tests with -race", func() error { return runEnv(ctx, ".", []string{"CGO_ENABLED=1"}, "go", "test", "-race", "./...") }},
		{"the app, built", func() error { return buildSite(ctx, 5) }},
		{"native and WebAssembly agree", func() error { return parity(ctx) }},
		{"TypeScript types", func() error { return runIn(ctx, "pwa", "npm", "run", "--silent", "typecheck") }},
		{"TypeScript lint", func() error { return runIn(ctx, "pwa", "npm", "run", "--silent", "lint") }},
		{"TypeScript tests", func() error { return runIn(ctx, "pwa", "npm", "test", "--silent") }},
		{"the browser, found or installed", func() error { return browser(ctx) }},
		{"the program, for the browser tests", func() error { return buildBinary(ctx, ".cache/asfound-test", "") }},
		{"browser tests, server really stopped", func() error { return runIn(ctx, "pwa", "npm", "run", "--silent", "e2e") }},
	}
	for i, s := range stages {
		if err := step(s.about, s.work); err != nil {
			fmt.Printf("%d passed, 1 failed\n", i)
			return err
		}
	}
	fmt.Printf("%d passed, 0 failed\n", len(stages))
	return nil
}

func formatted() error {
	out, err := exec.Command("gofmt", "-l", "cmd", "server", "rubrics", "pwa/embed.go").CombinedOutput()
	if err != nil {
		return fmt.Errorf("%w: %s", err, out)
	}
	if len(out) > 0 {
		return fmt.Errorf("not formatted, run gofmt -w on:\n%s", out)
	}
	return nil
}

// generatedFresh compares the generated files in the tree with what the types give.
func generatedFresh() error {
	want, err := typeScript(borderTypes())
	if err != nil {
		return err
	}
	files := map[string][]byte{typesPath: []byte(want)}
	for _, x := range schemas {
		if files[x.path], err = schemaOf(x.of, x.title, x.about); err != nil {
			return err
		}
	}
	for path, text := range files {
		have, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		if !bytes.Equal(have, text) {
			return fmt.Errorf("%s is not what the Go types give: run go run ./cmd/dev types", path)
		}
	}
	return nil
}

// compiler makes sure that the race detector can be linked.
func compiler(ctx context.Context) error {
	for _, name := range []string{os.Getenv("CC"), "gcc", "cc", "clang"} {
		if _, err := exec.LookPath(name); name != "" && err == nil {
			return nil
		}
	}
	return install(ctx, "a C compiler", "gcc", "libc6-dev")
}

// browser makes sure that Chromium is there.
func browser(ctx context.Context) error {
	if chromium() != "" {
		return nil
	}
	return install(ctx, "Chromium (or set CHROMIUM to its path)", "chromium", "fonts-dejavu-core")
}

// pdfReaders gets the programs that tests hold the papers to; where it may not,
// those tests are left out.
func pdfReaders(ctx context.Context) error {
	missing := false
	for _, name := range []string{"qpdf", "pdftotext", "fribidi"} {
		_, err := exec.LookPath(name)
		missing = missing || err != nil
	}
	if !missing {
		return nil
	}
	if err := install(ctx, "a reader of PDF", "qpdf", "poppler-utils", "libfribidi-bin"); err != nil {
		fmt.Printf("   %v; the tests that need it are left out\n", err)
	}
	return nil
}

// install gets Debian packages where it may, or says exactly what is missing.
func install(ctx context.Context, what string, names ...string) error {
	if runtime.GOOS != "linux" || os.Geteuid() != 0 {
		return fmt.Errorf("%s is missing: install it (Debian: apt-get install %s)", what, strings.Join(names, " "))
	}
	if _, err := exec.LookPath("apt-get"); err != nil {
		return fmt.Errorf("%s is missing and there is no apt-get: install it", what)
	}
	env := []string{"DEBIAN_FRONTEND=noninteractive"}
	if err := runEnv(ctx, ".", env, "apt-get", "update", "-qq"); err != nil {
		return err
	}
	return runEnv(ctx, ".", env, "apt-get", append([]string{"install", "-y", "-qq", "--no-install-recommends"}, names...)...)
}

// chromium is the path of the browser, or nothing.
func chromium() string {
	if p := os.Getenv("CHROMIUM"); p != "" {
		return p
	}
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if p, err := exec.LookPath(name); err == nil {
			return p
		}
	}
	return ""
}

// fuzz runs every fuzz target in the tree for a while each.
func fuzz(ctx context.Context, args []string) error {
	time := "60s"
	if len(args) == 2 && args[0] == "-time" {
		time = args[1]
	}
	files, err := filepath.Glob("*/*/*_test.go")
	if err != nil {
		return err
	}
	top, _ := filepath.Glob("*/*_test.go")
	deep, _ := filepath.Glob("*/*/*/*_test.go")
	for _, f := range append(append(top, files...), deep...) {
		src, err := os.ReadFile(f)
		if err != nil {
			return err
		}
		for _, line := range strings.Split(string(src), "\n") {
			name, ok := strings.CutPrefix(line, "func Fuzz")
			if !ok {
				continue
			}
			name = "Fuzz" + name[:strings.Index(name, "(")]
			if err := step(f+" "+name, func() error {
				return runIn(ctx, ".", "go", "test", "-run=^$", "-fuzz=^"+name+"$", "-fuzztime="+time, "-fuzzminimizetime=2s", "./"+filepath.Dir(f))
			}); err != nil {
				return err
			}
		}
	}
	return nil
}
