package rubrics

import _ "embed"

// FileSchema is the JSON Schema of an appraisal file, generated from the types.
//
//go:embed appraisal.schema.json
var FileSchema []byte
