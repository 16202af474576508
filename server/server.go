// Package server is Asfound's HTTP side: sync of rows, photos, sellers' pages and the app itself.
package server

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"log/slog"
	"net"
	"net/http"
	"net/netip"
	"net/url"
	"time"

	"github.com/go-playground/validator/v10"
	"github.com/labstack/echo/v4"

	"asfound/server/link"
	"asfound/server/photo"
	"asfound/server/store"
)

// Config is what a server is made of.
type Config struct {
	// Store keeps the rows; the caller closes it after Serve has returned.
	Store store.Store
	// Photos keeps the pictures.
	Photos *photo.Folder
	// Site is the built app with index.html at its top; nil when it was not built.
	Site fs.FS
	// Links keeps the papers given to sellers.
	Links *link.Shelf
	// Public is the address under which sellers reach their pages; nil for this machine's own alone.
	Public *url.URL
	// Now is the wall clock; nil means time.Now.
	Now func() time.Time
	// Log receives faults of the server; nil drops them.
	Log *slog.Logger
}

// Server answers requests.
type Server struct {
	Config
	echo     *echo.Echo
	validate *validator.Validate
	// pushes bounds the bodies held in memory at a time.
	pushes chan struct{}
	// making bounds the links being made, redraws the photos drawn anew, at a time: both take much memory.
	making, redraws chan struct{}
	// sending bounds the sellers' photos held in memory at a time.
	sending chan struct{}
	guesses *guesses
	relay   *relay
	// idle is how long a body may stall, whole how long it may take in all.
	idle, whole time.Duration
	// grace is how long requests under way may take after the stop was asked for.
	grace time.Duration
}

const (
	pushesAtOnce = 32

	headerTime  = 10 * time.Second
	requestTime = 60 * time.Second
	answerTime  = 60 * time.Second
	restTime    = 120 * time.Second
	headerBytes = 16 << 10

	tendEvery = time.Minute
)

// New makes a server.
func New(config Config) *Server {
	if config.Now == nil {
		config.Now = time.Now
	}
	if config.Log == nil {
		config.Log = slog.New(slog.DiscardHandler)
	}
	s := &Server{
		Config: config, echo: echo.New(), validate: newValidator(), pushes: make(chan struct{}, pushesAtOnce),
		making: make(chan struct{}, linksAtOnce), redraws: make(chan struct{}, 1), sending: make(chan struct{}, photosAtOnce),
		guesses: &guesses{now: config.Now, by: map[netip.Prefix]*bucket{}},
		relay:   &relay{store: config.Store, now: config.Now},
		idle:    30 * time.Second, whole: 5 * time.Minute, grace: 8 * time.Second,
	}
	s.echo.HideBanner, s.echo.HidePort = true, true
	s.echo.HTTPErrorHandler = s.fail
	s.routes()
	return s
}

// Handler answers requests; Serve wraps it with time limits.
func (s *Server) Handler() http.Handler { return s.echo }

// Serve answers requests on the listener until the context is done, then lets those under way finish for a few
// seconds. It returns nil after such a stop. It refuses a listener that is not on this machine alone: see CheckListen.
func (s *Server) Serve(ctx context.Context, listener net.Listener) error {
	if err := CheckListen(listener.Addr().String()); err != nil {
		return errors.Join(err, listener.Close())
	}
	web := &http.Server{
		Handler: s.echo, ReadHeaderTimeout: headerTime, ReadTimeout: requestTime, WriteTimeout: answerTime,
		IdleTimeout: restTime, MaxHeaderBytes: headerBytes, ErrorLog: slog.NewLogLogger(s.Log.Handler(), slog.LevelWarn),
	}
	ended := make(chan error, 1)
	go func() { ended <- web.Serve(listener) }()
	tend := time.NewTicker(tendEvery)
	defer tend.Stop()
	s.tendLinks()
	// What was only counted is written before the store is closed.
	defer s.tendLinks()
	for ctx.Err() == nil {
		select {
		case err := <-ended:
			return fmt.Errorf("asfound can no longer take requests: %w", err)
		case <-tend.C:
			s.tendLinks()
		case <-ctx.Done():
		}
	}
	stop, cancel := context.WithTimeout(context.WithoutCancel(ctx), s.grace)
	defer cancel()
	if err := web.Shutdown(stop); err != nil {
		s.Log.Warn("requests under way were cut off at the stop", "err", err)
		return web.Close()
	}
	return nil
}
