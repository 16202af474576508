package server

import (
	"bytes"
	"encoding/json"
	"fmt"
	"log/slog"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"asfound/rubrics/document"
	"asfound/server/record"
	"asfound/server/seller"
)

const nobody = "/s/aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa"

// Nothing tells an unknown address from a withdrawn, expired or malformed one: not status, bytes or headers.
func TestNothingIsToldApart(t *testing.T) {
	s := newShop(t)
	withdrawn := s.makeLink()
	s.ask("DELETE", "/api/links/"+linkID, "")
	second := goodAsk(t)
	second.head["id"], second.head["days"] = "01jzzzzzzzzzzzzzzzzzzzzzz2", 1
	expired := s.askLink(second).Path
	s.now = noon.Add(3 * 24 * time.Hour)
	third := goodAsk(t)
	third.head["id"] = "01jzzzzzzzzzzzzzzzzzzzzzz3"
	open := s.askLink(third).Path
	answer, kind := formOf(t, part{"line", "", []byte(cable)}, part{"says", "", []byte("agree")})
	want := s.page(nobody)
	if want.Code != 404 || want.Body.String() != string(seller.Nothing) {
		t.Fatalf("%d %s", want.Code, want.Body)
	}
	for name, w := range map[string]*httptest.ResponseRecorder{
		"withdrawn":             s.page(withdrawn),
		"expired":               s.page(expired),
		"malformed":             s.page("/s/%00"),
		"short":                 s.page("/s/a"),
		"long":                  s.page("/s/" + strings.Repeat("a", 5000)),
		"upper case":            s.page("/s/" + strings.ToUpper(open[3:])),
		"none":                  s.page("/s/"),
		"a slash after":         s.page(open + "/"),
		"more after":            s.page(open + "/more/and/more"),
		"a withdrawn photo":     s.page(withdrawn + "/photo/" + photoKey),
		"an expired photo":      s.page(expired + "/photo/" + photoKey),
		"a photo not in it":     s.page(open + "/photo/" + strings.Repeat("2", 64)),
		"a photo by a path":     s.page(open + "/photo/..%2f..%2fdocument.json"),
		"the document":          s.page(open + "/photo/document.json"),
		"a line without photo":  s.page(open + "/said/" + cable),
		"an answer to none":     s.ask("POST", nobody, answer, kind),
		"an answer, withdrawn":  s.ask("POST", withdrawn, answer, kind),
		"an answer, expired":    s.ask("POST", expired, answer, kind),
		"an answer, other site": s.ask("POST", nobody, answer, kind, "Sec-Fetch-Site: cross-site"),
		"PUT":                   s.ask("PUT", open, ""),
		"DELETE":                s.ask("DELETE", open, ""),
	} {
		if w.Code != want.Code || w.Body.String() != want.Body.String() || fmt.Sprint(w.Header()) != fmt.Sprint(want.Header()) {
			t.Errorf("%s: %d %v %.60q", name, w.Code, w.Header(), w.Body)
		}
	}
}

func TestTenThousandGuesses(t *testing.T) {
	var log bytes.Buffer
	s := newShop(t)
	s.log = slog.New(slog.NewTextHandler(&log, &slog.HandlerOptions{Level: slog.LevelDebug}))
	s.restart()
	path := s.makeLink()
	token := path[3:]
	codes := map[int]int{}
	for i := range 10_000 {
		guess := []byte(token)
		// One letter of the true one is another: nearer than any guesser comes.
		const alphabet = "abcdefghijklmnopqrstuvwxyz234567"
		at := strings.IndexByte(alphabet, guess[i%32])
		guess[i%32] = alphabet[(at+1+i/32%31)%32]
		w := s.page("/s/" + string(guess))
		codes[w.Code]++
		if w.Body.String() != string(seller.Nothing) {
			t.Fatalf("guess %d: %s", i, w.Body)
		}
		if i%1000 == 0 {
			if w := s.page(path); w.Code != 200 {
				t.Fatalf("the seller is locked out after %d guesses: %d", i, w.Code)
			}
		}
		if i%2500 == 0 {
			if w := s.ask("GET", "/api/health", ""); w.Code != 200 {
				t.Fatalf("the app is locked out: %d", w.Code)
			}
		}
	}
	if codes[404] != guessesEach || codes[429] != 10_000-guessesEach {
		t.Errorf("answers %v", codes)
	}
	if strings.Contains(log.String(), token[:8]) || strings.Contains(log.String(), "/s/a") {
		t.Errorf("the log tells of addresses: %.300s", log.String())
	}
	s.now = s.now.Add(time.Minute)
	if w := s.page(nobody); w.Code != 404 {
		t.Errorf("a minute later: %d", w.Code)
	}
}

// Senders are counted apart, and all together; what is remembered of them is bounded.
func TestGuessersAreCountedApart(t *testing.T) {
	now := noon
	g := New(Config{Now: func() time.Time { return now }}).guesses
	from := func(remote string, passed ...string) bool {
		r := httptest.NewRequest("GET", "/s/x", nil)
		r.RemoteAddr = remote
		for _, p := range passed {
			r.Header.Add("X-Forwarded-For", p)
		}
		return g.wrong(r)
	}
	for range guessesEach {
		from("127.0.0.1:9", "192.0.2.1")
	}
	if from("127.0.0.1:9", "10.0.0.1, 192.0.2.1") || from("127.0.0.1:9", "198.51.100.7", "192.0.2.1") {
		t.Error("the same sender goes on under a name it made up")
	}
	if !from("127.0.0.1:9", "192.0.2.2") || !from("127.0.0.1:9") {
		t.Error("another sender is held up")
	}
	for i := range guessesEach {
		from("127.0.0.1:9", fmt.Sprintf("2001:db8::%x", i+1))
	}
	if from("127.0.0.1:9", "2001:db8::ffff") || !from("127.0.0.1:9", "2001:db8:1::1") {
		t.Error("IPv6 is not counted by network")
	}
	most := 0
	for i := range 2 * guessersKnown {
		if from("127.0.0.1:9", fmt.Sprintf("10.%d.%d.1", i/256, i%256)) {
			most++
		}
	}
	if most >= guessesAll || len(g.by) > guessersKnown {
		t.Errorf("all together: %d, known %d", most, len(g.by))
	}
	from("nonsense", "not an address")
}

// rows are the rows a device gets by the ordinary exchange, by path.
func (s *shop) pulled(device string) map[string]record.Row {
	s.t.Helper()
	found := map[string]record.Row{}
	for _, r := range s.exchange(device, cursor{}, "").Rows {
		if r.Doc != "listing:"+listingID {
			s.t.Errorf("a row of %s", r.Doc)
		}
		found[r.Path] = r
	}
	return found
}

func value(t *testing.T, r record.Row) string {
	t.Helper()
	e, ok := r.Winner()
	if !ok || len(r.Entries) != 1 {
		t.Errorf("%s has %d entries", r.Path, len(r.Entries))
	}
	return string(e.Value)
}

func TestOpenedReachesDevices(t *testing.T) {
	s := newShop(t)
	path := s.makeLink()
	opened := "link/" + linkID + "/opened"
	state := func() (n int) {
		var st linkState
		if err := json.Unmarshal(s.ask("GET", "/api/links/"+linkID, "").Body.Bytes(), &st); err != nil {
			t.Fatal(err)
		}
		if st.Opened != nil {
			n = st.Opened.Count
		}
		return n
	}
	s.page(path + "?preview")
	s.page(path + "?sent=" + cable)
	s.page(path, "Sec-Purpose: prefetch;prerender")
	s.page(path + "/photo/" + photoKey)
	s.ask("HEAD", path, "")
	if got := s.pulled(deviceA); len(got) != 0 || state() != 0 {
		t.Errorf("nobody looked, but %v", got)
	}
	s.page(path)
	at := moment(noon.UnixMilli())
	if got := value(t, s.pulled(deviceA)[opened]); got != `{"count":1,"first":"`+at+`","last":"`+at+`"}` {
		t.Errorf("first look: %s", got)
	}
	_, before := s.stored()
	for range 20 {
		s.now = s.now.Add(time.Second)
		s.page(path)
	}
	if _, after := s.stored(); after != before || state() != 21 {
		t.Errorf("20 looks within a minute: %d writes, %d counted", after-before, state())
	}
	s.server.tendLinks()
	last := moment(s.now.UnixMilli())
	if got := value(t, s.pulled(deviceB)[opened]); got != `{"count":21,"first":"`+at+`","last":"`+last+`"}` {
		t.Errorf("after tending: %s", got)
	}
	s.restart()
	s.now = s.now.Add(time.Hour)
	s.page(path)
	if got := value(t, s.pulled(deviceB)[opened]); !strings.HasPrefix(got, `{"count":22,"first":"`+at) {
		t.Errorf("after a restart: %s", got)
	}
}

// What was only counted is written when the server stops.
func TestLooksAreKeptAtTheStop(t *testing.T) {
	s := newShop(t)
	path := s.makeLink()
	_, stop := s.serve()
	s.page(path)
	s.page(path)
	if err := stop(); err != nil {
		t.Fatal(err)
	}
	s.restart()
	if got := value(t, s.pulled(deviceA)["link/"+linkID+"/opened"]); !strings.HasPrefix(got, `{"count":2,`) {
		t.Error(got)
	}
}

// When the store fails the seller reads so, keeps what he typed, and no log line holds his address.
func TestFaultsTellNoToken(t *testing.T) {
	var log bytes.Buffer
	s := newShop(t)
	s.log = slog.New(slog.NewTextHandler(&log, &slog.HandlerOptions{Level: slog.LevelDebug}))
	s.restart()
	path := s.makeLink()
	s.server.relay.store = full{s.store}
	w := s.answer(path, said(cable, "agree", "my words")...)
	if w.Code != 500 || !strings.Contains(w.Body.String(), "could not be kept") || !strings.Contains(w.Body.String(), ">my words<") {
		t.Errorf("%d %s", w.Code, w.Body)
	}
	if w := s.page(path); w.Code != 200 {
		t.Errorf("the page of a full disk: %d", w.Code)
	}
	if err := os.WriteFile(filepath.Join(s.dir, "links", linkID, "document.json"), []byte("{"), 0o600); err != nil {
		t.Fatal(err)
	}
	if w := s.page(path); w.Code != 500 {
		t.Errorf("a damaged document: %d", w.Code)
	}
	s.server.Links = nil // a fault of the program
	if w := s.page(path); w.Code != 500 {
		t.Errorf("a panic: %d", w.Code)
	}
	if log.Len() == 0 || strings.Contains(log.String(), path[3:]) {
		t.Errorf("the log: %s", log.String())
	}
}

func TestPublicName(t *testing.T) {
	s := newShop(t)
	var err error
	if s.public, err = ParsePublic("https://Estimates.example/"); err != nil {
		t.Fatal(err)
	}
	s.restart()
	m := s.askLink(goodAsk(t))
	if m.URL != "https://estimates.example"+m.Path || !m.Public {
		t.Fatalf("%+v", m)
	}
	body, kind := formOf(t, said(cable, "agree", "")...)
	for _, c := range []struct {
		method, path string
		headers      []string
		status       int
	}{
		{"GET", m.Path, []string{"Host: estimates.example"}, 200},
		{"GET", m.Path, []string{"Host: ESTIMATES.example:443", "X-Forwarded-For: 192.0.2.1"}, 200},
		{"GET", m.Path, []string{"Host: 127.0.0.1:8080", "X-Forwarded-For: 192.0.2.1"}, 200},
		{"GET", m.Path, []string{"Host: localhost:8080"}, 200},
		{"GET", m.Path, []string{"Host: evil.example"}, 421},
		{"GET", m.Path, []string{"Host: estimates.example:8080"}, 421},
		{"GET", nobody, []string{"Host: estimates.example"}, 404},
		{"POST", m.Path, []string{"Host: estimates.example", "Origin: https://estimates.example", kind}, 303},
		{"POST", m.Path, []string{"Host: estimates.example", "Origin: https://evil.example", kind}, 403},
		{"GET", "/robots.txt", []string{"Host: estimates.example"}, 200},
		{"GET", "/", []string{"Host: estimates.example"}, 421},
		{"GET", "/s", []string{"Host: estimates.example"}, 421},
		{"GET", "/api/health", []string{"Host: estimates.example"}, 421},
		{"POST", "/api/sync", []string{"Host: estimates.example", "Content-Type: application/json"}, 421},
		{"GET", "/s/../api/health", []string{"Host: estimates.example"}, 404},
		{"GET", "/api/health", []string{"X-Forwarded-For: 192.0.2.1"}, 421},
		{"GET", "/api/health", []string{"Forwarded: for=192.0.2.1"}, 421},
		{"GET", "/", []string{"Via: 1.1 proxy"}, 421},
		{"GET", "/api/health", nil, 200},
	} {
		if w := s.ask(c.method, c.path, body, c.headers...); w.Code != c.status {
			t.Errorf("%s %s %v: %d, want %d", c.method, c.path, c.headers, w.Code, c.status)
		}
	}
	if w := s.ask("GET", "/robots.txt", ""); !strings.Contains(w.Body.String(), "Disallow: /s/\n") {
		t.Error(w.Body)
	}
	for _, bad := range []string{"estimates.example", "http://estimates.example", "https://", "https://a.example/path", "https://u@a.example", "https://a.example?x", "https://localhost", "https://127.0.0.1:1", "%"} {
		if u, err := ParsePublic(bad); err == nil || !strings.Contains(err.Error(), "https://estimates.example") && !strings.Contains(err.Error(), "own address") {
			t.Errorf("%s: %v, %v", bad, u, err)
		}
	}
	if u, err := ParsePublic("https://a.example:8443"); err != nil || *u != (url.URL{Scheme: "https", Host: "a.example:8443"}) {
		t.Error(u, err)
	}
}

// Whatever a text holds is shown as text.
func TestHostileTexts(t *testing.T) {
	hostile := []string{
		`<script>alert(1)</script>`, `"><img src=x onerror=alert(1)>`, `' onmouseover='x`, `{{.Base}}`, `javascript:alert(1)`, "</style></title></textarea>",
		strings.Repeat("Anselm ", 42) + "Quist", "ورشة الرفع 12", "\u202emoc.elpmaxe\u202c", "مزدوج\u202e", "🔧👨‍🔧🇲🇽", "-->", "]]>", "&lt;b&gt;", "a\u2028b",
	}
	for _, text := range hostile {
		s := newShop(t)
		a := goodAsk(t)
		d := testDocument()
		d.Title, d.Date, d.Foot, d.Answers.Lead, d.Answers.Agree, d.Answers.Yours, d.Answers.Expires = text, text, text, text, text, text, text+"%s"
		d.Blocks[0].Text, d.Blocks[0].Word, d.Blocks[2].Blocks[0].Text = text, text, text
		d.Blocks[2].Blocks[1].Facts[0] = document.Fact{Name: text, Value: text}
		d.Blocks[2].Blocks[2].Photos[0].Caption = text
		d.Blocks[4].Table.Title, d.Blocks[4].Table.Columns[0].Title, d.Blocks[4].Table.Rows[1].Cells[0] = text, text, text
		a.head["document"] = d
		m := s.askLink(a)
		if m.Status != 200 {
			t.Errorf("%q: %+v", text, m.message)
			continue
		}
		s.answer(m.Path, said(cable, "agree", text)...)
		page := s.page(m.Path).Body.String()
		for _, bad := range []string{"<script", "<img src=x", "onerror=alert(1)>", "onmouseover='x", "{{", "</style><"} {
			if strings.Contains(page, bad) && text != `{{.Base}}` {
				t.Errorf("%q became %q", text, bad)
			}
		}
		if n := strings.Count(page, "<h1"); n != 1 {
			t.Errorf("%q: %d titles", text, n)
		}
	}
}
