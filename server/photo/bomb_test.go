package photo

import (
	"bytes"
	"errors"
	"testing"
)

// manyScans is a small progressive JPEG (ITU-T T.81 G.1) of w by h whose scans each pass over all of it in a few
// bytes: runs of ends of band.
func manyScans(w, h, scans int) []byte {
	b := []byte{0xff, 0xd8, 0xff, 0xc2, 0, 17, 8, byte(h >> 8), byte(h), byte(w >> 8), byte(w), 3, 1, 0x11, 0, 2, 0x11, 0, 3, 0x11, 0}
	b = append(append(b, 0xff, 0xdb, 0, 67, 0), bytes.Repeat([]byte{1}, 64)...)
	// DC table 0: the only code, 0, is category 0. AC table 0: code 0 is EOB14, 16384 blocks and 14 bits more.
	dc := append([]byte{0xff, 0xc4, 0, 20, 0x00, 1}, make([]byte, 15)...)
	ac := append([]byte{0xff, 0xc4, 0, 20, 0x10, 1}, make([]byte, 15)...)
	b = append(append(append(append(b, dc...), 0), ac...), 0xe0)
	blocks := ((w + 7) / 8) * ((h + 7) / 8)
	b = append(b, 0xff, 0xda, 0, 12, 3, 1, 0, 2, 0, 3, 0, 0, 0, 0)
	b = append(b, make([]byte, (3*blocks+7)/8+2)...)
	for range scans {
		b = append(b, 0xff, 0xda, 0, 8, 1, 1, 0, 1, 63, 0)
		b = append(b, make([]byte, (blocks/16384+1)*15/8+2)...)
	}
	return append(b, 0xff, 0xd9)
}

// A few bytes that ask for very much work or memory are refused before it is done.
func TestProgressiveBombs(t *testing.T) {
	if _, err := Redraw(manyScans(64, 64, 10), 1600); err != nil {
		t.Fatalf("an ordinary progressive picture: %v", err)
	}
	for name, b := range map[string][]byte{
		"many scans":   manyScans(64, 64, 5000),
		"much to keep": manyScans(7000, 7000, 1),
	} {
		if _, err := Redraw(b, 1600); !errors.Is(err, ErrPicture) {
			t.Errorf("%s, %d bytes: %v", name, len(b), err)
		}
		if _, _, err := Bare(b, MaxSide); !errors.Is(err, ErrPicture) {
			t.Errorf("%s as a copy, %d bytes: %v", name, len(b), err)
		}
	}
}

// What stands between the segments of a copy, or behind what Adobe's tells, leaves with none.
func TestBareHidesNothing(t *testing.T) {
	plain := jpegPicture(t)
	for name, between := range map[string]string{
		"a restart marker": "\xff\xd0\x00\x0fhidden inside",
		"a lone marker":    "\xff\x01\x00\x0fhidden inside",
		"Adobe":            "\xff\xee\x00\x1bAdobe\x00\x64\x00\x00\x00\x00\x01hidden inside",
		"JFIF":             "\xff\xe0\x00\x1dJFIF\x00\x01\x01\x00\x00\x01\x00\x01\x00\x00hidden inside",
	} {
		b := append(append(bytes.Clone(plain[:2]), between...), plain[2:]...)
		bare, _, err := Bare(b, 2400)
		if err == nil && bytes.Contains(bare, []byte("hidden")) {
			t.Errorf("%s keeps it", name)
		}
	}
}
