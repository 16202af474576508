package notice

import (
	"strconv"
	"strings"
	"testing"
)

// testKinds are kinds as the rubrics have them, with some of their facts.
var testKinds = []Kind{
	{ID: "two-post-lift", Title: "Two-post lift", Words: []string{"2 post", "two poster"}, Size: Size{"Rated load", "lb", []string{"kg", "t"}}, Facts: []Fact{
		{"standing", []Option{{"installed", "Installed and connected", []string{"still installed", "still standing", "still hooked up"}}, {"taken-down", "Taken down", []string{"disassembled", "dismantled", "in storage"}}}},
		{"cross-over", []Option{{"overhead", "Overhead beam", []string{"overhead", "clear floor"}}, {"floor-plate", "Floor plate", []string{"floor plate", "base plate", "low ceiling"}}}},
		{"arms", []Option{{"symmetric", "Symmetric, four arms alike", nil}, {"asymmetric", "Asymmetric, short front and long rear arms", nil}}},
		{"supply", []Option{{"one-phase", "Single-phase", nil}, {"three-phase", "Three-phase", nil}}},
	}},
	{ID: "four-post-lift", Title: "Four-post lift", Words: []string{"4 post"}, Size: Size{"Rated load", "lb", []string{"kg", "t"}}},
	{ID: "h-frame-press", Title: "H-frame hydraulic press", Words: []string{"h-frame", "hydraulic shop press", "shop press"}, Size: Size{"Rated force", "short ton", []string{"kN", "lbf"}}, Facts: []Fact{
		{"pump", []Option{{"hand", "Hand pump", nil}, {"air", "Air over oil", []string{"air over hydraulic"}}, {"electric", "Electric pump", nil}}},
		{"bed-lift", []Option{{"winch", "Winch and cable", nil}, {"by-hand", "By hand", nil}}},
	}},
	{ID: "engine-lathe", Title: "Engine lathe", Words: []string{"metal lathe"}, Size: Size{"Swing over the bed", "in", []string{"mm"}}, Facts: []Fact{
		{"readout", []Option{{"with", "With digital readout", []string{"dro", "digital readout"}}, {"none", "No readout", nil}}},
		{"supply", []Option{{"one-phase", "Single-phase", nil}, {"three-phase", "Three-phase", nil}}},
	}},
	{ID: "knee-mill", Title: "Knee mill", Size: Size{"Table length", "in", []string{"mm"}}, Facts: []Fact{
		{"supply", []Option{{"low", "Three-phase, 200 to 240 V", nil}, {"high", "Three-phase, 380 to 480 V", nil}}},
	}},
	{ID: "welder", Title: "Welder", Size: Size{"Rated welding current", "A", nil}},
	{ID: "air-compressor", Title: "Reciprocating air compressor", Words: []string{"air compressor"}, Size: Size{"Motor power", "hp", []string{"kW"}}},
}

func says(p Proposal) string {
	switch {
	case p.Cents != nil:
		s := strconv.FormatFloat(float64(*p.Cents)/100, 'f', -1, 64)
		if p.Foreign != "" {
			s += " " + p.Foreign
		}
		return s
	case p.Quantity != nil:
		return strconv.FormatFloat(p.Quantity.N, 'g', 6, 64) + " " + p.Quantity.Unit
	case p.Number != nil:
		return strconv.FormatFloat(*p.Number, 'f', -1, 64)
	}
	return p.Text
}

// marksOfSure stand behind a value that is not plain.
var marksOfSure = map[string]string{Plain: "", Likely: "~", Doubtful: "?"}

// told writes all proposals but the title: field=value of the surest first.
func told(t *testing.T, text string, ask Ask) string {
	t.Helper()
	all, err := Read(text, ask)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	field := ""
	for _, p := range all {
		if p.Field == "title" {
			continue
		}
		value := says(p) + marksOfSure[p.Sure]
		if p.Field == field {
			out[len(out)-1] += "|" + value
			continue
		}
		field = p.Field
		out = append(out, field+"="+value)
	}
	return strings.Join(out, " ")
}

func shop() Ask {
	return Ask{Currency: "USD", Units: "inch", Date: "2026-03-31", Kinds: testKinds}
}
func metricShop() Ask {
	return Ask{Currency: "EUR", Units: "metric", Date: "2026-03-31", Kinds: testKinds}
}
