package pdf

import "strings"

// style of a text: size and distance of baselines in points.
type style struct {
	size, lead float64
	heavy      bool
	ink        colour
}

type colour [3]int

var (
	black = colour{20, 32, 42}
	faint = colour{63, 74, 83}
	ruled = colour{106, 111, 108}
	hair  = colour{190, 190, 184}
	tint  = colour{241, 239, 231}
	white = colour{255, 255, 255}
)

var (
	body   = style{9.5, 13, false, black}
	strong = style{9.5, 13, true, black}
	small  = style{8, 11, false, faint}
	cell   = style{9, 12, false, black}
	cellB  = style{9, 12, true, black}
	head   = style{8, 11, true, black}
	label  = style{7.5, 10, false, faint}
	titled = style{16, 20, true, black}
)

// line is one line of a text: letters in the order they are drawn, left to right.
type line struct {
	letters []letter
	width   float64 // points
	toLeft  bool    // its paragraph runs from right to left
}

// wrap breaks a text into lines no wider than width, in points. A text without any
// letter gives none.
func wrap(text string, st style, width float64) []line {
	if strings.TrimSpace(text) == "" {
		return nil
	}
	var out []line
	for _, paragraph := range clean(text) {
		all, base := letters(paragraph, st.heavy)
		limit := width * 1000 / st.size
		for start := 0; start < len(all); {
			end := lineEnd(all, start, limit)
			if l, ok := lineOf(all[start:end], base, st.size, end < len(all)); ok {
				out = append(out, l)
			}
			start = end
		}
	}
	return out
}

// lineEnd is the index behind the last letter of a line that begins at start.
func lineEnd(all []letter, start int, limit float64) int {
	total, end := 0.0, 0
	for i := start; i < len(all); i++ {
		if total+all[i].width > limit && !all[i].space && i > start {
			if end > start {
				return end
			}
			for i > start+1 && all[i].mark { // never between a letter and its marks
				i--
			}
			return i
		}
		total += all[i].width
		if all[i].ends {
			end = i + 1
		}
	}
	return len(all)
}

func lineOf(part []letter, base uint8, size float64, broken bool) (line, bool) {
	for len(part) > 0 && part[len(part)-1].space {
		part = part[:len(part)-1]
	}
	if len(part) == 0 {
		return line{}, false
	}
	if last := part[len(part)-1]; broken && last.hyphen {
		last.drawn, last.width, last.typed = '-', last.face.width('-'), ""
		part = append(append([]letter(nil), part...), last)
	}
	levels := make([]uint8, len(part))
	for i, l := range part {
		levels[i] = l.level
	}
	order := visual(levels, base, func(i int) bool { return part[i].space })
	l := line{letters: make([]letter, len(part)), toLeft: base == 1}
	for i, k := range order {
		l.letters[i] = part[k]
		l.width += part[k].width * size / 1000
	}
	return l, true
}

// widest is the width of the longest word of a text, in points.
func widest(text string, st style) float64 {
	most := 0.0
	for _, paragraph := range clean(text) {
		all, _ := letters(paragraph, st.heavy)
		word := 0.0
		for _, l := range all {
			word += l.width * st.size / 1000
			if l.space || l.ends {
				word = 0
			}
			most = max(most, word)
		}
	}
	return most
}
