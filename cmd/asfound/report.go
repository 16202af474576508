package main

import (
	"fmt"
	"io"
	"strconv"
	"strings"
	"text/tabwriter"
	"unicode"

	"asfound/rubrics/appraisal"
)

// report writes a judgement for a person to read.
func report(out io.Writer, f *appraisal.File, r *appraisal.Result) error {
	w := tabwriter.NewWriter(out, 0, 0, 2, ' ', 0)
	p := func(format string, args ...any) { fmt.Fprintf(w, format+"\n", oneLine(args)...) }
	p("%s", f.Listing.Title)
	p("%s, %s, rubric %s version %d", f.Date, r.Currency, r.Rubric.ID, r.Rubric.Version)
	p("")
	p("VERDICT: %s", strings.ToUpper(r.Verdict.Title))
	p("%s", r.Verdict.Sentence)
	for _, x := range r.Verdict.Points {
		p("  %s\t%s\t%s", strings.ToUpper(x.Hazard), x.Title, gradeText(x.Grade))
	}
	for _, s := range r.Verdict.Always {
		p("  %s", s)
	}
	p("")
	p("SCORES\tvalue\tcould be\tcoverage\tchecked")
	for _, s := range []struct {
		name  string
		score appraisal.Score
	}{{"safety", r.Safety}, {"condition", r.Condition}} {
		value := "-"
		if s.score.Value != nil {
			value = fmt.Sprintf("%.1f", *s.score.Value)
		}
		p("%s\t%s\t%.1f to %.1f\t%.1f %%\t%d of %d", s.name, value, s.score.Low, s.score.High, s.score.Coverage, s.score.Checked, s.score.Applies)
	}
	p("")
	estimateReport(p, "REPAIR ESTIMATE", r.Estimate)
	p("")
	p("NOT CHECKED: %s", r.Hidden.Sentence)
	p("  well kept %d.%02d %%, ordinary %d.%02d %%, neglected %d.%02d %%", r.Hidden.Care[0]/100, r.Hidden.Care[0]%100, r.Hidden.Care[1]/100, r.Hidden.Care[1]%100, r.Hidden.Care[2]/100, r.Hidden.Care[2]%100)
	for _, d := range r.Hidden.Points {
		p("  %s\t%.1f %% bad\t%s", d.Title, 100*d.Chance, money(d.Mean))
	}
	p("")
	estimateReport(p, "GETTING IT HOME", r.Landing)
	p("")
	p("WORTH: %s", first(r.Worth.Sentence, r.Worth.Missing))
	for _, a := range []*appraisal.Approach{r.Worth.Sales, r.Worth.Cost} {
		if a != nil {
			p("  %s\tweight %.2f", money(a.Centre), a.Weight)
			for _, s := range a.Steps {
				p("    %s", s)
			}
		}
	}
	for _, c := range r.Worth.Rows {
		p("  %s\t%s\t-> %s\t%s", c.Title, money(c.Price), money(c.Adjusted), c.Note)
	}
	p("")
	offerReport(p, r)
	if len(r.Next) > 0 {
		p("")
		p("CHECK NEXT\tminutes\tgain\ta minute")
		for _, n := range r.Next {
			p("  %s\t%g\t%s\t%s", n.Title, n.Minutes, money(n.Gain), money(n.PerMin))
		}
	}
	for _, c := range r.Checks {
		if c.Problem != "" {
			p("NOT USED, %s: the measured values make no result: %s", c.Check, c.Problem)
		}
	}
	for _, n := range r.Notes {
		p("NOTE: %s", n)
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

func estimateReport(p func(string, ...any), title string, e appraisal.Estimate) {
	p("%s\tlow\tlikely\thigh\tmean", title)
	for _, l := range e.Lines {
		p("  %s\t%s\t%s\t%s\t%s", l.Title, money(l.Cost.Low), money(l.Cost.Likely), money(l.Cost.High), money(l.Mean))
	}
	p("  together\t%s\t%s\t%s\t%s\t(10, 50 and 90 %% of the draws; %g to %g h)", money(e.Low), money(e.Median), money(e.High), money(e.Mean), e.Hours.Low, e.Hours.High)
}

func offerReport(p func(string, ...any), r *appraisal.Result) {
	o := r.Offer
	if !o.Known {
		p("OFFER: %s", o.Missing)
		return
	}
	p("OFFER\tprice\todds of coming out ahead")
	for _, x := range []struct {
		name string
		at   appraisal.PricePoint
	}{{"opening offer", o.Opening}, {"fair offer", o.Fair}, {"walk-away price", o.WalkAway}} {
		if x.at.None {
			p("  %s\tnone\tnot even as a gift at %.0f %%", x.name, 100*x.at.Odds)
		} else {
			p("  %s\t%s\t%.0f %%", x.name, money(x.at.Price), 100*x.at.Odds)
		}
	}
	for _, s := range o.Sentences {
		p("  %s", s)
	}
	if a := o.AllIn; a != nil {
		p("ALL-IN at %s\t%s\ttax %s, fees %s, landing %s, repair %s, not checked %s", money(a.Price), money(a.Total), money(a.Tax), money(a.Fees), money(a.Landing), money(a.Repair), money(a.Hidden))
	}
	p("FROM WORTH TO FAIR OFFER")
	for _, s := range o.Waterfall {
		p("  %s\t%s\t= %s", s.Title, money(s.Amount), money(s.Total))
	}
}

func gradeText(g *int) string {
	if g == nil {
		return "not checked"
	}
	return fmt.Sprintf("%d %s", *g, appraisal.GradeWords[*g])
}

func money(m appraisal.Money) string {
	sign := ""
	if m < 0 {
		sign, m = "-", -m
	}
	return fmt.Sprintf("%s%d.%02d", sign, m/100, m%100)
}

func first(words ...string) string {
	for _, w := range words {
		if w != "" {
			return w
		}
	}
	return ""
}
