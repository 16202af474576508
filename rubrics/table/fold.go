package table

import (
	"strings"
	"unicode"
)

// plainLetters are the accented letters of the languages that column names are
// known in, as they are matched.
var plainLetters = strings.NewReplacer(
	"ä", "a", "á", "a", "à", "a", "â", "a", "ã", "a", "å", "a", "æ", "ae", "ç", "c", "é", "e", "è", "e", "ê", "e", "ë", "e",
	"í", "i", "ì", "i", "î", "i", "ï", "i", "ñ", "n", "ö", "o", "ó", "o", "ò", "o", "ô", "o", "õ", "o", "ø", "o", "œ", "oe",
	"ü", "u", "ú", "u", "ù", "u", "û", "u", "ÿ", "y", "ý", "y", "ß", "ss", "ł", "l",
)

// Fold brings a text to the form in which words are compared: lower case, without
// accents, letters and digits only, words apart by one blank.
func Fold(s string) string {
	s = strings.ToLower(s)
	if strings.IndexFunc(s, func(c rune) bool { return c >= 0x80 }) >= 0 {
		s = plainLetters.Replace(s)
	}
	var out strings.Builder
	out.Grow(len(s))
	gap := false
	for _, c := range s {
		switch {
		case c >= 0x300 && c <= 0x36f: // an accent apart from its letter
		case unicode.IsLetter(c), unicode.IsDigit(c):
			if gap && out.Len() > 0 {
				out.WriteByte(' ')
			}
			gap = false
			out.WriteRune(c)
		default:
			gap = true
		}
	}
	return out.String()
}
