package appraisal

// task is a line of the estimate with its random amount.
type task struct {
	line Line
	pert pert
	luck stream
}

// pricing turns remedies, preparations and landing lines into costed tasks.
type pricing struct {
	file   *File
	parts  map[string]Part
	own    map[string]bool // parts the user entered himself
	remedy map[string]*Remedy
	prep   map[string]*Preparation
	notes  *notes

	points map[string]*FitPoint // by id; what the fit with the shop says of landing lines
	haul   map[string]haulCost  // by the word of Landing.Haul
}

func newPricing(r *Rubric, parts []Part, f *File, n *notes) *pricing {
	p := &pricing{file: f, parts: map[string]Part{}, own: map[string]bool{}, remedy: map[string]*Remedy{}, prep: map[string]*Preparation{}, notes: n}
	for _, part := range parts {
		p.parts[part.ID] = part
	}
	for _, part := range f.Parts {
		p.own[part.ID] = true
	}
	for i := range r.Remedies {
		p.remedy[r.Remedies[i].ID] = &r.Remedies[i]
	}
	for i := range r.Preparations {
		p.prep[r.Preparations[i].ID] = &r.Preparations[i]
	}
	return p
}

// way is the chosen way of a remedy, or the first one.
func (p *pricing) way(r *Remedy) *Way {
	if id, ok := p.file.Ways[r.ID]; ok {
		for i := range r.Ways {
			if r.Ways[i].ID == id {
				return &r.Ways[i]
			}
		}
		p.notes.add("%s: the way chosen before no longer exists, so the first one is used.", r.Title)
	}
	return &r.Ways[0]
}

func (v voice) trade(id string) string {
	for _, t := range Trades {
		if t.ID == id {
			return lowerFirst(v.Label(t.Title))
		}
	}
	return id
}

// rate is the price of an hour of own work or of a trade.
func (p *pricing) rate(trade string) Money {
	if m, ok := p.file.Shop.Rates[trade]; ok {
		return m
	}
	v, m := p.notes.voice, DefaultShop().Rates[trade]
	if p.file.region() != plainRegion && hired(trade) {
		example := m
		m = p.regional(m)
		p.notes.add("No rate is set for an hour of %s: the example of %s, times the region's %s, is used.", v.trade(trade), v.whole(example), basisPoints(p.file.region()))
		return m
	}
	p.notes.add("No rate is set for an hour of %s: the example of %s is used.", v.trade(trade), v.whole(m))
	return m
}

// use prices a list of parts.
func (p *pricing) use(uses []PartUse) ([]PartLine, Range) {
	var lines []PartLine
	var low, likely, high float64
	for _, u := range uses {
		part, known := p.parts[u.Part]
		if !known {
			p.notes.add("The part %.60q is not in the price book: it counts for nothing until it is entered there.", u.Part)
			part.Title = u.Part
		}
		l := PartLine{Part: u.Part, Title: part.Title, Unit: part.Unit, Quantity: u.Quantity, Price: part.Price}
		if !p.own[u.Part] {
			l.Price = p.regionalRange(part.Price)
		}
		if own, ok := p.file.Prices[u.Part]; ok {
			l.Price, l.Own = own, true
		}
		low += float64(u.Quantity * float64(l.Price.Low))
		likely += float64(u.Quantity * float64(l.Price.Likely))
		high += float64(u.Quantity * float64(l.Price.High))
		lines = append(lines, l)
	}
	return lines, Range{cents(low), cents(likely), cents(high)}
}

// cost adds working hours to an amount for parts.
func cost(parts Range, h Hours, perHour Money) Range {
	add := func(m Money, hours float64) Money { return m + cents(float64(hours*float64(perHour))) }
	return Range{add(parts.Low, h.Low), add(parts.Likely, h.Likely), add(parts.High, h.High)}
}

func sum(a, b Range) Range { return Range{a.Low + b.Low, a.Likely + b.Likely, a.High + b.High} }

// finish gives a line its distribution; lines of one name share their luck.
func finish(l Line) task {
	t := task{line: l, pert: newPert(float64(l.Cost.Low), float64(l.Cost.Likely), float64(l.Cost.High))}
	t.luck = newStream(l.Kind + ":" + l.ID)
	t.line.Mean, t.line.SD = cents(t.pert.mean), cents(t.pert.sd)
	return t
}

// wayLine costs one way of a remedy, without its preparations.
func (p *pricing) wayLine(r *Remedy, w *Way) Line {
	l := Line{ID: r.ID, Kind: "remedy", Title: r.Title, Way: w.ID, Rate: w.Rate, PerHour: p.rate(w.Rate), Caution: w.Caution, Hours: w.Hours}
	var parts Range
	l.Parts, parts = p.use(w.Parts)
	l.Cost = cost(parts, w.Hours, l.PerHour)
	if w.Make != nil {
		h := machiningHours(*w.Make)
		l.Minutes = tenths(MachiningMinutes(*w.Make))
		l.Cost = cost(l.Cost, h, p.rate("machine"))
		l.Hours = Hours{round2(l.Hours.Low + h.Low), round2(l.Hours.Likely + h.Likely), round2(l.Hours.High + h.High)}
	}
	return l
}

// remedyTask costs a remedy by its chosen way and lists the other ways.
func (p *pricing) remedyTask(id string, because []string) task {
	r := p.remedy[id]
	l := p.wayLine(r, p.way(r))
	l.Because = because
	for i := range r.Ways {
		w := &r.Ways[i]
		alone := p.wayLine(r, w)
		t := finish(alone)
		l.Ways = append(l.Ways, WayChoice{ID: w.ID, Kind: w.Kind, Title: w.Title, Mean: t.line.Mean, Hours: alone.Hours})
	}
	return finish(l)
}

func (p *pricing) preparationTask(id string, because []string) task {
	pr := p.prep[id]
	l := Line{ID: id, Kind: "preparation", Title: pr.Title, Because: because, Hours: pr.Hours, Rate: pr.Rate, PerHour: p.rate(pr.Rate), Caution: pr.Caution}
	var parts Range
	l.Parts, parts = p.use(pr.Parts)
	l.Cost = cost(parts, pr.Hours, l.PerHour)
	return finish(l)
}

// needs lists the preparations of a way, what comes before first.
func (p *pricing) needs(w *Way) []string {
	var out []string
	seen := map[string]bool{}
	var visit func(string)
	visit = func(id string) {
		if seen[id] || p.prep[id] == nil {
			return
		}
		seen[id] = true
		for _, n := range p.prep[id].Needs {
			visit(n)
		}
		out = append(out, id)
	}
	for _, id := range w.Preparations {
		visit(id)
	}
	return out
}

// repairs is the union over all remedies the findings ask for, preparations
// once, and whether a finding cannot be put right at all.
func (p *pricing) repairs(walked []judged) (tasks []task, scrap []string) {
	var order, prepOrder []string
	because := map[string][]string{}
	prepBecause := map[string][]string{}
	for i := range walked {
		j := &walked[i]
		id := j.remedy()
		switch {
		case id == "scrap":
			scrap = append(scrap, j.check.ID)
		case id != "" && p.remedy[id] != nil:
			if because[id] == nil {
				order = append(order, id)
			}
			because[id] = append(because[id], j.check.ID)
		}
	}
	for _, id := range order {
		for _, prep := range p.needs(p.way(p.remedy[id])) {
			if prepBecause[prep] == nil {
				prepOrder = append(prepOrder, prep)
			}
			prepBecause[prep] = append(prepBecause[prep], id)
		}
	}
	for _, id := range prepOrder {
		tasks = append(tasks, p.preparationTask(id, prepBecause[id]))
	}
	for _, id := range order {
		tasks = append(tasks, p.remedyTask(id, because[id]))
	}
	return tasks, scrap
}

func round2(x float64) float64 { return cents(x * 100).hundredths() }

func (m Money) hundredths() float64 { return float64(m) / 100 }

// notes collects what the reader must know, each once.
type notes struct {
	voice voice
	list  []string
}

func (n *notes) add(format string, args ...any) {
	s := n.voice.Pattern(format, args...)
	for _, have := range n.list {
		if have == s {
			return
		}
	}
	n.list = append(n.list, s)
}
