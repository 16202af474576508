package server

import (
	"errors"
	"fmt"
	"net/http"
	"strconv"
	"time"

	"github.com/labstack/echo/v4"

	"asfound/server/photo"
)

// getPhoto answers GET and HEAD. A photo never changes under its name.
func (s *Server) getPhoto(c echo.Context) error {
	name := c.Param("hash")
	file, kind, err := s.Photos.Get(name)
	if err != nil {
		return err
	}
	defer file.Close() // read only: nothing to lose
	h := c.Response().Header()
	h.Set("Asfound", "1")
	h.Set("Content-Type", kind)
	h.Set("Cache-Control", "private, max-age=31536000, immutable")
	h.Set("ETag", `"`+name+`"`)
	http.ServeContent(c.Response(), c.Request(), "", time.Time{}, file)
	return nil
}

func (s *Server) havePhoto(c echo.Context) error {
	state, err := s.Photos.State(c.Param("hash"))
	if err != nil {
		return err
	}
	return reply(c, http.StatusOK, state)
}

// putPhoto appends to an upload. Upload-Offset says where; Upload-Length, when given, how long the whole is.
func (s *Server) putPhoto(c echo.Context) error {
	r := c.Request()
	if err := wantType(r, "application/octet-stream", "image/jpeg", "image/png", "image/webp"); err != nil {
		return err
	}
	offset, err := headerNumber(r, "Upload-Offset", 0)
	if err != nil {
		return err
	}
	total, err := headerNumber(r, "Upload-Length", photo.Unknown)
	if err != nil {
		return err
	}
	state, err := s.Photos.Append(c.Param("hash"), offset, total, s.patiently(c.Response(), r))
	if err != nil {
		p := asProblem(err)
		if errors.Is(err, photo.ErrOffset) || errors.Is(err, photo.ErrCut) {
			p.State = &state
		}
		if p.Status >= 500 {
			s.Log.Warn("a photo was not stored", "err", err)
		}
		return p
	}
	return reply(c, http.StatusOK, state)
}

func headerNumber(r *http.Request, name string, missing int64) (int64, error) {
	text := r.Header.Get(name)
	if text == "" {
		return missing, nil
	}
	n, err := strconv.ParseInt(text, 10, 64)
	if err != nil || n < 0 {
		return 0, problem(http.StatusBadRequest, "header", fmt.Sprintf("%s %q: a whole number of bytes is expected", name, text))
	}
	return n, nil
}
