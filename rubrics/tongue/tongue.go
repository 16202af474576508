// Package tongue holds the languages besides English: the engine's sentences, the
// labels, and what rubrics and limits say, each text beside the English one. It reads
// its files strictly and puts a whole catalogue into a language; it judges nothing.
package tongue

import (
	"embed"
	"fmt"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"
	"sync"
)

//go:embed */*.yaml
var files embed.FS

// Languages are those besides English that there are files of.
var Languages = []string{"es"}

// Tongue is one language.
type Tongue struct {
	Language string
	// files are the texts by their English, by the name of the file without .yaml.
	files map[string]map[string]string
	once  sync.Once
	order []string
}

var (
	loading sync.Mutex
	known   = map[string]*Tongue{}
)

// Load reads the files of a language. The error names file and line.
func Load(language string) (*Tongue, error) {
	loading.Lock()
	defer loading.Unlock()
	if t := known[language]; t != nil {
		return t, nil
	}
	names, err := fs.Glob(files, language+"/*.yaml")
	if err != nil || len(names) == 0 {
		return nil, fmt.Errorf("there are no files of the language %.20q: one of %v", language, Languages)
	}
	t := &Tongue{Language: language, files: map[string]map[string]string{}}
	for _, name := range names {
		src, err := files.ReadFile(name)
		if err != nil {
			return nil, err
		}
		pairs, err := read(name, language, src)
		if err != nil {
			return nil, err
		}
		t.files[strings.TrimSuffix(path.Base(name), ".yaml")] = pairs
	}
	known[language] = t
	return t, nil
}

// Words are the engine's sentences and labels by their English: all files but those of
// the rubrics and the price book, whose texts stand in the catalogue itself.
func (t *Tongue) Words() map[string]string {
	out := map[string]string{}
	for _, name := range t.shared() {
		if name == "parts" || name == program {
			continue
		}
		for english, own := range t.files[name] {
			if _, before := out[english]; !before {
				out[english] = own
			}
		}
	}
	return out
}

// program is the file of what the command line says around the engine's sentences.
const program = "program"

// Program are the command line's own words by their English.
func (t *Tongue) Program() map[string]string { return maps.Clone(t.files[program]) }

// Has tells whether there is a file of that name.
func (t *Tongue) Has(name string) bool { return t.files[name] != nil }

// prose finds a text in the file it belongs to, then in those that are shared; ok is
// false where no file has it.
func (t *Tongue) prose(file, english string) (own string, ok bool) {
	if own, ok = t.files[file][english]; ok {
		return own, true
	}
	for _, name := range t.shared() {
		if own, ok = t.files[name][english]; ok {
			return own, true
		}
	}
	return english, false
}

// shared names the files that belong to no rubric, the nearest first.
func (t *Tongue) shared() []string {
	t.once.Do(func() {
		t.order = []string{"engine", "labels", "limits"}
		var rest []string
		for name := range t.files {
			if !rubricNames()[name] && !slices.Contains(t.order, name) {
				rest = append(rest, name)
			}
		}
		slices.Sort(rest)
		t.order = append(t.order, rest...)
	})
	return t.order
}
