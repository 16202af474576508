package main

import (
	"encoding/json"
	"fmt"
	"os"

	"asfound/rubrics/door"
	"asfound/rubrics/printing"
)

// parityPapers draws the papers of some appraisals natively, and leaves what was
// asked for in the folder.
func parityPapers(d *door.Door, dir string, names []string) ([][]byte, error) {
	var asked []json.RawMessage
	var drawn [][]byte
	for _, name := range names {
		src, err := os.ReadFile(name)
		if err != nil {
			return nil, err
		}
		for i, kind := range []string{"estimate", "record", "jobs"} {
			var reply door.Reply
			if err := json.Unmarshal(d.Call("document", fmt.Appendf(nil, `{"file":%s,"ask":{"kind":%q,"units":"inch"}}`, src, kind)), &reply); err != nil {
				return nil, err
			}
			if reply.Error != "" {
				continue // an appraisal that no paper is made of
			}
			request := fmt.Appendf(nil, `{"document":%s,"page":%q,"keys":[]}`, reply.Value, []string{"letter", "a4"}[i%2])
			file, err := printing.Call("pdf", request, nil)
			if err != nil {
				return nil, fmt.Errorf("%s, %s: %w", name, kind, err)
			}
			asked, drawn = append(asked, request), append(drawn, file)
		}
	}
	if len(drawn) == 0 {
		return nil, fmt.Errorf("no appraisal gave a paper")
	}
	text, err := json.Marshal(asked)
	if err != nil {
		return nil, err
	}
	return drawn, os.WriteFile(dir+"/papers.json", text, 0o644)
}
