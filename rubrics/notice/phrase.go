package notice

import (
	"slices"
	"sort"
	"strings"

	"asfound/rubrics/say"
)

// phrase is a run of words that speaks for an answer.
type phrase struct {
	words  []string
	answer int
	sure   string
}

// phrases are looked up by their first word.
type phrases map[string][]phrase

// longestPhrase bounds the words of a phrase that is looked for.
const longestPhrase = 8

// same brings words that mean the same in a listing to one.
var same = map[string]string{
	"single": "1", "one": "1", "two": "2", "twin": "2", "three": "3", "four": "4", "ph": "phase", "ø": "phase", "φ": "phase",
	"vehicle": "car", "auto": "car", "automotive": "car", "hoist": "lift", "volts": "volt", "v": "volt",
}

// plainForm is a word as phrases are compared: one word for what means the same,
// and no plural.
func plainForm(s string) string {
	if len(s) > 3 && strings.HasSuffix(s, "s") && !strings.HasSuffix(s, "ss") {
		s = s[:len(s)-1]
	}
	if other, ok := same[s]; ok {
		return other
	}
	return s
}

// form is token i as phrases are compared, "" for one that they pass over.
func (r *reading) form(i int) string {
	switch t := &r.tokens[i]; t.kind {
	case word:
		return plainForm(t.fold)
	case number:
		return t.text
	case mark:
		return same[t.text]
	}
	return ""
}

// wordsOf are the words of a phrase as they are compared.
func wordsOf(s string) []string {
	var out []string
	for _, t := range tokens(s) {
		switch {
		case t.kind == word && t.fold != "":
			out = append(out, plainForm(t.fold))
		case t.kind == number:
			out = append(out, t.text)
		}
	}
	return out
}

func (p phrases) add(text string, answer int, sure string) {
	words := wordsOf(text)
	if len(words) > 0 && len(words) <= longestPhrase {
		p[words[0]] = append(p[words[0]], phrase{words, answer, sure})
	}
}

// hit is a phrase found in the text.
type hit struct {
	answer      int
	sure        string
	first, last int
	words       int
}

// find looks for all phrases; of those for one answer that begin at a token the
// longest counts.
func (r *reading) find(p phrases) []hit {
	var out []hit
	for i := range r.tokens {
		if r.tokens[i].taken || len(p[r.form(i)]) == 0 {
			continue
		}
		for _, ph := range p[r.form(i)] {
			last, ok := r.matches(i, ph.words)
			if !ok || r.denied(i) {
				continue
			}
			h := hit{ph.answer, ph.sure, i, last, len(ph.words)}
			if n := len(out); n > 0 && out[n-1].first == i && out[n-1].answer == h.answer {
				if h.words > out[n-1].words {
					out[n-1] = h
				}
				continue
			}
			out = append(out, h)
		}
	}
	return out
}

// matches holds words against the tokens from i on; marks between them are passed
// over, ends of thoughts are not.
func (r *reading) matches(i int, words []string) (last int, ok bool) {
	k := i
	for n, w := range words {
		for skipped := 0; n > 0 && k < len(r.tokens) && r.tokens[k].kind == mark && r.form(k) == "" && skipped < 2; skipped++ {
			if r.stops(k) {
				return 0, false
			}
			k++
		}
		if k >= len(r.tokens) || r.tokens[k].line > r.tokens[i].line+1 || r.form(k) != w {
			return 0, false
		}
		last = k
		k++
	}
	return last, true
}

// denied tells whether a word for no stands right before token i.
func (r *reading) denied(i int) bool {
	at, ok := r.before(i, 2, notWords)
	return ok && !r.is(at+1, "problem", "issues")
}

// kinds proposes the kind of equipment and settles whose words are looked for next.
func (r *reading) kinds() {
	for i := range r.ask.Kinds {
		if r.ask.Kinds[i].ID == r.ask.Kind {
			r.kind = &r.ask.Kinds[i]
			return
		}
	}
	p := phrases{}
	heads := map[string]int{}
	for i, k := range r.ask.Kinds {
		p.add(k.Title, i, Plain)
		p.add(k.ID, i, Plain)
		for _, w := range k.Words {
			p.add(w, i, Plain)
		}
		if words := wordsOf(k.Title); len(words) > 0 {
			heads[words[len(words)-1]]++
		}
	}
	for i, k := range r.ask.Kinds { // "lathe" alone says it where only one kind is a lathe
		if words := wordsOf(k.Title); len(words) > 1 {
			sure := Doubtful
			if heads[words[len(words)-1]] == 1 {
				sure = Likely
			}
			p.add(words[len(words)-1], i, sure)
		}
	}
	hits := r.find(p)
	best := map[int]hit{}
	for _, h := range hits {
		if old, ok := best[h.answer]; !ok || rank(h.sure) < rank(old.sure) {
			best[h.answer] = h
		}
	}
	var order []hit
	for _, h := range best {
		order = append(order, h)
	}
	sort.Slice(order, func(a, b int) bool {
		x, y := order[a], order[b]
		if rank(x.sure) != rank(y.sure) {
			return rank(x.sure) < rank(y.sure)
		}
		if x.first != y.first {
			return x.first < y.first
		}
		return x.answer < y.answer
	})
	plain := 0
	for _, h := range order {
		if h.sure == Plain {
			plain++
		}
	}
	for n, h := range order {
		if plain > 0 && h.sure != Plain {
			continue // the longer words say which
		}
		sure, because := h.sure, say.Key("the text names it")
		if plain > 1 && n > 0 {
			sure, because = Likely, say.Key("the text names it too")
		} else if sure != Plain {
			because = say.Key("it is one of the kinds called so")
		}
		k := &r.ask.Kinds[h.answer]
		r.propose(h.first, h.last, Proposal{Field: "rubric", Text: k.ID, Title: k.Title, Sure: sure, Because: because})
	}
	if len(order) > 0 && (order[0].sure == Plain || len(order) == 1) {
		r.kind = &r.ask.Kinds[order[0].answer]
	}
}

func rank(sure string) int {
	switch sure {
	case Plain:
		return 0
	case Likely:
		return 1
	}
	return 2
}

// facts proposes answers to the questions of the kind.
func (r *reading) facts() {
	if r.kind == nil {
		return
	}
	for _, fact := range r.kind.Facts {
		p := phrases{}
		for i, o := range fact.Options {
			for _, w := range o.Words {
				p.add(w, i, Plain)
			}
			// A title of several words says so; of one word only where it is a rare one.
			for _, text := range []string{o.Title, head(o.Title), strings.ReplaceAll(o.ID, "-", " ")} {
				switch words := wordsOf(text); {
				case telling(words) > 1:
					p.add(text, i, Likely)
				case len(words) == 1 && len(words[0]) >= 6 && named(o.Title, words[0]) && !shared(fact.Options, i, words[0]):
					p.add(text, i, Doubtful)
				}
			}
		}
		hits := r.longest(r.find(p))
		met := map[int]bool{}
		for _, h := range hits {
			met[h.answer] = true
		}
		for n, h := range hits {
			o := &fact.Options[h.answer]
			sure, because := h.sure, say.Key("the text says so")
			near := hits[max(0, n-longestPhrase):min(len(hits), n+longestPhrase)]
			if slices.ContainsFunc(near, func(o hit) bool { return o.first == h.first && o.last == h.last && o.answer != h.answer }) {
				sure, because = Doubtful, say.Key("the same words would fit another answer")
			} else if len(met) > 1 && sure == Plain {
				sure, because = Likely, say.Key("the text speaks of more than one answer")
			}
			r.propose(h.first, h.last, Proposal{Field: "fact/" + fact.ID, Text: o.ID, Title: o.Title, Sure: sure, Because: because})
		}
	}
}

// longest drops hits that stand inside a longer one: "chain" in "chain and cable".
func (r *reading) longest(hits []hit) []hit {
	var out []hit
	for i, h := range hits {
		inside := false
		for k := max(0, i-longestPhrase); k < min(len(hits), i+longestPhrase); k++ {
			o := hits[k]
			inside = inside || o.first <= h.first && o.last >= h.last && o.last-o.first > h.last-h.first
		}
		if !inside {
			out = append(out, h)
		}
	}
	return out
}

// small words tell nothing alone: "by hand", "on the floor".
var small = set("a", "an", "the", "on", "by", "of", "in", "with", "without", "no", "not", "it", "its", "own", "as", "up", "or", "and", "to", "be", "is", "are", "only", "can", "will", "who", "somebody")

// telling counts the words that say something.
func telling(words []string) (n int) {
	for _, w := range words {
		if !small[w] {
			n++
		}
	}
	return n
}

// head is what a title begins with, up to a comma or bracket.
func head(title string) string {
	if i := strings.IndexAny(title, ",;:("); i > 0 {
		return title[:i]
	}
	return title
}

// named tells whether a title has a word.
func named(title, word string) bool {
	for _, w := range wordsOf(title) {
		if w == word {
			return true
		}
	}
	return false
}

// shared tells whether another answer has the word too.
func shared(options []Option, i int, word string) bool {
	for k := range options {
		if k != i && (named(options[k].Title, word) || named(strings.ReplaceAll(options[k].ID, "-", " "), word)) {
			return true
		}
	}
	return false
}
