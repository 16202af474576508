package door_test

import (
	"bytes"
	"encoding/json"
	"os"
	"strings"
	"testing"

	"asfound/rubrics/door"
)

// TestGoldenDocuments: the documents of testdata/documents.json stay what they were,
// to the letter. After a wanted change: go run ./cmd/dev golden, and read the difference.
func TestGoldenDocuments(t *testing.T) {
	d := open(t)
	src, err := os.ReadFile("../../testdata/documents.json")
	if err != nil {
		t.Fatal(err)
	}
	var papers []struct {
		Name  string          `json:"name"`
		Files []string        `json:"files"`
		Ask   json.RawMessage `json:"ask"`
	}
	if err := json.Unmarshal(src, &papers); err != nil {
		t.Fatal(err)
	}
	if len(papers) < 5 {
		t.Fatalf("only %d documents are listed", len(papers))
	}
	for _, p := range papers {
		t.Run(p.Name, func(t *testing.T) {
			var files []json.RawMessage
			for _, name := range p.Files {
				src, err := os.ReadFile("../../testdata/" + name + ".json")
				if err != nil {
					t.Fatal(err)
				}
				files = append(files, src)
			}
			argument, err := json.Marshal(map[string]any{"file": files[0], "files": files, "ask": p.Ask})
			if err != nil {
				t.Fatal(err)
			}
			var got bytes.Buffer
			if err := json.Indent(&got, value(t, d, "document", argument), "", "  "); err != nil {
				t.Fatal(err)
			}
			got.WriteByte('\n')
			want, err := os.ReadFile("../../testdata/golden/document/" + p.Name + ".json")
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(got.Bytes(), want) {
				t.Errorf("the document changed: go run ./cmd/dev golden, then read git diff testdata/golden")
			}
		})
	}
}

func value(t *testing.T, d *door.Door, call string, argument []byte) json.RawMessage {
	t.Helper()
	var r door.Reply
	if err := json.Unmarshal(d.Call(call, argument), &r); err != nil {
		t.Fatal(err)
	}
	if r.Error != "" {
		t.Fatal(r.Error)
	}
	return r.Value
}

// TestTablesOverTheBorder: tables go out, one comes back and leaves as CSV.
func TestTablesOverTheBorder(t *testing.T) {
	d := open(t)
	lift, err := os.ReadFile("../../testdata/demo/1-lift-walked.json")
	if err != nil {
		t.Fatal(err)
	}
	file := strings.Replace(string(lift), `"title": "Two-post lift`, `"title": "=HYPERLINK(A1) lift`, 1)
	var tables []json.RawMessage
	if err := json.Unmarshal(value(t, d, "tables", []byte(`{"files":[`+file+`],"decisions":[{"date":"2026-11-03","reason":"@risk"}]}`)), &tables); err != nil {
		t.Fatal(err)
	}
	found := false
	for _, table := range tables {
		var csv door.CSVWritten
		if err := json.Unmarshal(value(t, d, "csv", []byte(`{"table":`+string(table)+`}`)), &csv); err != nil {
			t.Fatal(err)
		}
		if strings.Contains(string(table), `"name":"listings"`) {
			found = strings.Contains(csv.Text, "\r\n\"'=HYPERLINK(A1) lift, 9,000 lb, overhead, still standing\",Two-post lift,") && strings.Contains(csv.Text, ",USD,2100,874.81,")
		}
		if strings.Contains(csv.Text, "\r\n=") || strings.Contains(csv.Text, ",@risk") {
			t.Errorf("a cell would run as a formula:\n%s", csv.Text)
		}
	}
	if !found {
		t.Error("the listing is not in its table as it should be")
	}
}
