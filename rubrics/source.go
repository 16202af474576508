package rubrics

import (
	"bytes"
	"errors"
	"unicode/utf8"

	yaml "github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/lexer"
	"github.com/goccy/go-yaml/parser"
	"github.com/goccy/go-yaml/token"

	"asfound/rubrics/say"
)

const (
	// MaxFile bounds a rubric file, in bytes.
	MaxFile    = 2 << 20
	maxNesting = 16 // of brackets, or of dashes on one line
	// maxKeys bounds the keys of one file, some five times what a long rubric has:
	// the parser's time grows with the square of a group's keys.
	maxKeys = 15_000
)

// read parses one file to its single document. It refuses what such a file never
// needs and what could hide something or exhaust the parser: control characters,
// anchors, aliases, tags, several documents, deep nesting.
func read(name string, src []byte) (body ast.Node, problems Problems) {
	at := func(line, column int, what, right any) (ast.Node, Problems) {
		return nil, Problems{problem(name, position{line, column}, "", what, right)}
	}
	if len(src) > MaxFile {
		return at(1, 1, say.Later("the file has %d bytes", len(src)), say.Later("at most %d", MaxFile))
	}
	if len(bytes.TrimSpace(src)) == 0 {
		return at(1, 1, "the file is empty", "start from a copy of one that works")
	}
	if ps := characters(name, src); len(ps) > 0 {
		return nil, ps
	}
	if line, ok := ended(src); !ok {
		return at(line, 1, "the file stops without its end mark, perhaps half written", "close it with a last line of three dots: ...")
	}
	defer func() {
		if recover() != nil {
			body, problems = at(1, 1, "the file cannot be read as YAML", "check indentation, brackets and closing quotes; a text that holds : or # needs quotes")
		}
	}()
	tokens := lexer.Tokenize(string(src))
	if p := unwelcome(tokens); p != nil {
		p.File = name
		return nil, Problems{p}
	}
	file, err := parser.Parse(tokens, 0)
	if err != nil {
		return nil, Problems{fromYAML(name, err)}
	}
	for _, d := range file.Docs {
		if d == nil || d.Body == nil {
			continue
		}
		if body != nil {
			p := place(d.Body)
			return at(p.line, p.column, "a second document begins here", "keep one document a file")
		}
		body = d.Body
	}
	if body == nil {
		return at(1, 1, "the file holds only comments", "start from a copy of one that works")
	}
	return body, nil
}

// ended looks for the end mark, a last line of three dots; blank lines and
// comments may follow. It also gives the number of the last line.
func ended(src []byte) (lastLine int, ok bool) {
	lines := bytes.Split(bytes.TrimRight(src, "\r\n \t"), []byte("\n"))
	for i := len(lines) - 1; i >= 0; i-- {
		l := bytes.TrimRight(lines[i], "\r \t")
		if len(l) == 0 || l[0] == '#' {
			continue
		}
		return len(lines), string(l) == "..."
	}
	return len(lines), false
}

// characters finds bytes that are no text: broken UTF-8, control characters and
// the marks that turn the reading direction around.
func characters(name string, src []byte) Problems {
	var out Problems
	line, column := 1, 0
	for i := 0; i < len(src) && len(out) < 20; {
		r, size := utf8.DecodeRune(src[i:])
		column++
		switch {
		case r == utf8.RuneError && size == 1:
			out = append(out, problem(name, position{line, column}, "", say.Later("byte %#02x is not UTF-8 text", src[i]), "save the file as UTF-8"))
		case r == '\n':
			line, column = line+1, 0
		case r == '\r' && i+1 < len(src) && src[i+1] == '\n':
		case unprintable(r):
			out = append(out, problem(name, position{line, column}, "", say.Later("control character %U", r), "delete it; indent with spaces"))
		}
		i += size
	}
	return out
}

// unprintable tells control characters, line separators and direction marks;
// a line feed is for the caller to judge.
func unprintable(r rune) bool {
	switch {
	case r < 0x20, r >= 0x7f && r <= 0x9f:
		return true
	case r == 0x2028, r == 0x2029, r >= 0x202a && r <= 0x202e, r >= 0x2066 && r <= 0x2069, r == 0xfeff:
		return true
	}
	return false
}

// unwelcome finds the first token that rubric files do without.
func unwelcome(tokens token.Tokens) *Problem {
	depth, line, dashes, keys := 0, 0, 0, 0
	for _, t := range tokens {
		var what, right any
		switch t.Type {
		case token.AnchorType, token.AliasType, token.MergeKeyType:
			what, right = say.Later("anchors, aliases and merge keys are not read here"), say.Later("write the content out, or quote a text that begins with & or *")
		case token.TagType, token.DirectiveType:
			what, right = say.Later("tags and directives are not read here"), say.Later("drop it, or quote a text that begins with ! or %")
		case token.MappingKeyType:
			what, right = say.Later("keys marked with ? are not read here"), say.Later("write key: value")
		case token.MappingValueType:
			if keys++; keys > maxKeys {
				what, right = say.Later("there are more than %d keys up to here", maxKeys), say.Later("split the file in two")
			}
		case token.MappingStartType, token.SequenceStartType:
			depth++
		case token.MappingEndType, token.SequenceEndType:
			depth--
		case token.SequenceEntryType:
			if t.Position.Line != line {
				line, dashes = t.Position.Line, 0
			}
			dashes++
		}
		if depth > maxNesting || dashes > maxNesting {
			what, right = say.Later("lists are nested too deep here"), say.Later("at most %d", maxNesting)
		}
		if what != nil {
			return problem("", at(t), "", what, right)
		}
	}
	return nil
}

// fromYAML turns the library's error into a problem at its token.
func fromYAML(name string, err error) *Problem {
	const right = "check indentation, brackets and closing quotes; a text that holds : or # needs quotes"
	var ye yaml.Error
	if !errors.As(err, &ye) {
		return problem(name, position{1, 1}, "", "cannot be read as YAML", right)
	}
	place := position{1, 1}
	if t := ye.GetToken(); t != nil {
		place = at(t)
	}
	var twice *yaml.DuplicateKeyError
	if errors.As(err, &twice) {
		return problem(name, place, "", say.Plain(ye.GetMessage()), "keep one of the two")
	}
	return problem(name, place, "", say.Later("cannot be read as YAML, %s", ye.GetMessage()), right)
}
