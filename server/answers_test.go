package server

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"image"
	"image/jpeg"
	"image/png"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"asfound/server/link"
	"asfound/server/photo"
	"asfound/server/record"
	"asfound/server/store/bolt"
)

func testPNG(t testing.TB, w, h int) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, image.NewGray(image.Rect(0, 0, w, h))); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func (s *shop) answer(path string, parts ...part) *httptest.ResponseRecorder {
	s.t.Helper()
	body, kind := formOf(s.t, parts...)
	return s.ask("POST", path, body, kind, "Sec-Fetch-Site: same-origin", "Origin: null")
}

func said(line, says, word string) []part {
	return []part{{"line", "", []byte(line)}, {"says", "", []byte(says)}, {"word", "", []byte(word)}}
}

func TestAnswerReachesDevices(t *testing.T) {
	s := newShop(t)
	path := s.makeLink()
	row := "link/" + linkID + "/answer/" + cable
	w := s.answer(path, append(said(cable, "done", "Replaced in <March> & tested\r\ntwice"), part{"photo", "IMG_1.png", testPNG(t, 2000, 1000)})...)
	if w.Code != 303 || w.Header().Get("Location") != path+"?sent="+cable+"#a-"+cable {
		t.Fatalf("%d %v %s", w.Code, w.Header(), w.Body)
	}
	var told answerTold
	if err := json.Unmarshal([]byte(value(t, s.pulled(deviceA)[row])), &told); err != nil {
		t.Fatal(err)
	}
	if told.Says != "done" || told.Word != "Replaced in <March> & tested\ntwice" || told.At != moment(noon.UnixMilli()) {
		t.Errorf("%+v", told)
	}
	got := s.ask("GET", "/api/photos/"+told.Photo, "")
	m, err := jpeg.Decode(bytes.NewReader(got.Body.Bytes()))
	if err != nil || got.Header().Get("Content-Type") != "image/jpeg" || m.Bounds().Size() != image.Pt(1600, 800) {
		t.Fatalf("the photo: %d, %v", got.Code, err)
	}
	page := s.page(path + "?sent=" + cable)
	for _, want := range []string{"You said", `<p class="stamp" dir="auto">Already done</p>`, "Replaced in &lt;March&gt; &amp; tested", "Sent.", path + "/said/" + cable, `value="done" checked`} {
		if !strings.Contains(page.Body.String(), want) {
			t.Errorf("the page lacks %q", want)
		}
	}
	if w := s.page(path + "/said/" + cable); w.Code != 200 || w.Body.String() != got.Body.String() {
		t.Errorf("his photo: %d", w.Code)
	}

	// A device that has the answer, and a server that was started anew: the change replaces it, for both.
	held := s.pulled(deviceA)[row]
	s.restart()
	s.now = s.now.Add(time.Hour)
	if w := s.answer(path, said(cable, "disagree", "")...); w.Code != 303 {
		t.Fatal(w.Code)
	}
	after := s.pulled(deviceB)[row]
	if got := value(t, record.Merge(held, after)); !strings.Contains(got, `"says":"disagree"`) || !strings.Contains(got, told.Photo) {
		t.Errorf("changed: %s", got)
	}
	// The device pushes all it holds again, as after a backup was put back: nothing comes apart.
	s.exchange(deviceA, cursor{}, "", held)
	if got := value(t, s.pulled(deviceB)[row]); !strings.Contains(got, `"says":"disagree"`) {
		t.Errorf("pushed again: %s", got)
	}
	if w := s.answer(path, said(cable, "agree", "")...); w.Code != 303 {
		t.Fatal(w.Code)
	}
	if got := value(t, s.pulled(deviceA)[row]); !strings.Contains(got, `"says":"agree"`) {
		t.Errorf("changed again: %s", got)
	}
	s.ask("DELETE", "/api/links/"+linkID, "")
	if got := value(t, s.pulled(deviceA)[row]); !strings.Contains(got, `"says":"agree"`) {
		t.Errorf("the buyer's own copy went with the link: %s", got)
	}
}

// A stamp of a device whose clock is ahead does not outrank a later answer.
func TestAnswerOutranksWhatIsThere(t *testing.T) {
	s := newShop(t)
	path := s.makeLink()
	ahead := row("link/"+linkID+"/answer/"+cable, `{"says":"agree"}`, stamp(40_000, deviceA), "")
	apart := row("link/"+linkID+"/answer/"+cable, `{"says":"done"}`, stamp(30_000, deviceB), "")
	if m := s.exchange(deviceA, cursor{}, "", ahead); m.Status != 200 {
		t.Fatal(m)
	}
	if m := s.exchange(deviceB, cursor{}, "", apart); m.Status != 200 {
		t.Fatal(m)
	}
	for _, says := range []string{"disagree", "agree", "disagree"} {
		if w := s.answer(path, said(cable, says, "")...); w.Code != 303 {
			t.Fatal(w.Code)
		}
		if got := value(t, s.pulled("c3c3c3c3c3c3c3c3")["link/"+linkID+"/answer/"+cable]); !strings.Contains(got, says) {
			t.Error(got)
		}
	}
}

func TestAnswersThatCannotBeTaken(t *testing.T) {
	s := newShop(t)
	path := s.makeLink()
	long := strings.Repeat("ü", link.MaxWord+1)
	shot := part{"photo", "a.png", testPNG(t, 30, 20)}
	for name, c := range map[string]struct {
		parts  []part
		status int
		says   string
		kept   string
	}{
		"nothing chosen":      {said(cable, "", "my words"), 422, answerWords.NoAnswer, ">my words</textarea>"},
		"a choice of its own": {said(cable, "maybe", "my words"), 422, answerWords.NoAnswer, ">my words</textarea>"},
		"501 characters":      {said(cable, "agree", long), 422, answerWords.TooLong, ">" + long + "</textarea>"},
		"a text as photo":     {append(said(cable, "agree", "my words"), part{"photo", "a.jpg", []byte("no photo")}), 422, answerWords.NoPhoto, ">my words</textarea>"},
		"HEIC":                {append(said(cable, "agree", "my words"), part{"photo", "a.heic", []byte("\x00\x00\x00\x18ftypheic\x00\x00\x00\x00mif1heic")}), 422, answerWords.NoPhoto, `value="agree" checked`},
		"a photo of 13 MB":    {append(said(cable, "disagree", "my words"), part{"photo", "a.jpg", make([]byte, 13_000_000)}), 422, answerWords.NoPhoto, `value="disagree" checked`},
		"no line":             {said("", "agree", "my words"), 400, "could not be kept", ""},
		"another line":        {said("finding.x", "agree", ""), 400, "could not be kept", ""},
		"a path as line":      {said("../opened", "agree", ""), 400, "could not be kept", ""},
	} {
		w := s.answer(path, c.parts...)
		if w.Code != c.status || !strings.Contains(w.Body.String(), c.says) || !strings.Contains(w.Body.String(), c.kept) {
			t.Errorf("%s: %d %v %v", name, w.Code, strings.Contains(w.Body.String(), c.says), strings.Contains(w.Body.String(), c.kept))
		}
		if got := s.pulled(deviceA); len(got) != 0 {
			t.Errorf("%s: stored %v", name, got)
		}
	}
	for name, c := range map[string]struct {
		body, kind string
		status     int
	}{
		"an address":  {"line=" + cable + "&says=agree", "Content-Type: application/x-www-form-urlencoded", 400},
		"half a form": {"--x\r\nContent-Disposition: form-data; name=\"line\"\r\n\r\nfind", "Content-Type: multipart/form-data; boundary=x", 400},
		"nothing":     {"", "Content-Type: multipart/form-data; boundary=x", 400},
	} {
		if w := s.ask("POST", path, c.body, c.kind); w.Code != c.status || !strings.Contains(w.Body.String(), "could not be kept") {
			t.Errorf("%s: %d", name, w.Code)
		}
	}
	body, kind := formOf(t, said(cable, "agree", "")...)
	for _, header := range []string{"Sec-Fetch-Site: cross-site", "Sec-Fetch-Site: same-site", "Origin: https://evil.example"} {
		if w := s.ask("POST", path, body, kind, header); w.Code != 403 {
			t.Errorf("%s: %d", header, w.Code)
		}
	}

	// A photo that came with words too long need not be chosen again.
	if w := s.answer(path, append(said(cable, "agree", long), shot)...); w.Code != 422 {
		t.Fatal(w.Code)
	}
	if w := s.answer(path, said(cable, "agree", "shorter")...); w.Code != 303 {
		t.Fatal(w.Code)
	}
	if got := value(t, s.pulled(deviceA)["link/"+linkID+"/answer/"+cable]); !strings.Contains(got, `"photo":"`) {
		t.Errorf("the photo was lost: %s", got)
	}
}

func TestAnswersAreBounded(t *testing.T) {
	s := newShop(t)
	s.opener = bolt.OpenUnsynced
	s.restart()
	path := s.makeLink()
	for i := range link.MaxAnswerPhotos {
		if w := s.answer(path, append(said(cable, "agree", ""), part{"photo", "a.png", testPNG(t, 20+i, 20)})...); w.Code != 303 {
			t.Fatalf("photo %d: %d", i, w.Code)
		}
	}
	w := s.answer(path, append(said("finding.pad", "agree", "my words"), part{"photo", "a.png", testPNG(t, 90, 90)})...)
	if w.Code != 429 || !strings.Contains(w.Body.String(), "No more photos") || !strings.Contains(w.Body.String(), ">my words<") {
		t.Errorf("a photo too many: %d", w.Code)
	}
	for i := link.MaxAnswerPhotos; i < link.MaxSends; i++ {
		if w := s.answer(path, said("finding.pad", "done", "")...); w.Code != 303 {
			t.Fatalf("answer %d: %d", i, w.Code)
		}
	}
	w = s.answer(path, said(cable, "disagree", "my words")...)
	if w.Code != 429 || !strings.Contains(w.Body.String(), "No more answers") || !strings.Contains(w.Body.String(), ">my words<") {
		t.Errorf("an answer too many: %d", w.Code)
	}
}

// A photo of an answer that was cut off on its way to the disk, by a stop or a full disk, is taken at the next try.
func TestAnswerPhotoAfterACut(t *testing.T) {
	shot := testJPEG(t, 60, 40)
	drawn, err := photo.Redraw(shot, maxAnswerSide)
	if err != nil {
		t.Fatal(err)
	}
	sum := sha256.Sum256(drawn)
	name := hex.EncodeToString(sum[:])
	for what, left := range map[string][]byte{"its beginning": drawn[:100], "all of it": drawn, "other bytes": bytes.Repeat([]byte("x"), 50), "too many": append(bytes.Clone(drawn), "more"...)} {
		s := newShop(t)
		path := s.makeLink()
		if err := os.WriteFile(filepath.Join(s.dir, "photos", "part", name), left, 0o600); err != nil {
			t.Fatal(err)
		}
		if w := s.answer(path, part{"line", "", []byte(cable)}, part{"says", "", []byte("done")}, part{"photo", "x.jpg", shot}); w.Code != 303 {
			t.Errorf("%s was left: %d", what, w.Code)
		}
		if w := s.page(path + "/said/" + cable); w.Code != 200 || w.Body.String() != string(drawn) {
			t.Errorf("%s was left: the photo is not there: %d", what, w.Code)
		}
	}
}

// Photos that are being sent take a bounded share of memory; who comes too many keeps what he typed.
func TestPhotosBeingSentAreBounded(t *testing.T) {
	s := newShop(t)
	path := s.makeLink()
	for range cap(s.server.sending) {
		s.server.sending <- struct{}{}
	}
	photoless := func() *httptest.ResponseRecorder {
		return s.answer(path, part{"line", "", []byte(cable)}, part{"says", "", []byte("done")}, part{"photo", "", nil})
	}
	if w := photoless(); w.Code != 303 {
		t.Errorf("without a photo: %d", w.Code)
	}
	send := func() *httptest.ResponseRecorder {
		return s.answer(path, part{"line", "", []byte(cable)}, part{"says", "", []byte("done")}, part{"word", "", []byte("new pads")}, part{"photo", "x.jpg", testJPEG(t, 60, 40)})
	}
	if w := send(); w.Code != 503 || !strings.Contains(w.Body.String(), "new pads") {
		t.Errorf("with a photo: %d %s", w.Code, w.Body)
	}
	<-s.server.sending
	for range 3 { // each gives its place back
		if w := send(); w.Code != 303 {
			t.Errorf("when there is room: %d", w.Code)
		}
	}
}
