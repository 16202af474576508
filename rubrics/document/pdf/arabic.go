package pdf

import "golang.org/x/text/unicode/bidi"

// arabicForm is where the written forms of a letter begin in the Unicode charts
// "Arabic Presentation Forms-A" and "-B": isolated, final and, of letters that join
// on both sides, initial and medial.
type arabicForm struct {
	first rune
	forms rune
}

var arabicForms = map[rune]arabicForm{
	0x0621: {0xfe80, 1}, 0x0622: {0xfe81, 2}, 0x0623: {0xfe83, 2}, 0x0624: {0xfe85, 2},
	0x0625: {0xfe87, 2}, 0x0626: {0xfe89, 4}, 0x0627: {0xfe8d, 2}, 0x0628: {0xfe8f, 4},
	0x0629: {0xfe93, 2}, 0x062a: {0xfe95, 4}, 0x062b: {0xfe99, 4}, 0x062c: {0xfe9d, 4},
	0x062d: {0xfea1, 4}, 0x062e: {0xfea5, 4}, 0x062f: {0xfea9, 2}, 0x0630: {0xfeab, 2},
	0x0631: {0xfead, 2}, 0x0632: {0xfeaf, 2}, 0x0633: {0xfeb1, 4}, 0x0634: {0xfeb5, 4},
	0x0635: {0xfeb9, 4}, 0x0636: {0xfebd, 4}, 0x0637: {0xfec1, 4}, 0x0638: {0xfec5, 4},
	0x0639: {0xfec9, 4}, 0x063a: {0xfecd, 4}, 0x0641: {0xfed1, 4}, 0x0642: {0xfed5, 4},
	0x0643: {0xfed9, 4}, 0x0644: {0xfedd, 4}, 0x0645: {0xfee1, 4}, 0x0646: {0xfee5, 4},
	0x0647: {0xfee9, 4}, 0x0648: {0xfeed, 2}, 0x0649: {0xfeef, 2}, 0x064a: {0xfef1, 4},
	0x0671: {0xfb50, 2}, 0x0679: {0xfb66, 4}, 0x067a: {0xfb5e, 4}, 0x067b: {0xfb52, 4},
	0x067e: {0xfb56, 4}, 0x067f: {0xfb62, 4}, 0x0680: {0xfb5a, 4}, 0x0683: {0xfb76, 4},
	0x0684: {0xfb72, 4}, 0x0686: {0xfb7a, 4}, 0x0687: {0xfb7e, 4}, 0x0688: {0xfb88, 2},
	0x068c: {0xfb84, 2}, 0x068d: {0xfb82, 2}, 0x068e: {0xfb86, 2}, 0x0691: {0xfb8c, 2},
	0x0698: {0xfb8a, 2}, 0x06a4: {0xfb6a, 4}, 0x06a6: {0xfb6e, 4}, 0x06a9: {0xfb8e, 4},
	0x06ad: {0xfbd3, 4}, 0x06af: {0xfb92, 4}, 0x06b1: {0xfb9a, 4}, 0x06b3: {0xfb96, 4},
	0x06ba: {0xfb9e, 2}, 0x06bb: {0xfba0, 4}, 0x06be: {0xfbaa, 4}, 0x06c0: {0xfba4, 2},
	0x06c1: {0xfba6, 4}, 0x06c5: {0xfbe0, 2}, 0x06c6: {0xfbd9, 2}, 0x06c7: {0xfbd7, 2},
	0x06c8: {0xfbdb, 2}, 0x06c9: {0xfbe2, 2}, 0x06cb: {0xfbde, 2}, 0x06cc: {0xfbfc, 4},
	0x06d0: {0xfbe4, 4}, 0x06d2: {0xfbae, 2}, 0x06d3: {0xfbb0, 2},
}

// lamAlef is the isolated ligature of lam with an alef; the final one follows it.
var lamAlef = map[rune]rune{0x0622: 0xfef5, 0x0623: 0xfef7, 0x0625: 0xfef9, 0x0627: 0xfefb}

const (
	lam       = 0x0644
	tatweel   = 0x0640
	nonJoiner = 0x200c
	joiner    = 0x200d
)

// joinsOn tells that a letter reaches to the one after it.
func joinsOn(r rune) bool {
	return arabicForms[r].forms == 4 || r == tatweel || r == joiner
}

// joinsBack tells that a letter takes up the one before it.
func joinsBack(r rune) bool {
	return arabicForms[r].forms >= 2 || r == tatweel || r == joiner
}

// arabic writes letters in the form that their neighbours ask for. A letter of a
// ligature that is used up becomes 0.
func arabic(text []rune) {
	written := make([]rune, len(text))
	copy(written, text)
	before := -1 // the letter before, marks apart
	for i := 0; i < len(text); i++ {
		r := text[i]
		if isMark(r) {
			continue
		}
		form, is := arabicForms[r]
		if !is {
			before = i
			continue
		}
		next := i + 1
		for next < len(text) && isMark(text[next]) {
			next++
		}
		back := before >= 0 && joinsOn(text[before]) && form.forms >= 2
		on := form.forms == 4 && next < len(text) && joinsBack(text[next])
		if ligature := rune(0); r == lam && next < len(text) {
			if ligature = lamAlef[text[next]]; ligature != 0 {
				if back {
					ligature++
				}
				written[i], written[next] = ligature, 0
				before = next
				i = next
				continue
			}
		}
		switch {
		case back && on:
			written[i] = form.first + 3
		case on:
			written[i] = form.first + 2
		case back:
			written[i] = form.first + 1
		default:
			written[i] = form.first
		}
		before = i
	}
	copy(text, written)
}

// typedLetters are the letters of an Arabic form as they are typed; nil of any other
// character.
func typedLetters(r rune) []rune { return typed()[r] }

// isMark tells a mark that stands on the letter before it.
func isMark(r rune) bool {
	p, _ := bidi.LookupRune(r)
	return p.Class() == bidi.NSM
}
