package notice

import "asfound/rubrics/say"

// usualVolts are the supply voltages of the trade.
var usualVolts = map[float64]bool{110: true, 115: true, 120: true, 200: true, 208: true, 220: true, 230: true, 240: true, 380: true, 400: true, 415: true, 440: true, 460: true, 480: true, 575: true, 600: true}

// supply proposes voltage and phases.
func (r *reading) supply() {
	for i := 0; i < len(r.tokens); i++ {
		t := &r.tokens[i]
		if t.kind == number && !t.taken && !t.priced {
			if last, ok := r.triple(i); ok {
				i = last
				continue
			}
			if last, ok := r.volts(i); ok {
				i = last
				continue
			}
		}
		r.phasesAt(i)
	}
}

// triple reads 230/1/60 and 460-3-60: volts, phases, hertz.
func (r *reading) triple(i int) (last int, ok bool) {
	if !r.number(i+2) || !r.number(i+4) || !r.is(i+1, "/", "-") || !r.is(i+3, "/", "-") {
		return 0, false
	}
	volts, _, fine := read(r.tokens[i].text)
	if !fine || !usualVolts[volts] || r.tokens[i+4].text != "50" && r.tokens[i+4].text != "60" {
		return 0, false
	}
	phases := r.tokens[i+2].text
	if phases != "1" && phases != "3" {
		return 0, false
	}
	r.propose(i, i, Proposal{Field: "voltage", Quantity: &Measured{volts, "V"}, Sure: Plain, Because: say.Key("volts, phases and hertz stand together")})
	n := float64(phases[0] - '0')
	r.propose(i, i+4, Proposal{Field: "phases", Number: &n, Sure: Plain, Because: say.Key("volts, phases and hertz stand together")})
	return i + 4, true
}

// volts reads 220v, 208-230/460 volts, and 230 before "single phase".
func (r *reading) volts(i int) (last int, ok bool) {
	var all [5]int
	n, k, seen := 0, i, 0 // seen is how many stood before the last unit of voltage
	for n < len(all) && r.number(k) && !r.tokens[k].taken {
		all[n] = k
		n++
		last = k
		if r.is(k+1, "v", "volt", "volts") && r.is(k+2, "/", "-", "or") && r.number(k+3) { // 220V/440V
			seen = n
			k += 3
			continue
		}
		if !r.is(k+1, "/", "-", "or", "to", "–") || !r.number(k+2) {
			break
		}
		k += 2
	}
	u, at, unit := r.unitBehind(last)
	if unit && u.dimension != voltage && seen > 0 { // 220V/1ph
		n, last = seen, all[seen-1]
		u, at, unit = r.unitBehind(last)
	}
	bare := false
	if !unit || u.dimension != voltage {
		if bare = r.phaseFollows(last + 1); !bare {
			return 0, false
		}
		at = last
	}
	proposed := false
	for _, k := range all[:n] {
		v, _, fine := read(r.tokens[k].text)
		switch {
		case !fine || v < 6 || v > 1000 || bare && !usualVolts[v]:
			continue
		case bare && (v == 1 || v == 3):
			continue
		}
		sure, because := Plain, say.Key("it has a unit of voltage")
		switch {
		case bare:
			sure, because = Likely, say.Key("a usual voltage stands before the phases")
		case !usualVolts[v]:
			sure, because = Doubtful, say.Key("it is no usual supply: it may be a control's or a battery's")
		case n > 1:
			sure, because = Likely, say.Key("it is one of several voltages")
		}
		to := at
		if n > 1 {
			to = k
		}
		r.propose(k, to, Proposal{Field: "voltage", Quantity: &Measured{v, "V"}, Sure: sure, Because: because})
		proposed = true
	}
	if !proposed {
		return 0, false
	}
	return last, true
}

// phaseFollows tells whether phases are told from token i on.
func (r *reading) phaseFollows(i int) bool {
	for n := 0; n < 2 && r.is(i, ",", "/", "-", "volt"); n++ {
		i++
	}
	_, _, ok := r.phaseCount(i)
	return ok
}

var phaseNumbers = map[string]float64{"single": 1, "one": 1, "1": 1, "three": 3, "triple": 3, "3": 3, "i": 1}

// phaseAlone are words that tell the phases by themselves.
var phaseAlone = map[string]float64{"singlephase": 1, "threephase": 3, "einphasig": 1, "dreiphasig": 3, "drehstrom": 3, "kraftstrom": 3, "starkstrom": 3, "wechselstrom": 1, "monophase": 1, "triphase": 3, "monofasico": 1, "trifasico": 3, "monofasica": 1, "trifasica": 3}

// phaseCount reads the phases that are told from token i on.
func (r *reading) phaseCount(i int) (n float64, last int, ok bool) {
	if i >= len(r.tokens) {
		return 0, 0, false
	}
	t := &r.tokens[i]
	if t.kind == word && phaseAlone[t.fold] != 0 {
		return phaseAlone[t.fold], i, true
	}
	n = phaseNumbers[t.unitText()]
	if n == 0 || t.taken || t.kind == word && t.fold == "i" {
		return 0, 0, false
	}
	k := i + 1
	if r.is(k, "-", "–", "/") {
		k++
	}
	if k >= len(r.tokens) || r.tokens[k].line != t.line {
		return 0, 0, false
	}
	u, ok := units[r.tokens[k].unitText()]
	if !ok || u.dimension != phase || r.tokens[k].text == "~" && !r.tokens[k].glued {
		return 0, 0, false
	}
	return n, k, true
}

var notWords = set("not", "no", "without", "isn't", "doesn't", "never", "non", "kein", "keine", "don't")

var couldWords = set("converted", "convert", "convertible", "available", "run", "option", "optional", "switch", "rewired", "changed", "change", "easily")

func (r *reading) phasesAt(i int) {
	n, last, ok := r.phaseCount(i)
	if !ok {
		return
	}
	if at, not := r.before(i, 2, notWords); not && !r.is(at+1, "problem", "issues") {
		return
	}
	sure, because := Plain, say.Key("it says 1 phase")
	if n > 1 {
		because = r.ask.Voice.F("it says %d phases", int(n))
	}
	if r.is(last+1, "converter", "convertor", "vfd", "inverter") {
		sure, because = Doubtful, say.Key("a converter is spoken of")
	} else if at, ok := r.before(i, 4, couldWords); ok {
		sure, because = Doubtful, r.ask.Voice.F("\u201c%s\u201d stands before it", r.tokens[at].text)
	}
	r.propose(i, last, Proposal{Field: "phases", Number: &n, Sure: sure, Because: because})
}
