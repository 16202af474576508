package main

import (
	"encoding/json"
	"fmt"
	"io"
	"os"

	"asfound/rubrics"
	"asfound/rubrics/appraisal"
)

// newJudge reads the rubrics that the program carries.
func newJudge() (*appraisal.Judge, error) {
	all, err := rubrics.All()
	if err != nil {
		return nil, err
	}
	parts, err := rubrics.Parts()
	if err != nil {
		return nil, err
	}
	return appraisal.NewJudge(all, parts), nil
}

// readAppraisal reads one appraisal file; "-" is standard input.
func readAppraisal(name string) (*appraisal.Document, error) {
	var src []byte
	var err error
	if name == "-" {
		src, err = io.ReadAll(io.LimitReader(os.Stdin, appraisal.MaxFile+1))
	} else {
		src, err = os.ReadFile(name)
	}
	if err != nil {
		return nil, plainPath(err)
	}
	d, err := appraisal.Decode(src)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return d, nil
}

// plainPath words a file error for a person.
func plainPath(err error) error {
	switch {
	case os.IsNotExist(err):
		return fmt.Errorf("%w: give the path of a file that exists", err)
	case os.IsPermission(err):
		return fmt.Errorf("%w: make it readable for you", err)
	}
	return err
}

func printJSON(out io.Writer, v any) error {
	e := json.NewEncoder(out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(v)
}
