package rubrics

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/say"
)

// Problem is one thing wrong in a file: where, what, and what would be right.
// Line and Column count from 1 and are 0 where the content came from no file.
type Problem struct {
	File   string `json:"file"`
	Line   int    `json:"line"`
	Column int    `json:"column"`
	Field  string `json:"field,omitempty"` // path such as sections[2].checks[4].weight
	What   string `json:"what"`
	Right  string `json:"right"`

	what, right say.Text
}

// problem makes one of two texts, each a string or a say.Text.
func problem(file string, at position, field string, what, right any) *Problem {
	p := &Problem{File: file, Line: at.line, Column: at.column, Field: field}
	return p.because(what, right)
}

// because sets what is wrong and what would be right.
func (p *Problem) because(what, right any) *Problem {
	p.what, p.right = say.Of(what), say.Of(right)
	p.What, p.Right = p.what.String(), p.right.String()
	return p
}

// Said is the problem in a language.
func (p *Problem) Said(v *say.Voice) Problem {
	out := *p
	if v != nil {
		out.What, out.Right = p.what.In(v), p.right.In(v)
	}
	return out
}

// Error gives file:line:column: field: what: what would be right.
func (p *Problem) Error() string {
	s := p.File
	if p.Line > 0 {
		s += fmt.Sprintf(":%d:%d", p.Line, p.Column)
	}
	for _, part := range []string{p.Field, p.What, p.Right} {
		if part != "" {
			s += ": " + part
		}
	}
	return s
}

// Problems is the error of a refused file: all that was found, in file order.
type Problems []*Problem

// Error gives one line a problem.
func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap lets errors.As find the single problems.
func (ps Problems) Unwrap() []error {
	out := make([]error, len(ps))
	for i, p := range ps {
		out[i] = p
	}
	return out
}

// maxProblems is how many are told at once; a file with more is none of ours, or
// has one cause.
const maxProblems = 50

// tidy sorts by place and keeps one problem a field and message. A field inside
// a missing or mistyped one says nothing new.
func (ps Problems) tidy() Problems {
	absent := map[string]bool{}
	for _, p := range ps {
		if p.What == appraisal.IsMissing {
			absent[p.Field] = true
		}
	}
	kept := ps[:0:0]
	seen := map[string]bool{}
	for _, p := range ps {
		key := p.Field + "\x00" + p.What
		if seen[key] || insideAbsent(p, absent) {
			continue
		}
		seen[key] = true
		kept = append(kept, p)
	}
	slices.SortStableFunc(kept, func(a, b *Problem) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column), cmp.Compare(a.Field, b.Field))
	})
	if more := len(kept) - maxProblems; more > 0 {
		last := *kept[maxProblems]
		last.Field = ""
		last.because(say.Later("and %d more problems from here on", more), "put these right first")
		kept = append(kept[:maxProblems], &last)
	}
	return kept
}

func insideAbsent(p *Problem, absent map[string]bool) bool {
	if absent[p.Field] && p.What != appraisal.IsMissing {
		return true
	}
	for path := parent(p.Field); path != ""; path = parent(path) {
		if absent[path] {
			return true
		}
	}
	return false
}

// parent cuts the last step off a path: a.b[2] -> a.b -> a -> "".
func parent(path string) string {
	i := strings.LastIndexAny(path, ".[")
	if i < 0 {
		return ""
	}
	return path[:i]
}
