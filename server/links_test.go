package server

import (
	"bytes"
	"image"
	"image/color"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/makiuchi-d/gozxing"
	zxing "github.com/makiuchi-d/gozxing/qrcode"

	"asfound/rubrics/document"
)

func TestLinkIsMadeAndShown(t *testing.T) {
	s := newShop(t)
	m := s.askLink(goodAsk(t))
	if m.Status != 200 || m.ID != linkID || len(m.Path) != len("/s/")+32 || m.URL != "http://127.0.0.1:8080"+m.Path || m.Public {
		t.Fatalf("%+v", m)
	}
	expires, err := time.Parse(time.RFC3339, m.Expires)
	if days := expires.Sub(noon).Hours() / 24; err != nil || days < 21 || days >= 22 {
		t.Errorf("expires %s", m.Expires)
	}
	w := s.page(m.Path)
	if w.Code != 200 {
		t.Fatalf("%d %s", w.Code, w.Body)
	}
	for name, want := range map[string]string{
		"Content-Type": "text/html; charset=utf-8", "Cache-Control": "private, no-store", "X-Robots-Tag": "noindex, nofollow",
		"Referrer-Policy": "no-referrer", "X-Content-Type-Options": "nosniff", "Content-Security-Policy": sellerPolicy,
	} {
		if got := w.Header().Get(name); got != want {
			t.Errorf("%s: %q", name, got)
		}
	}
	text := w.Body.String()
	for _, want := range []string{
		`<html lang="en-US" dir="ltr">`, `content="noindex, nofollow"`, "<h1 dir=\"auto\">Repair estimate, two-post lift</h1>", "7 in one lay",
		"<span>DANGER</span>", `<th scope="col" role="columnheader" dir="auto" class="right">Cost</th>`, `class="total"`, "This page opens until " + noon.AddDate(0, 0, 21).Format("January 2, 2006") + ".",
		`src="` + m.Path + `/photo/` + photoKey + `" width="40" height="30"`, "Already done", "Invented for tests.",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the page lacks %q", want)
		}
	}
	for _, bad := range []string{"<script", "style=", "javascript:", linkID, listingID} {
		if strings.Contains(text, bad) {
			t.Errorf("the page holds %q", bad)
		}
	}
	style := s.page(between(t, text, `<link rel="stylesheet" href="`, `"`))
	if style.Code != 200 || style.Header().Get("Content-Type") != "text/css; charset=utf-8" {
		t.Errorf("style: %d", style.Code)
	}
	shot := s.page(m.Path + "/photo/" + photoKey)
	if shot.Code != 200 || shot.Header().Get("Content-Type") != "image/jpeg" || shot.Header().Get("X-Robots-Tag") == "" {
		t.Errorf("photo: %d %v", shot.Code, shot.Header())
	}
	if w := s.ask("HEAD", m.Path, ""); w.Code != 200 {
		t.Errorf("HEAD: %d", w.Code)
	}
	s.restart()
	if w := s.page(m.Path); w.Code != 200 || !strings.Contains(w.Body.String(), "7 in one lay") {
		t.Errorf("after a restart: %d", w.Code)
	}
}

func between(t *testing.T, text, from, to string) string {
	t.Helper()
	_, rest, ok := strings.Cut(text, from)
	found, _, ok2 := strings.Cut(rest, to)
	if !ok || !ok2 {
		t.Fatalf("no %q … %q", from, to)
	}
	return found
}

// The code is read by another library than the one that wrote it (the ZXing port gozxing).
func TestQRIsReadByAnotherReader(t *testing.T) {
	s := newShop(t)
	m := s.askLink(goodAsk(t))
	const scale, quiet = 4, 4
	n := len(m.QR)
	img := image.NewGray(image.Rect(0, 0, (n+2*quiet)*scale, (n+2*quiet)*scale))
	for i := range img.Pix {
		img.Pix[i] = 255
	}
	for y, row := range m.QR {
		if len(row) != n {
			t.Fatalf("row %d has %d of %d", y, len(row), n)
		}
		for x, bit := range row {
			for i := 0; bit == '1' && i < scale*scale; i++ {
				img.SetGray((x+quiet)*scale+i%scale, (y+quiet)*scale+i/scale, color.Gray{})
			}
		}
	}
	bits, err := gozxing.NewBinaryBitmapFromImage(img)
	if err != nil {
		t.Fatal(err)
	}
	read, err := zxing.NewQRCodeReader().Decode(bits, nil)
	if err != nil || read.GetText() != m.URL {
		t.Errorf("read %v, %v, want %s", read, err, m.URL)
	}
}

func TestLinkRefusals(t *testing.T) {
	doc := func(change func(d *document.Document)) func(*asked) {
		return func(a *asked) {
			d := testDocument()
			change(&d)
			a.head["document"] = d
		}
	}
	set := func(name string, v any) func(*asked) { return func(a *asked) { a.head[name] = v } }
	exif := append([]byte{0xff, 0xd8, 0xff, 0xe1, 0, 16}, "Exif\x00\x00MM\x00*\x00\x00\x00\x08"...)
	for name, c := range map[string]struct {
		spoil  func(*asked)
		status int
		says   string
	}{
		"an id of another shape":      {set("id", "x"), 422, "26 characters"},
		"a path as id":                {set("id", "../../../../../../../etc/p"), 422, "26 characters"},
		"no listing":                  {set("listing", ""), 422, "listing"},
		"too few days":                {set("days", -1), 422, "1 to 90"},
		"too many days":               {set("days", 91), 422, "1 to 90"},
		"half a day":                  {set("days", 1.5), 400, "days"},
		"a line that is not there":    {set("lines", []string{"finding.x"}), 422, `"finding.x" is no part`},
		"a line twice":                {set("lines", []string{cable, cable}), 422, "twice"},
		"answers without words":       {doc(func(d *document.Document) { d.Answers = nil }), 422, "no words for answers"},
		"a button without a word":     {doc(func(d *document.Document) { d.Answers.Send = "" }), 422, "answers.send"},
		"a paper for oneself":         {doc(func(d *document.Document) { d.Kind = "record" }), 422, "estimate is expected"},
		"no title":                    {doc(func(d *document.Document) { d.Title = "" }), 422, "title"},
		"a title of 501":              {doc(func(d *document.Document) { d.Title = strings.Repeat("é", 501) }), 422, "501 characters"},
		"a control character":         {doc(func(d *document.Document) { d.Title = "a\x1b[2J" }), 422, "control character"},
		"no language":                 {doc(func(d *document.Document) { d.Language = `en" onload="x` }), 422, "language"},
		"nothing to show":             {doc(func(d *document.Document) { d.Blocks = nil }), 422, "blocks"},
		"a block of no kind":          {doc(func(d *document.Document) { d.Blocks[0].Kind = "html" }), 422, "blocks[0].kind"},
		"a heading of level 7":        {doc(func(d *document.Document) { d.Blocks[1].Level = 7 }), 422, "blocks[1].level"},
		"a signal of no kind":         {doc(func(d *document.Document) { d.Blocks[0].Signal = "safe" }), 422, "signal"},
		"a part twice":                {doc(func(d *document.Document) { d.Blocks[3].ID = cable }), 422, "twice"},
		"a part's id with a slash":    {doc(func(d *document.Document) { d.Blocks[3].ID = "a/b" }), 422, "blocks[3].id"},
		"shares that do not sum":      {doc(func(d *document.Document) { d.Blocks[4].Table.Columns[0].Share = 60 }), 422, "sum to 90"},
		"a cell too few":              {doc(func(d *document.Document) { d.Blocks[4].Table.Rows[1].Cells = []string{"x"} }), 422, "rows[1]"},
		"a table without one":         {doc(func(d *document.Document) { d.Blocks[4].Table = nil }), 422, "table is missing"},
		"what is not shown":           {doc(func(d *document.Document) { d.Blocks[1].Items = []string{"worth 4,200"} }), 422, "does not show"},
		"a field that is unknown":     {set("document", map[string]any{"kind": "estimate", "worth": 420000}), 422, "unknown field"},
		"a pair of one":               {doc(func(d *document.Document) { d.Blocks[2].Blocks[2].Photos[0].Pair = true }), 422, "pair"},
		"a photo named by a path":     {doc(func(d *document.Document) { d.Blocks[2].Blocks[2].Photos[0].Key = "../x" }), 422, "key"},
		"parts too deep":              {doc(func(d *document.Document) { d.Blocks = nested(6) }), 422, "deep"},
		"no copy of a photo":          {func(a *asked) { a.photos = nil }, 422, "no copy"},
		"a photo that is not shown":   {func(a *asked) { a.photos[strings.Repeat("2", 64)] = a.photos[photoKey] }, 422, "not in the document"},
		"a copy that is no picture":   {func(a *asked) { a.photos[photoKey] = []byte("<svg/>") }, 422, "not a JPEG"},
		"a copy with place or camera": {func(a *asked) { a.photos[photoKey] = append(exif, a.photos[photoKey][2:]...) }, 422, "place or camera"},
		"a copy cut off":              {func(a *asked) { a.photos[photoKey] = a.photos[photoKey][:200] }, 422, "not a usable picture"},
		"no JSON":                     {func(a *asked) { a.raw = "{" }, 400, "JSON"},
		"nested JSON":                 {func(a *asked) { a.raw = strings.Repeat("[", 500) }, 400, "too deep"},
		"a list":                      {func(a *asked) { a.raw = "[]" }, 400, "object"},
		"a large document":            {func(a *asked) { a.raw = `{"id":"` + strings.Repeat("x", 2<<20) + `"}` }, 413, "more than"},
	} {
		s := newShop(t)
		a := goodAsk(t)
		c.spoil(a)
		if m := s.askLink(a); m.Status != c.status || !strings.Contains(m.Message, c.says) {
			t.Errorf("%s: %d %q, want %d with %q", name, m.Status, m.Message, c.status, c.says)
		}
		if files, err := os.ReadDir(filepath.Join(s.dir, "links")); err != nil || len(files) != 0 {
			t.Errorf("%s: %v left behind, %v", name, files, err)
		}
	}
}

func nested(depth int) []document.Block {
	if depth == 0 {
		return []document.Block{{Kind: "text", Text: "deep"}}
	}
	return []document.Block{{Kind: "part", Blocks: nested(depth - 1)}}
}

func TestLinkFormRefusals(t *testing.T) {
	s := newShop(t)
	body, kind := goodAsk(t).form(t)
	head := part{"link", "", []byte("{}")}
	twice, twiceKind := formOf(t, head, head)
	none, noneKind := formOf(t, part{"photo", photoKey, testJPEG(t, 9, 9)})
	other, otherKind := formOf(t, head, part{"notes", "", []byte("private")})
	double, doubleKind := formOf(t, head, part{"photo", "a", nil}, part{"photo", "a", nil})
	large, largeKind := formOf(t, head, part{"photo", "a", make([]byte, 3<<20)})
	var many []part
	for i := range 8 {
		many = append(many, part{"photo", string(rune('a' + i)), make([]byte, 2<<20)})
	}
	heavy, heavyKind := formOf(t, append(many, head)...)
	for name, c := range map[string]struct {
		body    string
		headers []string
		status  int
	}{
		"another site":       {body, []string{kind, "Asfound: 1", "Sec-Fetch-Site: cross-site"}, 403},
		"a form of any page": {body, []string{kind}, 403},
		"JSON":               {"{}", []string{"Content-Type: application/json", "Asfound: 1"}, 415},
		"no boundary":        {body, []string{"Content-Type: multipart/form-data", "Asfound: 1"}, 400},
		"half":               {body[:len(body)/2], []string{kind, "Asfound: 1"}, 400},
		"nothing":            {"", []string{kind, "Asfound: 1"}, 400},
		"link twice":         {twice, []string{twiceKind, "Asfound: 1"}, 400},
		"no link":            {none, []string{noneKind, "Asfound: 1"}, 400},
		"an unknown part":    {other, []string{otherKind, "Asfound: 1"}, 400},
		"a photo twice":      {double, []string{doubleKind, "Asfound: 1"}, 400},
		"a large photo":      {large, []string{largeKind, "Asfound: 1"}, 413},
		"16 MB in all":       {heavy, []string{heavyKind, "Asfound: 1"}, 413},
	} {
		if m := s.read(s.ask("POST", "/api/links", c.body, c.headers...)); m.Status != c.status {
			t.Errorf("%s: %d %q, want %d", name, m.Status, m.Message, c.status)
		}
	}
}

// What was asked for twice because the answer was lost is one link, and the token nobody has is dead.
func TestSameLinkAgain(t *testing.T) {
	s := newShop(t)
	first, second := s.makeLink(), s.makeLink()
	if first == second {
		t.Fatal("the token was kept somewhere")
	}
	if w := s.page(first); w.Code != 404 {
		t.Errorf("the lost token opens: %d", w.Code)
	}
	if w := s.page(second + "?preview"); w.Code != 200 {
		t.Errorf("the second token: %d", w.Code)
	}
	other := goodAsk(t)
	other.head["days"] = 20
	if m := s.askLink(other); m.Status != 409 || !strings.Contains(m.Message, "another paper") {
		t.Errorf("another paper: %+v", m.message)
	}
	s.restart()
	third := s.makeLink() // a preview is no reason against it
	if w := s.page(third); w.Code != 200 {
		t.Fatal(w.Code)
	}
	if m := s.askLink(goodAsk(t)); m.Status != 409 || m.Code != "link-made" || !strings.Contains(m.Message, "opened before") {
		t.Errorf("opened: %+v", m.message)
	}
	if w := s.page(third); w.Code != 200 {
		t.Errorf("the seller's token: %d", w.Code)
	}
}

func TestWithdrawal(t *testing.T) {
	s := newShop(t)
	path := s.makeLink()
	photo := path + "/photo/" + photoKey
	for range 2 {
		w := s.ask("DELETE", "/api/links/"+linkID, "")
		if !strings.Contains(w.Body.String(), `"state":"withdrawn"`) || w.Code != 200 {
			t.Errorf("%d %s", w.Code, w.Body)
		}
	}
	for _, p := range []string{path, photo} {
		if w := s.page(p); w.Code != 404 {
			t.Errorf("%s: %d", p, w.Code)
		}
	}
	if _, err := os.Stat(filepath.Join(s.dir, "links", linkID)); !os.IsNotExist(err) {
		t.Errorf("the paper is still there: %v", err)
	}
	if m := s.askLink(goodAsk(t)); m.Status != 409 || !strings.Contains(m.Message, "withdrawn") {
		t.Errorf("made anew: %+v", m.message)
	}
	s.restart()
	if w := s.page(path); w.Code != 404 {
		t.Errorf("after a restart: %d", w.Code)
	}

	// A withdrawal that overtakes the request it belongs to.
	late := goodAsk(t)
	late.head["id"] = "01jzzzzzzzzzzzzzzzzzzzzzz2"
	if w := s.ask("DELETE", "/api/links/01jzzzzzzzzzzzzzzzzzzzzzz2", ""); w.Code != 200 {
		t.Errorf("%d %s", w.Code, w.Body)
	}
	if m := s.askLink(late); m.Status != 409 {
		t.Errorf("the late request: %+v", m.message)
	}
	for id, status := range map[string]int{"x": 400, "..%2f..%2fasfound.db": 400} {
		if w := s.ask("DELETE", "/api/links/"+id, ""); w.Code != status {
			t.Errorf("%s: %d", id, w.Code)
		}
	}
	if m := s.read(s.ask("GET", "/api/links/01jzzzzzzzzzzzzzzzzzzzzzz9", "")); m.Status != 404 || m.Code != "no-link" {
		t.Errorf("never made: %+v", m)
	}
	if m := s.read(s.ask("DELETE", "/api/links/"+linkID, "", "Sec-Fetch-Site: cross-site")); m.Status != 403 {
		t.Errorf("another site: %+v", m)
	}
}

// Content goes some days after a link ended, and the memory of it after more than a year.
func TestPurge(t *testing.T) {
	s := newShop(t)
	path := s.makeLink()
	there := func() bool {
		_, err := os.Stat(filepath.Join(s.dir, "links", linkID, "document.json"))
		return err == nil
	}
	day := 24 * time.Hour
	for _, c := range []struct {
		after        time.Duration
		status       int
		paper, known bool
	}{{20 * day, 200, true, true}, {23 * day, 404, true, true}, {30 * day, 404, false, true}, {300 * day, 404, false, true}, {450 * day, 404, false, false}} {
		s.now = noon.Add(c.after)
		s.server.tendLinks()
		known := s.ask("GET", "/api/links/"+linkID, "").Code == 200
		if w := s.page(path); w.Code != c.status || there() != c.paper || known != c.known {
			t.Errorf("after %v: %d, paper %v, known %v", c.after, w.Code, there(), known)
		}
	}
}

// What was cut off while a link was made is swept away at the next start.
func TestHalfMadeLinksAreSwept(t *testing.T) {
	s := newShop(t)
	s.makeLink()
	for _, name := range []string{"01jzzzzzzzzzzzzzzzzzzzzzz5.part", "01jzzzzzzzzzzzzzzzzzzzzzz6"} {
		if err := os.Mkdir(filepath.Join(s.dir, "links", name), 0o700); err != nil {
			t.Fatal(err)
		}
	}
	s.restart()
	files, err := os.ReadDir(filepath.Join(s.dir, "links"))
	if err != nil || len(files) != 1 || files[0].Name() != linkID {
		t.Errorf("%v, %v", files, err)
	}
}

// The data folder holds the hash of a token and never the token, and no photo with more than its drawing.
func TestTokenIsKeptNowhere(t *testing.T) {
	s := newShop(t)
	token := strings.TrimPrefix(s.makeLink(), "/s/")
	err := filepath.WalkDir(s.dir, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		f, err := os.Open(path)
		if err != nil {
			return err
		}
		defer f.Close()
		b, err := io.ReadAll(f)
		if bytes.Contains(b, []byte(token)) {
			t.Errorf("%s holds the token", path)
		}
		return err
	})
	if err != nil {
		t.Error(err)
	}
}
