package pdf

import (
	"strings"
	"sync"
	"unicode"
)

// notCovered stands for a character that the faces do not have.
const notCovered = '□'

// letter is one drawn character of a paragraph, in the order of reading.
type letter struct {
	drawn rune
	face  *face
	width float64 // thousandths of the size
	level uint8
	// typed is what was written, where it cannot be told from what is drawn.
	typed string
	space bool
	mark  bool
	// ends tells that a line may end behind it; hyphen, that it then shows one.
	ends, hyphen bool
}

// clean gives the paragraphs of a text: no control characters, no marks of
// direction that nobody sees, every line end a new paragraph.
func clean(text string) []string {
	text = strings.ToValidUTF8(text, "\ufffd")
	text = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\u2028", "\n", "\u2029", "\n", "\v", "\n", "\f", "\n").Replace(text)
	text = strings.Map(func(r rune) rune {
		switch {
		case r == '\n', r == nonJoiner, r == joiner, r == softHyphen, r == zeroSpace:
			return r
		case r == '\t':
			return ' '
		case unicode.IsControl(r), unicode.Is(unicode.Cf, r), unicode.Is(unicode.Variation_Selector, r):
			return -1
		}
		return r
	}, text)
	return strings.Split(text, "\n")
}

const (
	softHyphen = '\u00ad'
	zeroSpace  = '\u200b'
	noBreak    = '\u00a0'
)

// letters sets one paragraph in a face; base is its level, odd from right to left.
func letters(paragraph string, heavy bool) (all []letter, base uint8) {
	runes := []rune(paragraph)
	levels, base := embedding(runes)
	formed := make([]rune, len(runes))
	copy(formed, runes)
	arabic(formed)
	first, second := regular, bold
	if heavy {
		first, second = bold, regular
	}
	for i := 0; i < len(runes); i++ {
		r := runes[i]
		if formed[i] == 0 {
			continue
		}
		switch r {
		case nonJoiner, joiner:
			continue
		case zeroSpace, softHyphen:
			if len(all) > 0 {
				all[len(all)-1].ends = true
				all[len(all)-1].hyphen = r == softHyphen
			}
			continue
		}
		l := letter{drawn: formed[i], level: levels[i], space: unicode.IsSpace(r) && r != noBreak && r != '\u202f', mark: isMark(r)}
		if l.level%2 == 1 {
			l.drawn = mirrored(l.drawn)
		}
		if l.space && r != ' ' {
			l.drawn = ' '
		}
		switch {
		case first.has(l.drawn):
			l.face = first
		case second.has(l.drawn):
			l.face = second
		case first.has(r): // a form that the face does not have
			l.face, l.drawn = first, r
		default:
			end := pictureEnd(runes, i)
			l.face, l.drawn, l.typed, l.mark = first, notCovered, string(runes[i:end]), false
			l.ends = true
			i = end - 1
		}
		l.width = l.face.width(l.drawn)
		l.ends = l.ends || l.space || endsLine(runes, i)
		all = append(all, l)
	}
	return all, base
}

// pictureEnd is where the sequence that begins at i ends: a picture with its
// colours and joined pictures is one to who reads it, and so is a letter that is not
// covered with its marks.
func pictureEnd(runes []rune, i int) int {
	end := i + 1
	for end < len(runes) {
		switch r := runes[end]; {
		case r >= 0x1f3fb && r <= 0x1f3ff, r == 0x20e3, unicode.Is(unicode.M, r) && !regular.has(r):
			end++
		case r == joiner && end+1 < len(runes) && !regular.has(runes[end+1]):
			end += 2
		default:
			return end
		}
	}
	return end
}

// endsLine tells that a line may end behind character i though no space follows.
func endsLine(runes []rune, i int) bool {
	if i == 0 || i+1 >= len(runes) || unicode.IsSpace(runes[i-1]) || unicode.IsSpace(runes[i+1]) {
		return false
	}
	switch runes[i] {
	case '-', '‐', '–', '—':
		return !unicode.IsDigit(runes[i+1])
	case '/':
		return !unicode.IsDigit(runes[i-1]) && !unicode.IsDigit(runes[i+1])
	}
	return false
}

// typed turns Arabic forms back into the letters they stand for.
var typed = sync.OnceValue(func() map[rune][]rune {
	m := map[rune][]rune{}
	for letter, form := range arabicForms {
		for k := range form.forms {
			m[form.first+k] = []rune{letter}
		}
	}
	for alef, ligature := range lamAlef {
		m[ligature], m[ligature+1] = []rune{lam, alef}, []rune{lam, alef}
	}
	return m
})
