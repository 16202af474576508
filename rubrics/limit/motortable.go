package limit

// fullLoad is one row of the NEC full-load current tables, in amperes; 0 where
// the table has no entry. Single-phase columns 115, 208, 230 V; three-phase
// 200, 208, 230, 460 V.
type fullLoad struct {
	hp     float64
	single [3]float64
	three  [4]float64
}

var (
	singleVolts = [3]float64{115, 208, 230}
	threeVolts  = [4]float64{200, 208, 230, 460}
)

// motors: NFPA 70 Tables 430.248 and 430.250, read in reprints of the 2008
// edition; the same values stand in later ones.
var motors = []fullLoad{
	{0.5, [3]float64{9.8, 5.4, 4.9}, [4]float64{2.5, 2.4, 2.2, 1.1}},
	{0.75, [3]float64{13.8, 7.6, 6.9}, [4]float64{3.7, 3.5, 3.2, 1.6}},
	{1, [3]float64{16, 8.8, 8.0}, [4]float64{4.8, 4.6, 4.2, 2.1}},
	{1.5, [3]float64{20, 11.0, 10}, [4]float64{6.9, 6.6, 6.0, 3.0}},
	{2, [3]float64{24, 13.2, 12}, [4]float64{7.8, 7.5, 6.8, 3.4}},
	{3, [3]float64{34, 18.7, 17}, [4]float64{11.0, 10.6, 9.6, 4.8}},
	{5, [3]float64{56, 30.8, 28}, [4]float64{17.5, 16.7, 15.2, 7.6}},
	{7.5, [3]float64{80, 44.0, 40}, [4]float64{25.3, 24.2, 22, 11}},
	{10, [3]float64{100, 55.0, 50}, [4]float64{32.2, 30.8, 28, 14}},
	{15, [3]float64{}, [4]float64{48.3, 46.2, 42, 21}},
	{20, [3]float64{}, [4]float64{62.1, 59.4, 54, 27}},
	{25, [3]float64{}, [4]float64{78.2, 74.8, 68, 34}},
	{30, [3]float64{}, [4]float64{92, 88, 80, 40}},
}

// wire is one size of NFPA 70 Table 310.16 (2023), copper, in amperes by the
// 60 and 75 degC columns. Ohms per 1,000 ft are of stranded uncoated copper,
// Chapter 9 Table 8: read for 6 and 4 AWG, from memory for the others (some
// reprints give solid wire's values there); 0 where no value is held.
type wire struct {
	name   string
	at60   float64
	at75   float64
	ohms   float64
	recall bool // ohms from memory
}

var wires = []wire{
	{"14", 15, 20, 3.14, true},
	{"12", 20, 25, 1.98, true},
	{"10", 30, 35, 1.24, true},
	{"8", 40, 50, 0.778, true},
	{"6", 55, 65, 0.491, false},
	{"4", 70, 85, 0.308, false},
	{"3", 85, 100, 0, false},
	{"2", 95, 115, 0, false},
}

// breakers are the standard ratings of NFPA 70 240.6(A) up to 400 A.
var breakers = []float64{15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350, 400}
