package depreciation

import (
	"strconv"
	"strings"
	"testing"
)

// The commercial schedule of the Sacramento County Assessor for 2017 as its copy
// runs it together, column after column, less the first column (computers).
const asCopied = `75 52 31 17 10 10 80 61 44 30 18 11 11 84 68 53 40 28 18 12 11 11 86 73 60 48 37 27 20 13 11 11
88 77 65 55 44 36 27 19 14 12 12 91 82 73 65 57 49 43 33 28 22 17 14 13 13 93 86 78 72 66 59 53 45 40 35 29 25 21 17 14 14
95 89 84 80 74 70 66 59 56 51 47 43 39 35 30 24 21 17 15 15 96 91 86 84 79 76 73 67 63 60 57 53 51 46 41 35 31 26 23 19 18 15 15
96 93 89 87 83 81 80 75 72 70 69 66 66 61 56 52 47 42 38 34 31 27 25 23 20 18 16`

func TestPercentGoodAsPrinted(t *testing.T) {
	// Figures of the schedule by year acquired, lien date January 2017.
	for _, c := range []struct {
		id                   string
		life, acquired, want float64
	}{
		{"M18 10-year life", 10, 2011, 49},
		{"M19 20-year life", 20, 2007, 70},
		{"M20 5-year life, the floor", 5, 2010, 11},
		{"M20 long past the column", 5, 1960, 11},
	} {
		v, err := PercentGood(c.life, 2017-c.acquired)
		if must(t, v, err) != c.want {
			t.Errorf("%s: %v %%, want %v %%", c.id, v, c.want)
		}
	}
	v, err := PercentGood(10, 2017-2011)
	near(t, "M18 of 10,000", 10_000*must(t, v, err)/100, 4900, 1e-12)

	printed := strings.Fields(asCopied)
	for _, c := range schedule {
		for i := range c.percent {
			if len(printed) == 0 {
				t.Fatalf("life %d: more figures than are printed", c.life)
			}
			want, _ := strconv.ParseFloat(printed[0], 64)
			printed = printed[1:]
			v, err := PercentGood(float64(c.life), float64(i+1))
			if must(t, v, err) != want {
				t.Errorf("life %d, age %d: %v %%, printed %v %%", c.life, i+1, v, want)
			}
		}
		last := c.percent[len(c.percent)-1]
		v, err := PercentGood(float64(c.life), 500)
		if must(t, v, err) != last {
			t.Errorf("life %d: %v %% past the column, want its last figure %v %%", c.life, v, last)
		}
	}
	if len(printed) != 0 {
		t.Errorf("printed and not in a column: %v", printed)
	}
}

// The 2020 edition is printed row by row under the lives, so it bears out which
// column is which: its figures for things 1 and 10 years old lie within a point.
func TestPercentGoodColumns(t *testing.T) {
	for _, row := range []struct {
		age     float64
		percent map[int]float64
	}{
		{1, map[int]float64{4: 75, 5: 80, 6: 84, 7: 86, 8: 88, 10: 91, 12: 93, 15: 95, 17: 95, 20: 96}},
		{10, map[int]float64{7: 12, 8: 12, 10: 23, 12: 35, 15: 51, 17: 61, 20: 71}},
	} {
		for life, want := range row.percent {
			v, err := PercentGood(float64(life), row.age)
			if got := must(t, v, err); got < want-1 || got > want+1 {
				t.Errorf("life %d, age %v: %v %%, the 2020 edition has %v %%", life, row.age, got, want)
			}
		}
	}
}

// No column rises with age, none lies under that of a shorter life, and none ends
// below the floor that the cost approach keeps to.
func TestPercentGoodShape(t *testing.T) {
	lives := Lives()
	lowest := 100.0
	for i, life := range lives {
		before := 100.0
		for age := 1.0; age <= 40; age++ {
			v, err := PercentGood(float64(life), age)
			if must(t, v, err) > before {
				t.Errorf("life %d: %v %% at %v years after %v %%", life, v, age, before)
			}
			before = v
			if i > 0 {
				shorter, err := PercentGood(float64(lives[i-1]), age)
				if must(t, shorter, err) > v {
					t.Errorf("at %v years a life of %d has %v %%, one of %d has %v %%", age, lives[i-1], shorter, life, v)
				}
			}
		}
		lowest = min(lowest, before)
	}
	if lowest != 100*PercentGoodFloor {
		t.Errorf("the lowest column ends at %v %%, the floor is %v", lowest, PercentGoodFloor)
	}
}
