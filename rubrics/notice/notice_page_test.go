package notice

import "testing"

// Whole listings, invented.
var pages = []struct{ name, text, want string }{
	{"a whole page", `2 Post Car Lift - $1,800 (Springfield)

Used 2 post lift, 9,000 lb capacity. 220 volt single phase motor. Overhead hydraulic line so floor is clear.
Taken down and ready to load. Bought new in 2014 and used in my home shop, maybe 300 cars.
New cables last year. You must bring a trailer, columns are 12 feet long and weigh about 600 lbs each.
Cash only, no trades. If the ad is up I still have it. Text only 555-867-5309
post id: 7712345678
posted: 2024-05-03 09:12`,
		"rubric=two-post-lift asking=1800 place=Springfield? capacity=9000 lb voltage=220 V phases=1 weight=600 lb? length=12 ft? fact/cross-over=overhead fact/standing=taken-down~ fact/supply=one-phase~"},
	{"capitals", `FOR SALE: 50 TON H-FRAME PRESS, AIR OVER HYDRAULIC
MADE 1987, S/N 88-1204. 84" TALL X 48" WIDE.
WORKS GREAT, NO LEAKS. $950 OBO
LOCATED NEAR TOPEKA, KS. 15 MILES FROM I-70
CALL BILL (555) 201-3344 BETWEEN 8AM AND 6PM`,
		"rubric=h-frame-press asking=950 place=TOPEKA, KS distance=15 mi~ made=1987 capacity=50 short ton width=48 in~ height=84 in~ fact/pump=air"},
	{"metric, in a shop that counts in dollars", `Drehmaschine / engine lathe
Spitzenhöhe 180 mm, swing 360 mm, 1000 mm between centres
400V, 3 kW, Bj. 1996, ca. 1.200 kg
Preis: 3.900,- EUR VB
Standort: 70173 Neustadt am Berg`,
		"rubric=engine-lathe asking=3900 EUR place=Neustadt am Berg made=1996 capacity=360 mm voltage=400 V power=3 kW~ weight=1200 kg~|1.2 kg?"},
	{"running text", `Reciprocating air compressor, 80 gallon, two stage 7.5hp 3-phase 208-230/460v. 175 psi. Runs good, 2,340 hours. Asking $1,500 obo. Can load with forklift. Shop is in Marion, OH, 43302. 1 hour from the airport.`,
		"rubric=air-compressor asking=1500 place=Marion, OH~ capacity=7.5 hp~ hours=2340 voltage=208 V~|230 V~|460 V~ phases=3 power=7.5 hp~"},
	{"telegram", `Lift. 10000lb. 2 post. symmetrical. 3k. 2017`,
		"rubric=two-post-lift made=2017~ capacity=10000 lb~"},
	{"sentences", `Asking price is $2,250. The lift is an asymmetric two-post rated at 9,000 lbs. It's 220V/1ph/60hz. Overall height 145", width 135". I paid $3,400 for it 4 years ago. 25 mi. south of Dayton.`,
		"rubric=two-post-lift asking=2250|3400? distance=25 mi~ capacity=9000 lb voltage=220 V phases=1 width=135 in~ height=145 in~ fact/arms=asymmetric? fact/supply=one-phase~"},
	{"closing shop", `Shop closing after 35 years. Metal lathe 15"x54" , 5HP, 220/440 3PH, taper attachment, 3 jaw and 4 jaw chucks, steady rest. $4200 takes it. Won't separate. Lathe weighs 3600#.`,
		"rubric=engine-lathe asking=4200 capacity=15 in~ voltage=220 V~|440 V~ phases=3 power=5 hp~ weight=3600 lb fact/supply=three-phase~"},
	{"sizes with cues", `4 post lift with casters, 8,000 lbs, $2100. 110v motor. Length 192 inches, width 108 inches, height 88 inches. Year: 2020. In Ft. Wayne IN 46802.`,
		"rubric=four-post-lift asking=2100 place=Ft. Wayne IN~ made=2020 capacity=8000 lb~ voltage=110 V length=192 in~ width=108 in~ height=88 in~"},
	{"hardly a text", `$300 20 ton press`,
		"rubric=h-frame-press~ asking=300 capacity=20 short ton"},
	{"several things in one line", `Moving sale!! Everything must go. 2 post lift 2400, compressor 450, lathe 1900 obo`,
		"rubric=two-post-lift asking=1900"},
	{"a price talked about", `Hydraulic press 100 Ton 3/4 HP pump 115 V. 1/2 inch plates. price negotiable, offers around 1.5k. pickup only in Gary, Indiana`,
		"rubric=h-frame-press~ asking=1500 place=Gary, Indiana~ capacity=100 short ton voltage=115 V power=0.75 hp~"},
	{"now and before", `I'm selling a two post lift. It was $3000, now $2500. 2 available. ID 33219. Ref #2009`,
		"rubric=two-post-lift asking=2500|3000?"},
	{"owners and years", `two post lift 2009 model in great shape, $2,000.00 firm. 1 owner. 3 yrs old cables. 24x7 available. zip 44107`,
		"rubric=two-post-lift asking=2000 made=2009"},
	{"delivery radius", `Two post lift for sale in Cedar Rapids Iowa. 12,000 lb. Needs 13' ceiling. $3,950. FREE DELIVERY within 50 miles`,
		"rubric=two-post-lift asking=3950 place=Cedar Rapids Iowa~ capacity=12000 lb~"},
}

func TestPages(t *testing.T) {
	for _, c := range pages {
		if got := told(t, c.text, shop()); got != c.want {
			t.Errorf("%s\n   got %s\n  want %s", c.name, got, c.want)
		}
	}
}
