package say

import (
	"errors"
	"fmt"
	"reflect"
	"testing"

	"golang.org/x/text/language"
	"golang.org/x/text/message"
	"golang.org/x/text/number"
)

func voiceOf(t testing.TB, id string) *Voice {
	t.Helper()
	l, ok := LocaleOf(id)
	if !ok {
		t.Fatalf("no locale %s", id)
	}
	return New(l, map[string]string{
		"January": "enero", "December": "diciembre", "%s and %s": "%s y %s", "At %s: %g %%.": "Con %[2]g %%: a %[1]s.", "bad\x04grade": "mal", "gone": "perdido",
	})
}

// Number marks as golang.org/x/text/number writes them, of the Unicode CLDR it holds. It
// does not know that Spain leaves four digits together (CLDR 46 common/main/es.xml,
// minimumGroupingDigits 2; ICU writes 1234,5 for es-ES and 1,234.5 for es-MX and es-US),
// so that four digits are held by name in TestNumbers.
func TestNumbersAgainstCLDR(t *testing.T) {
	for _, l := range Locales() {
		p := message.NewPrinter(language.MustParse(l.ID))
		v := voiceOf(t, l.ID)
		for _, x := range []float64{0, 7, 12.5, -3.25, 989.4, 12345, 98765.4, -1234567.891, 1e9} {
			for _, decimals := range []int{0, 1, 2} {
				want := p.Sprint(number.Decimal(x, number.Scale(decimals)))
				if got := v.Number(x, decimals); plainMinus(got) != plainMinus(want) {
					t.Errorf("%s: %g with %d decimals is %q, CLDR %q", l.ID, x, decimals, got, want)
				}
			}
		}
		want := p.Sprint(number.Decimal(1234567))
		if got := v.Whole(1234567); got != want {
			t.Errorf("%s: %q, CLDR %q", l.ID, got, want)
		}
	}
}

// plainMinus takes the minus sign of typography for the hyphen used here.
func plainMinus(s string) string {
	out := ""
	for _, r := range s {
		if r == '\u2212' {
			r = '-'
		}
		out += string(r)
	}
	return out
}

func TestNumbers(t *testing.T) {
	for _, c := range []struct{ id, got, want string }{
		{"four digits stay together in Spain", voiceOf(t, "es-ES").Number(1234.5, 1), "1234,5"},
		{"five do not", voiceOf(t, "es-ES").Number(12345.6, 1), "12.345,6"},
		{"Mexico", voiceOf(t, "es-MX").Number(1234.5, 1), "1,234.5"},
		{"digits as entered", voiceOf(t, "es-ES").Digits("-12345.50"), "-12.345,50"},
		{"exponent", voiceOf(t, "es-ES").Digits("1.5e+20"), "1,5e+20"},
		{"short", voiceOf(t, "es-ES").Short(2.50, 2), "2,5"},
		{"no minus zero", voiceOf(t, "en-US").Number(-0.001, 1), "0.0"},
		{"percent", voiceOf(t, "es-ES").Percent(0.125), "12\u00a0%"},
		{"English without a voice", (*Voice)(nil).Whole(1234567), "1,234,567"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q, want %q", c.id, c.got, c.want)
		}
	}
}

// Long dates as CLDR 46 has them (common/main/en.xml, en_GB.xml, es.xml, dateFormatLength
// long): "MMMM d, y", "d MMMM y", "d 'de' MMMM 'de' y".
func TestDates(t *testing.T) {
	for _, c := range []struct{ locale, want string }{
		{"en-US", "January 5, 2026"}, {"en-GB", "5 January 2026"}, {"es-MX", "5 de enero de 2026"}, {"es-ES", "5 de enero de 2026"}, {"es-US", "5 de enero de 2026"},
	} {
		v := voiceOf(t, c.locale)
		if v.Locale().Language == "en" {
			v = New(v.Locale(), nil)
		}
		if got := v.Date("2026-01-05"); got != c.want {
			t.Errorf("%s: %q, want %q", c.locale, got, c.want)
		}
	}
	v := voiceOf(t, "es-ES")
	for _, odd := range []string{"", "yesterday", "2026-13-01", "2026-00-01", "2026-x-01", "2026-01"} {
		if got := v.Date(odd); got != odd {
			t.Errorf("%q became %q", odd, got)
		}
	}
	if got := v.Date("2026-12-31"); got != "31 de diciembre de 2026" {
		t.Error(got)
	}
}

func TestNearest(t *testing.T) {
	for tag, want := range map[string]string{
		"": "en-US", "en": "en-US", "en-CA": "en-US", "en-AU": "en-GB", "de-DE": "en-US", "es": "es-MX", "es-CL": "es-ES", "es-419": "es-MX", "es-GT": "es-MX",
		"es-AR": "es-ES", "es_ES": "es-ES", "ES-mx": "es-MX", "es-Latn-UY": "es-ES", "x": "en-US", "en-us": "en-US",
	} {
		if got := Nearest(tag).ID; got != want {
			t.Errorf("%q is spoken as %s, want %s", tag, got, want)
		}
	}
}

func TestPatterns(t *testing.T) {
	spain := voiceOf(t, "es-ES")
	var none *Voice
	for _, c := range []struct{ got, want string }{
		{none.F("At %s: %g %%.", "3", 2.5), "At 3: 2.5 %."},
		{spain.F("At %s: %g %%.", "3", 2.5), "Con 2,5 %: a 3."},
		{spain.F("%.2f of %5.1f, %d", 1234.5, 2.25, 1234), "1234,50 of   2,2, 1234"},
		{none.T("bad\x04grade"), "bad"},
		{spain.T("bad\x04grade"), "mal"},
		{spain.T("not known to it"), "not known to it"},
		{spain.F("%s!", Later("gone")), "perdido!"},
		{spain.F("%s!", Errorf("gone")), "perdido!"},
		{spain.Error(fmt.Errorf("inside: %w", Errorf("gone"))), "perdido"},
		{spain.Error(errors.New("plain")), "plain"},
		{Errorf("gone").Error(), "gone"},
		{Later("0 to 95 %").In(spain), "0 to 95 %"},
		{spain.List([]string{"a", "b", "c"}), "a, b y c"},
		{spain.List([]string{"ver", "izar"}), "ver e izar"},
		{spain.List([]string{"a", "hielo"}), "a y hielo"},
		{spain.List([]string{"a", "hilo"}), "a e hilo"},
		{spain.List([]string{"%s", "b"}), "%s y b"},
		{none.List([]string{"a", "b"}), "a and b"},
		{none.List(nil), ""},
		{Capital("álamo"), "Álamo"},
		{Capital(""), ""},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}

// Every text of a tagged field is visited, through pointers, lists and structs, and
// no other.
func TestProse(t *testing.T) {
	type inner struct {
		ID    string
		Title string `say:"yes"`
	}
	type outer struct {
		Name   string
		Lines  []string `say:"yes"`
		Inner  []inner
		Behind *inner
		Empty  string `say:"yes"`
	}
	x := outer{Name: "n", Lines: []string{"a", "b"}, Inner: []inner{{"id", "c"}}, Behind: &inner{"id", "d"}}
	var met []string
	Prose(&x, func(s *string) { met = append(met, *s); *s += "!" })
	if want := []string{"a", "b", "c", "d"}; !reflect.DeepEqual(met, want) {
		t.Errorf("%q, want %q", met, want)
	}
	if x.Lines[1] != "b!" || x.Inner[0].Title != "c!" || x.Behind.Title != "d!" || x.Name != "n" || x.Inner[0].ID != "id" {
		t.Errorf("%+v", x)
	}
}
