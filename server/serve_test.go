package server

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"strings"
	"testing"
	"time"

	"asfound/server/store"
)

// serve runs the shop's server on a port of its own; stop ends it and gives Serve's error.
func (s *shop) serve() (addr string, stop func() error) {
	s.t.Helper()
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		s.t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- s.server.Serve(ctx, listener) }()
	s.t.Cleanup(cancel)
	return listener.Addr().String(), func() error { cancel(); return <-ended }
}

func syncHead(addr string, length int) string {
	return fmt.Sprintf("POST /api/sync HTTP/1.1\r\nHost: %s\r\nContent-Type: application/json\r\nContent-Length: %d\r\n\r\n", addr, length)
}

func dial(t *testing.T, addr string) net.Conn {
	t.Helper()
	c, err := net.Dial("tcp", addr)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = c.Close() }) // a test may have closed it
	return c
}

func TestHalfABody(t *testing.T) {
	s := newShop(t)
	addr, stop := s.serve()
	body := pushBody(deviceA, cursor{}, "", 0, row("title", `"lift"`, stamp(1, deviceA), ""))
	for _, sent := range []int{0, 1, len(body) / 2, len(body) - 1} {
		c := dial(t, addr)
		if _, err := io.WriteString(c, syncHead(addr, len(body))+body[:sent]); err != nil {
			t.Fatal(err)
		}
		if err := c.(*net.TCPConn).CloseWrite(); err != nil {
			t.Fatal(err)
		}
		answer, err := http.ReadResponse(bufio.NewReader(c), nil)
		if err == nil && answer.StatusCode != http.StatusBadRequest {
			t.Errorf("%d of %d bytes: status %d", sent, len(body), answer.StatusCode)
		}
	}
	if err := stop(); err != nil {
		t.Error(err)
	}
	if rows, _ := s.stored(); len(rows) != 0 {
		t.Errorf("stored %v", rows)
	}
}

// A body that stalls is given up after the idle time, one that trickles is not, and others are served meanwhile.
func TestStalledBody(t *testing.T) {
	s := newShop(t)
	s.server.idle = 500 * time.Millisecond
	addr, stop := s.serve()
	body := pushBody(deviceA, cursor{}, "", 0, row("title", `"lift"`, stamp(1, deviceA), ""))
	stalled := dial(t, addr)
	if _, err := io.WriteString(stalled, syncHead(addr, len(body))+body[:20]); err != nil {
		t.Fatal(err)
	}
	slow := dial(t, addr)
	if _, err := io.WriteString(slow, syncHead(addr, len(body))); err != nil {
		t.Fatal(err)
	}
	for part := range strings.SplitAfterSeq(body, ",") {
		if _, err := io.WriteString(slow, part); err != nil {
			t.Fatal(err)
		}
		time.Sleep(100 * time.Millisecond)
	}
	if a, err := http.ReadResponse(bufio.NewReader(slow), nil); err != nil || a.StatusCode != 200 {
		t.Errorf("the slow one: %+v, %v", a, err)
	}
	if a, err := http.ReadResponse(bufio.NewReader(stalled), nil); err != nil || a.StatusCode != 400 {
		t.Errorf("the stalled one: %+v, %v", a, err)
	}
	if err := stop(); err != nil {
		t.Error(err)
	}
}

// late is a store that takes its time.
type late struct {
	store.Store
	begun chan struct{}
	delay time.Duration
}

func (l late) Apply(p store.Push) (store.Applied, error) {
	close(l.begun)
	time.Sleep(l.delay)
	return l.Store.Apply(p)
}

func TestStopLetsRequestsFinish(t *testing.T) {
	s := newShop(t)
	begun := make(chan struct{})
	s.server.Store = late{s.store, begun, 300 * time.Millisecond}
	addr, stop := s.serve()
	body := pushBody(deviceA, cursor{}, "", 0, row("title", `"lift"`, stamp(1, deviceA), ""))
	status := make(chan int, 1)
	go func() {
		r, err := http.Post("http://"+addr+"/api/sync", "application/json", strings.NewReader(body))
		if err != nil {
			status <- 0
			return
		}
		status <- r.StatusCode
		_ = r.Body.Close() // read no further
	}()
	<-begun
	start := time.Now()
	if err := stop(); err != nil || time.Since(start) > 20*time.Second {
		t.Errorf("%v after %v", err, time.Since(start))
	}
	if got := <-status; got != 200 {
		t.Errorf("the request under way got %d", got)
	}
	if rows, _ := s.stored(); len(rows) != 1 {
		t.Errorf("stored %v", rows)
	}
}

func TestStopCutsWhatStalls(t *testing.T) {
	s := newShop(t)
	s.server.grace = 200 * time.Millisecond
	addr, stop := s.serve()
	c := dial(t, addr)
	if _, err := io.WriteString(c, syncHead(addr, 100)+"{"); err != nil {
		t.Fatal(err)
	}
	time.Sleep(50 * time.Millisecond)
	start := time.Now()
	if err := stop(); err != nil || time.Since(start) > 20*time.Second {
		t.Errorf("%v after %v", err, time.Since(start))
	}
}

func TestServeRefusesOtherAddresses(t *testing.T) {
	s := newShop(t)
	listener, err := net.Listen("tcp", "0.0.0.0:0")
	if err != nil {
		t.Fatal(err)
	}
	if err := s.server.Serve(context.Background(), listener); err == nil || !strings.Contains(err.Error(), "not paired") {
		t.Errorf("got %v", err)
	}
	if _, err := listener.Accept(); !errors.Is(err, net.ErrClosed) {
		t.Errorf("the listener is still open: %v", err)
	}
}

func TestTooManyPushesAtOnce(t *testing.T) {
	s := newShop(t)
	for range pushesAtOnce {
		s.server.pushes <- struct{}{}
	}
	w := s.ask("POST", "/api/sync", "{}", "Content-Type: application/json")
	if m := s.read(w); m.Status != 503 || w.Header().Get("Retry-After") != "1" {
		t.Errorf("got %+v %v", m, w.Header())
	}
}
