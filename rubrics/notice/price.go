package notice

import (
	"strings"

	"asfound/rubrics/say"
	"asfound/rubrics/table"
)

// signs are the marks of money.
var signs = map[string]string{"$": "$", "€": "EUR", "£": "GBP", "¥": "¥", "₹": "INR"}

// moneyWords name money behind a number or before it.
var moneyWords = map[string]string{
	"usd": "USD", "cad": "CAD", "aud": "AUD", "nzd": "NZD", "eur": "EUR", "gbp": "GBP", "chf": "CHF", "sek": "SEK", "nok": "NOK", "dkk": "DKK", "pln": "PLN", "mxn": "MXN", "zar": "ZAR",
	"dollar": "$", "dollars": "$", "bucks": "$", "euro": "EUR", "euros": "EUR", "quid": "GBP", "fr": "CHF", "sfr": "CHF", "kr": "kr", "zl": "PLN",
}

// currencyWord are the letters of money that may touch a number.
var currencyWord = set("usd", "cad", "aud", "nzd", "eur", "gbp", "chf", "sek", "nok", "dkk", "pln", "mxn", "zar", "us", "ca", "c", "au", "nz", "kr", "fr", "sfr")

var dollars = map[string]string{"us": "USD", "c": "CAD", "ca": "CAD", "cad": "CAD", "a": "AUD", "au": "AUD", "nz": "NZD", "mx": "MXN"}

var (
	askWords = set("asking", "ask", "price", "priced", "prices", "selling", "sell", "sale", "sells", "want", "wants", "wanting", "take", "takes", "now", "only", "sacrifice", "cash", "offer", "offers",
		"preis", "vhb", "vb", "festpreis", "prix", "precio", "kaufpreis")
	firmWords = set("obo", "ono", "firm", "vb", "vhb", "fp", "negotiable", "neg", "cash", "takes", "buys", "festpreis")
	oldWords  = set("was", "originally", "orig", "from", "over", "retail", "retails", "msrp", "paid", "cost", "costs", "worth", "value", "valued", "invested", "spent", "compare", "neupreis", "np", "statt")
	// newWords tell of a new one's price when they stand beside it.
	newWords = set("new", "neu", "retail", "msrp", "dealers")
	// feeAfter are those that follow a fee, so that "2,400, parts included" keeps its price.
	feeAfter  = set("delivery", "shipping", "freight", "loading", "rigging", "install", "installation", "deposit", "fee", "fees", "extra", "additional", "hour", "hr", "month", "mo", "week", "day", "mile", "mi", "km", "discount", "rent", "rental", "tax", "per", "off", "converter", "repair", "versand", "lieferung")
	feeBefore = set("delivery", "deliver", "delivered", "shipping", "ship", "freight", "loading", "rigging", "install", "installation", "deposit", "hold", "fee", "fees", "extra", "additional", "add", "rent", "rental", "tax", "converter", "repair", "repairs", "replace", "versand", "lieferung")
)

// mostCents bounds an amount: one billion units.
const mostCents = 100_000_000_000

// offer is a number that may be the price, with what speaks for it.
type offer struct {
	figure
	from, to int // tokens, with the signs of money
	currency string
	points   int
	because  string
}

// prices proposes the asking price. What it was, what a new one costs and what
// delivery comes to are told apart by the words about them.
func (r *reading) prices() {
	var all []offer
	for i := 0; i < len(r.tokens); i++ {
		var last *offer
		if n := len(all); n > 0 {
			last = &all[n-1]
		}
		o, ok := r.offerAt(i, last)
		if !ok {
			continue
		}
		all = append(all, o)
		for k := o.first; k <= o.last; k++ {
			r.tokens[k].priced = true
		}
		i = o.last
	}
	asked := 0
	for _, o := range all {
		if o.points >= 0 {
			asked++
		}
	}
	for _, o := range all {
		if o.points < -1 {
			continue
		}
		p := Proposal{Field: "asking", Because: o.because, Sure: Doubtful}
		switch {
		case o.points >= 5 || o.points >= 3 && asked == 1:
			p.Sure = Plain
		case o.points >= 2:
			p.Sure = Likely
		}
		c := int64(o.n*100 + 0.5)
		p.Cents = &c
		if o.currency != "" && !table.Alike(o.currency, r.ask.Currency) {
			p.Foreign = o.currency
		}
		r.propose(o.from, o.to, p)
	}
}

// offerAt reads an amount of money that begins with token i; last is the one
// before it.
func (r *reading) offerAt(i int, last *offer) (offer, bool) {
	f, ok := r.figureAt(i)
	if !ok {
		return offer{}, false
	}
	if s, ok := r.spaced(i); ok && !f.thousands && (r.signBefore(i) != "" || r.signBehind(s.last) != "" || r.firm(s.last) || r.priceWordAt(i-1)) {
		f = s
	}
	o := offer{figure: f, from: i, to: f.last}
	if o.currency = r.signBefore(i); o.currency != "" {
		o.from = i - 1
		if r.glued(i-1) && i > 1 && dollars[r.tokens[i-2].fold] != "" {
			o.from = i - 2
		}
	}
	if behind := r.signBehind(f.last); behind != "" && (o.currency == "" || table.Alike(o.currency, behind)) {
		o.currency = behind
		o.to = r.wholeMark(f.last) + 1
	}
	_, _, unit := r.unitBehind(f.last)
	if unit && o.currency == "" {
		return offer{}, false
	}
	if o.currency == "" && last != nil && last.last == i-2 && last.currency != "" && r.is(i-1, "-", "–") {
		if o.n < 10 {
			return offer{}, false
		}
		o.currency, o.points, o.because = last.currency, 2, say.Key("it is one end of a range")
		last.points, last.because = min(last.points, 2), o.because
		return o, true
	}
	return o, r.weigh(&o, unit)
}

// wholeMark is the last token of the mark of a whole amount behind token i: the
// ",-" of "2.400,- EUR"; i itself where there is none.
func (r *reading) wholeMark(i int) int {
	if r.is(i+1, ",", ".") && r.is(i+2, "-", "–") && r.glued(i+1) && r.glued(i+2) {
		return i + 2
	}
	return i
}

// signAt is the currency of the sign at token i.
func (r *reading) signAt(i int) string {
	if i >= len(r.tokens) || r.tokens[i].kind != mark {
		return ""
	}
	return signs[r.tokens[i].text]
}

// signBefore is the currency that stands before token i.
func (r *reading) signBefore(i int) string {
	if i == 0 || r.tokens[i-1].line != r.tokens[i].line {
		return ""
	}
	t := &r.tokens[i-1]
	if t.kind == mark {
		code := signs[t.text]
		if code == "$" && t.glued && r.tokens[i-2].kind == word && dollars[r.tokens[i-2].fold] != "" {
			return dollars[r.tokens[i-2].fold]
		}
		return code
	}
	if t.kind == word && len(t.fold) == 3 || t.fold == "kr" {
		return moneyWords[t.fold]
	}
	return ""
}

// signBehind is the currency that stands behind token i.
func (r *reading) signBehind(i int) string {
	k := r.wholeMark(i) + 1
	if k >= len(r.tokens) || r.tokens[k].line != r.tokens[i].line {
		return ""
	}
	t := &r.tokens[k]
	switch {
	case t.kind == word:
		return moneyWords[t.fold]
	case r.number(k+1) && r.glued(k+1) && !t.glued: // 9000 $2400
		return ""
	}
	return signs[t.text]
}

// firm tells whether what follows token i is said of a price: obo, firm.
func (r *reading) firm(i int) bool {
	k := r.wholeMark(i) + 1
	if r.signBehind(i) != "" {
		k++
	}
	if r.is(k, ",", "/") {
		k++
	}
	if k >= len(r.tokens) || r.tokens[k].line != r.tokens[i].line {
		return false
	}
	return firmWords[r.tokens[k].fold] || r.is(k, "or") && r.is(k+1, "best", "trade", "nearest") || r.is(k, "o") && r.is(k+2, "b", "n")
}

// weigh counts what speaks for an amount being the asking price and what against;
// false where nothing shows that it is money at all.
func (r *reading) weigh(o *offer, unit bool) bool {
	if o.currency != "" {
		o.points, o.because = 3, say.Key("a sign of money stands beside it")
	}
	asks, old := r.askedBefore(o)
	firm := r.firm(o.last)
	written := &r.tokens[o.first]
	year := o.first == o.last && yearOf(written.text) != 0
	if o.currency == "" {
		plausible := o.n >= 50 && (o.whole || o.other != 0 || strings.ContainsAny(written.text, ",.'"))
		asks = asks && plausible && (!year || r.priceWordAt(o.from-1))
		old, firm = old && plausible && !year && o.n >= 100, firm && plausible
	}
	switch {
	case firm:
		o.points, o.because = o.points+3, say.Key("what follows is said of prices")
	case asks:
		o.points, o.because = o.points+3, say.Key("the words before it ask a price")
	}
	if firm && asks {
		o.points++
	}
	switch {
	case o.points > 0 && r.newBeside(o):
		o.points, o.because = -1, say.Key("it may be the price of a new one")
	case old && !firm:
		o.points, o.because = -1, say.Key("it may be an earlier price, or what a new one costs")
	case o.points > 0 && (unit || r.fee(o)):
		o.points, o.because = -2, say.Key("it may be a fee")
	case o.points > 0 && o.n <= 10:
		o.points, o.because = 0, say.Key("so small a price is often none")
		return o.n >= 0.01
	case o.points > 0 && written.line == 0:
		o.points++
	}
	return o.points != 0 && o.n >= 0.01 && float64(o.n*100) <= mostCents
}

// askedBefore tells whether the words before an amount ask it, or speak of another.
func (r *reading) askedBefore(o *offer) (asks, old bool) {
	i := o.from
	if r.is(i-1, "to") && (i > 1 && r.tokens[i-2].priced || r.is(i-2, "reduced", "dropped", "down", "lowered")) {
		return true, false
	}
	atAsk, asks := r.before(i, 3, askWords)
	atOld, old := r.before(i, 3, oldWords)
	if old && atOld != i-1 && r.is(atOld, "from", "over") { // from the old mill, 2400
		old = false
	}
	if asks && old {
		asks, old = atAsk > atOld, atOld > atAsk
	}
	return asks, old
}

// priceWordAt tells whether a word for asking stands at token i, which a year
// would not follow.
func (r *reading) priceWordAt(i int) bool {
	for n := 0; n < 2 && r.is(i, ":", "is", "-", "="); n++ {
		i--
	}
	return r.is(i, "asking", "ask", "price", "preis", "prix", "precio", "vb", "vhb", "sell", "take", "only", "want")
}

// newBeside tells whether the words beside an amount speak of a new one.
func (r *reading) newBeside(o *offer) bool {
	if at, ok := r.after(o.to, 2, newWords); ok && !r.is(at+1, "motor", "cables", "pump", "seals", "hoses", "price", "tires", "in") {
		return true
	}
	at, ok := r.before(o.from, 3, newWords)
	return ok && !r.is(at+1, "price") && (r.is(at+1, "is", "are", "they", "cost", "costs", "was", "for", "ones", "one", "$", ":", "over", "around", "about") || r.is(at-1, "cost", "costs", "paid", "sell", "sells", "go", "goes", "buy", "price", "a", "retail"))
}

// fee tells whether an amount is said of delivery, a deposit, an hour.
func (r *reading) fee(o *offer) bool {
	if r.is(o.to+1, "/") && r.glued(o.to+1) && o.to+2 < len(r.tokens) && feeAfter[r.tokens[o.to+2].fold] {
		return true
	}
	if r.firm(o.last) {
		return false
	}
	at, ok := r.after(o.to, 2, feeAfter)
	if ok && !r.is(at-1, "no", "free", "with", "includes", "including", "plus", "+", "and") && !r.number(at+1) && r.signAt(at+1) == "" {
		return true
	}
	_, ok = r.before(o.from, 3, feeBefore)
	return ok
}
