package limit

import (
	"math"
	"strings"
	"testing"
)

// MT13 by geometry (0.005 deg in a published answer); MT14 holds it against
// 0.025 mm over 300 mm, from memory. 300 mm is 11.811 in.
func TestTram(t *testing.T) {
	check(t, "tram", 0.001, []row{
		{"MT13", "reading=0.02 mm; sweep=200 mm", 0.03, "mm", Watch, map[string]float64{"angle": 0.0057296}},
		{"MT14", "reading=0.001 in; sweep=10 in", 0.0011811, "in", Watch, map[string]float64{"over 300 mm": 0.030}},
		{"in tram", "reading=0.001 in; sweep=12 in", 0.00098425, "in", Computed, map[string]float64{"over 300 mm": 0.025}},
		{"far out", "reading=0.010 in; sweep=10 in", 0.011811, "in", Beyond, nil},
		// The maker's figure is for the sweep as made.
		{"maker", "reading=0.001 in; sweep=10 in; maker=0.001 in", 0.001, "in", Within, nil},
	})
	refuses(t, "tram", []refusal{
		{"reading=1 in; sweep=6 in", "reading", "no tram error"},
		{"reading=0.001 in; sweep=0 in", "sweep", "more than zero"},
	})
}

// The own arctan and sine against the library's.
func TestAngles(t *testing.T) {
	for x := 0.0; x <= 0.1; x += 0.001 {
		if got, want := arctan(x), math.Atan(x)*180/math.Pi; math.Abs(got-want) > 1e-14 {
			t.Errorf("arctan %v = %v, want %v", x, got, want)
		}
	}
	for deg := 0.0; deg <= 90; deg += 0.5 {
		if got, want := sine(deg), math.Sin(deg*math.Pi/180); math.Abs(got-want) > 1e-14 {
			t.Errorf("sine %v = %v, want %v", deg, got, want)
		}
	}
}

func TestFlyCut(t *testing.T) {
	check(t, "fly-cut", 1e-9, []row{
		{"MT15", "radius=1.5 in; reading=0.002 in; sweep=10 in", 0.0003, "in", Computed, nil},
	})
	refuses(t, "fly-cut", []refusal{{"radius=0 in; reading=0.002 in; sweep=10 in", "radius", "more than zero"}})
}

// MT19: Metrology and Quality Control (textbook), ch. 8.24: 0.03 mm per 100 mm.
func TestDrillRunning(t *testing.T) {
	check(t, "drill-running", 1e-9, []row{
		{"MT19", "runout=0.09 mm; over=100 mm", 0.09, "mm", Beyond, map[string]float64{"times the figure of a new one": 3}},
		{"at it", "runout=0.03 mm; over=100 mm", 0.03, "mm", Within, nil},
		{"shorter", "runout=0.03 mm; over=75 mm", 0.04, "mm", Watch, nil},
		{"inch", "runout=0.003 in; over=10 in", 0.003 * 100 / 254, "in", Within, nil},
		{"maker", "runout=0.03 mm; over=100 mm; maker=0.02 mm", 0.03, "mm", Beyond, nil},
	})
	refuses(t, "drill-running", []refusal{{"runout=0.03 mm", "over", "missing"}})
}

// Section 1.5, from memory: it can only warn. The second correction: knee mills
// are ISO 1701-2, not ISO 1984 (fixed-height tables).
func TestMillGeometry(t *testing.T) {
	check(t, "mill-geometry", 1e-9, []row{
		{"1.5", "check=taper-nose; measured=0.008 mm", 0.008, "mm", Computed, nil},
		{"1.5 over", "check=taper-nose; measured=0.012 mm", 0.012, "mm", Watch, nil},
		{"1.5 worn", "check=square-side; measured=0.03 mm; over=150 mm", 0.06, "mm", Beyond, nil},
		{"maker", "check=table-flat; measured=0.03 mm; maker=0.04 mm", 0.03, "mm", Within, nil},
	})
	for word, mm := range map[string]float64{
		"taper-nose": 0.01, "taper-far": 0.02, "axial": 0.01, "table-flat": 0.04, "table-slot": 0.02, "square-side": 0.025, "square-front": 0.025, "axes-square": 0.02,
	} {
		res, err := Compute("mill-geometry", map[string]string{"check": word, "measured": "0.001 mm"})
		if err != nil {
			t.Fatal(err)
		}
		near(t, word, *res.Limit, mm, 1e-9)
		if res.Status != Memory || !strings.Contains(res.Source, "ISO 1701-2") || strings.Contains(res.Source, "1984") {
			t.Errorf("%s: %s %s", word, res.Status, res.Source)
		}
	}
	refuses(t, "mill-geometry", []refusal{{"check=axial; measured=0.01 mm; over=300 mm", "over", "leave it out"}})
}

// Section 1.7, from memory.
func TestGrinder(t *testing.T) {
	check(t, "block-flatness", 1e-6, []row{
		{"1.7 worked", "corner-1=0.5000 in; corner-2=0.5001 in; corner-3=0.5003 in; corner-4=0.5001 in", 0.0003, "in", Beyond, nil},
		{"1.7 general", "corner-1=0.5 in; corner-2=0.5001 in; corner-3=0.5002 in; corner-4=0.5 in", 0.0002, "in", Watch, nil},
		{"1.7 over", "corner-1=0.5 in; corner-2=0.5001 in; corner-3=0.50021 in; corner-4=0.5 in", 0.00021, "in", Beyond, nil},
		{"1.7 toolroom", "corner-1=0.5 in; corner-2=0.5001 in; corner-3=0.5 in; corner-4=0.5 in", 0.0001, "in", Computed, nil},
		{"indicator", "corner-1=0 in; corner-2=0.0004 in; corner-3=0 in; corner-4=0 in", 0.0004, "in", Beyond, nil},
		{"maker", "corner-1=0.5 in; corner-2=0.5003 in; corner-3=0.5 in; corner-4=0.5 in; maker=0.0003 in", 0.0003, "in", Within, nil},
	})
	check(t, "chuck-top", 1e-9, []row{
		{"1.7 left", "left=0.1 in", 0.1, "in", Computed, nil},
		{"1.7 edge", "left=0.04 in", 0.04, "in", Computed, nil},
		{"1.7 used up", "left=0.039 in", 0.039, "in", Beyond, nil},
		{"maker", "left=2 mm; maker=2.5 mm", 2, "mm", Beyond, nil},
		{"maker passes", "left=0.03 in; maker=0.02 in", 0.03, "in", Within, nil},
	})
	refuses(t, "block-flatness", []refusal{{"corner-1=0.5 in; corner-2=0.5 mm; corner-3=0.5 in; corner-4=0.5 in", "corner-1", "check the units"}})
}
