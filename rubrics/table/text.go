package table

import (
	"bytes"
	"strings"
	"unicode/utf16"
	"unicode/utf8"

	"asfound/rubrics/say"
)

// text gives a file as UTF-8 without byte order mark, or says on which line it
// is none.
func text(src []byte) (string, *Error) {
	switch {
	case len(src) > MaxBytes:
		return "", refuse(0, "the file is too large", "at most 8 MiB")
	case bytes.HasPrefix(src, []byte("PK\x03\x04")), bytes.HasPrefix(src, []byte("\xd0\xcf\x11\xe0")):
		return "", refuse(0, "this is a spreadsheet, not a table as text", "save it as CSV first")
	}
	var s string
	var err *Error
	switch {
	case bytes.HasPrefix(src, []byte("\xff\xfe")):
		s, err = wide(src[2:], 0, 1)
	case bytes.HasPrefix(src, []byte("\xfe\xff")):
		s, err = wide(src[2:], 1, 0)
	default:
		src = bytes.TrimPrefix(src, []byte("\ufeff"))
		err = valid(src)
		s = string(src)
	}
	if err != nil {
		return "", err
	}
	if i := strings.IndexByte(s, 0); i >= 0 {
		return "", refuse(1+breaks(s[:i]), "the file holds the character NUL", "save it as CSV in UTF-8")
	}
	if strings.Trim(s, "\r\n \"\t,;|") == "" {
		return "", refuse(0, "the file is empty", "a line that names the columns, then a line a row")
	}
	return s, nil
}

func valid(src []byte) *Error {
	for i := 0; i < len(src); {
		r, size := utf8.DecodeRune(src[i:])
		if r == utf8.RuneError && size == 1 {
			return refuse(1+breaks(string(src[:i])), say.Later("byte %#02x is not UTF-8 text", src[i]), "save it as CSV in UTF-8")
		}
		i += size
	}
	return nil
}

// wide reads UTF-16; low and high are the places of the two bytes of a unit.
func wide(src []byte, low, high int) (string, *Error) {
	units := make([]uint16, len(src)/2)
	for i := range units {
		units[i] = uint16(src[2*i+low]) | uint16(src[2*i+high])<<8
	}
	halves := func(i int) string { return string(utf16.Decode(units[:i])) }
	for i := 0; i < len(units); i++ {
		if !utf16.IsSurrogate(rune(units[i])) {
			continue
		}
		if i+1 == len(units) || utf16.DecodeRune(rune(units[i]), rune(units[i+1])) == utf8.RuneError {
			return "", refuse(1+breaks(halves(i)), "half a character (a lone surrogate of UTF-16)", "save it as CSV in UTF-8")
		}
		i++
	}
	s := string(utf16.Decode(units))
	if len(src)%2 == 1 {
		return "", refuse(1+breaks(s), "the file stops in the middle of a character", "save it again, as CSV in UTF-8")
	}
	return s, nil
}

// breaks counts the line breaks of s: LF, CR LF, or CR alone.
func breaks(s string) int {
	n := strings.Count(s, "\n")
	if cr := strings.Count(s, "\r"); cr > 0 {
		n += cr - strings.Count(s, "\r\n")
	}
	return n
}
