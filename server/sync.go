package server

import (
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"strconv"
	"strings"

	"github.com/labstack/echo/v4"

	"asfound/server/record"
	"asfound/server/store"
)

// Bounds of one exchange.
const (
	MaxPushBytes = 1 << 20
	MaxPushRows  = 500
	// maxPageRows and maxPageBytes bound the answer; a single larger row is still given.
	maxPageRows  = 500
	maxPageBytes = 1 << 20
)

// request is the body of POST /api/sync.
type request struct {
	Device string `json:"device" validate:"required,device"`
	Cursor cursor `json:"cursor"`
	// Mark is the highest own stamp that the device sent before, "" for none.
	Mark record.Stamp `json:"mark" validate:"omitempty,stamp"`
	// Rows are read one by one: what is wrong with one is not held against the others.
	Rows []json.RawMessage `json:"rows"`
	// Want is how many rows the answer may have; 0 is as many as fit.
	Want int `json:"want" validate:"min=0"`
}

type cursor struct {
	Epoch string `json:"epoch" validate:"max=64"`
	Seq   uint64 `json:"seq"`
}

// answer is the body of its reply, but for the rows, which are JSON already and come last.
type answer struct {
	Now     int64            `json:"now"`
	Epoch   string           `json:"epoch"`
	Seq     uint64           `json:"seq"`
	More    bool             `json:"more"`
	Reread  bool             `json:"reread"`
	Refused []record.Refusal `json:"refused"`
}

// sync takes what a device has and gives what it lacks.
func (s *Server) sync(c echo.Context) error {
	select {
	case s.pushes <- struct{}{}:
		defer func() { <-s.pushes }()
	default:
		p := problem(http.StatusServiceUnavailable, "busy", "too many devices are sending at once: trying again in a moment")
		p.wait = "1"
		return p
	}
	var in request
	if err := s.readJSON(c.Response(), c.Request(), MaxPushBytes, &in); err != nil {
		return err
	}
	if len(in.Rows) > MaxPushRows {
		return problem(http.StatusRequestEntityTooLarge, "too-many", fmt.Sprintf("%d rows at once: at most %d", len(in.Rows), MaxPushRows))
	}
	if in.Mark != "" && in.Mark.Device() != in.Device {
		return problem(http.StatusUnprocessableEntity, "field", "mark: a stamp of the sending device itself is expected")
	}
	out := answer{Now: s.Now().UnixMilli(), Refused: []record.Refusal{}}
	applied, err := s.push(in, &out)
	if err != nil {
		return err
	}
	return s.pull(c, in, out, applied.Known)
}

// push stores what is good of the rows, in one transaction, and notes in out what was refused.
func (s *Server) push(in request, out *answer) (applied store.Applied, err error) {
	rows := make([]record.Row, 0, len(in.Rows))
	for _, text := range in.Rows {
		row, refused, ok := record.Read(text)
		out.Refused = append(out.Refused, refused...)
		if !ok {
			continue
		}
		if latest := row.Ahead(out.Now); latest != "" {
			p := problem(http.StatusConflict, "clock-ahead", fmt.Sprintf("%s %s is stamped %d s ahead of the server's time, at most %d s are taken: nothing was stored, set the clock and send again",
				row.Doc, row.Path, (latest.Time()-out.Now)/1000, record.MaxAhead/1000))
			p.Now = out.Now
			return applied, p
		}
		rows = append(rows, row)
	}
	applied, err = s.Store.Apply(store.Push{Device: in.Device, Mark: in.Mark, Rows: rows})
	if errors.Is(err, store.ErrDeviceReused) {
		s.Log.Warn("two devices use one id", "device", in.Device, "err", err)
		p := asProblem(err)
		p.Now = out.Now
		return applied, p
	}
	out.Refused = append(out.Refused, applied.Refused...)
	return applied, err
}

// pull answers with the rows changed since the device's cursor.
func (s *Server) pull(c echo.Context, in request, out answer, known map[record.Key]uint64) error {
	at, ok := parseCursor(in.Cursor)
	if ok {
		var err error
		if ok, err = s.Store.ValidCursor(at); err != nil {
			return err
		}
	}
	if !ok {
		out.Reread, at = true, store.Cursor{}
	}
	want := maxPageRows
	if in.Want > 0 {
		want = min(want, in.Want)
	}
	page, err := s.Store.Changes(store.Query{After: at.Seq, MaxRows: want, MaxBytes: maxPageBytes, Skip: known})
	if err != nil {
		return err
	}
	out.Seq, out.More = page.Seq, page.Seq < page.High
	out.Epoch = formatEpoch(store.Cursor{Epoch: s.Store.Epoch(), Seq: page.Seq, High: page.High})
	head, err := json.Marshal(out)
	if err != nil {
		return err
	}
	body := append(head[:len(head)-1], `,"rows":[`...)
	for i, row := range page.Rows {
		if i > 0 {
			body = append(body, ',')
		}
		body = append(body, row...)
	}
	return replyText(c, http.StatusOK, append(body, "]}"...))
}

// formatEpoch is the epoch as the device keeps it: the run's id and, while pages are left, the number that was highest
// when the page was made (see store.Cursor). The device only hands it back.
func formatEpoch(c store.Cursor) string {
	if c.High == c.Seq {
		return c.Epoch
	}
	return c.Epoch + "." + strconv.FormatUint(c.High, 16)
}

func parseCursor(c cursor) (at store.Cursor, ok bool) {
	id, high, more := strings.Cut(c.Epoch, ".")
	at = store.Cursor{Epoch: id, Seq: c.Seq, High: c.Seq}
	if more {
		n, err := strconv.ParseUint(high, 16, 64)
		if err != nil {
			return at, false
		}
		at.High = n
	}
	return at, true
}
