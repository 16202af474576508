package link

import (
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"sync"
	"time"
)

// Drawer is where the links themselves are kept by id; see store.Drawer.
type Drawer interface {
	All() (map[string][]byte, error)
	Put(key string, value []byte) error
	Remove(key string) error
}

// Shelf is all links of a shop. Its methods may be called from many goroutines at once.
type Shelf struct {
	dir    string
	drawer Drawer
	now    func() time.Time

	// making is held while a paper is written, so that two requests of one id do not mix.
	making sync.Mutex

	mu      sync.Mutex
	links   map[string]*Link
	secrets map[string]string // of links that were not withdrawn: to their ids
	dirty   map[string]bool   // opened since it was last kept
}

// Open reads the links of a data folder.
func Open(dataDir string, drawer Drawer, now func() time.Time) (*Shelf, error) {
	s := &Shelf{
		dir: filepath.Join(dataDir, "links"), drawer: drawer, now: now,
		links: map[string]*Link{}, secrets: map[string]string{}, dirty: map[string]bool{},
	}
	if err := os.MkdirAll(s.dir, 0o700); err != nil {
		return nil, fmt.Errorf("the folder of links %s cannot be made: %w", s.dir, failure(err))
	}
	all, err := drawer.All()
	if err != nil {
		return nil, err
	}
	for id, text := range all {
		var l Link
		if err := json.Unmarshal(text, &l); err != nil || l.ID != id {
			return nil, fmt.Errorf("link %s cannot be read: put the last backup in the place of the data folder (%w)", id, err)
		}
		s.take(&l)
	}
	return s, s.sweep()
}

// sweep removes papers that no link holds: of a link that was cut off while it was made, or withdrawn.
func (s *Shelf) sweep() error {
	found, err := os.ReadDir(s.dir)
	if err != nil {
		return err
	}
	for _, f := range found {
		if l := s.links[f.Name()]; l == nil || l.Purged {
			if err := os.RemoveAll(filepath.Join(s.dir, f.Name())); err != nil {
				return err
			}
		}
	}
	return nil
}

func (s *Shelf) take(l *Link) {
	if old := s.links[l.ID]; old != nil {
		delete(s.secrets, old.Secret)
	}
	s.links[l.ID] = l
	if l.Secret != "" && l.Withdrawn == 0 {
		s.secrets[l.Secret] = l.ID
	}
}

// keep writes a changed link and then lets it count. s.mu is held.
func (s *Shelf) keep(l *Link) error {
	text, err := json.Marshal(l)
	if err != nil {
		return err
	}
	if err := s.drawer.Put(l.ID, text); err != nil {
		return err
	}
	s.take(l)
	delete(s.dirty, l.ID)
	return nil
}

func (l *Link) clone() *Link {
	c := *l
	c.Lines, c.Photos, c.Answers, c.Held = slices.Clone(l.Lines), maps.Clone(l.Photos), maps.Clone(l.Answers), maps.Clone(l.Held)
	return &c
}

// Make makes a link and gives the token that opens it, which is kept nowhere. The same request again, of a link that
// was never opened, takes another token in place of the first: its answer was lost, so nobody has that. Any other
// request of a known id is ErrMade. Other errors are ErrRefused, ErrFull, ErrDisk.
func (s *Shelf) Make(a Ask) (*Link, string, error) {
	p, err := a.check()
	if err != nil {
		return nil, "", err
	}
	token, err := newToken()
	if err != nil {
		return nil, "", fmt.Errorf("no random numbers for a link: %w", err)
	}
	s.making.Lock()
	defer s.making.Unlock()
	again, err := s.known(a.ID, p.content)
	if err != nil {
		return nil, "", err
	}
	if again == nil {
		if err := s.write(a.ID, p); err != nil {
			return nil, "", err
		}
	}
	now := s.now()
	l := &Link{
		ID: a.ID, Listing: a.Listing, Secret: secretOf(token), Content: p.content, Created: now.UnixMilli(),
		Expires: expiry(now, a.Days), Lines: a.Lines, Photos: p.copies,
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if gone := s.links[a.ID]; gone != nil && gone.Withdrawn > 0 {
		return nil, "", errors.Join(withdrawn(), s.erase(a.ID))
	}
	if err := s.keep(l); err != nil {
		return nil, "", err
	}
	return l.clone(), token, nil
}

func withdrawn() error {
	return fmt.Errorf("%w: it was withdrawn: make a new one", ErrMade)
}

// known tells whether the request was answered before, by a link that nobody has opened.
func (s *Shelf) known(id, content string) (*Link, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if l := s.links[id]; l != nil {
		switch {
		case l.Withdrawn > 0:
			return nil, withdrawn()
		case l.State(s.now()) != "open":
			return nil, fmt.Errorf("%w: it has expired: make a new one", ErrMade)
		case l.Content != content:
			return nil, fmt.Errorf("%w: it holds another paper: make a new one, and withdraw this one if it should no longer open", ErrMade)
		case l.Opened.Count > 0 || l.Sends > 0:
			return nil, fmt.Errorf("%w: it was opened before: withdraw it and make a new one", ErrMade)
		}
		return l, nil
	}
	open := 0
	for _, l := range s.links {
		if !l.Purged {
			open++
		}
	}
	if open >= MaxLinks {
		return nil, fmt.Errorf("%w: %d links are open: withdraw those that are done", ErrFull, open)
	}
	return nil, nil
}

// Find gives the link that a token opens; ErrNone alike for every token that opens none, whatever the reason.
func (s *Shelf) Find(token string) (*Link, error) {
	secret := secretOf(token)
	s.mu.Lock()
	defer s.mu.Unlock()
	l := s.links[s.secrets[secret]]
	if l == nil || l.State(s.now()) != "open" {
		return nil, ErrNone
	}
	return l.clone(), nil
}

// Get gives a link by its id, ErrNone when there never was one.
func (s *Shelf) Get(id string) (*Link, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if l := s.links[id]; l != nil {
		return l.clone(), nil
	}
	return nil, fmt.Errorf("%w: none of this id was made here", ErrNone)
}

// Withdraw closes a link for good and removes its paper. An id that was never heard of is remembered as withdrawn, so
// that a request for it that comes late makes nothing.
func (s *Shelf) Withdraw(id string) (*Link, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	now := s.now().UnixMilli()
	l := &Link{ID: id, Created: now, Expires: now}
	if old := s.links[id]; old != nil {
		l = old.clone()
	}
	if l.Withdrawn == 0 {
		l.Withdrawn = now
		l.bare()
		if err := s.keep(l); err != nil {
			return nil, err
		}
	}
	return l.clone(), s.erase(id)
}

// bare drops all that was shown and said, which the rows hold; what is left tells that there was a link.
func (l *Link) bare() {
	l.Secret, l.Content, l.Lines, l.Photos, l.Held, l.Purged = "", "", nil, nil, nil, true
	for line, a := range l.Answers {
		l.Answers[line] = Answer{Says: a.Says, At: a.At}
	}
}
