package server

import (
	"fmt"
	"mime"
	"net"
	"net/http"
	"net/netip"
	"net/url"
	"strconv"
	"strings"

	"github.com/labstack/echo/v4"
)

const contentPolicy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' blob: data:; " +
	"font-src 'self'; connect-src 'self'; worker-src 'self'; manifest-src 'self'; form-action 'self'; base-uri 'none'; " +
	"object-src 'none'; frame-ancestors 'none'"

// CheckListen refuses to listen on anything but this machine itself: there is no pairing of devices yet, so whoever
// can reach the server may read and change everything.
func CheckListen(addr string) error {
	host, port, err := net.SplitHostPort(addr)
	if err != nil {
		return fmt.Errorf("%q is no address to listen on: one like 127.0.0.1:8080 is expected", addr)
	}
	if n, err := strconv.Atoi(port); err != nil || n < 0 || n > 65535 {
		return fmt.Errorf("%q is no port to listen on: a number from 1 to 65535 is expected, as in 127.0.0.1:8080", port)
	}
	if !isLoopback(host) {
		return fmt.Errorf("asfound will not listen on %q: devices are not paired yet, so everybody in reach of that address could read and change everything; use 127.0.0.1:%s", addr, port)
	}
	return nil
}

func isLoopback(host string) bool {
	if strings.EqualFold(host, "localhost") {
		return true
	}
	ip, err := netip.ParseAddr(host)
	return err == nil && ip.Unmap().IsLoopback() && ip.Zone() == ""
}

func setHeaders(next echo.HandlerFunc) echo.HandlerFunc {
	return func(c echo.Context) error {
		h := c.Response().Header()
		h.Set("Content-Security-Policy", contentPolicy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		return next(c)
	}
}

// checkHost refuses requests under a name that is not this machine's: a stranger's page could make its own name point
// here and would then pass for the same origin (DNS rebinding). Under the public name, and whatever another program
// has passed on, sellers' pages are all there is.
func (s *Server) checkHost(next echo.HandlerFunc) echo.HandlerFunc {
	return func(c echo.Context) error {
		r := c.Request()
		name := r.Host
		if host, _, err := net.SplitHostPort(r.Host); err == nil {
			name = host
		}
		local := isLoopback(strings.Trim(name, "[]"))
		outside := s.Public != nil && sameHost(r.Host, s.Public.Host)
		if !local && !outside {
			return problem(http.StatusMisdirectedRequest, "host", "asfound answers only as localhost or 127.0.0.1: open it under one of these names")
		}
		// As it was written: routes are found by that, and "/%73/../" would be the app's files.
		if path := r.URL.EscapedPath(); (outside || passedOn(r)) && !strings.HasPrefix(path, "/s/") && path != "/robots.txt" {
			return problem(http.StatusMisdirectedRequest, "host", "only pages for sellers are reached from outside")
		}
		return next(c)
	}
}

// sameHost compares names with their ports, of which 443 may be left out.
func sameHost(a, b string) bool {
	return strings.EqualFold(strings.TrimSuffix(a, ":443"), strings.TrimSuffix(b, ":443"))
}

// passedOn tells whether another program took the request in and passed it on, as it should say (RFC 7239, and the
// names in use before it). One that says nothing and gives this machine as host cannot be told from the app.
func passedOn(r *http.Request) bool {
	for _, name := range []string{"Forwarded", "X-Forwarded-For", "X-Forwarded-Host", "X-Forwarded-Proto", "X-Real-Ip", "Via"} {
		if r.Header.Get(name) != "" {
			return true
		}
	}
	return false
}

// ParsePublic reads the address under which sellers reach their pages, as https://estimates.example.
func ParsePublic(text string) (*url.URL, error) {
	u, err := url.Parse(text)
	if err != nil || u.Scheme != "https" || u.Hostname() == "" || u.User != nil || strings.Trim(u.Path, "/") != "" || u.RawQuery != "" || u.Fragment != "" {
		return nil, fmt.Errorf("%q is no public address: one like https://estimates.example is expected, with nothing after the name", text)
	}
	if isLoopback(u.Hostname()) {
		return nil, fmt.Errorf("%q is this machine's own address: give the one by which sellers reach it, or leave --public out", text)
	}
	return &url.URL{Scheme: "https", Host: strings.ToLower(u.Host)}, nil
}

// checkOrigin refuses writes that another site's page sends through the user's browser.
func checkOrigin(next echo.HandlerFunc) echo.HandlerFunc {
	return func(c echo.Context) error {
		r := c.Request()
		switch r.Method {
		case http.MethodGet, http.MethodHead, http.MethodOptions:
			return next(c)
		}
		foreign := problem(http.StatusForbidden, "cross-origin", "this came from another site's page: only the app itself may write here")
		if site := r.Header.Get("Sec-Fetch-Site"); site != "" && site != "same-origin" {
			return foreign
		}
		if origin := r.Header.Get("Origin"); origin != "" {
			if u, err := url.Parse(origin); err != nil || !strings.EqualFold(u.Host, r.Host) {
				return foreign
			}
		}
		return next(c)
	}
}

// wantType refuses a body of another media type. A page of another site can send only a few types without asking
// first, and asking is never answered.
func wantType(r *http.Request, allowed ...string) error {
	kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type"))
	for _, a := range allowed {
		if err == nil && kind == a {
			return nil
		}
	}
	return problem(http.StatusUnsupportedMediaType, "content-type", fmt.Sprintf("Content-Type %q: %s is expected", r.Header.Get("Content-Type"), strings.Join(allowed, ", ")))
}
