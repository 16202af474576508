package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/document"
	"asfound/rubrics/document/pdf"
)

const documentUsage = `asfound document FILE... -o OUT [--kind estimate] [--language en-US] [--page letter]
                 [--units inch] [--photos DIR] [--from NAME] [--to NAME]

Makes a paper of an appraisal file: the repair estimate for the seller, which holds
neither prices of one's own nor offers nor notes, or for oneself the record, the
list of jobs, or the comparison of several files.

  -o        what to write: a name ending in .pdf or .json
  --kind    estimate, record, jobs or comparison
  --language the language and place it is written for
  --page    letter or a4
  --units   inch or metric, beside what was entered
  --photos  a folder with JPEG copies of the photos, each named by the photo's
            SHA-256, with or without .jpg; place and device are left out of them
  --from, --to  how buyer and seller are named in the estimate
`

func makeDocument(_ context.Context, args []string, _, log io.Writer) error {
	flags, names, err := options(args, []string{"o", "kind", "language", "page", "units", "photos", "from", "to"}, nil)
	if err != nil {
		return err
	}
	for name, usual := range map[string]string{"kind": document.Estimate, "language": "en-US", "page": string(pdf.Letter), "units": "inch"} {
		if flags[name] == "" {
			flags[name] = usual
		}
	}
	out := flags["o"]
	switch ending := filepath.Ext(out); {
	case out == "":
		return misuse("say with -o what to write, such as -o estimate.pdf")
	case ending != ".pdf" && ending != ".json":
		return misuse("-o %s: give it a name ending in .pdf or .json", out)
	case len(names) == 0 || len(names) > 1 && flags["kind"] != document.Comparison:
		return misuse("give one appraisal file, or several for --kind comparison")
	}
	doc, err := documentOf(flags, names)
	if err != nil {
		return err
	}
	if filepath.Ext(out) == ".json" {
		var text strings.Builder
		if err := printJSON(&text, doc); err != nil {
			return err
		}
		return writeWhole(out, []byte(text.String()))
	}
	if boxes := pdf.Uncovered(*doc); len(boxes) > 0 {
		fmt.Fprintf(log, "asfound document: %d characters have no letter in the PDF and are shown as a box: %q\n", len(boxes), boxes[:min(len(boxes), 20)])
	}
	file, err := pdf.Render(*doc, pdf.Page(flags["page"]), photosIn(flags["photos"]))
	if err != nil {
		return err
	}
	return writeWhole(out, file)
}

func documentOf(flags map[string]string, names []string) (*document.Document, error) {
	judge, voice, err := newJudge(flags["language"])
	if err != nil {
		return nil, err
	}
	locale := voice.Locale()
	ask := document.Ask{Kind: flags["kind"], Locale: locale.ID, Units: flags["units"], From: flags["from"], To: flags["to"]}
	var files []*appraisal.File
	for _, name := range names {
		d, err := readAppraisal(name)
		if err != nil {
			return nil, err
		}
		files = append(files, &d.File)
	}
	if ask.Kind == document.Comparison {
		return document.Compare(judge.In(voice), voice, files, nil, ask)
	}
	return document.Make(judge.In(voice), voice, files[0], ask)
}

const mostPhoto = 32 << 20 // bytes

// photosIn finds photos in a folder by their keys.
func photosIn(folder string) func(key string) []byte {
	return func(key string) []byte {
		if folder == "" || len(key) != 64 || strings.Trim(key, "0123456789abcdef") != "" {
			return nil
		}
		for _, name := range []string{key, key + ".jpg"} {
			path := filepath.Join(folder, name)
			if info, err := os.Stat(path); err == nil && info.Mode().IsRegular() && info.Size() <= mostPhoto {
				if src, err := os.ReadFile(path); err == nil {
					return src
				}
			}
		}
		return nil // drawn as a photo that is not there
	}
}
