package link

import (
	"errors"
	"time"
)

// keepEvery is how often at most the looks at one link are written.
const keepEvery = time.Minute

// Look counts a look at a link. tell passes the count on, at most once a minute for one link: see Tend for the rest.
func (s *Shelf) Look(id string, tell func(*Link) error) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	l := s.links[id]
	if l == nil {
		return ErrNone
	}
	l = l.clone()
	now, before := s.now().UnixMilli(), l.Opened.Last
	if l.Opened.Count == 0 {
		l.Opened.First = now
	}
	l.Opened.Last = max(now, before)
	l.Opened.Count++
	if before > 0 && now-before < keepEvery.Milliseconds() {
		s.take(l)
		s.dirty[id] = true
		return nil
	}
	return s.pass(l, tell)
}

// pass tells of a look and keeps it. s.mu is held.
func (s *Shelf) pass(l *Link, tell func(*Link) error) error {
	if err := errors.Join(tell(l), s.keep(l)); err != nil {
		s.take(l)
		s.dirty[l.ID] = true
		return err
	}
	return nil
}

// Tend passes on the looks that were only counted, removes the papers of links that no longer open, and forgets links
// that nobody will ask for. Call it now and then, and at the end.
func (s *Shelf) Tend(tell func(*Link) error) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	var all error
	for id := range s.dirty {
		if l := s.links[id]; l != nil {
			all = errors.Join(all, s.pass(l.clone(), tell))
		}
	}
	now := s.now()
	for id, l := range s.links {
		ended := time.UnixMilli(max(l.Expires, l.Withdrawn))
		if l.Purged && now.Sub(ended) > kept {
			if err := s.drawer.Remove(id); err != nil {
				all = errors.Join(all, err)
				continue
			}
			delete(s.links, id)
			continue
		}
		if !l.Purged && now.Sub(ended) > grace {
			l = l.clone()
			l.bare()
			// The paper goes first: what is left half done is done at the next time.
			all = errors.Join(all, s.erase(id), s.keep(l))
		}
	}
	return all
}
