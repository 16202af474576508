package table

import "strings"

// currencies are the signs, codes (ISO 4217) and short forms found beside prices.
var currencies = map[string]string{
	"$": "$", "dollar": "$", "dollars": "$", "us$": "USD", "usd": "USD", "usd$": "USD", "c$": "CAD", "ca$": "CAD", "cad": "CAD",
	"a$": "AUD", "au$": "AUD", "aud": "AUD", "nz$": "NZD", "nzd": "NZD", "mx$": "MXN", "mxn": "MXN",
	"€": "EUR", "eur": "EUR", "euro": "EUR", "euros": "EUR", "£": "GBP", "gbp": "GBP",
	"chf": "CHF", "fr": "CHF", "sfr": "CHF", "kr": "kr", "sek": "SEK", "nok": "NOK", "dkk": "DKK",
	"zł": "PLN", "pln": "PLN", "r": "ZAR", "zar": "ZAR", "¥": "¥", "jpy": "JPY", "cny": "CNY",
	"kč": "CZK", "czk": "CZK", "huf": "HUF", "lei": "RON", "ron": "RON", "₹": "INR", "inr": "INR", "r$": "BRL", "brl": "BRL",
}

// several are the currencies that one sign stands for.
var several = map[string]string{"$": "USD CAD AUD NZD MXN", "kr": "SEK NOK DKK", "¥": "JPY CNY"}

// Alike tells whether two currencies of Amount can be the same; "" can be any.
func Alike(a, b string) bool {
	return a == "" || b == "" || a == b || strings.Contains(several[a], b) || strings.Contains(several[b], a)
}

// in notes a currency; two beside one number must agree.
func (f *form) in(code string) bool {
	if !Alike(f.currency, code) {
		return false
	}
	if f.currency == "" || several[f.currency] != "" {
		f.currency = code
	}
	return true
}

// Currency is the currency that the name of a column speaks of, "" for none:
// "Price (EUR)", "Price $".
func Currency(name string) string {
	for _, word := range strings.FieldsFunc(strings.ToLower(name), func(c rune) bool {
		return strings.ContainsRune(" ()[]/,;:.-_", c)
	}) {
		if code := currencies[word]; code != "" && (len(word) == 3 || several[code] != "" || strings.HasPrefix(word, "euro")) {
			return code
		}
	}
	return ""
}
