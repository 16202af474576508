package backtest

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"asfound/rubrics/table"
)

func readText(t testing.TB, text string) *table.Table {
	t.Helper()
	tab, err := table.Read([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return tab
}

// lifts are n invented sales: the price falls by 6 % a year of age, rises with
// the 0.6th power of the capacity, and differs by condition.
func lifts(n int, spread float64) string {
	r := rand.New(rand.NewPCG(4, 4))
	var b strings.Builder
	b.WriteString("title;Sale price (EUR);sold on;Age;capacity;condition;Sound\n")
	for i := range n {
		age, capacity, k := 25*r.Float64(), 3+0.5*float64(r.IntN(6)), r.IntN(3)
		price := 3000 * math.Exp(-0.06*age+0.6*math.Log(capacity/4)-0.25*float64(k)+spread*r.NormFloat64())
		fmt.Fprintf(&b, "Lift no. %d;%s;%02d.%02d.2025;%s;%s;%s;%d\n", i, comma(price), 1+i%28, 1+i%12, comma(age), comma(capacity), []string{"good", "worn", "Bad"}[k], i%2)
	}
	return b.String()
}

func comma(x float64) string { return strings.ReplaceAll(fmt.Sprintf("%.2f", x), ".", ",") }

func TestColumnsAreTakenByNameThenByCells(t *testing.T) {
	var b strings.Builder
	b.WriteString("ID,Model Year,Lot Area,Maker,Doors,Weight,Remark,Town,Colour,Same,Empty,Sold,Asking price,Price,Power,Hours,Day,Serial\n")
	for i := range 200 {
		fmt.Fprintf(&b, "%d,%d,%d,M%d,%d,%d,remark %d,town %d,c%d,x,,yes,%d,%d,%s,%d,2024-%02d-%02d,S%d\n", i, 2000+i%20, 100+i, i%30, 2+i%3, 500+7*i, i, i%15, i%4, 1000+i, 900+i, []string{"three", "one"}[i%2], i*3, 1+i%12, 1+i%28, i)
	}
	got, err := roles(readText(t, b.String()), nil)
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]Role{
		"ID": Ignored, "Model Year": Number, "Lot Area": Log, "Maker": Label, "Doors": Label, "Weight": Log, "Remark": Ignored, "Town": Label, "Colour": Label,
		"Same": Ignored, "Empty": Ignored, "Sold": Ignored, "Asking price": Number, "Price": Price, "Power": Label, "Hours": Number, "Day": Number, "Serial": Ignored,
	}
	for _, c := range got {
		if c.Role != want[c.Name] || c.Why == "" {
			t.Errorf("%s is taken as %s (%s), want %s", c.Name, c.Role, c.Why, want[c.Name])
		}
	}
}

func TestColumnsAsAsked(t *testing.T) {
	tab := readText(t, lifts(30, 0.1))
	got, err := roles(tab, map[string]Role{"AGE": Log, "Sound": Ignored, "sold on": Label, "sale price": Price})
	if err == nil || !strings.Contains(err.Error(), `there is no column "sale price": there are title, Sale price (EUR)`) {
		t.Errorf("a name that is not there: %v, %v", got, err)
	}
	got, err = roles(tab, map[string]Role{"AGE": Log, "Sound": Ignored, "sold on": Label, "Sale price (EUR)": Price})
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []Role{Ignored, Price, Label, Log, Log, Label, Ignored} {
		if got[i].Role != want {
			t.Errorf("%s is taken as %s (%s), want %s", got[i].Name, got[i].Role, got[i].Why, want)
		}
	}
	for _, c := range []struct {
		asked map[string]Role
		want  string
	}{
		{map[string]Role{"Age": Price, "Sound": Price}, `"Age" and "Sound" are both taken as the price: give one`},
		{map[string]Role{"Age": Number, "age": Label}, `"Age" is taken as number and as label: give it one of them`},
		{map[string]Role{"title": Number}, `"title" has no number in it, and so cannot be taken as number: take it as a label, or ignore it`},
		{map[string]Role{"Sale price (EUR)": Ignored}, `no column is called price, sale price, sold or amount and holds numbers: say which one is the price; there are title, `},
	} {
		if _, err := roles(tab, c.asked); err == nil || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%v: %v\nwant %s", c.asked, err, c.want)
		}
	}
}

// A table as a spreadsheet of another country saves it, with a known truth: the
// error is that of the spread alone (the median of |N(0, 0.1)| is 0.067).
func TestTableOfAKnownTruth(t *testing.T) {
	r, err := Run(readText(t, lifts(400, 0.1)), Ask{Of: 4, All: true})
	if err != nil {
		t.Fatal(err)
	}
	if r.N != 400 || r.Rows != 400 || r.Currency != "EUR" || len(r.Folds) != 4 || len(r.Problems) != 0 {
		t.Errorf("%+v", r)
	}
	if r.MedianError < 5 || r.MedianError > 9 || r.Coverage80 < 74 || r.Coverage80 > 86 || r.Unadjusted < 1.5*r.MedianError || r.Baseline < 3*r.MedianError {
		t.Errorf("%+v", r.Scores)
	}
	sum := 0
	for i, f := range r.Folds {
		if f.Fold != i || f.Training != 300 {
			t.Errorf("%+v", f)
		}
		sum += f.N
	}
	if sum != r.N {
		t.Errorf("the folds have %d rows, all of them %d", sum, r.N)
	}
	for _, c := range r.Columns {
		if c.Name == "sold on" && (c.Role != Number || c.Unknown != 0) {
			t.Errorf("%+v", c)
		}
	}
}

// A held-out price has no part in its own valuation.
func TestHeldOutPricesAreNotSeen(t *testing.T) {
	tab := readText(t, lifts(60, 0.1))
	before, err := Run(tab, Ask{Fold: 2, Of: 5})
	if err != nil {
		t.Fatal(err)
	}
	for i := range tab.Rows {
		if (i+1)%5 == 2 {
			tab.Rows[i][1] = "1234,00"
		}
	}
	after, err := Run(tab, Ask{Fold: 2, Of: 5})
	if err != nil {
		t.Fatal(err)
	}
	if before.N != 12 || after.N != 12 || before.MedianError == after.MedianError {
		t.Fatalf("%+v\n%+v", before.Scores, after.Scores)
	}
	columns, err := roles(tab, nil)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := read(tab, &Report{Columns: columns})
	if err != nil {
		t.Fatal(err)
	}
	train, held := split(rows, 2, 5)
	one, err := value(columns, train, held, Ask{})
	if err != nil {
		t.Fatal(err)
	}
	for i := range held {
		held[i].price *= 7
	}
	other, err := value(columns, train, held, Ask{})
	if err != nil {
		t.Fatal(err)
	}
	for i := range one.results {
		if one.results[i].found != other.results[i].found || one.results[i].quantiles != other.results[i].quantiles {
			t.Errorf("row %d is valued at %v, and at %v where its price is another", held[i].number, one.results[i].found, other.results[i].found)
		}
	}
}

func TestBadRowsAreNamedAndLeftOut(t *testing.T) {
	tab := readText(t, "price,age,size,maker\n"+
		"1000,5,2,a\n0,5,2,a\n-20,5,2,a\nfree,5,2,b\n1e13,5,2,b\n10000000000000,5,2,b\n€900,5,2,b\n,5,2,b\n0.001,5,2,a\n"+
		"$1100,old,2,a\n$1200,6,-1,b\n$1300,2000000000000,3,\n1400,8,3,b\n1500,,3,a\n1000,7,2,a\n1010,7,2,a\n1020,7,2,a\n1030,7,2,b\n1040,4,2,b\n1050,4,1,b\n1060,3,1,b\n")
	r, err := Run(tab, Ask{Fold: 0, Of: 5})
	if err != nil {
		t.Fatal(err)
	}
	if r.Rows != 21 || r.Usable != 13 || r.Currency != "$" {
		t.Errorf("%d of %d rows, in %q", r.Usable, r.Rows, r.Currency)
	}
	for _, want := range []string{
		"line 3, price: a price of 0 says nothing: write what it brought; the row is left out",
		"line 4, price: a price cannot be -20: write what it brought; the row is left out",
		`line 5, price: "free" is not a number: write it like 1234 or 1234.50; the row is left out`,
		`line 6, price: "1e13" is cut short to a power of ten: give the column a plain number format and save it again; the row is left out`,
		"line 7, price: a price of 10000000000000 cannot be: one lies between 0.01 and 1000000000000; the row is left out",
		"line 8, price: it is in EUR, the others in $: one table has one currency; the row is left out",
		"line 9, price: it is empty: write a number; the row is left out",
		"line 10, price: a price of 0.001 cannot be: one lies between 0.01 and 1000000000000; the row is left out",
		`line 11, age: "old" is not a number: write it like 1234 or 1234.50; it is taken as not known`,
		"line 12, size: -1 has no logarithm: it must be above 0; it is taken as not known",
		"line 13, age: 2000000000000 is too large: at most 1000000000000; it is taken as not known",
	} {
		found := false
		for _, p := range r.Problems {
			found = found || p.String() == want
		}
		if !found {
			t.Errorf("missing: %s\n%v", want, r.Problems)
		}
	}
	if len(r.Problems) != 11 {
		t.Errorf("%d problems: %v", len(r.Problems), r.Problems)
	}
	for i, unknown := range []int{0, 3, 1, 1} {
		if r.Columns[i].Unknown != unknown {
			t.Errorf("%+v, want %d not known", r.Columns[i], unknown)
		}
	}
}

func TestTablesThatCannotBeUsed(t *testing.T) {
	for _, c := range []struct {
		name, text string
		ask        Ask
		want       string
	}{
		{"no price", "age,maker\n1,a\n2,b\n", Ask{Of: 5}, "no column is called price, sale price, sold or amount and holds numbers: say which one is the price; there are age, maker"},
		{"few rows", "price,age\n1,1\n2,2\n3,3\n4,4\n", Ask{Of: 5}, "4 rows have a usable price: a backtest needs 5 or more"},
		{"no rows", "price,age\n", Ask{Of: 5}, "0 rows have a usable price"},
		{"most are bad", "price,age\n0,1\n0,2\n0,3\n1,4\n2,5\n", Ask{Of: 5}, `3 of 5 rows have no usable price in "price", beginning with line 2, price: a price of 0 says nothing: write what it brought; the row is left out: check which column is the price`},
		{"nothing held out", "price,age\n1,1\n2,2\n3,3\n4,4\n5,5\n", Ask{Of: 7, Fold: 6}, "no usable row is held out by 6/7: there are 5"},
		{"not a fold", "price,age\n1,1\n2,2\n3,3\n4,4\n5,5\n", Ask{Of: 1}, "rows 0 of 1 cannot be held out: give M/N with N from 2 to 1000 and M from 0 to N-1"},
		{"fold above", "price,age\n1,1\n2,2\n3,3\n4,4\n5,5\n", Ask{Fold: 5, Of: 5}, "rows 5 of 5 cannot be held out"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if _, err := Run(readText(t, c.text), c.ask); err == nil || !strings.HasPrefix(err.Error(), c.want) {
				t.Errorf("%v\nwant %s", err, c.want)
			}
		})
	}
	// All usable rows may be held out where the others are bad.
	text := "price,age\n"
	for i := range 10 {
		text += fmt.Sprintf("%d,%d\n", (i%2)*100*(i+1), i)
	}
	if _, err := Run(readText(t, text), Ask{Fold: 0, Of: 2}); err == nil || !strings.HasPrefix(err.Error(), "every usable row is held out by 0/2") {
		t.Errorf("%v", err)
	}
}

// Large tables are sampled evenly, and the report says so.
func TestLargeTablesAreSampled(t *testing.T) {
	r, err := Run(readText(t, lifts(20_000, 0.2)), Ask{Of: 1000})
	if err != nil {
		t.Fatal(err)
	}
	if r.N != 20 || r.Folds[0].Training != MaxTraining || len(r.Notes) != 1 || r.Notes[0] != "Fold 0: an even sample of 5000 of 19980 sales was taken to value by." {
		t.Errorf("%d rows by %d sales: %q", r.N, r.Folds[0].Training, r.Notes)
	}
	r, err = Run(readText(t, lifts(4100, 0.2)), Ask{Of: 2, Neighbours: 3})
	if err != nil {
		t.Fatal(err)
	}
	if r.N != MaxHeldOut || len(r.Notes) != 1 || r.Notes[0] != "Fold 0: an even sample of 2000 of 2050 rows held out was valued." {
		t.Errorf("%d rows: %q", r.N, r.Notes)
	}
	rows := make([]row, 23)
	for i := range rows {
		rows[i].number = i
	}
	for i, one := range sample(rows, 7) {
		if want := i * 23 / 7; one.number != want {
			t.Errorf("row %d of the sample is %d, want %d", i, one.number, want)
		}
	}
}

func TestItCanBeStopped(t *testing.T) {
	asked := 0
	_, err := Run(readText(t, lifts(40, 0.2)), Ask{Of: 2, Stop: func() bool { asked++; return asked > 3 }})
	if !errors.Is(err, ErrStopped) || asked != 4 {
		t.Errorf("asked %d times: %v", asked, err)
	}
}

// Whatever a table holds, there is a report of finite figures, or an error.
func TestAnyTableGivesFiguresOrAnError(t *testing.T) {
	cell := rapid.SampledFrom([]string{"", "0", "1", "7", "1000", "-5", "0.01", "1000000000000", "12,5", "a", "b", "2024-03-01", "31/12/2024", "1e9", "€3", "=x"})
	rapid.Check(t, func(t *rapid.T) {
		names := rapid.SliceOfNDistinct(rapid.SampledFrom([]string{"price", "age", "capacity", "maker", "date", "id", "x", "y"}), 1, 6, rapid.ID[string]).Draw(t, "names")
		var b strings.Builder
		b.WriteString(strings.Join(names, "\t") + "\n")
		for range rapid.IntRange(0, 25).Draw(t, "rows") {
			for k := range names {
				if k > 0 {
					b.WriteByte('\t')
				}
				if names[k] == "price" && rapid.IntRange(0, 9).Draw(t, "good") > 0 {
					fmt.Fprint(&b, rapid.SampledFrom([]string{"0.01", "1", "1000", "1000", "1000000000000"}).Draw(t, "price"))
				} else {
					b.WriteString(cell.Draw(t, "cell"))
				}
			}
			b.WriteByte('\n')
		}
		tab, err := table.Read([]byte(b.String()))
		if err != nil {
			return
		}
		r, err := Run(tab, Ask{Of: 3, All: true})
		if err != nil {
			if s := err.Error(); s == "" || strings.Contains(s, "%!") {
				t.Fatalf("%q", s)
			}
			return
		}
		s := r.Scores
		for i, x := range []float64{s.MedianError, s.MeanError, s.Coverage50, s.Coverage80, s.Coverage90, s.IntervalScore, s.PinballLoss, s.Unadjusted, s.Baseline, s.Gain} {
			if math.IsNaN(x) || math.IsInf(x, 0) || x < 0 && i < 9 {
				t.Fatalf("figure %d is %v\n%s", i, x, b.String())
			}
		}
	})
}
