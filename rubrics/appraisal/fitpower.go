package appraisal

import (
	"strconv"

	"asfound/rubrics/limit"
	"asfound/rubrics/say"
)

// highVolts is where a shop's usual 200 to 240 V no longer serve a machine.
const highVolts = 380

// lowVolts is the top of what a plain outlet has.
const lowVolts = 130

// motor is the machine's motor as the tables take it. usual tells that the power
// is the kind's, not this one's.
func (h *holding) motor(hp float64, volts float64, phases int) map[string]string {
	power := Quantity{hp, "hp"}
	if q := h.machine.power.told; q != nil {
		power = *q
	}
	return map[string]string{
		"power": quantityText(power), "voltage": quantityText(Quantity{volts, "V"}), "phases": strconv.Itoa(phases),
	}
}

// tabled computes by the motor's power; where it is the kind's usual one, by the
// first of likely, high and low that the tables hold.
func (h *holding) tabled(name string, volts float64, phases int, more map[string]string) trial {
	s := &h.machine.power
	if !s.known() {
		return missed(h.T("The power of its motor is not told."), s.field)
	}
	powers := []float64{s.span.High, s.span.Likely, s.span.Low} // a circuit too small is the costlier mistake
	var t trial
	for i, hp := range powers {
		given := h.motor(hp, volts, phases)
		for k, v := range more {
			given[k] = v
		}
		now := h.try(name, given)
		if i == 0 || now.limit != nil {
			t = now
		}
		if now.limit != nil || s.told != nil {
			break
		}
	}
	if s.told == nil {
		t.note = h.untold(s)
		t.missing = []string{s.field}
	}
	return t
}

// feed is the supply a machine is reckoned with: its own plate's, or the shop's
// where the plate is not told or a transformer stands between.
func (h *holding) feed() (volts float64, phases int) {
	volts, phases = h.machine.volts, h.machine.phases
	shop := sizeIn(h.site.Voltage, "V")
	if volts == 0 || (volts >= highVolts && shop > 0 && shop < highVolts) {
		volts = shop
	}
	if phases == 0 {
		phases = h.site.Phases
	}
	return volts, phases
}

// converted tells whether a three-phase machine meets a single-phase shop.
func (h *holding) converted() bool { return h.machine.phases == 3 && h.site.Phases == 1 }

// circuit holds what the motor asks of a circuit against the panel and against a
// circuit that ends at the spot already.
func (h *holding) circuit() (FitPoint, standing) {
	const id = "circuit"
	title := h.T("Circuit")
	m := &h.machine
	var fields []string
	for _, f := range []struct {
		name  string
		known bool
	}{
		{"listing.power", m.power.told != nil || !m.power.known()}, {"listing.voltage", m.volts > 0}, {"listing.phases", m.phases > 0},
		{"site.voltage", h.site.Voltage != nil}, {"site.phases", h.site.Phases > 0},
	} {
		if !f.known {
			fields = append(fields, f.name)
		}
	}
	volts, phases := h.feed()
	if volts == 0 || phases == 0 {
		return settle(id, title, []trial{missed(h.T("Power, voltage and phases of the machine and of the shop say which circuit it needs."), fields...)}, h.electrician())
	}
	need, least, t := h.draw(volts, phases)
	if need == 0 {
		t.standing, t.missing = open, append(fields, t.missing...)
		return settle(id, title, []trial{t}, h.electrician())
	}
	trials := []trial{t, h.panel(need, least), h.laid(need, t)}
	if shop := sizeIn(h.site.Voltage, "V"); shop > 0 && shop < lowVolts && volts > lowVolts {
		trials = append(trials, missed(h.F("The machine asks for %s and the shop's voltage is told as %s: many such panels give twice that between two legs.", h.written(Quantity{volts, "V"}), h.written(*h.site.Voltage)), "site.voltage"))
	}
	if len(fields) > 0 {
		trials = append(trials, missed("", fields...))
	}
	worst := passes
	for i := range trials {
		if len(fields) > 0 {
			trials[i].standing = min(trials[i].standing, open) // by a usual figure nothing is ruled out
		}
		worst = max(worst, trials[i].standing)
	}
	trials[0].standing = worst // the current stands with every finding
	return settle(id, title, trials, h.electrician())
}

// draw is the current the circuit must carry, A, with its source; 0 where no
// table tells it. least is what it comes to by the more frugal way, a drive in
// place of a rotary converter.
func (h *holding) draw(volts float64, phases int) (need, least float64, t trial) {
	if !h.machine.power.known() {
		need, t = h.byPlate(trial{text: h.T("The current on its plate says which circuit it needs.")})
		return need, need, t
	}
	if h.converted() {
		return h.throughConverter(volts)
	}
	if t = h.tabled("motor-supply", volts, phases, nil); t.limit == nil {
		need, t = h.byPlate(t)
		return need, need, t
	}
	need = t.limit.Value
	if plate := float64(h.machine.amps * 1.25); plate > need {
		need, t = h.byPlate(t)
		return need, need, t
	}
	if run := h.site.Run; run != nil {
		if long := h.tabled("motor-supply", volts, phases, map[string]string{"length": quantityText(*run)}); long.limit != nil {
			if long.limit.Finding == limit.Watch {
				long.text = t.text + " " + long.text
			} else {
				long.text += " " + h.F("Over a run of %s the voltage drop stays within the usual aim.", h.written(*run))
			}
			t = long
		}
	}
	return need, need, t
}

// throughConverter is the draw of a three-phase motor on single-phase power.
func (h *holding) throughConverter(volts float64) (need, least float64, t trial) {
	current := h.tabled("motor-current", volts, 3, nil)
	if current.limit == nil {
		need, t = h.byPlate(current)
		return need, need, t
	}
	amps := quantityText(Quantity{current.limit.Value, "A"})
	if t = h.try("rotary-supply", map[string]string{"current": amps, "kind": "fixed"}); t.limit == nil {
		return 0, 0, t
	}
	t.text, t.note, t.missing = h.F("Through a converter: %s", t.text), current.note, current.missing
	need, least = t.limit.Value, t.limit.Value
	drive := h.try("drive-size", map[string]string{"current": amps})
	if wire := h.figureOf(drive.limit, driveWire); wire > 0 && wire < need {
		least = wire
	}
	return need, least, t
}

// byPlate takes the current on the plate, where the motor tables hold no such
// motor or the plate, of a machine with several motors, says more.
func (h *holding) byPlate(t trial) (float64, trial) {
	amps := h.machine.amps
	if amps == 0 {
		t.missing = append(t.missing, "listing.current")
		return 0, t
	}
	need := float64(amps * 1.25)
	res := limit.Result{
		Name: "plate-current", Value: round4(need), Unit: "A", Finding: limit.Computed, Status: limit.Memory,
		Text:    h.F("By the plate's %s A the wire must carry %s; the figure is from memory and can only warn.", h.written(Quantity{N: amps}), h.written(h.in(need, "A"))),
		Formula: h.T("1.25 x the full-load current on the machine's plate"), Source: h.T("NFPA 70 (NEC) 670.4(A) for a machine with its own plate, from memory"),
	}
	return need, trial{text: res.Text, note: t.note, limit: &res, missing: t.missing}
}

// panel holds the need against the amperes free.
func (h *holding) panel(need, least float64) trial {
	free := h.site.Current
	if free == nil {
		return missed(h.T("How many amperes are free in the panel?"), "site.current")
	}
	text := h.F("The panel has %s free, and %s are to be reckoned with.", h.written(*free), h.written(h.in(need, "A")))
	if have := sizeIn(free, "A"); have < need && have >= least {
		need = least
		text += " " + h.F("A drive would do with %s.", h.written(h.in(least, "A")))
	}
	t := h.against("circuit", text, figure{sizeIn(free, "A"), need, "A", limit.Physics, h.T("your own figure of what is free, and the current above")})
	if t.standing == lacks {
		t.standing = never
		t.text += " " + h.T("A larger supply is a matter for the electrician and the utility.")
	}
	return t
}

// laid holds the need against a circuit that is there already; without one it is
// work to lay it.
func (h *holding) laid(need float64, draw trial) trial {
	there := h.site.Circuit
	if there == nil {
		text := h.T("A circuit is to be laid from the panel to the spot.")
		if h.site.Run == nil {
			text += " " + h.T("The length of the run would tell its voltage drop.")
		}
		return trial{standing: work, text: text}
	}
	text := h.F("A circuit of %s ends at the spot, and it must carry %s.", h.written(*there), h.written(h.in(need, "A")))
	t := h.against("circuit", text, figure{sizeIn(there, "A"), need, "A", limit.Physics, h.T("your own figure of the circuit, and the current above")})
	switch most := h.figureOf(draw.limit, largestBreaker); {
	case t.standing == lacks:
		t.standing = work
	case most > 0 && sizeIn(there, "A") > most:
		t.standing = work
		t.text += " " + h.F("Its breaker is larger than the %s usual for the motor.", h.written(Quantity{most, "A"}))
	}
	return t
}

// How the limits motor-supply, rotary-size and drive-size call figures that are
// read here.
const (
	largestBreaker = "largest usual breaker"
	driveWire      = "wire must carry"
	ratingNeeded   = "rating needed"
)

// figureOf is a further figure of a limit's result, 0 where it has none so called in
// English or in the language spoken.
func (h *holding) figureOf(res *limit.Result, title string) float64 {
	if res != nil {
		for _, f := range res.More {
			if f.Title == title || f.Title == h.Label(title) {
				return f.Value
			}
		}
	}
	return 0
}

// converter is what makes three phases of one.
func (h *holding) converter() (FitPoint, standing) {
	const id = "converter"
	title := h.T("Three-phase supply")
	switch {
	case h.machine.phases == 1:
		return settle(id, title, []trial{{text: h.T("The machine is single-phase: no converter is needed.")}}, h.electrician())
	case h.site.Phases == 3:
		return settle(id, title, []trial{{text: h.T("The shop has three-phase power: no converter is needed.")}}, h.electrician())
	case h.machine.phases == 0 || h.site.Phases == 0:
		var fields []string
		if h.machine.phases == 0 {
			fields = append(fields, "listing.phases")
		}
		if h.site.Phases == 0 {
			fields = append(fields, "site.phases")
		}
		return settle(id, title, []trial{missed(h.T("Only a three-phase machine in a single-phase shop needs a converter."), fields...)}, h.electrician())
	}
	t := trial{text: h.T("A three-phase machine in a single-phase shop needs a drive or a rotary converter.")}
	volts, _ := h.feed()
	if volts == 0 {
		volts = 230
	}
	current := h.tabled("motor-current", volts, 3, nil)
	if current.limit != nil {
		drive := h.try("drive-size", map[string]string{"current": quantityText(Quantity{current.limit.Value, "A"})})
		t.limit, t.note = drive.limit, current.note
		t.text += " " + current.text + " " + drive.text
		if hp := h.rotary(); hp > 0 {
			t.text += " " + h.F("Or a rotary converter of %s or more, for a %s start (from memory).", h.written(Quantity{hp, "hp"}), h.Label(startWords[h.needs.Start]))
		}
	} else {
		t.text += " " + current.text
	}
	t.standing = work
	return settle(id, title, []trial{t}, h.electrician())
}

// startWords are how hard a motor starts.
var startWords = map[string]string{
	"easy": say.Key("easy" + say.Apart + "start"), "normal": say.Key("normal" + say.Apart + "start"), "hard": say.Key("hard" + say.Apart + "start"),
}

// rotary is the least rating of a rotary converter, hp; 0 where it is not told how
// hard the motor starts.
func (h *holding) rotary() float64 {
	if h.needs.Start == "" {
		return 0
	}
	power := h.motor(h.machine.power.span.Likely, 0, 3)["power"]
	t := h.try("rotary-size", map[string]string{"machine": power, "converter": power, "start": h.needs.Start})
	return tenths(h.figureOf(t.limit, ratingNeeded))
}

// transformer steps the shop's voltage up to a machine that takes no other.
func (h *holding) transformer() (FitPoint, standing) {
	const id = "transformer"
	title := h.T("Voltage")
	m, shop := &h.machine, sizeIn(h.site.Voltage, "V")
	if m.volts == 0 || shop == 0 {
		var fields []string
		if m.volts == 0 {
			fields = append(fields, "listing.voltage")
		}
		if shop == 0 {
			fields = append(fields, "site.voltage")
		}
		return settle(id, title, []trial{missed(h.T("The voltages of machine and shop say whether a transformer stands between them."), fields...)}, h.electrician())
	}
	its := h.written(Quantity{m.volts, "V"})
	if (m.volts >= highVolts) == (shop >= highVolts) {
		return settle(id, title, []trial{{text: h.F("The machine asks for %s and the shop has %s: no transformer is needed.", its, h.written(*h.site.Voltage))}}, h.electrician())
	}
	t := trial{text: h.F("The machine asks for %s and the shop has %s: a transformer, unless its plate names both and the motor can be reconnected.", its, h.written(*h.site.Voltage))}
	phases := m.phases
	if phases == 0 {
		phases = 3
	}
	if current := h.tabled("motor-current", m.volts, phases, nil); current.limit != nil && m.volts > shop {
		sized := h.try("transformer", map[string]string{"voltage": quantityText(Quantity{m.volts, "V"}), "current": quantityText(Quantity{current.limit.Value, "A"})})
		t.limit, t.text, t.note = sized.limit, t.text+" "+sized.text, current.note
	}
	t.standing = work
	return settle(id, title, []trial{t}, h.electrician())
}

// usualCode is the usual code letter of a motor by its power, hp: common practice,
// read in an engineers' table.
func usualCode(hp float64) string {
	switch {
	case hp < 1:
		return "L"
	case hp <= 2:
		return "M"
	case hp <= 3:
		return "K"
	case hp <= 5:
		return "J"
	case hp <= 10:
		return "H"
	}
	return "G"
}

// generator must start the motor.
func (h *holding) generator() (FitPoint, standing) {
	const id = "generator"
	title := h.T("Generator")
	volts, phases := h.feed()
	if volts == 0 || phases == 0 || !h.machine.power.known() {
		return settle(id, title, []trial{missed(h.T("Power, voltage and phases of the motor say what its start asks of a generator."), "listing.power", "listing.voltage", "listing.phases")}, h.electrician())
	}
	t := h.span(&h.machine.power, func(at Quantity) trial {
		code := usualCode(sizeIn(&at, "hp"))
		given := map[string]string{
			"power": quantityText(at), "voltage": quantityText(Quantity{volts, "V"}), "phases": strconv.Itoa(phases), "code": code,
			"kva": quantityText(*h.site.Generator),
		}
		t := h.try("generator", given)
		t.text += " " + h.F("Reckoned with code letter %s, usual for the size (common practice); the motor's plate tells its own.", code)
		if t.standing == lacks {
			t.standing = never
		}
		return t
	})
	return settle(id, title, []trial{t}, h.electrician())
}
