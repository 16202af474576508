package appraisal

import (
	"fmt"
	"sort"
	"strconv"
)

// derivations tells of every figure of the result how it came about. A step that
// rests on another figure names it, so the reader can go down to the inputs.
func derivations(m *model, res *Result, walked []judged) map[string]Derivation {
	d := deriver{m: m, res: res, walked: walked, out: map[string]Derivation{}}
	d.verdict()
	d.score("safety", "Safety", &res.Safety, func(w Weight) int { return w.Safety })
	d.score("condition", "Condition", &res.Condition, func(w Weight) int { return w.Condition })
	d.coverage()
	d.repair()
	d.landing()
	d.care()
	d.hidden()
	d.worth()
	d.offer()
	return d.out
}

type deriver struct {
	m      *model
	res    *Result
	walked []judged
	out    map[string]Derivation
}

func said(format string, args ...any) DerivationStep {
	return DerivationStep{Text: fmt.Sprintf(format, args...)}
}

func restsOn(of, format string, args ...any) DerivationStep {
	return DerivationStep{Text: fmt.Sprintf(format, args...), Of: of}
}

func (d *deriver) verdict() {
	v := &d.res.Verdict
	steps := []DerivationStep{said("The most severe finding decides, never the average.")}
	for _, p := range v.Points {
		state := "not checked"
		if p.Grade != nil {
			state = GradeWords[*p.Grade]
		}
		steps = append(steps, said("%s: %s, a %s point.", p.Title, state, p.Hazard))
	}
	if len(v.Points) == 0 {
		steps = append(steps, said("No danger point is failed, bad or open, and no warning point has failed."))
	}
	d.out["verdict"] = Derivation{Title: "Verdict", Figure: v.Title, Steps: steps}
}

// score lists the points that take most of it.
func (d *deriver) score(id, title string, s *Score, weight func(Weight) int) {
	if s.Value == nil {
		d.out[id] = Derivation{Title: title, Figure: "-", Steps: []DerivationStep{said("Nothing was checked yet.")}}
		return
	}
	type loss struct {
		title, grade string
		lost         float64
	}
	var list []loss
	sum, got := 0, 0
	for i := range d.walked {
		if j := &d.walked[i]; j.checked() {
			w := weight(j.check.Weight)
			sum, got = sum+w, got+w**j.grade
			if lost := float64(w * (4 - *j.grade)); lost > 0 {
				list = append(list, loss{j.check.Title, GradeWords[*j.grade], lost})
			}
		}
	}
	sort.SliceStable(list, func(a, b int) bool { return list[a].lost > list[b].lost })
	steps := []DerivationStep{
		said("Each checked point counts its weight times its grade, of 4: %d of %d.", got, 4*sum),
	}
	for i, l := range list {
		if i == 5 {
			break
		}
		steps = append(steps, said("%s: %s, takes %.1f of 100.", l.title, l.grade, 100*l.lost/float64(4*max(sum, 1))))
	}
	steps = append(steps, said("Were all that was not checked failed, it would be %.0f; were it all as new, %.0f.", s.Low, s.High))
	d.out[id] = Derivation{Title: title, Figure: strconv.FormatFloat(*s.Value, 'f', 1, 64), Steps: steps}
}

func (d *deriver) coverage() {
	s := &d.res.Safety
	steps := []DerivationStep{said("%d of the %d points that apply were checked; by weight for safety that is %.0f %%.", s.Checked, s.Applies, s.Coverage)}
	skipped := map[string]int{}
	for i := range d.walked {
		if j := &d.walked[i]; j.open() && j.finding.Skipped != "" {
			skipped[j.finding.Skipped]++
		}
	}
	for _, r := range Reasons {
		if n := skipped[r.ID]; n > 0 {
			steps = append(steps, said("Not checked, %s: %d.", lowerFirst(r.Title), n))
		}
	}
	if n := d.res.Progress.Open; n > 0 {
		steps = append(steps, said("Not reached yet: %d.", n))
	}
	d.out["coverage"] = Derivation{Title: "Coverage", Figure: fmt.Sprintf("%.0f %%", s.Coverage), Steps: steps}
}

// lowerFirst is a title inside a sentence.
func lowerFirst(s string) string {
	if s == "" || s[0] < 'A' || s[0] > 'Z' {
		return s
	}
	return string(s[0]+'a'-'A') + s[1:]
}

func (d *deriver) line(l *Line) {
	var steps []DerivationStep
	if l.Says != "" {
		steps = append(steps, said("%s", l.Says))
	}
	if l.Own {
		steps = append(steps, said("Your own figure: %s, most likely %s, at most %s.", whole(l.Cost.Low), whole(l.Cost.Likely), whole(l.Cost.High)))
	}
	for _, p := range l.Parts {
		from := "example price"
		if n := d.m.file.region(); n != plainRegion {
			from += ", times the region's " + basisPoints(n)
		}
		if p.Own {
			from = "your price"
		}
		steps = append(steps, said("%s, %g %s at %s, most likely %s, at most %s (%s).", p.Title, p.Quantity, p.Unit, whole(p.Price.Low), whole(p.Price.Likely), whole(p.Price.High), from))
	}
	if h := l.Hours; h.High > 0 && !l.Own {
		steps = append(steps, said("%g to %g hours, most likely %g, of %s at %s an hour.", h.Low, h.High, h.Likely, tradeTitle(l.Rate), whole(l.PerHour)))
	}
	if l.Minutes > 0 {
		steps = append(steps, said("Of these, %g minutes on the machine, from speed, feed and length.", l.Minutes))
	}
	steps = append(steps, said("Together %s, most likely %s, at most %s; the mean counts the likely one four times: %s.", whole(l.Cost.Low), whole(l.Cost.Likely), whole(l.Cost.High), whole(l.Mean)))
	d.out["line:"+l.ID] = Derivation{Title: l.Title, Figure: whole(l.Mean), Steps: steps}
}

// lines derives each line and lists those that count.
func (d *deriver) lines(e *Estimate) []DerivationStep {
	var steps []DerivationStep
	for i := range e.Lines {
		l := &e.Lines[i]
		if l.Off {
			continue
		}
		d.line(l)
		steps = append(steps, restsOn("line:"+l.ID, "%s: %s.", l.Title, whole(l.Mean)))
	}
	return steps
}

func between(e *Estimate) DerivationStep {
	return said("Drawn %s times: %s on average, in eight of ten draws between %s and %s.", whole(Draws*100), whole(e.Mean), whole(e.Low), whole(e.High))
}

func (d *deriver) repair() {
	e := &d.res.Estimate
	steps := d.lines(e)
	if len(steps) == 0 {
		steps = append(steps, said("Nothing that was found needs repair."))
	} else {
		o := d.m.file.Shop.Overrun
		steps = append(steps, said("All repair lines together overrun by one shared factor: %d %% on average, give or take %d (settings).", o.Mean/100, o.SD/100), between(e))
	}
	d.out["repair"] = Derivation{Title: "Repair of what was found", Figure: whole(e.Mean), Steps: steps}
}

func (d *deriver) landing() {
	e := &d.res.Landing
	steps := d.lines(e)
	for i := range e.Lines {
		if l := &e.Lines[i]; l.Off && l.Says != "" {
			steps = append(steps, said("%s: %s", l.Title, l.Says))
		}
	}
	d.out["landing"] = Derivation{Title: "Getting it home and standing", Figure: whole(e.Mean), Steps: append(steps, between(e))}
}

func classes(p [3]int) string {
	share := func(n int) string { return percent(float64(n) / 10_000) }
	return share(p[0]) + " well kept, " + share(p[1]) + " ordinary, " + share(p[2]) + " neglected"
}

func (d *deriver) care() {
	h := &d.res.Hidden
	seen, bad := 0, 0
	for i := range d.walked {
		if j := &d.walked[i]; j.checked() {
			seen++
			if *j.grade <= 1 {
				bad++
			}
		}
	}
	d.out["care"] = Derivation{Title: "How it was kept", Figure: classes(h.Care), Steps: []DerivationStep{
		said("Before looking: %s (judgement of the rubric, by the kind of seller, or your own).", classes(h.Prior)),
		said("%d of the %d checked points were bad or failed. Each class expects its own share of bad points; by Bayes' rule that leaves %s.", bad, seen, classes(h.Care)),
	}}
}

func (d *deriver) hidden() {
	h := &d.res.Hidden
	steps := []DerivationStep{said("%s", h.Sentence), restsOn("care", "How it was kept: %s.", classes(h.Care))}
	points := append([]Doubt(nil), h.Points...)
	sort.SliceStable(points, func(a, b int) bool { return points[a].Mean > points[b].Mean })
	for i, p := range points {
		if i == 6 || p.Mean == 0 {
			break
		}
		steps = append(steps, said("%s: bad with %s, expected cost %s.", p.Title, percent(p.Chance), whole(p.Mean)))
	}
	if len(h.Points) > 0 {
		steps = append(steps, said("What several points would need is bought once a draw, so the sum is less than its parts. In one of ten draws it is more than %s.", whole(h.High)))
	}
	d.out["hidden"] = Derivation{Title: "Allowance for what was not checked", Figure: whole(h.Mean), Steps: steps}
}

func (d *deriver) worth() {
	w := &d.res.Worth
	if a := w.Sales; a != nil {
		steps := sentences(a.Steps)
		rows := append([]ComparableRow(nil), w.Rows...)
		sort.SliceStable(rows, func(a, b int) bool { return rows[a].Weight > rows[b].Weight })
		for i, r := range rows {
			if i == 5 || r.Weight == 0 {
				break
			}
			steps = append(steps, said("%s: %s, brought to %s, counts %s.", title(r.Title), whole(r.Price), whole(r.Adjusted), percent(r.Weight)))
		}
		d.out["sales"] = Derivation{Title: "Worth by comparables", Figure: whole(a.Centre), Steps: steps}
	}
	if a := w.Cost; a != nil {
		d.out["cost"] = Derivation{Title: "Worth by the price of a new one", Figure: whole(a.Centre), Steps: sentences(a.Steps)}
	}
	if !w.Known {
		return
	}
	var steps []DerivationStep
	if w.Sales != nil {
		steps = append(steps, restsOn("sales", "The comparables say %s, weight %s.", whole(w.Sales.Centre), percent(w.Sales.Weight)))
	}
	if w.Cost != nil {
		steps = append(steps, restsOn("cost", "The price of a new one, less age, says %s, weight %s.", whole(w.Cost.Centre), percent(w.Cost.Weight)))
	}
	if w.Sales != nil && w.Cost != nil {
		steps = append(steps, said("The narrower of the two weighs more: each by one over its squared spread."))
	}
	steps = append(steps, said("%s", w.Sentence))
	d.out["worth"] = Derivation{Title: "Worth, sound and complete", Figure: whole(w.Centre), Steps: steps}
	d.out["in_place"] = Derivation{Title: "Worth in place", Figure: whole(w.InPlace), Steps: []DerivationStep{
		restsOn("worth", "A sound one is worth about %s; its mean over the draws lies a little above that middle.", whole(w.Centre)),
		restsOn("landing", "Installation that stays in the building counts with it: %s.", whole(cents(d.m.kept))),
	}}
}

func title(s string) string {
	if s == "" {
		return "Without a title"
	}
	return s
}

func sentences(list []string) []DerivationStep {
	out := make([]DerivationStep, len(list))
	for i, s := range list {
		out[i].Text = s
	}
	return out
}

func (d *deriver) offer() {
	o := &d.res.Offer
	if !o.Known {
		return
	}
	w := &d.res.Worth
	from := []DerivationStep{
		restsOn("in_place", "Worth in place, %s on average,", whole(w.InPlace)),
		restsOn("repair", "less repair, %s,", whole(d.res.Estimate.Mean)),
		restsOn("hidden", "less what was not checked, %s,", whole(d.res.Hidden.Mean)),
		restsOn("landing", "less getting it home and standing, %s,", whole(d.res.Landing.Mean)),
	}
	shop := &d.m.file.Shop
	from = append(from, said("less fees, %s, and all of it without the tax of %g %%: the price at which a draw comes out at nothing.", whole(shop.Fees), float64(shop.Tax)/100))
	for _, p := range []struct {
		id, title string
		point     PricePoint
	}{{"opening", "Opening offer", o.Opening}, {"fair", "Fair offer", o.Fair}, {"walk_away", "Walk-away price", o.WalkAway}} {
		steps := append([]DerivationStep(nil), from...)
		figure := whole(p.point.Price)
		if p.point.None {
			figure = "none"
			steps = append(steps, said("In fewer than %s of 100 draws that price is above nothing: at these odds not even a gift would do.", inHundred(p.point.Odds)))
		} else {
			steps = append(steps, said("In %s of 100 draws that price is %s or more (odds of the settings).", inHundred(p.point.Odds), figure))
		}
		if o.Error > 0 {
			steps = append(steps, restsOn("error", "Rounded down to steps of %s.", whole(o.Step)))
		}
		d.out[p.id] = Derivation{Title: p.title, Figure: figure, Steps: steps}
	}
	if o.Error > 0 {
		d.out["error"] = Derivation{Title: "Error of drawing", Figure: whole(o.Error), Steps: []DerivationStep{
			said("The draws are ten independent sets; the fair offer of one set differs from another's so much that drawing all again would move it by about %s.", exact(o.Error)),
			said("That is less than one step of %s, to which the prices are rounded down.", whole(o.Step)),
		}}
	}
	if o.At == nil {
		return
	}
	d.out["odds"] = Derivation{Title: "Odds at " + whole(o.At.Price), Figure: inHundred(o.At.Odds) + " of 100", Steps: append(append([]DerivationStep(nil), from...),
		said("In %s of 100 draws that price is %s or more.", inHundred(o.At.Odds), whole(o.At.Price)))}
	a := o.AllIn
	d.out["all_in"] = Derivation{Title: "All-in at " + whole(a.Price), Figure: whole(a.Total), Steps: []DerivationStep{
		said("Price %s, tax %s, fees %s.", whole(a.Price), whole(a.Tax), whole(a.Fees)),
		restsOn("landing", "Getting it home and standing: %s.", whole(a.Landing)),
		restsOn("repair", "Repair of what was found: %s.", whole(a.Repair)),
		restsOn("hidden", "Allowance for what was not checked: %s.", whole(a.Hidden)),
	}}
	d.out["ahead"] = Derivation{Title: "Coming out ahead", Figure: whole(*o.Ahead), Steps: []DerivationStep{
		restsOn("in_place", "Worth in place: %s on average.", whole(w.InPlace)),
		restsOn("all_in", "Less all-in: %s.", whole(a.Total)),
	}}
}
