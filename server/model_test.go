package server

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"

	"asfound/server/record"
)

// model is a device as the contract wants it: it edits at any time, pushes its own entries above the mark, oldest
// first, notes what it sends before it sends it, and takes in an answer whole or not at all.
type model struct {
	random *rand.Rand
	id     string
	clock  record.Clock
	skew   int64 // ms its wall clock is off
	rows   map[record.Key]record.Row
	at     cursor
	// mark is the highest own stamp acknowledged, sent the highest ever sent.
	mark, sent record.Stamp
	// again are the rows still to be pushed whole.
	again []record.Key
	// restamped counts entries that got another stamp before anybody else saw them.
	restamped int
}

func newModel(random *rand.Rand, skew int64) *model {
	m := &model{random: random, skew: skew, rows: map[record.Key]record.Row{}}
	m.rekey(0)
	return m
}

// edit writes one value on top of what this device sees, or settles what was written apart.
func (m *model) edit(now int64, key record.Key, value string) {
	row := m.rows[key]
	e := record.Entry{Value: []byte(value)}
	var settles []record.Stamp
	if w, ok := row.Winner(); ok {
		e.Base = w.Stamp
		for _, own := range row.Entries {
			if own.Stamp.Device() != m.id || own.Stamp <= m.mark {
				continue
			}
			// Nobody else has seen it and it will not be sent any more: what it replaced and settled is carried forward.
			settles = append(append(settles, own.Settles...), own.Base)
			if own.Stamp == w.Stamp {
				e.Base = own.Base
			}
		}
		if m.random.IntN(3) == 0 {
			for _, l := range row.Losers() {
				settles = append(settles, l.Stamp)
			}
		}
	}
	for _, s := range settles {
		if s != "" && s != e.Base {
			e.Settles = append(e.Settles, s)
		}
	}
	stamp, err := m.clock.Tick(now + m.skew)
	if err != nil {
		panic(err)
	}
	e.Stamp = stamp
	if e, err = e.Validate(); err != nil {
		panic(err)
	}
	m.rows[key] = record.Merge(row, record.Row{Doc: key.Doc, Path: key.Path, Entries: []record.Entry{e}})
}

// own is this device's entries above the mark, oldest first.
func (m *model) own() (rows []record.Row) {
	for _, row := range m.rows {
		for _, e := range row.Entries {
			if e.Stamp.Device() == m.id && e.Stamp > m.mark {
				rows = append(rows, record.Merge(record.Row{}, record.Row{Doc: row.Doc, Path: row.Path, Entries: []record.Entry{e}}))
			}
		}
	}
	slices.SortFunc(rows, func(a, b record.Row) int {
		return strings.Compare(string(a.Entries[0].Stamp), string(b.Entries[0].Stamp))
	})
	return rows
}

// request is the next push; top is the highest own stamp in it, whole how many whole rows it repeats.
func (m *model) request() (body string, top record.Stamp, whole int) {
	var rows []record.Row
	mark := max(m.mark, m.sent)
	if len(m.again) > 0 {
		for _, key := range m.again[:min(3, len(m.again))] {
			rows = append(rows, m.rows[key])
		}
		whole = len(rows)
		for _, row := range rows {
			for _, e := range row.Entries {
				if e.Stamp.Device() == m.id {
					m.sent = max(m.sent, e.Stamp)
				}
			}
		}
	} else if rows = m.own(); len(rows) > 0 {
		rows = rows[:min(4, len(rows))]
		top = rows[len(rows)-1].Entries[0].Stamp
		m.sent = max(m.sent, top)
	}
	return pushBody(m.id, m.at, mark, 5, rows...), top, whole
}

// take is what an answer does to the device.
func (m *model) take(now int64, a message, top record.Stamp, whole int) error {
	switch {
	case a.Status == 409 && a.Code == "clock-ahead":
		m.skew = a.Now - now
		m.restamp(a.Now+record.MaxAhead, now)
		return nil
	case a.Status == 409 && a.Code == "device-reused":
		m.rekey(now)
		return nil
	case a.Status != 200 || len(a.Refused) > 0:
		return fmt.Errorf("device %s: %d %s %v", m.id, a.Status, a.Message, a.Refused)
	}
	for _, row := range a.Rows {
		m.rows[row.Key()] = record.Merge(m.rows[row.Key()], row)
		for _, e := range row.Entries {
			if err := m.clock.Observe(e.Stamp, now+m.skew); err != nil {
				return err
			}
		}
	}
	m.mark = max(m.mark, top)
	m.again = m.again[min(whole, len(m.again)):]
	if a.Reread && m.at.Epoch != "" {
		m.again = m.keys()
	}
	m.at = a.cursor()
	return nil
}

// restamp gives own entries above bound, which no server took, stamps of the right time, in their old order.
func (m *model) restamp(bound, now int64) {
	last := record.Stamp("")
	for _, row := range m.rows {
		for _, s := range row.Seen {
			last = max(last, s)
		}
		for _, e := range row.Entries {
			if e.Stamp.Time() <= bound {
				last = max(last, e.Stamp)
			}
		}
	}
	late := slices.DeleteFunc(m.own(), func(r record.Row) bool { return r.Entries[0].Stamp.Time() <= bound })
	m.clock = record.Clock{Device: m.id}
	if last != "" {
		m.clock.Last, _ = record.NewStamp(last.Time(), last.Counter(), m.id) // parts of a good stamp
	}
	if m.sent.Time() > bound {
		m.sent = m.mark
		for _, r := range m.own() {
			if s := r.Entries[0].Stamp; s.Time() <= bound {
				m.sent = max(m.sent, s)
			}
		}
	}
	m.stampAnew(late, now)
}

// rekey takes a new id and stamps anew what is not acknowledged.
func (m *model) rekey(now int64) {
	unsent := []record.Row{}
	if m.id != "" {
		unsent = m.own()
	}
	m.id = fmt.Sprintf("%016x", m.random.Uint64()|1)
	m.clock.Device, m.mark, m.sent = m.id, "", ""
	m.stampAnew(unsent, now)
}

func (m *model) stampAnew(rows []record.Row, now int64) {
	for _, r := range rows {
		old := r.Entries[0]
		row := m.rows[r.Key()]
		row.Entries = slices.DeleteFunc(slices.Clone(row.Entries), func(e record.Entry) bool { return e.Stamp == old.Stamp })
		stamp, err := m.clock.Tick(now + m.skew)
		if err != nil {
			panic(err)
		}
		old.Stamp = stamp
		row.Entries = append(row.Entries, old)
		m.rows[r.Key()] = record.Merge(record.Row{}, row)
		m.restamped++
	}
}

// restart writes everything down and reads it again, as an app that was closed does.
func (m *model) restart() error {
	for key, row := range m.rows {
		text, err := json.Marshal(row.String())
		if err != nil {
			return err
		}
		var back string
		if err := json.Unmarshal(text, &back); err != nil {
			return err
		}
		read, refused, ok := record.Read([]byte(back))
		if !ok || len(refused) > 0 || read.String() != row.String() {
			return fmt.Errorf("%s came back as %s, %v", row, read, refused)
		}
		m.rows[key] = read
	}
	return nil
}

func (m *model) keys() (keys []record.Key) {
	for key := range m.rows {
		keys = append(keys, key)
	}
	slices.SortFunc(keys, func(a, b record.Key) int { return strings.Compare(a.Doc+a.Path, b.Doc+b.Path) })
	return keys
}

// state is all rows, one a line.
func (m *model) state() string {
	var b strings.Builder
	for _, key := range m.keys() {
		fmt.Fprintln(&b, m.rows[key])
	}
	return b.String()
}

func (m *model) settled() bool { return len(m.again) == 0 && len(m.own()) == 0 }
