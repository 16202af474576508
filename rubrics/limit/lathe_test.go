package limit

import (
	"fmt"
	"strings"
	"testing"
)

// MT01-05: a lathe maker's inspection record, allowed values G1 to G14 in mm.
// A new one fails over N; of a used one up to 2 N is a watch, by bands from memory.
func TestLatheGeometry(t *testing.T) {
	ratio := func(x float64) map[string]float64 { return map[string]float64{"times the figure of a new one": x} }
	check(t, "lathe-geometry", 1e-9, []row{
		{"MT01", "check=nose-runout; measured=0.008 mm", 0.008, "mm", Within, ratio(0.8)},
		{"MT02", "check=nose-runout; measured=0.013 mm", 0.013, "mm", Watch, ratio(1.3)},
		{"MT03", "check=taper-far; measured=0.018 mm; over=300 mm", 0.018, "mm", Within, ratio(0.9)},
		{"MT04", "check=axis-horizontal; measured=0.010 mm; over=150 mm", 0.020, "mm", Watch, ratio(4. / 3)},
		{"MT05", "check=tailstock-height; measured=0.05 mm", 0.05, "mm", Watch, ratio(1.25)},
		// Schlesinger, Testing Machine Tools, second hand: 0.0004 in per 12 in.
		{"MT06", "check=axis-vertical; measured=0.0005 in; over=12 in; class=toolroom", 0.0005, "in", Watch, ratio(1.25)},
		{"MT06 general", "check=axis-vertical; measured=0.0005 in; over=300 mm", 0.0005, "in", Within, ratio(0.635)},
		{"MT06 toolroom passes nothing", "check=axis-vertical; measured=0.0003 in; over=12 in; class=toolroom", 0.0003, "in", Computed, nil},
		{"section 1.1, worked", "check=taper-far; measured=0.05 mm; over=300 mm", 0.05, "mm", Beyond, ratio(2.5)},
		{"exactly N", "check=nose-runout; measured=0.01 mm", 0.01, "mm", Within, ratio(1)},
		{"exactly 2 N", "check=nose-runout; measured=0.02 mm", 0.02, "mm", Watch, ratio(2)},
		{"a hair over 2 N", "check=nose-runout; measured=0.020001 mm", 0.020001, "mm", Beyond, nil},
		{"maker passes", "check=nose-runout; measured=0.013 mm; maker=0.015 mm", 0.013, "mm", Within, nil},
		{"maker stricter", "check=nose-runout; measured=0.008 mm; maker=0.005 mm", 0.008, "mm", Beyond, nil},
		{"zero", "check=bed-straight; measured=0 mm", 0, "mm", Within, nil},
	})
	for id, want := range map[given]string{
		"check=nose-runout; measured=0.013 mm":                  "more than the 0.01 mm allowed of a new one, 1.3 times: usable.",
		"check=taper-far; measured=0.05 mm":                     "2.5 times: worn.",
		"check=taper-far; measured=0.09 mm":                     "4.5 times: poor.",
		"check=nose-runout; measured=0.0003 in":                 "0.0003 in, not more than the 0.00039 in allowed",
		"check=nose-runout; measured=0.013 mm; maker=0.0006 in": "not more than the maker's 0.0152 mm",
	} {
		if res, err := Compute("lathe-geometry", id.values()); err != nil || !strings.Contains(res.Text, want) {
			t.Errorf("%s: %v %q, want %q", id, err, res.Text, want)
		}
	}
	for id, want := range map[given]string{
		"check=axis-vertical; measured=0.01 mm":                "only lean toward the tool",
		"check=axis-vertical; measured=0.01 mm; over=100 mm":   "Scaled up from a short length",
		"check=cross-slide; measured=0.01 mm":                  "hollow",
		"check=tailstock-height; measured=0.01 mm":             "only be high",
		"check=axis-vertical; measured=0.01 mm; over=149.9 mm": "Scaled up",
	} {
		if res, err := Compute("lathe-geometry", id.values()); err != nil || !strings.Contains(strings.Join(res.Notes, " "), want) {
			t.Errorf("%s: %v %q, want %q", id, err, res.Notes, want)
		}
	}
	refuses(t, "lathe-geometry", []refusal{
		{"check=nose-runout; measured=0.01 mm; over=100 mm", "over", "leave it out"},
		{"check=nose-runout; measured=0.01 mm; class=toolroom", "class", "axis-vertical and axis-horizontal"},
		{"check=nose-runout; measured=-0.01 mm", "measured", "cannot be -0.01 mm"},
		{"check=nose-runout; measured=13 in", "measured", "check the number and its unit"},
		{"check=nose-runout; measured=0.01", "measured", "unit is missing"},
		{"check=nose-runout", "measured", "missing"},
		{"check=nose; measured=0.01 mm", "check", "one of bed-straight"},
		{"check=axis-vertical; measured=0.01 mm; over=0 mm", "over", "more than zero"},
	})
}

// Every check of the record, its figure typed again from the record.
func TestLatheRecord(t *testing.T) {
	for word, mm := range map[string]float64{
		"bed-straight": 0.04, "bed-level": 0.04, "spindle-axial": 0.015, "nose-runout": 0.01, "taper-nose": 0.01, "taper-far": 0.02,
		"axis-vertical": 0.02, "axis-horizontal": 0.015, "centre-runout": 0.015, "tailstock-height": 0.04, "top-slide": 0.015, "cross-slide": 0.02, "leadscrew": 0.1,
	} {
		res, err := Compute("lathe-geometry", map[string]string{"check": word, "measured": "0.001 mm"})
		if err != nil {
			t.Fatal(err)
		}
		near(t, word, *res.Limit, mm, 1e-9)
	}
}

// MT07 by geometry: (far - near) / 2 x 12 / spacing.
func TestTwoCollar(t *testing.T) {
	check(t, "two-collar", 1e-6, []row{
		{"MT07", "near=1.5004 in; far=1.5012 in; spacing=6 in", 0.0008, "in", Computed, map[string]float64{"difference on diameter": 0.0008, "over 300 mm": 0.02}},
		{"MT07 over", "near=1.5004 in; far=1.5013 in; spacing=6 in", 0.0009, "in", Watch, nil},
		{"MT07 twice", "near=1.5004 in; far=1.5022 in; spacing=6 in", 0.0018, "in", Beyond, nil},
		{"other way", "near=1.5012 in; far=1.5004 in; spacing=6 in", 0.0008, "in", Computed, nil},
		{"alike", "near=40 mm; far=40 mm; spacing=150 mm", 0, "mm", Computed, nil},
		{"maker", "near=1.5004 in; far=1.5012 in; spacing=6 in; maker=0.0005 in", 0.0008, "in", Beyond, nil},
		{"maker passes", "near=1.5004 in; far=1.5012 in; spacing=6 in; maker=0.001 in", 0.0008, "in", Within, nil},
	})
	for id, want := range map[given]string{
		"near=1.5004 in; far=1.5012 in; spacing=6 in": "away from the tool",
		"near=1.5012 in; far=1.5004 in; spacing=6 in": "toward the tool",
	} {
		if res, err := Compute("two-collar", id.values()); err != nil || !strings.Contains(strings.Join(res.Notes, " "), want) {
			t.Errorf("%s: %v %q", id, err, res.Notes)
		}
	}
	refuses(t, "two-collar", []refusal{
		{"near=1.5 in; far=2 in; spacing=6 in", "far", "one setting"},
		{"near=1.5 in; far=1.5 mm; spacing=6 in", "far", "one setting"},
		{"near=1.5 in; far=1.5 in; spacing=0 in", "spacing", "more than zero"},
	})
}

// MT08 by geometry, and set-over of section 1.2.
func TestBedTwistAndOffset(t *testing.T) {
	check(t, "bed-twist", 1e-9, []row{
		{"MT08", "twist=0.002 in; width=8 in; centre=6.5 in", 0.001625, "in", Computed, map[string]float64{"on diameter": 0.00325}},
		{"MT08 metric", "twist=0.0508 mm; width=203.2 mm; centre=165.1 mm", 0.041275, "mm", Computed, nil},
	})
	check(t, "tailstock-offset", 1e-9, []row{{"1.2", "difference=0.003 in", 0.0015, "in", Computed, nil}})
	refuses(t, "bed-twist", []refusal{{"twist=2 in; width=8 in; centre=6 in", "twist", "between"}, {"twist=0.002 in; width=8 psi; centre=6 in", "width", "pressure"}})
	refuses(t, "tailstock-offset", []refusal{{"difference=-0.003 in", "difference", "cannot be"}})
}

// MT09, MT10 by geometry to the digits printed; the bands of depth from memory.
func TestWayWear(t *testing.T) {
	check(t, "way-wear", 0.001, []row{
		{"MT09", "depth=0.010 in; radius=0.5 in; plane=vertical", 0.00019998, "in", Watch, nil},
		{"MT10", "depth=0.020 in; radius=0.25 in; plane=vertical", 0.0015975, "in", Beyond, nil},
		{"1.3 horizontal", "depth=0.002 in; radius=0.5 in; plane=horizontal", 0.004, "in", Computed, nil},
		{"at the band", "depth=0.005 in; radius=0.5 in; plane=horizontal", 0.010, "in", Computed, nil},
		{"no wear", "depth=0 in; radius=0.5 in; plane=vertical", 0, "in", Computed, nil},
		{"maker", "depth=0.004 in; radius=0.5 in; plane=horizontal; maker=0.003 in", 0.008, "in", Beyond, nil},
		{"maker passes", "depth=0.004 in; radius=0.5 in; plane=horizontal; maker=0.1 mm", 0.008, "in", Beyond, nil},
		{"maker does", "depth=0.004 in; radius=0.5 in; plane=horizontal; maker=0.11 mm", 0.008, "in", Within, nil},
	})
	refuses(t, "way-wear", []refusal{
		{"depth=0.01 in; radius=0.5 in; plane=slanted", "plane", "vertical, horizontal"},
		{"depth=0.01 in; radius=0.5 in", "plane", "missing"},
	})
}

// MT11, MT12: bands from memory; 0.005 in is in a mill maker's manual.
func TestBacklash(t *testing.T) {
	check(t, "backlash", 1e-6, []row{
		{"MT11", "machine=mill; middle=0.012 in", 0.012, "in", Watch, nil},
		{"MT11 good", "machine=mill; middle=0.005 in", 0.005, "in", Computed, nil},
		{"MT11 good edge", "machine=mill; middle=0.008 in", 0.008, "in", Computed, nil},
		{"MT11 fair", "machine=mill; middle=0.0081 in", 0.0081, "in", Watch, nil},
		{"MT11 edge", "machine=mill; middle=0.015 in", 0.015, "in", Watch, nil},
		{"MT11 worn", "machine=mill; middle=0.0151 in", 0.0151, "in", Beyond, nil},
		{"MT12", "machine=mill; middle=0.022 in; end=0.009 in", 0.022, "in", Beyond, map[string]float64{"middle less end": 0.013}},
		{"MT12 good but local", "machine=mill; middle=0.007 in; end=0.002 in", 0.005, "in", Watch, nil},
		{"MT12 edge", "machine=mill; middle=0.007 in; end=0.004 in", 0.007, "in", Computed, nil},
		{"MT12 just over", "machine=mill; middle=0.007 in; end=0.0039 in", 0.0031, "in", Watch, nil},
		{"lathe", "machine=lathe-cross; middle=0.019 in", 0.019, "in", Watch, nil},
		{"ball screw", "machine=cnc; middle=10 um", 10, "um", Computed, nil},
		{"ball screw edge", "machine=cnc; middle=0.0004 in", 0.0004, "in", Computed, nil},
		{"ball screw just over", "machine=cnc; middle=0.00041 in", 0.00041, "in", Watch, nil},
		{"ball screw fair", "machine=cnc; middle=20 um", 20, "um", Watch, nil},
		{"ball screw worn", "machine=cnc; middle=0.0011 in", 0.0011, "in", Beyond, nil},
		{"maker", "machine=mill; middle=0.012 in; maker=0.015 in", 0.012, "in", Within, nil},
		{"maker, screw worn", "machine=mill; middle=0.012 in; end=0.004 in; maker=0.015 in", 0.008, "in", Watch, nil},
	})
	res, err := Compute("backlash", given("machine=mill; middle=0.022 in; end=0.009 in").values())
	if err != nil || !strings.Contains(strings.Join(res.Notes, " "), "a new nut will not cure it") {
		t.Errorf("MT12: %v %q", err, res.Notes)
	}
	refuses(t, "backlash", []refusal{{"machine=mill; middle=12 in", "middle", "between"}, {"machine=saw; middle=0.01 in", "machine", "mill, lathe-cross, cnc"}})
}

// Exactly N and exactly 2 N, scaled over any length, must not be decided by the
// rounding of floats: axis-vertical is 0.02 mm over 300 mm.
func TestLatheEdge(t *testing.T) {
	for k := 1; k <= 60; k++ {
		g := map[string]string{"check": "axis-vertical", "over": fmt.Sprintf("%d mm", 30*k)}
		for of, want := range map[string]Finding{
			fmt.Sprintf("%de-3 mm", 2*k): Within, fmt.Sprintf("%de-9 mm", 2000000*k+1): Watch,
			fmt.Sprintf("%de-3 mm", 4*k): Watch, fmt.Sprintf("%de-9 mm", 4000000*k+1): Beyond,
		} {
			g["measured"] = of
			if res, err := Compute("lathe-geometry", g); err != nil || res.Finding != want {
				t.Errorf("%v: %v %s, want %s", g, err, res.Finding, want)
			}
		}
	}
}
