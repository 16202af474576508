package appraisal

// turning says what else than a price would change the winner: an open point, and
// the weight that is nearest to giving another.
func (s *concluding) turning() {
	if len(s.free) < 2 {
		return
	}
	s.openPoint()
	if len(s.c.Moves) > 0 {
		s.out = append(s.out, s.c.Moves[0].Sentence)
		return
	}
	s.tell("No single weight, from 0 to %s, gives another leader.", s.Whole(mostWeight))
}

// openPoint names the likeliest single answer of an open point that would make
// another the better buy on average: one of the leader's that turns out bad, or one
// of a rival's that turns out in order.
func (s *concluding) openPoint() {
	lead := s.free[0]
	if s.rival < 0 || !s.inMoney(lead, s.rival) {
		return
	}
	var chance float64
	var say func()
	asked := false
	for _, i := range s.free[1:] {
		if s.c.Better[lead][i] == nil {
			continue
		}
		margin := float64(s.ahead(lead, i))
		for _, n := range s.results[lead].Next {
			asked = true
			if a := n.answers; margin+a.bad < 0 && a.chance > chance {
				chance = a.chance
				say = func() {
					s.tell("Not checked at %s: %s. Should it turn out bad (%s in 100), %s would be the better buy.", s.name(lead), "\u201c"+n.Title+"\u201d", s.inHundred(a.chance), s.name(i))
				}
			}
		}
		for _, n := range s.results[i].Next {
			asked = true
			if a := n.answers; margin-a.sound < 0 && 1-a.chance > chance {
				chance = 1 - a.chance
				say = func() {
					s.tell("Not checked at %s: %s. Should it turn out in order (%s in 100), %s would be the better buy.", s.name(i), "\u201c"+n.Title+"\u201d", s.inHundred(1-a.chance), s.name(i))
				}
			}
		}
	}
	switch {
	case say != nil:
		say()
	case asked:
		s.tell("No single point that is still open would change that by its answer.")
	}
}
