package main

import (
	"bytes"
	"context"
	"encoding/json"
	"os"

	"github.com/invopop/jsonschema"

	"asfound/rubrics/appraisal"
	"asfound/server/record"
)

// schemas are the JSON Schemas that are written from Go types.
var schemas = []struct {
	path, title, about string
	of                 any
}{
	{"rubrics/appraisal.schema.json", "Asfound appraisal file, version 1", "Amounts are integer cents. Dates are YYYY-MM-DD. Shares, odds and factors are in basis points.", &appraisal.File{}},
	{"server/record/archive.schema.json", "Asfound backup, records.json, version 1", "Everything that is kept, as rows: of each the values that devices entered, the last by its stamp counts. Values are JSON as each path has it.", &record.Archive{}},
}

// schemaOf renders the JSON Schema of a type. Fields it does not name are allowed: a
// newer program may have written them.
func schemaOf(of any, title, about string) ([]byte, error) {
	r := jsonschema.Reflector{AllowAdditionalProperties: true, Anonymous: true}
	s := r.Reflect(of)
	s.Title, s.Description = title, about
	text, err := json.Marshal(s)
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	if err := json.Indent(&out, text, "", "  "); err != nil {
		return nil, err
	}
	out.WriteByte('\n')
	return out.Bytes(), nil
}

// types writes what is generated from the Go types.
func types(context.Context, []string) error {
	if err := writeTypes("."); err != nil {
		return err
	}
	for _, x := range schemas {
		text, err := schemaOf(x.of, x.title, x.about)
		if err != nil {
			return err
		}
		if err := os.WriteFile(x.path, text, 0o644); err != nil {
			return err
		}
	}
	return nil
}
