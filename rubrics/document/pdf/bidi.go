package pdf

import (
	"slices"

	"golang.org/x/text/unicode/bidi"
)

// embedding gives every character its level by the Unicode bidirectional algorithm
// (UAX #9), and the level of the paragraph. Explicit embeddings are not taken: they
// are removed before, since nobody sees what they do.
func embedding(text []rune) (levels []uint8, base uint8) {
	class := make([]bidi.Class, len(text))
	plain := true
	for i, r := range text {
		p, _ := bidi.LookupRune(r)
		class[i] = p.Class()
		plain = plain && class[i] != bidi.R && class[i] != bidi.AL && class[i] != bidi.AN
	}
	levels = make([]uint8, len(text))
	if plain {
		return levels, 0
	}
	for _, c := range class { // P2, P3
		if c == bidi.L {
			break
		}
		if c == bidi.R || c == bidi.AL {
			base = 1
			break
		}
	}
	own := bidi.L
	if base == 1 {
		own = bidi.R
	}
	weak(class, own)
	brackets(text, class, own)
	neutral(class, own)
	for i, c := range class { // I1, I2
		levels[i] = base
		switch {
		case base == 0 && c == bidi.R, base == 1 && (c == bidi.L || c == bidi.EN || c == bidi.AN):
			levels[i]++
		case base == 0 && (c == bidi.EN || c == bidi.AN):
			levels[i] += 2
		}
	}
	return levels, base
}

// weak resolves numbers and what belongs to them: W1 to W7.
func weak(class []bidi.Class, own bidi.Class) {
	before := own
	for i, c := range class { // W1
		if c == bidi.NSM {
			class[i] = before
		}
		before = class[i]
	}
	strong := own
	for i, c := range class { // W2, W3
		switch c {
		case bidi.L, bidi.R, bidi.AL:
			strong = c
		case bidi.EN:
			if strong == bidi.AL {
				class[i] = bidi.AN
			}
		}
		if c == bidi.AL {
			class[i] = bidi.R
		}
	}
	for i := 1; i+1 < len(class); i++ { // W4
		a, b := class[i-1], class[i+1]
		if a == b && (class[i] == bidi.CS && (a == bidi.EN || a == bidi.AN) || class[i] == bidi.ES && a == bidi.EN) {
			class[i] = a
		}
	}
	for i := 0; i < len(class); { // W5, W6
		end := i
		for end < len(class) && class[end] == bidi.ET {
			end++
		}
		if end == i {
			i++
			continue
		}
		becomes := bidi.ON
		if i > 0 && class[i-1] == bidi.EN || end < len(class) && class[end] == bidi.EN {
			becomes = bidi.EN
		}
		for ; i < end; i++ {
			class[i] = becomes
		}
	}
	strong = own
	for i, c := range class { // W6, W7
		switch c {
		case bidi.ES, bidi.CS:
			class[i] = bidi.ON
		case bidi.L, bidi.R:
			strong = c
		case bidi.EN:
			if strong == bidi.L {
				class[i] = bidi.L
			}
		}
	}
}

// side is the direction a resolved class counts as beside neutrals; ON if none.
func side(c bidi.Class) bidi.Class {
	switch c {
	case bidi.L:
		return bidi.L
	case bidi.R, bidi.EN, bidi.AN:
		return bidi.R
	}
	return bidi.ON
}

// brackets turns a pair of brackets to the side of what they hold: N0.
func brackets(text []rune, class []bidi.Class, own bidi.Class) {
	type opened struct {
		close rune
		at    int
	}
	var stack []opened
	var pairs [][2]int
	for i, r := range text {
		p, _ := bidi.LookupRune(r)
		if class[i] != bidi.ON || !p.IsBracket() {
			continue
		}
		if p.IsOpeningBracket() {
			if len(stack) == 63 { // BD16
				break
			}
			stack = append(stack, opened{mirrored(r), i})
			continue
		}
		for k := len(stack) - 1; k >= 0; k-- {
			if stack[k].close == r {
				pairs = append(pairs, [2]int{stack[k].at, i})
				stack = stack[:k]
				break
			}
		}
	}
	slices.SortFunc(pairs, func(a, b [2]int) int { return a[0] - b[0] })
	original := func(i int) bool { p, _ := bidi.LookupRune(text[i]); return p.Class() == bidi.NSM }
	for _, pair := range pairs {
		found := bidi.ON
		for _, c := range class[pair[0]+1 : pair[1]] {
			if s := side(c); s == own {
				found = own
				break
			} else if s != bidi.ON {
				found = s
			}
		}
		if found == bidi.ON {
			continue
		}
		if found != own {
			context := own
			for k := pair[0] - 1; k >= 0; k-- {
				if s := side(class[k]); s != bidi.ON {
					context = s
					break
				}
			}
			found = own
			if context != own {
				found = context
			}
		}
		for _, at := range pair {
			class[at] = found
			for k := at + 1; k < len(text) && original(k); k++ {
				class[k] = found
			}
		}
	}
}

// neutral gives what has no direction the one of its surroundings: N1, N2.
func neutral(class []bidi.Class, own bidi.Class) {
	before := own
	for i := 0; i < len(class); {
		if s := side(class[i]); s != bidi.ON {
			before = s
			i++
			continue
		}
		end := i
		for end < len(class) && side(class[end]) == bidi.ON {
			end++
		}
		after := own
		if end < len(class) {
			after = side(class[end])
		}
		becomes := own
		if before == after {
			becomes = before
		}
		for ; i < end; i++ {
			class[i] = becomes
		}
	}
}

// visual is the order in which the characters of one line stand from left to right
// (L1, L2): indexes into levels. Marks are not turned back behind their letters (L3):
// the faces draw those of Hebrew and Arabic to the right of where they stand.
func visual(levels []uint8, base uint8, space func(i int) bool) []int {
	level := slices.Clone(levels)
	for i := len(level) - 1; i >= 0 && space(i); i-- {
		level[i] = base
	}
	order := make([]int, len(level))
	highest := uint8(0)
	for i := range order {
		order[i] = i
		highest = max(highest, level[i])
	}
	for l := highest; l >= 1; l-- {
		for i := 0; i < len(order); {
			end := i
			for end < len(order) && level[order[end]] >= l {
				end++
			}
			slices.Reverse(order[i:end])
			i = max(end, i+1)
		}
	}
	return order
}

var mirrors = func() map[rune]rune {
	m := map[rune]rune{}
	pairs := []rune("()[]{}<>«»‹›≤≥⟨⟩⁅⁆⁽⁾₍₎⌈⌉⌊⌋")
	for i := 0; i < len(pairs); i += 2 {
		m[pairs[i]], m[pairs[i+1]] = pairs[i+1], pairs[i]
	}
	return m
}()

// mirrored is the character that shows r in a text from right to left.
func mirrored(r rune) rune {
	if m, ok := mirrors[r]; ok {
		return m
	}
	return r
}
