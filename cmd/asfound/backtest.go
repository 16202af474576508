package main

import (
	"context"
	"fmt"
	"io"
	"strconv"
	"strings"
	"text/tabwriter"

	"asfound/rubrics/backtest"
	"asfound/rubrics/table"
)

const backtestUsage = `asfound backtest TABLE.csv [--hold-out M/N | --folds N] [--neighbours K]
                 [--price COL] [--number A,B] [--log C] [--label D,E] [--ignore F]
                 [--json]

Measures how well the valuation by comparables finds prices: rows of a table of
sales are held out, each is valued by the others as the app values a listing,
and what was found is held against what it brought. "-" reads standard input.

  asfound backtest sales.csv
  asfound backtest sales.csv --folds 5 --log capacity --ignore notes

--hold-out M/N holds out each row whose number leaves the remainder M when
divided by N; rows count from 1 below the names of the columns; 0/5 unless said.
--folds N holds out 0/N, then 1/N, and so on, so that every row is valued once.

A column is a price, a number (the price follows it by a rate), a log (the price
follows its logarithm: sizes), a label (a word that prices differ by) or ignored.
Unless a flag names a column it is taken by its name, else by what its cells
hold; the result says how each was taken. --neighbours bounds how many of the
most alike sales one row is valued by.

Errors and coverage are in percent: median_abs_pct_error 3.66 is 3.66 % of the
price, and of 100 prices coverage_80 lie within the central 80 % interval. Interval
score (of that interval) and pinball loss (mean over the quantiles .1 .25 .5 .75
.9) are in the table's currency; less is better. The baselines are the same
neighbours' prices as they stand, and the median of all prices.
`

// defaultFolds is N where nothing is said.
const defaultFolds = 5

func backtestTable(ctx context.Context, args []string, out, _ io.Writer) error {
	flags, files, err := options(args, []string{"hold-out", "folds", "neighbours", "price", "number", "log", "label", "ignore"}, []string{"json"})
	if err != nil {
		return err
	}
	if len(files) != 1 {
		return misuse("give one table")
	}
	ask, err := askOf(flags)
	if err != nil {
		return err
	}
	ask.Stop = func() bool { return ctx.Err() != nil }
	src, err := readBounded(files[0], table.MaxBytes)
	if err != nil {
		return err
	}
	t, err := table.Read(src)
	if err != nil {
		return fmt.Errorf("%s: %w", files[0], err)
	}
	if ask.Roles, err = rolesOf(flags, t.Columns); err != nil {
		return fmt.Errorf("%s: %w", files[0], err)
	}
	r, err := backtest.Run(t, ask)
	if err != nil {
		return fmt.Errorf("%s: %w", files[0], err)
	}
	if flags["json"] != "" {
		problems := []string{}
		for _, p := range r.Problems {
			problems = append(problems, p.String())
		}
		return printJSON(out, struct {
			File string `json:"file"`
			*backtest.Report
			Problems []string `json:"problems"`
		}{files[0], r, problems})
	}
	return backtestReport(out, files[0], r)
}

// askOf reads the flags that do not need the table.
func askOf(flags map[string]string) (ask backtest.Ask, err error) {
	ask.Of = defaultFolds
	hold, one := flags["hold-out"]
	folds, all := flags["folds"]
	switch {
	case one && all:
		return ask, misuse("--hold-out and --folds exclude each other: give one")
	case one:
		m, n, _ := strings.Cut(hold, "/")
		var bad1, bad2 error
		ask.Fold, bad1 = strconv.Atoi(m)
		ask.Of, bad2 = strconv.Atoi(n)
		if bad1 != nil || bad2 != nil || ask.Of < 2 || ask.Of > backtest.MaxFolds || ask.Fold < 0 || ask.Fold >= ask.Of {
			return ask, misuse("--hold-out %q is not understood: write M/N, N from 2 to %d and M from 0 to N-1, like 0/5", hold, backtest.MaxFolds)
		}
	case all:
		ask.All = true
		if ask.Of, err = strconv.Atoi(folds); err != nil || ask.Of < 2 || ask.Of > backtest.MaxFolds {
			return ask, misuse("--folds %q is not understood: write a whole number from 2 to %d", folds, backtest.MaxFolds)
		}
	}
	if k, ok := flags["neighbours"]; ok {
		if ask.Neighbours, err = strconv.Atoi(k); err != nil || ask.Neighbours < 1 || ask.Neighbours > backtest.MaxTraining {
			return ask, misuse("--neighbours %q is not understood: write a whole number from 1 to %d", k, backtest.MaxTraining)
		}
	}
	return ask, nil
}

// rolesOf reads the flags that name columns. A name may hold a comma, where the
// whole value is one.
func rolesOf(flags map[string]string, columns []string) (map[string]backtest.Role, error) {
	roles := map[string]backtest.Role{}
	for _, f := range []struct {
		flag string
		role backtest.Role
	}{{"price", backtest.Price}, {"number", backtest.Number}, {"log", backtest.Log}, {"label", backtest.Label}, {"ignore", backtest.Ignored}} {
		value, ok := flags[f.flag]
		if !ok {
			continue
		}
		names := strings.Split(value, ",")
		if f.flag == "price" || contains(columns, value) {
			names = []string{value}
		}
		for _, name := range names {
			if name = strings.TrimSpace(name); name == "" {
				return nil, misuse("--%s %q names no column: write names with commas between", f.flag, value)
			}
			if was, twice := roles[name]; twice && was != f.role {
				return nil, misuse("%q is given to two flags: a column is one thing", name)
			}
			roles[name] = f.role
		}
	}
	return roles, nil
}

const shownProblems = 20

// backtestReport writes a backtest for a person to read.
func backtestReport(out io.Writer, file string, r *backtest.Report) error {
	w := tabwriter.NewWriter(out, 0, 0, 2, ' ', 0)
	p := func(format string, args ...any) { fmt.Fprintf(w, format+"\n", oneLine(args)...) }
	p("%s: %d rows, %d with a usable price", file, r.Rows, r.Usable)
	p("")
	p("COLUMN\ttaken as\twhy\tnot known")
	for _, c := range r.Columns {
		unknown := "-"
		if c.Unknown > 0 {
			unknown = strconv.Itoa(c.Unknown)
		}
		p("  %s\t%s\t%s\t%s", c.Name, string(c.Role), c.Why, unknown)
	}
	p("")
	p("HELD OUT\trows\tvalued by\tmedian error\tmean\tin 50 %%\tin 80 %%\tin 90 %%\tinterval score\tpinball loss")
	line := func(name, by string, s backtest.Scores) {
		p("  %s\t%d\t%s\t%.2f %%\t%.2f %%\t%.1f\t%.1f\t%.1f\t%.0f\t%.1f", name, s.N, by, s.MedianError, s.MeanError, s.Coverage50, s.Coverage80, s.Coverage90, s.IntervalScore, s.PinballLoss)
	}
	for _, f := range r.Folds {
		line(fmt.Sprintf("%d/%d", f.Fold, r.Of), strconv.Itoa(f.Training), f.Scores)
	}
	if len(r.Folds) > 1 {
		line("all", "", r.Scores)
	}
	p("")
	p("Median error with the same neighbours not adjusted %.2f %%, so adjusting takes %.0f %% of it away; with the median of all prices %.2f %%.", r.Unadjusted, r.Gain, r.Baseline)
	if r.Currency != "" {
		p("Interval score and pinball loss are in %s.", r.Currency)
	}
	for _, n := range r.Notes {
		p("NOTE: %s", n)
	}
	for i, x := range r.Problems {
		if i == shownProblems {
			p("NOT USED: %d more; --json lists them", len(r.Problems)-i)
			break
		}
		p("NOT USED: %s", x.String())
	}
	return w.Flush()
}
