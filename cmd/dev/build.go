package main

import (
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"asfound/rubrics"
	"asfound/rubrics/door"
	"asfound/rubrics/tongue"
)

const (
	generated = "pwa/src/generated"
	site      = "pwa/dist/app"
)

// build leaves one static binary with the app inside.
func build(ctx context.Context, args []string) error {
	set := flag.NewFlagSet("build", flag.ExitOnError)
	out := set.String("o", "asfound", "the binary to write")
	target := set.String("target", "", "os/arch, this machine's if empty")
	if err := set.Parse(args); err != nil {
		return err
	}
	if err := buildSite(ctx, 11); err != nil {
		return err
	}
	return buildBinary(ctx, *out, *target)
}

// buildBinary compiles the program without cgo, so that it needs nothing installed.
func buildBinary(ctx context.Context, out, target string) error {
	env := []string{"CGO_ENABLED=0"}
	if target != "" {
		system, arch, ok := strings.Cut(target, "/")
		if !ok {
			return fmt.Errorf("-target %s: write it like linux/arm64", target)
		}
		env = append(env, "GOOS="+system, "GOARCH="+arch)
	}
	return step("the program "+out, func() error {
		return runEnv(ctx, ".", env, "go", "build", "-trimpath", "-ldflags=-s -w", "-o", out, "./cmd/asfound")
	})
}

// buildSite makes the app in pwa/dist/app, each stage only when what it is made
// from changed. quality is brotli's, 1 to 11.
func buildSite(ctx context.Context, quality int) error {
	if err := packages(ctx); err != nil {
		return err
	}
	if err := engine(ctx); err != nil {
		return err
	}
	mark := filepath.Join(site, ".built")
	level := fmt.Sprint(quality)
	have, _ := os.ReadFile(mark)
	if string(have) >= level && len(have) == len(level) && !newer(mark, "pwa", generated+"/catalogue.json", generated+"/catalogue.es.json", generated+"/engine.wasm", generated+"/editor.wasm", generated+"/paper.wasm", generated+"/types.ts") {
		return nil
	}
	if err := step("the app", func() error { return runIn(ctx, "pwa", "npx", "--no-install", "vite", "build", "--logLevel", "warn") }); err != nil {
		return err
	}
	return step("compress the app, quality "+level, func() error {
		if err := runIn(ctx, "pwa", "node", "compress.mjs", "dist/app", level); err != nil {
			return err
		}
		return os.WriteFile(mark, []byte(level), 0o644)
	})
}

// packages installs the app's dependencies when the lock file changed.
func packages(ctx context.Context) error {
	mark := "pwa/node_modules/.installed"
	lock, err := os.ReadFile("pwa/package-lock.json")
	if err != nil {
		return err
	}
	if have, err := os.ReadFile(mark); err == nil && string(have) == string(lock) {
		return nil
	}
	if err := step("npm packages", func() error { return runIn(ctx, "pwa", "npm", "ci", "--no-audit", "--no-fund") }); err != nil {
		return err
	}
	return os.WriteFile(mark, lock, 0o644)
}

// engine builds the WebAssembly engine, the catalogue it opens with, and the
// modules that edit rubrics and draw papers.
func engine(ctx context.Context) error {
	wasm := generated + "/engine.wasm"
	editor := generated + "/editor.wasm"
	paper := generated + "/paper.wasm"
	catalogue := generated + "/catalogue.json"
	if !newer(wasm, "rubrics", "cmd/wasm", "go.mod") && !newer(editor, "rubrics", "cmd/wasm", "go.mod") && !newer(paper, "rubrics", "cmd/wasm", "go.mod") && !newer(catalogue, "rubrics") && !newer(generated+"/catalogue.es.json", "rubrics") {
		return nil
	}
	return step("the engine, the rubric editor and the papers", func() error {
		text, err := catalogueJSON()
		if err != nil {
			return err
		}
		if err := os.WriteFile(catalogue, text, 0o644); err != nil {
			return err
		}
		for _, language := range tongue.Languages {
			text, err := catalogueIn(language)
			if err != nil {
				return err
			}
			if err := os.WriteFile(generated+"/catalogue."+language+".json", text, 0o644); err != nil {
				return err
			}
		}
		root, err := exec.CommandContext(ctx, "go", "env", "GOROOT").Output()
		if err != nil {
			return err
		}
		glue := filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js")
		if err := copyFile(generated+"/wasm_exec.js", glue); err != nil {
			return err
		}
		for out, pkg := range map[string]string{wasm: "./cmd/wasm/engine", editor: "./cmd/wasm/editor", paper: "./cmd/wasm/paper"} {
			if err := runEnv(ctx, ".", []string{"GOOS=js", "GOARCH=wasm"}, "go", "build", "-trimpath", "-ldflags=-s -w", "-o", out, pkg); err != nil {
				return err
			}
		}
		return nil
	})
}

// catalogueJSON is the checked rubrics, prices, limits and labels, in English.
func catalogueJSON() ([]byte, error) {
	c, err := englishCatalogue()
	if err != nil {
		return nil, err
	}
	return json.Marshal(c)
}

// catalogueIn is the same in another language, with the engine's sentences in it.
func catalogueIn(language string) ([]byte, error) {
	c, err := englishCatalogue()
	if err != nil {
		return nil, err
	}
	t, err := tongue.Load(language)
	if err != nil {
		return nil, err
	}
	own, err := t.Catalogue(c)
	if err != nil {
		return nil, err
	}
	return json.Marshal(own)
}

func englishCatalogue() (door.Catalogue, error) {
	all, err := rubrics.All()
	if err != nil {
		return door.Catalogue{}, err
	}
	book, err := rubrics.PriceBook()
	return door.NewCatalogue(all, book.Parts, book.Dated), err
}
