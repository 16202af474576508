package photo

import (
	"bytes"
	"encoding/base64"
	"encoding/binary"
	"errors"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"
	"image/png"
	"io"
	"testing"
)

func bytesOf(t *testing.T, m image.Image, encode func(io.Writer, image.Image) error) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := encode(&b, m); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func asJPEG(w io.Writer, m image.Image) error { return jpeg.Encode(w, m, &jpeg.Options{Quality: 95}) }

// corners is red, green, blue and black, from the upper left clockwise.
func corners(w, h int) *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	for i, c := range []color.RGBA{{255, 0, 0, 255}, {0, 255, 0, 255}, {0, 0, 255, 255}, {0, 0, 0, 255}} {
		x, y := (w/2)*[]int{0, 1, 1, 0}[i], (h/2)*[]int{0, 0, 1, 1}[i]
		draw.Draw(m, image.Rect(x, y, x+w-w/2, y+h-h/2), image.NewUniform(c), image.Point{}, draw.Src)
	}
	return m
}

// read names the corners of a picture in the same order.
func read(t *testing.T, b []byte) (letters string, size image.Point) {
	t.Helper()
	m, err := jpeg.Decode(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	r := m.Bounds()
	for _, p := range []image.Point{{r.Dx() / 4, r.Dy() / 4}, {r.Dx() * 3 / 4, r.Dy() / 4}, {r.Dx() * 3 / 4, r.Dy() * 3 / 4}, {r.Dx() / 4, r.Dy() * 3 / 4}} {
		red, green, blue, _ := m.At(p.X, p.Y).RGBA()
		switch {
		case red > 0x8000 && green > 0x8000 && blue > 0x8000:
			letters += "w"
		case red > 0x8000:
			letters += "r"
		case green > 0x8000:
			letters += "g"
		case blue > 0x8000:
			letters += "b"
		default:
			letters += "k"
		}
	}
	return letters, r.Size()
}

func exifOf(orientation uint16, order binary.AppendByteOrder, mark string) []byte {
	b := append([]byte("Exif\x00\x00"), mark...)
	b = order.AppendUint16(b, 42)
	b = order.AppendUint32(b, 8)
	b = order.AppendUint16(b, 1)
	b = order.AppendUint16(b, 0x0112)
	b = order.AppendUint16(b, 3)
	b = order.AppendUint32(b, 1)
	b = order.AppendUint16(b, orientation)
	return append(b, 0, 0, 0, 0, 0, 0)
}

func withSegment(b []byte, marker byte, body []byte) []byte {
	head := []byte{0xff, marker, byte((len(body) + 2) >> 8), byte(len(body) + 2)}
	return append(append(append(bytes.Clone(b[:2]), head...), body...), b[2:]...)
}

// The eight orientations as the Exif standard draws them: which corner of the file is seen where (from memory).
func TestRedrawTurnsUpright(t *testing.T) {
	plain := bytesOf(t, corners(80, 40), asJPEG)
	for turn, want := range map[uint16]string{0: "rgbk", 1: "rgbk", 2: "grkb", 3: "bkrg", 4: "kbgr", 5: "rkbg", 6: "krgb", 7: "bgrk", 8: "gbkr", 9: "rgbk"} {
		for mark, order := range map[string]binary.AppendByteOrder{"MM": binary.BigEndian, "II": binary.LittleEndian} {
			out, err := Redraw(withSegment(plain, 0xe1, exifOf(turn, order, mark)), 1600)
			if err != nil {
				t.Fatal(err)
			}
			got, size := read(t, out)
			wantSize := image.Pt(80, 40)
			if turn >= 5 && turn <= 8 {
				wantSize = image.Pt(40, 80)
			}
			if got != want || size != wantSize {
				t.Errorf("%s orientation %d: %s of %v, want %s of %v", mark, turn, got, size, want, wantSize)
			}
			if bytes.Contains(out, []byte("Exif")) {
				t.Errorf("orientation %d: Exif is left", turn)
			}
		}
	}
}

func TestRedrawMakesSmaller(t *testing.T) {
	for _, c := range []struct {
		w, h, most, wantW, wantH int
	}{{300, 200, 100, 100, 66}, {200, 301, 100, 66, 100}, {100, 100, 100, 100, 100}, {997, 3, 50, 50, 1}, {40, 30, 1600, 40, 30}} {
		out, err := Redraw(bytesOf(t, corners(c.w, c.h), png.Encode), c.most)
		if err != nil {
			t.Fatal(err)
		}
		got, size := read(t, out)
		if size != image.Pt(c.wantW, c.wantH) || c.h > 3 && got != "rgbk" {
			t.Errorf("%dx%d: %v %s", c.w, c.h, size, got)
		}
	}
}

// A fine chequer of black and white is grey from afar, by whatever ratio; a filter that skips points makes it striped.
func TestSmallerIsTheMean(t *testing.T) {
	fine := image.NewGray(image.Rect(0, 0, 330, 330))
	for i := range fine.Pix {
		fine.Pix[i] = uint8((i%330 + i/330) % 2 * 255)
	}
	for _, most := range []int{165, 110, 77, 100, 7, 1} {
		out := smaller(fine, most)
		for i := 0; i < len(out.Pix); i += 4 {
			if v := out.Pix[i]; v < 85 || v > 170 {
				t.Fatalf("to %d: a point of %d", most, v)
			}
		}
	}
}

func TestRedrawOnWhite(t *testing.T) {
	clear := image.NewNRGBA(image.Rect(0, 0, 20, 20))
	out, err := Redraw(bytesOf(t, clear, png.Encode), 100)
	if err != nil {
		t.Fatal(err)
	}
	if got, _ := read(t, out); got != "wwww" {
		t.Errorf("see-through became %s", got)
	}
	if _, err := Redraw(webpPicture(t), 100); err != nil {
		t.Errorf("WebP: %v", err)
	}
}

func TestRedrawRefuses(t *testing.T) {
	whole := bytesOf(t, corners(80, 40), asJPEG)
	for name, b := range map[string][]byte{
		"nothing":      nil,
		"a text":       []byte("this is no picture at all"),
		"a page":       []byte("<svg xmlns='http://www.w3.org/2000/svg'/>"),
		"half":         whole[:len(whole)/3],
		"60 megapixel": pngOf(t, 10_000, 6_000),
		"wide":         pngOf(t, 20_000, 1),
		"flat":         pngOf(t, 0, 5),
		"30 megapixel": pngOf(t, 6_000, 5_000),
	} {
		if out, err := Redraw(b, 1600); !errors.Is(err, ErrPicture) {
			t.Errorf("%s: %d bytes, %v", name, len(out), err)
		}
	}
	if _, err := Redraw(make([]byte, MaxBytes+1), 1600); !errors.Is(err, ErrSize) {
		t.Errorf("12 MB and one: %v", err)
	}
}

func TestBareKeepsOnlyTheDrawing(t *testing.T) {
	plain := bytesOf(t, corners(80, 40), asJPEG)
	loaded := withSegment(plain, 0xfe, []byte("MARK comment"))
	loaded = withSegment(loaded, 0xed, []byte("Photoshop 3.0\x00MARK city"))
	loaded = withSegment(loaded, 0xe2, []byte("ICC_PROFILE\x00MARK"))
	loaded = withSegment(loaded, 0xe0, append([]byte("JFIF\x00\x01\x02\x00\x00\x01\x00\x01\x01\x01"), "MAR"...))
	loaded = append(loaded, "MARK after the end"...)
	bare, size, err := Bare(loaded, 1600)
	if err != nil || size != image.Pt(80, 40) {
		t.Fatal(err, size)
	}
	if bytes.Contains(bare, []byte("MAR")) {
		t.Error("a mark is left")
	}
	if got, _ := read(t, bare); got != "rgbk" {
		t.Errorf("drawn as %s", got)
	}
	again, _, err := Bare(bare, 1600)
	if err != nil || !bytes.Equal(again, bare) {
		t.Errorf("bare a second time: %v", err)
	}
}

func TestBareRefuses(t *testing.T) {
	whole := bytesOf(t, corners(80, 40), asJPEG)
	for name, b := range map[string][]byte{
		"nothing":   nil,
		"PNG":       pngPicture(t),
		"place":     withExif(t, tagGPS),
		"any Exif":  withSegment(whole, 0xe1, exifOf(1, binary.BigEndian, "MM")),
		"XMP":       withSegment(whole, 0xe1, []byte("http://ns.adobe.com/xap/1.0/\x00<x/>")),
		"no end":    whole[:len(whole)-2],
		"half":      whole[:len(whole)/2],
		"too large": bytesOf(t, corners(1601, 2), asJPEG),
	} {
		if _, _, err := Bare(b, 1600); !errors.Is(err, ErrPicture) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// progressive is red above and blue below, in several scans, as another encoder (ImageMagick with libjpeg) writes it.
const progressive = "/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAA0JCgsKCA0LCgsODg0PEyAVExISEyccHhcgLikxMC4pLSwzOko+MzZGNywtQFdBRkxOUlNSMj5aYV" +
	"pQYEpRUk//2wBDAQ4ODhMREyYVFSZPNS01T09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT0//wgARCAAQ" +
	"ABADASIAAhEBAxEB/8QAFgABAQEAAAAAAAAAAAAAAAAAAAMF/8QAFAEBAAAAAAAAAAAAAAAAAAAABP/aAAwDAQACEAMQAAABy0DH/wD/xAAVEA" +
	"EBAAAAAAAAAAAAAAAAAAAAEf/aAAgBAQABBQKqqv/EABURAQEAAAAAAAAAAAAAAAAAAAAU/9oACAEDAQE/AbX/xAAVEQEBAAAAAAAAAAAAAAAA" +
	"AAAAFP/aAAgBAgEBPwGB/8QAFBABAAAAAAAAAAAAAAAAAAAAIP/aAAgBAQAGPwIf/8QAFBABAAAAAAAAAAAAAAAAAAAAIP/aAAgBAQABPyEf/9" +
	"oADAMBAAIAAwAAABDH/8QAFREBAQAAAAAAAAAAAAAAAAAAAHH/2gAIAQMBAT8Qp//EABURAQEAAAAAAAAAAAAAAAAAAABx/9oACAECAQE/EIf/" +
	"xAAWEAEBAQAAAAAAAAAAAAAAAABxABD/2gAIAQEAAT8QUtP/2Q=="

func TestBareProgressive(t *testing.T) {
	b, err := base64.StdEncoding.DecodeString(progressive)
	if err != nil {
		t.Fatal(err)
	}
	loaded := append(withSegment(b, 0xfe, []byte("MARK")), "MARK"...)
	bare, _, err := Bare(loaded, 100)
	if err != nil || bytes.Contains(bare, []byte("MARK")) || len(bare) > len(b) {
		t.Fatalf("%d of %d bytes, %v", len(bare), len(b), err)
	}
	if got, _ := read(t, bare); got != "rrbb" {
		t.Errorf("drawn as %s", got)
	}
	if _, _, err := Bare(loaded[:len(loaded)/2], 100); !errors.Is(err, ErrPicture) {
		t.Errorf("half: %v", err)
	}
}

func FuzzBare(f *testing.F) {
	var b bytes.Buffer
	if err := asJPEG(&b, corners(16, 16)); err != nil {
		f.Fatal(err)
	}
	f.Add(b.Bytes())
	if p, err := base64.StdEncoding.DecodeString(progressive); err == nil {
		f.Add(p)
	}
	f.Add(withSegment(b.Bytes(), 0xe1, exifOf(6, binary.BigEndian, "MM")))
	f.Fuzz(func(t *testing.T, b []byte) {
		if bare, _, err := Bare(b, 64); err == nil {
			if len(jpegBlocks(bare)) > 0 || bytes.Contains(bare, []byte("Exif\x00\x00")) && !bytes.Contains(b, []byte("Exif\x00\x00")) {
				t.Error("it still carries data")
			}
		} else if !errors.Is(err, ErrPicture) {
			t.Error(err)
		}
		orientation(b)
	})
}
