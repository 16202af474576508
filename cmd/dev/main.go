// Command dev is the developer's runner: every task of the project is a row of
// one table, and running it bare prints the table.
package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"syscall"
)

type task struct {
	name  string
	about string
	run   func(ctx context.Context, args []string) error
}

func tasks() []task {
	return []task{
		{"up", "build, fill a demo shop and serve it   [-data DIR] [-listen ADDR]", up},
		{"build", "leave one static binary   [-o FILE] [-target os/arch]", build},
		{"test", "run everything: format, vet, lint, Go with -race, TypeScript, browser", test},
		{"types", "write the TypeScript types and the JSON Schema from the Go types", types},
		{"fonts", "cut the faces of the papers out of the whole fonts again", fonts},
		{"golden", "write the expected results of testdata/appraisals again", golden},
		{"bench", "measure and print the tables of DEVELOPERS.md", bench},
		{"fuzz", "run every fuzz target   [-time 60s]", fuzz},
	}
}

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	if err := toRoot(); err != nil {
		fail(err)
	}
	if len(os.Args) > 1 {
		for _, t := range tasks() {
			if t.name == os.Args[1] {
				if err := t.run(ctx, os.Args[2:]); err != nil {
					fail(err)
				}
				return
			}
		}
		fmt.Fprintf(os.Stderr, "dev: no task is called %q\n\n", os.Args[1])
	}
	fmt.Fprintln(os.Stderr, "go run ./cmd/dev TASK")
	for _, t := range tasks() {
		fmt.Fprintf(os.Stderr, "  %-7s %s\n", t.name, t.about)
	}
	os.Exit(2)
}

func fail(err error) {
	fmt.Fprintln(os.Stderr, "dev:", err)
	os.Exit(1)
}
