package limit

// Subject is a field of work under which a shop looks for a limit. Limits are the
// names of its limits, in the order they are used in.
type Subject struct {
	ID     string   `json:"id"`
	Title  string   `json:"title" say:"yes"`
	Limits []string `json:"limits"`
}

var subjects = []Subject{
	{"ropes", "Ropes and chains", []string{
		"rope-diameter", "rope-baseline", "rope-wires", "rope-share", "rope-iso", "rope-load",
		"leaf-chain", "roller-chain", "hoist-chain", "link-size"}},
	{"lifts", "Vehicle lifts", []string{
		"lift-time", "descent-speed", "leak-down", "reservoir-level", "arm-load", "axle-load",
		"rating-plate", "lift-standard", "inspection-interval"}},
	{"presses", "Presses and hydraulics", []string{
		"press-force", "cylinder-force", "press-relief", "press-set", "press-rule", "press-distance",
		"jack-pressure", "pump-power", "pump-displacement"}},
	{"guards", "Grinders and guards", []string{
		"grinder-gap", "wheel-speed", "wheel-exposure", "guard-opening", "belt-guard", "fan-guard"}},
	{"machine-tools", "Machine tools", []string{
		"lathe-geometry", "two-collar", "bed-twist", "way-wear", "tailstock-offset", "backlash",
		"mill-geometry", "tram", "fly-cut", "drill-running", "block-flatness", "chuck-top",
		"positioning", "circularity", "drawbar-pull"}},
	{"threads", "Threads", []string{"thread", "thread-insert", "thread-strength", "thread-engagement"}},
	{"electrics", "Electrics", []string{
		"motor-current", "motor-supply", "clamp-current", "motor-start", "generator", "leg-balance",
		"drive-size", "rotary-size", "rotary-supply", "transformer", "welder-output"}},
	{"air", "Compressed air", []string{
		"pump-up", "air-leak", "tank-leak", "leak-share", "gauge-error", "receiver-pressure",
		"receiver-wall", "receiver-valve", "relief-setting"}},
	{"road", "On the road", []string{
		"tie-downs", "tie-down-rating", "trailer-payload", "tongue-weight", "truck-payload", "sling-leg",
		"roller-pull"}},
	{"floor", "Shop floor", []string{
		"slab", "anchor-embedment", "anchor-breakout", "anchor-group", "floor-load", "ceiling",
		"door-width", "door-height"}},
	{"hazards", "Hazards", []string{"signal-word", "risk-cell"}},
}

// called are the words of the shop for limits whose titles say it otherwise.
var called = map[string][]string{
	"rope-diameter":     {"cable"},
	"rope-baseline":     {"cable"},
	"rope-wires":        {"cable", "frayed"},
	"rope-share":        {"cable"},
	"rope-iso":          {"cable"},
	"rope-load":         {"cable"},
	"leak-down":         {"drift", "sinks", "oil leak"},
	"lift-time":         {"slow", "pump wear"},
	"press-force":       {"tonnage", "tons"},
	"cylinder-force":    {"ram", "tonnage"},
	"thread":            {"tap drill", "bolt", "nut", "screw", "pitch"},
	"thread-insert":     {"helical insert", "stripped"},
	"thread-engagement": {"depth"},
	"motor-supply":      {"wire size", "voltage drop", "circuit"},
	"motor-current":     {"amps"},
	"motor-start":       {"inrush", "locked rotor"},
	"drive-size":        {"inverter", "single phase to three"},
	"rotary-size":       {"phase converter"},
	"rotary-supply":     {"phase converter", "wire size"},
	"pump-up":           {"compressor", "cfm", "delivery"},
	"receiver-wall":     {"tank", "thickness"},
	"receiver-pressure": {"tank", "safety valve"},
	"tank-leak":         {"leak-down"},
	"tie-downs":         {"straps", "chains", "binders"},
	"sling-leg":         {"rigging", "angle"},
	"roller-pull":       {"dolly"},
	"slab":              {"concrete", "floor"},
	"anchor-embedment":  {"anchor bolt"},
	"anchor-breakout":   {"anchor bolt"},
	"anchor-group":      {"anchor bolt"},
	"wheel-speed":       {"rpm", "surface speed"},
	"tram":              {"square"},
	"backlash":          {"play", "slop"},
}

// Subjects gives the subjects in their order.
func Subjects() []Subject {
	out := append([]Subject(nil), subjects...)
	for i := range out {
		out[i].Limits = append([]string(nil), out[i].Limits...)
	}
	return out
}

// subjectOf gives the id of the subject that the limit stands under.
func subjectOf(name string) string {
	for i := range subjects {
		for _, n := range subjects[i].Limits {
			if n == name {
				return subjects[i].ID
			}
		}
	}
	return ""
}
