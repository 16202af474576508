package notice

import "strings"

// take marks the numbers that are no figures of the equipment: codes, telephone
// numbers, dates, times of day, postal codes.
func (r *reading) take() {
	r.takeChains()
	for i := range r.tokens {
		if r.tokens[i].kind != number || r.tokens[i].taken {
			continue
		}
		switch {
		case r.phone(i), r.date(i), r.clock(i), r.postal(i), r.code(i):
		case leadingZero(r.tokens[i].text):
			r.tokens[i].taken = true
		}
	}
}

// takeChains marks what touches an @: addresses of mail, whole.
func (r *reading) takeChains() {
	for i := 0; i < len(r.tokens); {
		end, mail := i+1, r.is(i, "@")
		for end < len(r.tokens) && r.tokens[end].glued {
			mail = mail || r.is(end, "@") && r.glued(end+1) && r.tokens[end-1].kind != mark
			end++
		}
		for k := i; k < end; k++ {
			r.tokens[k].taken = mail && end-i > 2
		}
		i = end
	}
}

func leadingZero(s string) bool { return len(s) > 1 && s[0] == '0' && isDigit(rune(s[1])) }

// takeFrom marks tokens first to last.
func (r *reading) takeFrom(first, last int) bool {
	for k := first; k <= last; k++ {
		r.tokens[k].taken = true
	}
	return true
}

var callWords = set("call", "calls", "text", "txt", "phone", "tel", "telephone", "cell", "mobile", "whatsapp", "sms", "fax", "contact", "telefon", "handy")

// phone reads digits as a telephone number: by their groups, their length, a plus
// before or a word for calling.
func (r *reading) phone(i int) bool {
	groups, digits, last := 0, 0, i
	var lengths [6]int
	plus := r.is(i-1, "+") && r.glued(i)
	for k := i; k < len(r.tokens) && groups < len(lengths); {
		t := &r.tokens[k]
		if t.kind != number || t.line != r.tokens[i].line || strings.ContainsAny(t.text, ",'") {
			break
		}
		for _, part := range strings.Split(t.text, ".") {
			if groups == len(lengths) {
				return false
			}
			lengths[groups] = len(part)
			groups++
			digits += len(part)
		}
		last = k
		k++
		for n := 0; n < 2 && r.is(k, "-", ")", "(", "/", "–"); n++ {
			k++
		}
	}
	if groups == 0 || r.is(i-1, "$", "€", "£") {
		return false
	}
	three := func(a, b, c int) bool {
		return groups >= 3 && lengths[0] == a && lengths[1] == b && lengths[2] == c
	}
	_, asked := r.before(i, 3, callWords)
	switch {
	case three(3, 3, 4):
		return r.takeFrom(i, r.groupsEnd(i, 3))
	case groups >= 4 && lengths[0] == 1 && lengths[1] == 3 && lengths[2] == 3 && lengths[3] == 4:
		return r.takeFrom(i, r.groupsEnd(i, 4))
	case groups >= 2 && lengths[0] == 3 && lengths[1] == 4 && (asked || r.is(i+1, "-")):
		return r.takeFrom(i, r.groupsEnd(i, 2))
	case lengths[0] == 10 || lengths[0] == 11:
		return r.takeFrom(i, i)
	case (plus || leadingZero(r.tokens[i].text) || asked) && digits >= 7 && digits <= 15 && !r.unitFollows(last):
		return r.takeFrom(i, last)
	}
	return false
}

// groupsEnd is the token in which the n-th group of digits from token i ends.
func (r *reading) groupsEnd(i, n int) int {
	for k := i; ; k++ {
		if r.tokens[k].kind == number {
			if n -= 1 + strings.Count(r.tokens[k].text, "."); n <= 0 {
				return k
			}
		}
	}
}

// unitFollows tells whether a unit stands behind token i: a quantity, then.
func (r *reading) unitFollows(i int) bool {
	if i+1 >= len(r.tokens) {
		return false
	}
	_, ok := units[r.tokens[i+1].unitText()]
	return ok
}

var monthWords = set("january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november", "december",
	"jan", "feb", "mar", "apr", "jun", "jul", "aug", "sep", "sept", "oct", "nov", "dec", "januar", "februar", "marz", "mai", "juni", "juli", "oktober", "dezember")

// date reads 03/15/2024, 15.03.2024, 2024-03-15, March 15, 2024 and 15 March 2024.
func (r *reading) date(i int) bool {
	dated := func(first, last int) bool {
		for k := first; k <= last; k++ {
			r.tokens[k].dated = true
		}
		return r.takeFrom(first, last)
	}
	text := r.tokens[i].text
	if p := strings.Split(text, "."); len(p) == 3 && len(p[0]) <= 2 && len(p[1]) <= 2 && (len(p[2]) == 2 || len(p[2]) == 4) {
		return dated(i, i)
	}
	if r.number(i+2) && r.number(i+4) && r.is(i+1, "/", "-") && r.is(i+3, r.tokens[i+1].text) && r.glued(i+1) && r.glued(i+2) && r.glued(i+3) && r.glued(i+4) {
		a, b, c := len(text), len(r.tokens[i+2].text), len(r.tokens[i+4].text)
		if a <= 2 && b <= 2 && (c == 4 || c == 2) || a == 4 && b <= 2 && c <= 2 {
			return dated(i, i+4)
		}
	}
	if r.month(i - 1) { // March 15, 2024; March 2024
		k := i
		if len(text) <= 2 {
			k++
			if r.is(k, "st", "nd", "rd", "th") {
				k++
			}
			if r.is(k, ",") {
				k++
			}
			if !r.number(k) || yearOf(r.tokens[k].text) == 0 {
				return dated(i-1, i)
			}
		}
		if yearOf(r.tokens[k].text) != 0 {
			return dated(i-1, k)
		}
	}
	if len(text) <= 2 { // 15 March 2024
		k := i + 1
		if r.is(k, "st", "nd", "rd", "th", ".") {
			k++
		}
		if r.is(k, "of") {
			k++
		}
		if r.month(k) && !r.number(k+1) {
			return dated(i, k)
		}
		if r.month(k) && yearOf(r.tokens[k+1].text) != 0 {
			return dated(i, k+1)
		}
	}
	return false
}

// month tells whether token i names a month; "may" only with a capital.
func (r *reading) month(i int) bool {
	return i >= 0 && i < len(r.tokens) && r.tokens[i].kind == word && monthWords[r.tokens[i].fold] &&
		(r.tokens[i].fold != "may" && r.tokens[i].fold != "mar" || r.tokens[i].text[0] == 'M')
}

var openWords = set("open", "daily", "weekdays", "mon", "monday", "saturday", "sat")

// clock reads 8:00, 5 pm, and 8-5 behind "open".
func (r *reading) clock(i int) bool {
	if r.is(i+1, ":") && r.glued(i+1) && r.number(i+2) && r.glued(i+2) && len(r.tokens[i].text) <= 2 && len(r.tokens[i+2].text) == 2 {
		return r.takeFrom(i, i+2)
	}
	if len(r.tokens[i].text) <= 2 && (r.is(i+1, "am", "pm") || r.is(i+1, "a", "p") && r.is(i+2, ".") && r.is(i+3, "m")) {
		return r.takeFrom(i, i)
	}
	if _, open := r.before(i, 4, openWords); open && len(r.tokens[i].text) <= 2 && !r.unitFollows(i) {
		return r.takeFrom(i, i)
	}
	return false
}

// postal reads five digits behind a state or "zip", and those with four more.
func (r *reading) postal(i int) bool {
	if len(r.tokens[i].text) != 5 || !allDigits(r.tokens[i].text) {
		return false
	}
	if r.is(i+1, "-") && r.number(i+2) && len(r.tokens[i+2].text) == 4 && r.glued(i+1) && r.glued(i+2) {
		return r.takeFrom(i, i+2)
	}
	_, zip := r.before(i, 2, set("zip", "zipcode", "plz", "postcode"))
	if zip || r.stateAt(i-1) || r.is(i-1, ",") && r.stateAt(i-2) {
		return r.takeFrom(i, i)
	}
	return false
}

var codeWords = set("model", "mod", "serial", "sn", "part", "lot", "stock", "stk", "sku", "ref", "id", "item", "vin", "code", "modell", "typ", "type", "seriennummer", "inv", "inventory")

// code reads numbers of models, serials and lots: behind such a word, or in one
// piece with letters that are no unit.
func (r *reading) code(i int) bool {
	t := &r.tokens[i]
	if t.glued { // AB2400, AB-2400
		prev := &r.tokens[i-1]
		if prev.kind == word && !between(prev.fold) && !currencyWord[prev.fold] && !yearCue[prev.fold] {
			return r.takeFrom(i, i)
		}
		if (prev.text == "-" || prev.text == "_") && prev.glued && r.tokens[i-2].kind == word && capitals(r.tokens[i-2].text) {
			return r.takeFrom(i, i)
		}
	}
	if r.glued(i + 1) { // 9000XL, 9000-XL
		k := i + 1
		if r.is(k, "-") && r.glued(k+1) {
			k++
		}
		n := &r.tokens[k]
		if n.kind == word && capitals(n.text) && !known(n.fold) {
			return r.takeFrom(i, i)
		}
		if k == i+1 && n.kind == word && !known(n.fold) && (len(n.text) <= 3 || r.glued(k+1) && r.number(k+1)) {
			return r.takeFrom(i, i)
		}
	}
	k := i - 1
	for n := 0; n < 3 && (r.is(k, ":", "#", ".", "-", "no", "nr", "number", "is", "s", "n")); n++ {
		k--
	}
	if k >= 0 && r.tokens[k].kind == word && r.tokens[k].line == t.line && codeWords[r.tokens[k].fold] && !r.unitFollows(i) {
		return r.takeFrom(i, i)
	}
	if k < i-1 && (r.is(i-1, "#") || r.is(i-1, ".") && r.is(i-2, "no", "nr")) && !r.unitFollows(i) {
		return r.takeFrom(i, i)
	}
	return false
}

// between are the letters that stand between two figures.
func between(s string) bool { return s == "x" || s == "by" || s == "to" || s == "or" || s == "and" }

// known are the letters that may touch a number and mean something.
func known(s string) bool {
	_, unit := units[s]
	return unit || between(s) || currencyWord[s] || s == "k" || s == "post" || s == "phase" || s == "obo" || s == "firm" ||
		s == "s" || s == "st" || s == "nd" || s == "rd" || s == "th" || s == "yr" || s == "model" || s == "cap" || s == "each" || s == "ea" || s == "ono" || s == "vb" || s == "vhb"
}

// capitals tells a few capitals, as codes have them.
func capitals(s string) bool {
	if len(s) > 4 {
		return false
	}
	for i := range len(s) {
		if s[i] < 'A' || s[i] > 'Z' {
			return false
		}
	}
	return true
}

func allDigits(s string) bool {
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return s != ""
}
