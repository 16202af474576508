package appraisal

import (
	"math"
	"strings"
	"testing"
)

func near(t *testing.T, id string, got, want, relative float64) {
	t.Helper()
	if math.Abs(got-want) > relative*math.Abs(want) {
		t.Errorf("%s: got %v, want %v within %g", id, got, want, relative)
	}
}

// A rubric that was not read strictly may lack its life, or a number may be none:
// then the new price counts for nothing, in words, and a comparable is not scaled.
func TestWorthRefusesBrokenRubric(t *testing.T) {
	f := testFile()
	f.NewPrice = &NewPrice{Price: Range{7000_00, 8000_00, 9000_00}, Capacity: &Quantity{20_000, "lb"}}
	f.Listing.Capacity, f.Comparables[0].Capacity = &Quantity{10_000, "lb"}, &Quantity{9000, "lb"}
	for _, c := range []struct {
		breaks     func(*Rubric)
		note, row0 string
		known      bool
	}{
		{func(*Rubric) {}, "", "", true},
		{func(r *Rubric) { r.Life.Likely = 0 }, "(average life: 0 is out of range: more than 0, at most 1000 years)", "", false},
		{func(r *Rubric) { r.Capacity.Exponent = math.NaN() }, "(exponent: not a number: 0 to 2)", "", false},
	} {
		r, say := testRubric(), notes{}
		c.breaks(&r)
		_, known := byCost(&r, f, &Worth{}, &say)
		if said := strings.Join(say.list, " "); known != c.known || !strings.Contains(said, c.note) || (c.note == "") != (said == "") {
			t.Errorf("new price counts: %v, want %v; notes %q, want %q", known, c.known, said, c.note)
		}
		var w Worth
		bySales(voice{}, &r, f, &w)
		if row := w.Rows[0]; row.Note != c.row0 || !row.Used || row.Adjusted <= 0 {
			t.Errorf("comparable: %+v, want the note %q", row, c.row0)
		}
	}
}

// M62, M63: turning formulas (DGI Supply catalogue p. 68); M64: cutting time
// page of a tool maker; M65: the stud derived from them, 90 an hour.
func TestMachining(t *testing.T) {
	n := SpindleSpeed(80, 0.5)
	near(t, "M62", n, 611.155, 1e-5)
	near(t, "M63", CuttingTime(3, n, 0.005), 0.981748, 1e-5)
	near(t, "M64", CuttingTime(100, 1, 20), 5, 1e-12)
	stud := Make{Setup: 20, Load: 2, Finish: 3, Pieces: 1, Cuts: []Cut{{Diameter: .5, Length: 3, Speed: 80, Feed: .005, Passes: 2}}}
	near(t, "M65 lot of 1", MachiningMinutes(stud)/60*90+3, 43.45, 1.2e-4)
	stud.Pieces = 10
	near(t, "M65 lot of 10, a part", MachiningMinutes(stud)/10/60*90+3, 16.45, 3e-4)
}
