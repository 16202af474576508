package say

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// List writes "a, b and c".
func (v *Voice) List(items []string) string {
	if len(items) < 2 {
		return strings.Join(items, "")
	}
	last := items[len(items)-1]
	and := v.T("%s and %s")
	if v.Locale().Language == "es" && soundsI(last) {
		and = "%s e %s" // y before the sound of i (Real Academia Española, Ortografía)
	}
	around := append(strings.SplitN(and, "%s", 3), "", "")
	return around[0] + strings.Join(items[:len(items)-1], ", ") + around[1] + last + around[2]
}

// soundsI tells whether a Spanish word begins with the vowel i: inglés, hijo, but
// neither hielo nor yunque.
func soundsI(word string) bool {
	w := strings.TrimLeft(strings.ToLower(word), "«\"'(“")
	w = strings.TrimPrefix(w, "h")
	if !strings.HasPrefix(w, "i") && !strings.HasPrefix(w, "í") {
		return false
	}
	_, size := utf8.DecodeRuneInString(w)
	next, _ := utf8.DecodeRuneInString(w[size:])
	return !strings.ContainsRune("aeouáéóú", next)
}

// Capital begins a sentence with a word.
func Capital(s string) string {
	r, size := utf8.DecodeRuneInString(s)
	if size == 0 {
		return s
	}
	return string(unicode.ToUpper(r)) + s[size:]
}
