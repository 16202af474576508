package appraisal

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"unicode"
)

func liftRubric() *Rubric {
	return &Rubric{ID: "test", Kind: "Two-post lift", Capacity: Capacity{Title: "Rated load", Unit: "lb", Other: []string{"kg", "t"}, Exponent: 0.6}}
}

func imported(t *testing.T, src string, choice ImportChoice) *Import {
	t.Helper()
	got, err := ImportComparables(liftRubric(), []byte(src), choice)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// shownImport shows an import as text: how it was read, the columns, the rows
// with their lines and without their ids, the problems.
func shownImport(im *Import) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%d of %d, %s, comma=%v day=%v %s %s %q\n", im.Read, im.Total, im.Separator, im.DecimalComma, im.DayFirst, im.Basis, im.Unit, im.Currency)
	for _, c := range im.Columns {
		fmt.Fprintf(&b, "%s=%s ", c.Name, c.Field)
	}
	b.WriteString("\n")
	for i, c := range im.Rows {
		c.ID = ""
		text, err := json.Marshal(c)
		if err != nil {
			return err.Error()
		}
		fmt.Fprintf(&b, "%d %s\n", im.Lines[i], strings.Replace(string(text), `"id":"",`, "", 1))
	}
	for _, p := range im.Problems {
		fmt.Fprintf(&b, "%s\n", p)
	}
	return b.String()
}

// All rows are invented.
func TestImport(t *testing.T) {
	yes, no := true, false
	for _, c := range []struct {
		name, src string
		choice    ImportChoice
		want      string
	}{
		{"a list in English", `Title,Asking price,Sold,Sale date,Make,Year,Hrs,Rated load (lbs),Condition,Accessories,Location,Miles,Link,Notes
Lift A,"$2,100",no,2025-11-03,Invented,2014,"1,200 hrs","9,000",Like new,complete,Northtown,45,https://example.com/a,"two
lines"
Lift B,1950.50,yes,2025-10-01,Invented,2012,,10000 lb,"Good, runs well",no tooling,,12.5 mi,,
`, ImportChoice{}, `2 of 2, comma, comma=false day=false asked lb "$"
Title=title Asking price=price Sold=basis Sale date=date Make=maker Year=made Hrs=hours Rated load (lbs)=capacity Condition=condition Accessories=complete Location=place Miles=distance Link=seen Notes=note ` + `
2 {"title":"Lift A","maker":"Invented","price":210000,"basis":"asked","date":"2025-11-03","made":2014,"capacity":{"n":9000,"unit":"lb"},"hours":1200,"condition":"as_new","complete":"complete","place":"Northtown","distance":{"n":45,"unit":"mi"},"seen":"https://example.com/a","note":"two\nlines"}
4 {"title":"Lift B","maker":"Invented","price":195050,"basis":"sold","date":"2025-10-01","made":2012,"capacity":{"n":10000,"unit":"lb"},"condition":"sound","complete":"bare","distance":{"n":12.5,"unit":"mi"}}
`},
		{"a list in German", `Bezeichnung;Preis (EUR);Preisart;Datum;Hersteller;Baujahr;Betriebsstunden;Tragkraft kg;Zustand;Zubehör;Standort;Entfernung km;Quelle;Bemerkung
Bühne A;1.950,00;Zuschlag;03.11.2025;Erfunden;2014;1.200;4.000;neuwertig;vollständig;Nordstadt;45;erfunden;-
Bühne B;2.100,-;VB;1.10.2025;;;850,5 Std.;3,2 t;gebraucht;;;;;Kratzer
`, ImportChoice{}, `2 of 2, semicolon, comma=true day=true asked kg "EUR"
Bezeichnung=title Preis (EUR)=price Preisart=basis Datum=date Hersteller=maker Baujahr=made Betriebsstunden=hours Tragkraft kg=capacity Zustand=condition Zubehör=complete Standort=place Entfernung km=distance Quelle=seen Bemerkung=note ` + `
2 {"title":"Bühne A","maker":"Erfunden","price":195000,"basis":"sold","date":"2025-11-03","made":2014,"capacity":{"n":4000,"unit":"kg"},"hours":1200,"condition":"as_new","complete":"complete","place":"Nordstadt","distance":{"n":45,"unit":"km"},"seen":"erfunden"}
3 {"title":"Bühne B","price":210000,"basis":"asked","date":"2025-10-01","capacity":{"n":3.2,"unit":"t"},"hours":850.5,"condition":"sound","note":"Kratzer"}
`},
		{"a list in Spanish", "Título;Precio;Fecha;Marca;Año;Horas;Capacidad;Estado;Ubicación\nElevador;1.500,50;13/02/2025;Inventada;2015;100;4000 kg;buen estado;Sur\n", ImportChoice{Basis: "sold"}, `1 of 1, semicolon, comma=true day=true sold lb ""
Título=title Precio=price Fecha=date Marca=maker Año=made Horas=hours Capacidad=capacity Estado=condition Ubicación=place ` + `
2 {"title":"Elevador","maker":"Inventada","price":150050,"basis":"sold","date":"2025-02-13","made":2015,"capacity":{"n":4000,"unit":"kg"},"hours":100,"condition":"sound","place":"Sur"}
`},
		{"a list in French", "Désignation;Prix;Année;Heures;Capacité;État;Lieu\nPont;1 500,50 €;2015;1 200 h;4 t;très bon état;Nord\n", ImportChoice{Basis: "asked"}, `1 of 1, semicolon, comma=true day=true asked lb "EUR"
Désignation=title Prix=price Année=made Heures=hours Capacité=capacity État=condition Lieu=place ` + `
2 {"title":"Pont","price":150050,"basis":"asked","made":2015,"capacity":{"n":4,"unit":"t"},"hours":1200,"condition":"as_new","place":"Nord"}
`},
		{"prices that cannot be read", `title,sold price
a,=B2*0.9
b,
c,12 %
d,1.2E+05
e,0
f,(120)
g,1.500
h,0.001
i,"2,000,000,000"
j,€ 950
k,n/a
l,$900
m,$950 USD
`, ImportChoice{}, `2 of 13, comma, comma=false day=false sold lb "USD"
title=title sold price=price ` + `
13 {"title":"l","price":90000,"basis":"sold"}
14 {"title":"m","price":95000,"basis":"sold"}
line 2, sold price: "=B2*0.9" is a formula, not a number: paste values
line 3, sold price: it is empty: write a number
line 4, sold price: "12 %" is a percentage: write the number itself
line 5, sold price: "1.2E+05" is cut short to a power of ten: give the column a plain number format and save it again
line 6, sold price: "0" is no price: write more than 0 and at most 1,000,000,000
line 7, sold price: "(120)" is no price: write more than 0 and at most 1,000,000,000
line 8, sold price: "1.500" could be 1500 or 1.5: write 1500, or other than three decimals
line 9, sold price: "0.001" is no price: write at least a cent
line 10, sold price: "2,000,000,000" is no price: write more than 0 and at most 1,000,000,000
line 11, sold price: "€ 950" is in EUR, the column in USD: convert it
line 12, sold price: "n/a" is not a number: write it like 1234 or 1234.50
`},
		{"other fields that cannot be read", `title,price,basis,date,year,hours,capacity,condition,completeness,distance
a,1,haggled,soon,old,many,5 gal,quite nice,half,far
b,2,sold,2025-02-30,1492,-5,0 lb,not good,no,-3 km
c,3,asked,2199-01-01,"2,014",1500000,heavy,?,unknown,9 lb
d,4,asked,,2014-05-01,$50,9000 lb of steel,,,5
e,5,,=TODAY(),'98,1e3,=A1,,,=A1
`, ImportChoice{}, `5 of 5, comma, comma=false day=false asked lb ""
title=title price=price basis=basis date=date year=made hours=hours capacity=capacity condition=condition completeness=complete distance=distance ` + `
2 {"title":"a","price":100,"basis":"asked"}
3 {"title":"b","price":200,"basis":"sold"}
4 {"title":"c","price":300,"basis":"asked","date":"2199-01-01","made":2014}
5 {"title":"d","price":400,"basis":"asked","made":2014}
6 {"title":"e","price":500,"basis":"asked"}
line 2, basis: "haggled" says neither asked nor sold: taken as asked
line 2, date: "soon" is no date: write it like 2025-12-31
line 2, year: "old" is no year of manufacture: write it like 2014
line 2, hours: "many" is not a number: write it like 1234 or 1234.50
line 2, capacity: "5 gal" does not convert to lb: write it in lb, kg, t
line 2, distance: "far" is not a number: write it like 1234 or 1234.50
line 2, condition: "quite nice" is no condition known here: write as new, sound, worn or needs repair
line 2, completeness: "half" is no completeness known here: write complete, without its accessories or parts missing
line 3, date: there is no day "2025-02-30": write it like 2025-12-31
line 3, year: "1492" is no year of manufacture: write it like 2014
line 3, hours: "-5" is no number of hours run: write 0 to 1,000,000
line 3, capacity: "0 lb" is no size: write more than 0 and at most 1000000000
line 3, distance: "-3 km" is no distance: write 0 to 20,000
line 3, condition: "not good" is no condition known here: write as new, sound, worn or needs repair
line 3, completeness: "no" is no completeness known here: write complete, without its accessories or parts missing
line 4, hours: "1500000" is no number of hours run: write 0 to 1,000,000
line 4, capacity: "heavy" is not a number: write it like 1234 or 1234.50
line 4, distance: "9 lb" is no distance: write it in mi or km
line 5, hours: "$50" is an amount of money: write the number alone
line 5, capacity: "9000 lb of steel" does not convert to lb: write it in lb, kg, t
line 5, distance: the distance has no unit, here, and is not read: write mi or km into the name of the column
line 6, date: "=TODAY()" is a formula, not a date: paste values
line 6, year: "'98" is no year of manufacture: write it like 2014
line 6, hours: "1e3" is no number of hours: write it like 1200
line 6, capacity: "=A1" is a formula, not a number: paste values
line 6, distance: "=A1" is a formula, not a number: paste values
line 6, price: nothing says whether the price was asked or paid, here: taken as asked
`},
		{"dates that can be read in two ways", "title,sold price,date\na,5,03/04/2025\nb,6,05/05/2025\nc,7,1/2/25\n", ImportChoice{}, `3 of 3, comma, comma=false day=false sold lb ""
title=title sold price=price date=date ` + `
2 {"title":"a","price":500,"basis":"sold","date":"2025-03-04"}
3 {"title":"b","price":600,"basis":"sold","date":"2025-05-05"}
4 {"title":"c","price":700,"basis":"sold","date":"2025-01-02"}
line 2, date: "03/04/2025" and 1 more can be read in two ways: taken with the month first, here as 2025-03-04
`},
		{"a date that decides", "title,sold price,date\na,5,03/04/2025\nb,6,13/05/2025\n", ImportChoice{}, `2 of 2, comma, comma=false day=true sold lb ""
title=title sold price=price date=date ` + `
2 {"title":"a","price":500,"basis":"sold","date":"2025-04-03"}
3 {"title":"b","price":600,"basis":"sold","date":"2025-05-13"}
`},
		{"dates in both orders", "title,sold price,date\na,5,03/04/2025\nb,6,13/05/2025\nc,7,05/13/2025\n", ImportChoice{}, `3 of 3, comma, comma=false day=false sold lb ""
title=title sold price=price date=date ` + `
2 {"title":"a","price":500,"basis":"sold","date":"2025-03-04"}
3 {"title":"b","price":600,"basis":"sold","date":"2025-05-13"}
4 {"title":"c","price":700,"basis":"sold","date":"2025-05-13"}
line 2, date: "03/04/2025" can be read in two ways, and the column has dates in both orders: taken with the month first, here as 2025-03-04
`},
		{"the order of dates and the decimal mark as chosen", "title;sold price;date;hours\na;1,234;03/04/2025;1,234\n", ImportChoice{DayFirst: &yes, DecimalComma: &no}, `1 of 1, semicolon, comma=false day=true sold lb ""
title=title sold price=price date=date hours=hours ` + `
2 {"title":"a","price":123400,"basis":"sold","date":"2025-04-03","hours":1234}
`},
		{"a nine that is none", "title;sold price;hours;capacity\na;9,000;9,000;9,000 kg\nb;1,234;1,234;1,234 t\nc;100;100;4000\n", ImportChoice{}, `1 of 3, semicolon, comma=true day=true sold lb ""
title=title sold price=price hours=hours capacity=capacity ` + `
4 {"title":"c","price":10000,"basis":"sold","capacity":{"n":4000,"unit":"lb"},"hours":100}
line 2, sold price: "9,000" could be 9000 or 9: write 9000 or 9
line 3, sold price: "1,234" could be 1234 or 1.234: write 1234, or other than three decimals
`},
		{"thousands that nothing decides", "title;sold price;hours;capacity\nc;100;1,234;4,500 kg\n", ImportChoice{}, `1 of 1, semicolon, comma=true day=true sold lb ""
title=title sold price=price hours=hours capacity=capacity ` + `
2 {"title":"c","price":10000,"basis":"sold"}
line 2, hours: "1,234" could be 1234 or 1.234: write 1234, or other than three decimals
line 2, capacity: "4,500" could be 4500 or 4.5: write 4500, or other than three decimals
`},
		{"units as chosen, with fractions", "title,sold price,capacity\na,1,4\nb,2,1/2 t\nc,3,4.5 kg\nd,4,4 tons\n", ImportChoice{Unit: "tonnes"}, `4 of 4, comma, comma=false day=false sold t ""
title=title sold price=price capacity=capacity ` + `
2 {"title":"a","price":100,"basis":"sold","capacity":{"n":4,"unit":"t"}}
3 {"title":"b","price":200,"basis":"sold","capacity":{"n":0.5,"unit":"t"}}
4 {"title":"c","price":300,"basis":"sold","capacity":{"n":4.5,"unit":"kg"}}
5 {"title":"d","price":400,"basis":"sold","capacity":{"n":4,"unit":"short ton"}}
`},
		{"columns as chosen", "a,b,year\n1,2,x\n", ImportChoice{Basis: "sold", Columns: map[string]string{"price": "b", "title": "a", "made": ""}}, `1 of 1, comma, comma=false day=false sold lb ""
a=title b=price year= ` + `
2 {"title":"1","price":200,"basis":"sold"}
`},
		{"no price", "what,year\nlift,2014\n", ImportChoice{}, `0 of 1, comma, comma=false day=false asked lb ""
what=title year=made ` + `
line 1: no column is taken as the price, so no row is read: choose the one that holds it
`},
		{"no rows", "title,price\n", ImportChoice{}, `0 of 0, comma, comma=false day=false asked lb ""
title=title price=price ` + `
line 1: there are no rows below the names of the columns
`},
		{"problems of the table itself, in their order", "title,price\na,5\nb,6,7\nc\n\"d\" d,8\nd,9\n", ImportChoice{Basis: "asked"}, `3 of 5, comma, comma=false day=false asked lb ""
title=title price=price ` + `
2 {"title":"a","price":500,"basis":"asked"}
5 {"title":"\"d\" d","price":800,"basis":"asked"}
6 {"title":"d","price":900,"basis":"asked"}
line 3: 3 cells where the first line names 2: the row is left out; a text with the separator in it belongs in quotation marks
line 4: 1 cells where the first line names 2: the missing ones are taken as empty
line 4, price: it is empty: write a number
line 5, title: a quotation mark closes in the middle of the cell: write one that belongs to the text twice
`},
		{"texts", "price,maker,title,note\n1,Invented, , \n2,,,\"a\x1b[2Jb\nc\"\n3,,\"" + strings.Repeat("é", 310) + "\",\n", ImportChoice{Basis: "asked"}, `3 of 3, comma, comma=false day=false asked lb ""
price=price maker=maker title=title note=note ` + `
2 {"title":"Invented Two-post lift","maker":"Invented","price":100,"basis":"asked"}
3 {"title":"Two-post lift","price":200,"basis":"asked","note":"a [2Jb\nc"}
5 {"title":"` + strings.Repeat("é", 300) + `","price":300,"basis":"asked"}
line 5, title: 310 characters, at most 300: the rest is cut off
`},
		{"prices whose basis nothing says", "title,price\na,1\nb,2\nc,3\n", ImportChoice{}, `3 of 3, comma, comma=false day=false asked lb ""
title=title price=price ` + `
2 {"title":"a","price":100,"basis":"asked"}
3 {"title":"b","price":200,"basis":"asked"}
4 {"title":"c","price":300,"basis":"asked"}
line 2, price: nothing says whether the price was asked or paid, here and in 2 more rows: taken as asked
`},
	} {
		if got := shownImport(imported(t, c.src, c.choice)); got != c.want {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, got, c.want)
		}
	}
}

func TestImportRefuses(t *testing.T) {
	for _, c := range []struct {
		name, src string
		choice    ImportChoice
		says      string
	}{
		{"nothing", "", ImportChoice{}, "the file is empty: a line that names the columns, then a line a row"},
		{"a spreadsheet", "PK\x03\x04", ImportChoice{}, "this is a spreadsheet, not a table as text: save it as CSV first"},
		{"another encoding", "title,price\n\xfc,1\n", ImportChoice{}, "line 2: byte 0xfc is not UTF-8 text: save it as CSV in UTF-8"},
		{"a basis", "title,price\n", ImportChoice{Basis: "paid"}, `basis: "paid" is not known: asked or sold`},
		{"a unit", "title,price\n", ImportChoice{Unit: "gal"}, `unit: "gal" does not convert to lb: lb, kg, t`},
		{"a field", "title,price\n", ImportChoice{Columns: map[string]string{"colour": "title"}}, `columns.colour: no field is named so: one of title, price, basis`},
		{"no field", "title,price\n", ImportChoice{Columns: map[string]string{"": "title"}}, `columns."": no field is named so`},
		{"a column", "title,price\n", ImportChoice{Columns: map[string]string{"price": "Price"}}, `columns.price: no column is named "Price": one of the names in the first line`},
		{"a column twice", "title,price\n", ImportChoice{Columns: map[string]string{"price": "price", "hours": "price"}}, `columns.price: the column "price" is hours already: choose another column, or none`},
	} {
		got, err := ImportComparables(liftRubric(), []byte(c.src), c.choice)
		var e *Error
		if !errors.As(err, &e) || !strings.HasPrefix(e.Error(), c.says) {
			t.Errorf("%s: %v, %v; want %q", c.name, got, err, c.says)
		}
	}
}

func TestColumnsAreGuessed(t *testing.T) {
	for _, c := range []struct{ name, src, want string }{
		{"a description before the title", "Description,Title,Price\nlong,short,1\n", "Description=note Title=title Price=price"},
		{"asked and sold prices", "Item,Asking price,Sold price\na,2,1\n", "Item=title Asking price= Sold price=price"},
		{"sold as a price", "Item,Sold\na,\"1,200\"\n", "Item=title Sold=price"},
		{"sold as a date", "Item,Price,Sold\na,\"1,200\",2025-03-01\n", "Item=title Price=price Sold=date"},
		{"sold as yes and no", "Item,Price,Sold\na,\"1,200\",yes\n", "Item=title Price=price Sold=basis"},
		{"type as the kind of machine", "Type,Item,Price\ntwo-post,a,1\n", "Type= Item=title Price=price"},
		{"type as the basis", "Type,Item,Price\nsold,a,1\n", "Type=basis Item=title Price=price"},
		{"price type beside price", "Price type,Price\nsold,1\n", "Price type=basis Price=price"},
		{"other prices", "New price,List price,Shipping cost,Buyer's premium fee,Price\n5,4,3,2,1\n", "New price= List price= Shipping cost= Buyer's premium fee= Price=price"},
		{"notes on the price", "Price notes,Asking\nfirm,1200\n", "Price notes=note Asking=price"},
		{"state as a place and as a condition", "State,Price\nOhio,1\n", "State=place Price=price"},
		{"state as a condition", "State,Price\ngood,1\n", "State=condition Price=price"},
		{"weight is no capacity", "Weight (lb),Capacity,Price\n1200,9000,1\n", "Weight (lb)= Capacity=capacity Price=price"},
		{"the rubric's own word", "rated LOAD,Price\n9000,1\n", "rated LOAD=capacity Price=price"},
		{"a model as a title", "Model,Make,Price\nX9,Invented,1\n", "Model=title Make=maker Price=price"},
		{"two years", "Year built,Year sold,Price\n2014,2025,1\n", "Year built=made Year sold= Price=price"},
		{"date built", "Date built,Date,Price\n2014-01-01,2025-03-01,1\n", "Date built=made Date=date Price=price"},
		{"names alike", "Price,Price\n1,2\n", "Price=price Price (2)="},
		{"a price of formulas", "Item,Price\na,=B2\n", "Item=title Price=price"},
	} {
		var got []string
		for _, k := range imported(t, c.src, ImportChoice{}).Columns {
			got = append(got, k.Name+"="+k.Field)
		}
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("%s: %s, want %s", c.name, s, c.want)
		}
	}
}

// The titles of the choices themselves, their ids and the words of the brief are
// all read.
func TestWordsAreKnown(t *testing.T) {
	for _, c := range []struct {
		words   map[string]string
		choices []Choice
	}{{conditionSynonyms, Conditions}, {completeSynonyms, Completeness}} {
		for _, k := range c.choices {
			for _, w := range []string{k.ID, k.Title} {
				if id, ok := known(c.words, w); ok && id != k.ID || !ok && k.Title != "Needs repair" {
					t.Errorf("%q: %q, %v; want %q", w, id, ok, k.ID)
				}
			}
		}
	}
	for w, want := range map[string]string{"Excellent": "as_new", "LIKE NEW": "as_new", "used": "sound", "working - tested": "sound", "Fair": "worn", "parts": "bad", "Needs work": "bad", "Usé": "worn", "reparaturbedürftig": "bad"} {
		if id, _ := known(conditionSynonyms, w); id != want {
			t.Errorf("%q: %q, want %q", w, id, want)
		}
	}
	for w, want := range map[string]string{"asking": "asked", "Listed": "asked", "advertised": "asked", "SOLD": "sold", "paid": "sold", "Hammer": "sold", "auction result": "sold", "auction": ""} {
		if id, _ := known(basisSynonyms, w); id != want {
			t.Errorf("%q: %q, want %q", w, id, want)
		}
	}
}

func TestImportSamplesAndNeverNull(t *testing.T) {
	im := imported(t, "title,price,x\n,1,\nb,2,\nc,3,\nd,4,\ne,5,\n", ImportChoice{Basis: "sold"})
	if got := im.Columns[0].Sample; !slices.Equal(got, []string{"b", "c", "d"}) {
		t.Errorf("sample: %q", got)
	}
	for _, src := range []string{"title,price\n", "x,y\nz,w\n"} {
		text, err := json.Marshal(imported(t, src, ImportChoice{}))
		if err != nil || strings.Contains(string(text), "null") {
			t.Errorf("%v: %s", err, text)
		}
	}
	if c := im.Fields[7]; c.ID != "capacity" || c.Title != "Rated load" || ImportFields[7].Title != "Capacity" {
		t.Errorf("fields: %+v", im.Fields)
	}
}

// The same rows give the same ids whatever the encoding, the order and the
// choices; rows that are alike get ids of their own.
func TestImportIDs(t *testing.T) {
	ids := func(im *Import) (out []string) {
		for _, c := range im.Rows {
			out = append(out, c.ID)
		}
		return out
	}
	plain := imported(t, "title,price\na,1\nb,2\na,1\na,1\n", ImportChoice{Basis: "sold"})
	want := ids(plain)
	if len(want) != 4 || want[2] != want[0]+"-2" || want[3] != want[0]+"-3" || want[0] == want[1] || !strings.HasPrefix(want[0], "csv-") || len(want[0]) != 20 {
		t.Fatalf("ids: %q", want)
	}
	// FNV-1a of "a", 0x1f, "1", reckoned apart from this program.
	if want[0] != "csv-e5eaf019043b8c68" {
		t.Errorf("the first id: %q", want[0])
	}
	var said []string
	for _, p := range plain.Problems {
		said = append(said, p.String())
	}
	if !slices.Equal(said, []string{"line 4: every cell is as on line 2: leave one out if it is the same offer", "line 5: every cell is as on line 2: leave one out if it is the same offer"}) {
		t.Errorf("problems: %q", said)
	}
	other := imported(t, "\ufefftitle;price\r\n\"b\";2\r\na;1\r\n", ImportChoice{Basis: "asked"})
	if got := ids(other); !slices.Equal(got, []string{want[1], want[0]}) {
		t.Errorf("ids: %q, want %q", got, want)
	}
}

func TestCurrencyOf(t *testing.T) {
	for _, c := range []struct {
		name, column string
		prices       []string
		want         string
	}{
		{"none", "Price", []string{"5", "x"}, ""},
		{"the name before the cells", "Price (GBP)", []string{"$5"}, "GBP"},
		{"most", "Price", []string{"€ 5", "$5", "$6"}, "$"},
		{"a sign beside its code", "Price", []string{"$5", "$6", "CAD 7", "€ 5", "€ 6"}, "CAD"},
		{"a sign beside two codes", "Price", []string{"$5", "CAD 7", "USD 5", "6 USD"}, "USD"},
		{"crowns", "Preis", []string{"500 kr"}, "kr"},
	} {
		if got := currencyOf(c.prices, c.column); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// What is imported can be kept: a file that holds it is read back, and judged.
func TestImportedRowsFitAFile(t *testing.T) {
	im := imported(t, "title,sold price,date,year,hours,capacity,condition,complete,distance,note\na,5000,2025-03-01,2014,100,9000 lb,good,bare,5 km,x\nb,4800,2199-01-01,,,4 t,,,,\n", ImportChoice{})
	f := testFile()
	f.Comparables = im.Rows
	if err := f.check(); err != nil {
		t.Fatal(err)
	}
	r, err := testJudge().Of(f, Ask{})
	if err != nil {
		t.Fatal(err)
	}
	if rows := r.Worth.Rows; len(rows) != 2 || !rows[0].Used || rows[1].Used {
		t.Errorf("%+v", rows)
	}
}

func FuzzImport(f *testing.F) {
	for _, s := range []string{
		"Title,Asking price,Sold,Sale date,Make,Year,Hrs,Rated load (lbs),Condition,Accessories,Location,Miles,Link,Notes\nLift A,\"$2,100\",no,2025-11-03,Invented,2014,\"1,200 hrs\",\"9,000\",Like new,complete,Northtown,45,x,\"two\nlines\"\n",
		"Bezeichnung;Preis (EUR);Datum;Baujahr;Tragkraft kg;Entfernung km\nA;1.950,00;03.11.2025;2014;4.000;45\nB;9,000;1/2/25;2.014;3,2 t;x\n",
		"price\n1,5\n=A1\n", "price,price\n1\n1\n1,2,3\n", "price,capacity,distance\n1,1-1/2 t,5' 2\"\n1,9000#,1/2 mi\n",
	} {
		f.Add([]byte(s), "", "", "price", true, true)
	}
	f.Add([]byte("a\tb\n5\t6\n"), "sold", "kg", "b", false, true)
	r := liftRubric()
	base := testFile()
	f.Fuzz(func(t *testing.T, src []byte, basis, unitName, priceColumn string, first, second bool) {
		choice := ImportChoice{Basis: basis, Unit: unitName}
		if priceColumn != "price" {
			choice.Columns = map[string]string{"price": priceColumn}
		}
		if !first {
			choice.DecimalComma, choice.DayFirst = &second, &first
		}
		im, err := ImportComparables(r, src, choice)
		if err != nil {
			var e *Error
			if s := err.Error(); !errors.As(err, &e) || len(s) > 700 || strings.ContainsFunc(s, unicode.IsControl) {
				t.Fatalf("no readable line: %.700q", s)
			}
			return
		}
		lines := 1 + strings.Count(string(src), "\n") + strings.Count(string(src), "\r")
		if strings.HasPrefix(string(src), "\xff\xfe") || strings.HasPrefix(string(src), "\xfe\xff") {
			lines = len(src)
		}
		for _, p := range im.Problems {
			if s := p.String(); p.Line < 1 || p.Line > lines || p.Text == "" || strings.ContainsFunc(p.Text, unicode.IsControl) {
				t.Fatalf("%d lines: %q", lines, s)
			}
		}
		if im.Read != len(im.Rows) || len(im.Lines) != len(im.Rows) || im.Read > im.Total {
			t.Fatalf("%d rows, %d lines, read %d of %d", len(im.Rows), len(im.Lines), im.Read, im.Total)
		}
		fields := map[string]bool{}
		for _, c := range im.Columns {
			if c.Field != "" && fields[c.Field] {
				t.Fatalf("two columns are %s", c.Field)
			}
			fields[c.Field] = true
		}
		for _, c := range im.Rows {
			if c.Price <= 0 || math.IsNaN(c.Hours) {
				t.Fatalf("%+v", c)
			}
		}
		if len(im.Rows) > 20_000 {
			return
		}
		file := *base
		file.Comparables = im.Rows
		if err := file.check(); err != nil {
			t.Fatalf("the rows do not fit a file: %v", err)
		}
		if _, err := json.Marshal(im); err != nil {
			t.Fatal(err)
		}
	})
}

func BenchmarkImport(b *testing.B) {
	var s strings.Builder
	s.WriteString("title,maker,price,date,year,hours,capacity,condition,basis\n")
	for i := range 100_000 {
		fmt.Fprintf(&s, "\"Lift no. %d\",Invented,\"$%d,%03d.50\",%d/%d/2024,20%02d,%d.5,4.5 t,good,sold\n", i, 1+i%9, i%1000, 1+i%12, 1+i%28, i%25, i%900)
	}
	src := []byte(s.String())
	b.SetBytes(int64(len(src)))
	for b.Loop() {
		if im, err := ImportComparables(liftRubric(), src, ImportChoice{}); err != nil || im.Read != 100_000 || len(im.Problems) > 0 {
			b.Fatal(err, im.Problems)
		}
	}
}
