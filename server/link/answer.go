package link

import "fmt"

// Room tells whether the seller may send once more, and whether a photo with it; ErrFull if not.
func (l *Link) Room(withPhoto bool) error {
	if l.Sends >= MaxSends {
		return fmt.Errorf("%w: %d answers were sent", ErrFull, l.Sends)
	}
	if withPhoto && l.Shots >= MaxAnswerPhotos {
		return fmt.Errorf("%w: %d photos were sent", ErrFull, l.Shots)
	}
	return nil
}

// Hold keeps a photo that came with an answer which could not be taken, for the next try.
func (s *Shelf) Hold(id, line, photo string) error {
	return s.change(id, func(l *Link) error {
		if err := l.Room(true); err != nil {
			return err
		}
		if l.Held == nil {
			l.Held = map[string]string{}
		}
		l.Held[line] = photo
		l.Sends++
		l.Shots++
		return nil
	})
}

// Say keeps an answer in place of the line's former one. Without a photo of its own it has the one that is held, or
// that of the former answer. tell passes it on before it is kept: what was not passed on must be sent again.
func (s *Shelf) Say(id, line string, a Answer, tell func(*Link, Answer) error) error {
	return s.change(id, func(l *Link) error {
		fresh := a.Photo != ""
		if err := l.Room(fresh); err != nil {
			return err
		}
		if !l.MayAnswer(line) {
			return fmt.Errorf("%w: line %q cannot be answered", ErrRefused, clip(line))
		}
		if !fresh {
			a.Photo = l.Held[line]
		}
		if a.Photo == "" {
			a.Photo = l.Answers[line].Photo
		}
		a.At = s.now().UnixMilli()
		if err := tell(l, a); err != nil {
			return err
		}
		if l.Answers == nil {
			l.Answers = map[string]Answer{}
		}
		l.Answers[line] = a
		delete(l.Held, line)
		l.Sends++
		if fresh {
			l.Shots++
		}
		return nil
	})
}

// change changes an open link.
func (s *Shelf) change(id string, how func(*Link) error) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	l := s.links[id]
	if l == nil || l.State(s.now()) != "open" {
		return ErrNone
	}
	l = l.clone()
	if err := how(l); err != nil {
		return err
	}
	return s.keep(l)
}
