package server

import (
	"bytes"
	"compress/gzip"
	"strings"
	"testing"
	"testing/fstest"
)

func packed(t *testing.T, text string) *fstest.MapFile {
	t.Helper()
	var b bytes.Buffer
	w := gzip.NewWriter(&b)
	if _, err := w.Write([]byte(text)); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return &fstest.MapFile{Data: b.Bytes()}
}

func TestSite(t *testing.T) {
	s := newShop(t)
	s.server.Site = fstest.MapFS{
		"index.html":              {Data: []byte("<title>app</title>")},
		"sw.js":                   {Data: []byte("worker")},
		"app.webmanifest":         {Data: []byte("{}")},
		"assets/a-1.js":           {Data: []byte("plain")},
		"assets/a-1.js.br":        {Data: []byte("as br")},
		"assets/a-1.js.gz":        packed(t, "as gzip"),
		"assets/engine-1.wasm.gz": packed(t, "engine"),
		"assets/only.js.br":       {Data: []byte("as br")},
	}
	const forever, ask = "public, max-age=31536000, immutable", "no-cache"
	for _, c := range []struct {
		path, accept string
		status       int
		body, kind   string
		encoding     string
		cache        string
	}{
		{"/", "", 200, "<title>app</title>", "text/html; charset=utf-8", "", ask},
		{"/listing/01hz/walk", "", 200, "<title>app</title>", "text/html; charset=utf-8", "", ask},
		{"/index.html", "", 200, "<title>app</title>", "text/html; charset=utf-8", "", ask},
		{"/sw.js", "", 200, "worker", "text/javascript; charset=utf-8", "", ask},
		{"/app.webmanifest", "", 200, "{}", "application/manifest+json", "", ask},
		{"/assets/a-1.js", "gzip, deflate, br", 200, "as br", "text/javascript; charset=utf-8", "br", forever},
		{"/assets/a-1.js", "gzip", 200, "", "text/javascript; charset=utf-8", "gzip", forever},
		{"/assets/a-1.js", "br;q=0, *;q=0.5", 200, "", "text/javascript; charset=utf-8", "gzip", forever},
		{"/assets/a-1.js", "", 200, "plain", "text/javascript; charset=utf-8", "", forever},
		{"/assets/engine-1.wasm", "", 200, "engine", "application/wasm", "", forever},
		{"/assets/engine-1.wasm", "gzip", 200, "", "application/wasm", "gzip", forever},
		{"/assets/only.js", "gzip", 406, "", "", "", ""},
		{"/assets/a-0.js", "", 404, "", "", "", ""},
		{"/assets/a-1.js.gz", "", 404, "", "", "", ""},
		{"/assets", "", 200, "<title>app</title>", "text/html; charset=utf-8", "", ask},
		{"/favicon.ico", "", 404, "", "", "", ""},
		{"/../../etc/passwd.txt", "", 404, "", "", "", ""},
		{"/%2e%2e/secret.txt", "", 404, "", "", "", ""},
	} {
		w := s.ask("GET", c.path, "", "Accept-Encoding: "+c.accept)
		h := w.Header()
		if w.Code != c.status || c.body != "" && w.Body.String() != c.body || h.Get("Content-Encoding") != c.encoding {
			t.Errorf("%s (%s): %d %q %v", c.path, c.accept, w.Code, w.Body, h)
		}
		if c.status == 200 && (h.Get("Content-Type") != c.kind || h.Get("Cache-Control") != c.cache || h.Get("Vary") != "Accept-Encoding") {
			t.Errorf("%s (%s): %v", c.path, c.accept, h)
		}
	}
	if w := s.ask("HEAD", "/sw.js", ""); w.Code != 200 || w.Body.Len() != 0 || w.Header().Get("Content-Length") != "6" {
		t.Errorf("HEAD: %d %v", w.Code, w.Header())
	}
	tag := s.ask("GET", "/sw.js", "").Header().Get("ETag")
	if w := s.ask("GET", "/sw.js", "", "If-None-Match: "+tag); tag == "" || w.Code != 304 || w.Body.Len() != 0 {
		t.Errorf("unchanged: %d, tag %q", w.Code, tag)
	}
	if w := s.ask("POST", "/", "x"); w.Code != 405 {
		t.Errorf("POST: %d", w.Code)
	}
}

func TestAppNotBuilt(t *testing.T) {
	s := newShop(t)
	for name, site := range map[string]fstest.MapFS{"no site": nil, "a kept folder": {"keep": {}}} {
		if site != nil {
			s.server.Site = site
		}
		w := s.ask("GET", "/listing/x", "")
		if w.Code != 503 || !strings.Contains(w.Body.String(), "built without the app") {
			t.Errorf("%s: %d %s", name, w.Code, w.Body)
		}
		if w := s.ask("GET", "/assets/a.js", ""); w.Code != 404 {
			t.Errorf("%s: asset %d", name, w.Code)
		}
	}
	if m := s.read(s.ask("GET", "/api/health", "")); m.Status != 200 {
		t.Errorf("the API must work without the app: %+v", m)
	}
}
