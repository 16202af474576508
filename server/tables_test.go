package server

import (
	"bytes"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

func TestWorkbook(t *testing.T) {
	s := newShop(t)
	ask := func(body string, headers ...string) (status int, w *bytes.Buffer, kind string) {
		r := s.ask("POST", "/api/tables.xlsx", body, append([]string{"Content-Type: application/json"}, headers...)...)
		return r.Code, r.Body, r.Header().Get("Content-Type")
	}
	status, body, kind := ask(`{"tables":[{"name":"Parts","columns":[{"title":"Part","kind":"text"},{"title":"Cost","kind":"money"}],"rows":[["=cable",12.5],[null,3]]}]}`)
	if status != 200 || kind != workbookType {
		t.Fatalf("%d %s %s", status, kind, body)
	}
	f, err := excelize.OpenReader(body)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := f.GetRows("Parts")
	if err != nil || len(rows) != 3 || rows[1][0] != "=cable" || rows[1][1] != "12.50" {
		t.Errorf("%v, %v", rows, err)
	}
	for name, c := range map[string]struct {
		body    string
		headers []string
		status  int
	}{
		"no table":     {`{"tables":[]}`, nil, 422},
		"another kind": {`{"tables":[{"columns":[{"kind":"x"}]}]}`, nil, 422},
		"no JSON":      {`x`, nil, 400},
		"9 MB":         {`{"tables":"` + strings.Repeat("x", 9<<20) + `"}`, nil, 413},
		"another site": {`{"tables":[]}`, []string{"Sec-Fetch-Site: cross-site"}, 403},
	} {
		if status, body, _ := ask(c.body, c.headers...); status != c.status {
			t.Errorf("%s: %d %s", name, status, body)
		}
	}
}
