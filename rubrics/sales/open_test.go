package sales

import (
	"crypto/sha256"
	"encoding/csv"
	"encoding/hex"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/stat"
)

// open is a table of testdata/open, by the names of its columns.
type open struct {
	columns map[string]int
	rows    [][]string
	sum     string // SHA-256
}

func readOpen(t *testing.T, name string) open {
	t.Helper()
	src, err := os.ReadFile("../../testdata/open/" + name)
	if err != nil {
		t.Fatal(err)
	}
	all, err := csv.NewReader(strings.NewReader(string(src))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	sum := sha256.Sum256(src)
	o := open{columns: map[string]int{}, rows: all[1:], sum: hex.EncodeToString(sum[:])}
	for i, c := range all[0] {
		o.columns[c] = i
	}
	return o
}

func (o open) words(t *testing.T, column string) []string {
	t.Helper()
	k, ok := o.columns[column]
	if !ok {
		t.Fatalf("there is no column %s", column)
	}
	out := make([]string, len(o.rows))
	for i, r := range o.rows {
		out[i] = r[k]
	}
	return out
}

func (o open) numbers(t *testing.T, column string) []float64 {
	t.Helper()
	words := o.words(t, column)
	out := make([]float64, len(words))
	for i, w := range words {
		x, err := strconv.ParseFloat(w, 64)
		if err != nil {
			t.Fatalf("%s, row %d: %v", column, i+1, err)
		}
		out[i] = x
	}
	return out
}

// Source: Kuiper (2008), J. Statistics Education 16(3), as car_prices of the R
// package modeldata 1.1.0; sums, counts and quantiles by R 4.2.2 on that copy.
func TestCarPricesAreTheOpenData(t *testing.T) {
	t.Run("M33", func(t *testing.T) {
		cars := readOpen(t, "car_prices.csv")
		price, mileage := cars.numbers(t, "Price"), cars.numbers(t, "Mileage")
		if len(cars.rows) != 804 || len(cars.columns) != 18 {
			t.Errorf("%d rows of %d columns, want 804 of 18", len(cars.rows), len(cars.columns))
		}
		total, cents := 0.0, int64(0)
		for i := range price {
			total += mileage[i]
			cents += int64(math.Round(100 * price[i]))
		}
		if total != 15_944_875 || cents != 1_715_988_758 {
			t.Errorf("the sums are %v and %d cents, want 15,944,875 and 17,159,887.58", total, cents)
		}
		mean, sd := stat.MeanStdDev(price, nil)
		within(t, "mean price", mean, 21_343.14376, 1e-9)
		within(t, "sd of prices", sd, 9_884.852799, 1e-9)
		sorted := slices.Sorted(slices.Values(price))
		within(t, "median price", (sorted[401]+sorted[402])/2, 18_024.995, 1e-9)
		if sorted[0] != 8_638.93 || math.Round(100*sorted[803]) != 7_075_547 {
			t.Errorf("prices from %v to %v, want 8,638.93 to 70,755.47", sorted[0], sorted[803])
		}
		for name, want := range map[string]float64{
			"Buick": 80, "Cadillac": 80, "Chevy": 320, "Pontiac": 150, "Saab": 114, "Saturn": 60,
			"convertible": 50, "coupe": 140, "hatchback": 60, "sedan": 490, "wagon": 64,
		} {
			n := 0.0
			for _, x := range cars.numbers(t, name) {
				n += x
			}
			if n != want {
				t.Errorf("%v are %s, want %v", n, name, want)
			}
		}
		if cars.sum != "e37e8aa190ab908de570bf9ccaed41bd1c1a12028787af717b6c9aae6fc80491" {
			t.Errorf("the file is not as R 4.2.2 wrote it: %s", cars.sum)
		}
	})
}

// Source: De Cock (2011), J. Statistics Education 19(3), as ames of the same
// package; sums by R 4.2.2.
func TestHouseSalesAreTheOpenData(t *testing.T) {
	houses := readOpen(t, "house_sales.csv")
	price := houses.numbers(t, "Sale_Price")
	if len(houses.rows) != 2930 || len(houses.columns) != 7 {
		t.Errorf("%d rows of %d columns, want 2930 of 7", len(houses.rows), len(houses.columns))
	}
	for name, want := range map[string]float64{"Sale_Price": 529_732_456, "Gr_Liv_Area": 4_394_093, "Year_Built": 5_776_074} {
		sum := 0.0
		for _, x := range houses.numbers(t, name) {
			sum += x
		}
		if sum != want {
			t.Errorf("the sum of %s is %v, want %v", name, sum, want)
		}
	}
	mean, sd := stat.MeanStdDev(price, nil)
	within(t, "mean price", mean, 180_796.06, 1e-7)
	within(t, "sd of prices", sd, 79_886.69, 1e-7)
	counts := map[string]int{}
	for _, w := range houses.words(t, "Overall_Cond") {
		counts[w]++
	}
	for w, want := range map[string]int{"Very_Poor": 7, "Poor": 10, "Fair": 50, "Below_Average": 101, "Average": 1654, "Above_Average": 533, "Good": 390, "Very_Good": 144, "Excellent": 41} {
		if counts[w] != want {
			t.Errorf("%d are %s, want %d", counts[w], w, want)
		}
	}
	if houses.sum != "1ac862759a0cf9c6d7142da2b0b5fe9e5ee5020d19cd5d55f8a2d1e316a87c83" {
		t.Errorf("the file is not as R 4.2.2 wrote it: %s", houses.sum)
	}
}

// within holds a figure to a published one, relative.
func within(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Abs(want)) {
		t.Errorf("%s is %.15g, want %.15g (%g)", what, got, want, tolerance)
	}
}
