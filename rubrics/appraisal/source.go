package appraisal

import (
	"bytes"
	"encoding/json"
	"io"
	"strconv"
	"unicode/utf8"

	"asfound/rubrics/say"
)

// maxDepth bounds the nesting of an appraisal file; its own form has 5 levels,
// the rest is room for newer programs.
const maxDepth = 32

// characters refuses what the JSON decoder would mend without a word: broken
// UTF-8, NUL, halves of a character; and brackets nested too deep.
func characters(src []byte) error {
	line := func(at int) int { return lineAt(src, int64(at)) }
	if bytes.HasPrefix(src, []byte("\ufeff")) {
		return refuseLine(1, "save it as UTF-8 without one", "the file begins with a byte order mark")
	}
	depth, inText := 0, false
	for i := 0; i < len(src); i++ {
		switch c := src[i]; {
		case c >= utf8.RuneSelf:
			r, size := utf8.DecodeRune(src[i:])
			if r == utf8.RuneError && size == 1 {
				return refuseLine(line(i), "save the file as UTF-8", "byte %#02x is not UTF-8 text", c)
			}
			i += size - 1
		case inText && c == '\\':
			size, what := escape(src[i:])
			if what != "" {
				return refuseLine(line(i), "plain text", "%s", say.ByKey(what))
			}
			i += size - 1
		case c == '"':
			inText = !inText
		case inText:
		case c == '{' || c == '[':
			if depth++; depth > maxDepth {
				return refuseLine(line(i), say.Later("at most %d levels", maxDepth), "brackets are nested too deep")
			}
		case c == '}' || c == ']':
			depth--
		}
	}
	return nil
}

// escape gives the length of the escape that text begins with, and what is wrong
// with the character it stands for.
func escape(text []byte) (size int, what string) {
	unit := func(at int) (rune, bool) {
		if len(text) < at+6 || text[at] != '\\' || text[at+1] != 'u' {
			return 0, false
		}
		n, err := strconv.ParseUint(string(text[at+2:at+6]), 16, 16)
		return rune(n), err == nil
	}
	r, ok := unit(0)
	switch {
	case !ok:
		return 2, "" // another escape, or none: the decoder's to judge
	case r == 0:
		return 6, say.Key("a text holds the character NUL")
	case r >= 0xd800 && r < 0xdc00:
		if low, ok := unit(6); ok && low >= 0xdc00 && low < 0xe000 {
			return 12, ""
		}
		return 6, say.Key("a text holds half a character (a lone surrogate)")
	case r >= 0xdc00 && r < 0xe000:
		return 6, say.Key("a text holds half a character (a lone surrogate)")
	}
	return 6, ""
}

// tree unpacks checked JSON into maps, lists, texts and json.Numbers, and
// refuses a key that stands twice: the decoder would take the last one.
type tree struct {
	src  []byte
	dec  *json.Decoder
	path []string
}

func newTree(src []byte) (map[string]any, error) {
	var whole json.RawMessage
	dec := json.NewDecoder(bytes.NewReader(src))
	if err := dec.Decode(&whole); err != nil {
		return nil, jsonError(src, err)
	}
	if _, err := dec.Token(); err != io.EOF {
		return nil, refuseLine(lineAt(src, dec.InputOffset()), "one JSON object and nothing after it", "the file goes on after its end")
	}
	t := &tree{src: src, dec: json.NewDecoder(bytes.NewReader(src))}
	t.dec.UseNumber()
	v, err := t.value()
	if err != nil {
		return nil, err
	}
	m, ok := v.(map[string]any)
	if !ok {
		return nil, refuse("", "a JSON object, in braces", "the file is %s", found(v))
	}
	return m, nil
}

func (t *tree) value() (any, error) {
	token, err := t.dec.Token()
	if err != nil {
		return nil, jsonError(t.src, err)
	}
	switch token {
	case json.Delim('{'):
		return t.object()
	case json.Delim('['):
		list := []any{}
		for t.dec.More() {
			v, err := t.value()
			if err != nil {
				return nil, err
			}
			list = append(list, v)
		}
		_, err := t.dec.Token()
		return list, err
	}
	return token, nil
}

func (t *tree) object() (any, error) {
	m := map[string]any{}
	for t.dec.More() {
		key, err := t.dec.Token()
		if err != nil {
			return nil, jsonError(t.src, err)
		}
		k, _ := key.(string)
		t.path = append(t.path, k)
		if _, twice := m[k]; twice {
			field := ""
			for _, p := range t.path {
				field = step(field, p)
			}
			return nil, refuse(field, "keep one of the two", "it stands twice, again on line %d", lineAt(t.src, t.dec.InputOffset()))
		}
		if m[k], err = t.value(); err != nil {
			return nil, err
		}
		t.path = t.path[:len(t.path)-1]
	}
	_, err := t.dec.Token()
	return m, err
}
