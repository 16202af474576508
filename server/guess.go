package server

import (
	"net"
	"net/http"
	"net/netip"
	"strings"
	"sync"
	"time"
)

// guesses counts wrong addresses below /s/, for each sender and for all together. It never stands before a right one:
// with 160 random bits no rate of guessing finds a link, so what is bounded is the work that guessing makes, and a
// seller behind the same address as a guesser still opens his page.
type guesses struct {
	now func() time.Time

	mu  sync.Mutex
	all bucket
	by  map[netip.Prefix]*bucket
}

// bucket holds tries; one comes back each every.
type bucket struct {
	left float64
	at   time.Time
}

const (
	guessesEach, guessesEachEvery = 30, 2 * time.Second
	guessesAll, guessesAllEvery   = 600, 50 * time.Millisecond
	// guessersKnown bounds the memory; those who were quiet longest are forgotten.
	guessersKnown = 4096
)

func (b *bucket) take(now time.Time, most float64, every time.Duration) bool {
	if b.at.IsZero() {
		b.left = most
	} else if passed := now.Sub(b.at); passed > 0 {
		b.left = min(most, b.left+float64(passed)/float64(every))
	}
	b.at = now
	if b.left < 1 {
		return false
	}
	b.left--
	return true
}

// wrong notes a wrong address and tells whether its sender may go on.
func (g *guesses) wrong(r *http.Request) bool {
	who := sender(r)
	g.mu.Lock()
	defer g.mu.Unlock()
	now := g.now()
	b := g.by[who]
	if b == nil {
		if len(g.by) >= guessersKnown {
			g.forget()
		}
		b = &bucket{}
		g.by[who] = b
	}
	own := b.take(now, guessesEach, guessesEachEvery)
	return own && g.all.take(now, guessesAll, guessesAllEvery)
}

func (g *guesses) forget() {
	var oldest netip.Prefix
	var at time.Time
	for who, b := range g.by {
		if at.IsZero() || b.at.Before(at) {
			oldest, at = who, b.at
		}
	}
	delete(g.by, oldest)
}

// sender is the network a request came from. What stands between the public address and this server is on this
// machine and names the sender last; whoever is not behind it can only be this machine itself. An IPv6 sender has a
// whole /64 to choose addresses from.
func sender(r *http.Request) netip.Prefix {
	host, _, err := net.SplitHostPort(r.RemoteAddr)
	if err != nil {
		host = r.RemoteAddr
	}
	if passed := r.Header.Values("X-Forwarded-For"); len(passed) > 0 {
		last := passed[len(passed)-1]
		host = strings.TrimSpace(last[strings.LastIndex(last, ",")+1:])
	}
	ip, err := netip.ParseAddr(host)
	if err != nil {
		return netip.Prefix{}
	}
	ip = ip.Unmap().WithZone("")
	bits := 64
	if ip.Is4() {
		bits = 32
	}
	p, err := ip.Prefix(bits)
	if err != nil {
		return netip.Prefix{}
	}
	return p
}
