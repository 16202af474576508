package server

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"asfound/server/record"
	"asfound/server/store/bolt"
	"asfound/server/store/storetest"
)

const day = int64(24 * time.Hour / time.Millisecond)

// world is one shop with five devices, a bad network and wrong clocks.
type world struct {
	*shop
	random  *rand.Rand
	devices []*model
	old     []string // requests that may arrive once more
	backup  []byte
	count   struct{ edits, lost, doubled, replayed, restarts, restores, ahead, reused, reread int }
}

func newWorld(t *testing.T, seed uint64) *world {
	s := &shop{t: t, dir: t.TempDir(), now: noon, opener: bolt.OpenUnsynced}
	s.open()
	w := &world{shop: s, random: rand.New(rand.NewPCG(seed, 5))}
	for range 5 {
		w.devices = append(w.devices, newModel(w.random, w.random.Int64N(2*day)-day))
	}
	return w
}

func (w *world) key() record.Key {
	return record.Key{Doc: storetest.Doc, Path: fmt.Sprintf("fact/f%d", w.random.IntN(7))}
}

// exchange is one sync of one device; the request or its answer may be lost, doubled or kept to come again.
func (w *world) exchange(d *model, good bool) {
	w.t.Helper()
	body, top, whole := d.request()
	if !good && w.random.IntN(5) == 0 {
		w.old = append(w.old, body)
	}
	fate := w.random.IntN(10)
	if good {
		fate = 9
	}
	if fate == 0 { // never arrives
		w.count.lost++
		return
	}
	if fate == 1 { // arrives twice; the first answer is lost
		w.count.doubled++
		w.post(body)
	}
	a := w.post(body)
	if fate == 2 { // the answer is lost
		w.count.lost++
		return
	}
	switch {
	case a.Code == "clock-ahead":
		w.count.ahead++
	case a.Code == "device-reused":
		w.count.reused++
	case a.Reread && d.at.Epoch != "":
		w.count.reread++
	}
	if err := d.take(w.now.UnixMilli(), a, top, whole); err != nil {
		w.t.Fatal(err)
	}
}

func (w *world) step() {
	w.now = w.now.Add(time.Duration(w.random.Int64N(int64(20 * time.Minute))))
	d := w.devices[w.random.IntN(len(w.devices))]
	switch n := w.random.IntN(100); {
	case n < 45:
		w.count.edits++
		d.edit(w.now.UnixMilli(), w.key(), fmt.Sprintf(`{"n":%d}`, w.random.IntN(1000)))
	case n < 85:
		w.exchange(d, false)
	case n < 90 && len(w.old) > 0: // an old request comes once more, out of order
		w.count.replayed++
		w.post(w.old[w.random.IntN(len(w.old))])
	case n < 92: // a wrong clock is set to another wrong time
		d.skew = w.random.Int64N(2*day) - day
	case n < 95:
		if err := d.restart(); err != nil {
			w.t.Fatal(err)
		}
	case n < 98:
		w.count.restarts++
		w.restart()
	case n == 98:
		w.copyFile(false)
	case w.backup != nil:
		w.count.restores++
		w.copyFile(true)
	}
}

// copyFile takes a backup of the closed database, or puts the last one back.
func (w *world) copyFile(back bool) {
	w.t.Helper()
	path := filepath.Join(w.dir, bolt.FileName)
	err := w.store.Close()
	if err == nil && back {
		err = os.WriteFile(path, w.backup, 0o600)
	} else if err == nil {
		w.backup, err = os.ReadFile(path)
	}
	if err != nil {
		w.t.Fatal(err)
	}
	w.open()
}

// drain lets all devices sync over a good network until nothing is left.
func (w *world) drain() {
	for range 60 {
		left := false
		for _, d := range w.devices {
			seq := d.at
			w.exchange(d, true)
			left = left || !d.settled() || d.at != seq
		}
		if !left {
			return
		}
	}
	w.t.Fatal("the devices do not come to rest")
}

func (w *world) joined() string {
	all := &model{rows: map[record.Key]record.Row{}}
	for _, d := range w.devices {
		for key, row := range d.rows {
			all.rows[key] = record.Merge(all.rows[key], row)
		}
	}
	rows, _ := w.stored()
	for _, text := range rows {
		row, _, _ := record.Read([]byte(text)) // compared as a whole below
		all.rows[row.Key()] = record.Merge(all.rows[row.Key()], row)
	}
	return all.state()
}

func (w *world) restamped() (n int) {
	for _, d := range w.devices {
		n += d.restamped
	}
	return n
}

// Five devices and the server end with the same bytes whatever the network, the clocks, restarts and restored backups
// do, and what all of them together held at the end of the trouble is what they hold after it.
func TestSimulatedDevicesConverge(t *testing.T) {
	schedules := 200
	if testing.Short() {
		schedules = 20
	}
	total := newCount()
	for seed := range schedules {
		w := newWorld(t, uint64(seed))
		for range 120 {
			w.step()
		}
		joined, restamped := w.joined(), w.restamped()
		w.drain()
		rows, _ := w.stored()
		slices.Sort(rows)
		server := strings.Join(rows, "\n") + "\n"
		for i, d := range w.devices {
			if got := d.state(); got != server {
				t.Fatalf("seed %d: device %d holds\n%sthe server\n%s", seed, i, got, server)
			}
		}
		if w.restamped() == restamped && server != joined {
			t.Fatalf("seed %d: held\n%sbefore, now\n%s", seed, joined, server)
		}
		total.add(w)
		if err := w.store.Close(); err != nil {
			t.Fatal(err)
		}
	}
	total.check(t)
}

// tally adds up what the schedules really tried.
type tally map[string]int

func newCount() tally { return tally{} }

func (c tally) add(w *world) {
	for name, n := range map[string]int{
		"edits": w.count.edits, "lost": w.count.lost, "doubled": w.count.doubled, "replayed": w.count.replayed,
		"restarts": w.count.restarts, "backups put back": w.count.restores, "clocks ahead": w.count.ahead,
		"ids reused": w.count.reused, "read again": w.count.reread, "restamped": w.restamped(),
	} {
		c[name] += n
	}
}

func (c tally) check(t *testing.T) {
	for _, name := range []string{"edits", "lost", "doubled", "replayed", "restarts", "backups put back", "clocks ahead", "read again", "restamped"} {
		if c[name] == 0 {
			t.Errorf("no schedule had any of: %s", name)
		}
	}
	t.Logf("%v", map[string]int(c))
}
