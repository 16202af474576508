package server

import (
	"crypto/rand"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"sync"
	"time"

	"asfound/server/record"
	"asfound/server/store"
)

// relay writes rows of the server's own, as one more device, so that every device gets them by the ordinary sync. It
// takes a new device id each time the server starts: then it needs to remember no stamp, and a backup that is put back
// can never make it give out a stamp twice.
type relay struct {
	store store.Store
	now   func() time.Time

	mu    sync.Mutex
	clock record.Clock
}

// tell puts a value at a path in place of what is there.
func (r *relay) tell(doc, path string, value any) error {
	text, err := json.Marshal(value)
	if err == nil {
		text, err = record.Canonical(text)
	}
	if err != nil {
		return fmt.Errorf("%s %s: %w", doc, path, err)
	}
	key := record.Key{Doc: doc, Path: path}
	if err := record.CheckKey(key); err != nil {
		return err
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.clock.Device == "" {
		if r.clock.Device, err = newDevice(); err != nil {
			return err
		}
	}
	err = r.write(key, text)
	if errors.Is(err, store.ErrDeviceReused) { // chance, or somebody else's doing: either way a new id is right
		if r.clock.Device, err = newDevice(); err != nil {
			return err
		}
		r.clock.Last = ""
		err = r.write(key, text)
	}
	return err
}

func (r *relay) write(key record.Key, text []byte) error {
	old, err := r.store.Row(key)
	if err != nil {
		return err
	}
	now, mark := r.now().UnixMilli(), r.clock.Last
	e := record.Entry{Value: text}
	for i, o := range old.Entries { // the last is the winner
		if err := r.clock.Observe(o.Stamp, now); err != nil {
			return err
		}
		if i < len(old.Entries)-1 {
			e.Settles = append(e.Settles, o.Stamp)
		} else {
			e.Base = o.Stamp
		}
	}
	if e.Stamp, err = r.clock.Tick(now); err != nil {
		return err
	}
	if e, err = e.Validate(); err != nil {
		return err
	}
	row := record.Merge(record.Row{}, record.Row{Doc: key.Doc, Path: key.Path, Entries: []record.Entry{e}})
	// A stamp that was only observed was never sent; the mark is the last one that was given out, see store.Push.
	applied, err := r.store.Apply(store.Push{Device: r.clock.Device, Mark: mark, Rows: []record.Row{row}})
	if err == nil && len(applied.Refused) > 0 {
		err = errors.New(applied.Refused[0].Reason)
	}
	return err
}

func newDevice() (string, error) {
	for {
		var b [8]byte
		if _, err := rand.Read(b[:]); err != nil {
			return "", fmt.Errorf("no random numbers for a device id: %w", err)
		}
		if id := hex.EncodeToString(b[:]); record.CheckDevice(id) == nil {
			return id, nil
		}
	}
}
