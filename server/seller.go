package server

import (
	"bufio"
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io"
	"net/http"
	"net/url"
	"strings"
	"time"

	"github.com/labstack/echo/v4"

	"asfound/server/link"
	"asfound/server/photo"
	"asfound/server/seller"
)

const sellerPolicy = "default-src 'none'; style-src 'self'; img-src 'self' data:; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

// sellerRoutes are all addresses below /s/: whatever is not there is answered alike.
func (s *Server) sellerRoutes() {
	g := s.echo.Group("/s", s.sellerHeaders)
	for _, m := range []string{http.MethodGet, http.MethodHead} {
		g.Add(m, "/"+seller.StyleName, s.sellerStyle)
		g.Add(m, "/:token", s.sellerPage)
		g.Add(m, "/:token/photo/:key", s.sellerPhoto)
		g.Add(m, "/:token/said/:line", s.sellerSaid)
	}
	g.POST("/:token", s.sellerAnswer)
	g.Any("", s.nothing)
	g.Any("/", s.nothing)
	g.Any("/*", s.nothing)
}

// sellerHeaders are the same for every answer below /s/, so that they tell nothing apart. A fault is caught here:
// its address must not come into a log.
func (s *Server) sellerHeaders(next echo.HandlerFunc) echo.HandlerFunc {
	return func(c echo.Context) error {
		h := c.Response().Header()
		h.Set("Content-Security-Policy", sellerPolicy)
		h.Set("X-Robots-Tag", "noindex, nofollow")
		h.Set("Cache-Control", "private, no-store")
		err := next(c)
		if err == nil || errors.Is(err, link.ErrNone) {
			if err != nil {
				return s.nothing(c)
			}
			return nil
		}
		s.Log.Error("a seller's page failed", "method", c.Request().Method, "err", err)
		if c.Response().Committed {
			return nil
		}
		return c.Blob(http.StatusInternalServerError, "text/plain; charset=utf-8", []byte("This page cannot be shown now: try again later.\n"))
	}
}

// nothing is the one answer for what is unknown, withdrawn, expired or malformed.
func (s *Server) nothing(c echo.Context) error {
	status := http.StatusNotFound
	if !s.guesses.wrong(c.Request()) {
		c.Response().Header().Set("Retry-After", "60")
		status = http.StatusTooManyRequests
	}
	return c.Blob(status, "text/html; charset=utf-8", seller.Nothing)
}

func (s *Server) sellerStyle(c echo.Context) error {
	c.Response().Header().Set("Cache-Control", "public, max-age=31536000, immutable")
	return c.Blob(http.StatusOK, "text/css; charset=utf-8", seller.Style)
}

func (s *Server) sellerPage(c echo.Context) error {
	token := c.Param("token")
	l, err := s.Links.Find(token)
	if err != nil {
		return err
	}
	if counts(c) {
		if err := s.Links.Look(l.ID, s.tellOpened); err != nil {
			s.Log.Warn("that a link was opened was not kept", "link", l.ID, "err", err)
		}
	}
	return s.showPage(c, http.StatusOK, token, l, nil)
}

// counts tells whether a look is the seller's: not the buyer's own, not a browser's in advance, not the page again
// after an answer.
func counts(c echo.Context) bool {
	r, q := c.Request(), c.QueryParams()
	purpose := r.Header.Get("Sec-Purpose") + r.Header.Get("Purpose")
	return r.Method == http.MethodGet && !q.Has("preview") && !q.Has("sent") && !strings.Contains(purpose, "prefetch")
}

func (s *Server) showPage(c echo.Context, status int, token string, l *link.Link, fault *seller.Fault) error {
	doc, err := s.Links.Document(l)
	if err != nil {
		return err
	}
	page := seller.Page{
		Document: doc, Base: "/s/" + token, Expires: time.UnixMilli(l.Expires), Sizes: map[string]seller.Size{}, Lines: l.Lines,
		Answers: map[string]seller.Answer{}, Sent: c.QueryParam("sent"), Fault: fault,
	}
	for key, copied := range l.Photos {
		page.Sizes[key] = seller.Size{Width: copied.Width, Height: copied.Height}
	}
	for line, a := range l.Answers {
		page.Answers[line] = seller.Answer{Says: a.Says, Word: a.Word, Photo: a.Photo != ""}
	}
	var b bytes.Buffer
	if err := page.Write(&b); err != nil {
		return err
	}
	return c.Blob(status, "text/html; charset=utf-8", b.Bytes())
}

// keepPhoto lets a browser show a photo again without asking, while the page is read and answered.
const keepPhoto = "private, max-age=300"

func (s *Server) sellerPhoto(c echo.Context) error {
	l, err := s.Links.Find(c.Param("token"))
	if err != nil {
		return err
	}
	b, err := s.Links.Photo(l, c.Param("key"))
	if err != nil {
		return err
	}
	c.Response().Header().Set("Cache-Control", keepPhoto)
	return c.Blob(http.StatusOK, "image/jpeg", b)
}

// sellerSaid shows him his own photo again.
func (s *Server) sellerSaid(c echo.Context) error {
	l, err := s.Links.Find(c.Param("token"))
	if err != nil {
		return err
	}
	a, ok := l.Answers[c.Param("line")]
	if !ok || a.Photo == "" {
		return link.ErrNone
	}
	file, kind, err := s.Photos.Get(a.Photo)
	if errors.Is(err, photo.ErrMissing) {
		return link.ErrNone
	}
	if err != nil {
		return err
	}
	defer file.Close() // read only: nothing to lose
	return c.Stream(http.StatusOK, kind, file)
}

// sameSite refuses an answer that another site's page sends. With "no-referrer" a browser names the origin of the
// page's own form as null (Fetch standard, "append a request Origin header"); then the token alone must do.
func sameSite(r *http.Request) bool {
	if site := r.Header.Get("Sec-Fetch-Site"); site != "" {
		return site == "same-origin"
	}
	origin := r.Header.Get("Origin")
	if origin == "" || origin == "null" {
		return true
	}
	u, err := url.Parse(origin)
	return err == nil && strings.EqualFold(u.Host, r.Host)
}

func (s *Server) sellerAnswer(c echo.Context) error {
	token := c.Param("token")
	l, err := s.Links.Find(token)
	if err != nil {
		return err
	}
	if !sameSite(c.Request()) {
		return c.Blob(http.StatusForbidden, "text/plain; charset=utf-8", []byte("This came from another site's page: nothing was kept.\n"))
	}
	in := s.readAnswer(c.Response(), c.Request())
	defer in.done()
	no := func(status int, what seller.What) error {
		if fresh, err := s.Links.Find(token); err == nil { // what was held or said meanwhile
			l = fresh
		}
		return s.showPage(c, status, token, l, &seller.Fault{Line: in.line, What: what, Answer: seller.Answer{Says: in.says, Word: in.word}})
	}
	if in.broken || !l.MayAnswer(in.line) {
		return no(http.StatusBadRequest, seller.NotStored)
	}
	if err := l.Room(false); err != nil {
		return no(http.StatusTooManyRequests, seller.TooMany)
	}
	shot, bad := s.answerPhoto(c, l, in)
	switch {
	case bad != nil:
		return no(bad.status, bad.what)
	case in.tooLong || in.says == "":
		if shot != "" {
			if err := s.Links.Hold(l.ID, in.line, shot); err != nil {
				s.Log.Warn("a seller's photo was not held", "link", l.ID, "err", err)
			}
		}
		if in.tooLong {
			return no(http.StatusUnprocessableEntity, seller.TooLong)
		}
		return no(http.StatusUnprocessableEntity, seller.NoAnswer)
	}
	err = s.Links.Say(l.ID, in.line, link.Answer{Says: in.says, Word: in.word, Photo: shot}, func(l *link.Link, a link.Answer) error {
		return s.relay.tell("listing:"+l.Listing, "link/"+l.ID+"/answer/"+in.line, answerTold{Says: a.Says, Word: a.Word, Photo: a.Photo, At: moment(a.At)})
	})
	switch {
	case errors.Is(err, link.ErrFull):
		return no(http.StatusTooManyRequests, seller.TooMany)
	case errors.Is(err, link.ErrNone):
		return err
	case err != nil:
		s.Log.Error("a seller's answer was not kept", "link", l.ID, "err", err)
		return no(http.StatusInternalServerError, seller.NotStored)
	}
	c.Response().Header().Set("Location", "/s/"+token+"?sent="+url.QueryEscape(in.line)+"#a-"+in.line)
	return c.NoContent(http.StatusSeeOther)
}

type badPhoto struct {
	status int
	what   seller.What
}

// redrawWait is how long an answer waits for the photos of others before it.
const redrawWait = 15 * time.Second

// answerPhoto draws the photo of an answer anew and keeps it among the shop's; "" for none.
func (s *Server) answerPhoto(c echo.Context, l *link.Link, in answerIn) (name string, bad *badPhoto) {
	if in.badPhoto {
		return "", &badPhoto{http.StatusUnprocessableEntity, seller.NoPhoto}
	}
	if in.busy {
		return "", &badPhoto{http.StatusServiceUnavailable, seller.Busy}
	}
	if len(in.photo) == 0 {
		return "", nil
	}
	if l.Room(true) != nil {
		return "", &badPhoto{http.StatusTooManyRequests, seller.TooManyPhotos}
	}
	wait := time.NewTimer(redrawWait)
	defer wait.Stop()
	select {
	case s.redraws <- struct{}{}:
		defer func() { <-s.redraws }()
	case <-c.Request().Context().Done():
		return "", &badPhoto{http.StatusServiceUnavailable, seller.Busy}
	case <-wait.C:
		return "", &badPhoto{http.StatusServiceUnavailable, seller.Busy}
	}
	jpg, err := photo.Redraw(in.photo, maxAnswerSide)
	if errors.Is(err, photo.ErrPicture) || errors.Is(err, photo.ErrSize) {
		return "", &badPhoto{http.StatusUnprocessableEntity, seller.NoPhoto}
	}
	if err == nil {
		sum := sha256.Sum256(jpg)
		name = hex.EncodeToString(sum[:])
		err = s.keepPhoto(name, jpg)
	}
	if err != nil {
		s.Log.Error("a seller's photo was not kept", "link", l.ID, "err", err)
		return "", &badPhoto{http.StatusInternalServerError, seller.NotStored}
	}
	return name, nil
}

// keepPhoto goes on where a stop or a full disk has left off; what was left and is not of this photo is dropped.
func (s *Server) keepPhoto(name string, jpg []byte) error {
	for again := false; ; again = true {
		state, err := s.Photos.State(name)
		if err != nil {
			return err
		}
		from := min(state.Have, int64(len(jpg)))
		_, err = s.Photos.Append(name, state.Have, int64(len(jpg)), bytes.NewReader(jpg[from:]))
		if again || !errors.Is(err, photo.ErrHash) {
			return err
		}
	}
}

const (
	maxAnswerSide = 1600
	// photosAtOnce are held in memory, of at most photo.MaxBytes each.
	photosAtOnce = 8
)

// answerIn is a form as it came.
type answerIn struct {
	line, says, word string
	photo            []byte
	// tooLong and badPhoto tell of a word or photo beyond bounds; broken of a form that is none.
	tooLong, badPhoto, broken bool
	// busy tells that the photo was not read, since too many others are being sent.
	busy bool
	// holds tells that the photo has a place in memory, done gives it back.
	holds bool
	done  func()
}

// maxDrained is how much of a body is read to its end though it is too large: a browser shows no answer while it sends.
const maxDrained = 64 << 20

func (s *Server) readAnswer(w http.ResponseWriter, r *http.Request) (in answerIn) {
	in.done = func() {}
	s.longAnswer(w)
	r.Body = io.NopCloser(&bounded{s.patiently(w, r), maxDrained})
	parts, err := r.MultipartReader()
	if err != nil {
		in.broken = true
		return in
	}
	for range 16 {
		part, err := parts.NextPart()
		if errors.Is(err, io.EOF) {
			return in
		}
		if err != nil {
			in.broken = true
			return in
		}
		most := int64(16 << 10)
		from := bufio.NewReader(part)
		if part.FormName() == "photo" {
			if _, err := from.Peek(1); err == nil && !s.mayHold(&in) { // a form without a photo sends an empty one
				in.busy, most = true, 0
			} else {
				most = photo.MaxBytes
			}
		}
		b, err := io.ReadAll(io.LimitReader(from, most+1))
		over := int64(len(b)) > most
		if err == nil && over {
			_, err = io.Copy(io.Discard, from)
		}
		if err != nil {
			in.broken = true
			return in
		}
		in.take(part.FormName(), b, over)
	}
	in.broken = true
	return in
}

// mayHold takes a place for a form's photo, once.
func (s *Server) mayHold(in *answerIn) bool {
	if in.holds {
		return true
	}
	select {
	case s.sending <- struct{}{}:
		in.holds, in.done = true, func() { <-s.sending }
	default:
	}
	return in.holds
}

func (in *answerIn) take(name string, b []byte, over bool) {
	switch name {
	case "line":
		in.line = string(b)
	case "says":
		switch says := string(b); says {
		case "agree", "disagree", "done":
			in.says = says
		}
	case "word":
		in.word = plainText(b)
		in.tooLong = over || len([]rune(in.word)) > link.MaxWord
	case "photo":
		in.badPhoto = over && !in.busy
		if !over {
			in.photo = b
		}
	}
}

// plainText is what somebody typed, without what no key makes.
func plainText(b []byte) string {
	text := strings.ToValidUTF8(strings.ReplaceAll(string(b), "\r\n", "\n"), "\uFFFD")
	text = strings.Map(func(r rune) rune {
		if r < ' ' && r != '\n' && r != '\t' || r >= 0x7f && r < 0xa0 {
			return -1
		}
		return r
	}, text)
	return strings.TrimSpace(text)
}
