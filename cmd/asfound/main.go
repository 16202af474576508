// Command asfound serves the app and makes the same judgement on the command line.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"syscall"
)

// Rules of speech: results on stdout, errors on stderr as "asfound: what
// happened: what would be right"; no capital, no full stop; exit 0 done, 1 the
// input is wrong, 2 usage.

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	os.Exit(run(ctx, os.Args[1:], os.Stdout, os.Stderr))
}

// command is one verb of the program.
type command struct {
	name  string
	short string
	usage string
	run   func(ctx context.Context, args []string, out, log io.Writer) error
}

func commands() []command {
	return []command{
		{"serve", "serve the app and keep the shop's records", serveUsage, serve},
		{"appraise", "judge one appraisal file", appraiseUsage, appraise},
		{"compare", "put several appraisal files side by side", compareUsage, compare},
		{"document", "make a paper of an appraisal, as PDF", documentUsage, makeDocument},
		{"tables", "write appraisal files as CSV tables", tablesUsage, tables},
		{"backtest", "measure the valuation on a table of sales", backtestUsage, backtestTable},
		{"rubric", "list the rubrics, or check a rubric file", rubricUsage, rubric},
		{"limit", "list the measured limits, or compute one", limitUsage, computeLimit},
		{"schema", "print the JSON Schema of an appraisal file, or of a backup", schemaUsage, schema},
	}
}

// usageError is a call that cannot be understood.
type usageError struct{ what string }

func (e usageError) Error() string { return e.what }

func misuse(format string, args ...any) error { return usageError{fmt.Sprintf(format, args...)} }

func run(ctx context.Context, args []string, out, log io.Writer) int {
	if len(args) == 0 {
		fmt.Fprint(log, help())
		return 2
	}
	name := args[0]
	if name == "help" || name == "-h" || name == "--help" {
		if len(args) > 1 {
			for _, c := range commands() {
				if c.name == args[1] {
					fmt.Fprint(out, c.usage)
					return 0
				}
			}
			fmt.Fprintf(log, "asfound: no command is called %q: see asfound help\n", args[1])
			return 2
		}
		fmt.Fprint(out, help())
		return 0
	}
	for _, c := range commands() {
		if c.name != name {
			continue
		}
		for _, a := range args[1:] {
			if a == "-h" || a == "--help" {
				fmt.Fprint(out, c.usage)
				return 0
			}
		}
		written := &counted{to: out}
		err := c.run(ctx, args[1:], written, log)
		if err == nil && written.err != nil {
			err = fmt.Errorf("the result could not be written (%w): give it a place with room", written.err)
		}
		var misused usageError
		switch {
		case err == nil:
			return 0
		case errors.As(err, &misused):
			fmt.Fprintf(log, "asfound %s: %s\ntry: asfound %s --help\n", name, err, name)
			return 2
		default:
			fmt.Fprintf(log, "asfound %s: %s\n", name, err)
			return 1
		}
	}
	fmt.Fprintf(log, "asfound: no command is called %q: see asfound help\n", name)
	return 2
}

// counted remembers that a write failed: a cut result must not end as done.
type counted struct {
	to  io.Writer
	err error
}

func (c *counted) Write(b []byte) (int, error) {
	n, err := c.to.Write(b)
	if err != nil && c.err == nil {
		c.err = err
	}
	return n, err
}

func help() string {
	s := `Asfound appraises used shop equipment before you buy it.

  asfound COMMAND [ARGUMENTS]

`
	for _, c := range commands() {
		s += fmt.Sprintf("  %-9s %s\n", c.name, c.short)
	}
	return s + `
Start here:
  asfound serve --data ./shop          then open http://localhost:8470
  asfound rubric list                  the kinds of equipment it knows
  asfound limit rope-diameter nominal=3/8in measured=0.352in

asfound help COMMAND explains one of them. Nothing here calls equipment safe:
the maker's manual, local code and a qualified inspector decide that.
`
}
