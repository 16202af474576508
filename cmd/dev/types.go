package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"sort"
	"strings"

	"asfound/rubrics/appraisal"
	"asfound/rubrics/document"
	"asfound/rubrics/door"
	"asfound/rubrics/editing"
	"asfound/rubrics/limit"
	"asfound/rubrics/pairwise"
	"asfound/rubrics/printing"
	"asfound/rubrics/sheet"
)

const typesPath = "pwa/src/generated/types.ts"

// borderTypes are the Go types that cross into TypeScript.
func borderTypes() []any {
	return []any{
		appraisal.File{}, appraisal.Result{}, appraisal.Rubric{}, appraisal.Part{},
		limit.Definition{}, limit.Result{}, door.Catalogue{}, door.Reply{}, door.LimitRequest{}, door.AppraiseRequest{}, door.CompareRequest{}, door.CheckRequest{}, door.VisitRequest{}, door.NoticeRequest{}, door.Notice{}, door.PricesWriteRequest{}, door.PricesWritten{},
		appraisal.Comparison{}, appraisal.Import{}, appraisal.ImportChoice{}, appraisal.VisitPlan{}, appraisal.PriceImport{}, appraisal.Change{},
		editing.RubricRead{}, editing.Written{}, pairwise.Weighed{},
		document.Document{}, document.Ask{}, door.DocumentRequest{}, door.TablesRequest{}, sheet.Table{},
		printing.PDFRequest{}, printing.UncoveredRequest{},
	}
}

// typeScript renders the border types as TypeScript interfaces, sorted by name.
func typeScript(roots []any) (string, error) {
	seen := map[string]reflect.Type{}
	var walk func(reflect.Type) error
	walk = func(t reflect.Type) error {
		switch t.Kind() {
		case reflect.Pointer, reflect.Slice, reflect.Array, reflect.Map:
			return walk(t.Elem())
		case reflect.Struct:
			if other, ok := seen[shownName(t)]; ok {
				if other != t {
					return fmt.Errorf("two types named %s: %s and %s", t.Name(), other.PkgPath(), t.PkgPath())
				}
				return nil
			}
			seen[shownName(t)] = t
			for i := range t.NumField() {
				if !t.Field(i).IsExported() {
					continue
				}
				if err := walk(t.Field(i).Type); err != nil {
					return err
				}
			}
		}
		return nil
	}
	for _, r := range roots {
		if err := walk(reflect.TypeOf(r)); err != nil {
			return "", err
		}
	}
	names := make([]string, 0, len(seen))
	for n := range seen {
		names = append(names, n)
	}
	sort.Strings(names)
	var out bytes.Buffer
	out.WriteString("// Generated from the Go types by `go run ./cmd/dev types`; do not edit.\n")
	for _, n := range names {
		fmt.Fprintf(&out, "\nexport interface %s {\n", n)
		t := seen[n]
		for i := range t.NumField() {
			f := t.Field(i)
			tag := f.Tag.Get("json")
			name, options, _ := strings.Cut(tag, ",")
			if !f.IsExported() || name == "-" {
				continue
			}
			if name == "" {
				return "", fmt.Errorf("%s.%s has no json name", n, f.Name)
			}
			mark := ""
			if strings.Contains(options, "omitempty") {
				mark = "?"
			}
			fmt.Fprintf(&out, "  %s%s: %s;\n", name, mark, typeName(f.Type, mark != ""))
		}
		out.WriteString("}\n")
	}
	return out.String(), nil
}

// shownName keeps the limits', the documents' and the sheets' own types apart from the appraisal's.
func shownName(t reflect.Type) string {
	if (strings.HasSuffix(t.PkgPath(), "/document") || strings.HasSuffix(t.PkgPath(), "/document/form")) && t.Name() != "Document" {
		return "Document" + t.Name()
	}
	if strings.HasSuffix(t.PkgPath(), "/sheet") {
		return "Sheet" + t.Name()
	}
	if strings.HasSuffix(t.PkgPath(), "/limit") {
		return "Limit" + t.Name()
	}
	return t.Name()
}

// typeName is the TypeScript spelling of t; optional fields are absent, not null.
func typeName(t reflect.Type, optional bool) string {
	if t == reflect.TypeFor[sheet.Kind]() {
		return `"text" | "number" | "money" | "date"`
	}
	switch t.Kind() {
	case reflect.Pointer:
		if optional {
			return typeName(t.Elem(), false)
		}
		return typeName(t.Elem(), false) + " | null"
	case reflect.Slice:
		if t.Elem().Kind() == reflect.Uint8 {
			return "unknown" // raw JSON
		}
		if t.Elem().Kind() == reflect.Pointer {
			return "(" + typeName(t.Elem(), false) + ")[]"
		}
		return typeName(t.Elem(), false) + "[]"
	case reflect.Array:
		items := make([]string, t.Len())
		for i := range items {
			items[i] = typeName(t.Elem(), false)
		}
		return "[" + strings.Join(items, ", ") + "]"
	case reflect.Map:
		return "Record<string, " + typeName(t.Elem(), false) + ">"
	case reflect.Struct:
		return shownName(t)
	case reflect.String:
		return "string"
	case reflect.Bool:
		return "boolean"
	case reflect.Interface:
		if t == reflect.TypeFor[sheet.Cell]() {
			return "(string | number | null)"
		}
		return "unknown"
	default:
		return "number"
	}
}

// writeTypes regenerates the TypeScript types.
func writeTypes(root string) error {
	text, err := typeScript(borderTypes())
	if err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(root, typesPath), []byte(text), 0o644)
}
