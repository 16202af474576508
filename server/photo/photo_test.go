package photo

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"encoding/binary"
	"encoding/hex"
	"errors"
	"hash/crc32"
	"image"
	"image/jpeg"
	"image/png"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/iotest"
	"time"
)

func name(b []byte) string {
	sum := sha256.Sum256(b)
	return hex.EncodeToString(sum[:])
}

func picture(t *testing.T, encode func(io.Writer, image.Image) error) []byte {
	t.Helper()
	var b bytes.Buffer
	img := image.NewGray(image.Rect(0, 0, 64, 48))
	for i := range img.Pix {
		img.Pix[i] = byte(i * 7)
	}
	if err := encode(&b, img); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func jpegPicture(t *testing.T) []byte {
	return picture(t, func(w io.Writer, m image.Image) error { return jpeg.Encode(w, m, nil) })
}

func pngPicture(t *testing.T) []byte { return picture(t, png.Encode) }

// webpPicture is one point, lossy.
func webpPicture(t *testing.T) []byte {
	t.Helper()
	b, err := base64.StdEncoding.DecodeString("UklGRiIAAABXRUJQVlA4IBYAAAAwAQCdASoBAAEADsD+JaQAA3AAAAAA")
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// pngOf is a PNG whose header claims that size.
func pngOf(t *testing.T, width, height uint32) []byte {
	b := bytes.Clone(pngPicture(t))
	binary.BigEndian.PutUint32(b[16:], width)
	binary.BigEndian.PutUint32(b[20:], height)
	binary.BigEndian.PutUint32(b[29:], crc32.ChecksumIEEE(b[12:29]))
	return b
}

// withExif puts an APP1 segment with one tag into a JPEG.
func withExif(t *testing.T, tag uint16) []byte {
	exif := []byte("Exif\x00\x00MM\x00*\x00\x00\x00\x08\x00\x01")
	exif = binary.BigEndian.AppendUint16(exif, tag)
	exif = append(exif, 0, 4, 0, 0, 0, 1, 0, 0, 0, 6, 0, 0, 0, 0)
	segment := append([]byte{0xff, 0xe1, 0, byte(len(exif) + 2)}, exif...)
	plain := jpegPicture(t)
	return append(append(bytes.Clone(plain[:2]), segment...), plain[2:]...)
}

func openFolder(t *testing.T) *Folder {
	t.Helper()
	f, err := Open(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func TestAppendAndGet(t *testing.T) {
	for kind, b := range map[string][]byte{"image/jpeg": jpegPicture(t), "image/png": pngPicture(t), "image/webp": webpPicture(t)} {
		f := openFolder(t)
		state, err := f.Append(name(b), 0, Unknown, bytes.NewReader(b))
		if err != nil || state != (State{int64(len(b)), true}) {
			t.Fatalf("%+v, %v", state, err)
		}
		file, got, err := f.Get(name(b))
		if err != nil || got != kind {
			t.Fatalf("%q, %v, want %q", got, err, kind)
		}
		defer file.Close()
		if back, err := io.ReadAll(file); err != nil || !bytes.Equal(back, b) {
			t.Errorf("%d bytes came back of %d, %v", len(back), len(b), err)
		}
		if state, err := f.Append(name(b), 0, Unknown, iotest.ErrReader(errors.New("must not be read"))); err != nil || !state.Whole {
			t.Errorf("once more: %+v, %v", state, err)
		}
		if _, err := os.Stat(filepath.Join(f.dir, name(b)[:2], name(b))); err != nil {
			t.Error(err)
		}
		if parts, _ := os.ReadDir(filepath.Join(f.dir, partFolder)); len(parts) != 0 {
			t.Error("a part was left behind")
		}
	}
}

func TestAlteredOnDisk(t *testing.T) {
	f := openFolder(t)
	b := pngPicture(t)
	if _, err := f.Append(name(b), 0, int64(len(b)), bytes.NewReader(b)); err != nil {
		t.Fatal(err)
	}
	changed := bytes.Clone(b)
	changed[len(changed)-20] ^= 1
	if err := os.WriteFile(f.path(name(b)), changed, 0o600); err != nil {
		t.Fatal(err)
	}
	for range 2 {
		if file, _, err := f.Get(name(b)); !errors.Is(err, ErrAltered) || file != nil {
			t.Fatalf("one bit changed: %v", err)
		}
	}
	if kept, err := os.ReadFile(f.altered(name(b))); err != nil || !bytes.Equal(kept, changed) {
		t.Errorf("what was changed is not kept: %v", err)
	}
	if state, err := f.State(name(b)); err != nil || state.Whole || state.Have != 0 {
		t.Errorf("there is no room for the right one: %+v, %v", state, err)
	}
	if _, err := f.Append(name(b), 0, int64(len(b)), bytes.NewReader(b)); err != nil {
		t.Fatal(err)
	}
	file, kind, err := f.Get(name(b))
	if err != nil || kind != "image/png" {
		t.Fatalf("sent again: %s, %v", kind, err)
	}
	defer file.Close()
	if got, err := io.ReadAll(file); err != nil || !bytes.Equal(got, b) {
		t.Errorf("sent again, %d bytes of %d came: %v", len(got), len(b), err)
	}
}

func TestResume(t *testing.T) {
	b := jpegPicture(t)
	for _, total := range []int64{Unknown, int64(len(b))} {
		f := openFolder(t)
		cut := io.MultiReader(bytes.NewReader(b[:100]), iotest.ErrReader(io.ErrUnexpectedEOF))
		if state, err := f.Append(name(b), 0, total, cut); !errors.Is(err, ErrCut) || state != (State{100, false}) {
			t.Fatalf("cut off: %+v, %v", state, err)
		}
		for _, offset := range []int64{0, 99, 101} {
			if state, err := f.Append(name(b), offset, total, bytes.NewReader(b)); !errors.Is(err, ErrOffset) || state.Have != 100 {
				t.Errorf("at %d: %+v, %v", offset, state, err)
			}
		}
		f = &Folder{dir: f.dir, busy: map[string]bool{}} // the server was started anew
		if state, err := f.Append(name(b), 100, total, bytes.NewReader(b[100:300])); err != nil || state != (State{300, false}) {
			t.Fatalf("the middle: %+v, %v", state, err)
		}
		if _, _, err := f.Get(name(b)); !errors.Is(err, ErrMissing) {
			t.Errorf("half a photo was given out: %v", err)
		}
		if state, err := f.Append(name(b), 300, total, bytes.NewReader(b[300:])); err != nil || !state.Whole {
			t.Errorf("the rest: %+v, %v", state, err)
		}
	}
}

func TestWrongPhotosAreDropped(t *testing.T) {
	good := jpegPicture(t)
	cases := map[string]struct {
		bytes []byte
		name  string
		want  error
	}{
		"another photo's name": {good, name([]byte("x")), ErrHash},
		"nothing":              {nil, name(nil), ErrPicture},
		"text":                 {[]byte("<svg xmlns='http://www.w3.org/2000/svg'/>"), "", ErrPicture},
		"a GIF":                {[]byte("GIF89a\x01\x00\x01\x00\x00\x00\x00;"), "", ErrPicture},
		"a JPEG of two bytes":  {good[:2], "", ErrPicture},
		"a JPEG without size":  {good[:20], "", ErrPicture},
		"100,000 by 100,000":   {pngOf(t, 100_000, 100_000), "", ErrPicture},
		"60 million points":    {pngOf(t, 10_000, 6_000), "", ErrPicture},
		"12,001 wide":          {pngOf(t, 12_001, 1), "", ErrPicture},
		"no height":            {pngOf(t, 1, 0), "", ErrPicture},
		"with a place":         {withExif(t, tagGPS), "", ErrPicture},
		"with a camera":        {withExif(t, tagModel), "", ErrPicture},
	}
	for label, c := range cases {
		f := openFolder(t)
		if c.name == "" {
			c.name = name(c.bytes)
		}
		state, err := f.Append(c.name, 0, int64(len(c.bytes)), bytes.NewReader(c.bytes))
		if !errors.Is(err, c.want) || state != (State{}) {
			t.Errorf("%s: %+v, %v, want %v", label, state, err, c.want)
		}
		if parts, _ := os.ReadDir(filepath.Join(f.dir, partFolder)); len(parts) != 0 {
			t.Errorf("%s: a part was left behind", label)
		}
	}
	// Orientation alone tells nothing about place or camera.
	b := withExif(t, 0x0112)
	if state, err := openFolder(t).Append(name(b), 0, Unknown, bytes.NewReader(b)); err != nil || !state.Whole {
		t.Errorf("with an orientation: %+v, %v", state, err)
	}
}

func TestLengths(t *testing.T) {
	b := jpegPicture(t)
	f := openFolder(t)
	if _, err := f.Append(name(b), 0, int64(len(b))-1, bytes.NewReader(b)); !errors.Is(err, ErrHash) {
		t.Errorf("more than announced: %v", err)
	}
	if _, err := f.Append(name(b), 0, MaxBytes+1, bytes.NewReader(b)); !errors.Is(err, ErrSize) {
		t.Errorf("announced too large: %v", err)
	}
	endless := io.MultiReader(bytes.NewReader(b), bytes.NewReader(make([]byte, MaxBytes)))
	if state, err := f.Append(name(b), 0, Unknown, endless); !errors.Is(err, ErrSize) || state.Have != 0 {
		t.Errorf("too large: %+v, %v", state, err)
	}
	// An upload of unknown length that ends with other bytes than its name's is dropped when nothing more comes.
	if state, err := f.Append(name(b), 0, Unknown, strings.NewReader("other bytes")); err != nil || state.Have != 11 {
		t.Errorf("%+v, %v", state, err)
	}
	if state, err := f.Append(name(b), 11, Unknown, strings.NewReader("")); !errors.Is(err, ErrHash) || state.Have != 0 {
		t.Errorf("%+v, %v", state, err)
	}
}

func TestNames(t *testing.T) {
	f := openFolder(t)
	for _, n := range []string{"", "..", strings.Repeat("a", 63), strings.Repeat("A", 64), "../" + strings.Repeat("a", 61), strings.Repeat("a", 63) + "/"} {
		if _, err := f.Append(n, 0, Unknown, strings.NewReader("x")); !errors.Is(err, ErrName) {
			t.Errorf("%q: %v", n, err)
		}
		if _, _, err := f.Get(n); !errors.Is(err, ErrName) {
			t.Errorf("%q: %v", n, err)
		}
	}
}

func TestOneUploadAtATime(t *testing.T) {
	b := jpegPicture(t)
	f := openFolder(t)
	slow, feed := io.Pipe()
	done := make(chan error)
	go func() {
		_, err := f.Append(name(b), 0, Unknown, slow)
		done <- err
	}()
	if _, err := feed.Write(b[:10]); err != nil {
		t.Fatal(err)
	}
	if _, err := f.Append(name(b), 0, Unknown, bytes.NewReader(b)); !errors.Is(err, ErrBusy) {
		t.Errorf("beside another upload: %v", err)
	}
	other := pngPicture(t)
	if state, err := f.Append(name(other), 0, Unknown, bytes.NewReader(other)); err != nil || !state.Whole {
		t.Errorf("another photo meanwhile: %+v, %v", state, err)
	}
	if _, err := feed.Write(b[10:]); err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(feed.Close(), <-done); err != nil {
		t.Error(err)
	}
}

func TestSweepParts(t *testing.T) {
	f := openFolder(t)
	b := jpegPicture(t)
	if _, err := f.Append(name(b), 0, Unknown, bytes.NewReader(b[:10])); err != nil {
		t.Fatal(err)
	}
	if n, err := f.SweepParts(time.Now().Add(-time.Hour)); n != 0 || err != nil {
		t.Errorf("a young part: %d, %v", n, err)
	}
	if n, err := f.SweepParts(time.Now().Add(time.Hour)); n != 1 || err != nil {
		t.Errorf("an old part: %d, %v", n, err)
	}
	if state, err := f.State(name(b)); state != (State{}) || err != nil {
		t.Errorf("%+v, %v", state, err)
	}
}

func FuzzPrivate(f *testing.F) {
	f.Add([]byte("\xff\xd8\xff\xe1\x00\x10Exif\x00\x00II*\x00\x08\x00\x00\x00"))
	f.Add([]byte("RIFF\x00\x00\x00\x00WEBPEXIF\xff\xff\xff\xff"))
	f.Add([]byte("\x89PNG\r\n\x1a\n\xff\xff\xff\xffeXIf"))
	f.Fuzz(func(t *testing.T, b []byte) {
		for _, blocks := range []func([]byte) [][]byte{jpegBlocks, pngBlocks, webpBlocks} {
			for _, block := range blocks(b) {
				tellsMuch(block)
			}
		}
		tellsMuch(b)
	})
}
