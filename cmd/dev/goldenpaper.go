package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"

	"asfound/rubrics/door"
)

// paper is a document that is kept whole, as testdata/documents.json lists them.
type paper struct {
	Name  string          `json:"name"`
	Files []string        `json:"files"`
	Ask   json.RawMessage `json:"ask"`
}

// argument is the call that makes it.
func (p *paper) argument() ([]byte, error) {
	var files []json.RawMessage
	for _, name := range p.Files {
		src, err := os.ReadFile("testdata/" + name + ".json")
		if err != nil {
			return nil, err
		}
		files = append(files, src)
	}
	return json.Marshal(map[string]any{"file": files[0], "files": files, "ask": p.Ask})
}

func papers() ([]paper, error) {
	src, err := os.ReadFile("testdata/documents.json")
	if err != nil {
		return nil, err
	}
	var all []paper
	return all, json.Unmarshal(src, &all)
}

// goldenPapers writes the documents that are kept whole again.
func goldenPapers(d *door.Door) error {
	all, err := papers()
	if err != nil {
		return err
	}
	if err := os.MkdirAll("testdata/golden/document", 0o755); err != nil {
		return err
	}
	for i := range all {
		argument, err := all[i].argument()
		if err != nil {
			return err
		}
		var r door.Reply
		if err := json.Unmarshal(d.Call("document", argument), &r); err != nil {
			return err
		}
		if r.Error != "" {
			return fmt.Errorf("%s: %s", all[i].Name, r.Error)
		}
		var out bytes.Buffer
		if err := json.Indent(&out, r.Value, "", "  "); err != nil {
			return err
		}
		out.WriteByte('\n')
		if err := os.WriteFile("testdata/golden/document/"+all[i].Name+".json", out.Bytes(), 0o644); err != nil {
			return err
		}
	}
	fmt.Printf("%d documents written to testdata/golden/document\n", len(all))
	return nil
}
