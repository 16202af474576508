package main

import (
	"context"
	"io"

	"asfound/rubrics"
)

const schemaUsage = `asfound schema

Prints the JSON Schema of an appraisal file.
`

func schema(_ context.Context, args []string, out, _ io.Writer) error {
	if len(args) > 0 {
		return misuse("it takes no arguments")
	}
	_, err := out.Write(rubrics.FileSchema)
	return err
}
