package appraisal

import (
	"strconv"

	"asfound/rubrics/limit"
	"asfound/rubrics/say"
)

// manyPads is the most feet the limit floor-load takes.
const manyPads = 40

// bearing is what the floor carries: stress beneath the pads on concrete, weight
// spread over the footprint on wood.
func (h *holding) bearing() trial {
	floor := h.site.Floor
	switch floor {
	case "":
		return missed(h.T("What is the floor at the spot: concrete, wood or asphalt?"), "site.floor")
	case "asphalt":
		return trial{standing: lacks, text: h.T("Asphalt creeps under a standing load: common practice is a slab or plates beneath the feet, by an engineer's word for a lift.")}
	}
	m := &h.machine
	foot := float64(m.length.span.Likely * m.width.span.Likely)
	pads, area := h.needs.Pads, h.needs.PadArea
	if pads == 0 || area == 0 {
		// Without feet that are known, all of the footprint carries.
		pads, area = manyPads, foot/manyPads
	}
	return h.span(&m.weight, func(at Quantity) trial {
		return h.try("floor-load", map[string]string{
			"weight": quantityText(at), "pads": strconv.Itoa(pads), "pad-area": quantityText(Quantity{round4(area), "in2"}),
			"footprint": quantityText(Quantity{round4(foot / 144), "ft2"}), "floor": floor,
		})
	})
}

// noSlab says that a floor of wood or asphalt is none.
func (h *holding) noSlab(floor string) string {
	if floor == "wood" {
		return h.T("Wood is no slab: an engineer decides what could be poured there.")
	}
	return h.T("Asphalt is no slab: an engineer decides what could be poured there.")
}

// nearly is how much of the usual thickness does not yet rule a slab out (judgement).
const nearly = 0.9

// slab holds the concrete against what the kind usually asks for. A thin one
// lacks; that a lift may be anchored in it only its manual says.
func (h *holding) slab() (FitPoint, standing) {
	const id = "slab"
	title := h.T("Slab")
	need := h.needs.Slab
	usual := h.F("Such a machine usually asks for %s of concrete of %s (common practice).", h.say(need.Thickness, "in"), h.say(need.Strength, "psi"))
	if f := h.site.Floor; f == "wood" || f == "asphalt" {
		// No cost line turns such a floor into one that a lift may be anchored in.
		return settle(id, title, []trial{{standing: never, text: h.noSlab(f) + " " + usual}}, "")
	}
	if h.site.Slab == nil {
		return settle(id, title, []trial{missed(usual+" "+h.T("How thick is yours? A hole drilled where nothing runs tells it."), "site.slab")}, "")
	}
	source := h.T("the kind's usual slab in the rubric: common practice, no source; the maker's manual overrules")
	thick, strength := h.site.Slab, h.site.SlabStrength
	trials := []trial{h.against("slab", h.F("The slab is %s thick; the kind usually asks for %s.", h.written(*thick), h.say(need.Thickness, "in")),
		figure{sizeIn(thick, "in"), need.Thickness, "in", limit.Practice, source})}
	if strength != nil {
		trials = append(trials, h.against("slab", h.F("The concrete has %s; the kind usually asks for %s.", h.written(*strength), h.say(need.Strength, "psi")),
			figure{sizeIn(strength, "psi"), need.Strength, "psi", limit.Practice, source}))
	}
	if h.needs.Arms > 0 && trials[0].standing == passes {
		given := map[string]string{"thickness": quantityText(*thick)}
		if strength != nil {
			given["strength"] = quantityText(*strength)
		}
		trials = append(trials, h.try("slab", given))
	}
	if h.lifts() {
		// Thickness and strength by common practice clear no lift, and rule none out by
		// a little.
		near := sizeIn(thick, "in") >= nearly*need.Thickness
		for i := range trials {
			if trials[i].standing == passes || (i == 0 && near) {
				trials[i].standing = open
			}
		}
		if strength == nil && trials[0].standing == open {
			trials[0].missing = []string{"site.slab_strength"}
		}
		return settle(id, title, trials, h.T("Whether a lift may be anchored in it, the maker's manual says, or an engineer: reinforcement, age, cracks, joints and edges count too."))
	}
	return settle(id, title, trials, h.T("The maker's foundation drawing decides."))
}

// air holds the compressed air there against what the kind usually asks for.
func (h *holding) air() (FitPoint, standing) {
	source := h.T("the kind's usual need in the rubric: common practice, no source; the plate overrules")
	need := h.needs.Air
	one := func(told *Quantity, field, text string, want float64, u string) trial {
		if told == nil {
			return missed(h.F("It usually asks for %s of air (common practice).", h.say(want, u)), field)
		}
		return h.against("air", h.Pattern(text, h.written(*told), h.say(want, u)), figure{sizeIn(told, u), want, u, limit.Practice, source})
	}
	return settle("air", h.T("Compressed air"), []trial{
		one(h.site.AirPressure, "site.air_pressure", say.Key("The air has %s; the kind usually asks for %s."), need.Pressure, "psi"),
		one(h.site.AirFlow, "site.air_flow", say.Key("The compressor gives %s; the kind usually asks for %s."), need.Flow, "cfm"),
	}, "")
}

// arms holds the heavier axle of the vehicle against the rated load of an arm.
func (h *holding) arms() (FitPoint, standing) {
	const id = "arms"
	title := h.T("Vehicle on the arms")
	v := h.site.Vehicle
	if v == nil {
		v = &Vehicle{}
	}
	rated := capacity(h.rubric, h.file.Listing.Capacity)
	fields := missing(map[string]*Quantity{"site.vehicle.weight": v.Weight})
	if rated == 0 {
		fields = append([]string{"listing.capacity"}, fields...)
	}
	if len(fields) > 0 {
		return settle(id, title, []trial{missed(h.T("Each arm carries its part of the rating at most: what does the plate say, and what does the heaviest vehicle weigh?"), fields...)}, "")
	}
	given := map[string]string{"weight": quantityText(*v.Weight), "rated": quantityText(Quantity{rated, h.rubric.Capacity.Unit})}
	name := "arm-load"
	if h.needs.Arms != 4 {
		name, given["arms"] = "axle-load", strconv.Itoa(h.needs.Arms)
	}
	if v.Front > 0 {
		if name == "arm-load" {
			given["rear"] = quantityText(Quantity{float64(10_000-v.Front) / 100, "%"})
		} else {
			given["front-share"] = quantityText(Quantity{float64(v.Front) / 100, "%"})
		}
	}
	t := h.try(name, given)
	if v.Front == 0 && t.standing == passes {
		t.standing, t.missing = open, []string{"site.vehicle.front"}
	}
	return settle(id, title, []trial{t}, h.T("The lift's plate and manual overrule, and never above either."))
}
