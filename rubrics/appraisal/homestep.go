package appraisal

import "asfound/rubrics/say"

// gear lists what to take along, and whose it is.
func (w *ride) gear() []HomeGear {
	var out []HomeGear
	add := func(title string, count int, own bool, part string) {
		if count > 0 {
			out = append(out, HomeGear{Title: title, Count: count, Own: own, Part: part})
		}
	}
	for _, o := range w.ties.own {
		add(say.Capital(w.Label(o.kind)), o.count, true, "")
	}
	straps, chains := w.ties.straps, w.ties.chains
	add(w.F("%s with binder", say.Capital(w.Label(boughtChain))), chains, false, partChain)
	add(w.F("%s with ratchet", say.Capital(w.Label(boughtStrap))), straps, false, partStrap)
	add(w.T("Edge protector"), 2*straps, false, partProtector)
	skates := 0
	if top := w.heaviest(); top != nil && top.weight.span.Likely >= skatesFrom {
		skates = 1
	}
	add(w.T("Set of machine skates with steering and pry bar"), skates, false, partSkates)
	if w.haul.Lifting != nil && w.lifts == passes {
		add(w.F("Own lifting gear of %s", w.written(*w.haul.Lifting)), 1, true, "")
	} else {
		add(w.T("Rigger or hired forklift, at both ends"), 1, false, partRigger)
	}
	if w.hiresTruck() {
		add(w.T("Hired truck"), 1, false, partTruck)
	}
	if w.hiresTrailer() {
		add(w.T("Hired trailer"), 1, false, partTrailer)
	}
	add(w.T("Hardwood blocks and planks, to set every piece on"), 1, true, "")
	add(w.T("Gloves, boots with steel caps and glasses, for everybody"), 1, true, "")
	return out
}

// steps of the day in order, each a sentence.
func (w *ride) steps() []string {
	s := []string{
		w.T("Before you leave: the maker's manual for lifting points and weights, the plates of truck, trailer and hitch read, and the way measured: doors, ramps, overhead wires, slopes."),
		w.T("At the seller's: the power is taken off by whoever may, locked, and tried; oil, coolant and air are let out; loose parts come off and are boxed and marked."),
	}
	for i := range w.load {
		p := &w.load[i]
		name := p.Title
		if p.Count > 1 {
			name = w.F("%s, %d of them", p.Title, p.Count)
		}
		one := name + " (" + w.shown(p).Size + "): " + p.Handling
		if p.TopHeavy {
			one += " " + w.T("It is top-heavy: nobody stands where it would fall, and it is never left standing unheld.")
		}
		s = append(s, one)
	}
	s = append(s, w.T("Lift a hand's breadth first and look: the hook stands above the weight, nothing bends, nobody is beneath. One person gives the signs."))
	if w.trailed() {
		s = append(s, w.T("Load with the trailer coupled, its wheels chocked and its tongue held. The weight belongs a little ahead of the axle, the heaviest piece first; then weigh the tongue."))
	} else {
		s = append(s, w.T("Load low, against the front of the bed and in its middle."))
	}
	ties := w.T("Block every piece so that it cannot slide or roll, then tie it.")
	switch n := w.ties.total; {
	case n == 1:
		ties = w.F("Block every piece so that it cannot slide or roll, then tie it low and to opposite corners: one tie-down in all, each with a working load limit of at least %s on the heaviest piece.",
			w.say(w.ties.each, "lb"))
	case n > 1:
		ties = w.F("Block every piece so that it cannot slide or roll, then tie it low and to opposite corners: %s tie-downs in all, each with a working load limit of at least %s on the heaviest piece.",
			w.spelled(n), w.say(w.ties.each, "lb"))
	}
	return append(s, ties,
		w.T("Look at hitch, chains, lights, tyres and every tie-down; stop after the first miles and tighten again, and at every stop after that."),
		w.T("At your shop: level ground, wheels chocked, the tie-downs of one piece loosened only when it is held. Unload in the reverse order."))
}

// cautions stand before the plan.
func (w *ride) cautions() []string {
	s := []string{
		w.T("Machines kill people while they are moved. Nobody stands under, beside or downhill of a load that hangs, leans or rolls; when in doubt a rigger does it."),
		w.T("The maker's manual comes first: lifting points, slings and what must be locked or taken off. Figures here are the least of a rule, or common practice."),
	}
	for i := range w.load {
		if w.load[i].TopHeavy {
			s = append(s, w.T("A top-heavy piece tips before it slides. It is lashed low on its castings and steadied high, and never lifted by spindle, levers, screws or guards."))
			break
		}
	}
	if top := w.heaviest(); top != nil && top.weight.span.High >= riggerFrom {
		s = append(s, w.F("From about %s, or with any stairs, hire a rigger (common practice, from memory).", w.say(riggerFrom, "lb")))
	}
	return append(s,
		w.T("The rule of 49 CFR 393 binds commercial vehicles of 10,001 lb and more, and most states copy it; below that it is good practice. State and local law may ask for more."),
		w.T("Every weight not read from a plate is a guess: weigh it at a scale on the way, loaded and empty."))
}

// riggerFrom is the weight from which a rigger is hired, lb: practice from memory.
const riggerFrom = 6000
