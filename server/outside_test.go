package server

import (
	"net/url"
	"testing"
	"testing/fstest"
)

// However an address is written, nothing but sellers' pages is reached from outside.
func TestOutsideByAnyWriting(t *testing.T) {
	s := newShop(t)
	s.public = &url.URL{Scheme: "https", Host: "estimates.example"}
	s.site = fstest.MapFS{"index.html": {Data: []byte("the app")}, "sw.js": {Data: []byte("its worker")}}
	s.restart()
	for _, path := range []string{
		"/%73/../index.html", "/%73/../sw.js", "/%73/..", "/%73/x", "/s/../sw.js", "/s/..%2fsw.js", "/s/%2e%2e/sw.js", "/s//../sw.js", "/%73/../api/health", "/s/../api/health", "//s/../sw.js", "/s/./../sw.js", "/s%2f../sw.js",
	} {
		for _, from := range []string{"Host: estimates.example", "X-Forwarded-For: 203.0.113.7"} {
			if w := s.ask("GET", path, "", from); w.Code == 200 {
				t.Errorf("%s with %s: %d %.40q", path, from, w.Code, w.Body)
			}
		}
	}
}
