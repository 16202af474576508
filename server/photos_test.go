package server

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"image"
	"image/png"
	"strconv"
	"testing"
)

func testPicture(t *testing.T) (name, body string) {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, image.NewGray(image.Rect(0, 0, 40, 30))); err != nil {
		t.Fatal(err)
	}
	sum := sha256.Sum256(b.Bytes())
	return hex.EncodeToString(sum[:]), b.String()
}

func TestPhotoUpload(t *testing.T) {
	s := newShop(t)
	name, body := testPicture(t)
	path := "/api/photos/" + name
	put := func(offset int, part string) message {
		t.Helper()
		return s.read(s.ask("PUT", path, part, "Content-Type: application/octet-stream", "Upload-Offset: "+strconv.Itoa(offset)))
	}
	have := func() message { t.Helper(); return s.read(s.ask("GET", path+"/have", "")) }

	if m := have(); m.Status != 200 || m.Have != 0 || m.Whole {
		t.Errorf("before: %+v", m)
	}
	if m := s.read(s.ask("GET", path, "")); m.Status != 404 || m.Code != "no-photo" {
		t.Errorf("before: %+v", m)
	}
	if m := put(0, body[:30]); m.Have != 30 || m.Whole {
		t.Errorf("first part: %+v", m)
	}
	if m := put(0, body); m.Status != 409 || m.Code != "offset" || m.Have != 30 {
		t.Errorf("wrong offset: %+v", m)
	}
	s.restart()
	if m := have(); m.Have != 30 || m.Whole {
		t.Errorf("after a restart: %+v", m)
	}
	if m := put(30, body[30:]); m.Status != 200 || !m.Whole || int(m.Have) != len(body) {
		t.Errorf("the rest: %+v", m)
	}
	w := s.ask("GET", path, "")
	if w.Code != 200 || w.Body.String() != body || w.Header().Get("Content-Type") != "image/png" || w.Header().Get("Asfound") != "1" {
		t.Errorf("%d %v", w.Code, w.Header())
	}
	if w := s.ask("HEAD", path, ""); w.Code != 200 || w.Body.Len() != 0 || w.Header().Get("Content-Length") != strconv.Itoa(len(body)) {
		t.Errorf("HEAD: %d %v", w.Code, w.Header())
	}
	if w := s.ask("GET", path, "", `If-None-Match: "`+name+`"`); w.Code != 304 {
		t.Errorf("known already: %d", w.Code)
	}
}

func TestPhotoRefusals(t *testing.T) {
	s := newShop(t)
	name, body := testPicture(t)
	sum := sha256.Sum256(nil)
	empty := hex.EncodeToString(sum[:])
	other := "ab" + name[2:]
	for label, c := range map[string]struct {
		path, body string
		headers    []string
		status     int
		code       string
	}{
		"wrong hash":     {other, body, []string{"Upload-Length: " + strconv.Itoa(len(body))}, 422, "wrong-hash"},
		"0 bytes":        {empty, "", nil, 422, "no-picture"},
		"no name":        {"ABC", body, nil, 400, "photo-name"},
		"dots":           {"..%2f..%2fasfound.db", body, nil, 400, "photo-name"},
		"a bad offset":   {name, body, []string{"Upload-Offset: -1"}, 400, "header"},
		"a word, offset": {name, body, []string{"Upload-Offset: x"}, 400, "header"},
		"a form":         {name, body, []string{"Content-Type: multipart/form-data"}, 415, "content-type"},
		"too large":      {name, body, []string{"Upload-Length: 12000001"}, 413, "too-large"},
		"past the end":   {name, body, []string{"Upload-Offset: 7"}, 409, "offset"},
	} {
		w := s.ask("PUT", "/api/photos/"+c.path, c.body, append([]string{"Content-Type: application/octet-stream"}, c.headers...)...)
		if m := s.read(w); m.Status != c.status || m.Code != c.code {
			t.Errorf("%s: %d %q %q, want %d %q", label, m.Status, m.Code, m.Message, c.status, c.code)
		}
	}
	if m := s.read(s.ask("GET", "/api/photos/"+other+"/have", "")); m.Have != 0 {
		t.Errorf("the wrong photo was kept: %+v", m)
	}
}
