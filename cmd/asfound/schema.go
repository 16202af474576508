package main

import (
	"context"
	"io"

	"asfound/rubrics"
	"asfound/server/record"
)

const schemaUsage = `asfound schema [appraisal|archive]

Prints the JSON Schema of an appraisal file, or of everything that is kept: the
records.json in a backup.
`

func schema(_ context.Context, args []string, out, _ io.Writer) error {
	text := rubrics.FileSchema
	switch {
	case len(args) == 1 && args[0] == "archive":
		text = record.ArchiveSchema
	case len(args) > 1 || len(args) == 1 && args[0] != "appraisal":
		return misuse("give appraisal, archive or nothing")
	}
	_, err := out.Write(text)
	return err
}
