package record

import (
	"strconv"
	"unicode/utf16"
	"unicode/utf8"
)

// text reads a string in quotes and gives its characters.
func (p *reader) text() (string, error) {
	p.at++
	var out []byte
	for {
		from := p.at
		for p.at < len(p.in) && p.in[p.at] >= ' ' && p.in[p.at] != '"' && p.in[p.at] != '\\' {
			p.at++
		}
		if part := p.in[from:p.at]; !utf8.Valid(part) {
			return "", p.wrong("the text before is not valid UTF-8")
		} else if p.at < len(p.in) && p.in[p.at] == '"' && out == nil {
			p.at++
			return string(part), nil
		} else {
			out = append(out, part...)
		}
		switch {
		case p.at >= len(p.in):
			return "", p.wrong("the text does not end: a closing quote is expected")
		case p.in[p.at] == '"':
			p.at++
			return string(out), nil
		case p.in[p.at] != '\\':
			return "", p.wrong("a control character in a text: it must be escaped")
		}
		var err error
		if out, err = p.escape(out); err != nil {
			return "", err
		}
	}
}

func (p *reader) escape(out []byte) ([]byte, error) {
	p.at++
	c := p.next()
	p.at++
	switch c {
	case '"', '\\', '/':
		return append(out, c), nil
	case 'b':
		return append(out, '\b'), nil
	case 'f':
		return append(out, '\f'), nil
	case 'n':
		return append(out, '\n'), nil
	case 'r':
		return append(out, '\r'), nil
	case 't':
		return append(out, '\t'), nil
	case 'u':
		return p.unicode(out)
	}
	p.at--
	return nil, p.wrong("unknown escape in a text")
}

func (p *reader) unicode(out []byte) ([]byte, error) {
	r, ok := p.unit()
	if !ok {
		return nil, p.wrong("four hex digits are expected after \\u")
	}
	if r == 0 {
		return nil, p.wrong("a NUL character in a text: leave it out")
	}
	if utf16.IsSurrogate(r) {
		if p.at+2 > len(p.in) || p.in[p.at] != '\\' || p.in[p.at+1] != 'u' {
			return nil, p.wrong("half a character (a lone surrogate) in a text")
		}
		p.at += 2
		low, ok := p.unit()
		if r = utf16.DecodeRune(r, low); !ok || r == utf8.RuneError {
			return nil, p.wrong("half a character (a lone surrogate) in a text")
		}
	}
	return utf8.AppendRune(out, r), nil
}

func (p *reader) unit() (rune, bool) {
	if p.at+4 > len(p.in) {
		return 0, false
	}
	for _, c := range p.in[p.at : p.at+4] {
		if (c < '0' || c > '9') && (c < 'a' || c > 'f') && (c < 'A' || c > 'F') {
			return 0, false
		}
	}
	n, err := strconv.ParseUint(string(p.in[p.at:p.at+4]), 16, 16)
	p.at += 4
	return rune(n), err == nil
}

// appendText writes a string with only the escapes that ECMAScript's JSON.stringify writes.
func appendText(out []byte, s string) []byte {
	const digits = "0123456789abcdef"
	out = append(out, '"')
	for i := 0; i < len(s); i++ {
		switch c := s[i]; {
		case c == '"' || c == '\\':
			out = append(out, '\\', c)
		case c >= ' ':
			out = append(out, c)
		case c == '\b':
			out = append(out, '\\', 'b')
		case c == '\f':
			out = append(out, '\\', 'f')
		case c == '\n':
			out = append(out, '\\', 'n')
		case c == '\r':
			out = append(out, '\\', 'r')
		case c == '\t':
			out = append(out, '\\', 't')
		default:
			out = append(out, '\\', 'u', '0', '0', digits[c>>4], digits[c&15])
		}
	}
	return append(out, '"')
}
