package record

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"unicode/utf16"
	"unicode/utf8"
)

// Bounds of one value.
const (
	MaxValueBytes = 64 << 10
	MaxValueDepth = 16
)

// ErrValue is what every error about a value is.
var ErrValue = errors.New("not a value")

// Canonical reads one JSON value and writes it as RFC 8785 (JSON Canonicalization Scheme) does: no spaces, keys
// sorted by UTF-16 units, numbers and strings as ECMAScript's JSON.stringify writes them. Equal values have equal
// bytes on every side.
//
// Refused: more than 64 KiB or 16 levels, a number that is not finite as a double, a string with NUL or that is no
// valid Unicode, the same key twice, anything RFC 8259 refuses.
func Canonical(text []byte) ([]byte, error) {
	p := reader{in: text}
	p.space()
	out, err := p.value(make([]byte, 0, len(text)), 0)
	if err == nil {
		if p.space(); p.at < len(p.in) {
			err = p.wrong("something follows the value: one value is expected")
		}
	}
	if err != nil {
		return nil, err
	}
	if len(out) > MaxValueBytes {
		return nil, fmt.Errorf("%w: %d bytes are too many: at most %d", ErrValue, len(out), MaxValueBytes)
	}
	return out, nil
}

type reader struct {
	in []byte
	at int
}

func (p *reader) wrong(what string) error {
	return fmt.Errorf("%w: at byte %d: %s", ErrValue, p.at+1, what)
}

func (p *reader) space() {
	for p.at < len(p.in) {
		switch p.in[p.at] {
		case ' ', '\t', '\n', '\r':
			p.at++
		default:
			return
		}
	}
}

// next is the coming byte, 0 at the end: 0 is no legal byte of JSON outside a string.
func (p *reader) next() byte {
	if p.at < len(p.in) {
		return p.in[p.at]
	}
	return 0
}

func (p *reader) value(out []byte, depth int) ([]byte, error) {
	switch c := p.next(); {
	case (c == '{' || c == '[') && depth == MaxValueDepth:
		return nil, p.wrong("too deep: at most 16 levels")
	case c == '{':
		return p.object(out, depth+1)
	case c == '[':
		return p.list(out, depth+1)
	case c == '"':
		s, err := p.text()
		if err != nil {
			return nil, err
		}
		return appendText(out, s), nil
	case c == '-' || c >= '0' && c <= '9':
		return p.number(out)
	}
	for _, word := range []string{"null", "true", "false"} {
		if len(p.in)-p.at >= len(word) && string(p.in[p.at:p.at+len(word)]) == word {
			p.at += len(word)
			return append(out, word...), nil
		}
	}
	return nil, p.wrong("a JSON value is expected")
}

func (p *reader) list(out []byte, depth int) (_ []byte, err error) {
	p.at++
	out = append(out, '[')
	for first := true; ; first = false {
		p.space()
		if first && p.next() == ']' {
			break
		}
		if out, err = p.value(out, depth); err != nil {
			return nil, err
		}
		p.space()
		if p.next() == ']' {
			break
		}
		if p.next() != ',' {
			return nil, p.wrong("a comma or ] is expected")
		}
		p.at++
		out = append(out, ',')
	}
	p.at++
	return append(out, ']'), nil
}

type member struct {
	key   string
	value []byte
}

func (p *reader) object(out []byte, depth int) ([]byte, error) {
	p.at++
	var members []member
	for first := true; ; first = false {
		p.space()
		if first && p.next() == '}' {
			break
		}
		m, err := p.member(depth)
		if err != nil {
			return nil, err
		}
		members = append(members, m)
		p.space()
		if p.next() == '}' {
			break
		}
		if p.next() != ',' {
			return nil, p.wrong("a comma or } is expected")
		}
		p.at++
	}
	p.at++
	slices.SortFunc(members, func(a, b member) int { return compareUnits(a.key, b.key) })
	out = append(out, '{')
	for i, m := range members {
		if i > 0 {
			if m.key == members[i-1].key {
				return nil, p.wrong(fmt.Sprintf("the key %q stands twice in one object", clip(m.key)))
			}
			out = append(out, ',')
		}
		out = append(appendText(out, m.key), ':')
		out = append(out, m.value...)
	}
	return append(out, '}'), nil
}

func (p *reader) member(depth int) (m member, err error) {
	if p.next() != '"' {
		return m, p.wrong("a key in quotes is expected")
	}
	if m.key, err = p.text(); err != nil {
		return m, err
	}
	if p.space(); p.next() != ':' {
		return m, p.wrong("a colon is expected")
	}
	p.at++
	p.space()
	m.value, err = p.value(nil, depth)
	return m, err
}

func (p *reader) digits() bool {
	from := p.at
	for p.next() >= '0' && p.next() <= '9' {
		p.at++
	}
	return p.at > from
}

func (p *reader) number(out []byte) ([]byte, error) {
	from := p.at
	if p.next() == '-' {
		p.at++
	}
	if p.next() == '0' {
		p.at++
	} else if !p.digits() {
		return nil, p.wrong("a digit is expected")
	}
	if p.next() == '.' {
		if p.at++; !p.digits() {
			return nil, p.wrong("a digit is expected after the point")
		}
	}
	if p.next() == 'e' || p.next() == 'E' {
		p.at++
		if p.next() == '+' || p.next() == '-' {
			p.at++
		}
		if !p.digits() {
			return nil, p.wrong("a digit is expected in the exponent")
		}
	}
	x, err := strconv.ParseFloat(string(p.in[from:p.at]), 64)
	if err != nil || math.IsInf(x, 0) || math.IsNaN(x) {
		return nil, p.wrong("the number " + clip(string(p.in[from:p.at])) + " is too large: at most 1.79e308")
	}
	return appendNumber(out, x), nil
}

// appendNumber writes as ECMAScript's Number::toString does.
func appendNumber(out []byte, x float64) []byte {
	if x == 0 {
		return append(out, '0')
	}
	if size := math.Abs(x); size >= 1e-6 && size < 1e21 {
		return strconv.AppendFloat(out, x, 'f', -1, 64)
	}
	out = strconv.AppendFloat(out, x, 'e', -1, 64)
	if n := len(out); n >= 4 && out[n-4] == 'e' && out[n-2] == '0' { // e-07 is written e-7
		out[n-2] = out[n-1]
		out = out[:n-1]
	}
	return out
}

// compareUnits orders as UTF-16 does: characters above U+FFFF come before U+E000.
func compareUnits(a, b string) int {
	for a != "" && b != "" {
		x, n := utf8.DecodeRuneInString(a)
		y, m := utf8.DecodeRuneInString(b)
		if x != y {
			if firstUnit(x) != firstUnit(y) {
				return int(firstUnit(x) - firstUnit(y))
			}
			return int(x - y)
		}
		a, b = a[n:], b[m:]
	}
	return len(a) - len(b)
}

func firstUnit(r rune) rune {
	if high, _ := utf16.EncodeRune(r); high != utf8.RuneError {
		return high
	}
	return r
}
