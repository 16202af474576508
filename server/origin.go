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
// here and would then pass for the same origin (DNS rebinding).
func checkHost(next echo.HandlerFunc) echo.HandlerFunc {
	return func(c echo.Context) error {
		host := c.Request().Host
		if name, _, err := net.SplitHostPort(host); err == nil {
			host = name
		}
		if !isLoopback(strings.Trim(host, "[]")) {
			return problem(http.StatusMisdirectedRequest, "host", "asfound answers only as localhost or 127.0.0.1: open it under one of these names")
		}
		return next(c)
	}
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
