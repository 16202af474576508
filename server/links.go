package server

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"mime/multipart"
	"net/http"
	"time"

	"github.com/labstack/echo/v4"
	"github.com/skip2/go-qrcode"

	"asfound/server/link"
	"asfound/server/record"
)

// linkAsk is the part "link" of POST /api/links; the other parts, "photo", have the key of a photo as file name.
type linkAsk struct {
	ID       string          `json:"id"`
	Listing  string          `json:"listing"`
	Days     int             `json:"days"`
	Lines    []string        `json:"lines"`
	Document json.RawMessage `json:"document"`
}

// linkMade answers it. The token is told here and never again.
type linkMade struct {
	ID      string   `json:"id"`
	Path    string   `json:"path"`
	URL     string   `json:"url"`
	Expires string   `json:"expires"`
	QR      []string `json:"qr"`
	Public  bool     `json:"public"`
}

type linkState struct {
	ID        string      `json:"id"`
	State     string      `json:"state"`
	Listing   string      `json:"listing"`
	Created   string      `json:"created"`
	Expires   string      `json:"expires"`
	Withdrawn string      `json:"withdrawn,omitempty"`
	Opened    *openedTold `json:"opened,omitempty"`
	Answers   int         `json:"answers"`
}

// openedTold is also the row link/<id>/opened.
type openedTold struct {
	First string `json:"first"`
	Last  string `json:"last"`
	Count int    `json:"count"`
}

// answerTold is the row link/<id>/answer/<line>.
type answerTold struct {
	Says  string `json:"says"`
	Word  string `json:"word"`
	Photo string `json:"photo,omitempty"`
	At    string `json:"at"`
}

const (
	linksAtOnce = 2
	// framing is what a body may have beside document and photos: heads of its parts.
	framing = 200 << 10
)

// moment writes ms since the Unix epoch as the app does: ISO 8601, UTC.
func moment(ms int64) string { return time.UnixMilli(ms).UTC().Format("2006-01-02T15:04:05.000Z") }

func (s *Server) makeLink(c echo.Context) error {
	r := c.Request()
	// A form of another site's page could be of this type; it cannot set this header.
	if err := wantType(r, "multipart/form-data"); err != nil {
		return err
	}
	if r.Header.Get("Asfound") != "1" {
		return problem(http.StatusForbidden, "cross-origin", "the header Asfound is missing: only the app itself may make links")
	}
	select {
	case s.making <- struct{}{}:
		defer func() { <-s.making }()
	default:
		p := problem(http.StatusServiceUnavailable, "busy", "other links are being made: try again in a moment")
		p.wait = "2"
		return p
	}
	ask, err := s.readLink(c.Response(), r)
	if err != nil {
		return err
	}
	made, token, err := s.Links.Make(*ask)
	if err != nil {
		return err
	}
	path := "/s/" + token
	address, public := s.base(r)
	address += path
	rows, err := qrRows(address)
	if err != nil {
		return err
	}
	return reply(c, http.StatusOK, linkMade{ID: made.ID, Path: path, URL: address, Expires: moment(made.Expires), QR: rows, Public: public})
}

// base is what stands before the path of a link, and whether that is reached from outside.
func (s *Server) base(r *http.Request) (string, bool) {
	if s.Public != nil {
		return "https://" + s.Public.Host, true
	}
	return "http://" + r.Host, false
}

// qrRows are the rows of a QR code, 1 dark, without the quiet zone around it. Level M mends 15 % (ISO/IEC 18004).
func qrRows(text string) ([]string, error) {
	q, err := qrcode.New(text, qrcode.Medium)
	if err != nil {
		return nil, fmt.Errorf("the address does not fit into a QR code: %w", err)
	}
	q.DisableBorder = true
	var rows []string
	for _, line := range q.Bitmap() {
		row := make([]byte, len(line))
		for i, dark := range line {
			row[i] = '0'
			if dark {
				row[i] = '1'
			}
		}
		rows = append(rows, string(row))
	}
	return rows, nil
}

var errBody = errors.New("the body is larger than allowed")

// bounded fails, rather than ends, where a body is too large.
type bounded struct {
	io.Reader
	left int64
}

func (b *bounded) Read(p []byte) (int, error) {
	if b.left <= 0 {
		return 0, errBody
	}
	if int64(len(p)) > b.left {
		p = p[:b.left]
	}
	n, err := b.Reader.Read(p)
	b.left -= int64(n)
	return n, err
}

// readLink takes a request apart. What is wrong in itself is found here, what does not fit by link.Make.
func (s *Server) readLink(w http.ResponseWriter, r *http.Request) (*link.Ask, error) {
	tooLarge := problem(http.StatusRequestEntityTooLarge, "too-large", fmt.Sprintf("document and photos have more than %d bytes: leave photos out", link.MaxBytes))
	if r.ContentLength > link.MaxBytes+framing {
		return nil, tooLarge
	}
	const whole = link.MaxBytes + framing
	s.longAnswer(w)
	r.Body = io.NopCloser(&bounded{s.patiently(w, r), whole})
	parts, err := r.MultipartReader()
	if err != nil {
		return nil, problem(http.StatusBadRequest, "form", "the request's form cannot be read: "+err.Error())
	}
	cut := func(err error) error {
		if errors.Is(err, errBody) {
			return tooLarge
		}
		return problem(http.StatusBadRequest, "cut-off", "the request was cut off or is damaged: nothing was made, send it again")
	}
	ask := link.Ask{Photos: map[string][]byte{}}
	seen, sum := false, 0
	for {
		part, err := parts.NextPart()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, cut(err)
		}
		most := link.MaxPhotoBytes
		if part.FormName() == "link" {
			most = link.MaxDocumentBytes + 4096
		}
		b, err := io.ReadAll(io.LimitReader(part, int64(most)+1))
		if err != nil {
			return nil, cut(err)
		}
		if len(b) > most {
			return nil, problem(http.StatusRequestEntityTooLarge, "too-large", fmt.Sprintf("the part %q has more than %d bytes", clipped(part.FormName()), most))
		}
		if sum += len(b); sum > link.MaxBytes {
			return nil, tooLarge
		}
		if err := take(&ask, part, b, &seen); err != nil {
			return nil, err
		}
	}
	if !seen {
		return nil, problem(http.StatusBadRequest, "form", `the part "link" is missing: it says what the link is for`)
	}
	return &ask, nil
}

func take(ask *link.Ask, part *multipart.Part, b []byte, seen *bool) error {
	switch name := part.FormName(); name {
	case "link":
		if *seen {
			return problem(http.StatusBadRequest, "form", `the part "link" is there twice`)
		}
		*seen = true
		if deep(b, maxBodyDepth) {
			return problem(http.StatusBadRequest, "too-deep", "the document is nested too deep")
		}
		var in linkAsk
		if err := json.Unmarshal(b, &in); err != nil {
			return problem(http.StatusBadRequest, "json", plainJSON(err))
		}
		ask.ID, ask.Listing, ask.Days, ask.Lines, ask.Document = in.ID, in.Listing, in.Days, in.Lines, in.Document
	case "photo":
		key := part.FileName()
		if _, twice := ask.Photos[key]; twice {
			return problem(http.StatusBadRequest, "form", fmt.Sprintf("photo %s is there twice", clipped(key)))
		}
		if len(ask.Photos) >= link.MaxPhotos {
			return problem(http.StatusRequestEntityTooLarge, "too-many", fmt.Sprintf("more than %d photos", link.MaxPhotos))
		}
		ask.Photos[key] = b
	default:
		return problem(http.StatusBadRequest, "form", fmt.Sprintf("the part %q is not known: link and photo are", clipped(name)))
	}
	return nil
}

func clipped(s string) string {
	if len(s) > 80 {
		return s[:80]
	}
	return s
}

// longAnswer gives the answer as long as a slow body may take; the server's own limit is for short ones.
func (s *Server) longAnswer(w http.ResponseWriter) {
	// Not every connection has a deadline (in tests).
	_ = http.NewResponseController(w).SetWriteDeadline(time.Now().Add(s.whole + answerTime))
}

func (s *Server) getLink(c echo.Context) error {
	l, err := s.Links.Get(c.Param("id"))
	if err != nil {
		return err
	}
	return reply(c, http.StatusOK, s.stateOf(l))
}

func (s *Server) withdrawLink(c echo.Context) error {
	id := c.Param("id")
	if record.CheckDoc("listing:"+id) != nil {
		return problem(http.StatusBadRequest, "link-id", "a link's id has 26 characters 0-9, a-z without i, l, o, u")
	}
	l, err := s.Links.Withdraw(id)
	if err != nil {
		return err
	}
	return reply(c, http.StatusOK, s.stateOf(l))
}

func (s *Server) stateOf(l *link.Link) linkState {
	out := linkState{
		ID: l.ID, State: l.State(s.Now()), Listing: l.Listing, Created: moment(l.Created), Expires: moment(l.Expires), Answers: len(l.Answers),
	}
	if l.Withdrawn > 0 {
		out.Withdrawn = moment(l.Withdrawn)
	}
	if l.Opened.Count > 0 {
		out.Opened = openedOf(l)
	}
	return out
}

func openedOf(l *link.Link) *openedTold {
	return &openedTold{First: moment(l.Opened.First), Last: moment(l.Opened.Last), Count: l.Opened.Count}
}

// tellOpened passes on that a link was looked at.
func (s *Server) tellOpened(l *link.Link) error {
	return s.relay.tell("listing:"+l.Listing, "link/"+l.ID+"/opened", openedOf(l))
}

// tendLinks passes on what waits and removes what has ended.
func (s *Server) tendLinks() {
	if err := s.Links.Tend(s.tellOpened); err != nil {
		s.Log.Warn("links were not tended to", "err", err)
	}
}
