package server

import (
	"strings"
	"testing"
)

func TestHeaders(t *testing.T) {
	s := newShop(t)
	for _, path := range []string{"/", "/api/health", "/api/nothing", "/x.js"} {
		h := s.ask("GET", path, "").Header()
		want := "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' blob: data:; font-src 'self'; connect-src 'self'; worker-src 'self'; manifest-src 'self'; form-action 'self'; base-uri 'none'; object-src 'none'; frame-ancestors 'none'"
		if h.Get("Content-Security-Policy") != want || h.Get("X-Content-Type-Options") != "nosniff" || h.Get("Referrer-Policy") != "no-referrer" {
			t.Errorf("%s: %v", path, h)
		}
		if h.Get("Access-Control-Allow-Origin") != "" {
			t.Errorf("%s lets other sites read", path)
		}
	}
}

func TestForeignPagesAreRefused(t *testing.T) {
	s := newShop(t)
	body := pushBody(deviceA, cursor{}, "", 0, row("title", `1`, stamp(1, deviceA), ""))
	for name, c := range map[string]struct {
		header string
		status int
	}{
		"another site":         {"Sec-Fetch-Site: cross-site", 403},
		"a neighbour":          {"Sec-Fetch-Site: same-site", 403},
		"another origin":       {"Origin: http://example.com", 403},
		"another port":         {"Origin: http://127.0.0.1:9", 403},
		"no origin":            {"Origin: null", 403},
		"a form's type":        {"Content-Type: text/plain", 415},
		"a rebound name":       {"Host: evil.example:8080", 421},
		"another address":      {"Host: 192.168.1.5:8080", 421},
		"a name that pretends": {"Host: localhost.evil.example", 421},
	} {
		if m := s.post(body, c.header); m.Status != c.status {
			t.Errorf("%s: %d %s, want %d", name, m.Status, m.Message, c.status)
		}
	}
	if rows, _ := s.stored(); len(rows) != 0 {
		t.Errorf("stored %v", rows)
	}
	for name, headers := range map[string][]string{
		"the app":         {"Sec-Fetch-Site: same-origin", "Origin: http://127.0.0.1:8080"},
		"the app by name": {"Host: localhost:8080", "Origin: http://localhost:8080"},
		"the app by IPv6": {"Host: [::1]:8080", "Origin: http://[::1]:8080"},
		"with a charset":  {"Content-Type: application/json; charset=utf-8"},
	} {
		if m := s.post(body, headers...); m.Status != 200 {
			t.Errorf("%s: %d %s", name, m.Status, m.Message)
		}
	}
	if w := s.ask("GET", "/", "", "Host: evil.example"); w.Code != 421 {
		t.Errorf("the app under a foreign name: %d", w.Code)
	}
}

func TestCheckListen(t *testing.T) {
	for _, good := range []string{"127.0.0.1:8080", "localhost:0", "[::1]:80", "127.9.9.9:1", "LOCALHOST:8080"} {
		if err := CheckListen(good); err != nil {
			t.Errorf("%s: %v", good, err)
		}
	}
	for bad, says := range map[string]string{
		":8080": "not paired", "0.0.0.0:8080": "not paired", "[::]:8080": "not paired", "192.168.0.4:80": "use 127.0.0.1:80",
		"shop.example:80": "not paired", "localhost.evil.example:80": "not paired", "8080": "no address", "": "no address",
		"127.0.0.1:http": "no port", "127.0.0.1:70000": "no port",
	} {
		if err := CheckListen(bad); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: %v, want %q", bad, err, says)
		}
	}
}
