package server

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io/fs"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
	"time"

	"asfound/server/link"
	"asfound/server/photo"
	"asfound/server/record"
	"asfound/server/store"
	"asfound/server/store/bolt"
	"asfound/server/store/storetest"
)

const (
	deviceA = storetest.DeviceA
	deviceB = storetest.DeviceB
)

// noon is the server's time in tests, a little after the stamps of storetest.Stamp.
var noon = time.UnixMilli(1_714_000_000_000 + 10_000)

// shop is a server over a real database in a temporary folder.
type shop struct {
	t      testing.TB
	dir    string
	now    time.Time
	site   fs.FS
	public *url.URL
	log    *slog.Logger
	opener func(dir string) (*bolt.Store, error)
	store  *bolt.Store
	server *Server
}

func newShop(t testing.TB) *shop {
	s := &shop{t: t, dir: t.TempDir(), now: noon, opener: bolt.Open}
	s.open()
	t.Cleanup(func() { _ = s.store.Close() }) // a test may have closed it
	return s
}

func (s *shop) open() {
	s.t.Helper()
	var err error
	if s.store, err = s.opener(s.dir); err != nil {
		s.t.Fatal(err)
	}
	photos, err := photo.Open(s.dir)
	if err != nil {
		s.t.Fatal(err)
	}
	links, err := link.Open(s.dir, s.store.Drawer("links"), func() time.Time { return s.now })
	if err != nil {
		s.t.Fatal(err)
	}
	s.server = New(Config{Store: s.store, Photos: photos, Links: links, Public: s.public, Site: s.site, Log: s.log, Now: func() time.Time { return s.now }})
}

func (s *shop) restart() {
	s.t.Helper()
	if err := s.store.Close(); err != nil {
		s.t.Fatal(err)
	}
	s.open()
}

// ask sends one request; headers are given as "Name: value".
func (s *shop) ask(method, path, body string, headers ...string) *httptest.ResponseRecorder {
	r := httptest.NewRequest(method, "http://127.0.0.1:8080"+path, strings.NewReader(body))
	for _, h := range headers {
		name, value, _ := strings.Cut(h, ": ")
		r.Header.Set(name, value)
		if name == "Host" {
			r.Host = value
		}
	}
	w := httptest.NewRecorder()
	s.server.Handler().ServeHTTP(w, r)
	return w
}

// message is any JSON answer of the API.
type message struct {
	Status  int              `json:"-"`
	Code    string           `json:"code"`
	Message string           `json:"message"`
	Now     int64            `json:"now"`
	Epoch   string           `json:"epoch"`
	Seq     uint64           `json:"seq"`
	More    bool             `json:"more"`
	Reread  bool             `json:"reread"`
	Refused []record.Refusal `json:"refused"`
	Rows    []record.Row     `json:"rows"`
	Have    int64            `json:"have"`
	Whole   bool             `json:"whole"`
}

func (s *shop) read(w *httptest.ResponseRecorder) message {
	s.t.Helper()
	m := message{Status: w.Code}
	if w.Header().Get("Asfound") != "1" || w.Header().Get("Content-Type") != "application/json" {
		s.t.Errorf("the answer is not marked as ours: %v", w.Header())
	}
	if err := json.Unmarshal(w.Body.Bytes(), &m); err != nil {
		s.t.Fatalf("%v: %s", err, w.Body)
	}
	if w.Code != http.StatusOK && (m.Code == "" || m.Message == "") {
		s.t.Errorf("status %d without code and message: %s", w.Code, w.Body)
	}
	return m
}

func (s *shop) post(body string, headers ...string) message {
	s.t.Helper()
	return s.read(s.ask("POST", "/api/sync", body, append([]string{"Content-Type: application/json"}, headers...)...))
}

// exchange is a well-formed sync of one device.
func (s *shop) exchange(device string, at cursor, mark record.Stamp, rows ...record.Row) message {
	s.t.Helper()
	return s.post(pushBody(device, at, mark, 0, rows...))
}

func pushBody(device string, at cursor, mark record.Stamp, want int, rows ...record.Row) string {
	var b bytes.Buffer
	place, _ := json.Marshal(at) // a struct of a text and a number
	fmt.Fprintf(&b, `{"device":%q,"cursor":%s,"mark":%q,"want":%d,"rows":[`, device, place, mark, want)
	for i, r := range rows {
		if i > 0 {
			b.WriteByte(',')
		}
		b.Write(r.Append(nil))
	}
	b.WriteString("]}")
	return b.String()
}

func (m message) cursor() cursor { return cursor{Epoch: m.Epoch, Seq: m.Seq} }

func (s *shop) stored() (rows []string, last uint64) {
	s.t.Helper()
	page, err := s.store.Changes(store.Query{MaxRows: 1 << 20, MaxBytes: 1 << 30})
	if err != nil {
		s.t.Fatal(err)
	}
	for _, r := range page.Rows {
		rows = append(rows, string(r))
	}
	return rows, page.High
}

func sameRows(t testing.TB, got []record.Row, want ...record.Row) {
	t.Helper()
	var a, b strings.Builder
	for _, r := range got {
		fmt.Fprintln(&a, r)
	}
	for _, r := range want {
		fmt.Fprintln(&b, r)
	}
	if a.String() != b.String() {
		t.Errorf("got\n%swant\n%s", &a, &b)
	}
}
