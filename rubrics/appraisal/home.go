package appraisal

// ride is the way home of a listing: what is moved, with what, and what of it is
// hired.
type ride struct {
	*holding
	haul Haulage
	load []moved
	ties tying
	// What the own truck bears and may tow, the own trailer and lifting gear: passes,
	// open or lacks.
	truck, tow, trailer, lifts standing
}

// newRide is nil where there is nothing to hold against.
func newRide(h *holding) *ride {
	if h == nil {
		return nil
	}
	w := &ride{holding: h, load: h.pieces()}
	if f := h.file.Shop.Haulage; f != nil {
		w.haul = *f
	}
	w.ties = w.tie()
	return w
}

// home is the plan. Call it before costs: it decides what is hired.
func (w *ride) home() *Home {
	m := &w.machine
	s := m.weight.span
	p := &Home{
		Weight: Span{tenths(s.Low), tenths(s.Likely), tenths(s.High)}, Told: m.weight.told != nil,
		Pieces: []HomePiece{}, Points: []HomePoint{}, Gear: []HomeGear{}, Steps: []string{}, Cautions: []string{},
	}
	for i := range w.load {
		p.Pieces = append(p.Pieces, w.shown(&w.load[i]))
	}
	add := func(id, title, haul string, trials ...trial) standing {
		f, worst := settle(id, title, trials, "")
		point := HomePoint{ID: id, Title: title, Finding: f.Finding, Text: f.Text, Limit: f.Limit, Missing: f.Missing}
		if line := w.haulLine(haul); line != nil && (worst == work || worst == lacks) {
			point.Finding, point.Landing = WithWork, line.ID
		}
		p.Points = append(p.Points, point)
		return worst
	}
	w.truck = add("payload", w.T("Truck payload"), "transport", w.payload()...)
	if w.trailed() {
		add("trailer", w.T("Trailer"), "transport", w.towed()...)
		if w.haul.Trailer != nil || w.haul.Truck == nil {
			add("tongue", w.T("Tongue weight"), "", w.tongue())
			w.trailer = max(w.trailer, add("deck", w.T("Length of the deck"), "transport", w.deck()))
		}
	}
	add("tie-downs", w.T("Tie-downs"), "tie-downs", w.ties.trial)
	w.lifts = add("lifting", w.T("Lifting"), "loading", w.lifting())
	p.Gear, p.Steps, p.Cautions = w.gear(), w.steps(), w.cautions()
	p.Finding, p.Sentence = Fits, w.sentence(p)
	for i := range p.Points {
		p.Finding = worse(p.Finding, p.Points[i].Finding)
	}
	return p
}

// trailed tells whether a trailer comes into it: one is told, or the truck alone
// does not do or is not told.
func (w *ride) trailed() bool {
	return w.haul.Trailer != nil || w.truck != passes
}

// hiresTruck and hiresTrailer tell what of the own does not do.
func (w *ride) hiresTruck() bool {
	return w.haul.Truck != nil && (w.tow >= lacks || w.truck >= lacks && w.haul.Trailer != nil)
}

func (w *ride) hiresTrailer() bool { return w.trailer >= lacks }

// haulLine is the landing line that the plan computes, nil for none.
func (h *holding) haulLine(haul string) *Landing {
	for i := range h.rubric.Landing {
		if l := &h.rubric.Landing[i]; haul != "" && l.Haul == haul && meets(l.When, h.facts) {
			return l
		}
	}
	return nil
}

// heaviest is the piece that decides about lifting; the plan has at least one.
func (w *ride) heaviest() *moved {
	var top *moved
	for i := range w.load {
		if p := &w.load[i]; top == nil || p.weight.span.High > top.weight.span.High {
			top = p
		}
	}
	return top
}

func (w *ride) longest() *moved {
	var top *moved
	for i := range w.load {
		if p := &w.load[i]; top == nil || p.length.span.Likely > top.length.span.Likely {
			top = p
		}
	}
	return top
}

// lifting holds own gear against the heaviest piece.
func (w *ride) lifting() trial {
	p := w.heaviest()
	if p == nil {
		return missed(w.T("No piece of it applies to what was told about it."))
	}
	if w.haul.Lifting == nil {
		return missed(w.F("The heaviest piece, %s, has %s. What may your forklift, crane or hoist lift, at that reach?", lowerFirst(p.Title), w.usual(&p.weight)), "haul.lifting")
	}
	status, source := w.founded(&p.weight)
	return w.span(&p.weight, func(at Quantity) trial {
		text := w.F("The heaviest piece, %s, has %s; your gear may lift %s by its plate.", lowerFirst(p.Title), w.written(at), w.written(*w.haul.Lifting))
		return w.against("lifting", text, figure{sizeIn(w.haul.Lifting, "lb"), sizeIn(&at, "lb"), "lb", status, source})
	})
}

// sentence sums the plan up.
func (w *ride) sentence(p *Home) string {
	n := 0
	for i := range w.load {
		n += w.load[i].Count
	}
	s := w.sum(p, n)
	var hired, unknown []string
	for i := range p.Points {
		switch q := &p.Points[i]; q.Finding {
		case WithWork, DoesNot:
			hired = append(hired, lowerFirst(q.Title))
		case NotKnown:
			unknown = append(unknown, lowerFirst(q.Title))
		}
	}
	if len(hired) > 0 {
		s += " " + w.F("Your own gear does not do: %s.", w.List(hired))
	}
	if len(unknown) > 0 {
		s += " " + w.F("Not known yet: %s.", w.List(unknown))
	}
	if len(hired)+len(unknown) == 0 {
		s += " " + w.T("By what was told your own gear does it all.")
	}
	return s
}

// sum says the weight and in how many pieces it is moved.
func (w *ride) sum(p *Home, pieces int) string {
	weight := w.F("About %s", w.usual(&w.machine.weight))
	if p.Told {
		weight = w.written(*w.machine.weight.told)
	}
	if pieces == 1 {
		return w.F("%s in one piece.", weight)
	}
	if top := w.heaviest(); top != nil {
		return w.F("%s in %s pieces, the heaviest %s.", weight, w.spelled(pieces), w.usual(&top.weight))
	}
	return w.F("%s in %s pieces.", weight, w.spelled(pieces))
}
