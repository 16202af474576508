package appraisal

import (
	"sort"
)

// derivations tells of every figure of the result how it came about. A step that
// rests on another figure names it, so the reader can go down to the inputs.
func derivations(m *model, res *Result, walked []judged) map[string]Derivation {
	d := deriver{voice: m.voice, m: m, res: res, walked: walked, out: map[string]Derivation{}}
	d.verdict()
	d.score("safety", d.T("Safety"), &res.Safety, func(w Weight) int { return w.Safety })
	d.score("condition", d.T("Condition"), &res.Condition, func(w Weight) int { return w.Condition })
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
	voice
	m      *model
	res    *Result
	walked []judged
	out    map[string]Derivation
}

// said is a step by a pattern and its arguments.
func (v voice) said(format string, args ...any) DerivationStep {
	return DerivationStep{Text: v.Pattern(format, args...)}
}

func (v voice) restsOn(of, format string, args ...any) DerivationStep {
	return DerivationStep{Text: v.Pattern(format, args...), Of: of}
}

func (d *deriver) verdict() {
	v := &d.res.Verdict
	steps := []DerivationStep{d.said("The most severe finding decides, never the average.")}
	for _, p := range v.Points {
		state := d.T("not checked")
		if p.Grade != nil {
			state = d.grade(*p.Grade)
		}
		steps = append(steps, d.said("%s: %s, a %s point.", p.Title, state, d.Label(p.Hazard)))
	}
	if len(v.Points) == 0 {
		steps = append(steps, d.said("No danger point is failed, bad or open, and no warning point has failed."))
	}
	d.out["verdict"] = Derivation{Title: d.T("Verdict"), Figure: v.Title, Steps: steps}
}

// score lists the points that take most of it.
func (d *deriver) score(id, title string, s *Score, weight func(Weight) int) {
	if s.Value == nil {
		d.out[id] = Derivation{Title: title, Figure: "-", Steps: []DerivationStep{d.said("Nothing was checked yet.")}}
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
				list = append(list, loss{j.check.Title, d.grade(*j.grade), lost})
			}
		}
	}
	sort.SliceStable(list, func(a, b int) bool { return list[a].lost > list[b].lost })
	steps := []DerivationStep{
		d.said("Each checked point counts its weight times its grade, of 4: %d of %d.", got, 4*sum),
	}
	for i, l := range list {
		if i == 5 {
			break
		}
		steps = append(steps, d.said("%s: %s, takes %.1f of 100.", l.title, l.grade, 100*l.lost/float64(4*max(sum, 1))))
	}
	steps = append(steps, d.said("Were all that was not checked failed, it would be %.0f; were it all as new, %.0f.", s.Low, s.High))
	d.out[id] = Derivation{Title: title, Figure: d.Number(*s.Value, 1), Steps: steps}
}

func (d *deriver) coverage() {
	s := &d.res.Safety
	steps := []DerivationStep{d.said("%d of the %d points that apply were checked; by weight for safety that is %.0f %%.", s.Checked, s.Applies, s.Coverage)}
	skipped := map[string]int{}
	for i := range d.walked {
		if j := &d.walked[i]; j.open() && j.finding.Skipped != "" {
			skipped[j.finding.Skipped]++
		}
	}
	for _, r := range Reasons {
		if n := skipped[r.ID]; n > 0 {
			steps = append(steps, d.said("Not checked, %s: %d.", lowerFirst(d.Label(r.Title)), n))
		}
	}
	if n := d.res.Progress.Open; n > 0 {
		steps = append(steps, d.said("Not reached yet: %d.", n))
	}
	d.out["coverage"] = Derivation{Title: d.T("Coverage"), Figure: d.F("%.0f %%", s.Coverage), Steps: steps}
}

func (d *deriver) line(l *Line) {
	var steps []DerivationStep
	if l.Says != "" {
		steps = append(steps, DerivationStep{Text: l.Says})
	}
	if l.Own {
		steps = append(steps, d.said("Your own figure: %s, most likely %s, at most %s.", d.whole(l.Cost.Low), d.whole(l.Cost.Likely), d.whole(l.Cost.High)))
	}
	for _, p := range l.Parts {
		from := d.T("example price")
		if n := d.m.file.region(); n != plainRegion {
			from = d.F("example price, times the region's %s", basisPoints(n))
		}
		if p.Own {
			from = d.T("your price")
		}
		steps = append(steps, d.said("%s, %g %s at %s, most likely %s, at most %s (%s).", p.Title, p.Quantity, p.Unit, d.whole(p.Price.Low), d.whole(p.Price.Likely), d.whole(p.Price.High), from))
	}
	if h := l.Hours; h.High > 0 && !l.Own {
		steps = append(steps, d.said("%g to %g hours, most likely %g, of %s at %s an hour.", h.Low, h.High, h.Likely, d.trade(l.Rate), d.whole(l.PerHour)))
	}
	if l.Minutes > 0 {
		steps = append(steps, d.said("Of these, %g minutes on the machine, from speed, feed and length.", l.Minutes))
	}
	steps = append(steps, d.said("Together %s, most likely %s, at most %s; the mean counts the likely one four times: %s.", d.whole(l.Cost.Low), d.whole(l.Cost.Likely), d.whole(l.Cost.High), d.whole(l.Mean)))
	d.out["line:"+l.ID] = Derivation{Title: l.Title, Figure: d.whole(l.Mean), Steps: steps}
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
		steps = append(steps, d.restsOn("line:"+l.ID, "%s: %s.", l.Title, d.whole(l.Mean)))
	}
	return steps
}

func (d *deriver) between(e *Estimate) DerivationStep {
	return d.said("Drawn %s times: %s on average, in eight of ten draws between %s and %s.", d.whole(Draws*100), d.whole(e.Mean), d.whole(e.Low), d.whole(e.High))
}

func (d *deriver) repair() {
	e := &d.res.Estimate
	steps := d.lines(e)
	if len(steps) == 0 {
		steps = append(steps, d.said("Nothing that was found needs repair."))
	} else {
		o := d.m.file.Shop.Overrun
		steps = append(steps, d.said("All repair lines together overrun by one shared factor: %d %% on average, give or take %d (settings).", o.Mean/100, o.SD/100), d.between(e))
	}
	d.out["repair"] = Derivation{Title: d.T("Repair of what was found"), Figure: d.whole(e.Mean), Steps: steps}
}

func (d *deriver) landing() {
	e := &d.res.Landing
	steps := d.lines(e)
	for i := range e.Lines {
		if l := &e.Lines[i]; l.Off && l.Says != "" {
			steps = append(steps, DerivationStep{Text: l.Title + ": " + l.Says})
		}
	}
	d.out["landing"] = Derivation{Title: d.T("Getting it home and standing"), Figure: d.whole(e.Mean), Steps: append(steps, d.between(e))}
}

func (v voice) classes(p [3]int) string {
	share := func(n int) string { return v.percent(float64(n) / 10_000) }
	return v.F("%s well kept, %s ordinary, %s neglected", share(p[0]), share(p[1]), share(p[2]))
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
	d.out["care"] = Derivation{Title: d.T("How it was kept"), Figure: d.classes(h.Care), Steps: []DerivationStep{
		d.said("Before looking: %s (judgement of the rubric, by the kind of seller, or your own).", d.classes(h.Prior)),
		d.said("%d of the %d checked points were bad or failed. Each class expects its own share of bad points; by Bayes' rule that leaves %s.", bad, seen, d.classes(h.Care)),
	}}
}

func (d *deriver) hidden() {
	h := &d.res.Hidden
	steps := []DerivationStep{{Text: h.Sentence}, d.restsOn("care", "How it was kept: %s.", d.classes(h.Care))}
	points := append([]Doubt(nil), h.Points...)
	sort.SliceStable(points, func(a, b int) bool { return points[a].Mean > points[b].Mean })
	for i, p := range points {
		if i == 6 || p.Mean == 0 {
			break
		}
		steps = append(steps, d.said("%s: bad with %s, expected cost %s.", p.Title, d.percent(p.Chance), d.whole(p.Mean)))
	}
	if len(h.Points) > 0 {
		steps = append(steps, d.said("What several points would need is bought once a draw, so the sum is less than its parts. In one of ten draws it is more than %s.", d.whole(h.High)))
	}
	d.out["hidden"] = Derivation{Title: d.T("Allowance for what was not checked"), Figure: d.whole(h.Mean), Steps: steps}
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
			steps = append(steps, d.said("%s: %s, brought to %s, counts %s.", d.title(r.Title), d.whole(r.Price), d.whole(r.Adjusted), d.percent(r.Weight)))
		}
		d.out["sales"] = Derivation{Title: d.T("Worth by comparables"), Figure: d.whole(a.Centre), Steps: steps}
	}
	if a := w.Cost; a != nil {
		d.out["cost"] = Derivation{Title: d.T("Worth by the price of a new one"), Figure: d.whole(a.Centre), Steps: sentences(a.Steps)}
	}
	if !w.Known {
		return
	}
	var steps []DerivationStep
	if w.Sales != nil {
		steps = append(steps, d.restsOn("sales", "The comparables say %s, weight %s.", d.whole(w.Sales.Centre), d.percent(w.Sales.Weight)))
	}
	if w.Cost != nil {
		steps = append(steps, d.restsOn("cost", "The price of a new one, less age, says %s, weight %s.", d.whole(w.Cost.Centre), d.percent(w.Cost.Weight)))
	}
	if w.Sales != nil && w.Cost != nil {
		steps = append(steps, d.said("The narrower of the two weighs more: each by one over its squared spread."))
	}
	steps = append(steps, DerivationStep{Text: w.Sentence})
	d.out["worth"] = Derivation{Title: d.T("Worth, sound and complete"), Figure: d.whole(w.Centre), Steps: steps}
	d.out["in_place"] = Derivation{Title: d.T("Worth in place"), Figure: d.whole(w.InPlace), Steps: []DerivationStep{
		d.restsOn("worth", "A sound one is worth about %s; its mean over the draws lies a little above that middle.", d.whole(w.Centre)),
		d.restsOn("landing", "Installation that stays in the building counts with it: %s.", d.whole(cents(d.m.kept))),
	}}
}

func (v voice) title(s string) string {
	if s == "" {
		return v.T("Without a title")
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
		d.restsOn("in_place", "Worth in place, %s on average,", d.whole(w.InPlace)),
		d.restsOn("repair", "less repair, %s,", d.whole(d.res.Estimate.Mean)),
		d.restsOn("hidden", "less what was not checked, %s,", d.whole(d.res.Hidden.Mean)),
		d.restsOn("landing", "less getting it home and standing, %s,", d.whole(d.res.Landing.Mean)),
	}
	shop := &d.m.file.Shop
	from = append(from, d.said("less fees, %s, and all of it without the tax of %g %%: the price at which a draw comes out at nothing.", d.whole(shop.Fees), float64(shop.Tax)/100))
	for _, p := range []struct {
		id, title string
		point     PricePoint
	}{{"opening", d.T("Opening offer"), o.Opening}, {"fair", d.T("Fair offer"), o.Fair}, {"walk_away", d.T("Walk-away price"), o.WalkAway}} {
		steps := append([]DerivationStep(nil), from...)
		figure := d.whole(p.point.Price)
		if p.point.None {
			figure = d.T("none")
			steps = append(steps, d.said("In fewer than %s of 100 draws that price is above nothing: at these odds not even a gift would do.", d.inHundred(p.point.Odds)))
		} else {
			steps = append(steps, d.said("In %s of 100 draws that price is %s or more (odds of the settings).", d.inHundred(p.point.Odds), figure))
		}
		if o.Error > 0 {
			steps = append(steps, d.restsOn("error", "Rounded down to steps of %s.", d.whole(o.Step)))
		}
		d.out[p.id] = Derivation{Title: p.title, Figure: figure, Steps: steps}
	}
	if o.Error > 0 {
		d.out["error"] = Derivation{Title: d.T("Error of drawing"), Figure: d.whole(o.Error), Steps: []DerivationStep{
			d.said("The draws are ten independent sets; the fair offer of one set differs from another's so much that drawing all again would move it by about %s.", d.exact(o.Error)),
			d.said("That is less than one step of %s, to which the prices are rounded down.", d.whole(o.Step)),
		}}
	}
	if o.At == nil {
		return
	}
	d.out["odds"] = Derivation{Title: d.F("Odds at %s", d.whole(o.At.Price)), Figure: d.F("%s of 100", d.inHundred(o.At.Odds)), Steps: append(append([]DerivationStep(nil), from...),
		d.said("In %s of 100 draws that price is %s or more.", d.inHundred(o.At.Odds), d.whole(o.At.Price)))}
	a := o.AllIn
	d.out["all_in"] = Derivation{Title: d.F("All-in at %s", d.whole(a.Price)), Figure: d.whole(a.Total), Steps: []DerivationStep{
		d.said("Price %s, tax %s, fees %s.", d.whole(a.Price), d.whole(a.Tax), d.whole(a.Fees)),
		d.restsOn("landing", "Getting it home and standing: %s.", d.whole(a.Landing)),
		d.restsOn("repair", "Repair of what was found: %s.", d.whole(a.Repair)),
		d.restsOn("hidden", "Allowance for what was not checked: %s.", d.whole(a.Hidden)),
	}}
	d.out["ahead"] = Derivation{Title: d.T("Coming out ahead"), Figure: d.whole(*o.Ahead), Steps: []DerivationStep{
		d.restsOn("in_place", "Worth in place: %s on average.", d.whole(w.InPlace)),
		d.restsOn("all_in", "Less all-in: %s.", d.whole(a.Total)),
	}}
}
