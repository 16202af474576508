// Package rubrics holds the rubric files, one a kind of equipment, and the price
// book, and reads them and a user's own ones strictly: a bad file is refused with
// every problem that was found, each with its line and what would be right.
package rubrics

import (
	"embed"
	"fmt"
	"io/fs"
	"reflect"
	"slices"
	"strings"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/limit"

	yaml "github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
)

//go:embed *.yaml
var files embed.FS

const bookFile = "parts.yaml"

// Options is what a rubric may refer to. A part or limit that is not in here is
// refused.
type Options struct {
	Parts  []appraisal.Part
	Limits []limit.Definition
}

// Book is the price book: example prices that the user replaces by his own.
type Book struct {
	Dated    string           `json:"dated" yaml:"dated" validate:"required,datetime=2006-01-02"`
	Currency string           `json:"currency" yaml:"currency" validate:"required,len=3"`
	Note     string           `json:"note" yaml:"note" validate:"required,max=400"`
	Parts    []appraisal.Part `json:"parts" yaml:"parts" validate:"min=1,dive"`
}

// All reads the embedded rubrics, in order of their ids.
func All() ([]appraisal.Rubric, error) {
	o, err := embedded()
	if err != nil {
		return nil, err
	}
	names, err := fs.Glob(files, "*.yaml")
	if err != nil {
		return nil, err
	}
	var out []appraisal.Rubric
	for _, name := range names {
		if name == bookFile {
			continue
		}
		src, err := files.ReadFile(name)
		if err != nil {
			return nil, err
		}
		r, err := Decode(name, src, o)
		if err != nil {
			return nil, err
		}
		if r.ID+".yaml" != name {
			return nil, fmt.Errorf("%s: the rubric calls itself %q: id and file name must agree", name, r.ID)
		}
		out = append(out, r)
	}
	slices.SortFunc(out, func(a, b appraisal.Rubric) int { return strings.Compare(a.ID, b.ID) })
	return out, nil
}

// embedded gives the price book and the limits the own rubrics refer to.
func embedded() (Options, error) {
	parts, err := Parts()
	return Options{Parts: parts, Limits: limit.All()}, err
}

// Parts gives the parts of the embedded price book.
func Parts() ([]appraisal.Part, error) {
	b, err := PriceBook()
	return b.Parts, err
}

// PriceBook reads the embedded price book.
func PriceBook() (Book, error) {
	src, err := files.ReadFile(bookFile)
	if err != nil {
		return Book{}, err
	}
	return DecodeBook(bookFile, src)
}

// Decode reads a rubric. name is how messages call the file. The error is
// Problems.
func Decode(name string, src []byte, o Options) (appraisal.Rubric, error) {
	return decode(name, src, func(c *checker, r *appraisal.Rubric) { c.rubric(r, o) })
}

// DecodeBook reads a price book. The error is Problems.
func DecodeBook(name string, src []byte) (Book, error) {
	return decode(name, src, (*checker).book)
}

// Validate holds a rubric that came another way (as JSON) to the same rules. The
// error is Problems without line and column.
func Validate(name string, r appraisal.Rubric, o Options) error {
	c := &checker{file: name}
	c.rubric(&r, o)
	if ps := c.problems.tidy(); len(ps) > 0 {
		return ps
	}
	return nil
}

// decode reads one document into T and lets examine judge what came out.
func decode[T any](name string, src []byte, examine func(*checker, *T)) (T, error) {
	var none, out T
	body, problems := read(name, src)
	if problems != nil {
		return none, problems
	}
	s := &shape{file: name, places: places{}}
	s.walk("", body, reflect.TypeFor[T]())
	if s.mistyped {
		return none, s.problems.tidy()
	}
	// Unknown keys were noted above with their places; the rest is still looked at.
	options := []yaml.DecodeOption{yaml.Strict()}
	if len(s.problems) > 0 {
		options = nil
	}
	if err := fill(body, &out, options); err != nil {
		return none, append(s.problems, fromYAML(name, err)).tidy()
	}
	c := &checker{file: name, places: s.places, problems: s.problems}
	examine(c, &out)
	if ps := c.problems.tidy(); len(ps) > 0 {
		return none, ps
	}
	return out, nil
}

// fill decodes; a panic of the library on content that the walk let through
// becomes an error.
func fill(body ast.Node, out any, options []yaml.DecodeOption) (err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("%v", r)
		}
	}()
	return yaml.NodeToValue(body, out, options...)
}

// PartsDated gives the date of the embedded example prices, YYYY-MM-DD.
func PartsDated() (string, error) {
	b, err := PriceBook()
	return b.Dated, err
}
