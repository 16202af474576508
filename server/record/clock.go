package record

import "fmt"

// Clock is one device's hybrid logical clock. Its zero Last means it never ran. Keep Last in the same transaction
// as the entry it stamped: a clock that forgets could hand out a stamp twice.
type Clock struct {
	Device string
	Last   Stamp
}

// Tick gives the stamp of a new event at wall-clock time now (ms): above every stamp given or observed before, even
// when the wall clock was set back. Fails when the device id is malformed or the year 9999 has passed.
func (c *Clock) Tick(now int64) (Stamp, error) {
	time, counter := now, 0
	if c.Last != "" && c.Last.Time() >= now {
		time, counter = c.Last.Time(), c.Last.Counter()+1
	}
	return c.set(time, counter)
}

// Observe raises the clock above a stamp received from elsewhere at wall-clock time now (ms): l = max of the three
// times; the counter is max(c, cm)+1, c+1, cm+1 or 0 by which of them equal l. It leaves the clock alone when the
// remote stamp is malformed. How far ahead a stamp may be is the receiver's decision: see Stamp.Ahead.
func (c *Clock) Observe(remote Stamp, now int64) error {
	if err := remote.Check(); err != nil {
		return err
	}
	last, counter := int64(-1), 0
	if c.Last != "" {
		last = c.Last.Time()
	}
	time := max(last, remote.Time(), now)
	switch {
	case time == last && time == remote.Time():
		counter = max(c.Last.Counter(), remote.Counter()) + 1
	case time == last:
		counter = c.Last.Counter() + 1
	case time == remote.Time():
		counter = remote.Counter() + 1
	}
	_, err := c.set(time, counter)
	return err
}

// set carries a full counter into the time, never wraps it.
func (c *Clock) set(time int64, counter int) (Stamp, error) {
	if counter > MaxCounter {
		time, counter = time+1, 0
	}
	s, err := NewStamp(time, counter, c.Device)
	if err != nil {
		return "", fmt.Errorf("the clock cannot give a stamp: %w", err)
	}
	c.Last = s
	return s, nil
}
