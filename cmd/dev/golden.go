package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"asfound/rubrics/door"
	"asfound/rubrics/tongue"
)

// goldenFiles are the appraisals whose whole result is kept.
func goldenFiles() ([]string, error) {
	var all []string
	for _, pattern := range []string{"testdata/appraisals/*.json", "testdata/demo/*.json"} {
		names, err := filepath.Glob(pattern)
		if err != nil {
			return nil, err
		}
		all = append(all, names...)
	}
	if len(all) == 0 {
		return nil, fmt.Errorf("no appraisals found in testdata")
	}
	return all, nil
}

// golden writes the expected result of every appraisal in testdata again, and
// notes the rubrics' versions. Read the difference before committing it.
func golden(context.Context, []string) error {
	if err := noteRubricVersions(); err != nil {
		return err
	}
	names, err := goldenFiles()
	if err != nil {
		return err
	}
	d, err := nativeDoor()
	if err != nil {
		return err
	}
	for _, name := range names {
		if err := writeGolden(d, name, "testdata/golden", ""); err != nil {
			return err
		}
	}
	for _, name := range goldenSpanish {
		if err := writeGolden(d, name, "testdata/golden/es", "es-ES"); err != nil {
			return err
		}
	}
	fmt.Printf("%d results written to testdata/golden\n", len(names)+len(goldenSpanish))
	return goldenPapers(d)
}

// goldenSpanish are the appraisals whose result is kept in Spanish too.
var goldenSpanish = []string{"testdata/demo/1-lift-walked.json", "testdata/appraisals/engine-lathe-worn-bed.json"}

func writeGolden(d *door.Door, name, folder, locale string) error {
	src, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	var r door.Reply
	if err := json.Unmarshal(d.Call("appraise", []byte(fmt.Sprintf(`{"file":%s,"locale":%q}`, src, locale))), &r); err != nil {
		return err
	}
	if r.Error != "" {
		return fmt.Errorf("%s: %s", name, r.Error)
	}
	var out bytes.Buffer
	if err := json.Indent(&out, r.Value, "", "  "); err != nil {
		return err
	}
	out.WriteByte('\n')
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	return os.WriteFile(folder+"/"+filepath.Base(name), out.Bytes(), 0o644)
}

// nativeDoor knows every language.
func nativeDoor() (*door.Door, error) {
	catalogue, err := catalogueJSON()
	if err != nil {
		return nil, err
	}
	d, err := door.Open(catalogue)
	if err != nil {
		return nil, err
	}
	for _, language := range tongue.Languages {
		own, err := catalogueIn(language)
		if err != nil {
			return nil, err
		}
		if err := d.Learn(own); err != nil {
			return nil, err
		}
	}
	return d, nil
}

// question is one call of the parity run.
type question struct {
	Name     string          `json:"name"`
	Call     string          `json:"call"`
	Argument json.RawMessage `json:"argument"`
}

// parity asks the module that the browser loads and the native engine the same
// questions and compares the bytes of the answers.
func parity(ctx context.Context) error {
	var questions []question
	names, err := goldenFiles()
	if err != nil {
		return err
	}
	for _, name := range names {
		src, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		for _, price := range []string{"", `,"price":100000`, `,"price":0`} {
			questions = append(questions, question{name + price, "appraise", json.RawMessage(`{"file":` + string(src) + price + `}`)})
		}
	}
	var files []string
	for _, name := range names {
		src, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		files = append(files, string(src))
		questions = append(questions, question{name + " visit", "visit", json.RawMessage(`{"file":` + string(src) + `}`)})
	}
	// All together are of two currencies and refused; the demo is compared.
	for _, some := range [][]string{files, files[len(files)-4:]} {
		questions = append(questions, question{"compare", "compare", json.RawMessage(`{"files":[` + strings.Join(some, ",") + `]}`)})
	}
	for _, text := range []string{
		`{"name":"rope-diameter","given":{"nominal":"3/8 in","measured":"0.352 in"}}`,
		`{"name":"leaf-chain","given":{"pitch":"1 in","pitches":"12","measured":"12.36 in"}}`,
		`{"name":"thread","given":{"diameter":"0.745 in","tpi":"10"}}`,
		`{"name":"motor-supply","given":{"power":"5 hp","voltage":"230 V","phases":"1"}}`,
		`{"name":"no-such-limit","given":{}}`,
	} {
		questions = append(questions, question{text, "limit", json.RawMessage(text)})
	}
	for _, text := range []string{
		`{"text":"2 post lift 9,000 lb, asking $2.4k obo, was 3,000. 220v single phase, built 2009. In Dayton, OH 45402, 45 miles north. 11'10\" tall.","currency":"USD","units":"inch"}`,
		`{"text":"Presse 20 t, 1.950,- VB, Baujahr 1998, 400 V Drehstrom, 650 kg","currency":"EUR","units":"metric","rubric":"h-frame-press"}`,
	} {
		questions = append(questions, question{text, "notice", json.RawMessage(text)})
	}
	for _, name := range goldenSpanish {
		src, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		for _, call := range []string{"appraise", "visit"} {
			questions = append(questions, question{name + " es " + call, call, json.RawMessage(`{"file":` + string(src) + `,"locale":"es-MX"}`)})
		}
	}
	kept, err := papers()
	if err != nil {
		return err
	}
	for i := range kept {
		argument, err := kept[i].argument()
		if err != nil {
			return err
		}
		questions = append(questions, question{kept[i].Name, "document", argument})
	}
	questions = append(questions, question{"tables", "tables", json.RawMessage(`{"compared":true,"files":[` + strings.Join(files[len(files)-4:], ",") + `]}`)})
	dir := ".cache/parity"
	if err := os.RemoveAll(dir); err != nil {
		return err
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	text, err := json.Marshal(questions)
	if err != nil {
		return err
	}
	if err := os.WriteFile(dir+"/questions.json", text, 0o644); err != nil {
		return err
	}
	d, err := nativeDoor()
	if err != nil {
		return err
	}
	drawn, err := parityPapers(d, dir, names)
	if err != nil {
		return err
	}
	if err := runIn(ctx, "pwa", "node", "parity.mjs", "../"+dir); err != nil {
		return err
	}
	for i, q := range questions {
		got, err := os.ReadFile(fmt.Sprintf("%s/%d.json", dir, i))
		if err != nil {
			return err
		}
		want := d.Call(q.Call, q.Argument)
		if !bytes.Equal(got, want) {
			at := 0
			for at < len(got) && at < len(want) && got[at] == want[at] {
				at++
			}
			return fmt.Errorf("%s: the builds differ from byte %d: WebAssembly …%.80s, native …%.80s", strings.TrimSpace(q.Name), at, got[max(at-20, 0):], want[max(at-20, 0):])
		}
	}
	for i, want := range drawn {
		if got, err := os.ReadFile(fmt.Sprintf("%s/%d.pdf", dir, i)); err != nil || !bytes.Equal(got, want) {
			return fmt.Errorf("paper %d: the builds draw different files (%d and %d bytes, %v)", i, len(got), len(want), err)
		}
	}
	fmt.Printf("    %d answers and %d papers, byte for byte the same\n", len(questions), len(drawn))
	return nil
}
