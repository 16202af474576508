package say

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
