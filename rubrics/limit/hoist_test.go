package limit

import (
	"strings"
	"testing"
)

// 29 CFR 1910.184 Table N-184-1, read in Michigan R 408.14923 Table 1, as it
// prints the least sizes; 29 CFR 1926.251 Table H-2 gives the same as wear. Exact.
func TestLinkSize(t *testing.T) {
	check(t, "link-size", 1e-12, []row{
		{"CH10", "chain=3/8; measured=0.290 in", 0.290, "in", Beyond, nil},
		{"CH11", "chain=1/2; measured=0.395 in", 0.395, "in", Within, nil},
		{"exactly the least size", "chain=1/2; measured=25/64 in", 0.390625, "in", Within, nil},
		{"metric, exactly", "chain=1/2; measured=9.921875 mm", 9.921875, "mm", Within, nil},
		{"a hair less", "chain=1/2; measured=0.3906 in", 0.3906, "in", Beyond, nil},
		{"written apart", "chain=1 1/8; measured=0.9 in", 0.9, "in", Beyond, nil},
		{"maker", "chain=3/8; measured=0.33 in; maker=0.34 in", 0.33, "in", Beyond, nil},
	})
	for size, least := range map[string]string{
		"1/4": "13/64", "3/8": "19/64", "1/2": "25/64", "5/8": "31/64", "3/4": "19/32", "7/8": "45/64", "1": "13/16",
		"1-1/8": "29/32", "1-1/4": "1", "1-3/8": "1 3/32", "1-1/2": "1 3/16",
	} {
		res, err := Compute("link-size", map[string]string{"chain": size, "measured": least + " in"})
		if err != nil || res.Finding != Within || res.Value != *res.Limit {
			t.Errorf("%s: %v, %s: %v against %v, want %s in", size, err, res.Finding, res.Value, res.Limit, least)
		}
	}
	// CH12: nominal less the allowed wear is the least size.
	for size, sixtyFourths := range map[string][2]float64{"1/4": {16, 3}, "3/8": {24, 5}, "1/2": {32, 7}} {
		holds(t, "link-size", []held{{"CH12 " + size, given("chain=" + size + "; measured=" + size + " in"), (sixtyFourths[0] - sixtyFourths[1]) / 64, "in", Published}})
	}
	refuses(t, "link-size", []refusal{
		{"chain=1-3/4; measured=1.5 in", "chain", "one of 1/4, 3/8"}, // beyond the table read
		{"chain=3/8; measured=0.6 in", "measured", "does not fit a chain of 3/8 in"},
		{"chain=3/8; measured=0.1 in", "measured", "does not fit a chain of 3/8 in"},
		{"chain=3/8; measured=-0.3 in", "measured", "cannot be -0.3 in"},
		{"chain=3/8; measured=7.4", "measured", "the unit is missing"},
	})
}

// From memory, 1.5 % and 2.5 %: such a figure only warns. CH13 by its maker: a
// hand hoist manual, five links 75 mm new, out at 77.3 mm. Tolerance 0.1 %.
func TestHoistChain(t *testing.T) {
	check(t, "hoist-chain", 0.001, []row{
		{"CH13", "kind=hand; length=75 mm; measured=77.3 mm; maker=77.3 mm", 3.0667, "%", Beyond, nil},
		{"CH13 below", "kind=hand; length=75 mm; measured=77.2 mm; maker=77.3 mm", 2.9333, "%", Within, nil},
		{"CH13 120 mm", "kind=hand; length=120 mm; measured=123.4 mm; maker=123.4 mm", 2.8333, "%", Beyond, nil},
		{"by memory, hand", "kind=hand; length=75 mm; measured=77.3 mm", 3.0667, "%", Beyond, map[string]float64{"length at the limit": 76.875}},
		{"by memory, edge", "kind=powered; length=10 in; measured=10.15 in", 1.5, "%", Beyond, nil},
		{"by memory never clears", "kind=powered; length=10 in; measured=10 in", 0, "%", Computed, nil},
		{"maker percent", "kind=powered; length=10 in; measured=10.12 in; maker=1 %", 1.2, "%", Beyond, nil},
	})
	holds(t, "hoist-chain", []held{
		{"powered", "kind=powered; length=10 in; measured=10 in", 1.5, "%", Memory},
		{"hand", "kind=hand; length=10 in; measured=10 in", 2.5, "%", Memory},
		{"maker", "kind=hand; length=10 in; measured=10 in; maker=3 %", 3, "%", Own},
	})
	refuses(t, "hoist-chain", []refusal{
		{"kind=hand; length=75 mm; measured=70 mm", "measured", "cannot be wear"},
		{"kind=hand; length=75 mm; measured=120 mm", "measured", "cannot be wear"},
		{"kind=hand; length=75 mm; measured=76 mm; maker=70 mm", "maker", "does not fit"},
		{"kind=hand; length=75 mm; measured=76 mm; maker=76", "maker", "unit is missing"},
		{"kind=lever; length=75 mm; measured=76 mm", "kind", "one of powered, hand"},
	})
	if res, err := Compute("hoist-chain", given("kind=hand; length=10 in; measured=10.3 in").values()); err != nil || !strings.Contains(res.Text, "can only warn") {
		t.Error(err, res.Text)
	}
}
