package unit

import "asfound/rubrics/say"

// scale is one unit: how many base units it is, as a quotient of two exact
// numbers, and for temperature where its zero lies on the base scale.
type scale struct {
	name  string // canonical
	num   float64
	den   float64
	zero  float64 // reading at the base's zero: base = (n-zero)*num/den
	thou  bool    // US trade counts it in thousands: "3,000 psi"
	alias []string
}

// family is one dimension and its units, in the order they are offered.
type family struct {
	dimension string
	example   string
	units     []scale
}

// Exact where the definition is: the inch is 25.4 mm and the pound 0.45359237 kg
// (international yard and pound agreement, 1959); standard gravity 9.80665 m/s2;
// the US gallon 231 in3. All factors agree with NIST SP 811 (2008), Appendix B.
// The pound-force is 0.45359237 x 9.80665 = 4.4482216152605 N exactly, so the
// horsepower of 550 ft lbf/s is 745.69987158227022 W.
const (
	lbfNum, lbfDen = 44482216152605, 1e13
	in2Num, in2Den = 64516, 1e8 // m2
	galNum, galDen = 3785411784, 1e12
)

var families = []family{
	{say.Key("length"), say.Key("3/8 in or 9.5 mm"), []scale{
		{name: "in", num: 254, den: 10000, alias: []string{"inch", "inches", `"`, "''"}},
		{name: "ft", num: 3048, den: 10000, alias: []string{"foot", "feet", "'"}},
		{name: "mm", num: 1, den: 1000, alias: []string{"millimeter", "millimeters", "millimetre", "millimetres"}},
		{name: "cm", num: 1, den: 100, alias: []string{"centimeter", "centimeters", "centimetre", "centimetres"}},
		{name: "m", num: 1, den: 1, alias: []string{"meter", "meters", "metre", "metres"}},
		{name: "thou", num: 254, den: 1e7, alias: []string{"mil", "mils"}}, // 0.001 in
		{name: "um", num: 1, den: 1e6, alias: []string{"micron", "microns"}},
		{name: "yd", num: 9144, den: 10000, alias: []string{"yard", "yards"}},
		{name: "mi", num: 1609344, den: 1000, alias: []string{"mile", "miles"}},
		{name: "km", num: 1000, den: 1, alias: []string{"kilometer", "kilometers", "kilometre", "kilometres"}},
	}},
	{say.Key("mass"), say.Key("9,000 lb or 4100 kg"), []scale{
		{name: "lb", num: 45359237, den: 1e8, thou: true, alias: []string{"lbs", "pound", "pounds", "lbm"}},
		{name: "kg", num: 1, den: 1, alias: []string{"kilogram", "kilograms", "kilo", "kilos"}},
		// "tons" is the US short ton of 2000 lb; "t" is the tonne of 1000 kg.
		{name: "short ton", num: 90718474, den: 1e5, alias: []string{"short tons", "ton", "tons", "us ton", "us tons"}},
		{name: "t", num: 1000, den: 1, alias: []string{"tonne", "tonnes", "metric ton", "metric tons"}},
		{name: "long ton", num: 10160469088, den: 1e7, alias: []string{"long tons"}}, // 2240 lb
		{name: "oz", num: 45359237, den: 16e8, alias: []string{"ounce", "ounces"}},
		{name: "g", num: 1, den: 1000, alias: []string{"gram", "grams"}},
	}},
	{say.Key("pressure"), say.Key("2,500 psi or 170 bar"), []scale{
		{name: "psi", num: lbfNum * in2Den, den: lbfDen * in2Num, thou: true, alias: []string{"psig", "lb/in2", "lbf/in2"}},
		{name: "bar", num: 1e5, den: 1, alias: []string{"bars"}},
		{name: "kPa", num: 1000, den: 1},
		{name: "MPa", num: 1e6, den: 1},
		{name: "Pa", num: 1, den: 1, alias: []string{"pascal", "pascals"}},
		{name: "kgf/cm2", num: 98066.5, den: 1, alias: []string{"kg/cm2"}},
		{name: "atm", num: 101325, den: 1},
		{name: "inHg", num: 3386.389, den: 1, alias: []string{"in hg"}}, // conventional inch of mercury
	}},
	{say.Key("force"), say.Key("20 short tons or 50,000 lbf"), []scale{
		{name: "lbf", num: lbfNum, den: lbfDen, thou: true, alias: []string{"lb", "lbs", "pound", "pounds"}},
		{name: "short ton", num: lbfNum * 2000, den: lbfDen, alias: []string{"short tons", "ton", "tons", "us ton", "us tons", "tonf", "short tonf"}},
		{name: "tf", num: 9806.65, den: 1, alias: []string{"t", "tonne", "tonnes", "metric ton", "metric tons"}},
		{name: "kN", num: 1000, den: 1},
		{name: "N", num: 1, den: 1, alias: []string{"newton", "newtons"}},
		{name: "kgf", num: 980665, den: 1e5, alias: []string{"kp"}},
	}},
	{say.Key("torque"), say.Key("85 lbf ft or 115 N m"), []scale{
		{name: "lbf ft", num: lbfNum * 3048, den: lbfDen * 1e4, alias: []string{"lb ft", "ft lb", "ft lbf", "ft lbs", "lbs ft", "foot pounds", "pound feet"}},
		{name: "lbf in", num: lbfNum * 254, den: lbfDen * 1e4, alias: []string{"lb in", "in lb", "in lbf", "in lbs", "lbs in", "inch pounds"}},
		{name: "N m", num: 1, den: 1, alias: []string{"nm", "newton meters", "newton metres"}},
		{name: "kgf m", num: 980665, den: 1e5, alias: []string{"kg m"}},
	}},
	{say.Key("flow"), say.Key("2.5 gpm or 9.5 L/min"), []scale{
		{name: "gpm", num: galNum, den: galDen * 60, thou: true, alias: []string{"gal/min", "us gpm"}},
		{name: "L/min", num: 1, den: 60000, alias: []string{"lpm", "ltr/min"}},
		{name: "cfm", num: 28316846592, den: 60e12, thou: true, alias: []string{"ft3/min", "scfm"}},
		{name: "m3/min", num: 1, den: 60},
		{name: "m3/h", num: 1, den: 3600, alias: []string{"m3/hr"}},
		{name: "L/s", num: 1, den: 1000},
		{name: "in3/min", num: 16387064, den: 60e12},
		{name: "mL/min", num: 1, den: 60e6, alias: []string{"cc/min", "cm3/min"}},
	}},
	{say.Key("speed"), say.Key("20 ft/min or 0.1 m/s"), []scale{
		{name: "ft/min", num: 3048, den: 600000, thou: true, alias: []string{"fpm", "sfpm", "sfm"}},
		{name: "in/s", num: 254, den: 10000, alias: []string{"in/sec", "ips"}},
		{name: "in/min", num: 254, den: 600000, alias: []string{"ipm"}},
		{name: "ft/s", num: 3048, den: 10000, alias: []string{"ft/sec", "fps"}},
		{name: "m/s", num: 1, den: 1, alias: []string{"m/sec"}},
		{name: "m/min", num: 1, den: 60},
		{name: "mm/s", num: 1, den: 1000, alias: []string{"mm/sec"}},
		{name: "mm/min", num: 1, den: 60000},
		{name: "mph", num: 1609344, den: 3600000, alias: []string{"mi/h"}},
		{name: "km/h", num: 1000, den: 3600, alias: []string{"kph", "kmh"}},
	}},
	{say.Key("volume"), say.Key("2.9 gal or 11 L"), []scale{
		{name: "gal", num: galNum, den: galDen, thou: true, alias: []string{"gallon", "gallons", "us gal"}},
		{name: "qt", num: galNum, den: galDen * 4, alias: []string{"quart", "quarts"}},
		{name: "L", num: 1, den: 1000, alias: []string{"liter", "liters", "litre", "litres", "ltr"}},
		{name: "mL", num: 1, den: 1e6, alias: []string{"cc", "cm3"}},
		{name: "in3", num: 16387064, den: 1e12, alias: []string{"cu in", "cubic inches"}},
		{name: "ft3", num: 28316846592, den: 1e12, alias: []string{"cu ft", "cubic feet"}},
		{name: "m3", num: 1, den: 1},
	}},
	{say.Key("current"), say.Key("28 A"), []scale{
		{name: "A", num: 1, den: 1, alias: []string{"amp", "amps", "ampere", "amperes"}},
		{name: "mA", num: 1, den: 1000},
	}},
	{say.Key("voltage"), say.Key("230 V"), []scale{
		{name: "V", num: 1, den: 1, alias: []string{"volt", "volts", "vac", "v ac"}},
		{name: "kV", num: 1000, den: 1},
	}},
	{say.Key("power"), say.Key("5 hp or 3.7 kW"), []scale{
		// Mechanical horsepower, 550 ft lbf/s; "PS" is the metric one, 75 kgf m/s.
		{name: "hp", num: lbfNum * 3048 * 550, den: lbfDen * 1e4, alias: []string{"horsepower"}},
		{name: "kW", num: 1000, den: 1},
		{name: "W", num: 1, den: 1, alias: []string{"watt", "watts"}},
		{name: "PS", num: 735.49875, den: 1, alias: []string{"metric hp"}},
		{name: "kVA", num: 1000, den: 1}, // apparent power, of generators and transformers
	}},
	{say.Key("temperature"), say.Key("170 F or 77 C"), []scale{
		{name: "F", num: 5, den: 9, zero: 32, alias: []string{"deg f", "°f"}},
		{name: "C", num: 1, den: 1, alias: []string{"deg c", "°c"}},
		{name: "K", num: 1, den: 1, zero: 273.15, alias: []string{"kelvin"}},
	}},
	{say.Key("time"), say.Key("55 s or 10 min"), []scale{
		{name: "s", num: 1, den: 1, alias: []string{"sec", "secs", "second", "seconds"}},
		{name: "min", num: 60, den: 1, alias: []string{"mins", "minute", "minutes"}},
		{name: "h", num: 3600, den: 1, alias: []string{"hr", "hrs", "hour", "hours"}},
	}},
	{say.Key("area"), say.Key("28 in2 or 180 cm2"), []scale{
		{name: "in2", num: in2Num, den: in2Den, alias: []string{"sq in", "square inches"}},
		{name: "ft2", num: 9290304, den: 1e8, thou: true, alias: []string{"sq ft", "square feet"}},
		{name: "mm2", num: 1, den: 1e6, alias: []string{"sq mm"}},
		{name: "cm2", num: 1, den: 1e4, alias: []string{"sq cm"}},
		{name: "m2", num: 1, den: 1, alias: []string{"sq m"}},
	}},
	{say.Key("angle"), say.Key("45 deg"), []scale{
		{name: "deg", num: 1, den: 1, alias: []string{"degree", "degrees", "°"}},
		{name: "arcmin", num: 1, den: 60, alias: []string{"minutes of arc"}},
		{name: "rad", num: 180, den: 3.14159265358979323846, alias: []string{"radian", "radians"}},
	}},
	{say.Key("threads"), say.Key("13 tpi"), []scale{
		{name: "tpi", num: 1, den: 1, alias: []string{"threads per inch", "threads/in", "/in"}},
	}},
	{say.Key("share"), say.Key("58 %"), []scale{
		{name: "%", num: 1, den: 1, alias: []string{"percent", "pct"}},
	}},
	{say.Key("number"), say.Key("6"), []scale{
		{name: "", num: 1, den: 1, alias: []string{"pcs", "pieces"}},
	}},
}
