package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/sheet"
)

const tablesUsage = `asfound tables FILE... -o DIR

Writes appraisal files as tables for a spreadsheet, a CSV file each: listings,
findings, estimate lines, what to buy, comparables, prices and photos; and the sides
of the comparison where two to eight files of one currency are given. A table with no
rows is not written. Text that a spreadsheet would run as a formula gets an
apostrophe before it.

  -o   the folder to write to; it is made if there is none
`

func tables(_ context.Context, args []string, out, _ io.Writer) error {
	flags, names, err := options(args, []string{"o"}, nil)
	if err != nil {
		return err
	}
	dir := flags["o"]
	if len(names) == 0 || dir == "" {
		return misuse("give appraisal files, and a folder after -o")
	}
	from := sheet.From{Compared: len(names) >= appraisal.LeastCompared && len(names) <= appraisal.MostCompared}
	for _, name := range names {
		doc, err := readAppraisal(name)
		if err != nil {
			return err
		}
		from.Files = append(from.Files, &doc.File)
		from.Compared = from.Compared && doc.File.Shop.Currency == from.Files[0].Shop.Currency
	}
	judge, _, err := newJudge("")
	if err != nil {
		return err
	}
	all, err := sheet.Make(judge, nil, from)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("cannot make the folder (%w): name one that is yours", err)
	}
	for i := range all {
		if err := writeWhole(filepath.Join(dir, all[i].Name+".csv"), []byte(all[i].CSV())); err != nil {
			return err
		}
		fmt.Fprintf(out, "%s.csv: %d rows\n", all[i].Name, len(all[i].Rows))
	}
	return nil
}
