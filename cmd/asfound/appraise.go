package main

import (
	"context"
	"fmt"
	"io"

	"asfound/rubrics/appraisal"
)

const appraiseUsage = `asfound appraise FILE.json [--json] [--price N] [--save FILE] [--language ID]

Judges one appraisal file ("-" reads standard input): scores and verdict, the
repair estimate, the allowance for what was not checked, worth, the odds and the
three prices. The same file gives the same cents everywhere.

  --json        every number, as one JSON object
  --price N     ask about this price instead of the asking price
  --language ID say it in another language, with the marks of its numbers: en-US,
                en-GB, es-US, es-MX, es-ES
  --save FILE   write the appraisal file again, with --price as the asking price;
                fields this program does not know are kept

An appraisal file comes from the app (a listing's page, "Save as file"); its form
is in asfound schema.
`

func appraise(_ context.Context, args []string, out, _ io.Writer) error {
	flags, rest, err := options(args, []string{"price", "save", "language"}, []string{"json"})
	if err != nil {
		return err
	}
	if len(rest) != 1 {
		return misuse("give one appraisal file")
	}
	doc, err := readAppraisal(rest[0])
	if err != nil {
		return err
	}
	var price *appraisal.Money
	if text, ok := flags["price"]; ok {
		p, err := appraisal.ParseMoney(text)
		if err != nil {
			return fmt.Errorf("--price: %w", err)
		}
		price = &p
	}
	judge, v, err := newJudge(flags["language"])
	if err != nil {
		return err
	}
	res, err := judge.Of(&doc.File, appraisal.Ask{Price: price})
	if err != nil {
		return fmt.Errorf("%s: %w", rest[0], spokenError(v, err))
	}
	if name, ok := flags["save"]; ok {
		if price != nil {
			doc.File.Listing.Asking = price
		}
		text, err := doc.Encode()
		if err != nil {
			return err
		}
		if err := writeWhole(name, append(text, '\n')); err != nil {
			return err
		}
	}
	if flags["json"] != "" {
		return printJSON(out, res)
	}
	return report(out, v, &doc.File, res)
}
