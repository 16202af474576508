package main

import (
	"context"
	"fmt"
	"io"
	"strconv"
	"strings"

	"asfound/rubrics"
	"asfound/rubrics/limit"
)

const limitUsage = `asfound limit [--json]
asfound limit NAME quantity=value... [--json]

Lists the measured limits by subject, or computes one. Values carry their units:

  asfound limit rope-diameter nominal=3/8in measured=0.352in
  asfound limit leaf-chain pitch=1in pitches=12 measured=12.3in
  asfound limit descent-speed travel=72in time=15s

maker=VALUE puts the maker's own limit in place of the published one, where the
limit has one. The standing of each figure is shown: published, seen in reprint,
maker's own figure, definition, common practice, from memory. The last two can
warn, but never clear anything.
`

func computeLimit(_ context.Context, args []string, out, _ io.Writer) error {
	flags, rest, err := options(args, nil, []string{"json"})
	if err != nil {
		return err
	}
	if len(rest) == 0 {
		return listLimits(out, flags["json"] != "")
	}
	given := map[string]string{}
	for _, a := range rest[1:] {
		name, value, ok := strings.Cut(a, "=")
		if !ok || name == "" {
			return misuse("%q is no quantity: write it like measured=0.352in", a)
		}
		if _, twice := given[name]; twice {
			return misuse("%s is given twice", name)
		}
		given[name] = value
	}
	r, err := limit.Compute(rest[0], given)
	if err != nil {
		return err
	}
	if flags["json"] != "" {
		return printJSON(out, r)
	}
	fmt.Fprintf(out, "%s\n", r.Text)
	fmt.Fprintf(out, "  value    %s %s\n", number(r.Value), r.Unit)
	if r.Limit != nil {
		fmt.Fprintf(out, "  limit    %s %s\n", number(*r.Limit), r.Unit)
	}
	fmt.Fprintf(out, "  finding  %s\n  formula  %s\n  source   %s\n  status   %s\n", r.Finding, r.Formula, r.Source, r.Status)
	book, err := rubrics.PriceBook()
	if err != nil {
		return err
	}
	for _, m := range r.More {
		if m.Text != "" {
			fmt.Fprintf(out, "  %s: %s\n", m.Title, m.Text)
		} else {
			fmt.Fprintf(out, "  %s: %s %s\n", m.Title, number(m.Value), m.Unit)
		}
		for _, p := range book.Parts {
			if m.Part == p.ID {
				fmt.Fprintf(out, "    %s: %s, %s or %s %s per %s (example of %s)\n", p.Title,
					money(p.Price.Low), money(p.Price.Likely), money(p.Price.High), book.Currency, p.Unit, book.Dated)
			}
		}
	}
	for _, n := range r.Notes {
		fmt.Fprintf(out, "  note: %s\n", n)
	}
	if r.Caution != "" {
		fmt.Fprintf(out, "  CAUTION: %s\n", r.Caution)
	}
	return nil
}

func number(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }

func listLimits(out io.Writer, asJSON bool) error {
	all := limit.All()
	if asJSON {
		return printJSON(out, all)
	}
	byName := map[string]*limit.Definition{}
	for i := range all {
		byName[all[i].Name] = &all[i]
	}
	for _, s := range limit.Subjects() {
		fmt.Fprintf(out, "%s\n\n", strings.ToUpper(s.Title))
		for _, name := range s.Limits {
			describe(out, byName[name])
		}
	}
	return nil
}

// describe tells of one limit what a caller needs to compute it.
func describe(out io.Writer, d *limit.Definition) {
	fmt.Fprintf(out, "%s: %s\n", d.Name, d.Title)
	var parts []string
	for _, q := range d.Quantities {
		text := q.Name
		switch {
		case len(q.Words) > 0:
			text += "=" + strings.Join(q.Words, "|")
		case q.Unit != "":
			text += " (" + q.Unit + ")"
		}
		if q.Optional {
			text = "[" + text + "]"
		}
		parts = append(parts, text)
	}
	fmt.Fprintf(out, "  %s\n  %s\n  %s (%s)\n\n", strings.Join(parts, ", "), d.Formula, d.Source, d.Status)
}
