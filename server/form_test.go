package server

import (
	"net/http/httptest"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"asfound/server/link"
)

// Whatever comes as a form is read without a panic, within bounds, and as text that every row takes.
func FuzzAnswerForm(f *testing.F) {
	const kind = "multipart/form-data; boundary=x"
	head := "--x\r\nContent-Disposition: form-data; name=\""
	f.Add(kind, head+"line\"\r\n\r\nfinding.cable\r\n"+head+"says\"\r\n\r\nagree\r\n"+head+"word\"\r\n\r\nmy words\r\n--x--\r\n")
	f.Add(kind, head+"photo\"; filename=\"a.jpg\"\r\n\r\n\xff\xd8\xff\r\n--x--\r\n")
	f.Add("multipart/form-data", "")
	s := New(Config{Now: func() time.Time { return noon }})
	f.Fuzz(func(t *testing.T, kind, body string) {
		r := httptest.NewRequest("POST", "/s/x", strings.NewReader(body))
		r.Header.Set("Content-Type", kind)
		in := s.readAnswer(httptest.NewRecorder(), r)
		if !utf8.ValidString(in.word) || strings.ContainsAny(in.word, "\x00\x1b\r\x7f") {
			t.Errorf("word %q", in.word)
		}
		if n := utf8.RuneCountInString(in.word); n > link.MaxWord && !in.tooLong {
			t.Errorf("%d characters are taken", n)
		}
		switch in.says {
		case "", "agree", "disagree", "done":
		default:
			t.Errorf("says %q", in.says)
		}
	})
}
