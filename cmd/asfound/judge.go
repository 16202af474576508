package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"syscall"

	"asfound/rubrics"
	"asfound/rubrics/appraisal"
	"asfound/rubrics/say"
	"asfound/rubrics/tongue"
)

// newJudge reads the rubrics that the program carries and speaks the language of a
// locale such as es-MX; "" is English. The voice is nil for English.
func newJudge(locale string) (*appraisal.Judge, *say.Voice, error) {
	v, err := voiceOf(locale)
	if err != nil {
		return nil, nil, err
	}
	if l := v.Locale().Language; l != "en" {
		t, err := tongue.Load(l)
		if err != nil {
			return nil, nil, err
		}
		all, parts, err := t.Rubrics()
		if err != nil {
			return nil, nil, err
		}
		return appraisal.NewJudge(all, parts).In(v), v, nil
	}
	all, err := rubrics.All()
	if err != nil {
		return nil, nil, err
	}
	parts, err := rubrics.Parts()
	if err != nil {
		return nil, nil, err
	}
	return appraisal.NewJudge(all, parts).In(v), v, nil
}

// voiceOf speaks in a locale; "" is the nil voice.
func voiceOf(locale string) (*say.Voice, error) {
	if locale == "" {
		return nil, nil
	}
	l, ok := say.LocaleOf(locale)
	if !ok {
		var known []string
		for _, l := range say.Locales() {
			known = append(known, l.ID)
		}
		return nil, fmt.Errorf("--language: %.20q is not spoken here: one of %s", locale, strings.Join(known, ", "))
	}
	if l.Language == "en" {
		return say.New(l, nil), nil
	}
	t, err := tongue.Load(l.Language)
	if err != nil {
		return nil, err
	}
	words := t.Words()
	for english, own := range t.Program() {
		words[english] = own
	}
	return say.New(l, words), nil
}

// readAppraisal reads one appraisal file; "-" is standard input.
func readAppraisal(name string) (*appraisal.Document, error) {
	src, err := readBounded(name, appraisal.MaxFile)
	if err != nil {
		return nil, err
	}
	d, err := appraisal.Decode(src)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return d, nil
}

// readBounded reads a file, or standard input for "-", and one byte more than
// most at the utmost, so that what is too large is noticed and not taken in.
func readBounded(name string, most int64) ([]byte, error) {
	var in io.Reader = os.Stdin
	if name != "-" {
		f, err := os.Open(name)
		if err != nil {
			return nil, plainPath(err)
		}
		defer f.Close() // read only: nothing to lose
		in = f
	}
	src, err := io.ReadAll(io.LimitReader(in, most+1))
	if err != nil {
		return nil, plainPath(err)
	}
	return src, nil
}

// writeWhole writes a file beside its place and moves it there, so that a stop
// halfway leaves what was there before.
func writeWhole(name string, text []byte) error {
	info, err := os.Stat(name)
	switch {
	case name == "" || err == nil && info.IsDir():
		return fmt.Errorf("%q is no file to write: give a file's path", name)
	case err == nil && !info.Mode().IsRegular(): // a pipe or device is not to be replaced
		return os.WriteFile(name, text, 0o644)
	case err == nil:
		if name, err = filepath.EvalSymlinks(name); err != nil {
			return plainPath(err)
		}
	}
	f, err := os.CreateTemp(filepath.Dir(name), ".asfound-*")
	if err != nil {
		return fmt.Errorf("cannot write %s (%w): name a folder that exists and is yours", name, err)
	}
	_, err = f.Write(text)
	err = errors.Join(err, f.Chmod(0o644), f.Sync(), f.Close())
	if err == nil {
		err = os.Rename(f.Name(), name)
	}
	if err != nil {
		return errors.Join(fmt.Errorf("cannot write %s (%w): what was there before is kept", name, err), os.Remove(f.Name()))
	}
	return nil
}

// plainPath words a file error for a person.
func plainPath(err error) error {
	switch {
	case errors.Is(err, syscall.EISDIR):
		return fmt.Errorf("%w: give the path of a file", err)
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

// spokenError is an error of the engine in the reader's language.
func spokenError(v *say.Voice, err error) error {
	if v == nil {
		return err
	}
	return errors.New(v.Error(err))
}
