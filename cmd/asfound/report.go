package main

import (
	"fmt"
	"io"
	"strconv"
	"strings"
	"text/tabwriter"
	"unicode"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/say"
)

// report writes a judgement for a person to read.
func report(out io.Writer, v *say.Voice, f *appraisal.File, r *appraisal.Result) error {
	w := tabwriter.NewWriter(out, 0, 0, 2, ' ', 0)
	tell := func(pattern string, args ...any) { fmt.Fprintln(w, v.Pattern(pattern, oneLine(args)...)) }
	tell("%s", f.Listing.Title)
	tell("%s, %s, rubric %s version %d", f.Date, r.Currency, r.Rubric.ID, r.Rubric.Version)
	tell("")
	tell("VERDICT: %s", strings.ToUpper(r.Verdict.Title))
	tell("%s", r.Verdict.Sentence)
	for _, x := range r.Verdict.Points {
		tell("  %s\t%s\t%s", strings.ToUpper(v.Label(x.Hazard)), x.Title, gradeText(v, x.Grade))
	}
	for _, s := range r.Verdict.Always {
		tell("  %s", s)
	}
	tell("")
	tell("SCORES\tvalue\tcould be\tcoverage\tchecked")
	for _, s := range []struct {
		name  string
		score appraisal.Score
	}{{v.T("safety"), r.Safety}, {v.T("condition"), r.Condition}} {
		value := "-"
		if s.score.Value != nil {
			value = v.Number(*s.score.Value, 1)
		}
		tell("%s\t%s\t%.1f to %.1f\t%.1f %%\t%d of %d", s.name, value, s.score.Low, s.score.High, s.score.Coverage, s.score.Checked, s.score.Applies)
	}
	tell("")
	estimateReport(tell, v, v.T("REPAIR ESTIMATE"), r.Estimate)
	tell("")
	tell("NOT CHECKED: %s", r.Hidden.Sentence)
	tell("  well kept %.2f %%, ordinary %.2f %%, neglected %.2f %%", float64(r.Hidden.Care[0])/100, float64(r.Hidden.Care[1])/100, float64(r.Hidden.Care[2])/100)
	for _, d := range r.Hidden.Points {
		tell("  %s\t%.1f %% bad\t%s", d.Title, 100*d.Chance, money(v, d.Mean))
	}
	tell("")
	estimateReport(tell, v, v.T("GETTING IT HOME"), r.Landing)
	tell("")
	tell("WORTH: %s", first(r.Worth.Sentence, r.Worth.Missing))
	for _, a := range []*appraisal.Approach{r.Worth.Sales, r.Worth.Cost} {
		if a != nil {
			tell("  %s\tweight %.2f", money(v, a.Centre), a.Weight)
			for _, s := range a.Steps {
				tell("    %s", s)
			}
		}
	}
	for _, c := range r.Worth.Rows {
		tell("  %s\t%s\t-> %s\t%s", c.Title, money(v, c.Price), money(v, c.Adjusted), c.Note)
	}
	tell("")
	offerReport(tell, v, r)
	if len(r.Next) > 0 {
		tell("")
		tell("CHECK NEXT\tminutes\tgain\ta minute")
		for _, n := range r.Next {
			tell("  %s\t%g\t%s\t%s", n.Title, n.Minutes, money(v, n.Gain), money(v, n.PerMin))
		}
	}
	for _, c := range r.Checks {
		if c.Problem != "" {
			tell("NOT USED, %s: the measured values make no result: %s", c.Check, c.Problem)
		}
	}
	for _, n := range r.Notes {
		tell("NOTE: %s", n)
	}
	return w.Flush()
}

// oneLine shows control characters in texts of a file as escapes: a file of
// somebody else's must not steer the terminal or tear the columns.
func oneLine(args []any) []any {
	for i, a := range args {
		if s, ok := a.(string); ok && strings.ContainsFunc(s, unicode.IsControl) {
			args[i] = strings.Trim(strconv.Quote(s), `"`)
		}
	}
	return args
}

func estimateReport(tell func(string, ...any), v *say.Voice, title string, e appraisal.Estimate) {
	tell("%s\tlow\tlikely\thigh\tmean", title)
	for _, l := range e.Lines {
		tell("  %s\t%s\t%s\t%s\t%s", l.Title, money(v, l.Cost.Low), money(v, l.Cost.Likely), money(v, l.Cost.High), money(v, l.Mean))
	}
	tell("  together\t%s\t%s\t%s\t%s\t(10, 50 and 90 %% of the draws; %g to %g h)", money(v, e.Low), money(v, e.Median), money(v, e.High), money(v, e.Mean), e.Hours.Low, e.Hours.High)
}

func offerReport(tell func(string, ...any), v *say.Voice, r *appraisal.Result) {
	o := r.Offer
	if !o.Known {
		tell("OFFER: %s", o.Missing)
		return
	}
	tell("OFFER\tprice\todds of coming out ahead")
	for _, x := range []struct {
		name string
		at   appraisal.PricePoint
	}{{v.T("opening offer"), o.Opening}, {v.T("fair offer"), o.Fair}, {v.T("walk-away price"), o.WalkAway}} {
		if x.at.None {
			tell("  %s\tnone\tnot even as a gift at %.0f %%", x.name, 100*x.at.Odds)
		} else {
			tell("  %s\t%s\t%.0f %%", x.name, money(v, x.at.Price), 100*x.at.Odds)
		}
	}
	for _, s := range o.Sentences {
		tell("  %s", s)
	}
	if a := o.AllIn; a != nil {
		tell("ALL-IN at %s\t%s\ttax %s, fees %s, landing %s, repair %s, not checked %s", money(v, a.Price), money(v, a.Total), money(v, a.Tax), money(v, a.Fees), money(v, a.Landing), money(v, a.Repair), money(v, a.Hidden))
	}
	tell("FROM WORTH TO FAIR OFFER")
	for _, s := range o.Waterfall {
		tell("  %s\t%s\t= %s", s.Title, money(v, s.Amount), money(v, s.Total))
	}
}

func gradeText(v *say.Voice, g *int) string {
	if g == nil {
		return v.T("not checked")
	}
	return fmt.Sprintf("%d %s", *g, v.Label(appraisal.GradeWords[*g]))
}

func money(v *say.Voice, m appraisal.Money) string {
	sign := ""
	if m < 0 {
		sign, m = "-", -m
	}
	return fmt.Sprintf("%s%d%s%02d", sign, m/100, v.Locale().Decimal, m%100)
}

func first(words ...string) string {
	for _, w := range words {
		if w != "" {
			return w
		}
	}
	return ""
}
