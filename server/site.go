package server

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"net/http"
	"path"
	"strconv"
	"strings"

	"github.com/labstack/echo/v4"
)

const notBuilt = `<!doctype html>
<html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>Asfound: the app is missing</title>
<h1>The app is missing</h1>
<p>The server runs, but it was built without the app. Build the app first, then the server again, and reload this page.</p>
<p>What is stored on devices and on this server is not touched.</p>
</html>
`

var mediaTypes = map[string]string{
	".html": "text/html; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".mjs": "text/javascript; charset=utf-8",
	".css": "text/css; charset=utf-8", ".json": "application/json", ".map": "application/json",
	".webmanifest": "application/manifest+json", ".wasm": "application/wasm", ".svg": "image/svg+xml", ".png": "image/png",
	".ico": "image/x-icon", ".webp": "image/webp", ".jpg": "image/jpeg", ".woff2": "font/woff2", ".txt": "text/plain; charset=utf-8",
}

// site serves the app: its files, and its start page for every address without an extension, because those are the
// app's own screens.
func (s *Server) site(c echo.Context) error {
	name := strings.TrimPrefix(path.Clean("/"+c.Request().URL.Path), "/")
	if name == "" {
		name = "index.html"
	}
	if found, err := s.file(c, name); found || err != nil {
		return err
	}
	if path.Ext(name) != "" && name != "index.html" || strings.HasPrefix(name, "assets/") {
		return problem(http.StatusNotFound, "not-found", "there is nothing at this address")
	}
	if found, err := s.file(c, "index.html"); found || err != nil {
		return err
	}
	c.Response().Header().Set("Cache-Control", "no-store")
	return c.HTML(http.StatusServiceUnavailable, notBuilt)
}

// robots asks everybody who collects pages to leave these alone, sellers' pages first of all.
func (s *Server) robots(c echo.Context) error {
	c.Response().Header().Set("Cache-Control", "no-cache")
	return c.Blob(http.StatusOK, "text/plain; charset=utf-8", []byte("User-agent: *\nDisallow: /s/\nDisallow: /\n"))
}

// file serves name, or one of name.br and name.gz in its place, and tells whether there was one.
func (s *Server) file(c echo.Context, name string) (found bool, err error) {
	if s.Site == nil || !fs.ValidPath(name) || strings.HasSuffix(name, ".br") || strings.HasSuffix(name, ".gz") {
		return false, nil
	}
	body, encoding, err := pick(s.Site, name, c.Request().Header.Values("Accept-Encoding"))
	if errors.Is(err, fs.ErrNotExist) {
		return false, nil
	}
	if err != nil {
		return false, err
	}
	h := c.Response().Header()
	h.Set("Vary", "Accept-Encoding")
	h.Set("Content-Type", "application/octet-stream")
	if kind, ok := mediaTypes[path.Ext(name)]; ok {
		h.Set("Content-Type", kind)
	}
	if encoding != "" {
		h.Set("Content-Encoding", encoding)
	}
	if strings.HasPrefix(name, "assets/") { // the build puts a hash of the content in their names
		h.Set("Cache-Control", "public, max-age=31536000, immutable")
	} else {
		sum := sha256.Sum256(body)
		tag := `"` + hex.EncodeToString(sum[:12]) + `"`
		h.Set("Cache-Control", "no-cache")
		h.Set("ETag", tag)
		if strings.Contains(c.Request().Header.Get("If-None-Match"), tag) {
			h.Del("Content-Encoding")
			return true, c.NoContent(http.StatusNotModified)
		}
	}
	h.Set("Content-Length", strconv.Itoa(len(body)))
	c.Response().WriteHeader(http.StatusOK)
	if c.Request().Method == http.MethodHead {
		return true, nil
	}
	_, err = c.Response().Write(body)
	return true, err
}

// pick reads the form of the file that the browser takes; fs.ErrNotExist when there is none at all.
func pick(site fs.FS, name string, accept []string) (body []byte, encoding string, err error) {
	for _, form := range []struct{ suffix, encoding string }{{".br", "br"}, {".gz", "gzip"}, {"", ""}} {
		if form.encoding != "" && !accepts(accept, form.encoding) {
			continue
		}
		if body, err = readFile(site, name+form.suffix); !errors.Is(err, fs.ErrNotExist) {
			return body, form.encoding, err
		}
	}
	packed, err := readFile(site, name+".gz")
	if err != nil {
		if _, err := fs.Stat(site, name+".br"); err == nil {
			return nil, "", problem(http.StatusNotAcceptable, "encoding", "this file is there only packed as br: allow br or gzip in Accept-Encoding")
		}
		return nil, "", err
	}
	r, err := gzip.NewReader(bytes.NewReader(packed))
	if err == nil {
		body, err = io.ReadAll(r)
	}
	if err != nil {
		return nil, "", fmt.Errorf("the app's file %s.gz is damaged: build the app again: %w", name, err)
	}
	return body, "", nil
}

// readFile is fs.ReadFile with folders taken as missing.
func readFile(site fs.FS, name string) ([]byte, error) {
	info, err := fs.Stat(site, name)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, fs.ErrNotExist
	}
	return fs.ReadFile(site, name)
}

// accepts reads Accept-Encoding (RFC 9110, section 12.5.3): named with a quality above 0, or by * when not named.
func accepts(values []string, encoding string) bool {
	star := false
	for _, value := range values {
		for part := range strings.SplitSeq(value, ",") {
			name, params, _ := strings.Cut(part, ";")
			yes := !zeroQuality(params)
			switch name = strings.ToLower(strings.TrimSpace(name)); name {
			case encoding:
				return yes
			case "*":
				star = yes
			}
		}
	}
	return star
}

func zeroQuality(params string) bool {
	for param := range strings.SplitSeq(params, ";") {
		name, value, _ := strings.Cut(strings.ToLower(strings.TrimSpace(param)), "=")
		if name == "q" {
			q, err := strconv.ParseFloat(value, 64)
			return err != nil || q == 0
		}
	}
	return false
}
