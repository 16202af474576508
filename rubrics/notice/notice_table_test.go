package notice

import "testing"

// Listings are invented; ~ stands behind what is likely, ? behind what is doubtful.
var inchListings = []struct{ name, text, want string }{
	{"price and what it was", "2 post lift, asking 2,400 obo, was 3,000", "rubric=two-post-lift asking=2400|3000?"},
	{"k as thousands", "Two-post lift 9k lb, $1.8k firm", "rubric=two-post-lift asking=1800 capacity=9000 lb"},
	{"k twice", "10k 2 post lift for 2.4k obo", "rubric=two-post-lift asking=2400 capacity=10000 lb~"},
	{"reduced", "4 post lift. Reduced from $3,200 to $2,900.", "rubric=four-post-lift asking=2900|3200?"},
	{"price of a new one", "Shop press 20 ton $300. New ones are $800", "rubric=h-frame-press asking=300|800? capacity=20 short ton"},
	{"paid", "two post lift. Paid 4,100, want 2,000 for it", "rubric=two-post-lift asking=2000|4100?"},
	{"delivery is no price", "2 post lift $1,900. Delivery $150, or $3 a mile.", "rubric=two-post-lift asking=1900"},
	{"deposit", "Lathe $2500, $200 deposit holds it", "rubric=engine-lathe~ asking=2500"},
	{"a range", "Asking $2000-2500 for the two post lift", "rubric=two-post-lift asking=2000~|2500~"},
	{"two prices", "two post lift $1500 each, $2800 for both", "rubric=two-post-lift asking=1500~|2800~"},
	{"price behind", "Two post lift\n2400 dollars", "rubric=two-post-lift asking=2400"},
	{"placeholder", "two post lift $1, call for price", "rubric=two-post-lift asking=1?"},
	{"firm after", "two post lift 1850 firm", "rubric=two-post-lift asking=1850"},
	{"spaced", "two post lift, price: 2 400", "rubric=two-post-lift asking=2400"},
	{"cents", "two post lift $2,399.99", "rubric=two-post-lift asking=2399.99"},
	{"other money", "two post lift, 2.400 €", "rubric=two-post-lift asking=2400 EUR"},
	{"dollars of another country", "two post lift C$ 3,100", "rubric=two-post-lift asking=3100 CAD"},
	{"price like a year", "two post lift, asking 2000", "rubric=two-post-lift asking=2000"},
	{"parts included", "Two post lift $2,400, parts included", "rubric=two-post-lift asking=2400"},

	{"phone, dashes", "2 post lift. Call 555-123-4567 or text 555-0142", "rubric=two-post-lift"},
	{"phone, one piece", "2 post lift, 5551234567", "rubric=two-post-lift"},
	{"phone, points and brackets", "two post lift 555.123.4567, (555) 123-4567, +1 555 123 4567", "rubric=two-post-lift"},
	{"phone of another country", "two post lift, Tel. 0170 1234567, +49 170 1234567", "rubric=two-post-lift"},
	{"postal code", "two post lift in Dayton, OH 45402-1234, asking 1,750", "rubric=two-post-lift asking=1750 place=Dayton, OH~"},
	{"model and serial", "Two post lift model 2400, serial no. 199812, mod. MX-1990, lot 2300", "rubric=two-post-lift"},
	{"code in one piece", "two post lift TP9000XL, asking 1,600", "rubric=two-post-lift asking=1600"},
	{"dates", "two post lift. Posted 03/15/2024, updated 2024-03-20, seen May 4, 2024", "rubric=two-post-lift"},
	{"opening hours", "two post lift. Open Mon to Fri 8-5, 24 hours notice, call after 5 pm", "rubric=two-post-lift"},
	{"mail and web", "two post lift bob2400@example.com https://example.com/item/2009?price=1999", "rubric=two-post-lift seen=https://example.com/item/2009?price=1999~"},

	{"year", "two post lift, year 2009", "rubric=two-post-lift made=2009"},
	{"year alone", "two post lift. 1998, works fine", "rubric=two-post-lift made=1998~"},
	{"year first", "2011 two post lift", "rubric=two-post-lift made=2011~"},
	{"short year", "Lathe, '98, one owner", "rubric=engine-lathe~ made=1998~"},
	{"made, and serviced", "two post lift made in 2004, serviced 2023", "rubric=two-post-lift made=2004"},
	{"month and year", "two post lift. Date of manufacture: March 2009", "rubric=two-post-lift made=2009"},
	{"bought", "two post lift bought new in 2015", "rubric=two-post-lift"},
	{"bought used", "two post lift, installed in 2012", "rubric=two-post-lift made=2012? fact/standing=installed?"},
	{"years to come", "two post lift, made 2029", "rubric=two-post-lift"},
	{"twenty years", "two post lift 20 years old", "rubric=two-post-lift"},

	{"voltage and phase", "two post lift 220v single phase", "rubric=two-post-lift voltage=220 V phases=1 fact/supply=one-phase~"},
	{"short phase", "Lathe 3ph 480V", "rubric=engine-lathe~ voltage=480 V phases=3 fact/supply=three-phase~"},
	{"one of several", "Lathe 208-230/460 volts, 3 phase", "rubric=engine-lathe~ voltage=208 V~|230 V~|460 V~ phases=3 fact/supply=three-phase~"},
	{"volts phases hertz", "compressor 230/1/60", "rubric=air-compressor~ voltage=230 V phases=1"},
	{"bare voltage", "Lathe wired 220 single-phase", "rubric=engine-lathe~ voltage=220 V~ phases=1 fact/supply=one-phase~"},
	{"control voltage", "Lathe 240V, 24V controls", "rubric=engine-lathe~ voltage=240 V|24 V?"},
	{"not three phase", "two post lift, not 3 phase", "rubric=two-post-lift"},
	{"converter", "Lathe with 3 phase converter", "rubric=engine-lathe~ phases=3? fact/supply=three-phase~"},
	{"sign of phase", "Lathe 3Ø 230V 20 amps", "rubric=engine-lathe~ voltage=230 V phases=3 current=20 A~ fact/supply=three-phase~"},

	{"capacity and weight", "two post lift 9000 lb capacity, weighs about 1500 lbs", "rubric=two-post-lift capacity=9000 lb weight=1500 lb"},
	{"kilograms", "two post lift 4100 kg", "rubric=two-post-lift capacity=4100 kg"},
	{"tonnes", "two post lift 4.5 t, 9000 lb", "rubric=two-post-lift capacity=4.5 t|9000 lb~"},
	{"pound sign", "two post lift 10,000# capacity", "rubric=two-post-lift capacity=10000 lb"},
	{"no kind", "Equipment, 2000 lb", "capacity=2000 lb? weight=2000 lb?"},
	{"swing", "Engine lathe, 13\" swing, 40 between centers", "rubric=engine-lathe capacity=13 in"},
	{"swing by bed", "Engine lathe 14 x 40, weighs 1,800 lb", "rubric=engine-lathe capacity=14 in~ weight=1800 lb"},
	{"length of two", "Knee mill, 9x42 table", "rubric=knee-mill capacity=42 in~"},
	{"current as a size", "Welder, 250 amp", "rubric=welder capacity=250 A~"},
	{"words for two answers", "Knee mill, 3 phase", "rubric=knee-mill phases=3 fact/supply=low?|high?"},
	{"horsepower", "air compressor 7-1/2 hp, 80 gal", "rubric=air-compressor capacity=7.5 hp~ power=7.5 hp~"},
	{"sizes", "Shop press 60\"L x 30\"W x 72\"H", "rubric=h-frame-press length=60 in~ width=30 in~ height=72 in~"},
	{"three sizes", "Shop press crated 60 x 30 x 72 in", "rubric=h-frame-press length=60 in? width=30 in? height=72 in?"},
	{"feet and inches", "two post lift, 11'10\" tall, 11 ft 2 in wide, needs 12 ft ceiling", "rubric=two-post-lift width=134 in~ height=142 in~"},
	{"other things' sizes", "two post lift. Lifting height 72 in. Extension cord 50 ft long", "rubric=two-post-lift"},

	{"hours", "air compressor with 1200 hrs", "rubric=air-compressor hours=1200"},
	{"hour meter", "air compressor, hour meter: 1,532", "rubric=air-compressor hours=1532~"},
	{"hours away", "two post lift, 2 hours from the city, 24 hour notice", "rubric=two-post-lift"},
	{"distance", "two post lift, 45 miles north of here", "rubric=two-post-lift distance=45 mi~"},
	{"miles driven", "two post lift, truck has 120k miles on it", "rubric=two-post-lift"},
	{"place", "two post lift. Located in Springfield. Cash", "rubric=two-post-lift place=Springfield"},
	{"place of several words", "two post lift. Location: Port St. Lucie, FL", "rubric=two-post-lift place=Port St. Lucie, FL"},
	{"pick up", "two post lift, pick up in northern Ohio only", "rubric=two-post-lift place=northern Ohio~"},
	{"in the barn", "two post lift located in the barn", "rubric=two-post-lift"},
	{"capitals", "TWO POST LIFT FOR SALE, IN GOOD ORDER", "rubric=two-post-lift"},

	{"facts", "Two post lift, asymmetric, clear floor, disassembled", "rubric=two-post-lift fact/arms=asymmetric? fact/cross-over=overhead fact/standing=taken-down"},
	{"facts against each other", "two post lift, overhead, would fit a low ceiling", "rubric=two-post-lift fact/cross-over=overhead~|floor-plate~"},
	{"a fact denied", "two post lift, not overhead", "rubric=two-post-lift"},
	{"small words", "Shop press, moved by hand, winch and cable fitted", "rubric=h-frame-press fact/bed-lift=winch~"},
	{"readout", "Engine lathe with DRO", "rubric=engine-lathe fact/readout=with"},
	{"kind of two", "Engine lathe and a two post lift", "rubric=engine-lathe|two-post-lift~"},
	{"kind not settled", "Car lift 9000 lb", "rubric=two-post-lift?|four-post-lift? capacity=9000 lb~"},
	{"nothing", "", ""},
	{"no words", "!!! ... ???", ""},
}

var metricListings = []struct{ name, text, want string }{
	{"decimal comma", "two post lift 4,5 t, Preis 2.400,50 €", "rubric=two-post-lift asking=2400.5 capacity=4.5 t"},
	{"whole euros", "two post lift 1.950,- VB", "rubric=two-post-lift asking=1950"},
	{"open thousands", "two post lift 4.500 kg, VHB 1.800", "rubric=two-post-lift asking=1800 capacity=4500 kg|4.5 kg?"},
	{"ton in a metric shop", "Shop press 20 ton", "rubric=h-frame-press capacity=20 t|20 short ton?"},
	{"made and supply", "two post lift Baujahr 2009, 400 V Drehstrom, Standort 86150 Musterstadt", "rubric=two-post-lift place=Musterstadt made=2009 voltage=400 V phases=3"},
	{"kilometres", "two post lift, 70 km entfernt, Gewicht 650 kg", "rubric=two-post-lift distance=70 km~ weight=650 kg"},
	{"size in millimetres", "Engine lathe 360 mm swing, weight 1 250 kg", "rubric=engine-lathe capacity=360 mm weight=1250 kg"},
	{"apostrophe", "two post lift CHF 2'400", "rubric=two-post-lift asking=2400 CHF"},
	{"running hours", "air compressor 5,5 kW, Betriebsstunden: 3.250", "rubric=air-compressor capacity=5.5 kW~ hours=3250~ power=5.5 kW~"},
	{"metres", "two post lift, 3,6 m hoch, 3.4 m wide", "rubric=two-post-lift width=3.4 m~ height=3.6 m~"},
}

func TestListings(t *testing.T) {
	for _, all := range []struct {
		ask  Ask
		rows []struct{ name, text, want string }
	}{{shop(), inchListings}, {metricShop(), metricListings}} {
		for _, c := range all.rows {
			if got := told(t, c.text, all.ask); got != c.want {
				t.Errorf("%s: %s\n   got %s\n  want %s", c.name, c.text, got, c.want)
			}
		}
	}
}
