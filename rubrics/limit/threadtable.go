package limit

import "asfound/rubrics/say"

// standardThread is one row of the thread table. An inch thread has its major
// diameter in inches and threads per inch, a metric one diameter and pitch in mm.
type standardThread struct {
	name     string
	inch     bool
	diameter float64
	pitch    float64 // tpi or mm
	drill    float64 // tap drill, in or mm
	drilled  string  // name of an inch drill
	insert   string  // drill for a wire insert, from memory
}

// majorMM and pitchMM are in mm: 1 in is 25.4 mm exactly.
func (s *standardThread) majorMM() float64 {
	if s.inch {
		return s.diameter * 25.4
	}
	return s.diameter
}

func (s *standardThread) pitchMM() float64 {
	if s.inch {
		return 25.4 / s.pitch
	}
	return s.pitch
}

// threads: UNC and UNF sizes with the tap drills of a published tap-drill chart;
// metric coarse with the drills of ISO 2306, metric fine with diameter less
// pitch. Diameters and pitches agree with the hole table of the FreeCAD sources
// (PartDesign, FeatureHole.cpp, commit 003e239).
var threads = []standardThread{
	{"#10-24 UNC", true, 0.190, 24, 0.1495, "#25", ""},
	{"1/4-20 UNC", true, 0.250, 20, 0.201, "#7", "17/64 in"},
	{"5/16-18 UNC", true, 0.3125, 18, 0.257, "F", "Q, 0.332 in"},
	{"3/8-16 UNC", true, 0.375, 16, 0.3125, "5/16", "X, 0.397 in"},
	{"7/16-14 UNC", true, 0.4375, 14, 0.368, "U", say.Key("29/64 to 15/32 in")},
	{"1/2-13 UNC", true, 0.500, 13, 0.421875, "27/64", "17/32 in"},
	{"9/16-12 UNC", true, 0.5625, 12, 0.484375, "31/64", ""},
	{"5/8-11 UNC", true, 0.625, 11, 0.53125, "17/32", ""},
	{"3/4-10 UNC", true, 0.750, 10, 0.65625, "21/32", ""},
	{"7/8-9 UNC", true, 0.875, 9, 0.765625, "49/64", ""},
	{"1-8 UNC", true, 1.000, 8, 0.875, "7/8", ""},
	{"#10-32 UNF", true, 0.190, 32, 0.159, "#21", ""},
	{"1/4-28 UNF", true, 0.250, 28, 0.213, "#3", ""},
	{"5/16-24 UNF", true, 0.3125, 24, 0.272, "I", ""},
	{"3/8-24 UNF", true, 0.375, 24, 0.332, "Q", ""},
	{"7/16-20 UNF", true, 0.4375, 20, 0.390625, "25/64", ""},
	{"1/2-20 UNF", true, 0.500, 20, 0.453125, "29/64", ""},
	{"9/16-18 UNF", true, 0.5625, 18, 0.515625, "33/64", ""},
	{"5/8-18 UNF", true, 0.625, 18, 0.578125, "37/64", ""},
	{"3/4-16 UNF", true, 0.750, 16, 0.6875, "11/16", ""},
	{"7/8-14 UNF", true, 0.875, 14, 0.8125, "13/16", ""},
	{"1-12 UNF", true, 1.000, 12, 0.921875, "59/64", ""},
	{"M4x0.7", false, 4, 0.7, 3.3, "", ""},
	{"M5x0.8", false, 5, 0.8, 4.2, "", ""},
	{"M6x1.0", false, 6, 1.0, 5.0, "", "6.3 mm"},
	{"M8x1.25", false, 8, 1.25, 6.8, "", "8.4 mm"},
	{"M10x1.5", false, 10, 1.5, 8.5, "", "10.5 mm"},
	{"M11x1.5", false, 11, 1.5, 9.5, "", ""},
	{"M12x1.75", false, 12, 1.75, 10.2, "", "12.5 mm"},
	{"M14x2.0", false, 14, 2.0, 12.0, "", ""},
	{"M16x2.0", false, 16, 2.0, 14.0, "", ""},
	{"M18x2.5", false, 18, 2.5, 15.5, "", ""},
	{"M20x2.5", false, 20, 2.5, 17.5, "", ""},
	{"M22x2.5", false, 22, 2.5, 19.5, "", ""},
	{"M24x3.0", false, 24, 3.0, 21.0, "", ""},
	{"M8x1.0", false, 8, 1.0, 7.0, "", ""},
	{"M10x1.0", false, 10, 1.0, 9.0, "", ""},
	{"M10x1.25", false, 10, 1.25, 8.75, "", ""},
	{"M12x1.25", false, 12, 1.25, 10.75, "", ""},
	{"M12x1.5", false, 12, 1.5, 10.5, "", ""},
	{"M14x1.5", false, 14, 1.5, 12.5, "", ""},
	{"M16x1.5", false, 16, 1.5, 14.5, "", ""},
	{"M18x1.5", false, 18, 1.5, 16.5, "", ""},
	{"M20x1.5", false, 20, 1.5, 18.5, "", ""},
	{"M22x1.5", false, 22, 1.5, 20.5, "", ""},
	{"M24x2.0", false, 24, 2.0, 22.0, "", ""},
}
