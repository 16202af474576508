package main

import (
	"bytes"
	"context"
	"encoding/json"
	"os"

	"github.com/invopop/jsonschema"

	"asfound/rubrics/appraisal"
)

const schemaPath = "rubrics/appraisal.schema.json"

// fileSchema renders the JSON Schema of an appraisal file. Fields it does not
// name are allowed: a newer program may have written them.
func fileSchema() ([]byte, error) {
	r := jsonschema.Reflector{AllowAdditionalProperties: true, Anonymous: true}
	s := r.Reflect(&appraisal.File{})
	s.Title = "Asfound appraisal file, version 1"
	s.Description = "Amounts are integer cents. Dates are YYYY-MM-DD. Shares, odds and factors are in basis points."
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
	s, err := fileSchema()
	if err != nil {
		return err
	}
	return os.WriteFile(schemaPath, s, 0o644)
}
