package say

import "strings"

// Locale is how a language is written in one place: the marks of its numbers and
// the order of its dates, as the Unicode CLDR has them.
type Locale struct {
	ID       string `json:"id"`       // BCP 47
	Language string `json:"language"` // en, es
	Title    string `json:"title"`    // in its own language
	Decimal  string `json:"decimal"`
	Group    string `json:"group"`
	// GroupFrom is the number of whole digits from which thousands stand apart.
	GroupFrom int `json:"group_from"`
	// Date is a pattern of d, MMMM and y for a long date.
	Date string `json:"date"`
}

// locales are all that are offered, American English first.
var locales = []Locale{
	{"en-US", "en", "English (US)", ".", ",", 4, "MMMM d, y"},
	{"en-GB", "en", "English (UK)", ".", ",", 4, "d MMMM y"},
	{"es-US", "es", "Español (EE. UU.)", ".", ",", 4, "d de MMMM de y"},
	{"es-MX", "es", "Español (México)", ".", ",", 4, "d de MMMM de y"},
	{"es-ES", "es", "Español (España)", ",", ".", 5, "d de MMMM de y"},
}

// Locales are all that are offered, American English first.
func Locales() []Locale { return append([]Locale(nil), locales...) }

// LocaleOf finds a locale by its id.
func LocaleOf(id string) (Locale, bool) {
	for _, l := range locales {
		if l.ID == id {
			return l, true
		}
	}
	return Locale{}, false
}

// commaCountries write numbers as Spain does where the rest of Latin America
// follows Mexico (CLDR 46, es_XX below es_419).
const commaCountries = " ES AR BO CL CO CR EC PY UY VE "

// Nearest finds the locale offered that is nearest to a BCP 47 tag such as es-CL or
// en; "" and languages that are not spoken give American English.
func Nearest(tag string) Locale {
	if l, ok := LocaleOf(tag); ok {
		return l
	}
	language, rest, _ := strings.Cut(strings.ReplaceAll(tag, "_", "-"), "-")
	country := " " + strings.ToUpper(rest[strings.LastIndex(rest, "-")+1:]) + " "
	id := "en-US"
	switch strings.ToLower(language) {
	case "es":
		id = "es-MX"
		if strings.Contains(commaCountries, country) {
			id = "es-ES"
		}
	case "en":
		if strings.Contains(" GB IE AU NZ ZA IN ", country) {
			id = "en-GB"
		}
	}
	l, _ := LocaleOf(id)
	return l
}
