package server

import (
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"runtime/debug"
	"strings"

	"github.com/labstack/echo/v4"

	"asfound/server/link"
	"asfound/server/photo"
	"asfound/server/store"
	"asfound/server/workbook"
)

// Problem is an answer that says no. Its JSON is {"code","message"} and what the case adds.
type Problem struct {
	Status  int    `json:"-"`
	Code    string `json:"code"`
	Message string `json:"message"`
	// Now is the server's time (ms), where the sender's clock or id is the matter.
	Now int64 `json:"now,omitempty"`
	// State is how much of a photo is here, where an upload is the matter.
	*photo.State
	// wait is for Retry-After, seconds as text.
	wait string
}

func (p *Problem) Error() string { return p.Message }

func problem(status int, code, message string) *Problem {
	return &Problem{Status: status, Code: code, Message: message}
}

// asProblem puts any error in the terms of HTTP. What nobody foresaw is 500 and is told to the log only.
func asProblem(err error) *Problem {
	var (
		p *Problem
		h *echo.HTTPError
	)
	for _, known := range []struct {
		err    error
		status int
		code   string
		wait   string
	}{
		{store.ErrDeviceReused, http.StatusConflict, "device-reused", ""},
		{store.ErrFull, http.StatusInsufficientStorage, "disk-full", ""},
		{photo.ErrFull, http.StatusInsufficientStorage, "disk-full", ""},
		{store.ErrClosed, http.StatusServiceUnavailable, "stopping", "5"},
		{photo.ErrBusy, http.StatusServiceUnavailable, "busy", "2"},
		{photo.ErrName, http.StatusBadRequest, "photo-name", ""},
		{photo.ErrMissing, http.StatusNotFound, "no-photo", ""},
		{photo.ErrAltered, http.StatusNotFound, "altered", ""},
		{photo.ErrOffset, http.StatusConflict, "offset", ""},
		{photo.ErrSize, http.StatusRequestEntityTooLarge, "too-large", ""},
		{photo.ErrHash, http.StatusUnprocessableEntity, "wrong-hash", ""},
		{photo.ErrPicture, http.StatusUnprocessableEntity, "no-picture", ""},
		{photo.ErrCut, http.StatusBadRequest, "cut-off", ""},
		{link.ErrDisk, http.StatusInsufficientStorage, "disk-full", ""},
		{link.ErrRefused, http.StatusUnprocessableEntity, "link", ""},
		{link.ErrMade, http.StatusConflict, "link-made", ""},
		{link.ErrNone, http.StatusNotFound, "no-link", ""},
		{workbook.ErrTable, http.StatusUnprocessableEntity, "table", ""},
		{link.ErrFull, http.StatusUnprocessableEntity, "links-full", ""},
	} {
		if errors.Is(err, known.err) && !errors.As(err, &p) {
			if known.status == http.StatusInsufficientStorage { // the whole names files of the server: for its log
				return problem(known.status, known.code, "the server's disk is full: nothing was stored, make room on it")
			}
			return &Problem{Status: known.status, Code: known.code, Message: err.Error(), wait: known.wait}
		}
	}
	switch {
	case errors.As(err, &p):
		return p
	case errors.As(err, &h) && h.Code == http.StatusMethodNotAllowed:
		return problem(h.Code, "method", "this address does not take such a request")
	case errors.As(err, &h) && h.Code == http.StatusNotFound:
		return problem(h.Code, "not-found", "there is nothing at this address")
	case errors.As(err, &h) && h.Code < 500:
		return problem(h.Code, "request", http.StatusText(h.Code))
	}
	return problem(http.StatusInternalServerError, "fault", "asfound has a fault: nothing was stored, its log says more")
}

// catch makes an error of a panic, so that one request cannot end the server.
func catch(next echo.HandlerFunc) echo.HandlerFunc {
	return func(c echo.Context) (err error) {
		defer func() {
			switch r := recover(); r {
			case nil:
			case http.ErrAbortHandler:
				panic(r) // net/http's own way to cut a connection
			default:
				err = fmt.Errorf("panic: %v\n%s", r, debug.Stack())
			}
		}()
		return next(c)
	}
}

// fail is echo's error handler.
func (s *Server) fail(err error, c echo.Context) {
	p := asProblem(err)
	if p.Status >= 500 && p.Status != http.StatusServiceUnavailable {
		s.Log.Error("a request failed", "method", c.Request().Method, "path", forLog(c.Request().URL.Path), "status", p.Status, "err", err)
	}
	if c.Response().Committed {
		return
	}
	if p.wait != "" {
		c.Response().Header().Set("Retry-After", p.wait)
	}
	path := c.Request().URL.Path
	if path == "/api" || strings.HasPrefix(path, "/api/") {
		err = reply(c, p.Status, p)
	} else {
		c.Response().Header().Set("Cache-Control", "no-store")
		err = c.String(p.Status, p.Message+"\n")
	}
	if err != nil {
		s.Log.Debug("an answer was not delivered", "err", err)
	}
}

// forLog leaves out of an address what opens a seller's page.
func forLog(path string) string {
	if strings.HasPrefix(path, "/s/") {
		return "/s/..."
	}
	return path
}

// reply sends JSON with the header by which the app tells this server from a stranger's (a hotel's sign-in page).
func reply(c echo.Context, status int, v any) error {
	body, err := json.Marshal(v)
	if err != nil {
		return err
	}
	return replyText(c, status, body)
}

func replyText(c echo.Context, status int, body []byte) error {
	h := c.Response().Header()
	h.Set("Asfound", "1")
	h.Set("Cache-Control", "no-store")
	return c.Blob(status, "application/json", body)
}

func (s *Server) unknown(echo.Context) error {
	return problem(http.StatusNotFound, "not-found", "there is nothing at this address")
}

func (s *Server) health(c echo.Context) error {
	epoch := s.Store.Epoch()
	if _, err := s.Store.ValidCursor(store.Cursor{Epoch: epoch}); err != nil {
		return err
	}
	return reply(c, http.StatusOK, map[string]any{"ok": true, "now": s.Now().UnixMilli(), "epoch": epoch})
}
