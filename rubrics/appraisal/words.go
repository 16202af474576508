package appraisal

import "asfound/rubrics/limit"

// GradeWords are the five grades, by number.
var GradeWords = [5]string{"failed", "bad", "worn", "sound", "as new"}

// grade is the name of a grade.
func (v voice) grade(n int) string { return v.Label(GradeWords[n]) }

// Hazards are the signal words of the checks, most severe first.
var Hazards = []Choice{{"danger", "danger"}, {"warning", "warning"}, {"caution", "caution"}, {"notice", "notice"}}

// Standings are how well the figure of a limit is founded.
var Standings = []Choice{
	{string(limit.Published), "published"}, {string(limit.Reprint), "seen in reprint"}, {string(limit.Own), "maker's own figure"},
	{string(limit.Physics), "definition"}, {string(limit.Practice), "common practice"}, {string(limit.Memory), "from memory"},
}

// TieDowns are the kinds of tie-down whose working load limit is known.
func TieDowns() []Choice {
	var out []Choice
	for _, kind := range TieDownKinds() {
		out = append(out, Choice{kind, kind})
	}
	return out
}

// Reasons are why a check was not done, with what is shown.
var Reasons = []Choice{
	{"no-power", "No power"},
	{"no-access", "No access"},
	{"seller-declined", "Seller declined"},
	{"no-time", "No time"},
	{"no-instrument", "No instrument"},
}

// Sellers are the kinds of seller, with what is shown.
var Sellers = []Choice{
	{"private", "Private owner"},
	{"closing", "Closing shop"},
	{"auction", "Auction"},
	{"dealer", "Dealer"},
}

// Trades are the hourly rates of the settings, own work first.
var Trades = []Choice{
	{"own", "Own work"},
	{"machine", "Own machine time"},
	{"electrician", "Licensed electrician"},
	{"rigger", "Rigger"},
	{"welder", "Certified welder"},
	{"specialist", "Lift or press fitter"},
	{"inspector", "Qualified inspector"},
}

// Conditions of a comparable, best first.
var Conditions = []Choice{
	{"as_new", "As new"},
	{"sound", "Sound"},
	{"worn", "Worn"},
	{"bad", "Needs repair"},
}

// Completeness of a comparable, best first.
var Completeness = []Choice{
	{"complete", "Complete"},
	{"bare", "Without its accessories"},
	{"missing", "Parts missing"},
}

// Criteria rank listings that are compared. Scales and default weights are
// judgement, no source. The scales are fixed and never taken from the listings at
// hand: with those (TOPSIS, AHP) a listing more can turn two others round.
var Criteria = []Criterion{
	{"ahead", "Coming out ahead", "from half the worth in place lost to half of it gained, on average", 40},
	{"odds", "Odds of coming out ahead", "from none to certain, at its price", 20},
	{"condition", "Condition", "the condition score, from 0 to 100", 10},
	{"coverage", "Safety points checked", "from none to all, by weight", 10},
	{"hours", "Hours of work", "from 80 hours or more, or none that would do, to none needed", 10},
	{"distance", "Distance", "from 500 miles (805 km) or more to none", 10},
}

// Choice is an id and what is shown for it.
type Choice struct {
	ID    string `json:"id"`
	Title string `json:"title" say:"yes"`
}

// Currencies that amounts can be kept in: those with two decimals, as all
// amounts are in cents (ISO 4217).
var Currencies = []string{"USD", "CAD", "EUR", "GBP", "AUD", "NZD", "CHF", "SEK", "NOK", "DKK", "PLN", "MXN", "ZAR"}

// DefaultShop is what a new shop starts from; every figure is a judgement and
// may be changed in the settings.
func DefaultShop() Shop {
	return Shop{
		Currency: "USD",
		Units:    "inch",
		Rates: map[string]Money{
			"own": 35_00, "machine": 60_00, "electrician": 110_00, "rigger": 120_00,
			"welder": 105_00, "specialist": 115_00, "inspector": 150_00,
		},
		Odds:    Odds{Opening: 90_00, Fair: 75_00, WalkAway: 50_00},
		Overrun: Overrun{Mean: 110_00, SD: 20_00},
		Kept:    100_00,
		Day:     4,
	}
}
