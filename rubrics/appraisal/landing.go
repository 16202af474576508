package appraisal

// milesPerKilometre by the international mile of 1959: 1.609344 km.
const milesPerKilometre = 1 / 1.609344

// landings costs what lies between the handshake and a connected machine.
// What stays in the building is not bought for something that goes to scrap.
func (p *pricing) landings(r *Rubric, scrap bool) []task {
	var tasks []task
	facts := told(r, p.file.Facts)
	for i := range r.Landing {
		ld := &r.Landing[i]
		if !meets(ld.When, facts) {
			continue
		}
		l := p.landingLine(ld)
		if scrap && l.Stays {
			l.Off, l.Cost = true, Range{}
		}
		tasks = append(tasks, finish(l))
	}
	return tasks
}

// landingLine costs one line: by the plan for getting it home where that computes
// it, else by the rubric. The user's own choice comes before both, and before what
// the fit with the shop says.
func (p *pricing) landingLine(ld *Landing) Line {
	l := Line{ID: ld.ID, Kind: "landing", Title: ld.Title, Hours: ld.Hours, Rate: ld.Rate, Stays: ld.Stays, Because: []string{}}
	base, own := ld.Cost, Money(0)
	if c, ok := p.haul[ld.Haul]; ok && p.priced(c.parts) {
		l.Says, own = c.says, c.perDistance
		if !c.keep {
			l.Parts, base = p.use(c.parts)
		}
		if c.rate != "" && l.Rate != "" {
			l.Rate = c.rate
		}
	}
	if l.Rate != "" {
		l.PerHour = p.rate(l.Rate)
	}
	l.Cost = cost(base, ld.Hours, l.PerHour)
	if trip, ok := p.trip(ld, own); ok {
		l.Cost = sum(l.Cost, Range{trip, trip, trip})
	}
	choice, chosen := p.file.Landing[ld.ID]
	if chosen {
		l.Off = choice.Off
		if choice.Cost != nil {
			l.Cost, l.Own, l.Says = *choice.Cost, true, ""
		}
	}
	p.byFit(ld, &l, chosen)
	if l.Off {
		l.Cost = Range{}
	}
	return l
}

// priced tells whether the price book has every part; else the rubric's own
// figure stays.
func (p *pricing) priced(uses []PartUse) bool {
	for _, u := range uses {
		if _, ok := p.parts[u.Part]; !ok {
			return false
		}
	}
	return true
}

// trip is the drive there and back, by the own cost of the distance, in the
// shop's units, or by the rubric's a mile.
func (p *pricing) trip(ld *Landing, own Money) (Money, bool) {
	if ld.PerDistance == 0 && own == 0 {
		return 0, false
	}
	d := p.file.Listing.Distance
	if d == nil {
		p.notes.add("%s: the distance is not entered, so the drive costs nothing yet.", ld.Title)
		return 0, false
	}
	miles := d.N
	if d.Unit == "km" {
		miles *= milesPerKilometre
	}
	per := float64(ld.PerDistance)
	if own > 0 {
		per = float64(own)
		if p.file.Shop.Units == "metric" {
			per /= milesPerKilometre
		}
	}
	return cents(float64(2 * miles * per)), true
}

// byFit lets the fit with the shop count a line or leave it out, and says so.
func (p *pricing) byFit(ld *Landing, l *Line, chosen bool) {
	point := p.points[ld.Fit]
	if ld.Fit == "" || point == nil {
		if ld.Fit != "" && !chosen {
			l.Off = !ld.Assumed
		}
		return
	}
	v, title := p.notes.voice, lowerFirst(point.Title)
	counts := ld.Assumed
	switch point.Finding {
	case Fits:
		counts = false
		l.Says = v.F("Left out: by the fit with your shop the %s needs nothing.", title)
	case WithWork:
		counts = true
		l.Says = v.F("Counts because of the fit with your shop: the %s needs work.", title)
	case DoesNot:
		l.Says = v.F("The %s does not fit your shop, and this cost alone does not cure it: it is left out.", title)
		if ld.Assumed {
			l.Says = v.F("The %s does not fit your shop, and this cost alone does not cure it: it counts.", title)
		}
	default:
		l.Says = v.F("How the %s fits your shop is not known yet: until then it is left out.", title)
		if ld.Assumed {
			l.Says = v.F("How the %s fits your shop is not known yet: until then it counts.", title)
		}
	}
	if !chosen {
		l.Off = !counts
		return
	}
	if l.Off == counts {
		l.Says = v.F("Your own choice. By the fit with your shop (%s) it would be left out.", title)
		if counts {
			l.Says = v.F("Your own choice. By the fit with your shop (%s) it would be counted.", title)
		}
		return
	}
	l.Says = ""
}
