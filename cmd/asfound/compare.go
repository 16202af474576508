package main

import (
	"context"
	"fmt"
	"io"
	"strconv"
	"strings"

	"asfound/rubrics/appraisal"
)

var compareUsage = fmt.Sprintf(`asfound compare FILE FILE... [--weights ahead=40,odds=20,...] [--json] [--language ID]

Puts two to eight appraisal files of one currency side by side, each at its asking
price: verdict, coverage, all-in, the odds of coming out ahead and the three
prices; how often each is the better buy, and the price at which it would draw
level; and a ranking, with what would change it. All are drawn with the same random
numbers, so differences are of the equipment. A do-not-use verdict stands last
whatever the weights.

  --weights     what counts how much, 0 to 100 each, over those of the first file:
                %s
  --json        every number, as one JSON object
  --language ID say it in another language: en-US, en-GB, es-US, es-MX, es-ES
`, defaultWeights())

func defaultWeights() string {
	var each []string
	for _, c := range appraisal.Criteria {
		each = append(each, fmt.Sprintf("%s=%d", c.ID, c.Weight))
	}
	return strings.Join(each, ",")
}

func compare(_ context.Context, args []string, out, _ io.Writer) error {
	flags, names, err := options(args, []string{"weights", "language"}, []string{"json"})
	if err != nil {
		return err
	}
	if n := len(names); n < appraisal.LeastCompared || n > appraisal.MostCompared {
		return misuse("give %d to %d appraisal files", appraisal.LeastCompared, appraisal.MostCompared)
	}
	var files []*appraisal.File
	for _, name := range names {
		doc, err := readAppraisal(name)
		if err != nil {
			return err
		}
		files = append(files, &doc.File)
	}
	if text, ok := flags["weights"]; ok {
		if err := setWeights(&files[0].Shop, text); err != nil {
			return err
		}
	}
	judge, v, err := newJudge(flags["language"])
	if err != nil {
		return err
	}
	c, err := judge.Compare(files, nil)
	if err != nil {
		return spokenError(v, err)
	}
	if flags["json"] != "" {
		return printJSON(out, struct {
			Files      []string              `json:"files"` // in the order of the sides
			Comparison *appraisal.Comparison `json:"comparison"`
		}{names, c})
	}
	return compareReport(out, v, c)
}

// setWeights reads weights such as "ahead=40,odds=20" over those of a shop.
func setWeights(shop *appraisal.Shop, text string) error {
	set := map[string]int{}
	for id, w := range shop.Weights {
		set[id] = w
	}
	given := map[string]bool{}
	for _, part := range strings.Split(text, ",") {
		id, number, ok := strings.Cut(strings.TrimSpace(part), "=")
		w, err := strconv.Atoi(number)
		switch {
		case !ok || err != nil:
			return fmt.Errorf("--weights: %.40q is no weight: write it like ahead=40", part)
		case given[id]:
			return fmt.Errorf("--weights: %.40q is given twice: give each once", id)
		}
		given[id], set[id] = true, w
	}
	if err := appraisal.CheckWeights("--weights", set); err != nil {
		return err
	}
	shop.Weights = set
	return nil
}
