package main

import (
	"context"
	"fmt"
	"io"
	"strings"

	"asfound/rubrics"
	"asfound/rubrics/limit"
	"asfound/rubrics/say"
)

const limitUsage = `asfound limit [--json]
asfound limit NAME quantity=value... [--json] [--language ID]

Lists the measured limits by subject, or computes one. Values carry their units:

  asfound limit rope-diameter nominal=3/8in measured=0.352in
  asfound limit leaf-chain pitch=1in pitches=12 measured=12.3in
  asfound limit descent-speed travel=72in time=15s

--language ID says it in another language: en-US, en-GB, es-US, es-MX, es-ES.

maker=VALUE puts the maker's own limit in place of the published one, where the
limit has one. The standing of each figure is shown: published, seen in reprint,
maker's own figure, definition, common practice, from memory. The last two can
warn, but never clear anything.
`

func computeLimit(_ context.Context, args []string, out, _ io.Writer) error {
	flags, rest, err := options(args, []string{"language"}, []string{"json"})
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
	v, err := voiceOf(flags["language"])
	if err != nil {
		return err
	}
	r, err := limit.ComputeIn(v, rest[0], given)
	if err != nil {
		return spokenError(v, err)
	}
	if flags["json"] != "" {
		return printJSON(out, r)
	}
	fmt.Fprintf(out, "%s\n", r.Text)
	tell := func(pattern string, args ...any) { fmt.Fprintln(out, v.Pattern(pattern, args...)) }
	tell("  value    %.6g %s", r.Value, r.Unit)
	if r.Limit != nil {
		tell("  limit    %.6g %s", *r.Limit, r.Unit)
	}
	tell("  finding  %s", v.Label(findingWords[r.Finding]))
	tell("  formula  %s", r.Formula)
	tell("  source   %s", r.Source)
	tell("  status   %s", v.Label(string(r.Status)))
	book, err := rubrics.PriceBook()
	if err != nil {
		return err
	}
	for _, m := range r.More {
		if m.Text != "" {
			tell("  %s: %s", m.Title, m.Text)
		} else {
			tell("  %s: %.6g %s", m.Title, m.Value, m.Unit)
		}
		for _, part := range book.Parts {
			if m.Part == part.ID {
				tell("    %s: %s, %s or %s %s per %s (example of %s)", part.Title,
					money(v, part.Price.Low), money(v, part.Price.Likely), money(v, part.Price.High), book.Currency, part.Unit, book.Dated)
			}
		}
	}
	for _, n := range r.Notes {
		tell("  note: %s", n)
	}
	if r.Caution != "" {
		tell("  CAUTION: %s", r.Caution)
	}
	return nil
}

var findingWords = map[limit.Finding]string{
	limit.Within: say.Key("within limit"), limit.Watch: say.Key("watch"), limit.Beyond: say.Key("beyond limit"), limit.Computed: say.Key("computed"),
}

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
