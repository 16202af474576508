package main

import (
	"context"
	"fmt"
	"io"
	"path/filepath"
	"text/tabwriter"

	"asfound/rubrics"
)

const rubricUsage = `asfound rubric list [--json]
asfound rubric check FILE.yaml...

Lists the rubrics this program carries, or checks rubric files: every problem is
named with file, line, column, field and what would be right.
`

// listed is one rubric in the list.
type listed struct {
	ID           string `json:"id"`
	Kind         string `json:"kind"`
	Version      int    `json:"version"`
	Checks       int    `json:"checks"`
	DangerChecks int    `json:"danger_checks"`
}

func rubric(_ context.Context, args []string, out, log io.Writer) error {
	flags, rest, err := options(args, nil, []string{"json"})
	switch {
	case err != nil:
		return err
	case len(rest) == 1 && rest[0] == "list":
		return listRubrics(out, flags["json"] != "")
	case len(rest) > 1 && rest[0] == "check":
		return checkRubrics(rest[1:], out, log)
	}
	return misuse("say list, or check and the files")
}

func listRubrics(out io.Writer, asJSON bool) error {
	all, err := rubrics.All()
	if err != nil {
		return err
	}
	list := []listed{}
	for _, r := range all {
		l := listed{ID: r.ID, Kind: r.Kind, Version: r.Version}
		for _, s := range r.Sections {
			for _, c := range s.Checks {
				l.Checks++
				if c.Hazard == "danger" {
					l.DangerChecks++
				}
			}
		}
		list = append(list, l)
	}
	if asJSON {
		return printJSON(out, list)
	}
	w := tabwriter.NewWriter(out, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "id\tkind\tversion\tchecks\tdanger checks")
	for _, l := range list {
		fmt.Fprintf(w, "%s\t%s\t%d\t%d\t%d\n", l.ID, l.Kind, l.Version, l.Checks, l.DangerChecks)
	}
	return w.Flush()
}

func checkRubrics(files []string, out, log io.Writer) error {
	bad := 0
	for _, name := range files {
		src, err := readBounded(name, rubrics.MaxFile)
		if err != nil {
			return err
		}
		rep, err := rubrics.Check(filepath.Base(name), src)
		if err != nil {
			bad++
			fmt.Fprintln(log, err)
			continue
		}
		fmt.Fprint(out, rep)
	}
	if bad > 0 {
		return fmt.Errorf("%d of %d files cannot be used", bad, len(files))
	}
	return nil
}
