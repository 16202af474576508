package main

import (
	"context"
	"fmt"
	"io"
	"text/tabwriter"

	"asfound/rubrics/appraisal"
)

const compareUsage = `asfound compare FILE... [--json]

Puts two or more appraisal files side by side: verdict, coverage, all-in at the
asking price, the odds of coming out ahead at it, and the three prices. All are
drawn with the same random numbers, so differences are of the equipment.
`

// side is one listing in a comparison.
type side struct {
	File     string                `json:"file"`
	Title    string                `json:"title"`
	Currency string                `json:"currency"`
	Verdict  string                `json:"verdict"`
	Coverage float64               `json:"coverage"` // of safety, 0 to 100
	Asking   *appraisal.Money      `json:"asking"`
	AllIn    *appraisal.Money      `json:"all_in"`
	Odds     *float64              `json:"odds"`
	Ahead    *appraisal.Money      `json:"ahead"`
	Opening  *appraisal.PricePoint `json:"opening"`
	Fair     *appraisal.PricePoint `json:"fair"`
	WalkAway *appraisal.PricePoint `json:"walk_away"`
	Missing  string                `json:"missing,omitempty"`
}

func compare(_ context.Context, args []string, out, _ io.Writer) error {
	flags, files, err := options(args, nil, []string{"json"})
	if err != nil {
		return err
	}
	if len(files) < 2 {
		return misuse("give two or more appraisal files")
	}
	judge, err := newJudge()
	if err != nil {
		return err
	}
	var sides []side
	for _, name := range files {
		doc, err := readAppraisal(name)
		if err != nil {
			return err
		}
		r, err := judge.Of(&doc.File, appraisal.Ask{})
		if err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
		if sides != nil && sides[0].Currency != r.Currency {
			return fmt.Errorf("%s: amounts are in %s but %s has %s: compare files of one currency", name, r.Currency, sides[0].File, sides[0].Currency)
		}
		sides = append(sides, sideOf(name, &doc.File, r))
	}
	if flags["json"] != "" {
		return printJSON(out, sides)
	}
	w := tabwriter.NewWriter(out, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "listing\tverdict\tcoverage\tasking\tall-in\todds\tahead\topening\tfair\twalk-away")
	for _, s := range sides {
		fmt.Fprintf(w, "%s\t%s\t%.0f %%\t%s\t%s\t%s\t%s\t%s\t%s\t%s\n", oneLine([]any{s.Title})[0], s.Verdict, s.Coverage,
			amount(s.Asking), amount(s.AllIn), odds(s.Odds), amount(s.Ahead), point(s.Opening), point(s.Fair), point(s.WalkAway))
		if s.Missing != "" {
			fmt.Fprintf(w, "  %s\n", s.Missing) // the engine's own sentence
		}
	}
	return w.Flush()
}

func sideOf(name string, f *appraisal.File, r *appraisal.Result) side {
	s := side{File: name, Title: f.Listing.Title, Currency: r.Currency, Verdict: r.Verdict.Title, Coverage: r.Safety.Coverage, Asking: f.Listing.Asking, Missing: r.Offer.Missing}
	if r.Offer.Known {
		o := r.Offer
		s.Opening, s.Fair, s.WalkAway, s.Ahead = &o.Opening, &o.Fair, &o.WalkAway, o.Ahead
		if o.At != nil {
			s.Odds, s.AllIn = &o.At.Odds, &o.AllIn.Total
		}
	}
	return s
}

func amount(m *appraisal.Money) string {
	if m == nil {
		return "-"
	}
	return money(*m)
}

func odds(x *float64) string {
	if x == nil {
		return "-"
	}
	return fmt.Sprintf("%.0f %%", 100**x)
}

func point(p *appraisal.PricePoint) string {
	if p == nil {
		return "-"
	}
	if p.None {
		return "none"
	}
	return money(p.Price)
}
