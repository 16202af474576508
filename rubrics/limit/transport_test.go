package limit

import "testing"

// 49 CFR 393.102, 393.106(d), 393.110. Tolerance 0.1 %.
func TestTieDowns(t *testing.T) {
	check(t, "tie-downs", 0.001, []row{
		{"TR01", "weight=4,200 lb; length=8 ft; blocked=no; wll=5,400 lb; count=4", 4, "tie-downs", Within,
			map[string]float64{"working load limits count for": 10800, "working load limits must count for": 2100}},
		{"TR02", "weight=4,200 lb; length=8 ft; blocked=no; wll=2,000 lb; count=2; tie=over", 2, "tie-downs", Within,
			map[string]float64{"working load limits count for": 4000}},
		{"TR03", "weight=4,200 lb; length=8 ft; blocked=no; wll=2,000 lb; count=2", 2000, "lb", Beyond, nil},
		{"sum edge", "weight=4,000 lb; length=8 ft; blocked=no; wll=2,000 lb; count=2", 2, "tie-downs", Within, nil},
		{"TR04", "weight=1,100 lb; length=5 ft; blocked=no", 1, "tie-downs", Computed, nil},
		{"TR05", "weight=1,500 lb; length=4 ft; blocked=no", 2, "tie-downs", Computed, nil},
		{"TR06", "weight=6,000 lb; length=12 ft; blocked=no", 3, "tie-downs", Computed, nil},
		{"TR07", "weight=6,000 lb; length=22 ft; blocked=no", 4, "tie-downs", Computed, nil},
		{"TR08", "weight=6,000 lb; length=12 ft; blocked=yes", 2, "tie-downs", Computed, nil},
		{"ten feet", "weight=6,000 lb; length=120 in; blocked=no", 2, "tie-downs", Computed, nil},
		{"twenty feet, metric", "weight=2700 kg; length=6.096 m; blocked=no", 3, "tie-downs", Computed, nil},
		{"too few", "weight=6,000 lb; length=12 ft; blocked=no; count=2", 2, "tie-downs", Beyond, nil},
		{"TR11 TR12", "weight=4,200 lb; length=8 ft; blocked=no", 2, "tie-downs", Computed,
			map[string]float64{"forward force to hold, 0.8 g": 3360, "rearward and sideways, 0.5 g": 2100, "downward, 20 %": 840}},
	})
	res, err := Compute("tie-downs", given("weight=10,500 lb; length=8 ft; blocked=no").values())
	if err != nil || len(res.Notes) != 1 { // TR10: 49 CFR 393.130, four
		t.Errorf("TR10: %v %v", err, res.Notes)
	}
	refuses(t, "tie-downs", []refusal{
		{"weight=6,000 lb; length=12 ft", "blocked", "one of yes, no"},
		{"weight=6,000 lb; length=12 ft; blocked=maybe", "blocked", "not a choice"},
		{"weight=6,000 lb; length=12 ft; blocked=no; count=0", "count", "more than zero"},
	})
}

// A trailer maker's handbook: 10 to 15 %. TR14 is the statics example
// 250 + 4,200 x 1.5 / 12 = 775 lb. Tolerance 0.1 %.
func TestTongueWeight(t *testing.T) {
	check(t, "tongue-weight", 0.001, []row{
		{"TR13 TR14", "trailer=6,400 lb; tongue=775 lb", 12.109, "%", Computed, map[string]float64{"10 % of the trailer": 640, "15 % of the trailer": 960}},
		{"light", "trailer=6,400 lb; tongue=500 lb", 7.8125, "%", Beyond, nil},
		{"heavy", "trailer=6,400 lb; tongue=1,000 lb", 15.625, "%", Beyond, nil},
		{"edge", "trailer=6,400 lb; tongue=640 lb", 10, "%", Computed, nil},
	})
	refuses(t, "tongue-weight", []refusal{{"trailer=640 lb; tongue=6400 lb", "tongue", "more than the whole trailer"}})
}
