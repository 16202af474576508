package limit

import (
	"fmt"

	"pgregory.net/rapid"
)

// likelyMachine draws values that the limits of machineRules accept more often
// than not, where the ranges of their dimensions do not.
func likelyMachine(t *rapid.T, name string, out map[string]string) {
	draw := func(q string, low, high float64, unit string) {
		if _, optional := out[q]; optional {
			out[q] = fmt.Sprintf("%.4f %s", rapid.Float64Range(low, high).Draw(t, q), unit)
		}
	}
	switch name {
	case "lathe-geometry", "mill-geometry":
		draw("measured", 0, 0.1, "mm")
		draw("over", 50, 500, "mm")
	case "two-collar":
		draw("near", 1.5, 1.502, "in")
		draw("far", 1.5, 1.502, "in")
		draw("spacing", 3, 12, "in")
	case "bed-twist":
		draw("twist", 0, 0.01, "in")
	case "tailstock-offset":
		draw("difference", 0, 0.01, "in")
	case "way-wear":
		draw("depth", 0, 0.02, "in")
	case "backlash":
		draw("middle", 0, 0.04, "in")
		draw("end", 0, 0.04, "in")
	case "tram", "fly-cut":
		draw("reading", 0, 0.02, "in")
	case "drill-running":
		draw("runout", 0, 0.2, "mm")
	case "positioning":
		for _, n := range targets {
			draw("up-"+n, -10, 40, "um")
			draw("down-"+n, -10, 40, "um")
		}
		draw("scatter", 0, 3, "um")
	case "circularity":
		draw("largest", 100, 100.06, "mm")
		draw("smallest", 99.99, 100.01, "mm")
	case "drawbar-pull":
		draw("pull", 500, 3000, "lbf")
		draw("book", 500, 3000, "lbf")
	case "block-flatness":
		for _, n := range targets[:4] {
			draw("corner-"+n, 0.5, 0.5004, "in")
		}
	case "chuck-top":
		draw("left", 0, 0.2, "in")
	case "generator":
		draw("kva", 1, 100, "kVA")
	case "drive-size", "rotary-supply", "transformer", "clamp-current":
		for _, q := range []string{"current", "rated", "measured", "plate"} {
			draw(q, 1, 40, "A")
		}
		draw("kva", 1, 40, "kVA")
	case "welder-output":
		draw("dial", 80, 120, "A")
		draw("measured", 80, 120, "A")
	case "leg-balance":
		for _, n := range targets[:3] {
			draw("leg-"+n, 210, 260, "V")
		}
	case "thread-strength", "thread-insert":
		out["diameter"] = "0.5 in"
		draw("minor-pitch", 0.43, 0.46, "in")
	case "thread-engagement":
		draw("area", 0.1, 0.2, "in2")
		draw("nut-minor", 0.42, 0.45, "in")
		draw("bolt-pitch", 0.42, 0.46, "in")
		draw("tpi", 12, 14, "tpi")
	case "pump-up", "air-leak":
		draw("volume", 20, 120, "gal")
		draw("from", 80, 130, "psi")
		draw("to", 80, 130, "psi")
		draw("time", 10, 300, "s")
		draw("rated", 5, 60, "cfm")
		draw("ambient", 12, 15, "psi")
	case "tank-leak":
		draw("drop", 0, 20, "psi")
	case "gauge-error":
		draw("reading", 90, 110, "psi")
		draw("reference", 90, 110, "psi")
	case "receiver-wall":
		draw("pressure", 50, 250, "psi")
		draw("radius", 6, 20, "in")
		draw("stress", 15000, 20000, "psi")
		draw("measured", 0.05, 0.3, "in")
		draw("allowance", 0, 0.1, "in")
	case "sling-leg":
		draw("load", 500, 10000, "lb")
		draw("angle", 20, 90, "deg")
		out["legs"] = fmt.Sprint(rapid.IntRange(1, 4).Draw(t, "legs"))
	case "roller-pull":
		draw("slope", 0, 20, "%")
	case "truck-payload", "trailer-payload":
		draw("rated", 6000, 9000, "lb")
		draw("empty", 3000, 6000, "lb")
		draw("people", 0, 1000, "lb")
		draw("tongue", 0, 1000, "lb")
	case "ceiling":
		draw("height", 100, 170, "in")
		draw("vehicle", 50, 90, "in")
		draw("rise", 40, 80, "in")
	case "door-width", "door-height":
		draw("machine", 20, 90, "in")
		draw("door", 30, 90, "in")
	case "floor-load":
		out["pads"] = fmt.Sprint(rapid.IntRange(2, 12).Draw(t, "pads"))
		draw("pad-area", 4, 100, "in2")
		draw("footprint", 8, 60, "ft2")
	case "axle-load":
		draw("offset", 30, 70, "in")
		draw("wheelbase", 90, 160, "in")
		draw("rated", 7000, 15000, "lb")
		if _, ok := out["arms"]; ok {
			out["arms"] = "4"
		}
	}
}
